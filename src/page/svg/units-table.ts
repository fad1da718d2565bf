/** The units found in a drawing, as a table. */
import { html, type TemplateResult } from 'lit';
import type { DrawnBlock } from '../../quilt/drawn-block.ts';
import type { Repeat, Unit } from '../../quilt/quilt.ts';

export function unitsTable(block: DrawnBlock): TemplateResult {
  const roleName = (id: string): string => block.roles.find((role) => role.id === id)?.name ?? id;
  return html`<div class="table-frame" tabindex="0" role="region" aria-label="The units that were found">
    <table>
      <thead>
        <tr><th scope="col">Unit</th><th scope="col">How often</th><th scope="col">How pieced</th><th scope="col">Roles</th></tr>
      </thead>
      <tbody>
        ${block.units.map(
          (unit) => html`<tr>
            <th scope="row">${unit.id}${unit.name === undefined ? '' : ` ${unit.name}`}</th>
            <td>${repeatWords(unit.repeat)}</td>
            <td>${sewingWords(unit)}</td>
            <td>${[...new Set(unit.patches.map(({ role }) => roleName(role)))].join('; ')}</td>
          </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

function repeatWords({ count, over = 360, mirrored = 'no' }: Repeat): string {
  if (count === 1) return mirrored === 'also' ? 'once, and once mirrored' : 'once';
  const times = `${count} times ${over === 360 ? 'round' : `over ${Math.round(over * 10) / 10}°`}`;
  if (mirrored === 'also') return `${times}, and as often mirrored`;
  return mirrored === 'alternate' ? `${times}, every second one mirrored` : times;
}

function sewingWords({ paper, patches }: Unit): string {
  if (patches.length === 1) return 'one patch, no paper';
  return `${patches.length} patches, ${paper ? 'on paper in this order' : 'without paper'}`;
}
