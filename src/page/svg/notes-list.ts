import { html, nothing, type TemplateResult } from 'lit';
import type { ImportNote } from '../../import/import-notes.ts';

/** What to know about a drawing. Notes with a ring on it carry the ring's number; an error is told elsewhere. */
export function notesList(notes: readonly ImportNote[]): TemplateResult {
  const ringed = notes.filter(({ places }) => places.length > 0);
  const said = notes.filter(({ kind }) => kind !== 'error');
  return html`<ul class="import-notes" aria-label="What to know about this drawing">
    ${said.map(
      (note) => html`<li data-kind=${note.kind}>
        ${ringed.includes(note) ? html`<span class="ring-number">${ringed.indexOf(note) + 1}</span>` : nothing}
        ${note.kind === 'warning' ? html`<strong>Look:</strong>` : nothing} ${note.text}
      </li>`,
    )}
  </ul>`;
}
