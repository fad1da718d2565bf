import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Block, Length } from '../quilt/quilt.ts';
import { setBlockCount, setForm } from './edits.ts';
import { PageElement } from './page-element.ts';
import { UNITS, type Units } from './written.ts';

/** The numbers that draw a block: how many the quilt has of it, and the form of its star. */
@customElement('yw-star-form')
export class StarForm extends PageElement {
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
      ${block.form === undefined ? nothing : this.form(block)}
    </fieldset>`;
  }

  private form(block: Block): TemplateResult {
    const form = block.form!;
    const count = (label: string, field: 'points' | 'wedges', min: number, hint: string) => html`<yw-number-field
      label=${label}
      hint=${hint}
      .value=${form[field]}
      .min=${min}
      .max=${64}
      .edit=${(value: number) => setForm(block.id, { [field]: value })}
    ></yw-number-field>`;
    const size = (label: string, field: 'inner' | 'outer' | 'ring' | 'side', hint: string) => html`<yw-length-field
      label=${label}
      hint=${hint}
      .value=${form[field]}
      .units=${this.units}
      .edit=${(value: Length) => setForm(block.id, { [field]: value })}
    ></yw-length-field>`;
    return html`
      ${count('Points of the star', 'points', 4, 'an even number')}
      ${size('Valleys', 'inner', 'from the centre to where points meet')}
      ${size('Tips', 'outer', 'from the centre to the long points’ tips')}
      ${count('Wedges in the ring', 'wedges', 3, '')}
      ${size('Ring', 'ring', 'from the centre to its outer edge')}
      ${size('Side', 'side', 'of the square block, finished')}
    `;
  }
}
