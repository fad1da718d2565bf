import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Length } from '../quilt/quilt.ts';
import { type Edit, sendEdit } from './edit-event.ts';
import { freshId, PageElement } from './page-element.ts';
import { fieldText, typedLength, UNITS, type Units } from './written.ts';

type Described = string | typeof nothing;
type Invalid = 'true' | typeof nothing;

/**
 * One labelled field: label, control, hint and fault, tied together for those who listen to the page. What cannot be read,
 * or would make no quilt, is said under it; nothing else changes, and what was typed stays to be mended.
 */
abstract class Field extends PageElement {
  @property() label = '';
  @property() hint = '';
  @state() protected fault: string | null = null;
  protected readonly field = freshId('field');

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('value') || changed.has('units')) {
      this.fault = null;
    }
  }

  /** Sends what `make` makes; it may refuse with words for a person, as the app may. */
  protected send(make: () => Edit): void {
    try {
      this.fault = sendEdit(this, make());
    } catch (error) {
      this.fault = error instanceof Error ? error.message : String(error);
    }
  }

  protected abstract control(described: Described, invalid: Invalid): TemplateResult;

  protected override render(): TemplateResult {
    return html`<div class="field">
      <label for=${this.field}>${this.label}</label>
      ${this.described()} ${this.below()}
    </div>`;
  }

  /** The control, told what is said of it below. */
  protected described(): TemplateResult {
    const { field: id, hint, fault } = this;
    const parts = [hint === '' ? '' : `${id}-hint`, fault === null ? '' : `${id}-fault`].filter((part) => part !== '');
    return this.control(parts.length === 0 ? nothing : parts.join(' '), fault === null ? nothing : 'true');
  }

  protected below(): TemplateResult {
    const { field: id, hint, fault } = this;
    return html`${hint === '' ? nothing : html`<p class="hint" id="${id}-hint">${hint}</p>`}
      <p class="fault" id="${id}-fault" role="alert" ?hidden=${fault === null}>${fault ?? ''}</p>`;
  }
}

/** For a length. Where it is optional, an empty field is none. */
@customElement('yw-length-field')
export class LengthField extends Field {
  @property({ attribute: false }) value: Length | null = 0;
  @property({ type: Boolean }) optional = false;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @property({ attribute: false }) edit: (length: Length) => Edit = () => (quilt) => quilt;
  /** Offered to choose from; anything else may be typed all the same. */
  @property({ attribute: false }) offered: readonly string[] = [];
  /** What an empty field means, where it is optional. */
  @property({ attribute: false }) clear: () => Edit = () => (quilt) => quilt;

  protected control(described: Described, invalid: Invalid): TemplateResult {
    return html`<input
      id=${this.field}
      type="text"
      autocomplete="off"
      spellcheck="false"
      .value=${this.value === null ? '' : fieldText(this.value, this.units)}
      list=${this.offered.length === 0 ? nothing : `${this.field}-offered`}
      aria-describedby=${described}
      aria-invalid=${invalid}
      @change=${this.onChange}
    />${
      this.offered.length === 0
        ? nothing
        : html`<datalist id="${this.field}-offered">${this.offered.map((text) => html`<option value=${text}></option>`)}</datalist>`
    }`;
  }

  private onChange(event: Event): void {
    const text = (event.target as HTMLInputElement).value;
    if (this.optional && text.trim() === '') {
      this.fault = sendEdit(this, this.clear());
      return;
    }
    this.send(() => this.edit(typedLength(text, this.units)));
  }
}

/** For a number without a unit: a count, a percentage, degrees, money. Where it is optional, an empty field is none. */
@customElement('yw-number-field')
export class NumberField extends Field {
  @property({ attribute: false }) value: number | null = 0;
  @property({ type: Boolean }) optional = false;
  @property({ type: Number }) min = 0;
  @property({ type: Number }) max = 1e6;
  @property() step = '1';
  @property({ attribute: false }) edit: (value: number) => Edit = () => (quilt) => quilt;
  @property({ attribute: false }) clear: () => Edit = () => (quilt) => quilt;

  protected control(described: Described, invalid: Invalid): TemplateResult {
    return html`<input
      id=${this.field}
      type="number"
      min=${this.min}
      max=${this.max}
      step=${this.step}
      .value=${this.value === null ? '' : `${this.value}`}
      aria-describedby=${described}
      aria-invalid=${invalid}
      @change=${this.onChange}
    />`;
  }

  private onChange(event: Event): void {
    const input = event.target as HTMLInputElement;
    const value = input.valueAsNumber;
    // What is no number reads as empty too; only the field's own validity tells them apart.
    if (this.optional && input.value === '' && !input.validity.badInput) {
      this.fault = sendEdit(this, this.clear());
    } else if (Number.isNaN(value) || value < this.min || value > this.max) {
      this.fault = `Expected a number from ${this.min} to ${this.max.toLocaleString('en')}.`;
    } else if (this.step === '1' && !Number.isInteger(value)) {
      this.fault = 'Expected a whole number.';
    } else {
      this.send(() => this.edit(value));
    }
  }
}

/** For a name or another short text; or, with `type` color, for a colour. */
@customElement('yw-text-field')
export class TextField extends Field {
  @property() value = '';
  @property() type: 'text' | 'color' = 'text';
  /** What is expected, where the field may not be empty. */
  @property() wanted = '';
  @property({ attribute: false }) edit: (text: string) => Edit = () => (quilt) => quilt;

  protected control(described: Described, invalid: Invalid): TemplateResult {
    return html`<input
      id=${this.field}
      type=${this.type}
      autocomplete="off"
      .value=${this.value}
      aria-describedby=${described}
      aria-invalid=${invalid}
      @change=${this.onChange}
    />`;
  }

  private onChange(event: Event): void {
    const text = (event.target as HTMLInputElement).value.trim();
    if (text === '' && this.wanted !== '') {
      this.fault = `Expected ${this.wanted}.`;
    } else {
      this.send(() => this.edit(text));
    }
  }
}

/** For one of a few choices. */
@customElement('yw-choice-field')
export class ChoiceField extends Field {
  @property() value = '';
  @property({ attribute: false }) choices: readonly { readonly value: string; readonly words: string }[] = [];
  @property({ attribute: false }) edit: (value: string) => Edit = () => (quilt) => quilt;

  protected control(described: Described, invalid: Invalid): TemplateResult {
    const { value, choices } = this;
    return html`<select id=${this.field} aria-describedby=${described} aria-invalid=${invalid} @change=${this.onChange}>
      ${choices.map((one) => html`<option value=${one.value} .selected=${live(one.value === value)}>${one.words}</option>`)}
    </select>`;
  }

  private onChange(event: Event): void {
    this.send(() => this.edit((event.target as HTMLSelectElement).value));
  }
}

/** For yes or no. */
@customElement('yw-tick-field')
export class TickField extends Field {
  @property({ type: Boolean }) value = false;
  @property({ attribute: false }) edit: (value: boolean) => Edit = () => (quilt) => quilt;

  protected override render(): TemplateResult {
    return html`<div class="field">
      <label class="tick">${this.described()} ${this.label}</label>
      ${this.below()}
    </div>`;
  }

  protected control(described: Described, invalid: Invalid): TemplateResult {
    return html`<input
      id=${this.field}
      type="checkbox"
      .checked=${live(this.value)}
      aria-describedby=${described}
      aria-invalid=${invalid}
      @change=${this.onChange}
    />`;
  }

  private onChange(event: Event): void {
    this.send(() => this.edit((event.target as HTMLInputElement).checked));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-length-field': LengthField;
    'yw-number-field': NumberField;
    'yw-text-field': TextField;
    'yw-choice-field': ChoiceField;
    'yw-tick-field': TickField;
  }
}
