/**
 * Marks of a strip's cuts as they are read on a ruler, rounded outward: no blank comes out smaller than planned. What a cut gains by
 * rounding is added to all the marks after it, as long as the strip has room for that; so the blanks lie a little apart instead of
 * losing a sliver each.
 */
import { convert } from '../quilt/measure.ts';
import type { LengthUnit } from '../quilt/quilt.ts';
import type { StripPiece, StripSteps } from './cut-steps.ts';
import type { Cut } from './parting-cut.ts';

export interface OutwardMarks {
  /** After each blank of the strip; those of the upper layer of a fold are not told. In the quilt's unit. */
  readonly cuts: readonly Cut[];
  /** What all marks are multiples of, in the quilt's unit, but for the strip's own end. */
  readonly fine: number;
  /** The most that a blank may lack where the strip has no room for rounding: less than `fine`; 0 where it has. */
  readonly lacks: number;
}

/** Parts of an inch and of a centimetre that a ruler shows, or that can be told between its lines; the coarsest that serves is taken. */
const FINE: Readonly<Record<LengthUnit, readonly number[]>> = { in: [1 / 16, 1 / 32, 1 / 64], cm: [0.1, 0.05] };

/**
 * @param pairs how many blanks from the start are cut through two layers (foldOf)
 * @param quilt its unit, in which lengths are @param shown the unit of the ruler
 */
export function outwardMarks(strip: StripSteps, pairs: number, quilt: LengthUnit, shown: LengthUnit): OutwardMarks {
  const cuts = strip.pieces.slice(0, strip.pieces.length - pairs);
  for (const part of FINE[shown]) {
    const fine = convert(part, shown, quilt);
    const moved = rounded(cuts, strip.across, fine, true);
    if (fits(moved, pairs, strip.across, 1e-6 * strip.across)) {
      return { cuts: moved, fine, lacks: 0 };
    }
  }
  const fine = convert(FINE[shown].at(-1)!, shown, quilt);
  return { cuts: rounded(cuts, strip.across, fine, false), fine, lacks: fine };
}

function rounded(cuts: readonly StripPiece[], across: number, fine: number, isMoved: boolean): readonly Cut[] {
  const slack = 1e-6 * across;
  let shift = 0;
  let before: Cut = { near: 0, far: 0 };
  return cuts.map(({ near, far, stack }) => {
    // One cut ends a whole stack.
    if (stack !== undefined && stack.layer > 1) return before;
    const up = (value: number): number => {
      const mark = Math.ceil((value + shift) / fine - 1e-5) * fine + 0;
      // The strip's own end is a mark as good as any.
      return mark > across && value + shift <= across + slack ? across : mark;
    };
    const cut = { near: up(near), far: up(far) };
    before = cut;
    shift = isMoved ? Math.max(0, cut.near - near, cut.far - far) : 0;
    return cut;
  });
}

/** Whether all lies within the strip and, of a folded one, short of what the upper layer takes of its end. */
function fits(cuts: readonly Cut[], pairs: number, across: number, slack: number): boolean {
  const fold = pairs === 0 ? { near: 0, far: 0 } : cuts[pairs - 1]!;
  const last = cuts.at(-1)!;
  return last.near <= across - fold.near + slack && last.far <= across - fold.far + slack;
}
