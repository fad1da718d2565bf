/** Chooses one cut after each blank of a row, so that the cuts do not cross and stand on marks that are easily found. */
import { type Cut, type CutRules, RULER_PARTS } from './parting-cut.ts';

/** The angles that quilters' rulers carry, to the strip. Practice. */
const RULER_ANGLES: readonly number[] = [30, 45, 60, 90];
const ANGLE_TOLERANCE = 0.1;

/** A cut that crosses the one before it would begin where cloth is cut off already. */
const CROSSES = 1000;
/** For each fineness of marks. */
const FINER = 100;
const SLANTED = 20;
const CARRIED = 10;

/**
 * The best chain of cuts, by a longest path over what is offered: none crosses its neighbour where that can be helped; then
 * marks on the ruler, on half and on a quarter of it; then square cuts, then angles that rulers carry; then cuts close to
 * the blank.
 * @param offered for each blank in order, at least one
 */
export function cutChain(offered: readonly (readonly Cut[])[], rules: CutRules): readonly Cut[] {
  let before: readonly Cut[] = [{ near: 0, far: 0 }];
  let cost: readonly number[] = [0];
  const cameFrom: (readonly number[])[] = [];
  for (const cuts of offered) {
    const snug = Math.min(...cuts.map(({ near, far }) => near + far));
    const from: number[] = [];
    cost = cuts.map((cut) => {
      const through = before.map((last, i) => cost[i]! + (crosses(last, cut) ? CROSSES : 0));
      const best = through.indexOf(Math.min(...through));
      from.push(best);
      return through[best]! + trouble(cut, rules) + (cut.near + cut.far - snug) / rules.length;
    });
    cameFrom.push(from);
    before = cuts;
  }
  let at = cost.indexOf(Math.min(...cost));
  const chain: Cut[] = [];
  for (let i = offered.length - 1; i >= 0; i--) {
    chain.unshift(offered[i]![at]!);
    at = cameFrom[i]![at]!;
  }
  return chain;
}

/** Of a cut to the strip, 0 to 90 degrees; 90 is square. */
export const angleOf = ({ near, far }: Cut, height: number): number =>
  (Math.atan2(height, Math.abs(far - near)) * 180) / Math.PI;

/** Whether rulers carry that angle. */
export const isRulerAngle = (angle: number): boolean =>
  RULER_ANGLES.some((carried) => Math.abs(carried - angle) <= ANGLE_TOLERANCE);

export const isMark = (value: number, ruler: number): boolean =>
  Math.abs(value - Math.round(value / ruler) * ruler) <= 1e-6;

const crosses = (before: Cut, cut: Cut): boolean => cut.near < before.near - 1e-4 || cut.far < before.far - 1e-4;

function trouble(cut: Cut, { ruler, height }: CutRules): number {
  const marks = [cut.near, cut.far];
  const part = ruler === null ? -1 : RULER_PARTS.findIndex((one) => marks.every((mark) => isMark(mark, ruler / one)));
  const fineness = part < 0 ? RULER_PARTS.length : part;
  const slant = Math.abs(cut.near - cut.far) < 1e-6 ? 0 : isRulerAngle(angleOf(cut, height)) ? CARRIED : SLANTED;
  return fineness * FINER + slant;
}
