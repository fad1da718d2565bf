import { html, type TemplateResult } from 'lit';
import type { Blank } from '../cutting/cut-list.ts';

/** A tag for each blank, as tied to a bag of cut pieces: pointing at it, or pressing it, lights it wherever it stands. */
export function blankTags(blanks: readonly Blank[], label: string): TemplateResult {
  return html`<ul class="tags" aria-label=${label}>
    ${blanks.map(
      (blank) => html`<li>
        <button type="button" class="tag" data-blank=${blank.id}>${blank.id}</button>
      </li>`,
    )}
  </ul>`;
}
