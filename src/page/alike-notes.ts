import { html, nothing, type TemplateResult } from 'lit';
import { type LookAlike, sayLookAlike } from '../plan/look-alikes.ts';

/** Says of blanks that are easily taken for each other how to keep them apart. */
export function alikeNotes(found: readonly LookAlike[]): TemplateResult | typeof nothing {
  return found.length === 0
    ? nothing
    : html`<ul class="alike" aria-label="Blanks that look alike">
        ${found.map((each) => html`<li>${sayLookAlike(each)}</li>`)}
      </ul>`;
}
