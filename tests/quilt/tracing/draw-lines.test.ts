import { describe, expect, test } from 'vitest';
import { closePatch, dropBegun, placeCorner } from '../../../src/quilt/tracing/draw-lines.ts';
import { outlineOfSteps } from '../../../src/quilt/tracing/line-shape.ts';
import {
  bendByRadius,
  bendLine,
  deleteCorner,
  deleteLine,
  deletePatch,
  dropCorner,
  moveCorner,
} from '../../../src/quilt/tracing/mend-lines.ts';
import { snapTo } from '../../../src/quilt/tracing/snap.ts';
import { EMPTY_TRACING, type Tracing } from '../../../src/quilt/tracing/tracing.ts';
import { outlineArea } from '../../../src/shape/outline-measures.ts';
import type { Point } from '../../../src/shape/point.ts';
import { clickRound, ok } from './trace-clicks.ts';

const square: readonly Point[] = [
  [0, 0],
  [4, 0],
  [4, 4],
  [0, 4],
];
const drawn = clickRound(EMPTY_TRACING, square);
const areas = (tracing: Tracing): readonly number[] =>
  tracing.patches.map((patch) => Math.abs(outlineArea(outlineOfSteps(tracing, patch.steps))));
const lineBetween = (tracing: Tracing, a: Point, b: Point): number => {
  const corner = (at: Point): number =>
    tracing.corners.find((each) => each.at[0] === at[0] && each.at[1] === at[1])!.id;
  const ends = [corner(a), corner(b)];
  return tracing.lines.find((line) => ends.includes(line.from) && ends.includes(line.to))!.id;
};

describe('drawing', () => {
  test('clicking the first corner again closes the patch too', () => {
    const again = [...square, square[0]!].reduce(
      (rest, at) => ok(placeCorner(rest, snapTo(rest, at, { within: 0.1 }), { unit: 'A', role: 'Hours' })),
      EMPTY_TRACING,
    );
    expect(again.patches).toHaveLength(1);
    expect(again.begun).toBeUndefined();
    expect(areas(again)).toEqual([16]);
  });

  test('a neighbour shares corners and line: nine clicks less one for two squares, and seven lines', () => {
    const two = clickRound(drawn, [
      [4.05, 0.02],
      [8, 0],
      [8, 4],
      [3.97, 4.04],
    ]);
    expect(two.corners).toHaveLength(6);
    expect(two.lines).toHaveLength(7);
    expect(areas(two)).toEqual([16, 16]);
    const moved = ok(moveCorner(two, two.corners[2]!.id, [5, 4]));
    expect(areas(moved)).toEqual([18, 14]);
  });

  test('a corner on a line splits it for the patch that is there, and only a shared piece is shared', () => {
    const two = clickRound(drawn, [
      [4, 1],
      [8, 1],
      [8, 3],
      [4.02, 3],
    ]);
    expect(two.patches[0]!.steps).toHaveLength(6);
    expect(two.patches[1]!.steps).toHaveLength(4);
    expect(areas(two)).toEqual([16, 8]);
    expect(two.lines).toHaveLength(9);
  });

  test('a split arc stays on its circle', () => {
    const bent = ok(bendLine(drawn, lineBetween(drawn, [4, 0], [4, 4]), [6, 2]));
    const before = areas(bent)[0]!;
    expect(before).toBeCloseTo(16 + 2 * Math.PI, 9);
    const two = clickRound(bent, [
      [6, 2],
      [9, 2],
      [9, 5],
    ]);
    expect(areas(two)[0]).toBeCloseTo(before, 9);
    expect(two.patches[0]!.steps).toHaveLength(5);
  });

  test('two arcs between two corners make a petal', () => {
    const one = ok(placeCorner(EMPTY_TRACING, { kind: 'free', at: [0, 0] }, { unit: 'A', role: 'Petal' }));
    const two = ok(placeCorner(one, { kind: 'free', at: [2, 0] }, { unit: 'A', role: 'Petal' }, [1, 1]));
    expect(closePatch(one, { unit: 'A', role: 'Petal' })).toHaveProperty('fault');
    const petal = ok(closePatch(two, { unit: 'A', role: 'Petal' }, [1, -1]));
    expect(areas(petal)[0]).toBeCloseTo(Math.PI, 9);
  });

  test('what is begun can be given up, and leaves nothing behind', () => {
    const begun = ok(placeCorner(drawn, { kind: 'free', at: [9, 9] }, { unit: 'A', role: '' }));
    const further = ok(
      placeCorner(begun, { kind: 'corner', at: [4, 4], corner: drawn.corners[2]!.id }, { unit: 'A', role: '' }),
    );
    const dropped = dropBegun(further);
    expect(dropped.corners).toEqual(drawn.corners);
    expect(dropped.lines).toEqual(drawn.lines);
  });

  test('a way that crosses itself is no patch, and says so', () => {
    const bow: readonly Point[] = [square[0]!, square[2]!, square[1]!, square[3]!];
    expect(() => clickRound(EMPTY_TRACING, bow)).toThrow(/crosses/);
  });
});

describe('mending', () => {
  const two = clickRound(drawn, [
    [4, 0],
    [8, 0],
    [8, 4],
    [4, 4],
  ]);

  test('a patch deleted leaves the line that its neighbour has', () => {
    const one = deletePatch(two, two.patches[0]!.id);
    expect(one.lines).toHaveLength(4);
    expect(one.corners).toHaveLength(4);
    expect(areas(one)).toEqual([16]);
  });

  test('a shared line deleted takes both patches, a corner on a straight line only itself', () => {
    expect(deleteLine(two, lineBetween(two, [4, 0], [4, 4])).lines).toEqual([]);
    const corner = two.corners.find((each) => each.at[0] === 8 && each.at[1] === 4)!;
    expect(areas(deleteCorner(two, corner.id))).toEqual([16, 8]);
  });

  test('a corner dropped on another becomes that', () => {
    const apart = clickRound(drawn, [
      [5, 0],
      [8, 0],
      [8, 4],
      [5, 4],
    ]);
    const [low, high] = [apart.corners.at(-4)!, apart.corners.at(-1)!];
    const [toLow, toHigh] = [apart.corners[1]!, apart.corners[2]!];
    const once = ok(dropCorner(apart, low.id, { kind: 'corner', at: toLow.at, corner: toLow.id }));
    const joined = ok(dropCorner(once, high.id, { kind: 'corner', at: toHigh.at, corner: toHigh.id }));
    expect(joined.corners).toHaveLength(6);
    expect(joined.lines).toHaveLength(7);
    expect(areas(joined)).toEqual([16, 16]);
  });

  test('a move that would spoil a patch is refused, and a radius that cannot be', () => {
    expect(moveCorner(drawn, drawn.corners[0]!.id, [6, 2])).toHaveProperty('fault');
    expect(bendByRadius(drawn, drawn.lines[0]!.id, 1)).toHaveProperty('fault');
    const bent = ok(bendByRadius({ ...drawn, centre: [2, 2] }, drawn.lines[0]!.id, 2));
    expect(areas(bent)[0]).toBeCloseTo(16 + 2 * Math.PI, 6);
  });
});

test('snapping: corners before middles before lines, each only within reach', () => {
  const at = (place: Point, within = 0.5) => snapTo(drawn, place, { within });
  expect(at([0.3, 0.3])).toMatchObject({ kind: 'corner', at: [0, 0] });
  expect(at([2.1, 0.1])).toMatchObject({ kind: 'middle', at: [2, 0] });
  expect(at([1.2, 0.4])).toMatchObject({ kind: 'line', at: [1.2, 0] });
  expect(at([1.2, 0.4], 0.3)).toMatchObject({ kind: 'free', at: [1.2, 0.4] });
  expect(snapTo(drawn, [0.1, 0], { within: 0.5, but: drawn.corners[0]!.id }).kind).toBe('free');
  expect(snapTo({ ...drawn, centre: [2, 2] }, [2.2, 2], { within: 0.5 })).toMatchObject({ kind: 'centre', at: [2, 2] });
});
