import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Length } from '../quilt/quilt.ts';
import { type Edit, sendEdit } from './edit-event.ts';
import { freshId, PageElement } from './page-element.ts';
import { fieldText, typedLength, type Units } from './written.ts';

/** One labelled field for a length. What cannot be read, or would make no quilt, is said under it; nothing else changes. */
@customElement('yw-length-field')
export class LengthField extends PageElement {
  @property() label = '';
  @property() hint = '';
  @property({ attribute: false }) value: Length = 0;
  @property({ attribute: false }) units: Units = { quilt: 'in', shown: 'in' };
  @property({ attribute: false }) edit: (length: Length) => Edit = () => (quilt) => quilt;
  @state() private fault: string | null = null;
  private readonly field = freshId('field');

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('value') || changed.has('units')) {
      this.fault = null;
    }
  }

  protected override render(): TemplateResult {
    return fieldTemplate(
      this.field,
      this.label,
      this.hint,
      this.fault,
      (described, invalid) => html`<input
      id=${this.field}
      type="text"
      autocomplete="off"
      spellcheck="false"
      .value=${fieldText(this.value, this.units)}
      aria-describedby=${described}
      aria-invalid=${invalid}
      @change=${this.onChange}
    />`,
    );
  }

  private onChange(event: Event): void {
    const text = (event.target as HTMLInputElement).value;
    try {
      this.fault = sendEdit(this, this.edit(typedLength(text, this.units)));
    } catch (error) {
      this.fault = error instanceof Error ? error.message : String(error);
    }
  }
}

/** One labelled field for a number without a unit: a count, a percentage, degrees, money. */
@customElement('yw-number-field')
export class NumberField extends PageElement {
  @property() label = '';
  @property() hint = '';
  @property({ type: Number }) value = 0;
  @property({ type: Number }) min = 0;
  @property({ type: Number }) max = 1e6;
  @property() step = '1';
  @property({ attribute: false }) edit: (value: number) => Edit = () => (quilt) => quilt;
  @state() private fault: string | null = null;
  private readonly field = freshId('field');

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('value')) {
      this.fault = null;
    }
  }

  protected override render(): TemplateResult {
    return fieldTemplate(
      this.field,
      this.label,
      this.hint,
      this.fault,
      (described, invalid) => html`<input
      id=${this.field}
      type="number"
      min=${this.min}
      max=${this.max}
      step=${this.step}
      .value=${`${this.value}`}
      aria-describedby=${described}
      aria-invalid=${invalid}
      @change=${this.onChange}
    />`,
    );
  }

  private onChange(event: Event): void {
    const input = event.target as HTMLInputElement;
    const value = input.valueAsNumber;
    if (Number.isNaN(value) || value < this.min || value > this.max) {
      this.fault = `Expected a number from ${this.min} to ${this.max}.`;
    } else if (this.step === '1' && !Number.isInteger(value)) {
      this.fault = 'Expected a whole number.';
    } else {
      this.fault = sendEdit(this, this.edit(value));
    }
  }
}

/** Label, field, hint and fault, tied together for those who listen to the page. */
function fieldTemplate(
  id: string,
  label: string,
  hint: string,
  fault: string | null,
  input: (described: string | typeof nothing, invalid: 'true' | typeof nothing) => TemplateResult,
): TemplateResult {
  const parts = [hint === '' ? '' : `${id}-hint`, fault === null ? '' : `${id}-fault`].filter((part) => part !== '');
  return html`<div class="field">
    <label for=${id}>${label}</label>
    ${input(parts.length === 0 ? nothing : parts.join(' '), fault === null ? nothing : 'true')}
    ${hint === '' ? nothing : html`<p class="hint" id="${id}-hint">${hint}</p>`}
    <p class="fault" id="${id}-fault" role="alert" ?hidden=${fault === null}>${fault ?? ''}</p>
  </div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-length-field': LengthField;
    'yw-number-field': NumberField;
  }
}
