import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Length, Quilt } from '../quilt/quilt.ts';
import { sendEdit } from './edit-event.ts';
import { setQuilt, setTestBlock } from './edits.ts';
import { freshId, PageElement } from './page-element.ts';
import { UNITS, type Units } from './written.ts';

const NO_TEST = { value: '', words: 'none' };

/** How she cuts and sews: what holds for every cloth. */
@customElement('yw-habits')
export class Habits extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };

  private readonly hint = freshId('stacks-hint');

  protected override render(): TemplateResult | typeof nothing {
    const { quilt } = this;
    if (quilt === null) {
      return nothing;
    }
    const size = (label: string, field: 'allowance' | 'room' | 'ruler', hint: string) => html`<yw-length-field
      label=${label}
      hint=${hint}
      .value=${quilt[field]}
      .units=${this.units}
      .edit=${(value: Length) => setQuilt({ [field]: value })}
    ></yw-length-field>`;
    return html`<fieldset class="numbers" aria-label="At the machine and the ruler">
      <yw-text-field
        label="Name of the quilt"
        wanted="a name"
        .value=${quilt.name}
        .edit=${(name: string) => setQuilt({ name })}
      ></yw-text-field>
      ${size('Seam allowance', 'allowance', '')}
      ${size('Room', 'room', 'extra round a paper-pieced blank, on all sides but the one sewn first')}
      ${size('Ruler', 'ruler', 'sizes round up to whole multiples of it')}
      <label class="tick">
        <input
          type="checkbox"
          aria-describedby=${this.hint}
          .checked=${live(quilt.stacks ?? false)}
          @change=${(event: Event) => sendEdit(this, setQuilt({ stacks: (event.target as HTMLInputElement).checked }))}
        />
        Stack blanks and cut the stacks along the strip
      </label>
      <p class="hint" id=${this.hint}>
        small blanks lie one above the other in a taller strip, between two square cuts: one more kind of cut, often less cloth
      </p>
      <yw-choice-field
        label="Test block first"
        hint="one of it is cut from the first strips, to be sewn before the rest is cut from what remains"
        .value=${quilt.testBlock ?? ''}
        .choices=${[NO_TEST, ...quilt.blocks.map(({ id, name }) => ({ value: id, words: name }))]}
        .edit=${(block: string) => setTestBlock(block === '' ? null : block)}
      ></yw-choice-field>
    </fieldset>`;
  }
}
