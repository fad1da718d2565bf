import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { onPage } from '../quilt/forms/fault-words.ts';
import type { FormField, FormValue } from '../quilt/forms/form-spec.ts';
import { type Form, faultsOfForm, formSpec, formValueOf } from '../quilt/forms/forms.ts';
import type { Block, Length } from '../quilt/quilt.ts';
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
    return fields
      .filter((field) => field.shown?.(filled) ?? true)
      .map((field) => this.field(field, formValueOf(form, field.field), this.editor(block, form, field)));
  }

  /** What the numbers say against each other is told here, where they have labels, rather than by the quilt file's check. */
  private editor(block: Block, form: Form, { field }: FormField): (value: FormValue) => Edit {
    return (value) => {
      const [fault] = faultsOfForm({ ...form, [field]: value } as Form, this.units.quilt);
      if (fault !== undefined) {
        throw new RangeError(onPage(fault, field, formSpec(form.kind).fields));
      }
      return setForm(block.id, { [field]: value });
    };
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

declare global {
  interface HTMLElementTagNameMap {
    'yw-form-numbers': FormNumbers;
  }
}
