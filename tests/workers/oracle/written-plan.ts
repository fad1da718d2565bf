/** The oracle's strips written as an answer, so that the proof-reader and the checker can say whether it is a plan at all. */
import type { LayoutAnswer, Placement, Strip } from '../../../src/plan/layout-job.ts';
import type { FoundRow } from './slanted-rows.ts';

/** @param names of the kinds @param cost of the length */
export function writtenPlan(
  cloth: string,
  rows: readonly FoundRow[],
  names: readonly string[],
  cost: number,
): LayoutAnswer {
  const strips: Strip[] = [];
  const placements: Placement[] = [];
  let from = 0;
  for (const { height, pieces } of rows) {
    strips.push({ from, height });
    for (const { lying, x, y } of pieces) {
      const [dx, dy] = lying.origin;
      placements.push({
        blank: names[lying.kind]!,
        shape: 0,
        turn: lying.turn,
        mirror: false,
        x: x + dx,
        y: from + y + dy,
      });
    }
    from += height;
  }
  const layout = { cloth, count: 1, length: from, firstCut: 'across', strips, placements } as const;
  return {
    status: 'optimal',
    cost,
    bound: cost,
    boundFrom: 'every way tried',
    seconds: 0,
    layouts: [layout],
    unplaced: [],
  };
}
