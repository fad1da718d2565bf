import { html, nothing, type TemplateResult } from 'lit';
import { type StripRow, stripRows } from '../draw/strip-rows.ts';
import type { ClothLengthDrawn } from '../draw/unroll.ts';
import { type BagsOfStrip, sayBags } from '../plan/bagged-strips.ts';
import type { StripPiece, StripSteps } from '../plan/cut-steps.ts';
import { type Fold, foldOf } from '../plan/folded-row.ts';
import { handlingOf, sayFirstFold, sayPair } from '../plan/say-fold.ts';
import { sayLayer, withStacksTogether } from '../plan/say-stack.ts';
import { stripWords } from './lit-words.ts';
import { type Units, written, writtenMark } from './written.ts';

/** A table of up to so many cuts is not parted between columns or pages. */
const SHORT = 14;

/** What the tables tell of one length of cloth, but for the length itself. */
export interface TableInput {
  readonly group: string;
  readonly steps: readonly StripSteps[];
  /** Which bag each blank goes into; null while the plan is not whole. */
  readonly bagsOf: BagsOfStrip | null;
  readonly units: Units;
  /** Of the length of cloth. */
  readonly name: string;
}

/**
 * The strips of one length of cloth and their subcuts, a table for each: what the diagram shows, and what is read beside
 * the ruler. Marks are measured along the strip from its start, on its near and on its far edge.
 */
export function stripTables(length: ClothLengthDrawn, input: TableInput): TemplateResult {
  const rows = stripRows(length, input.steps);
  const across = rows.some(({ steps }) => steps?.firstCut === 'across');
  const firstFold = across ? sayFirstFold(length.jobCloth.width, input.units.quilt) : null;
  return html`<div class="strips table-frame" tabindex="0" role="region" aria-label="Strips and cuts of ${input.name}">
    ${firstFold === null ? nothing : html`<p class="handling">${firstFold}</p>`}
    ${rows.map((one, index) => [
      partHead(one, rows[index - 1]),
      one.steps === null
        ? html`<p class="strip-head">${headWords(one, null, input.units)}</p>`
        : stripTable(length, one, one.steps, input, firstFold !== null),
    ])}
  </div>`;
}

function stripTable(
  length: ClothLengthDrawn,
  rows: StripRow,
  steps: StripSteps,
  input: TableInput,
  isFolded: boolean,
): TemplateResult {
  const { units } = input;
  const { pieces } = steps;
  const fold = foldOf(steps, length.oneWay, 1e-6 * length.jobCloth.width);
  const { before, between } = handlingOf(
    steps,
    fold,
    isFolded && steps.firstCut === 'across',
    rows.strips.length * length.times,
  );
  const pairs = fold?.pairs ?? 0;
  const row = (index: number, name: string): TemplateResult => cutRow(pieces[index]!, index, name, units);
  const bags = bagWords(rows, input);
  const note = (words: string): TemplateResult => html`<tr class="handling"><td colspan="5">${words}</td></tr>`;
  const rest = pieces.map((_, index) => index).slice(pairs, pieces.length - pairs);
  return html`<table class=${pieces.length <= SHORT ? 'whole' : ''}>
    <caption class="strip-head">
      ${headWords(rows, fold, units)}
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
      ${before === null ? nothing : note(before)}
      ${pieces.slice(0, pairs).map((_, index) => row(index, sayPair(steps, index)))}
      ${between === null ? nothing : note(between)} ${withStacksTogether(rest.map((index) => pieces[index]!)).map(
        (own, i) =>
          own.length === 1
            ? cutRow(own[0]!, pairs + i, own[0]!.blank, units)
            : stackRows(own, pairs + i, steps.height, units),
      )}
      ${bags === null ? nothing : note(`Bags: ${bags}.`)}
    </tbody>
  </table>`;
}

function cutRow(piece: StripPiece, index: number, name: string, units: Units): TemplateResult {
  return html`<tr>
    <td>${index + 1}</td>
    <td>${name}</td>
    <td>${writtenMark(piece.near, units)}</td>
    <td>${writtenMark(piece.far, units)}</td>
    <td>${piece.rulerAngle ? `${Math.round(piece.angle)}°` : 'by marks'}</td>
  </tr>`;
}

/** The square cut that ends the stack, then a line for each blank of it. */
function stackRows(own: readonly StripPiece[], index: number, height: number, units: Units): readonly TemplateResult[] {
  return [
    cutRow(own[0]!, index, `stack of ${own.length}`, units),
    ...own.map(
      (piece) => html`<tr class="layer">
        <td></td>
        <td colspan="4">${sayLayer(piece, height, (length) => writtenMark(length, units))}</td>
      </tr>`,
    ),
  ];
}

/** Over the first strip of the test block, and over the first of those that wait until it is sewn. */
function partHead({ isFirst }: StripRow, before: StripRow | undefined): TemplateResult | typeof nothing {
  if (isFirst === (before?.isFirst ?? false)) {
    return nothing;
  }
  return html`<p class="part-head">${isFirst ? 'Test block first' : 'Once the test block is sewn'}</p>`;
}

/** Of all strips cut alike; a layout cut several times is told once. */
function bagWords({ strips, isFirst }: StripRow, { group, bagsOf }: TableInput): string | null {
  if (bagsOf === null) {
    return null;
  }
  const different = new Map(strips.map((each) => [`${each.layout}/${each.strip}`, each]));
  const bagged = [...different.values()].flatMap(({ layout, strip }) => bagsOf(group, layout, strip, isFirst).flat());
  return bagged.length === 0 ? null : sayBags(bagged);
}

const STACKED =
  'A stack is cut off square first; then it is cut along the strip, marks measured up from the near edge, and each blank is trimmed to its size (along × up) from its part. ';

/** How the marks are meant, to stand once beside the tables. */
export function marksExplained(units: Units, stacks: boolean): string {
  const finest = units.shown === 'in' ? 'sixteenth of an inch' : 'millimetre';
  return `Marks are measured along the strip from its start; each cut runs from edge to edge and parts a blank from all after it. The near edge of a strip across the cloth is the one toward the cut end, of one along the cloth the one toward the left selvage. ${stacks ? STACKED : ''}A bag for each block keeps its blanks together, and one more the spares. ≈ is to the nearest ${finest}.`;
}

function headWords({ strips, steps }: StripRow, fold: Fold | null, units: Units): string {
  const [first] = strips;
  if (first === undefined || first.number === null || steps === null) {
    return `Trim ${written(first?.height ?? 0, units)} off to square the end`;
  }
  const name = stripWords(strips.map((strip) => strip.number!));
  const each = strips.length > 1 ? 'each ' : '';
  const way = first.firstCut === 'along' ? ' wide, along the selvage' : ' tall';
  const over = fold?.left ?? steps.left;
  const where = steps.part === 'begun' ? 'for later' : fold === null ? 'at the end' : 'in the middle';
  const rest = steps.part === 'rest' ? ', the rest of it' : '';
  const left = over > 1e-6 ? `; ${written(over, units)} left ${where}` : '';
  return `${name[0]!.toUpperCase()}${name.slice(1)}${rest}: ${each}${written(first.height, units)}${way}${left}`;
}
