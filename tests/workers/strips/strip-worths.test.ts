/** What strips of each height can at most be worth, against every row tried one by one. */
import { expect, test } from 'vitest';
import { usefulHeights } from '../../../workers/strips/strip-heights.ts';
import { StripWorths } from '../../../workers/strips/strip-worths.ts';
import { goOn } from '../master/sample-master.ts';
import { countsIn, expectFits, mostWorth, slantedFamily, worthOf } from './slanted-strip.ts';

const CASES = Array.from({ length: 60 }, (_, i) => slantedFamily(i + 1, 0.5)).filter(
  ({ family }) => family.slopes.length > 1,
);

/** By height: the most that a row of such a strip or a lower one can be worth. */
function bests({ rowsAt, values }: (typeof CASES)[number], heights: readonly number[]): readonly number[] {
  let most = 0;
  return heights.map((height) => {
    most = Math.max(most, mostWorth(rowsAt(height), values));
    return most;
  });
}

test('no worth is below the best row’s, they ascend, and a closer look never raises one', async () => {
  expect(CASES.length).toBeGreaterThan(45);
  const told = { met: 0, heights: 0, lowered: 0 };
  for (const each of CASES) {
    const { seed, family, values, demand, holds } = each;
    const heights = usefulHeights(family);
    const best = bests(each, heights);
    for (const tolerance of [0.02, 0.0005]) {
      const worths = new StripWorths({
        family,
        heights,
        values,
        demand,
        known: new Float64Array(heights.length),
        onRow: (height, { steps, value }) => {
          expectFits(steps, { seed, values, demand, height, span: family.span }, value);
          expect(holds(height, countsIn(steps, demand)), `seed ${seed}`).toBe(true);
        },
        breath: goOn,
      });
      const expectBounds = () => {
        for (const [i, height] of heights.entries()) {
          expect(worths.worths[i], `seed ${seed}, height ${height}`).toBeGreaterThanOrEqual(best[i]! - 1e-9);
          if (i > 0) expect(worths.worths[i], `seed ${seed}`).toBeGreaterThanOrEqual(worths.worths[i - 1]!);
        }
      };
      expect(await worths.sketch(tolerance)).toBe(true);
      expectBounds();
      for (const closer of [0.01, 1e-6]) {
        const before = worths.worths.slice();
        expect(await worths.refine([...heights.keys()], closer)).toBe(true);
        expectBounds();
        before.forEach((was, i) => {
          expect(worths.worths[i], `seed ${seed}`).toBeLessThanOrEqual(was);
          if (worths.worths[i]! < was - 1e-6) told.lowered++;
        });
      }
      told.heights += heights.length;
      told.met += heights.filter((_, i) => worths.worths[i]! <= best[i]! * (1 + 1e-5) + 1e-9).length;
    }
  }
  // A close look over so few blanks leaves hardly anything open.
  expect(told.met).toBeGreaterThan(0.95 * told.heights);
  expect(told.lowered).toBeGreaterThan(0);
});

test('rows known beforehand change no bound for the worse', async () => {
  for (const each of CASES.slice(0, 20)) {
    const { seed, family, values, demand, rowsAt } = each;
    const heights = usefulHeights(family);
    const known = Float64Array.from(heights, (height) => worthOf(rowsAt(height).at(-1) ?? [], values));
    const worths = new StripWorths({ family, heights, values, demand, known, onRow: () => {}, breath: goOn });
    await worths.sketch(0.02);
    await worths.refine([...heights.keys()], 1e-6);
    bests(each, heights).forEach((best, i) => {
      expect(worths.worths[i], `seed ${seed}`).toBeGreaterThanOrEqual(best - 1e-9);
    });
  }
});

test('out of time, it says so', async () => {
  const { family, values, demand } = CASES[0]!;
  const heights = usefulHeights(family);
  const known = new Float64Array(heights.length);
  const never = async () => false;
  const worths = new StripWorths({ family, heights, values, demand, known, onRow: () => {}, breath: never });
  expect(await worths.sketch(0.02)).toBe(false);
});
