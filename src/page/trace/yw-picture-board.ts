import { html, nothing, type PropertyValues, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { drawn } from '../../keep/picture.ts';
import type { TrueMap } from '../../quilt/tracing/straightening.ts';
import { carry } from '../../shape/homography.ts';
import type { Box } from '../../shape/outline-measures.ts';
import { distance, type Point } from '../../shape/point.ts';
import { polygonBox } from '../../shape/polygon.ts';
import { freshId, PageElement } from '../page-element.ts';
import { BoardCursor, type CursorBoard } from './board-cursor.ts';
import type { BoardHand } from './board-hand.ts';
import { BoardPointers, type PointedBoard } from './board-pointers.ts';
import { drawGlass } from './glass.ts';
import { layPicture, type Sight, sightOf, toBoard, zoomAbout } from './sight.ts';

/** Pixels within which a place is snapped to; a finger is wider than a pointer. */
const REACH: Readonly<Record<string, number>> = { mouse: 9, pen: 12, touch: 20 };
/** Board pixels for one of the picture, at most. */
const LARGEST = 12;
/** Milliseconds without a key before the cursor's place is said. */
const QUIET = 250;

/**
 * A picture to work on: laid out true, zoomed and pushed about by pointer, fingers, wheel or keys, with a cursor for those who
 * draw by keyboard. What a click or a drag does is its hand's to say.
 */
@customElement('yw-picture-board')
export class PictureBoard extends PageElement implements PointedBoard, CursorBoard {
  @property({ attribute: false }) picture: HTMLCanvasElement | null = null;
  @property({ attribute: false }) map: TrueMap | null = null;
  @property({ attribute: false }) hand: BoardHand | null = null;
  /** Changes whenever what the hand draws has changed. */
  @property({ type: Number }) turns = 0;
  /** What is to be seen first, in the true plane; by default the whole picture. */
  @property({ attribute: false }) first: Box | null = null;
  @property() label = '';
  @state() sight: Sight | null = null;
  @state() private spoken = '';
  private readonly cursor = new BoardCursor(this);
  private readonly pointers = new BoardPointers(this);
  private readonly words = freshId('board-words');
  private readonly smaller = new Map<number, HTMLCanvasElement>();
  private speaking = 0;
  private readonly sizes = new ResizeObserver(() => this.measure());

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sizes.disconnect();
    this.pointers.stop();
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
      this.showAll();
      this.cursor.at = null;
    }
  }

  protected override updated(): void {
    const { picture, map, sight } = this;
    const { hidden } = this.pointers;
    const glass = this.querySelector<HTMLCanvasElement>('.board-glass');
    if (glass !== null && hidden !== null && picture !== null && map !== null && sight !== null) {
      drawGlass(glass, picture, map, sight, hidden);
    }
  }

  private get frame(): HTMLElement {
    return this.querySelector<HTMLElement>('.board-frame')!;
  }

  override focus(): void {
    this.frame.focus();
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

  /** @param at the board's place that stays where it is; by default the cursor's, or the middle */
  zoomBy(by: number, at?: Point): void {
    const { sight, map, cursor } = this;
    if (sight === null || map === null) return;
    const middle: Point = [sight.width / 2, sight.height / 2];
    const about = at ?? (cursor.at === null ? middle : toBoard(sight, cursor.at));
    this.sight = zoomAbout(sight, about, by, mostZoom(map, sight));
  }

  protected override render(): TemplateResult | typeof nothing {
    const { picture, map, hand, sight, pointers } = this;
    if (picture === null || map === null || hand === null) return nothing;
    return html`<div
        class="board-frame"
        role="application"
        tabindex="0"
        aria-label=${this.label}
        aria-describedby=${this.words}
        @pointerdown=${this.onDown}
        @pointermove=${(event: PointerEvent) => pointers.onMove(event)}
        @pointerup=${(event: PointerEvent) => pointers.onUp(event)}
        @pointercancel=${(event: PointerEvent) => pointers.onCancel(event)}
        @pointerleave=${this.onLeave}
        @wheel=${this.onWheel}
        @keydown=${this.onKey}
        @contextmenu=${(event: Event) => event.preventDefault()}
      >
        ${sight === null ? nothing : [this.laid(picture, map, sight), this.drawing(hand, sight), this.glass(sight)]}
      </div>
      <p class="board-words" id=${this.words} role="status">${this.spoken}</p>`;
  }

  private drawing(hand: BoardHand, sight: Sight): SVGTemplateResult {
    const { at, held } = this.cursor;
    return svg`<svg class="board-drawing" width=${sight.width} height=${sight.height} aria-hidden="true">
      ${hand.draw(sight)} ${at === null ? nothing : drawCursor(toBoard(sight, at), held)}
    </svg>`;
  }

  /** What lies under the finger, larger, in a corner that the finger is not in. */
  private glass(sight: Sight): TemplateResult | typeof nothing {
    const { hidden } = this.pointers;
    if (hidden === null) return nothing;
    const near = hidden[0] < sight.width / 2 && hidden[1] < sight.height / 2;
    return html`<canvas class=${near ? 'board-glass right' : 'board-glass'} width="220" height="220" aria-hidden="true"></canvas>`;
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

  /** Says something to those who listen. */
  say(words: string): void {
    clearTimeout(this.speaking);
    this.spoken = words;
  }

  saySoon(words: () => string): void {
    clearTimeout(this.speaking);
    this.speaking = window.setTimeout(() => {
      this.spoken = words();
    }, QUIET);
  }

  place(event: MouseEvent): Point {
    const box = this.frame.getBoundingClientRect();
    return [event.clientX - box.left - this.frame.clientLeft, event.clientY - box.top - this.frame.clientTop];
  }

  reach(kind: string): number {
    return (REACH[kind] ?? REACH.mouse!) / (this.sight?.zoom ?? 1);
  }

  private readonly onDown = (event: PointerEvent): void => {
    this.frame.setPointerCapture(event.pointerId);
    this.cursor.hide();
    this.pointers.onDown(event);
    this.requestUpdate();
  };

  private readonly onLeave = (): void => {
    this.hand?.hover(null, 0);
    this.requestUpdate();
  };

  private readonly onWheel = (event: WheelEvent): void => {
    event.preventDefault();
    const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
    this.zoomBy(2 ** (-(event.deltaY * lines) / 240), this.place(event));
  };

  private readonly onKey = (event: KeyboardEvent): void => {
    if (this.cursor.onKey(event)) {
      event.preventDefault();
      event.stopPropagation();
      this.requestUpdate();
    }
  };
}

function mostZoom(map: TrueMap, { middle }: Sight): number {
  const step = distance(carry(map.toPicture, middle), carry(map.toPicture, [middle[0] + 1e-3, middle[1]])) / 1e-3;
  return Number.isFinite(step) && step > 0 ? LARGEST * step : 1e4;
}

function drawCursor([x, y]: Point, held: boolean): SVGTemplateResult {
  const arm = held ? 22 : 16;
  const cross = `M${x - arm} ${y}h${arm - 4}m8 0h${arm - 4}M${x} ${y - arm}v${arm - 4}m0 8v${arm - 4}`;
  return svg`<path class="board-under" d=${cross} /><path class="board-cursor" d=${cross} />`;
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-picture-board': PictureBoard;
  }
}
