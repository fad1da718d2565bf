import { html, type TemplateResult } from 'lit';
import type { ClothLengthDrawn } from '../draw/unroll.ts';
import type { StripSteps } from '../plan/cut-steps.ts';
import { type Units, written } from './written.ts';

/**
 * The strips of one length of cloth and their subcuts as a table: what the diagram shows, and what is read beside the
 * ruler. Marks are measured along the strip from its start, on its near and on its far edge.
 */
export function stripTable(
  length: ClothLengthDrawn,
  steps: readonly StripSteps[],
  units: Units,
  name: string,
): TemplateResult {
  const write = (value: number): string => written(value, units);
  return html`<div class="table-frame" tabindex="0" role="region" aria-label="Strips and cuts of ${name}">
    <table class="strips">
      <caption>
        ${name}: strips and cuts
      </caption>
      <thead>
        <tr>
          <th scope="col">Strip</th>
          <th scope="col">Cut</th>
          <th scope="col">Blank</th>
          <th scope="col">Near mark</th>
          <th scope="col">Far mark</th>
          <th scope="col">Angle</th>
        </tr>
      </thead>
      ${length.strips.map((strip) => {
        const own = steps.find((one) => one.layout === strip.layout && one.strip === strip.strip);
        const pieces = strip.number === null ? [] : (own?.pieces ?? []);
        const way = strip.firstCut === 'along' ? ', along the selvage' : '';
        return html`<tbody>
          <tr class="strip-head">
            <th scope="rowgroup">${strip.number ?? 'Trim'}</th>
            <td colspan="5">
              ${strip.number === null ? `${write(strip.height)} off to square the end` : `${write(strip.height)} tall${way}, from ${write(strip.from)} to ${write(strip.from + strip.height)}`}${own !== undefined && strip.number !== null && own.left > 1e-6 ? `; ${write(own.left)} left at its end` : ''}
            </td>
          </tr>
          ${pieces.map(
            (piece, index) => html`<tr>
              <td></td>
              <td>${index + 1}</td>
              <td>${piece.blank}</td>
              <td>${write(piece.near)}</td>
              <td>${write(piece.far)}</td>
              <td>${piece.rulerAngle ? `${Math.round(piece.angle)}°` : 'by the marks'}</td>
            </tr>`,
          )}
        </tbody>`;
      })}
    </table>
  </div>`;
}
