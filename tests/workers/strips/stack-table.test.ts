/** Stacks against every way to pile a few boxes up. */
import { expect, test } from 'vitest';
import { segmentRow } from '../../../workers/strips/stack-row.ts';
import { gridFor, stackTable } from '../../../workers/strips/stack-table.ts';
import { makeVariant } from '../../../workers/strips/variant.ts';
import { rectangle } from '../../outside/engine.ts';
import { type Draw, numbers, vectors } from '../numbers.ts';

interface Case {
  readonly boxes: ReturnType<typeof makeVariant>[];
  readonly values: Float64Array;
  readonly demand: Int32Array;
  readonly top: number;
}

/** @param part sizes are multiples of one over this */
function drawn(draw: Draw, part: number): Case {
  const n = draw(1, 4);
  const boxes = Array.from({ length: n }, (_, i) =>
    makeVariant(i, 0, rectangle(draw(part, 6 * part) / part, draw(part, 5 * part) / part), 0, false, true),
  ).sort((a, b) => a.width - b.width);
  return {
    boxes,
    values: Float64Array.from({ length: n }, () => draw(0, 20) / 4),
    demand: Int32Array.from({ length: n }, () => draw(0, 3)),
    top: draw(5 * part, 14 * part) / part,
  };
}

/** The most that a stack of this width and height is worth, all ways tried. @param least blanks in it */
function bestStack({ boxes, values, demand }: Case, width: number, height: number, least = 0): number {
  let best = 0;
  for (const counts of vectors(boxes.map((box) => demand[box.blank]!))) {
    if (counts.reduce((a, b) => a + b, 0) < least) continue;
    const tall = counts.reduce((sum, n, i) => sum + n * boxes[i]!.height, 0);
    const wide = Math.max(0, ...counts.map((n, i) => (n > 0 ? boxes[i]!.width : 0)));
    if (tall <= height + 1e-9 && wide <= width + 1e-9)
      best = Math.max(
        best,
        counts.reduce((sum, n, i) => sum + n * values[boxes[i]!.blank]!, 0),
      );
  }
  return best;
}

test.each([
  ['whole cells', 4, true],
  ['sizes that lie on no grid', 7, false],
])('%s: what fits is worth no more than there is, and the bound no less', (_, part, exact) => {
  for (let seed = 1; seed <= 80; seed++) {
    const one = drawn(numbers(seed), part);
    const grid = exact ? gridFor([0.25], one.top, 1) : { cell: 0.25, exact: false };
    const up = stackTable(one.boxes, one.values, one.demand, one.top, grid, 'up');
    const down = stackTable(one.boxes, one.values, one.demand, one.top, grid, 'down');
    up.widths.forEach((width, w) => {
      for (const height of [one.top, one.top * 0.6]) {
        const best = bestStack(one, width, height);
        expect(up.value(w, height), `seed ${seed}`).toBeLessThanOrEqual(best + 1e-9);
        expect(down.value(w, height), `seed ${seed}`).toBeGreaterThanOrEqual(best - 1e-9);
        if (exact) expect(up.value(w, height)).toBeCloseTo(bestStack(one, width, Math.floor(height * 4) / 4), 9);
        const two = bestStack(one, width, height, 2);
        expect(up.several.value(w, height)).toBeLessThanOrEqual(two + 1e-9);
        expect(down.several.value(w, height), `seed ${seed}`).toBeGreaterThanOrEqual(two - 1e-9);
        const pair = up.several.stack(w, height);
        expect(pair.length).not.toBe(1);
        expect(pair.reduce((sum, v) => sum + one.values[v.blank]!, 0)).toBeCloseTo(up.several.value(w, height), 9);
        const held = up.stack(w, height);
        expect(held.reduce((sum, v) => sum + v.height, 0)).toBeLessThanOrEqual(height + 1e-9);
        expect(held.reduce((sum, v) => sum + one.values[v.blank]!, 0)).toBeCloseTo(up.value(w, height), 9);
      }
    });
  }
});

test('a row of segments fits its strip, and rounded the other way it bounds every row', () => {
  for (let seed = 1; seed <= 80; seed++) {
    const draw = numbers(seed);
    const one = drawn(draw, 7);
    const span = draw(30, 80) / 5;
    const grid = { cell: 0.25, exact: false };
    const table = stackTable(one.boxes, one.values, one.demand, one.top, grid, 'up');
    const row = segmentRow(table, one.top, span, grid, 'up');
    expect(row.segments.reduce((sum, { width }) => sum + width, 0)).toBeLessThanOrEqual(span + 1e-9);
    const bound = segmentRow(table, one.top, span, grid, 'down');
    const most = table.widths.map((width) => Math.floor(span / width + 1e-9));
    for (const counts of vectors(most)) {
      if (counts.reduce((sum, n, w) => sum + n * table.widths[w]!, 0) > span + 1e-9) continue;
      const worth = counts.reduce((sum, n, w) => sum + n * table.value(w, one.top), 0);
      expect(bound.value, `seed ${seed}`).toBeGreaterThanOrEqual(worth - 1e-9);
      expect(row.value).toBeLessThanOrEqual(bound.value + 1e-9);
    }
  }
});
