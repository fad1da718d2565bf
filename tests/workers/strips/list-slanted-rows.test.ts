/** Lists of all rows worth enough, against every vector of counts tried one by one. */
import { describe, expect, test } from 'vitest';
import { graphAt } from '../../../workers/strips/family.ts';
import { listSlantedRows } from '../../../workers/strips/list-slanted-rows.ts';
import { countsIn, expectFits, mostWorth, slantedFamily, worthOf } from './slanted-strip.ts';

const CASES = Array.from({ length: 120 }, (_, i) => slantedFamily(i + 1)).filter(
  ({ family }) => family.slopes.length > 1,
);

describe('rows of slanted blanks worth at least so much', () => {
  test('each that there is lies within a listed one, and each listed one fits', () => {
    expect(CASES.length).toBeGreaterThan(90);
    let listedAll = 0;
    for (const { seed, family, values, demand, raised: height, rowsAt } of CASES) {
      const graph = graphAt(family, height);
      const rows = rowsAt(height).filter((counts) => counts.some((n) => n > 0));
      const best = mostWorth(rows, values);
      for (const part of [0, 0.3, 0.7, 0.95, 1]) {
        const least = part * best - 1e-9;
        const list = listSlantedRows(graph, values, demand, least, 1e6, 1e4);
        expect(list, `seed ${seed}`).not.toBeNull();
        const listed = list!.rows.map(({ steps, value }) => {
          expectFits(steps, { seed, values, demand, height, span: family.span }, value);
          expect(value, `seed ${seed}`).toBeGreaterThanOrEqual(least);
          return countsIn(steps, demand);
        });
        for (const counts of rows.filter((each) => worthOf(each, values) >= least)) {
          const within = listed.some((other) => other.every((n, i) => n >= counts[i]!));
          expect(within, `seed ${seed}, part ${part}: ${counts} in none of ${listed.join(' | ')}`).toBe(true);
        }
        // None of the list is more of everything than another.
        const lost = listed.filter((a) => listed.some((b) => a !== b && b.every((n, i) => n >= a[i]!)));
        expect(lost, `seed ${seed}`).toEqual([]);
        listedAll += listed.length;
      }
      const above = listSlantedRows(graph, values, demand, best + 1e-6, 1e6, 1e4);
      expect([seed, above?.rows]).toEqual([seed, []]);
    }
    expect(listedAll).toBeGreaterThan(CASES.length * 5);
  });

  test('given up, it answers with nothing rather than with a part', () => {
    let givenUp = 0;
    for (const { family, values, demand, raised } of CASES) {
      const graph = graphAt(family, raised);
      const whole = listSlantedRows(graph, values, demand, 0, 1e6, 1e4)!;
      for (const patience of [0, whole.looked - 1]) {
        expect(listSlantedRows(graph, values, demand, 0, patience, 1e4)).toBeNull();
      }
      expect(listSlantedRows(graph, values, demand, 0, whole.looked, 1e4)).toEqual(whole);
      if (whole.rows.length < 2) continue;
      givenUp++;
      expect(listSlantedRows(graph, values, demand, 0, 1e6, whole.rows.length - 1)).toBeNull();
    }
    expect(givenUp).toBeGreaterThan(20);
  });
});
