import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { checkDrawing, type DrawingFault } from '../cutting/check-drawing.ts';
import { type JoinOrder, joinOrder } from '../cutting/join-order.ts';
import { sayDrawingFault, tellJoins } from '../cutting/say-joins.ts';
import { sayList } from '../cutting/say-step-fault.ts';
import { usualTolerance } from '../cutting/sewing-unit.ts';
import { drawJoin } from '../draw/draw-sewing.ts';
import { CARE } from '../plan/care.ts';
import { formatLength } from '../quilt/format-length.ts';
import { convert, lengthIn } from '../quilt/measure.ts';
import { placesOf } from '../quilt/places.ts';
import type { Block, Quilt, Unit } from '../quilt/quilt.ts';
import { unitsOf } from '../quilt/units-of.ts';
import { outlineFault } from '../shape/outline-fault.ts';
import { freshId, PageElement } from './page-element.ts';
import { colourOfRole } from './role-colour.ts';
import { shownDrawing } from './shown-drawing.ts';
import { UNITS, type Units, written } from './written.ts';
import './yw-unit-order.ts';

/** Corners so near were meant to meet. */
const NEAR = '1/16 in';

interface Looked {
  readonly units: readonly Unit[];
  readonly joins: JoinOrder | null;
  readonly faults: readonly DrawingFault[];
}

/**
 * At the machine: each foundation's sewing order step by step, how directional pieces lie before the flip, in which order the block
 * is joined, and whether its drawing fits. Nothing of it is worked out before it is opened.
 */
@customElement('yw-sewing')
export class Sewing extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) block: Block | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private opened = false;
  private readonly stem = freshId('sewing');
  private looked: Looked | null = null;
  private lookedAt: readonly unknown[] = [];

  protected override willUpdate(changed: PropertyValues): void {
    const at = [this.block?.form, this.block?.units, this.quilt?.unit];
    if (this.opened && (changed.has('opened') || at.some((part, i) => part !== this.lookedAt[i]))) {
      this.lookedAt = at;
      this.looked = this.quilt === null || this.block === null ? null : lookAt(this.block, this.quilt);
    }
  }

  protected override render(): TemplateResult | typeof nothing {
    const { quilt, block } = this;
    if (quilt === null || block === null) {
      return nothing;
    }
    return html`<details class="drawer sewing" @toggle=${this.onToggle}>
      <summary>Sewing and joining ${block.name}</summary>
      ${this.looked === null ? nothing : this.contents(quilt, block, this.looked)}
    </details>`;
  }

  private onToggle(event: Event): void {
    if (event.target instanceof HTMLDetailsElement && event.target.matches('.drawer')) {
      this.opened = event.target.open;
    }
  }

  private contents(quilt: Quilt, block: Block, { units, joins, faults }: Looked): TemplateResult {
    const onPaper = units.filter((unit) => unit.paper);
    return html`
      ${joins === null ? nothing : this.drawingChecked(faults, joins)}
      ${onPaper.map((unit) => html`<yw-unit-order .quilt=${quilt} .block=${block} .unit=${unit}></yw-unit-order>`)}
      ${onPaper.length === 0 ? html`<p class="hint">Nothing of this block is sewn on paper.</p>` : nothing}
      ${joins === null ? html`<p class="hint">Its pieces are loose, so nothing is said of how they are joined.</p>` : this.joining(quilt, joins)}
      <p class="hint">${CARE.find((line) => line.includes('iron'))}</p>
    `;
  }

  private drawingChecked(faults: readonly DrawingFault[], { apart }: JoinOrder): TemplateResult {
    const write = (length: number): string =>
      formatLength(convert(length, this.units.quilt, this.units.shown), this.units.shown, {
        denominator: 64,
        decimals: 3,
      });
    const open = faults.filter(({ kind }) => kind === 'hole');
    const wrong = faults.filter(({ kind }) => kind !== 'hole');
    return html`<section class="drawing-checked">
      <h3>The drawing</h3>
      ${
        wrong.length === 0
          ? html`<p>Nothing is amiss: it closes round the centre, joined sides are equal, points meet, and there is neither gap nor overlap.</p>`
          : html`<ul class="faults">
              ${wrong.map((fault) => html`<li class="fault">${sayDrawingFault(fault, write)}</li>`)}
            </ul>`
      }
      ${open.map((fault) => html`<p>${sayDrawingFault(fault, write)}</p>`)}
      ${
        apart.length > 1
          ? html`<p>Not all of it hangs together: there are ${apart.length} lots, with ${sayList(apart.slice(0, 6).map(({ name }) => name))}${apart.length > 6 ? ' and more' : ''} among them. What lies between comes from elsewhere.</p>`
          : nothing
      }
    </section>`;
  }

  private joining(quilt: Quilt, joins: JoinOrder): TemplateResult | typeof nothing {
    const colourOf = (role: string): string => colourOfRole(quilt, role);
    const told = tellJoins(joins, (length) => written(length, this.units));
    if (told.length === 0) {
      return nothing;
    }
    return html`<section class="joining">
      <h3>Joining the pieces</h3>
      <p class="hint">
        Long joins are pressed open, curves to the side where they lie flat (common practice). Thick lines are the seams of the step, rings
        the places where seams must meet.
      </p>
      <ol class="steps">
        ${told.map(
          ({ step, what, how }, i) => html`<li>
            <div class="step-picture" style="width:9rem">${shownDrawing(drawJoin(step, colourOf), `${this.stem}-join-${i}`)}</div>
            <p><strong>${what}.</strong> ${how}</p>
          </li>`,
        )}
      </ol>
    </section>`;
  }
}

/** Patches that cannot be are told elsewhere, and left out here. */
function lookAt(block: Block, quilt: Quilt): Looked {
  const units = unitsOf(block, quilt.unit)
    .map((unit) => ({ ...unit, patches: unit.patches.filter((patch) => outlineFault(patch.outline) === null) }))
    .filter((unit) => unit.patches.length > 0 && placesOf(unit).length > 0);
  if (block.loose === true || units.length === 0) {
    return { units, joins: null, faults: [] };
  }
  const finest = units.map((unit) => usualTolerance(unit.patches.map((patch) => patch.outline)));
  const closeness = { tolerance: Math.min(...finest), near: lengthIn(quilt.unit, NEAR) };
  return { units, joins: joinOrder(units), faults: checkDrawing(units, closeness) };
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-sewing': Sewing;
  }
}
