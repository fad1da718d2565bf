import { html, type TemplateResult } from 'lit';
import type { Blank } from '../cutting/cut-list.ts';

/** A tag for each blank, as tied to a bag of cut pieces: pointing at it, or pressing it, lights it wherever it stands. */
/** @param mistaken those that are easily taken for others: a star stands after their names, as on the diagrams */
export function blankTags(
  blanks: readonly Blank[],
  label: string,
  mistaken: ReadonlySet<string> = new Set(),
): TemplateResult {
  return html`<ul class="tags" aria-label=${label}>
    ${blanks.map(
      (blank) => html`<li>
        <button type="button" class="tag" data-blank=${blank.id}>${blank.id}${mistaken.has(blank.id) ? '*' : ''}</button>
      </li>`,
    )}
  </ul>`;
}
