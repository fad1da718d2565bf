/** Whether strips of given heights can be filled, against every way to share the blanks out among them. */
import { expect, test } from 'vitest';
import { packExactly } from '../../../workers/master/pack-exactly.ts';
import { packSlots, shareWithNewRows } from '../../../workers/master/pack-slots.ts';
import type { Plan } from '../../../workers/master/plan.ts';
import type { Slot } from '../../../workers/master/slots-programme.ts';
import { writeAnswer } from '../../../workers/master/write-answer.ts';
import { tellFault } from '../../../workers/proof/fault.ts';
import { proofread } from '../../../workers/proof/proofread.ts';
import { usefulHeights } from '../../../workers/strips/strip-heights.ts';
import { vectors } from '../numbers.ts';
import { slantedFamily } from '../strips/slanted-strip.ts';
import { goOn, sampleMaster, solver } from './sample-master.ts';

/** By counts, the lowest strip that holds them: Infinity where none does. */
function lowestOf({ demand, rowsAt }: ReturnType<typeof slantedFamily>, heights: readonly number[]) {
  const lowest = new Map([...vectors([...demand])].map((counts) => [counts.join(), Infinity]));
  for (const height of heights.toReversed()) for (const counts of rowsAt(height)) lowest.set(counts.join(), height);
  return lowest;
}

/** Whether strips no taller than these, one each, hold everything. */
function canFill(lowest: ReadonlyMap<string, number>, slots: readonly number[], left: readonly number[]): boolean {
  if (left.every((n) => n === 0)) return true;
  const [height, ...rest] = slots;
  if (height === undefined) return false;
  for (const counts of vectors(left)) {
    if (lowest.get(counts.join())! > height + 1e-9) continue;
    const others = left.map((n, i) => n - counts[i]!);
    if (canFill(lowest, rest, others)) return true;
  }
  return false;
}

test('no filling that there is is denied, in whole rows or in parts, and every plan is whole and read', async () => {
  const told = { fillable: 0, not: 0, denied: 0, packed: 0, quickly: 0 };
  for (let seed = 1; seed <= 70; seed++) {
    const each = slantedFamily(seed, 0.5);
    const { family, job, draw, demand } = each;
    if (family.slopes.length === 1) continue;
    const heights = usefulHeights(family);
    const lowest = lowestOf(each, heights);
    for (let trial = 0; trial < 3; trial++) {
      const drawn = Array.from({ length: draw(1, 3) }, () => heights[draw(0, heights.length - 1)]!);
      drawn.sort((a, b) => a - b);
      const slots = [...new Set(drawn)].map(
        (height): Slot => ({ height, count: drawn.filter((h) => h === height).length }),
      );
      const name = `seed ${seed}, ${drawn}`;
      const isFillable = canFill(lowest, drawn, [...demand]);
      const expectPlan = (plan: Plan) => {
        expect([name, ...plan.unplaced].every((n) => n === name || n === 0)).toBe(true);
        const answer = writeAnswer(job, [family], plan, 0, '', 0, []);
        expect([name, ...proofread(job, answer).map(tellFault)]).toEqual([name]);
        expect(isFillable, name).toBe(true);
      };
      const master = sampleMaster(job);
      const quick = await packSlots(master, solver, slots, () => draw(0, 999) / 1000, goOn);
      if (quick) {
        expectPlan(quick);
        told.quickly++;
      }
      // Prices at random: they only say where to look.
      const prices = Float64Array.from(demand, () => draw(1, 9));
      const total = prices.reduce((sum, v, b) => sum + v * demand[b]!, 0);
      const filling = (await packExactly(
        master,
        solver,
        slots,
        prices.map((v) => v / total),
        1e5,
        1,
        goOn,
      ))!;
      if (filling.plan) {
        expectPlan(filling.plan);
        told.packed++;
      }
      if (filling.certain && !filling.plan) {
        expect(isFillable, `${name} denied`).toBe(false);
        told.denied++;
      }
      told[isFillable ? 'fillable' : 'not']++;
      // In parts of rows, what whole rows can do can be done too; and no share is above what one of no limit is.
      const shared = (await shareWithNewRows(master, solver, slots, master.demand, goOn, Infinity))!;
      expect(shared.used.every(({ column, slot }) => column.height <= slots[slot]!.height + 1e-9)).toBe(true);
      if (filling.plan) expect(shared.share, name).toBeGreaterThanOrEqual(1 - 1e-6);
    }
  }
  expect(told.fillable).toBeGreaterThan(20);
  expect(told.not).toBeGreaterThan(40);
  expect(told.denied).toBeGreaterThan(0.9 * told.not);
  expect(told.packed).toBeGreaterThan(0.8 * told.fillable);
  expect(told.quickly).toBeGreaterThan(0.5 * told.fillable);
});
