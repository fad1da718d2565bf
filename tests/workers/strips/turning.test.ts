/** Which cut lets a row go on as another does, against all ways to go on, of graphs drawn at random and of slanted blanks. */
import { expect, test } from 'vitest';
import { graphAt } from '../../../workers/strips/family.ts';
import { type RowGraph, tail } from '../../../workers/strips/row-graph.ts';
import { leadsByTurning } from '../../../workers/strips/turning.ts';
import { numbers } from '../numbers.ts';
import { slantedFamily } from './slanted-strip.ts';

/** Lengths need not come from blanks for the promise to hold. */
function drawnGraph(seed: number): RowGraph {
  const draw = numbers(seed);
  const side = draw(1, 3);
  const slopes = Float64Array.from({ length: 2 * side + 1 }, (_, i) => (i - side) / 2);
  const kinds = draw(1, 4);
  const length = Float64Array.from({ length: kinds * slopes.length ** 2 }, () =>
    draw(0, 9) === 0 ? Infinity : draw(1, 40) / 8,
  );
  const height = draw(1, 8) / 2;
  return {
    height,
    apart: height,
    span: draw(10, 60) / 4,
    ruler: null,
    slopes,
    square: side,
    blanks: Int32Array.from({ length: kinds }, (_, k) => k),
    length,
    choice: new Int32Array(length.length),
    variants: [],
  };
}

/** The shortest way to go on from a cut with these blanks in this order and to end, tails included; Infinity if none. */
function shortestEnd(graph: RowGraph, from: number, blanks: readonly number[]): number {
  const m = graph.slopes.length;
  let at = Float64Array.from({ length: m }, (_, s) => (s === from ? 0 : Infinity));
  for (const k of blanks) {
    at = at.map((_, t) =>
      at.reduce((least, a, s) => Math.min(least, a + graph.length[(k * m + s) * m + t]!), Infinity),
    );
  }
  return at.reduce((least, a, s) => Math.min(least, a + tail(graph, s)), Infinity);
}

const slanted = Array.from({ length: 40 }, (_, i) => slantedFamily(i + 1)).map(({ family, raised }) =>
  graphAt(family, raised),
);
const GRAPHS = [...Array.from({ length: 150 }, (_, i) => drawnGraph(i + 1)), ...slanted];

test('with the lead it names, a row goes on with any blanks and ends no later; with a hair less, one does not', () => {
  let tight = 0;
  let finite = 0;
  GRAPHS.forEach((graph, g) => {
    const m = graph.slopes.length;
    const ahead = leadsByTurning(graph);
    const kinds = [...graph.blanks.keys()];
    const orders = [[], ...kinds.map((k) => [k]), ...kinds.flatMap((k) => kinds.map((l) => [k, l]))];
    for (let t = 0; t < m; t++) {
      for (let s = 0; s < m; s++) {
        const lead = ahead[t * m + s]!;
        if (lead === Infinity) continue;
        finite++;
        for (const order of orders) {
          const own = shortestEnd(graph, s, order);
          if (own === Infinity) continue;
          expect(shortestEnd(graph, t, order) - lead, `graph ${g}, ${t} for ${s}`).toBeLessThanOrEqual(own + 1e-9);
        }
        // It asks no more than some single step or the end does.
        const steps = kinds.flatMap((k) =>
          Array.from({ length: m }, (_, u) => {
            const from = graph.length[(k * m + s) * m + u]!;
            return from === Infinity ? -Infinity : graph.length[(k * m + t) * m + u]! - from;
          }),
        );
        const needed = Math.max(tail(graph, t) - tail(graph, s), ...steps);
        expect(lead).toBeCloseTo(needed, 9);
        if (s === t) expect(lead).toBeCloseTo(0, 9);
        if (lead > 0 && shortestEnd(graph, t, []) - tail(graph, s) >= lead - 1e-9) tight++;
      }
    }
  });
  expect(finite).toBeGreaterThan(1000);
  expect(tight).toBeGreaterThan(0);
});
