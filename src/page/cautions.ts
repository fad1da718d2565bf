import { html, type TemplateResult } from 'lit';
import { CARE } from '../plan/care.ts';

/** Stands wherever cutting is shown. @param of which plan, where there are several on the page */
export function cautions(of = ''): TemplateResult {
  return html`<section class="cautions" aria-label=${of === '' ? 'Care at the table' : `Care at the table: ${of}`}>
    <h3>Care at the table</h3>
    <ul>
      ${CARE.map((line) => html`<li>${line}</li>`)}
    </ul>
  </section>`;
}
