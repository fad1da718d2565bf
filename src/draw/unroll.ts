/** From an answer to lengths of cloth as they lie on the table, one for each diagram, with their strips numbered. */
import type { Blank, Group } from '../cutting/cut-list.ts';
import type { JobCloth, Layout, LayoutAnswer } from '../plan/layout-job.ts';
import { blanksById, filledStrips } from '../plan/placed.ts';
import { stepsFor } from '../plan/say-steps.ts';

/** A bolt's layouts end to end, or one piece from the shelf. */
export interface ClothLengthDrawn {
  /** The cloth's id in the job. */
  readonly id: string;
  readonly cloth: string;
  /** The shelf piece's id; null for a bolt. */
  readonly piece: string | null;
  /** How many pieces are cut exactly so; always 1 for a bolt. */
  readonly times: number;
  readonly jobCloth: JobCloth;
  /** Where a one-way print's up runs, which forbids some folds. */
  readonly oneWay?: 'along' | 'across';
  readonly laid: readonly LaidLayout[];
  /** What the layouts use of it. */
  readonly used: number;
  readonly strips: readonly NumberedStrip[];
}

export interface LaidLayout {
  readonly layout: Layout;
  /** Its index in the answer. */
  readonly index: number;
  /** Where it begins along the cloth. */
  readonly at: number;
  /** Of its strips that are the test block's, from the start, how many blanks of each are. */
  readonly test: readonly number[];
}

export interface NumberedStrip {
  /** From 1 in the order of cutting; null for the strip that squares the end. */
  readonly number: number | null;
  /** Index of the layout in the answer, and of the strip in the layout. */
  readonly layout: number;
  readonly strip: number;
  readonly firstCut: 'across' | 'along';
  /** Where it begins: along the cloth, or across it where first cuts run along. */
  readonly from: number;
  readonly height: number;
  /** Whether it is the test block's, cut before all others; and then how many blanks from its start are, the others waiting. */
  readonly isTest: boolean;
  readonly held: number;
}

export function unroll(group: Group, answer: LayoutAnswer): readonly ClothLengthDrawn[] {
  const blanks = blanksById(group.blanks);
  return group.lengths.flatMap((length, index) => {
    const jobCloth = group.job.cloths[index]!;
    const own = answer.layouts
      .map((layout, which) => ({ layout, index: which, test: answer.testFirst?.held[which] ?? [] }))
      .filter(({ layout }) => layout.cloth === length.id);
    const common = { ...length, jobCloth };
    if (jobCloth.length != null) {
      return own.map((laid) => drawn({ ...common, times: laid.layout.count, laid: [{ ...laid, at: 0 }] }, blanks));
    }
    if (own.length === 0) {
      return [];
    }
    const each = own.flatMap((laid) => Array.from({ length: laid.layout.count }, () => laid));
    let end = 0;
    const laid = each.map((one) => ({ ...one, at: (end += one.layout.length) - one.layout.length }));
    return [drawn({ ...common, times: 1, laid }, blanks)];
  });
}

function drawn(
  length: Omit<ClothLengthDrawn, 'used' | 'strips'>,
  blanks: ReadonlyMap<string, Blank>,
): ClothLengthDrawn {
  const used = length.laid.reduce((sum, { layout }) => sum + layout.length, 0);
  let number = 0;
  const strips = length.laid.flatMap(({ layout, index, at, test }) => {
    const firstCut = layout.firstCut ?? 'across';
    return filledStrips(layout, blanks).map(({ from, height, placed }, strip): NumberedStrip => {
      const start = from + (firstCut === 'along' ? 0 : at);
      const isTest = strip < test.length;
      return {
        number: placed.length > 0 ? ++number : null,
        layout: index,
        strip,
        firstCut,
        from: start,
        height,
        isTest,
        held: test[strip] ?? 0,
      };
    });
  });
  return { ...length, used, strips };
}

/** How much cloth lies there: a piece's length, or what is bought of a bolt, in whole steps, as washed. */
export function wholeLength({ jobCloth, used }: ClothLengthDrawn): number {
  if (jobCloth.length != null) {
    return jobCloth.length;
  }
  return jobCloth.step === undefined ? used : stepsFor(used, jobCloth.step) * jobCloth.step;
}
