import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { timesAlike } from '../../quilt/tracing/alike-copies.ts';
import { centreOfArcs, centreOfCopies } from '../../quilt/tracing/find-centre.ts';
import { describeUnit } from '../../quilt/tracing/mend-lines.ts';
import { countThatFits, sectorOf } from '../../quilt/tracing/sector.ts';
import { cornersOfPatch, type TracedUnit, type Tracing } from '../../quilt/tracing/tracing.ts';
import { subtract } from '../../shape/point.ts';
import { freshId, PageElement } from '../page-element.ts';
import { UNITS, type Units, written } from '../written.ts';
import { chosenField, typedField } from './trace-field.ts';
import type { Tracer } from './tracer.ts';

const MIRRORED = [
  { value: 'no', words: 'all alike' },
  { value: 'also', words: 'each with its mirror image beside it' },
  { value: 'alternate', words: 'every second one mirrored' },
] as const;

/** The centre, the units that stand about it, and their patches. */
@customElement('yw-trace-units')
export class TraceUnits extends PageElement {
  @property({ attribute: false }) tracer: Tracer | null = null;
  /** Changes whenever what is shown has changed. */
  @property({ type: Number }) turns = 0;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  /** How far a click may be off, in the quilt's unit. */
  @property({ type: Number }) slip = 1 / 32;
  @state() private fault: { readonly unit: string; readonly why: string } | null = null;
  @state() private centreWords = '';
  private readonly ids = freshId('trace-units');

  protected override render(): TemplateResult | typeof nothing {
    const { tracer } = this;
    if (tracer === null) return nothing;
    const { tracing } = tracer;
    return html`<h3>The centre</h3>
      <p>${tracing.centre === undefined ? 'Not marked. Units that repeat stand about it.' : 'Marked on the picture with a cross in a ring.'}</p>
      <div class="trace-buttons">
        <button type="button" aria-pressed=${tracer.tool === 'centre'} @click=${() => tracer.setTool('centre')}>Click it</button>
        <button type="button" @click=${() => this.fromArcs(tracer)}>Find it from the arcs</button>
      </div>
      <p class="hint" role="status">${this.centreWords}</p>
      ${tracing.units
        .filter((unit) => tracing.patches.some((patch) => patch.unit === unit.id))
        .map((unit) => this.unit(tracer, unit))}`;
  }

  private unit(tracer: Tracer, unit: TracedUnit): TemplateResult {
    const { tracing } = tracer;
    const patches = tracing.patches.filter((patch) => patch.unit === unit.id);
    const fits = fitting(tracing, unit, this.slip);
    return html`<fieldset class="trace-unit">
      <legend>Unit ${unit.id}</legend>
      <ul class="tags">
        ${patches.map(
          (patch) => html`<li>
            <button
              type="button"
              class="tag"
              aria-pressed=${tracer.chosen?.kind === 'patch' && tracer.chosen.id === patch.id}
              @click=${() => tracer.choose({ kind: 'patch', id: patch.id })}
            >
              ${tracer.nameOf(patch)}, ${patch.role}
            </button>
          </li>`,
        )}
      </ul>
      <div class="numbers">
        ${typedField({
          id: `${this.ids}-${unit.id}-count`,
          label: 'Times about the centre',
          hint:
            fits !== null
              ? `as traced, ${fits} go round`
              : unit.count > 1
                ? ''
                : 'one wedge is enough, if you say how many there are',
          value: `${unit.count}`,
          kind: 'number',
          fault: this.fault?.unit === unit.id ? this.fault.why : null,
          onTyped: (text) => this.setCount(tracer, unit, text),
        })}
        ${
          unit.count < 2
            ? nothing
            : chosenField({
                id: `${this.ids}-${unit.id}-mirrored`,
                label: 'Its copies',
                value: unit.mirrored,
                choices: MIRRORED,
                onChosen: (mirrored) => tracer.step(describeUnit(tracer.tracing, unit.id, { mirrored }), 'Noted.'),
              })
        }
      </div>
      ${this.alike(tracer, unit)}
      ${
        unit.count < 2 || unit.mirrored !== 'no'
          ? nothing
          : html`<button type="button" class="quiet" @click=${() => this.fromCopies(tracer, unit)}>
              Find the centre about which ${unit.count} of it join
            </button>`
      }
    </fieldset>`;
  }

  /** Offered where a ring was traced all round: one patch then stands for all, as their mean. */
  private alike(tracer: Tracer, unit: TracedUnit): TemplateResult | typeof nothing {
    const { tracing } = tracer;
    const { centre } = tracing;
    if (centre === undefined || unit.count > 1 || tracing.begun !== undefined) return nothing;
    const times = timesAlike(tracing, unit, centre, tracer.options.within);
    return times === null
      ? nothing
      : html`<button type="button" class="quiet" @click=${() => this.setCount(tracer, unit, `${times}`)}>
          What is traced is alike ${times} times over: take the mean of it, ${times} times
        </button>`;
  }

  private setCount(tracer: Tracer, unit: TracedUnit, text: string): void {
    const count = Number(text);
    if (!(Number.isInteger(count) && count >= 1 && count <= 360)) {
      this.fault = { unit: unit.id, why: 'Expected a whole number from 1 to 360.' };
      return;
    }
    this.fault = null;
    tracer.step(
      describeUnit(tracer.tracing, unit.id, { count }),
      `Unit ${unit.id} stands ${count} times about the centre.`,
    );
  }

  private fromArcs(tracer: Tracer): void {
    const found = centreOfArcs(tracer.tracing, this.slip);
    if (found === null) {
      this.centreWords = 'There are no arcs yet that tell a centre.';
    } else if (found.within > 8 * this.slip) {
      this.centreWords = `The arcs are too short to tell it: they leave it open by ${written(found.within, this.units)}. Trace arcs farther round, click it, or say how many wedges there are.`;
    } else {
      tracer.markCentre(found.centre);
      this.centreWords = `Found, to within ${written(Math.max(found.within, this.slip), this.units)}.`;
    }
  }

  private fromCopies(tracer: Tracer, unit: TracedUnit): void {
    const found = centreOfCopies(tracer.tracing, unit, 16 * this.slip);
    if (found === null) {
      this.centreWords = `No two corners of unit ${unit.id} tell the same centre for ${unit.count} copies. Click it instead.`;
    } else {
      tracer.markCentre(found);
      this.centreWords = `Found: ${unit.count} copies of unit ${unit.id} join about it.`;
    }
  }
}

/** How many copies of a unit go round, if its sides say so. */
function fitting(tracing: Tracing, unit: TracedUnit, slip: number): number | null {
  const { centre } = tracing;
  if (centre === undefined) return null;
  const places = tracing.patches
    .filter((patch) => patch.unit === unit.id)
    .flatMap((patch) => cornersOfPatch(tracing, patch).map((corner) => subtract(corner.at, centre)));
  const sector = sectorOf(places, 4 * slip);
  return sector === null ? null : countThatFits(sector);
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-trace-units': TraceUnits;
  }
}
