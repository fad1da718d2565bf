import { html, type TemplateResult } from 'lit';

/** Stands wherever cutting is shown. */
export function cautions(): TemplateResult {
  return html`<aside class="cautions" aria-label="Care at the table">
    <h3>Care at the table</h3>
    <ul>
      <li>Cut away from your body, and close the guard after every cut.</li>
      <li>Keep your fingers off the ruler’s edge; wear shoes.</li>
      <li>Change dull blades; tape old ones before you throw them away.</li>
      <li>Unplug the iron; air the room when you starch.</li>
      <li>Measure your own cloth after washing and trimming, and sew one block before you cut them all.</li>
    </ul>
    <p>Local rules and the maker’s instructions come first.</p>
  </aside>`;
}
