import { html, type TemplateResult } from 'lit';
import type { ClothLengthDrawn, NumberedStrip } from '../draw/unroll.ts';
import type { StripSteps } from '../plan/cut-steps.ts';
import { alike } from '../plan/group-strips.ts';
import { stripWords } from './lit-words.ts';
import { type Units, written, writtenMark } from './written.ts';

/** A table of up to so many cuts is not parted between columns or pages. */
const SHORT = 14;

/** Strips that follow each other and are cut alike, so that the table does not say the same thing six times. */
interface Rows {
  readonly strips: readonly NumberedStrip[];
  readonly steps: StripSteps | null;
}

/**
 * The strips of one length of cloth and their subcuts, a table for each: what the diagram shows, and what is read beside
 * the ruler. Marks are measured along the strip from its start, on its near and on its far edge.
 */
export function stripTables(
  length: ClothLengthDrawn,
  steps: readonly StripSteps[],
  units: Units,
  name: string,
): TemplateResult {
  const rows = gather(length.strips, steps);
  return html`<div class="strips table-frame" tabindex="0" role="region" aria-label="Strips and cuts of ${name}">
    ${rows.map((one) => (one.steps === null ? html`<p class="strip-head">${headWords(one, units)}</p>` : stripTable(one, one.steps, units)))}
  </div>`;
}

function stripTable(rows: Rows, steps: StripSteps, units: Units): TemplateResult {
  const mark = (value: number): string => writtenMark(value, units);
  return html`<table class=${steps.pieces.length <= SHORT ? 'whole' : ''}>
    <caption class="strip-head">
      ${headWords(rows, units)}
    </caption>
    <thead>
      <tr>
        <th scope="col">Cut</th>
        <th scope="col">Blank</th>
        <th scope="col">Near (${units.shown})</th>
        <th scope="col">Far (${units.shown})</th>
        <th scope="col">Angle</th>
      </tr>
    </thead>
    <tbody>
      ${steps.pieces.map(
        (piece, index) => html`<tr>
          <td>${index + 1}</td>
          <td>${piece.blank}</td>
          <td>${mark(piece.near)}</td>
          <td>${mark(piece.far)}</td>
          <td>${piece.rulerAngle ? `${Math.round(piece.angle)}°` : 'by marks'}</td>
        </tr>`,
      )}
    </tbody>
  </table>`;
}

/** How the marks are meant, to stand once beside the tables. */
export function marksExplained(units: Units): string {
  const finest = units.shown === 'in' ? 'sixteenth of an inch' : 'millimetre';
  return `Marks are measured along the strip from its start; each cut runs from edge to edge and parts a blank from all after it. The near edge of a strip across the cloth is the one toward the cut end, of one along the cloth the one toward the left selvage. ≈ is to the nearest ${finest}.`;
}

function headWords({ strips, steps }: Rows, units: Units): string {
  const [first] = strips;
  if (first === undefined || first.number === null || steps === null) {
    return `Trim ${written(first?.height ?? 0, units)} off to square the end`;
  }
  const name = stripWords(strips.map((strip) => strip.number!));
  const each = strips.length > 1 ? 'each ' : '';
  const way = first.firstCut === 'along' ? ' wide, along the selvage' : ' tall';
  const left = steps.left > 1e-6 ? `; ${written(steps.left, units)} left at the end` : '';
  return `${name[0]!.toUpperCase()}${name.slice(1)}: ${each}${written(first.height, units)}${way}${left}`;
}

function gather(strips: readonly NumberedStrip[], steps: readonly StripSteps[]): readonly Rows[] {
  const rows: { strips: NumberedStrip[]; steps: StripSteps | null }[] = [];
  for (const strip of strips) {
    const own = steps.find((one) => one.layout === strip.layout && one.strip === strip.strip) ?? null;
    const last = rows.at(-1);
    if (last?.steps != null && own !== null && alike(last.steps, own)) {
      last.strips.push(strip);
    } else {
      rows.push({ strips: [strip], steps: own });
    }
  }
  return rows;
}
