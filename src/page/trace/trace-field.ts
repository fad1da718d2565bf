/** Fields of the tracing, which is not the quilt yet: what is typed is tried at once, and a fault is told under it. */
import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';

export interface TypedField {
  readonly id: string;
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  readonly kind?: 'text' | 'number';
  readonly list?: string;
  readonly fault?: string | null;
  readonly onTyped: (text: string) => void;
}

export function typedField({
  id,
  label,
  hint,
  value,
  kind = 'text',
  list,
  fault,
  onTyped,
}: TypedField): TemplateResult {
  const described = [!hint ? '' : `${id}-hint`, fault ? `${id}-fault` : ''].filter((part) => part !== '');
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <input
      id=${id}
      type=${kind}
      autocomplete="off"
      spellcheck="false"
      list=${list ?? nothing}
      .value=${live(value)}
      aria-describedby=${described.length === 0 ? nothing : described.join(' ')}
      aria-invalid=${fault ? 'true' : nothing}
      @change=${(event: Event) => onTyped((event.target as HTMLInputElement).value.trim())}
    />
    ${!hint ? nothing : html`<p class="hint" id="${id}-hint">${hint}</p>`}
    <p class="fault" id="${id}-fault" role="alert" ?hidden=${!fault}>${fault ?? ''}</p>
  </div>`;
}

export interface ChosenField<Value extends string> {
  readonly id: string;
  readonly label: string;
  readonly value: Value;
  readonly choices: readonly { readonly value: Value; readonly words: string }[];
  readonly onChosen: (value: Value) => void;
}

export function chosenField<Value extends string>(field: ChosenField<Value>): TemplateResult {
  const { id, label, value, choices, onChosen } = field;
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <select id=${id} @change=${(event: Event) => onChosen((event.target as HTMLSelectElement).value as Value)}>
      ${choices.map((one) => html`<option value=${one.value} .selected=${live(one.value === value)}>${one.words}</option>`)}
    </select>
  </div>`;
}
