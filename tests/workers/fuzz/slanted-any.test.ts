/**
 * Slanted blanks with every sort of turn, against the cheapest plan that boxes each of them: the boxes at the turns allowed for
 * certain, shared out among strips in every way. Slants may only save.
 */
import { expect, test } from 'vitest';
import type { LayoutAnswer, LayoutJob, Turns } from '../../../src/plan/layout-job.ts';
import { Packer } from '../../../workers/packer.ts';
import { checkAnswer } from '../../checker/check-answer.ts';
import { spin } from '../../checker/check-lies.ts';
import type { Ring } from '../../checker/rings.ts';
import { numbers, pickFrom } from '../numbers.ts';
import { leastLengths, priceOf } from '../oracle/least-length.ts';
import { slantedOutline } from '../oracle/slanted-job.ts';

interface Kind {
  readonly outline: Ring;
  readonly demand: number;
  readonly turns: Turns;
}

interface Case {
  readonly kinds: readonly Kind[];
  readonly width: number;
  readonly ruler?: number;
  readonly step?: number;
}

function drawCase(seed: number): Case {
  const draw = numbers(seed + 400);
  const ruler = pickFrom(draw, [undefined, 0.125, 0.5]);
  const step = pickFrom(draw, [undefined, undefined, 2.25]);
  const kinds: Kind[] = Array.from({ length: draw(1, 3) }, () => ({
    outline: slantedOutline(draw),
    demand: draw(2, 4),
    turns: pickFrom<Turns>(draw, [
      'any',
      'any',
      [{ centre: 0, within: 5 }],
      [{ centre: 90, within: 8 }],
      [{ centre: 180, within: 12 }, 0],
      [0, 90, 180, 270],
      [draw(0, 359)],
    ]),
  }));
  const widest = Math.max(...kinds.flatMap((kind) => boxesOf(kind).map((box) => box.width)));
  const width = Math.max(widest, draw(24, 48) / 4);
  return { kinds, width, ...(ruler === undefined ? {} : { ruler }), ...(step === undefined ? {} : { step }) };
}

/** At the turns that are named; where any will do, at every quarter and every multiple of 15 degrees. */
function boxesOf({ outline, turns }: Kind): readonly { readonly width: number; readonly height: number }[] {
  const degrees =
    turns === 'any'
      ? Array.from({ length: 24 }, (_, i) => 15 * i)
      : turns.flatMap((range) =>
          typeof range === 'number'
            ? [range]
            : [range.centre, range.centre - range.within, range.centre + range.within],
        );
  return degrees.map((turn) => {
    const turned = outline.map((p) => spin(p, turn));
    const [width, height] = [0, 1].map(
      (axis) => Math.max(...turned.map((p) => p[axis]!)) - Math.min(...turned.map((p) => p[axis]!)),
    );
    return { width: width!, height: height! };
  });
}

/** The cheapest plan of boxes: with strips of one height each kind takes the narrowest of its boxes that is low enough. */
function boxedCost({ kinds, width, ruler, step }: Case): number {
  const onRuler = (v: number) => (ruler === undefined ? v : Math.ceil(v / ruler - 1e-9) * ruler);
  const boxes = kinds.map((kind) => boxesOf(kind).map((box) => ({ ...box, height: onRuler(box.height) })));
  const heights = [...new Set(boxes.flat().map((box) => box.height))].sort((a, b) => a - b);
  const lowest = (counts: readonly number[]) => {
    const height = heights.find((each) => {
      const taken = counts.map((n, i) => {
        const narrowest = Math.min(...boxes[i]!.filter((box) => box.height <= each).map((box) => box.width));
        return n === 0 ? 0 : n * narrowest;
      });
      return taken.reduce((sum, w) => sum + w, 0) <= width * (1 + 1e-9);
    });
    return height === undefined ? null : { height };
  };
  const demand = kinds.map((kind) => kind.demand);
  return priceOf(leastLengths(demand, lowest).get(demand.join())!.length, step);
}

function jobOf({ kinds, width, ruler, step }: Case): LayoutJob {
  return {
    method: 'strips',
    seconds: 60,
    ...(ruler === undefined ? {} : { ruler }),
    cloths: [{ id: 'bolt', width, ...(step === undefined ? {} : { step }) }],
    blanks: kinds.map(({ outline, demand, turns }, i) => ({ id: `${i}`, outline, demand, turns })),
  };
}

/** Stopped as soon as it is no dearer than that, so that nothing waits for proofs. */
async function plannedUntil(cost: number, job: LayoutJob): Promise<LayoutAnswer> {
  const packer = new Packer();
  return packer.plan(job, ({ answer }) => {
    if (answer && answer.cost <= cost + 1e-6) packer.stop();
  });
}

const seeds = Array.from({ length: 100 }, (_, i) => i + 1);

test('a hundred jobs: never dearer than the best plan of boxes, and often cheaper', async () => {
  let cheaper = 0;
  for (const seed of seeds) {
    const small = drawCase(seed);
    const job = jobOf(small);
    const boxed = boxedCost(small);
    const answer = await plannedUntil(boxed, job);
    expect([seed, ...checkAnswer(job, answer)]).toEqual([seed]);
    expect(answer.unplaced).toEqual([]);
    expect(answer.cost, `seed ${seed}`).toBeLessThanOrEqual(boxed + 1e-6);
    expect(answer.bound, `seed ${seed}`).toBeLessThanOrEqual(boxed + 1e-6);
    if (answer.cost < boxed - 1e-6) cheaper++;
  }
  expect(cheaper).toBeGreaterThan(20);
});
