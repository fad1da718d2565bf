/** Rows with stacks: to a graph of rows, stacks are further blanks, each a box that stands between two square cuts. */
import type { RowGraph } from './row-graph.ts';
import type { StackTable } from './stack-table.ts';
import { makeStack } from './stack-variant.ts';
import type { Variant } from './variant.ts';

export interface PricedStack {
  readonly variant: Variant;
  readonly value: number;
}

/**
 * The stacks worth having in a strip of this height: each worth more than any narrower one. Stacks of one blank are left to the row.
 * @param from the index that the first of them gets as a blank @param most of them
 * @param bounding where there are too many, two become one with the width of the one and the value of the other, so that no row is
 * worth less for it; else the poorest for its width gives way
 */
export function stacksFor(
  table: StackTable,
  height: number,
  from: number,
  most: number,
  bounding: boolean,
): readonly PricedStack[] {
  const found: { width: number; value: number; w: number }[] = [];
  let best = 1e-9;
  table.widths.forEach((width, w) => {
    const value = table.several.value(w, height);
    if (value <= best + 1e-9) return;
    best = value;
    found.push({ width, value, w });
  });
  while (found.length > most) {
    const losses = found.map(({ width, value }, i) =>
      bounding ? ((found[i + 1]?.value ?? Infinity) - value) / width : value / width,
    );
    const at = losses.indexOf(Math.min(...losses));
    if (bounding) found.splice(at, 2, { ...found[at + 1]!, width: found[at]!.width });
    else found.splice(at, 1);
  }
  return found.map(({ width, value, w }, i) => ({
    variant: { ...makeStack(table.several.stack(w, height), from + i), width },
    value,
  }));
}

/** The graph with these stacks as further blanks. */
export function withStacks(graph: RowGraph, stacks: readonly PricedStack[]): RowGraph {
  if (stacks.length === 0) return graph;
  const { square } = graph;
  const m = graph.slopes.length;
  const known = graph.blanks.length;
  const blanks = Int32Array.from([...graph.blanks, ...stacks.map((s) => s.variant.blank)]);
  const length = new Float64Array(blanks.length * m * m).fill(Infinity);
  length.set(graph.length);
  const choice = new Int32Array(blanks.length * m * m);
  choice.set(graph.choice);
  stacks.forEach(({ variant }, i) => {
    const at = ((known + i) * m + square) * m + square;
    length[at] = variant.width;
    choice[at] = 2 * (graph.variants.length + i);
  });
  return { ...graph, blanks, length, choice, variants: [...graph.variants, ...stacks.map((s) => s.variant)] };
}
