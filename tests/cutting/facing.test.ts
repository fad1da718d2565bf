import { expect, test } from 'vitest';
import { type PlacedPatch, printDirection } from '../../src/cutting/facing.ts';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import type { Turns } from '../../src/plan/layout-job.ts';
import type { Cloth, Facing, Quilt, Unit } from '../../src/quilt/quilt.ts';
import { edgesOf, mirrorOutline, type Outline } from '../../src/shape/outline.ts';
import { outlineCentroid } from '../../src/shape/outline-measures.ts';
import { fromUp, type Point, turn } from '../../src/shape/point.ts';
import { mirrorPolygon } from '../../src/shape/polygon.ts';
import { sameOutline } from '../../src/shape/same-outline.ts';
import { blockOf, clothOf, crooked, oblong, quiltOf, ringWedge, unitOf } from './sample-quilt.ts';

const placed = (outline: Outline, turned = 0, axis: number | null = 0): PlacedPatch => ({
  middle: outlineCentroid(outline),
  edges: edgesOf(outline),
  axis,
  turn: turned,
});

test('outward is from the block’s centre through the middle of the patch, however the unit is turned', () => {
  for (const turned of [0, 18, 90, 222.5]) {
    expect(printDirection({ to: 'outward' }, placed(oblong(3, 3, 1, 1), turned))).toBeCloseTo(315, 9);
    expect(printDirection({ to: 'inward' }, placed(oblong(3, 3, 1, 1), turned))).toBeCloseTo(135, 9);
  }
});

test('clockwise is as seen in the finished quilt, on a mirrored patch too', () => {
  // At the top of a ring clockwise runs to the right; right of the centre it runs down.
  expect(printDirection({ to: 'clockwise' }, placed(oblong(0, 5, 1, 1)))).toBeCloseTo(270, 9);
  expect(printDirection({ to: 'clockwise' }, placed(oblong(5, 0, 1, 1)))).toBeCloseTo(180, 9);
  expect(printDirection({ to: 'anticlockwise' }, placed(oblong(0, 5, 1, 1)))).toBeCloseTo(90, 9);
  const mirrored = mirrorOutline(oblong(5, 0, 1, 1));
  expect(printDirection({ to: 'clockwise' }, placed(mirrored))).toBeCloseTo(0, 9);
});

test('upright takes all of the turn', () => {
  expect(printDirection({ to: 'upright' }, placed(crooked, 30))).toBe(330);
});

test('along goes with its edge, forward or backward, also into the mirror', () => {
  const facing: Facing = { to: 'along', edge: 1, sense: 'forward' };
  const [from, to] = [oblong(2, 2, 1, 3)[1] as Point, oblong(2, 2, 1, 3)[2] as Point];
  expect([to[0] - from[0], to[1] - from[1]]).toEqual([0, 3]);
  expect(printDirection(facing, placed(oblong(2, 2, 1, 3)))).toBe(0);
  expect(printDirection({ ...facing, sense: 'backward' }, placed(oblong(2, 2, 1, 3)))).toBe(180);
  const sideways: Facing = { to: 'along', edge: 0, sense: 'forward' };
  expect(printDirection(sideways, placed(oblong(2, 2, 1, 3)))).toBe(270);
  expect(printDirection(sideways, placed(mirrorOutline(oblong(2, 2, 1, 3))))).toBe(90);
  expect(printDirection({ to: 'along', edge: 9 }, placed(crooked))).toHaveProperty('fault');
});

test('a patch whose middle is the block’s centre has no outward and is told so', () => {
  expect(printDirection({ to: 'outward' }, placed(oblong(0, 0, 4, 2)))).toHaveProperty('fault');
  expect(printDirection({ to: 'outward', from: 'axis' }, placed(oblong(0, 0, 4, 2), 0, 30))).toBe(30);
  expect(printDirection({ to: 'outward', from: 'axis' }, placed(oblong(0, 0, 4, 2), 0, null))).toHaveProperty('fault');
  const list = makeCutList(quiltOf([unitOf(oblong(0, 0, 4, 2), { count: 1 })], { to: 'outward' }, clothOf('one-way')));
  expect(list.problems.map((problem) => problem.text).join()).toContain('A1 cannot face outward');
  expect(list.groups[0]!.blanks).toHaveLength(1);
});

const blanksOf = (quilt: Quilt) => makeCutList(quilt).groups.flatMap((group) => group.blanks);
const turnsOf = (quilt: Quilt): readonly Turns[] =>
  makeCutList(quilt).groups.flatMap((group) => group.job.blanks.map((blank) => blank.shapes![0]!.turns!));
const ring = (n: number): readonly Unit[] => [unitOf(ringWedge(n, 3, 8), { count: n })];
const kindsOfRing = (n: number, to: Facing['to'], cloth: Cloth): number =>
  blanksOf(quiltOf(ring(n), { to }, cloth)).length;

test('round a ring of n, outward gives one blank at one turn', () => {
  for (const n of [8, 15, 20]) {
    const quilt = quiltOf(ring(n), { to: 'outward' }, clothOf('one-way'));
    expect(blanksOf(quilt)).toHaveLength(1);
    expect(blanksOf(quilt)[0]!.demand).toBe(n);
    expect(turnsOf(quilt)).toEqual([[0]]);
  }
});

test('round a ring of n, upright gives n blanks, and n/2 for a two-way print and even n (derived)', () => {
  expect(kindsOfRing(20, 'upright', clothOf('one-way'))).toBe(20);
  expect(kindsOfRing(15, 'upright', clothOf('one-way'))).toBe(15);
  expect(kindsOfRing(20, 'upright', clothOf('two-way'))).toBe(10);
  expect(kindsOfRing(15, 'upright', clothOf('two-way'))).toBe(15);
  expect(kindsOfRing(20, 'upright', clothOf('check'))).toBe(5);
  expect(kindsOfRing(20, 'upright', clothOf('tossed'))).toBe(1);
});

test('where no side of a wedge differs from its mirror image, pairs of upright wedges serve one another turned over', () => {
  // Wedges k and n − k are mirror images: with no wrong side, 20 make 11 (two stand on the axis), two-way 6.
  expect(kindsOfRing(20, 'upright', clothOf('one-way', { wrongSide: false }))).toBe(11);
  expect(kindsOfRing(20, 'upright', clothOf('two-way', { wrongSide: false }))).toBe(6);
});

test('the blank lies with the wanted direction on the cloth’s up', () => {
  // The crooked patch faces along its first edge; once framed that edge must run straight up.
  const quilt = quiltOf(
    [unitOf(crooked, { count: 1 })],
    { to: 'along', edge: 0, sense: 'forward' },
    clothOf('one-way'),
  );
  const { patch } = blanksOf(quilt)[0]!;
  const upright = patch.some((point, i) => {
    const next = patch[(i + 1) % patch.length]!;
    return Math.abs(next[0] - point[0]) < 1e-9 && Math.abs(next[1] - point[1] - Math.hypot(3, 1)) < 1e-9;
  });
  expect(upright).toBe(true);
});

test('prints give their turns: one, two, four, any', () => {
  const of = (cloth: Cloth) => turnsOf(quiltOf([unitOf(crooked, { count: 1 })], { to: 'upright' }, cloth, {}));
  expect(of(clothOf('one-way'))).toEqual([[0]]);
  expect(of(clothOf('two-way'))).toEqual([[0, 180]]);
  expect(of(clothOf('check'))).toEqual([[0, 90, 180, 270]]);
  expect(of(clothOf('one-way', { up: 'across' }))).toEqual([[270]]);
  expect(of(clothOf('two-way', { up: 'across' }))).toEqual([[90, 270]]);
});

test('turning a blank by its turn brings the print’s up onto a cloth whose up runs across', () => {
  expect(turn(fromUp(0), 270)).toEqual([1, 0]);
});

test('a tolerance makes each turn an interval, and a wide one makes it any', () => {
  const of = (within: number, print: Cloth['print']) =>
    turnsOf(quiltOf([unitOf(crooked, { count: 1 })], { to: 'upright', within }, clothOf(print)));
  expect(of(5, 'two-way')).toEqual([
    [
      { centre: 0, within: 5 },
      { centre: 180, within: 5 },
    ],
  ]);
  expect(of(45, 'check')).toEqual(['any']);
});

test('a directional print that may face anywhere is as free as a tossed one', () => {
  const inside = [unitOf(crooked, { count: 1 }), unitOf(oblong(0, 0, 40, 40), { count: 1 }, { id: 'B' })];
  const quilt = quiltOf(inside, { to: 'free' }, clothOf('one-way'));
  expect(blanksOf(quilt)[0]).toMatchObject({ id: 'A1', directional: false });
  expect(turnsOf(quilt)[0]).toBe('any');
});

test('a mirrored repeat is a blank of its own', () => {
  const quilt = quiltOf([unitOf(crooked, { count: 4, mirrored: 'also' })], { to: 'outward' }, clothOf('one-way'));
  expect(blanksOf(quilt).map(({ id, demand }) => [id, demand])).toEqual([
    ['A1', 4],
    ['A1 mirrored', 4],
  ]);
});

test('a mirrored repeat counts with the other hand where the two coincide, or where the cloth has no wrong side', () => {
  const symmetrical = quiltOf(
    [unitOf(ringWedge(8, 3, 8), { count: 8, mirrored: 'alternate' })],
    { to: 'outward' },
    clothOf('one-way'),
  );
  expect(blanksOf(symmetrical).map(({ id, demand }) => [id, demand])).toEqual([['A1', 8]]);
  const solid = clothOf('solid', { wrongSide: false });
  const both = quiltOf([unitOf(crooked, { count: 4, mirrored: 'also' })], { to: 'outward' }, solid);
  expect(blanksOf(both).map(({ id, demand }) => [id, demand])).toEqual([['A1', 8]]);
  expect(makeCutList(both).groups[0]!.job.blanks[0]!.shapes![0]!.mirror).toBe(true);
  const wrongSided = quiltOf([unitOf(crooked, { count: 4, mirrored: 'also' })], { to: 'outward' }, clothOf('solid'));
  expect(blanksOf(wrongSided)).toHaveLength(2);
});

test('a one-way print across the cloth cannot be turned over even without a wrong side, since its up would turn about', () => {
  const cloth = clothOf('one-way', { up: 'across', wrongSide: false });
  const quilt = quiltOf([unitOf(crooked, { count: 4, mirrored: 'also' })], { to: 'outward' }, cloth);
  expect(blanksOf(quilt)).toHaveLength(2);
  expect(makeCutList(quilt).groups[0]!.job.blanks[0]!.shapes![0]!.mirror).toBe(false);
});

test('outward does not ask how the block is turned, upright does', () => {
  const turned = (to: Facing['to']) =>
    quiltOf(ring(20), { to }, clothOf('one-way'), {
      blocks: [blockOf(ring(20), { count: 3, turns: [0, 7] })],
    });
  expect(blanksOf(turned('outward')).map(({ demand }) => demand)).toEqual([60]);
  const upright = blanksOf(turned('upright'));
  expect(upright).toHaveLength(40);
  expect(upright.reduce((sum, { demand }) => sum + demand, 0)).toBe(60);
  expect(
    upright
      .slice(0, 2)
      .map(({ demand }) => demand)
      .sort(),
  ).toEqual([1, 2]);
});

test('a mirrored unit’s axis is mirrored with it, so its blank is the mirror image', () => {
  const unit = unitOf(crooked, { count: 4, mirrored: 'also' }, { axis: 340 });
  const [one, other] = blanksOf(quiltOf([unit], { to: 'outward', from: 'axis' }, clothOf('one-way')));
  expect(other!.id).toBe('A1 mirrored');
  expect(sameOutline(mirrorPolygon(one!.patch), other!.patch)).toBe(true);
  // Turned by −340° the crooked patch's first side, which ran 18.435° up from x, runs 38.435° up.
  const sides = one!.patch.map((a, i) => {
    const b = one!.patch[(i + 1) % one!.patch.length]!;
    return (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
  });
  expect(sides.some((degrees) => Math.abs(degrees - 38.4349) < 1e-3)).toBe(true);
});
