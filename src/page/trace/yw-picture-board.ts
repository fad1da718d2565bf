import { html, nothing, type PropertyValues, svg, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { drawn } from '../../keep/picture.ts';
import type { TrueMap } from '../../quilt/tracing/straightening.ts';
import { carry } from '../../shape/homography.ts';
import type { Box } from '../../shape/outline-measures.ts';
import { distance, type Point, subtract } from '../../shape/point.ts';
import { polygonBox } from '../../shape/polygon.ts';
import { freshId, PageElement } from '../page-element.ts';
import type { BoardHand } from './board-hand.ts';
import { fromBoard, layPicture, push, type Sight, sightOf, toBoard, zoomAbout } from './sight.ts';

/** Pixels that a press may wander and still be a click. What is held follows a mouse sooner: flat arcs are pulled by little. */
const STILL = 4;
const STILL_HELD = 1.5;
const REACH = { mouse: 9, pen: 12, touch: 20 } as const;
/** Board pixels for one of the picture, at most. */
const LARGEST = 12;
const STEPS: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/**
 * A picture to work on: laid out true, zoomed and pushed about by pointer, fingers, wheel or keys, with a cursor for those who
 * draw by keyboard. What a click or a drag does is its hand's to say.
 */
@customElement('yw-picture-board')
export class PictureBoard extends PageElement {
  @property({ attribute: false }) picture: HTMLCanvasElement | null = null;
  @property({ attribute: false }) map: TrueMap | null = null;
  @property({ attribute: false }) hand: BoardHand | null = null;
  /** Changes whenever what is shown has changed. */
  @property({ type: Number }) turns = 0;
  /** What is to be seen first, in the true plane; by default the whole picture. */
  @property({ attribute: false }) first: Box | null = null;
  @property() label = '';
  @state() private sight: Sight | null = null;
  @state() private cursor: Point | null = null;
  /** Held with the keyboard. */
  @state() private held = false;
  @state() private spoken = '';
  private readonly words = freshId('board-words');
  private readonly pointers = new Map<number, Point>();
  private press: { readonly id: number; readonly from: Point; grabbed: boolean; moved: boolean } | null = null;
  private readonly smaller = new Map<number, HTMLCanvasElement>();
  private speaking = 0;
  private readonly sizes = new ResizeObserver(() => this.measure());

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sizes.disconnect();
    clearTimeout(this.speaking);
  }

  protected override firstUpdated(): void {
    this.sizes.observe(this.frame);
    this.measure();
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('picture')) {
      this.smaller.clear();
    }
    if (changed.has('picture') || changed.has('map')) {
      if (this.sight !== null) this.showAll();
      this.cursor = null;
    }
  }

  private get frame(): HTMLElement {
    return this.querySelector<HTMLElement>('.board-frame')!;
  }

  private measure(): void {
    const { clientWidth: width, clientHeight: height } = this.frame;
    if (width === 0 || height === 0) return;
    if (this.sight === null) {
      this.sight = sightOf(this.box(), width, height);
    } else if (this.sight.width !== width || this.sight.height !== height) {
      this.sight = { ...this.sight, width, height, zoom: this.sight.zoom * (width / this.sight.width) };
    }
  }

  private box(): Box {
    const { picture, map } = this;
    if (this.first !== null || picture === null || map === null) return this.first ?? { min: [0, 0], max: [1, 1] };
    const { width, height } = picture;
    const corners: readonly Point[] = [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ];
    return polygonBox(corners.map((corner) => carry(map.toTrue, corner)));
  }

  /** The whole of what is worked on. */
  showAll(): void {
    if (this.sight !== null) this.sight = sightOf(this.box(), this.sight.width, this.sight.height);
  }

  zoomBy(by: number, at?: Point): void {
    const { sight, map } = this;
    if (sight === null || map === null) return;
    const about =
      at ?? (this.cursor === null ? ([sight.width / 2, sight.height / 2] as Point) : toBoard(sight, this.cursor));
    this.sight = zoomAbout(sight, about, by, this.mostZoom(map, sight));
  }

  private mostZoom(map: TrueMap, { middle }: Sight): number {
    const step = distance(carry(map.toPicture, middle), carry(map.toPicture, [middle[0] + 1e-3, middle[1]])) / 1e-3;
    return Number.isFinite(step) && step > 0 ? LARGEST * step : 1e4;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { picture, map, hand, sight } = this;
    if (picture === null || map === null || hand === null) return nothing;
    return html`<div
        class="board-frame"
        role="application"
        tabindex="0"
        aria-label=${this.label}
        aria-describedby=${this.words}
        @pointerdown=${this.onDown}
        @pointermove=${this.onMove}
        @pointerup=${this.onUp}
        @pointercancel=${this.onCancel}
        @pointerleave=${() => this.hoverAt(null)}
        @wheel=${this.onWheel}
        @keydown=${this.onKey}
        @contextmenu=${(event: Event) => event.preventDefault()}
      >
        ${sight === null ? nothing : this.laid(picture, map, sight)}
        ${
          sight === null
            ? nothing
            : svg`<svg class="board-drawing" width=${sight.width} height=${sight.height} aria-hidden="true">
                ${hand.draw(sight)} ${this.cursor === null ? nothing : drawCursor(toBoard(sight, this.cursor), this.held)}
              </svg>`
        }
      </div>
      <p class="board-words" id=${this.words} role="status">${this.spoken}</p>`;
  }

  private laid(picture: HTMLCanvasElement, map: TrueMap, sight: Sight): HTMLCanvasElement {
    const { shrunk, transform } = layPicture(sight, map);
    let canvas = this.smaller.get(shrunk);
    if (canvas === undefined) {
      canvas = shrunk === 1 ? picture : drawn(picture, shrunk);
      canvas.className = 'board-picture';
      this.smaller.set(shrunk, canvas);
    }
    canvas.style.transform = transform;
    return canvas;
  }

  /** Says something to those who listen, after what is being said. */
  say(words: string): void {
    clearTimeout(this.speaking);
    this.spoken = words;
  }

  private place(event: MouseEvent): Point {
    const box = this.frame.getBoundingClientRect();
    return [event.clientX - box.left - this.frame.clientLeft, event.clientY - box.top - this.frame.clientTop];
  }

  private reach(event?: PointerEvent): number {
    const kind = event?.pointerType;
    return REACH[kind === 'touch' || kind === 'pen' ? kind : 'mouse'] / (this.sight?.zoom ?? 1);
  }

  private hoverAt(at: Point | null, event?: PointerEvent): void {
    this.hand?.hover(at, this.reach(event));
    this.requestUpdate();
  }

  private readonly onDown = (event: PointerEvent): void => {
    const { sight, hand } = this;
    if (sight === null || hand === null || (event.pointerType === 'mouse' && event.button === 2)) return;
    this.frame.setPointerCapture(event.pointerId);
    this.cursor = null;
    const at = this.place(event);
    this.pointers.set(event.pointerId, at);
    if (this.pointers.size > 1) {
      // A second finger: what the first one held goes back, and both zoom.
      if (this.press?.grabbed) hand.drop(false);
      this.press = null;
    } else {
      const grabbed = event.button === 0 && hand.grab(fromBoard(sight, at), this.reach(event));
      this.press = { id: event.pointerId, from: at, grabbed, moved: false };
    }
    this.requestUpdate();
  };

  private readonly onMove = (event: PointerEvent): void => {
    const { sight, hand, press } = this;
    if (sight === null || hand === null) return;
    const at = this.place(event);
    const before = this.pointers.get(event.pointerId);
    if (before === undefined) {
      this.hoverAt(fromBoard(sight, at), event);
      return;
    }
    if (this.pointers.size > 1) {
      this.pinch(sight, event.pointerId, before, at);
    } else if (press !== null) {
      press.moved ||= distance(press.from, at) > (press.grabbed && event.pointerType === 'mouse' ? STILL_HELD : STILL);
      if (press.moved && press.grabbed) {
        hand.drag(fromBoard(sight, at), this.reach(event));
      } else if (press.moved) {
        this.sight = push(sight, subtract(at, before));
      } else {
        return;
      }
    }
    this.pointers.set(event.pointerId, at);
    this.requestUpdate();
  };

  private pinch(sight: Sight, id: number, before: Point, at: Point): void {
    const [, other] = [...this.pointers].find(([each]) => each !== id)!;
    const by = distance(at, other) / Math.max(1, distance(before, other));
    const middle: Point = [(at[0] + other[0]) / 2, (at[1] + other[1]) / 2];
    this.sight = push(sight, [(at[0] - before[0]) / 2, (at[1] - before[1]) / 2]);
    this.zoomBy(by, middle);
  }

  private readonly onUp = (event: PointerEvent): void => {
    const { sight, hand, press } = this;
    this.pointers.delete(event.pointerId);
    if (sight === null || hand === null || press === null || press.id !== event.pointerId) return;
    this.press = null;
    if (press.grabbed) hand.drop(press.moved);
    if (!press.moved && event.button === 0) {
      // Where it was pressed, not where it slipped to.
      hand.click(fromBoard(sight, press.from), this.reach(event));
    }
    this.requestUpdate();
  };

  private readonly onCancel = (event: PointerEvent): void => {
    this.pointers.delete(event.pointerId);
    if (this.press?.grabbed) this.hand?.drop(false);
    this.press = null;
    this.requestUpdate();
  };

  private readonly onWheel = (event: WheelEvent): void => {
    event.preventDefault();
    const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
    this.zoomBy(2 ** (-(event.deltaY * lines) / 240), this.place(event));
  };

  private readonly onKey = (event: KeyboardEvent): void => {
    const { sight, hand } = this;
    if (sight === null || hand === null) return;
    const at = this.cursor ?? sight.middle;
    if (this.ownKey(event, sight, hand, at) || hand.key(event, at, this.reach())) {
      event.preventDefault();
      event.stopPropagation();
      this.requestUpdate();
    }
  };

  private ownKey(event: KeyboardEvent, sight: Sight, hand: BoardHand, at: Point): boolean {
    const plain = !event.ctrlKey && !event.metaKey && !event.altKey;
    const step = STEPS[event.key];
    if (!plain) return false;
    if (step !== undefined) {
      const size = (event.shiftKey ? 20 : 1) / sight.zoom;
      this.moveCursor([at[0] + step[0] * size, at[1] + step[1] * size]);
      return true;
    }
    switch (event.key) {
      case 'Enter':
      case ' ':
        this.cursor = at;
        if (this.held) this.letGo(true);
        else hand.click(at, this.reach());
        return true;
      case 'm':
        this.cursor = at;
        if (this.held) this.letGo(true);
        else this.held = hand.grab(at, this.reach());
        this.say(
          this.held ? 'Held. Arrow keys move it, Enter lets go, Escape puts it back.' : hand.wordsAt(at, this.reach()),
        );
        return true;
      case 'Escape':
        if (!this.held) return false;
        this.letGo(false);
        return true;
      case '+':
      case '=':
        this.zoomBy(1.5);
        return true;
      case '-':
        this.zoomBy(1 / 1.5);
        return true;
      case '0':
        this.showAll();
        return true;
      case ']':
      case '[': {
        const place = hand.leap(at, event.key === ']');
        if (place !== null) this.moveCursor(place);
        return true;
      }
      default:
        return false;
    }
  }

  private letGo(made: boolean): void {
    this.hand?.drop(made);
    this.held = false;
  }

  /** The cursor goes there, and the sight with it where it would leave the board. */
  private moveCursor(to: Point): void {
    const { sight, hand } = this;
    if (sight === null || hand === null) return;
    this.cursor = to;
    const [x, y] = toBoard(sight, to);
    const off = (value: number, size: number): number =>
      value < 30 ? Math.min(size / 3, 30 - value) : value > size - 30 ? Math.max(-size / 3, size - 30 - value) : 0;
    const shift: Point = [off(x, sight.width), off(y, sight.height)];
    if (shift[0] !== 0 || shift[1] !== 0) this.sight = push(sight, shift);
    if (this.held) hand.drag(to, this.reach());
    else this.hoverAt(to);
    clearTimeout(this.speaking);
    this.speaking = window.setTimeout(() => {
      this.spoken = hand.wordsAt(to, this.reach());
    }, 250);
  }
}

function drawCursor([x, y]: Point, held: boolean): TemplateResult {
  const arm = held ? 22 : 16;
  const cross = `M${x - arm} ${y}h${arm - 4}m8 0h${arm - 4}M${x} ${y - arm}v${arm - 4}m0 8v${arm - 4}`;
  return svg`<path class="board-under" d=${cross} /><path class="board-cursor" d=${cross} />` as unknown as TemplateResult;
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-picture-board': PictureBoard;
  }
}
