/** What can be done on the board, and how, for those who ask. */
import { html, type TemplateResult } from 'lit';

const KEYS: readonly (readonly [keys: string, what: string])[] = [
  ['Arrows', 'move the cross by a pixel; with Shift by twenty'],
  ['Enter', 'click there'],
  ['[ and ]', 'leap to the corner or middle before, after'],
  ['m', 'take hold of the corner, or of the middle of a line, and let go'],
  ['a', 'the next line is an arc'],
  ['c', 'close the patch'],
  ['h', 'choose what lies here'],
  ['o', 'mark the centre here'],
  ['Delete', 'delete what is chosen'],
  ['Ctrl Z, Ctrl Y', 'undo, redo'],
  ['+, −, 0', 'larger, smaller, all of it'],
  ['Escape', 'give up what is begun'],
];

export function traceKeys(): TemplateResult {
  return html`<details class="trace-keys">
    <summary>Keys, fingers and pen</summary>
    <p class="hint">
      Drag a corner to move it; drag the diamond in the middle of a line to pull it into an arc. Drag anywhere else to push the
      picture; two fingers or the wheel zoom. On the picture these keys work:
    </p>
    <dl>${KEYS.map(([keys, what]) => html`<div><dt>${keys}</dt><dd>${what}</dd></div>`)}</dl>
  </details>`;
}
