import { describe, expect, it } from 'vitest';
import type { Blank, Group } from '../../src/cutting/cut-list.ts';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { makeBooklet } from '../../src/paper/make-booklet.ts';
import { inCuttingOrder } from '../../src/plan/cutting-order.ts';
import type { LayoutAnswer } from '../../src/plan/layout-job.ts';
import { placedPolygon } from '../../src/plan/placed.ts';
import type { LengthUnit, Quilt } from '../../src/quilt/quilt.ts';
import { outwardNormal } from '../../src/shape/half-plane.ts';
import { convexHull } from '../../src/shape/hull.ts';
import { dot, type Point, type Polygon } from '../../src/shape/point.ts';
import { anticlockwise, reach } from '../../src/shape/polygon.ts';
import { Packer } from '../../workers/packer.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { type CutOff, followBooklet } from './follow-booklet.ts';
import { randomQuilt } from './random-quilt.ts';
import { scenario } from './sample-papers.ts';

const planned = async (quilt: Quilt, seconds: number) => {
  const cutList = makeCutList(quilt);
  const answers: LayoutAnswer[] = [];
  for (const { job } of cutList.groups) answers.push(await new Packer().plan({ ...job, seconds }));
  return { quilt, cutList, answers };
};

/** Whether the blank, moved but neither turned nor reflected, lies in what came off. */
function holds(off: Polygon, blank: Polygon, lacks: number): boolean {
  const shape = anticlockwise(off);
  const hull = convexHull(blank);
  // Each side of the shape bounds the step by dx·nx + dy·ny ≤ room; the step of least trouble is looked for by relaxation.
  const rooms = shape.map((from, i) => {
    const to = shape[(i + 1) % shape.length]!;
    const normal = outwardNormal(from, to);
    return { normal, room: dot(from, normal) - reach(hull, normal) + lacks + 1e-6 };
  });
  let step: Point = [rooms[0]!.normal[0], 0];
  for (let tries = 0; tries < 4000; tries++) {
    const worst = rooms.reduce((a, b) => (b.room - dot(step, b.normal) < a.room - dot(step, a.normal) ? b : a));
    const over = dot(step, worst.normal) - worst.room;
    if (over <= 2e-6) return true;
    step = [step[0] - over * worst.normal[0], step[1] - over * worst.normal[1]];
  }
  return false;
}

/** Every way in which the plan cuts a blank from a cloth. */
function waysOf(group: Group, blank: Blank, cloth: string, answer: LayoutAnswer): readonly Polygon[] {
  const lengths = new Set(group.lengths.filter((each) => each.cloth === cloth).map(({ id }) => id));
  const ways = new Map<string, Polygon>();
  for (const { cloth: on, placements } of answer.layouts) {
    for (const placement of lengths.has(on) ? placements : []) {
      if (placement.blank === blank.id) {
        const { shape, turn, mirror } = placement;
        const outline = blank.shapes[shape]!.outline;
        ways.set(JSON.stringify([shape, turn, mirror]), placedPolygon(outline, { ...placement, x: 0, y: 0 }));
      }
    }
  }
  return [...ways.values()];
}

function expectPlan({ quilt, cutList, answers }: Awaited<ReturnType<typeof planned>>, shown: LengthUnit): void {
  const booklet = makeBooklet({ quilt, cutList, answers, shown });
  const offs = followBooklet(booklet, quilt.unit, shown);
  cutList.groups.forEach((group, i) => {
    // As it is laid for the table, which the proof-reader must pass too.
    const answer = inCuttingOrder(group, answers[i]!);
    expect(proofread(group.job, answer)).toEqual([]);
    for (const blank of group.blanks) {
      const own = offs.filter((off) => off.blank === blank.id);
      const placed = answer.layouts.reduce(
        (sum, { count, placements }) => sum + count * placements.filter((each) => each.blank === blank.id).length,
        0,
      );
      expect(own.length, `how many ${blank.id}`).toBe(placed);
      const seen = new Set<string>();
      for (const off of own) {
        const key = JSON.stringify(off);
        if (seen.has(key)) continue;
        seen.add(key);
        expectServes(off, waysOf(group, blank, off.cloth, answer));
      }
    }
  });
}

function expectServes(off: CutOff, ways: readonly Polygon[]): void {
  const serves = ways.some((way) => holds(off.outline, way, off.lacks));
  expect(serves, `${off.blank}: ${JSON.stringify(off.outline)}`).toBe(true);
}

describe('a program that knows only the booklet cuts what the plan asks', () => {
  it.each([
    ['solstice-dial', 'in'],
    ['garden-gate', 'cm'],
  ] as const)('%s', async (name, shown) => {
    const plan = await planned(scenario(name), 1);
    expectPlan(plan, shown);
    // With the other unit's ruler as well.
    expectPlan(plan, shown === 'in' ? 'cm' : 'in');
  });

  it('random quilts', async () => {
    for (let seed = 1; seed <= 50; seed++)
      expectPlan(await planned(randomQuilt(seed), 0.15), seed % 2 === 0 ? 'in' : 'cm');
  });
});

it('no blank is taken for one that it does not hold', () => {
  const square: Polygon = [
    [0, 0],
    [2, 0],
    [2, 2],
    [0, 2],
  ];
  expect(holds(square, square, 0)).toBe(true);
  expect(
    holds(
      square,
      [
        [0, 0],
        [2.02, 0],
        [2.02, 2],
        [0, 2],
      ],
      0,
    ),
  ).toBe(false);
  expect(
    holds(
      [
        [0, 0],
        [2, 0],
        [0, 2],
      ],
      [
        [0, 0],
        [2, 0],
        [2, 2],
      ],
      0,
    ),
  ).toBe(false);
});
