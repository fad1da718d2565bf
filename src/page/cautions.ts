import { html, type TemplateResult } from 'lit';
import { CARE } from '../plan/care.ts';

/** Stands wherever cutting is shown. */
export function cautions(): TemplateResult {
  return html`<section class="cautions" aria-label="Care at the table">
    <h3>Care at the table</h3>
    <ul>
      ${CARE.map((line) => html`<li>${line}</li>`)}
    </ul>
  </section>`;
}
