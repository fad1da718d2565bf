/** Seeded jobs that use every feature of the format, some of which ask for more than there is. */
import type { BlankShape, ClothChoice, JobBlank, JobCloth, LayoutJob, Turns } from '../../../src/plan/layout-job.ts';
import type { Polygon } from '../../../src/shape/point.ts';
import { rectangle } from '../../outside/engine.ts';
import { type Draw, numbers, pickFrom } from '../numbers.ts';

export function randomJob(seed: number): LayoutJob {
  const draw = numbers(seed);
  const cloths = Array.from({ length: draw(1, 3) }, (_, i) =>
    draw(0, 2) > 0 ? bolt(draw, `bolt${i}`) : piece(draw, `piece${i}`),
  );
  const ids = cloths.map((cloth) => cloth.id);
  return {
    method: 'strips',
    stages: 2,
    ...pickFrom<{ ruler?: number }>(draw, [{}, { ruler: 0.125 }, { ruler: 0.5 }]),
    seed: draw(1, 100),
    cloths,
    blanks: Array.from({ length: draw(1, 5) }, (_, i) => blank(draw, `kind${i}`, ids)),
  };
}

const eighths = (draw: Draw, from: number, to: number): number => draw(8 * from, 8 * to) / 8;
const sometimes = <T extends object>(draw: Draw, more: T): T | Record<string, never> => (draw(0, 2) === 0 ? more : {});
const FIRST_CUTS = ['across', 'across', 'along', 'either'] as const;

const bolt = (draw: Draw, id: string): JobCloth => ({
  id,
  width: eighths(draw, 10, 44),
  length: null,
  firstCut: pickFrom(draw, FIRST_CUTS),
  ...sometimes(draw, { step: pickFrom(draw, [4.5, 9, 2.5]) }),
  ...sometimes(draw, { cost: pickFrom(draw, [0.5, 1.25, 2, 0]) }),
  ...sometimes(draw, { squaring: eighths(draw, 0.25, 2) }),
});

const piece = (draw: Draw, id: string): JobCloth => ({
  id,
  width: eighths(draw, 5, 22),
  length: eighths(draw, 5, 22),
  firstCut: pickFrom(draw, FIRST_CUTS),
  ...sometimes(draw, { count: pickFrom(draw, [2, 3, null]) }),
  ...sometimes(draw, { cost: pickFrom(draw, [0, 1, 30]) }),
});

function blank(draw: Draw, id: string, cloths: readonly string[]): JobBlank {
  const demand = pickFrom(draw, [0, 1, 2, 3, 5, 8, 12, 20]);
  const shapes = draw(0, 3) === 0 ? { shapes: [shape(draw), shape(draw)] } : shape(draw);
  const from = cloths.filter(() => draw(0, 3) > 0).map((cloth) => choice(draw, cloth));
  return { id, demand, ...shapes, ...(from.length > 0 ? sometimes(draw, { cloths: from }) : {}) };
}

const shape = (draw: Draw): BlankShape => ({
  outline: outline(draw),
  ...pickFrom<{ turns?: Turns }>(draw, [{}, { turns: turns(draw) }, { turns: turns(draw) }]),
  ...sometimes(draw, { mirror: true }),
});

const choice = (draw: Draw, id: string): ClothChoice =>
  pickFrom<() => ClothChoice>(draw, [
    () => id,
    () => ({ id, turns: turns(draw) }),
    () => ({ id, turns: turns(draw), mirror: draw(0, 1) === 1 }),
  ])();

const turns = (draw: Draw): Turns =>
  pickFrom<Turns>(draw, [
    [0],
    [0, 180],
    [0, 90, 180, 270],
    [draw(0, 359)],
    [{ centre: 0, within: 5 }],
    [{ centre: 180, within: 12 }, 0],
    'any',
  ]);

/** A wedge, a triangle, a parallelogram, a box, a dart with a notch, an L, or one that few cloths can take; anywhere, either way round. */
function outline(draw: Draw): Polygon {
  const [b, h, lean] = [eighths(draw, 1, 6), eighths(draw, 1, 7), eighths(draw, -3, 3)];
  const a = Math.min(b, eighths(draw, 0.25, 3));
  const corners = pickFrom<() => Polygon>(draw, [
    () => [
      [0, 0],
      [b, 0],
      [(b + a) / 2, h],
      [(b - a) / 2, h],
    ],
    () => [
      [0, 0],
      [b, 0],
      [b / 2 + lean / 3, h],
    ],
    () => [
      [0, 0],
      [a, 0],
      [a + lean, h],
      [lean, h],
    ],
    () => rectangle(b, h),
    () => [
      [0, 0],
      [b / 2, h / 3],
      [b, 0],
      [b / 2 + lean / 8, h],
    ],
    () => [
      [0, 0],
      [b, 0],
      [b, h / 2],
      [b / 2, h / 2],
      [b / 2, h],
      [0, h],
    ],
    () => (draw(0, 2) === 0 ? rectangle(b + 20, h + 8) : rectangle(b, h)),
  ])();
  const moved = corners.map(([x, y]) => [x - lean, y + 3] as const);
  return draw(0, 1) === 0 ? moved : moved.reverse();
}
