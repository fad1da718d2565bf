/** One length of cloth as ruler work: a line for each strip, or for several cut alike. */
import type { Group } from '../cutting/cut-list.ts';
import type { ClothLengthDrawn } from '../draw/unroll.ts';
import type { StripPiece, StripSteps } from '../plan/cut-steps.ts';
import { groupStrips } from '../plan/group-strips.ts';
import type { Tally } from '../plan/tally.ts';
import { formatMark } from '../quilt/format-length.ts';
import type { LengthUnit, Quilt } from '../quilt/quilt.ts';

/** Characters to a line of marks. */
const LINE = 110;

export interface LengthInput {
  readonly quilt: Quilt;
  readonly group: Group;
  readonly tally: Tally;
  readonly length: ClothLengthDrawn;
  readonly steps: readonly StripSteps[];
}

export function lengthLines(input: LengthInput): readonly string[] {
  const { quilt, length } = input;
  const numbered = length.strips.filter((strip) => strip.number !== null);
  const own = numbered.flatMap((strip) => {
    const found = input.steps.find((each) => each.layout === strip.layout && each.strip === strip.strip);
    return found === undefined ? [] : [found];
  });
  const trims = length.strips.filter((strip) => strip.number === null);
  let number = 0;
  return [
    '',
    `  ${title(input)}`,
    ...trims.map((strip) => `    Trim ${formatMark(strip.height, quilt.unit)} ${quilt.unit} to square the end.`),
    ...groupStrips(own).flatMap(({ strip, strips }) => {
      const first = number + 1;
      number += strips.length;
      return stripLines(strip, first, number, quilt.unit);
    }),
  ];
}

function title({ quilt, tally, length }: LengthInput): string {
  const write = (value: number): string => `${formatMark(value, quilt.unit)} ${quilt.unit}`;
  const cloth = tally.cloths.find((each) => each.cloth === length.cloth);
  const name = cloth?.name ?? length.cloth;
  const times = length.times === 1 ? '' : `, ${length.times} pieces cut alike`;
  const what =
    length.piece === null
      ? `${write(length.used)} of ${write(length.used + (cloth?.over ?? 0))} used`
      : `the shelf piece "${length.piece}"${times}, ${write(length.used)} of ${write(length.jobCloth.length ?? length.used)} used`;
  return `${name}, ${write(length.jobCloth.width)} wide: ${what}`;
}

function stripLines(strip: StripSteps, first: number, last: number, unit: LengthUnit): readonly string[] {
  const write = (value: number): string => `${formatMark(value, unit)} ${unit}`;
  const numbers = first === last ? `Strip ${first}:` : `Strips ${first} to ${last}, each`;
  const way = strip.firstCut === 'along' ? ' along the selvage' : '';
  const left = strip.left > 1e-6 ? `; ${write(strip.left)} left over` : '';
  return [
    `    ${numbers} ${write(strip.height)} high${way}, ${strip.pieces.length} blank${strip.pieces.length === 1 ? '' : 's'}${left}`,
    ...runsOf(strip.pieces).flatMap((run) => wrapped(runText(run, unit))),
  ];
}

/** Blanks of one kind that follow each other are told on one line. */
function runsOf(pieces: readonly StripPiece[]): readonly (readonly StripPiece[])[] {
  const runs: StripPiece[][] = [];
  for (const piece of pieces) {
    const last = runs.at(-1);
    if (last !== undefined && last[0]!.blank === piece.blank && last[0]!.mirror === piece.mirror) {
      last.push(piece);
    } else {
      runs.push([piece]);
    }
  }
  return runs;
}

function runText(run: readonly StripPiece[], unit: LengthUnit): string {
  const [first] = run;
  const over = first!.mirror ? ' wrong side up' : '';
  const times = run.length === 1 ? '' : `${run.length} × `;
  return `${times}${first!.blank}${over}: cut at ${run.map((piece) => markText(piece, unit)).join(', ')}`;
}

/** A long row of marks goes on below, set in a little further. */
function wrapped(text: string): readonly string[] {
  const lines: string[] = [];
  let line = '     ';
  for (const part of text.split(/(?<=,) /)) {
    if (line.length + part.length > LINE && line.trim() !== '') {
      lines.push(line);
      line = '         ';
    }
    line += ` ${part}`;
  }
  return [...lines, line];
}

/** One mark for a square cut, two for a slanted one, with its angle only where rulers carry it. */
function markText({ near, far, angle, rulerAngle }: StripPiece, unit: LengthUnit): string {
  if (Math.abs(near - far) < 1e-6) {
    return formatMark(near, unit);
  }
  const named = rulerAngle ? ` (${Math.round(angle)}°)` : '';
  return `${formatMark(near, unit)} / ${formatMark(far, unit)}${named}`;
}
