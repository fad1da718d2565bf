/** One length of cloth as ruler work: a line for each strip, or for several cut alike. */
import type { Group } from '../cutting/cut-list.ts';
import { stripRows } from '../draw/strip-rows.ts';
import type { ClothLengthDrawn, NumberedStrip } from '../draw/unroll.ts';
import { type BagsOfStrip, sayBags } from '../plan/bagged-strips.ts';
import type { StripPiece, StripSteps } from '../plan/cut-steps.ts';
import { foldOf } from '../plan/folded-row.ts';
import { handlingOf, pairAt, sayFirstFold } from '../plan/say-fold.ts';
import { sayLayer, stacksAlike, withStacksTogether } from '../plan/say-stack.ts';
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
  readonly bagsOf: BagsOfStrip;
  /** Whether the strips of the test block are told, or the others. */
  readonly isTest: boolean;
}

/** Of one length; nothing where none of the strips asked for lie on it. */
export function lengthLines(input: LengthInput): readonly string[] {
  const { quilt, length, isTest } = input;
  const rows = stripRows(length, input.steps).filter(({ isFirst }) => isFirst === isTest);
  if (rows.every(({ steps }) => steps === null)) {
    return [];
  }
  const fresh = rows.some(({ steps }) => steps?.firstCut === 'across' && steps.part !== 'rest');
  const firstFold = fresh ? sayFirstFold(length.jobCloth.width, quilt.unit) : null;
  return [
    '',
    `  ${title(input)}`,
    ...(firstFold === null ? [] : wrapped(firstFold, '   ')),
    ...rows.flatMap(({ strips, steps }) =>
      steps === null
        ? [`    Trim ${formatMark(strips[0]!.height, quilt.unit)} ${quilt.unit} to square the end.`]
        : stripLines(input, steps, strips, firstFold !== null),
    ),
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

function stripLines(
  { quilt, group, length, bagsOf, isTest }: LengthInput,
  strip: StripSteps,
  alike: readonly NumberedStrip[],
  isFolded: boolean,
): readonly string[] {
  const { unit } = quilt;
  const write = (value: number): string => `${formatMark(value, unit)} ${unit}`;
  const [first, last] = [alike[0]!.number!, alike.at(-1)!.number!];
  const numbers = `${first === last ? `Strip ${first}` : `Strips ${first} to ${last}`}${strip.part === 'rest' ? ', the rest of it' : ''}${first === last ? ':' : ', each'}`;
  const way = strip.firstCut === 'along' ? ' along the selvage' : '';
  const fold = foldOf(strip, length.oneWay, 1e-6 * length.jobCloth.width);
  const over = fold === null ? strip.left : fold.left;
  const where = strip.part === 'begun' ? 'for later' : fold === null ? 'over' : 'in the middle';
  const left = over > 1e-6 ? `; ${write(over)} left ${where}` : '';
  const times = alike.length * length.times;
  const { before, between } = handlingOf(strip, fold, isFolded && strip.firstCut === 'across', times);
  const rest = fold === null ? strip.pieces : strip.pieces.slice(fold.pairs, strip.pieces.length - fold.pairs);
  return [
    `    ${numbers} ${write(strip.height)} high${way}, ${strip.pieces.length} blank${strip.pieces.length === 1 ? '' : 's'}${left}`,
    ...(before === null ? [] : wrapped(before)),
    ...(fold === null ? [] : pairRuns(strip, fold.pairs).flatMap((run) => wrapped(pairText(strip, run, unit)))),
    ...(between === null ? [] : wrapped(between)),
    ...runsOf(rest).flatMap((run) => wrapped(runText(run, strip.height, unit))),
    ...wrapped(`Bags: ${sayBags(stripBags(alike, group.id, bagsOf, isTest))}.`),
  ];
}

/** What goes into which bag, of all strips cut alike. Several layouts of a bolt may be one strip cut several times. */
function stripBags(alike: readonly NumberedStrip[], group: string, bagsOf: BagsOfStrip, isTest: boolean) {
  const different = new Map(alike.map((strip) => [`${strip.layout}/${strip.strip}`, strip]));
  return [...different.values()].flatMap(({ layout, strip }) => bagsOf(group, layout, strip, isTest).flat());
}

/** Cuts through both layers that give the same pair, one after another. */
function pairRuns(strip: StripSteps, pairs: number): readonly (readonly number[])[] {
  const runs: number[][] = [];
  const key = (index: number) => JSON.stringify(pairAt(strip, index).map(({ blank, mirror }) => [blank, mirror]));
  for (let i = 0; i < pairs; i++) {
    const last = runs.at(-1);
    if (last !== undefined && key(last[0]!) === key(i)) {
      last.push(i);
    } else {
      runs.push([i]);
    }
  }
  return runs;
}

function pairText(strip: StripSteps, run: readonly number[], unit: LengthUnit): string {
  const [below, above] = pairAt(strip, run[0]!);
  const marks = run.map((index) => markText(strip.pieces[index]!, unit)).join(', ');
  const what =
    below.blank === above.blank
      ? `${2 * run.length} × ${below.blank}, two a cut`
      : `${run.length} × ${below.blank} in the lower layer, ${run.length} × ${above.blank} in the upper`;
  return `${what}: cut at ${marks}`;
}

/** Blanks of one kind that follow each other, or stacks cut alike, are told on one line. */
function runsOf(pieces: readonly StripPiece[]): readonly (readonly (readonly StripPiece[])[])[] {
  const runs: (readonly StripPiece[])[][] = [];
  for (const own of withStacksTogether(pieces)) {
    const before = runs.at(-1)?.[0];
    const isMore =
      before !== undefined &&
      (own.length === 1 && before.length === 1
        ? before[0]!.blank === own[0]!.blank && before[0]!.mirror === own[0]!.mirror
        : stacksAlike(before, own));
    if (isMore) {
      runs.at(-1)!.push(own);
    } else {
      runs.push([own]);
    }
  }
  return runs;
}

function runText(run: readonly (readonly StripPiece[])[], height: number, unit: LengthUnit): string {
  const [first] = run;
  const times = run.length === 1 ? '' : `${run.length} × `;
  const marks = `cut at ${run.map(([piece]) => markText(piece!, unit)).join(', ')}`;
  if (first!.length > 1) {
    const layers = first!.map((piece) => sayLayer(piece, height, (length) => formatMark(length, unit)));
    return `${times}stack of ${first!.length}: ${marks}; ${run.length === 1 ? 'then' : 'then each'} ${layers.join('; ')}`;
  }
  const over = first![0]!.mirror ? ' wrong side up' : '';
  return `${times}${first![0]!.blank}${over}: ${marks}`;
}

/** A long row of marks goes on below, set in a little further. */
function wrapped(text: string, indent = '     '): readonly string[] {
  const lines: string[] = [];
  let line = indent;
  for (const part of text.split(/(?<=[,:;.]) /)) {
    if (line.length + part.length > LINE && line.trim() !== '') {
      lines.push(line);
      line = `${indent}    `;
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
