import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { blockPatches, printInBlock } from '../cutting/block-patches.ts';
import { facingChoices, facingToward } from '../cutting/facing-choices.ts';
import { type Box, type Drawing, outlineRun, type Run } from '../draw/display-list.ts';
import { drawBlock } from '../draw/draw-block.ts';
import { pathData, short } from '../draw/path-data.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { Block, Cloth, Facing, Quilt } from '../quilt/quilt.ts';
import { edgesOf } from '../shape/outline.ts';
import { outlineCentroid } from '../shape/outline-measures.ts';
import { add, degreesFromUp, fromUp, type Point, scale, subtract } from '../shape/point.ts';
import { blockExtent } from './block-extent.ts';
import { type ChosenPatch, type PatchInSight, patchInSight } from './chosen-patch.ts';
import { sendEdit } from './edit-event.ts';
import { sayFacing } from './facing-words.ts';
import { freshId, PageElement } from './page-element.ts';
import { type FacingScope, setFacingOf } from './patch-edits.ts';
import { shownDrawing } from './shown-drawing.ts';
import { WidthWatch } from './width-watch.ts';

/** How long the arrow that is pulled stands on the page, in pixels: room for a finger beyond the patch. */
const ARROW = 64;
/** And at least, where the block's edge is near: what lies beyond it cannot be pulled. */
const LEAST = 30;
/** As wide as a finger, in pixels. */
const FINGER = 22;

/** Degrees within which a facing with a name catches the arrow. */
const CATCH = 6;

/** A print whose repeat is not known is drawn with one of about an inch. */
export const usualRepeat = (unit: Quilt['unit']): number => (unit === 'in' ? 1 : 2.5);

/** The finished block with its prints at their true size, and on one patch the arrow by which its print is turned. */
@customElement('yw-prints-picture')
export class PrintsPicture extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) block: Block | null = null;
  @property({ attribute: false }) chosen: ChosenPatch | null = null;
  @property() scope: FacingScope = 'role';
  /** Where the print would face while its arrow is being pulled. */
  @state() private pulled: Facing | null = null;
  private readonly watch = new WidthWatch(this, '.prints-stage');
  private readonly stem = freshId('prints');

  protected override render(): TemplateResult | typeof nothing {
    const { quilt, block, watch } = this;
    const sight = quilt === null || block === null ? null : patchInSight(quilt, block, this.chosen);
    if (quilt === null || block === null || sight === null) {
      return nothing;
    }
    return html`<div class="prints-stage drawing-frame" @click=${this.onClick}>
      ${watch.width === 0 ? nothing : this.picture(quilt, block, sight)}
    </div>`;
  }

  private picture(quilt: Quilt, block: Block, sight: PatchInSight): TemplateResult {
    const shown =
      this.pulled === null ? quilt : setFacingOf(this.facingOf(block, sight), this.scope, this.pulled)(quilt);
    const drawing = this.drawing(shown, shown.blocks.find(({ id }) => id === block.id)!);
    const facing = this.pulled ?? sight.facing;
    return html`${shownDrawing(drawing, this.stem)} ${this.hand(drawing, sight, facing)}`;
  }

  private drawing(quilt: Quilt, block: Block): Drawing {
    const scheme = quilt.schemes.find(({ id }) => id === quilt.scheme)!;
    const textSize = (this.watch.smallText * blockExtent(block, quilt.unit)) / this.watch.width;
    const trueRepeat = ({ repeat }: Cloth): number =>
      repeat === undefined ? usualRepeat(quilt.unit) : lengthIn(quilt.unit, repeat);
    return drawBlock({ quilt, scheme, block, blanks: [], textSize, trueRepeat });
  }

  /** What lies over the drawing: the chosen patch, its edges where one is to be chosen, and the arrow. */
  private hand({ box }: Drawing, sight: PatchInSight, facing: Facing): TemplateResult {
    const { each } = sight;
    const pixel = box.width / this.watch.width;
    const middle = outlineCentroid(each.outline);
    const degrees = printInBlock(facing, each);
    const length = Math.max(
      LEAST * pixel,
      Math.min(ARROW * pixel, roomWithin(box, middle, fromUp(degrees ?? 0)) - 8 * pixel),
    );
    return html`<svg class="hand" viewBox=${viewBox(box)}>
      <path class="hand-patch" d=${path(outlineRun(each.outline))} />
      ${facing.to === 'along' ? this.edges(sight, facing) : nothing}
      ${
        this.pulled === null
          ? nothing
          : facingChoices(each, facing.from).map(({ degrees: at }) =>
              dot(add(middle, scale(fromUp(at), length)), 3 * pixel),
            )
      }
      ${this.arrow(sight, facing, middle, degrees, length, pixel)}
    </svg>`;
  }

  private arrow(
    sight: PatchInSight,
    facing: Facing,
    middle: Point,
    degrees: number | null,
    length: number,
    pixel: number,
  ): SVGTemplateResult {
    const way = fromUp(degrees ?? 0);
    const tip = add(middle, scale(way, length));
    const barb = (turn: number): Point => add(tip, scale(fromUp((degrees ?? 0) + turn), 15 * pixel));
    const tail = add(middle, scale(way, -length * 0.4));
    const name = `${sight.each.unit.id}${sight.each.patch.number}`;
    return svg`<g
      class="grip"
      data-free=${degrees === null}
      tabindex="0"
      role="slider"
      aria-label="Where the print of ${name} points"
      aria-valuemin="0"
      aria-valuemax="359"
      aria-valuenow=${Math.round(degrees ?? 0) % 360}
      aria-valuetext=${sayFacing(facing, this.block ?? {})}
      @pointerdown=${(event: PointerEvent) => this.onDown(event)}
      @pointermove=${(event: PointerEvent) => this.onMove(event, sight, middle)}
      @pointerup=${() => this.onUp(sight)}
      @pointercancel=${() => this.drop()}
      @keydown=${(event: KeyboardEvent) => this.onKey(event, sight, degrees)}
    >
      <circle class="grip-room" cx=${short(tip[0])} cy=${short(-tip[1])} r=${short(FINGER * pixel)} />
      <path class="grip-halo" d=${path(line(tail, tip), line(barb(145), tip, barb(-145)))} />
      <path class="grip-line" d=${path(line(tail, tip), line(barb(145), tip, barb(-145)))} />
    </g>`;
  }

  private edges({ each }: PatchInSight, facing: Facing): readonly SVGTemplateResult[] {
    return edgesOf(each.outline).flatMap(({ from, to, arc }, edge) =>
      arc !== undefined
        ? []
        : [
            svg`<path class="hand-edge" data-edge=${edge} data-own=${edge === facing.edge} d=${path(line(from, to))} />`,
          ],
    );
  }

  /** A click on an edge of the chosen patch takes it, a second one turns its sense about; any other patch is chosen. */
  private onClick(event: MouseEvent): void {
    const { quilt, block } = this;
    const target = event.target as Element;
    if (quilt === null || block === null || target.closest('.grip') !== null) {
      return;
    }
    const edge = target.closest('[data-edge]')?.getAttribute('data-edge');
    const sight = patchInSight(quilt, block, this.chosen);
    if (edge != null && sight !== null) {
      const { edge: old, sense, ...rest } = sight.facing;
      const flips = Number(edge) === old && sense !== 'backward';
      this.set(sight, { ...rest, edge: Number(edge), ...(flips && { sense: 'backward' as const }) });
      return;
    }
    const group = target.closest('[data-patch]');
    const [name, place] = [group?.getAttribute('data-patch'), Number(group?.getAttribute('data-place'))];
    const found = blockPatches(block, quilt.unit).find(
      (one) => `${one.unit.id}${one.patch.number}` === name && one.place.index === place,
    );
    if (found !== undefined) {
      const detail: ChosenPatch = { unit: found.unit.id, number: found.patch.number, place };
      this.dispatchEvent(new CustomEvent('yw-choose', { detail, bubbles: true }));
    }
  }

  private onDown(event: PointerEvent): void {
    event.preventDefault();
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    (event.currentTarget as SVGElement).focus();
  }

  private onMove(event: PointerEvent, sight: PatchInSight, middle: Point): void {
    const grip = event.currentTarget as SVGGElement;
    const screen = grip.getScreenCTM();
    if (!grip.hasPointerCapture(event.pointerId) || screen === null) {
      return;
    }
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(screen.inverse());
    const away = subtract([x, -y], middle);
    if (away[0] !== 0 || away[1] !== 0) {
      this.pulled = facingToward(sight.each, degreesFromUp(away), sight.facing, CATCH);
    }
  }

  private onUp(sight: PatchInSight): void {
    const { pulled } = this;
    this.pulled = null;
    if (pulled !== null) {
      this.set(sight, pulled);
    }
  }

  private drop(): void {
    this.pulled = null;
  }

  /** Left and up turn anticlockwise as seen, right and down clockwise, by a degree, or by fifteen with Shift or by whole pages; Home is outward. */
  private onKey(event: KeyboardEvent, sight: PatchInSight, degrees: number | null): void {
    const step = KEYS.get(event.key);
    if (event.key === 'Escape') {
      this.drop();
    } else if (event.key === 'Home') {
      event.preventDefault();
      this.set(sight, { to: 'outward' });
    } else if (step !== undefined) {
      event.preventDefault();
      const by = event.shiftKey ? Math.sign(step) * 15 : step;
      this.set(sight, facingToward(sight.each, (degrees ?? 0) + by, sight.facing, 0.4));
    }
  }

  private set(sight: PatchInSight, facing: Facing): void {
    const { block } = this;
    const refusal =
      block === null ? null : sendEdit(this, setFacingOf(this.facingOf(block, sight), this.scope, facing));
    this.dispatchEvent(new CustomEvent<string | null>('yw-refused', { detail: refusal, bubbles: true }));
  }

  private facingOf(block: Block, { each, role }: PatchInSight) {
    return { block: block.id, unit: each.unit.id, number: each.patch.number, place: each.place.index, role: role.id };
  }
}

const KEYS: ReadonlyMap<string, number> = new Map([
  ['ArrowUp', 1],
  ['ArrowRight', -1],
  ['ArrowDown', -1],
  ['ArrowLeft', 1],
  ['PageUp', 15],
  ['PageDown', -15],
]);

/** How far the box reaches from a place inside it, one way. */
function roomWithin({ left, bottom, width, height }: Box, [x, y]: Point, [dx, dy]: Point): number {
  const across = dx > 0 ? (left + width - x) / dx : dx < 0 ? (left - x) / dx : Number.POSITIVE_INFINITY;
  const up = dy > 0 ? (bottom + height - y) / dy : dy < 0 ? (bottom - y) / dy : Number.POSITIVE_INFINITY;
  return Math.min(across, up);
}

const line = (...points: readonly Point[]): Run => {
  const [start = [0, 0], ...rest] = points;
  return { start, steps: rest.map((to) => ({ to })), closed: false };
};

const path = (...runs: readonly Run[]): string => pathData({ kind: 'path', class: 'seam', runs });

const dot = ([x, y]: Point, r: number): SVGTemplateResult =>
  svg`<circle class="hand-dot" cx=${short(x)} cy=${short(-y)} r=${short(r)} />`;

const viewBox = ({ left, bottom, width, height }: Box): string =>
  [left, -bottom - height, width, height].map(short).join(' ');

declare global {
  interface HTMLElementTagNameMap {
    'yw-prints-picture': PrintsPicture;
  }
}
