import { html, nothing, type TemplateResult } from 'lit';
import type { Problem } from '../cutting/cut-list.ts';

/** What stops a patch from being planned, or what she should know, where it stands. */
export function problemNotes(problems: readonly Problem[]): TemplateResult | typeof nothing {
  if (problems.length === 0) {
    return nothing;
  }
  return html`<ul class="problems">
    ${problems.map(
      (problem) => html`<li class=${problem.kind}>
        <strong>${problem.kind === 'error' ? 'Cannot be planned:' : 'Mind:'}</strong> ${problem.text}
      </li>`,
    )}
  </ul>`;
}
