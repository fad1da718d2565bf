import { html, type TemplateResult } from 'lit';
import type { Areas } from '../plan/tally.ts';
import { formatDecimal } from '../quilt/format-length.ts';
import { convert } from '../quilt/measure.ts';
import type { Units } from './written.ts';

const PARTS: readonly { readonly part: Exclude<keyof Areas, 'used'>; readonly words: string }[] = [
  { part: 'finished', words: 'seen in the quilt' },
  { part: 'seams', words: 'in the seams' },
  { part: 'room', words: 'trimmed off blanks' },
  { part: 'spares', words: 'spare blanks' },
  { part: 'squaring', words: 'squaring up' },
  { part: 'kept', words: 'kept for the shelf' },
  { part: 'waste', words: 'waste' },
];

/** Where all the cloth goes, as a table with a bar in each row. */
export function areaShares(areas: Areas, units: Units): TemplateResult {
  const side = convert(1, units.quilt, units.shown);
  const area = (value: number): string => formatDecimal(value * side * side, 0);
  const percent = (value: number): number => (areas.used === 0 ? 0 : (value / areas.used) * 100);
  return html`<table class="shares">
    <thead>
      <tr>
        <th scope="col">Part</th>
        <th scope="col">${units.shown}²</th>
        <th scope="col">Share</th>
      </tr>
    </thead>
    <tbody>
      ${PARTS.map(
        ({ part, words }) => html`<tr>
          <th scope="row">${words}</th>
          <td>${area(areas[part])}</td>
          <td>
            <span class="bar" style="width:${percent(areas[part]).toFixed(1)}%" aria-hidden="true"></span>
            ${formatDecimal(percent(areas[part]), 0)} %
          </td>
        </tr>`,
      )}
    </tbody>
    <tfoot>
      <tr>
        <th scope="row">all cloth used</th>
        <td>${area(areas.used)}</td>
        <td>100 %</td>
      </tr>
    </tfoot>
  </table>`;
}
