/** Areas of plane figures, by a general library for clipping polygons. */
import polygonClipping from 'polygon-clipping';

export type Pair = readonly [number, number];
export type Ring = readonly Pair[];

/** A share of the cloth's width that counts as touching. */
export const SLACK = 1e-6;

export const perimeter = (ring: Ring): number =>
  ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    return sum + Math.hypot(p[0] - q[0], p[1] - q[1]);
  }, 0);

/** How thick what two figures share is: area over half the way round, of the thickest part. A long sliver's own thickness. */
export function thicknessShared(a: Ring, b: Ring): number {
  return clip(a, b, polygonClipping.intersection);
}

/** How thick what a figure has outside the rectangle over two ranges is. */
export function thicknessOutside(ring: Ring, [x0, x1]: Pair, [y0, y1]: Pair): number {
  if (ring.every(([x, y]) => x >= x0 && x <= x1 && y >= y0 && y <= y1)) return 0;
  const frame: Ring = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  return clip(ring, frame, polygonClipping.difference);
}

/**
 * The library can lose its way among points that differ in the last digits only, and says so; on a grid far finer than any
 * tolerance it does not. Near the origin that grid is finest, so the figures are moved there first.
 */
function clip(a: Ring, b: Ring, operate: typeof polygonClipping.intersection): number {
  const [x0, y0] = a[0]!;
  for (const grid of [1e-10, 1e-9, 1e-8]) {
    const snap = (ring: Ring): [number, number][] =>
      ring.map(([x, y]) => [Math.round((x - x0) / grid) * grid, Math.round((y - y0) / grid) * grid]);
    try {
      const parts = operate([snap(a)], [snap(b)]);
      return Math.max(0, ...parts.map((rings) => (2 * areaWithin(rings)) / rings.map(perimeter).reduce(plus)));
    } catch {
      // The next, coarser grid.
    }
  }
  throw new Error('the clipping library found no answer on any grid');
}

const plus = (a: number, b: number): number => a + b;

/** The first ring goes round, the others are holes. */
const areaWithin = (rings: readonly Ring[]): number =>
  rings.map(shoelace).reduce((rest, area, i) => rest + (i === 0 ? area : -area), 0);

/** Measured from its own first corner: a speck far from the origin would be lost in rounding. */
const shoelace = (ring: Ring): number => {
  const [x0, y0] = ring[0]!;
  const twice = ring.map((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    return (p[0] - x0) * (q[1] - y0) - (q[0] - x0) * (p[1] - y0);
  });
  return Math.abs(twice.reduce(plus)) / 2;
};

/** The convex hull by gift wrapping: from the lowest point always on to the one that has all others to its left. */
export function wrapped(points: Ring): Ring {
  const start = points.reduce((low, p) => (p[1] < low[1] || (p[1] === low[1] && p[0] < low[0]) ? p : low));
  const hull: Pair[] = [];
  let at = start;
  do {
    hull.push(at);
    let next = at;
    for (const p of points) {
      if (p[0] === at[0] && p[1] === at[1]) continue;
      const side = (next[0] - at[0]) * (p[1] - at[1]) - (next[1] - at[1]) * (p[0] - at[0]);
      const farther = Math.hypot(p[0] - at[0], p[1] - at[1]) > Math.hypot(next[0] - at[0], next[1] - at[1]);
      if (next === at || side < 0 || (side === 0 && farther)) next = p;
    }
    at = next;
  } while ((at[0] !== start[0] || at[1] !== start[1]) && hull.length <= points.length);
  return hull;
}
