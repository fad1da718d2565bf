import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Cloth } from '../quilt/quilt.ts';
import { clothWords } from './cloth-words.ts';
import { PageElement } from './page-element.ts';
import { UNITS, type Units } from './written.ts';
import './yw-cloth-form.ts';

/** What a cloth is, in a line; unfolded, all of it to be changed. Nothing of that is made before it is asked for. */
@customElement('yw-cloth-fold')
export class ClothFold extends PageElement {
  @property({ attribute: false }) cloth: Cloth | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @property({ type: Boolean }) open = false;
  @state() private unfolded = false;

  protected override render(): TemplateResult | typeof nothing {
    const { cloth, units } = this;
    if (cloth === null) {
      return nothing;
    }
    return html`<details class="cloth-fold" ?open=${this.open} @toggle=${this.onToggle}>
      <summary>${clothWords(cloth, units)}. <span>Change</span></summary>
      ${this.unfolded || this.open ? html`<yw-cloth-form .cloth=${cloth} .units=${units}></yw-cloth-form>` : nothing}
    </details>`;
  }

  private onToggle(event: Event): void {
    this.unfolded ||= (event.target as HTMLDetailsElement).open;
  }
}
