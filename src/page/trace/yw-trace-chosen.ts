import { html, type nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatLength } from '../../quilt/format-length.ts';
import { lengthIn } from '../../quilt/measure.ts';
import { bulgeOf, edgeOfLine, outlineOfSteps } from '../../quilt/tracing/line-shape.ts';
import { bendByRadius, bendBySagitta, bendLine, moveCorner } from '../../quilt/tracing/mend-lines.ts';
import { cornerOf, lineOf } from '../../quilt/tracing/tracing.ts';
import { radiusOf, sagittaOf } from '../../shape/arc-through.ts';
import { edgeLength, outlineBox } from '../../shape/outline-measures.ts';
import type { Point } from '../../shape/point.ts';
import { freshId, PageElement } from '../page-element.ts';
import { typedLength, UNITS, type Units, written } from '../written.ts';
import { typedField } from './trace-field.ts';
import type { Tracer } from './tracer.ts';

/** The corner, line or patch that is chosen, by its numbers. */
@customElement('yw-trace-chosen')
export class TraceChosen extends PageElement {
  @property({ attribute: false }) tracer: Tracer | null = null;
  /** Changes whenever what is shown has changed. */
  @property({ type: Number }) turns = 0;
  /** Names of roles to choose from. */
  @property({ attribute: false }) roles: readonly string[] = [];
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private fault: { readonly field: string; readonly why: string } | null = null;
  private readonly ids = freshId('trace-chosen');

  protected override render(): TemplateResult | typeof nothing {
    const chosen = this.tracer?.chosen ?? null;
    if (chosen === null) {
      return html`<p class="hint">Nothing is chosen. A patch is chosen when you close it; with “Choose” a click chooses any part.</p>`;
    }
    switch (chosen.kind) {
      case 'corner':
        return this.corner(chosen.id);
      case 'line':
        return this.line(chosen.id);
      default:
        return this.patch(chosen.id);
    }
  }

  private corner(id: number): TemplateResult {
    const { tracing } = this.tracer!;
    const { at } = cornerOf(tracing, id);
    const origin = tracing.centre ?? [0, 0];
    const from = tracing.centre === undefined ? 'from the bottom left' : 'from the centre';
    const field = (name: 'x' | 'y', label: string): TemplateResult => {
      const axis = name === 'x' ? 0 : 1;
      return this.length(name, label, at[axis] - origin[axis], (value) => {
        const to: Point = axis === 0 ? [value + origin[0], at[1]] : [at[0], value + origin[1]];
        this.tracer!.step(moveCorner(tracing, id, to), 'The corner is moved.');
      });
    };
    return html`<h3>A corner</h3>
      <div class="numbers">${field('x', `To the right, ${from}`)} ${field('y', `Up, ${from}`)}</div>
      ${this.delete('this corner', 'Between two lines alone they become one; else its lines and patches go too.')}`;
  }

  private line(id: number): TemplateResult {
    const tracer = this.tracer!;
    const { tracing } = tracer;
    const line = lineOf(tracing, id);
    const edge = edgeOfLine(tracing, line);
    const bulge = bulgeOf(tracing, line);
    return html`<h3>${bulge === 0 ? 'A straight line' : 'An arc'}, ${written(edgeLength(edge), this.units)} long</h3>
      <div class="numbers">
        ${this.length('sagitta', 'Bows by', sagittaOf(edge.from, edge.to, bulge), (value) =>
          tracer.step(bendBySagitta(tracing, id, value), 'The line is bent.'),
        )}
        ${this.length('radius', 'Radius', bulge === 0 ? null : radiusOf(edge.from, edge.to, bulge), (value) =>
          tracer.step(bendByRadius(tracing, id, value), 'The line is bent.'),
        )}
      </div>
      <p class="hint">“Bows by” is how far its middle stands off the straight. A number below zero bends it the other way.</p>
      <div class="trace-buttons">
        <button type="button" ?disabled=${bulge === 0} @click=${() => tracer.step(bendLine(tracing, id, null), 'The line is straight.')}>
          Make it straight
        </button>
      </div>
      ${this.delete('this line', 'The patches along it go too.')}`;
  }

  private patch(id: number): TemplateResult {
    const tracer = this.tracer!;
    const { tracing } = tracer;
    const patch = tracing.patches.find((each) => each.id === id)!;
    const box = outlineBox(outlineOfSteps(tracing, patch.steps));
    const size = [0, 1]
      .map((axis) => written(box.max[axis as 0 | 1] - box.min[axis as 0 | 1], this.units))
      .join(' by ');
    const list = `${this.ids}-roles`;
    return html`<h3>Patch ${tracer.nameOf(patch)}, ${size}</h3>
      <div class="numbers">
        ${typedField({
          id: `${this.ids}-role`,
          label: 'Role',
          hint: 'its place in the colours, such as “Hours, dark”',
          value: patch.role,
          list,
          fault: this.faultOf('role'),
          onTyped: (text) => this.attempt('role', () => this.rename(id, text)),
        })}
        <datalist id=${list}>${this.roles.map((name) => html`<option value=${name}></option>`)}</datalist>
        ${typedField({
          id: `${this.ids}-unit`,
          label: 'Unit',
          hint: 'the letter of the paper it is pieced on',
          value: patch.unit,
          fault: this.faultOf('unit'),
          onTyped: (text) => this.attempt('unit', () => this.moveTo(id, text)),
        })}
        ${typedField({
          id: `${this.ids}-number`,
          label: 'Number',
          hint: 'in the sewing order; empty: found for you',
          value: patch.number === undefined ? '' : `${patch.number}`,
          fault: this.faultOf('number'),
          onTyped: (text) => this.attempt('number', () => this.renumber(id, text)),
        })}
      </div>
      ${this.delete('this patch', 'Lines of its neighbours stay.')}`;
  }

  private rename(id: number, text: string): void {
    if (text === '') throw new RangeError('Expected a name for the role.');
    this.tracer!.describe(id, { role: text });
  }

  private moveTo(id: number, text: string): void {
    const unit = text.toUpperCase();
    if (!/^[A-Z]$/.test(unit)) throw new RangeError('Expected one letter, A to Z.');
    this.tracer!.describe(id, { unit });
  }

  private renumber(id: number, text: string): void {
    const number = Number(text);
    if (text !== '' && !(Number.isInteger(number) && number >= 1 && number <= 999)) {
      throw new RangeError('Expected a whole number from 1 to 999, or nothing.');
    }
    this.tracer!.describe(id, { number: text === '' ? null : number });
  }

  private length(field: string, label: string, value: number | null, use: (value: number) => void): TemplateResult {
    const { quilt, shown } = this.units;
    const text =
      value === null ? '' : formatLength(lengthIn(shown, `${value} ${quilt}`), shown, { denominator: 64, decimals: 2 });
    return typedField({
      id: `${this.ids}-${field}`,
      label,
      value: text,
      fault: this.faultOf(field),
      onTyped: (typed) => this.attempt(field, () => use(lengthIn(quilt, typedLength(typed, this.units)))),
    });
  }

  private faultOf(field: string): string | null {
    return this.fault?.field === field ? this.fault.why : null;
  }

  private attempt(field: string, change: () => void): void {
    this.fault = null;
    try {
      change();
    } catch (error) {
      this.fault = { field, why: (error as Error).message };
    }
  }

  private delete(what: string, hint: string): TemplateResult {
    return html`<div class="trace-buttons">
      <button type="button" @click=${() => this.tracer!.deleteChosen()}>Delete ${what}</button>
      <span class="hint">${hint}</span>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-trace-chosen': TraceChosen;
  }
}
