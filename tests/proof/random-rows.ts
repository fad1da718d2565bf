/** Random rows for property tests: a strip cut by random straight subcuts, each cell a blank of its own. */
import fc from 'fast-check';
import type { JobBlank, LayoutAnswer, LayoutJob, Placement } from '../../src/plan/layout-job.ts';
import { type Point, type Polygon, reflect, subtract, turn } from '../../src/shape/point.ts';

export interface RandomPlan {
  readonly job: LayoutJob;
  readonly answer: LayoutAnswer;
}

const share = (min = 0, max = 1) => fc.double({ min, max, noNaN: true });

/** How one cell is turned, mirrored, and what is trimmed from its far corner so that outlines differ. */
const cell = fc.record({
  nearStep: share(0.3, 3),
  farStep: share(0.3, 3),
  turn: fc.oneof(fc.constantFrom(0, 90, 180, 270), share(0, 359)),
  mirror: fc.boolean(),
  trim: fc.option(share(0.2, 0.8)),
});

/**
 * Strips across (or along) a cloth, parted into cells by cuts from the near to the far edge. The cells touch each other and
 * the edges, most of them along slanted lines, and each is written as a blank turned, mirrored and moved elsewhere.
 */
export const randomPlan: fc.Arbitrary<RandomPlan> = fc
  .record({
    rows: fc.array(fc.record({ height: share(1, 5), cells: fc.array(cell, { minLength: 1, maxLength: 8 }) }), {
      minLength: 1,
      maxLength: 3,
    }),
    along: fc.boolean(),
    isPiece: fc.boolean(),
    start: share(0, 1),
  })
  .map(({ rows, along, isPiece, start }) => {
    const blanks: JobBlank[] = [];
    const placements: Placement[] = [];
    const strips: { from: number; height: number }[] = [];
    let [from, end] = [0, 0];
    rows.forEach(({ height, cells }, row) => {
      let [near, far] = [start, 0];
      cells.forEach((each, index) => {
        const [u0, w0, u1, w1] = [near, far, near + each.nearStep, far + each.farStep];
        const corners: Point[] = [
          [u0, from],
          [u1, from],
          ...trimmed(u1, w1, from, height, each.trim),
          [w0, from + height],
        ];
        const lying = along ? corners.map(([u, v]): Point => [v, u]) : corners;
        const id = `${row}.${index}`;
        const [x, y] = [Math.sin(index) * 3, Math.cos(index) * 3];
        blanks.push({ id, demand: 1, outline: undo(lying, each, [x, y]), turns: [each.turn], mirror: each.mirror });
        placements.push({ blank: id, shape: 0, turn: each.turn, mirror: each.mirror, x, y });
        [near, far, end] = [u1, w1, Math.max(end, u1, w1)];
      });
      strips.push({ from, height });
      from += height;
    });
    const [width, length] = along ? [from, end] : [end, from];
    const cloth = {
      id: 'cloth',
      width,
      length: isPiece ? length : null,
      firstCut: along ? 'along' : 'across',
    } as const;
    const layout = { cloth: 'cloth', count: 1, length, firstCut: cloth.firstCut, strips, placements };
    return {
      job: { method: 'strips', cloths: [cloth], blanks },
      answer: {
        status: 'feasible',
        cost: length,
        bound: 0,
        boundFrom: 'nothing',
        seconds: 0,
        layouts: [layout],
        unplaced: [],
      },
    };
  });

/** The cell's far end, whole or with its upper corner cut off; the cell still reaches from edge to edge. */
function trimmed(u: number, w: number, from: number, height: number, trim: number | null): Point[] {
  const far: Point = [w, from + height];
  if (trim === null) return [far];
  return [
    [u + (w - u) * trim, from + height * trim],
    [w - 0.1, from + height],
  ];
}

/** The outline that this placement brings to where it lies: moved back, mirrored back, turned back. */
function undo(lying: Polygon, { turn: degrees, mirror }: { turn: number; mirror: boolean }, moved: Point): Polygon {
  return lying.map((point) => {
    const here = subtract(point, moved);
    return turn(mirror ? reflect(here) : here, -degrees);
  });
}

/** A few small figures dropped anywhere on one strip, overlapping or not, in rows or not. */
export function strewnPlan(method: 'strips' | 'shears'): fc.Arbitrary<RandomPlan> {
  const figure = fc.record({
    // Corners about a middle, at radii that often make a notch.
    radii: fc.array(fc.integer({ min: 20, max: 120 }), { minLength: 3, maxLength: 7 }),
    start: fc.integer({ min: 0, max: 359 }),
    x: fc.integer({ min: 170, max: 700 }),
    y: fc.integer({ min: 50, max: 450 }),
  });
  return fc.array(figure, { minLength: 2, maxLength: 4 }).map((figures): RandomPlan => {
    const blanks = figures.map(({ radii, start }, index): JobBlank => {
      // Flat, so that two often lie one above the other.
      const outline = radii.map((radius, i): Point => {
        const [x, y] = turn([radius / 100, 0], start + (360 * i) / radii.length);
        return [1.4 * x, 0.4 * y];
      });
      return { id: `${index}`, demand: 1, outline };
    });
    const placements = figures.map(({ x, y }, index): Placement => {
      return { blank: `${index}`, shape: 0, turn: 0, mirror: false, x: x / 100, y: y / 100 };
    });
    const strips = method === 'strips' ? { strips: [{ from: 0, height: 5 }] } : {};
    return {
      job: { method, ruler: 1, cloths: [{ id: 'cloth', width: 16 }], blanks },
      answer: {
        status: 'feasible',
        cost: 5,
        bound: 0,
        boundFrom: 'nothing',
        seconds: 0,
        layouts: [{ cloth: 'cloth', count: 1, length: 5, ...strips, placements }],
        unplaced: [],
      },
    };
  });
}
