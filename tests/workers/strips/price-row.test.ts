/** Rows that are worth most, against every part of the demand tried one by one. */
import { describe, expect, test } from 'vitest';
import { bestRow } from '../../../workers/strips/best-row.ts';
import { bestByCounts } from '../../../workers/strips/by-counts.ts';
import { makeFamily, passingGraphAt } from '../../../workers/strips/family.ts';
import { greedyPath } from '../../../workers/strips/greedy-path.ts';
import { gridPath } from '../../../workers/strips/grid-path.ts';
import { knapsackRow } from '../../../workers/strips/knapsack-row.ts';
import { priceRow } from '../../../workers/strips/price-row.ts';
import { boundByDemand, boundByRatio } from '../../../workers/strips/ratio.ts';
import { makeRestTable, restAt } from '../../../workers/strips/rest-table.ts';
import { usableArcs } from '../../../workers/strips/row-arcs.ts';
import { numbers, vectors } from '../numbers.ts';
import { rectangleJob, layoutJob as rectanglesAsked } from '../oracle/rectangle-job.ts';
import { expectFits, mostWorth, slantedCase } from './slanted-strip.ts';

const CASES = Array.from({ length: 80 }, (_, i) => slantedCase(i + 1)).filter(({ graph }) => graph.slopes.length > 1);

describe('rows of slanted blanks', () => {
  test('are drawn often enough to tell', () => expect(CASES.length).toBeGreaterThan(60));

  test('priced rows fit, hold no more than is wanted, and no bound is below the best', () => {
    for (const each of CASES) {
      for (const effort of ['quick', 'exact'] as const) {
        const { best, bound } = priceRow(each.graph, each.values, each.demand, 0, effort);
        expect(bound, `seed ${each.seed}`).toBeGreaterThanOrEqual(each.best - 1e-6);
        expect(best, `seed ${each.seed}`).not.toBeNull();
        expectFits(best!.steps, each, best!.value);
        expect(best!.value, `seed ${each.seed}`).toBeLessThanOrEqual(each.best + 1e-6);
      }
    }
  });

  test('none is found above the best, and just below it one is found or the bound leaves room for it', () => {
    for (const each of CASES) {
      const above = priceRow(each.graph, each.values, each.demand, each.best + 1e-6);
      expect(above.best, `seed ${each.seed}`).toBeNull();
      const below = priceRow(each.graph, each.values, each.demand, each.best - 1e-3);
      if (below.best) expect(below.best.value).toBeCloseTo(each.best, 6);
      else expect(below.bound, `seed ${each.seed}`).toBeGreaterThanOrEqual(each.best - 1e-6);
    }
  });

  test('the search best first finds the best, with rent and without', () => {
    for (const each of CASES) {
      const { graph, demand } = each;
      const values = own(each);
      const most = Int32Array.from(graph.blanks, (b) => demand[b]!);
      for (const rent of [values.map(() => 0), values.map((v) => v / 3)]) {
        const found = bestRow({ graph, values, most, rent, threshold: 0, labels: 1e6, labelsByCounts: 0 });
        expect([each.seed, found.value, found.bound]).toEqual([
          each.seed,
          expect.closeTo(each.best, 6),
          expect.closeTo(each.best, 6),
        ]);
        expectFits(found.steps, each, found.value);
        const above = bestRow({
          graph,
          values,
          most,
          rent,
          threshold: each.best + 1e-6,
          labels: 1e6,
          labelsByCounts: 0,
        });
        expect([each.seed, above.steps.length, above.bound]).toEqual([each.seed, 0, expect.closeTo(each.best, 5)]);
      }
    }
  });

  test('count by count the best is found too, and given up early the bound is none below it', () => {
    for (const each of CASES) {
      const { graph, demand } = each;
      const values = own(each);
      const most = Int32Array.from(graph.blanks, (b) => demand[b]!);
      for (const rent of [values.map(() => 0), values.map((v) => v / 3)]) {
        const search = { graph, values, most, rent, threshold: 0, labels: 0 };
        const found = bestByCounts({ ...search, labelsByCounts: 1e6 });
        expect([each.seed, found.value, found.bound]).toEqual([
          each.seed,
          expect.closeTo(each.best, 6),
          expect.closeTo(each.best, 6),
        ]);
        expectFits(found.steps, each, found.value);
        const above = bestByCounts({ ...search, threshold: each.best + 1e-6, labelsByCounts: 1e6 });
        expect([each.seed, above.steps.length, above.bound]).toEqual([each.seed, 0, expect.closeTo(each.best, 5)]);
        for (const labelsByCounts of [1, 10, 100]) {
          const { bound } = bestByCounts({ ...search, labelsByCounts });
          expect(bound, `seed ${each.seed}`).toBeGreaterThanOrEqual(each.best - 1e-6);
        }
      }
    }
  });

  test('given up early, its bound is none below the best', () => {
    for (const each of CASES) {
      const { graph, demand } = each;
      const values = own(each);
      const most = Int32Array.from(graph.blanks, (b) => demand[b]!);
      for (const labels of [1, 10, 100]) {
        const { bound } = bestRow({
          graph,
          values,
          most,
          rent: values.map(() => 0),
          threshold: 0,
          labels,
          labelsByCounts: 0,
        });
        expect(bound, `seed ${each.seed}`).toBeGreaterThanOrEqual(each.best - 1e-6);
      }
    }
  });

  test('what the table says of the rest of a row is none below the best; on a grid, rounded up, rows fit', () => {
    for (const each of CASES) {
      const { graph, demand, span, best } = each;
      const ratio = boundByRatio(graph, own(each));
      const arcs = usableArcs(graph, own(each), ratio, Infinity, false);
      const most = Int32Array.from(graph.blanks, (b) => demand[b]!);
      for (const cells of [60, 700]) {
        const up = gridPath({ graph, ratio, arcs, threshold: 0, cell: span / cells, most });
        if (up) expectFits(up.steps, each, up.value);
      }
      for (const grid of ['coarse', 'fine'] as const) {
        const table = makeRestTable(graph, arcs, grid);
        if (table) expect(restAt(table, span, graph.square, graph.slopes.length)).toBeGreaterThanOrEqual(best - 1e-6);
      }
      const greedy = greedyPath(graph, ratio, own(each), most);
      expectFits(greedy.steps, each, greedy.value);
      expect(greedy.value).toBeLessThanOrEqual(best + 1e-6);
      const free = ratio.rate * span + ratio.bonus[graph.square]!;
      expect(free, `seed ${each.seed}`).toBeGreaterThanOrEqual(best - 1e-6);
      expect(boundByDemand(graph, own(each), most, ratio).bound).toBeGreaterThanOrEqual(best - 1e-6);
    }
  });
});

/** Values by the graph's blanks. */
const own = ({ graph, values }: (typeof CASES)[number]) => Float64Array.from(graph.blanks, (b) => values[b]!);

test('rows of boxes: the knapsack finds the best, and nothing above it', () => {
  for (let seed = 1; seed <= 80; seed++) {
    const job = rectanglesAsked(rectangleJob(seed));
    const draw = numbers(seed + 1000);
    const family = makeFamily(job, 0, { along: false, span: job.cloths[0]!.width, stack: null, segment: null });
    const height = family.heights[draw(0, family.heights.length - 1)]!;
    const graph = passingGraphAt(family, height);
    const values = Float64Array.from(job.blanks, () => draw(1, 40) / 8);
    const demand = Int32Array.from(job.blanks, (blank) => blank.demand);
    const narrowest = job.blanks.map((_, blank) => {
      const lying = family.variants.filter((v) => v.blank === blank && v.height <= height);
      return Math.min(...lying.map((v) => v.width));
    });
    const rows = [...vectors([...demand])].filter((counts) => {
      const widths = counts.map((n, i) => (n === 0 ? 0 : n * narrowest[i]!));
      return widths.reduce((sum, w) => sum + w, 0) <= family.span * (1 + 1e-9);
    });
    const best = mostWorth(rows, values);
    const found = knapsackRow(graph, values, demand, 0);
    expect([seed, found.best?.value ?? 0]).toEqual([seed, expect.closeTo(best, 7)]);
    expect(found.bound).toBeCloseTo(best, 7);
    expect(knapsackRow(graph, values, demand, best).best).toBeNull();
  }
});
