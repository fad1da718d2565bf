import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { isUntouched, type MeasuredRow, type RowFault } from '../quilt/measured/measured-row.ts';
import { PIECE_FACINGS } from '../quilt/measured/piece-facing.ts';
import type { SizeSpec } from '../quilt/measured/shape-spec.ts';
import { SHAPES, shapeCalled } from '../quilt/measured/shapes.ts';
import { freshId, PageElement } from './page-element.ts';

/** One row of the table of measured pieces: its shape, the sizes that the shape asks for, and what is wrong with them in place. */
@customElement('yw-measured-row')
export class MeasuredRowFields extends PageElement {
  @property({ attribute: false }) row: MeasuredRow | null = null;
  @property({ type: Number }) number = 1;
  @property({ attribute: false }) faults: readonly RowFault[] = [];
  /** The id of the list of roles to choose from. */
  @property() roles = '';
  private readonly stem = freshId('piece');

  protected override render(): TemplateResult | typeof nothing {
    const { row } = this;
    if (row === null) {
      return nothing;
    }
    const spec = shapeCalled(row.shape);
    return html`<fieldset class="measured-row" ?data-bad=${this.faults.length > 0 && !isUntouched(row)}>
      <legend>Piece ${this.number}${row.name === '' ? '' : `: ${row.name}`}</legend>
      ${this.shape(row)}
      ${(spec?.sizes ?? []).map((size) => this.size(row, size))}
      ${this.text(row, 'count', 'How many', '')}
      ${this.text(row, 'name', 'Name', '')}
      ${this.text(row, 'role', 'Role', 'as in the colour scheme')}
      ${this.facing(row)}
      <button type="button" class="quiet" @click=${() => this.send(null)}>Take piece ${this.number} out</button>
    </fieldset>`;
  }

  private shape(row: MeasuredRow): TemplateResult {
    const known = shapeCalled(row.shape);
    return this.field(
      'shape',
      'Shape',
      known?.about ?? '',
      (described, invalid) => html`<select
        id="${this.stem}-shape"
        aria-describedby=${described}
        aria-invalid=${invalid}
        @change=${(event: Event) => this.send({ ...row, shape: typedIn(event) })}
      >
        ${known === undefined ? html`<option value=${row.shape} .selected=${live(true)}>${row.shape}</option>` : nothing}
        ${SHAPES.map(({ shape, title }) => html`<option value=${shape} .selected=${live(shape === known?.shape)}>${title}</option>`)}
      </select>`,
    );
  }

  private size(row: MeasuredRow, { size, label, hint = '' }: SizeSpec): TemplateResult {
    const put = (text: string): void => this.send({ ...row, sizes: { ...row.sizes, [size]: text } });
    return this.field(size, label, hint, (described, invalid) =>
      this.input(size, row.sizes[size] ?? '', described, invalid, put),
    );
  }

  private text(row: MeasuredRow, field: 'count' | 'name' | 'role', label: string, hint: string): TemplateResult {
    const put = (text: string): void => this.send({ ...row, [field]: text });
    return this.field(field, label, hint, (described, invalid) =>
      this.input(field, row[field], described, invalid, put, field === 'role' ? this.roles : ''),
    );
  }

  private facing(row: MeasuredRow): TemplateResult {
    const own = row.facing.trim().toLowerCase();
    const known = PIECE_FACINGS.find(({ word, alias }) => word === own || alias.includes(own));
    return this.field(
      'facing',
      'Its print points',
      '',
      (described, invalid) => html`<select
        id="${this.stem}-facing"
        aria-describedby=${described}
        aria-invalid=${invalid}
        @change=${(event: Event) => this.send({ ...row, facing: typedIn(event) })}
      >
        ${known === undefined ? html`<option value=${row.facing} .selected=${live(true)}>${row.facing}</option>` : nothing}
        ${PIECE_FACINGS.map(({ word }) => html`<option value=${word} .selected=${live(word === known?.word)}>${word}</option>`)}
      </select>`,
    );
  }

  private input(
    field: string,
    value: string,
    described: string | typeof nothing,
    invalid: 'true' | typeof nothing,
    put: (text: string) => void,
    list = '',
  ): TemplateResult {
    return html`<input
      id="${this.stem}-${field}"
      type="text"
      autocomplete="off"
      spellcheck="false"
      .value=${live(value)}
      list=${list === '' ? nothing : list}
      aria-describedby=${described}
      aria-invalid=${invalid}
      @change=${(event: Event) => put(typedIn(event))}
    />`;
  }

  private field(
    field: string,
    label: string,
    hint: string,
    control: (described: string | typeof nothing, invalid: 'true' | typeof nothing) => TemplateResult,
  ): TemplateResult {
    const id = `${this.stem}-${field}`;
    const untouched = this.row === null || isUntouched(this.row);
    const fault = untouched ? undefined : this.faults.find((one) => one.field === field)?.message;
    const parts = [hint === '' ? '' : `${id}-hint`, fault === undefined ? '' : `${id}-fault`].filter(
      (part) => part !== '',
    );
    return html`<div class="field" data-field=${field}>
      <label for=${id}>${label}</label>
      ${control(parts.length === 0 ? nothing : parts.join(' '), fault === undefined ? nothing : 'true')}
      ${hint === '' ? nothing : html`<p class="hint" id="${id}-hint">${hint}</p>`}
      <p class="fault" id="${id}-fault" role="alert" ?hidden=${fault === undefined}>${fault ?? ''}</p>
    </div>`;
  }

  /** Null: the row is to go. */
  private send(row: MeasuredRow | null): void {
    this.dispatchEvent(new CustomEvent<MeasuredRow | null>('yw-row', { detail: row, bubbles: true }));
  }
}

const typedIn = (event: Event): string => (event.target as HTMLInputElement | HTMLSelectElement).value;

declare global {
  interface HTMLElementTagNameMap {
    'yw-measured-row': MeasuredRowFields;
  }
}
