import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Quilt } from '../quilt/quilt.ts';
import type { Lighting } from './lighting.ts';
import { litWords } from './lit-words.ts';
import { PageElement } from './page-element.ts';
import type { Roll } from './rolls.ts';

/** Says in words what is lit, for those who cannot tell it from the drawing. */
@customElement('yw-lit-line')
export class LitLine extends PageElement {
  @property({ attribute: false }) lighting: Lighting | null = null;
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) rolls: readonly Roll[] = [];
  @state() private blank: string | null = null;
  private readonly onChange = (): void => {
    this.blank = this.lighting?.blank ?? null;
  };

  override connectedCallback(): void {
    super.connectedCallback();
    this.lighting?.addEventListener('change', this.onChange);
  }

  override disconnectedCallback(): void {
    this.lighting?.removeEventListener('change', this.onChange);
    super.disconnectedCallback();
  }

  protected override render(): TemplateResult {
    const words = this.blank === null || this.quilt === null ? null : litWords(this.blank, this.rolls, this.quilt);
    return html`<p class="lit-line" role="status" ?data-empty=${words === null}>${words ?? nothing}</p>`;
  }
}
