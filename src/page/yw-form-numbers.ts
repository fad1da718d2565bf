import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { onPage } from '../quilt/forms/fault-words.ts';
import type { FormField, FormValue } from '../quilt/forms/form-spec.ts';
import { changedForm, type Form, faultsOfForm, formSpec, formValueOf, notesOnForm } from '../quilt/forms/forms.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { Block, Length, LengthUnit } from '../quilt/quilt.ts';
import type { Edit } from './edit-event.ts';
import { setBlockCount, setForm } from './edits.ts';
import { PageElement } from './page-element.ts';
import { UNITS, type Units } from './written.ts';
import './yw-field.ts';

/** The numbers that draw a block: how many the quilt has of it, and one field for each number of its form, whichever it is. */
@customElement('yw-form-numbers')
export class FormNumbers extends PageElement {
  @property({ attribute: false }) block: Block | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };

  @state() private scales = false;
  private waiting: {
    readonly block: string;
    readonly values: Readonly<Record<string, { readonly wish: FormValue; readonly was: FormValue }>>;
  } | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { block } = this;
    if (block === null) {
      return nothing;
    }
    return html`<fieldset class="numbers" aria-label="Numbers of ${block.name}">
      <yw-number-field
        label="Blocks in the quilt"
        .value=${block.count}
        .min=${1}
        .max=${999}
        .edit=${(count: number) => setBlockCount(block.id, count)}
      ></yw-number-field>
      ${block.form === undefined ? nothing : this.fields(block, block.form)}
    </fieldset>`;
  }

  private fields(block: Block, form: Form): readonly TemplateResult[] {
    const { fields } = formSpec(form.kind);
    const filled = { ...form, ...Object.fromEntries(fields.map(({ field }) => [field, formValueOf(form, field)])) };
    const notes = notesOnForm(form, this.units.quilt);
    const lengths = fields.filter(({ type, usual }) => type === 'length' && usual === undefined);
    return [
      ...fields
        .filter((field) => field.shown?.(filled) ?? true)
        .map((field) => this.field(field, formValueOf(form, field.field), this.editor(block, form, field))),
      ...(lengths.length > 1 && lengths.some(({ field }) => field === 'side') ? [this.scaling()] : []),
      html`<p class="hint form-notes" role="status" ?hidden=${notes.length === 0}>${notes.join(' ')}</p>`,
    ];
  }

  /**
   * What the numbers say against each other is told here, where they have labels, rather than by the quilt file's check. A value
   * that was refused is taken after all once another makes room for it, so that numbers may be typed in any order.
   */
  private editor(block: Block, form: Form, { field }: FormField): (value: FormValue) => Edit {
    const { quilt } = this.units;
    return (value) => {
      const alone = field === 'side' && this.scales ? scaled(form, value as Length, quilt) : { [field]: value };
      const { [field]: _, ...others } = this.waitingFor(block, form);
      const found = subsets(others)
        .map((some): Readonly<Record<string, FormValue>> => ({ ...some, ...alone }))
        .find((values) => faultsOfForm(changedForm(form, values), quilt).length === 0);
      const left = Object.entries(found === undefined ? { ...others, [field]: value } : others).filter(
        ([name]) => found === undefined || !(name in found),
      );
      this.waiting = {
        block: block.id,
        values: Object.fromEntries(left.map(([name, wish]) => [name, { wish, was: formValueOf(form, name) }])),
      };
      if (found === undefined) {
        const [fault] = faultsOfForm(changedForm(form, alone), quilt);
        throw new RangeError(onPage(fault!, field, formSpec(form.kind).fields));
      }
      return setForm(block.id, found);
    };
  }

  /** Not kept in the quilt: it is a way to type, not something that a block has. */
  private scaling(): TemplateResult {
    return html`<label class="tick">
      <input type="checkbox" .checked=${live(this.scales)} @change=${(event: Event) => this.onScaling(event)} />
      All its lengths change with the side
    </label>`;
  }

  private onScaling(event: Event): void {
    this.scales = (event.target as HTMLInputElement).checked;
  }

  /** Values refused so far, but for those of fields that have changed since. */
  private waitingFor(block: Block, form: Form): Readonly<Record<string, FormValue>> {
    if (this.waiting?.block !== block.id) {
      return {};
    }
    const still = Object.entries(this.waiting.values).filter(
      ([field, { was }]) =>
        formSpec(form.kind).fields.some((each) => each.field === field) && formValueOf(form, field) === was,
    );
    return Object.fromEntries(still.map(([field, { wish }]) => [field, wish]));
  }

  private field(field: FormField, value: FormValue, edit: (value: FormValue) => Edit): TemplateResult {
    const hint = field.hint ?? '';
    switch (field.type) {
      case 'count':
      case 'angle':
        return html`<yw-number-field
          label=${field.label}
          hint=${hint}
          step=${field.type === 'angle' ? 'any' : '1'}
          .value=${value as number}
          .min=${field.min}
          .max=${field.max}
          .edit=${edit}
        ></yw-number-field>`;
      case 'length':
        return html`<yw-length-field
          label=${field.label}
          hint=${hint}
          .value=${value as Length}
          .units=${this.units}
          .edit=${edit}
        ></yw-length-field>`;
      case 'choice':
        return html`<yw-choice-field
          label=${field.label}
          hint=${hint}
          .value=${value as string}
          .choices=${field.choices}
          .edit=${edit}
        ></yw-choice-field>`;
      case 'switch':
        return html`<yw-tick-field label=${field.label} hint=${hint} .value=${value as boolean} .edit=${edit}></yw-tick-field>`;
    }
  }
}

/** The lengths of a form, as many times as large as its side becomes; as fine as they are shown. */
function scaled(form: Form, side: Length, unit: LengthUnit): Readonly<Record<string, FormValue>> {
  const lengthOf = (field: string): number => lengthIn(unit, formValueOf(form, field) as Length);
  const factor = lengthIn(unit, side) / lengthOf('side');
  const lengths = formSpec(form.kind).fields.filter(({ type, field }) => type === 'length' && field in form);
  const larger = lengths.map(({ field }) => [field, Math.round(lengthOf(field) * factor * 1e4) / 1e4] as const);
  return { ...Object.fromEntries(larger), side };
}

/** The larger ones first. A form has few fields, and of those few are refused at a time; more than four are not tried out. */
function subsets(values: Readonly<Record<string, FormValue>>): readonly Readonly<Record<string, FormValue>>[] {
  const entries = Object.entries(values).slice(-4);
  return Array.from({ length: 2 ** entries.length }, (_, bits) => entries.filter((__, i) => (bits >> i) % 2 === 1))
    .sort((a, b) => b.length - a.length)
    .map((some) => Object.fromEntries(some));
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-form-numbers': FormNumbers;
  }
}
