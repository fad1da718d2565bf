/** Seeded jobs as ring quilts bring them: wedges, triangles, leaning and square blanks, in numbers that rings need. */
import type { LayoutJob, Turns } from '../../src/plan/layout-job.ts';
import type { Polygon } from '../../src/shape/point.ts';
import { type Draw, numbers, pickFrom } from './numbers.ts';

export interface RingJob extends LayoutJob {
  /** What is bought when each kind is boxed and cut from strips of its own: common practice, no source. */
  readonly ruleOfThumb: number;
}

/** @param kinds how many kinds of blank @param rounds the most rings that one kind serves */
export function ringJob(seed: number, kinds: number, rounds = 4): RingJob {
  const draw = numbers(seed);
  const width = draw(40, 44);
  const step = 4.5;
  const blanks = Array.from({ length: kinds }, (_, i) => ({
    id: `kind${i}`,
    outline: outline(draw),
    demand: pickFrom(draw, [8, 12, 16, 20, 24, 32]) * draw(1, rounds),
    turns: pickFrom<Turns>(draw, [[0], [0], [0, 180], [{ centre: 0, within: 5 }], 'any']),
  }));
  const boxed = blanks.reduce((sum, blank) => sum + boxedLength(blank, width), 0);
  return {
    method: 'strips',
    ruler: 0.125,
    cloths: [{ id: 'bolt', width, step }],
    blanks,
    ruleOfThumb: Math.ceil(boxed / step - 1e-6) * step,
  };
}

function outline(draw: Draw): Polygon {
  const [h, b] = [draw(12, 60) / 8, draw(10, 42) / 8];
  const a = draw(4, Math.max(5, Math.round(8 * (0.5 + 0.7 * b)))) / 8;
  const lean = draw(-8, 8) / 8;
  const wedge = [
    [0, 0],
    [b, 0],
    [(b + a) / 2, h],
    [(b - a) / 2, h],
  ] as const;
  return pickFrom<Polygon>(draw, [
    wedge,
    wedge,
    [
      [0, 0],
      [b, 0],
      [b / 2 + lean / 3, h],
    ],
    [
      [0, 0],
      [a, 0],
      [a + lean, h],
      [lean, h],
    ],
    [
      [0, 0],
      [b, 0],
      [b, h],
      [0, h],
    ],
  ]);
}

/** Strips of the kind's own, as drawn or, where any turn will do, turned by a quarter if that is less. */
function boxedLength(
  blank: { readonly outline: Polygon; readonly demand: number; readonly turns: Turns },
  width: number,
): number {
  const [across, up] = [0, 1].map((axis) => {
    const values = blank.outline.map((p) => p[axis]!);
    return Math.max(...values) - Math.min(...values);
  });
  const length = (w: number, h: number) => Math.ceil(blank.demand / Math.floor(width / w)) * h;
  const drawn = length(across!, up!);
  return blank.turns === 'any' ? Math.min(drawn, length(up!, across!)) : drawn;
}
