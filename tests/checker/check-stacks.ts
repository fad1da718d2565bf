/**
 * Three stages: square cuts part a strip into segments, each a row or a stack. Tried from the strip's start: every place where some
 * blank begins or ends, and that no blank lies across, may be the next cut.
 */
import { canBeCut } from './check-strips.ts';
import type { Pair, Ring } from './rings.ts';

/** @param rings as they lie in the strip: along it from its start, and up from its near edge */
export function canBeParted(rings: readonly Ring[], length: number, height: number, slack: number): boolean {
  const reach = rings.map((ring): Pair => spread(ring, 0));
  const places = [...new Set(reach.flat())].filter((u) => u > slack).sort((a, b) => a - b);
  const cuts = [...places, length].filter((u) => reach.every(([low, high]) => low >= u - slack || high <= u + slack));
  const hopeless = new Set<number>();
  const goOn = (from: number): boolean => {
    const left = rings.filter((_, i) => reach[i]![0] >= from - slack);
    if (left.length === 0) return true;
    if (hopeless.has(from)) return false;
    hopeless.add(from);
    return cuts.some((to) => {
      if (to <= from) return false;
      const held = rings.filter((_, i) => reach[i]![0] >= from - slack && reach[i]![1] <= to + slack);
      return held.length > 0 && isSegment(held, from, to, height, slack) && goOn(to);
    });
  };
  return goOn(0);
}

function isSegment(held: readonly Ring[], from: number, to: number, height: number, slack: number): boolean {
  if (isStack(held, slack)) return true;
  const own = held.map((ring) => ring.map(([u, v]): Pair => [u - from, v]));
  return canBeCut(own, to - from, height, slack);
}

/** Whether, of any two, one lies wholly above the other. */
function isStack(held: readonly Ring[], slack: number): boolean {
  const up = held.map((ring) => spread(ring, 1));
  return up.every(([low, high], i) =>
    up.every((other, j) => i === j || low >= other[1] - slack || high <= other[0] + slack),
  );
}

const spread = (ring: Ring, axis: 0 | 1): Pair => {
  const values = ring.map((p) => p[axis]);
  return [Math.min(...values), Math.max(...values)];
};
