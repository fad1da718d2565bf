/** From a plan to the cutting booklet. */
import type { CutList, Group } from '../cutting/cut-list.ts';
import { shortName } from '../draw/short-name.ts';
import { type StripRow, stripRows } from '../draw/strip-rows.ts';
import { type ClothLengthDrawn, unroll, wholeLength } from '../draw/unroll.ts';
import { type BagsOfStrip, bagStrips, sayBags } from '../plan/bagged-strips.ts';
import { CARE } from '../plan/care.ts';
import { angleOf, isRulerAngle } from '../plan/cut-chain.ts';
import type { StripPiece, StripSteps } from '../plan/cut-steps.ts';
import { inCuttingOrder } from '../plan/cutting-order.ts';
import { foldOf } from '../plan/folded-row.ts';
import type { LayoutAnswer } from '../plan/layout-job.ts';
import { easilyMistaken, lookAlikes, sayLookAlike } from '../plan/look-alikes.ts';
import { makeCutSteps } from '../plan/make-cut-steps.ts';
import { type OutwardMarks, outwardMarks } from '../plan/outward-marks.ts';
import { handlingOf, pairAt, sayFirstFold } from '../plan/say-fold.ts';
import { sayAllJoined } from '../plan/say-joined.ts';
import { sayLayer, withStacksTogether } from '../plan/say-stack.ts';
import { sayTestFirst, testBlockName } from '../plan/say-test-first.ts';

import { convert } from '../quilt/measure.ts';
import type { Cloth, LengthUnit, Quilt } from '../quilt/quilt.ts';
import type { Booklet, BookletCut, BookletLength, BookletStrip, Sitting } from './booklet.ts';
import { writeMark, writeRounded } from './write-mark.ts';

export interface BookletInput {
  readonly quilt: Quilt;
  readonly cutList: CutList;
  /** In the order of the groups. */
  readonly answers: readonly LayoutAnswer[];
  /** The unit of her ruler. */
  readonly shown: LengthUnit;
}

interface Making extends BookletInput {
  readonly bagsOf: BagsOfStrip;
}

export function makeBooklet(input: BookletInput): Booklet {
  const { quilt, cutList, shown } = input;
  const inOrder = cutList.groups.map((group, i) => inCuttingOrder(group, input.answers[i]!));
  const steps = cutList.groups.map((group, i) => makeCutSteps(group.job, inOrder[i]!));
  const making: Making = { ...input, answers: inOrder, bagsOf: bagStrips(quilt, cutList, inOrder, steps) };
  const pass = (isTest: boolean): readonly BookletLength[] =>
    cutList.groups.flatMap((group, i) =>
      unroll(group, inOrder[i]!).flatMap((length) =>
        bookletLength(making, group, inOrder[i]!, length, steps[i]!, isTest),
      ),
    );
  const first = sayTestFirst(quilt, inOrder);
  const sittings: readonly Sitting[] =
    first === null
      ? [{ title: null, lengths: pass(false) }]
      : [
          { title: 'Test block first', lengths: pass(true) },
          { title: `The rest, once ${testBlockName(quilt)} is sewn`, lengths: pass(false) },
        ];
  const strips = sittings.flatMap(({ lengths }) => lengths.flatMap((length) => length.strips));
  return {
    title: `${quilt.name}: cutting booklet`,
    care: CARE,
    explained: explained(strips, shown, first),
    sittings,
    joins: sayAllJoined(quilt, cutList, (length) => `${writeRounded(length, quilt.unit, shown, 'up')} ${shown}`).map(
      ([name, words]) => `${name}: ${words}`,
    ),
  };
}

function explained(strips: readonly BookletStrip[], shown: LengthUnit, first: string | null): readonly string[] {
  const some = (test: (strip: BookletStrip) => boolean): boolean => strips.some(test);
  const unit = shown === 'in' ? 'inches' : 'centimetres';
  return [
    ...(first === null ? [] : [first]),
    `All marks are in ${unit}, measured along the strip from its start and rounded outward, so that no blank comes out small. Each cut runs from edge to edge and parts a blank from all after it. Tick as you go.`,
    'The near edge of a strip across the cloth is the one toward the cut end; of one along the cloth, the one toward the left selvage. Where near and far differ, the cut is slanted: lay the ruler on both marks. An angle is named only where rulers carry it.',
    ...(some(({ pairs }) => pairs > 0)
      ? ['“A below, B above”: cut through two layers, the lower gives the first and the upper the second.']
      : []),
    ...(some(({ cuts }) => cuts.some(({ kind }) => kind === 'stack'))
      ? [
          'A stack is cut off square first; then it is cut along the strip, marks measured up from the near edge, and each blank is trimmed to its size (along × up).',
        ]
      : []),
    'A name that ends in “m” is the mirrored hand. A star after it warns of another blank that looks like it.',
  ];
}

function bookletLength(
  making: Making,
  group: Group,
  answer: LayoutAnswer,
  length: ClothLengthDrawn,
  steps: readonly StripSteps[],
  isTest: boolean,
): readonly BookletLength[] {
  const { quilt, shown } = making;
  const rows = stripRows(length, steps).filter(({ isFirst }) => isFirst === isTest);
  if (rows.every((row) => row.steps === null)) return [];
  const cloth = quilt.cloths.find(({ id }) => id === length.cloth)!;
  const width = convert(length.jobCloth.width, quilt.unit, shown);
  const isFresh = rows.some((row) => row.steps?.firstCut === 'across' && row.steps.part !== 'rest');
  const fold = isFresh ? sayFirstFold(width, shown) : null;
  const alike = lookAlikes(group, answer, quilt.unit).filter((each) => each.cloth === length.cloth);
  const own = new Set(rows.flatMap((row) => row.steps?.pieces.map(({ blank }) => blank) ?? []));
  const write = (value: number, way: 'up' | 'down'): string =>
    `${writeRounded(value, quilt.unit, shown, way)} ${shown}`;
  const times = length.times === 1 ? '' : `, ${length.times} pieces cut alike`;
  return [
    {
      cloth,
      length,
      title: length.piece === null ? cloth.name : `${cloth.name}, the piece “${length.piece}”${times}`,
      extent: `${write(length.jobCloth.width, 'down')} wide; ${write(length.used, 'up')} of ${write(wholeLength(length), 'down')} used`,
      before: [...(fold === null ? [] : [fold]), ...chalk(cloth, group, own)],
      strips: rows.map((row) => bookletStrip(making, group, length, row, fold !== null, cloth.wrongSide !== false)),
      alike: alike.filter(({ blanks }) => blanks.some((blank) => own.has(blank))).map(sayLookAlike),
      mistaken: easilyMistaken(alike),
    },
  ];
}

/** What is to be chalked before a blank leaves its strip, since it is not seen afterwards. */
function chalk(cloth: Cloth, group: Group, own: ReadonlySet<string>): readonly string[] {
  if (cloth.print === 'one-way' && group.blanks.some(({ id, directional }) => directional && own.has(id))) {
    return ['Chalk an arrow to the print’s top on the wrong side of each blank before you lift it.'];
  }
  return cloth.wrongSide === false
    ? []
    : ['Where the two sides are hard to tell apart, chalk a cross on the wrong side.'];
}

function bookletStrip(
  { quilt, shown, bagsOf }: Making,
  group: Group,
  length: ClothLengthDrawn,
  { strips, steps, isFirst }: StripRow,
  isFolded: boolean,
  hasWrongSide: boolean,
): BookletStrip {
  const write = (value: number): string => writeRounded(value, quilt.unit, shown, 'up');
  const first = strips[0]!;
  const plain = { times: length.times, before: null, cuts: [], pairs: 0, between: null, bags: null, lacks: 0 };
  if (steps === null) {
    const height = write(first.height);
    return { ...plain, title: 'Straighten the end', words: `trim ${height} ${shown} off`, height, steps };
  }
  const fold = foldOf(steps, length.oneWay, 1e-6 * length.jobCloth.width);
  const pairs = fold?.pairs ?? 0;
  const marks = outwardMarks(steps, pairs, quilt.unit, shown);
  const times = strips.length * length.times;
  const { before, between } = handlingOf(steps, fold, isFolded && steps.firstCut === 'across', times);
  const last = strips.at(-1)!;
  const height = write(first.height);
  const each = strips.length > 1 ? 'each ' : '';
  const way = steps.firstCut === 'along' ? 'wide, along the selvage' : 'tall';
  const count = steps.pieces.length;
  const rest = steps.part === 'rest' ? ', the rest of it' : '';
  const different = new Map(strips.map((strip) => [`${strip.layout}/${strip.strip}`, strip]));
  const bagged = [...different.values()].flatMap(({ layout, strip }) =>
    bagsOf(group.id, layout, strip, isFirst).flat(),
  );
  return {
    title: `${strips.length === 1 ? `Strip ${first.number}` : `Strips ${first.number} to ${last.number}`}${rest}`,
    words: `${each}${height} ${shown} ${way}, ${count} ${count === 1 ? 'blank' : 'blanks'}`,
    times,
    height,
    steps,
    before,
    cuts: cutsOf(steps, pairs, marks, quilt.unit, shown).map((cut) => ({ ...cut, isOver: cut.isOver && hasWrongSide })),
    pairs,
    between,
    bags: bagged.length === 0 ? null : sayBags(bagged.map(({ blank, bag }) => ({ blank: shortName(blank), bag }))),
    lacks: marks.lacks,
  };
}

function cutsOf(
  steps: StripSteps,
  pairs: number,
  marks: OutwardMarks,
  unit: LengthUnit,
  shown: LengthUnit,
): readonly BookletCut[] {
  const { pieces, height } = steps;
  const cut = (
    number: number,
    index: number,
    own: Omit<BookletCut, 'number' | 'near' | 'far' | 'nearAt' | 'farAt' | 'angle'>,
  ): BookletCut => {
    const { near, far } = marks.cuts[index]!;
    const angle = angleOf({ near, far }, height);
    const isSquare = Math.abs(near - far) < 1e-6;
    const named = isSquare ? 'square' : isRulerAngle(angle) ? `${Math.round(angle)}°` : '';
    const write = (at: number): string => {
      const isEnd =
        Math.abs(at - steps.across) < 1e-6 && Math.abs(at / marks.fine - Math.round(at / marks.fine)) > 1e-4;
      return isEnd ? 'end' : writeMark(at, unit, shown);
    };
    return {
      number,
      near: write(near),
      far: write(far),
      nearAt: near,
      farAt: far,
      angle: named,
      ...own,
    };
  };
  const folded = pieces.slice(0, pairs).map((piece, i) => {
    const blanks = pairAt(steps, i).map(({ blank }) => blank);
    return cut(i + 1, i, { blanks, kind: 'pair', isOver: piece.mirror, layers: [] });
  });
  const groups = withStacksTogether(pieces.slice(pairs, pieces.length - pairs));
  let index = pairs;
  const rest = groups.map((own, i) => {
    const at = index;
    index += own.length;
    return cut(pairs + i + 1, at, {
      blanks: own.map(({ blank }) => blank),
      kind: own.length === 1 ? 'one' : 'stack',
      isOver: own[0]!.mirror,
      layers: own.length === 1 ? [] : layersOf(own, height, unit, shown),
    });
  });
  return [...folded, ...rest];
}

const layersOf = (own: readonly StripPiece[], height: number, unit: LengthUnit, shown: LengthUnit): readonly string[] =>
  own.map((piece) => sayLayer(piece, height, (value) => writeRounded(value, unit, shown, 'up')));
