import { expect, test } from 'vitest';
import { sayStepFault } from '../../src/cutting/say-step-fault.ts';
import { findSewingOrder, isSewable, type NotSewable, type Sewable } from '../../src/cutting/sewing-order.ts';
import type { Outline } from '../../src/shape/outline.ts';
import { fromUp, type Point, scale, turn } from '../../src/shape/point.ts';
import { oblong } from './sample-quilt.ts';

const refused = (outlines: readonly Outline[]): NotSewable => {
  const found = findSewingOrder(outlines);
  expect(isSewable(found)).toBe(false);
  return found as NotSewable;
};
const sewn = (outlines: readonly Outline[]): Sewable => {
  const found = findSewingOrder(outlines);
  expect(isSewable(found)).toBe(true);
  return found as Sewable;
};

const at = (radius: number, degrees: number): Point => scale(fromUp(degrees), radius);
const bow = (radius: number): { arc: { radius: number; turn: 'anticlockwise' } } => ({
  arc: { radius, turn: 'anticlockwise' },
});
const hollow = (radius: number): { arc: { radius: number; turn: 'clockwise' } } => ({
  arc: { radius, turn: 'clockwise' },
});

/** Geese between two arcs, with the ground either side of each, over so many degrees. */
function arcOfGeese(geese: number, over: number): readonly Outline[] {
  const [inner, outer, step] = [6, 8, over / geese];
  return Array.from({ length: geese }, (_, k) => {
    const [from, to] = [k * step, (k + 1) * step];
    const tip = at((inner + outer) / 2, to);
    return [
      [at(inner, from), at(outer, from), tip],
      [at(inner, from), tip, at(inner, to), hollow(inner)],
      [at(outer, from), bow(outer), at(outer, to), tip],
    ];
  }).flat();
}

test('a half ring of geese can be sewn from one end to the other, though its seams’ lines cross its far end', () => {
  const { order } = sewn(arcOfGeese(9, 180));
  expect(order).toHaveLength(27);
  expect(order[0]).toBe(0);
  // Once round it closes on itself, and the last seam would be the second of the same patch.
  expect(refused(arcOfGeese(18, 360)).blocked.proved).toBe(true);
});

test('four squares are cut along either seam, a windmill along a seam drawn on through one arm', () => {
  const squares = [oblong(0.5, 0.5, 1, 1), oblong(1.5, 0.5, 1, 1), oblong(0.5, 1.5, 1, 1), oblong(1.5, 1.5, 1, 1)];
  const { blocked, cuts } = refused(squares);
  expect(blocked.patches).toEqual([0, 1, 2, 3]);
  expect(blocked.faults.map(({ kind }) => kind)).toEqual(['lines', 'lines', 'lines', 'lines']);
  expect(cuts.map(({ kind, parts }) => [kind, parts])).toEqual(
    expect.arrayContaining([
      [
        'seam',
        [
          [0, 1],
          [2, 3],
        ],
      ],
      [
        'seam',
        [
          [0, 2],
          [1, 3],
        ],
      ],
    ]),
  );
  const windmill = [oblong(1, 0.5, 2, 1), oblong(2.5, 1, 1, 2), oblong(2, 2.5, 2, 1), oblong(0.5, 2, 1, 2)];
  const mended = refused([...windmill, oblong(1.5, 1.5, 1, 1)]);
  expect(mended.blocked.patches).toEqual([0, 1, 2, 3]);
  expect(mended.cuts).toHaveLength(4);
  for (const { kind, parted, line } of mended.cuts) {
    expect([kind, parted.length]).toEqual(['through', 1]);
    expect(Math.hypot(line!.to[0] - line!.from[0], line!.to[1] - line!.from[1])).toBeCloseTo(3, 6);
  }
});

test('nine squares need more than one cut, and a way in three units is told', () => {
  const nine = [0, 1, 2].flatMap((y) => [0, 1, 2].map((x) => oblong(x, y, 1, 1)));
  const { cuts, units } = refused(nine);
  expect(cuts).toEqual([]);
  expect(units!.map((unit) => unit.length)).toEqual([3, 3, 3]);
});

test('a curved seam within is named, drawn as an arc or as many short lines; a curved outside is no matter', () => {
  const fan: readonly Outline[] = [
    [[0, 0], at(4, -45), bow(4), at(4, 45)],
    [at(4, -45), at(7, -45), bow(7), at(7, 45), at(4, 45), hollow(4)],
  ];
  const { blocked, cuts } = refused(fan);
  expect(blocked.faults.map(({ kind }) => kind)).toEqual(['curved', 'curved']);
  expect(cuts).toEqual([{ kind: 'curve', line: null, parts: [[0], [1]], parted: [] }]);
  expect(`A2 ${sayStepFault(blocked.faults[1]!, ['A1', 'A2'])}`).toContain('A2 meets A1 along a curve');
  const marks = Array.from({ length: 19 }, (_, k) => at(4, -45 + 5 * k));
  const lines = refused([
    [[0, 0], ...marks],
    [at(7, -45), at(7, 45), ...[...marks].reverse()],
  ]);
  expect(lines.blocked.faults.map(({ kind }) => kind)).toEqual(['curved', 'curved']);
  expect(
    sewn([
      [[0, 0], at(4, -45), bow(4), at(4, 0)],
      [[0, 0], at(4, 0), bow(4), at(4, 45)],
    ]).order,
  ).toEqual([0, 1]);
});

test('patches that do not meet are two units', () => {
  const { blocked, cuts } = refused([oblong(0, 0, 1, 1), oblong(0, 1, 1, 1), oblong(5, 0, 1, 1)]);
  expect(blocked.patches).toEqual([2]);
  expect(blocked.faults).toEqual([{ kind: 'apart' }]);
  expect(cuts[0]).toMatchObject({ kind: 'apart', parts: [[0, 1], [2]] });
});

test('nothing changes when a unit is turned, mirrored, scaled, or drawn the other way round', () => {
  const drawn = arcOfGeese(3, 60);
  const { order, others } = sewn(drawn);
  const changed: readonly ((outline: Outline) => Outline)[] = [
    (outline) => outline.map((entry) => ('arc' in entry ? entry : turn(entry, 33))),
    (outline) =>
      outline.map((entry) =>
        'arc' in entry ? { arc: { ...entry.arc, radius: entry.arc.radius * 2.54 } } : scale(entry, 2.54),
      ),
    (outline) =>
      outline.map((entry) =>
        'arc' in entry
          ? { arc: { ...entry.arc, turn: entry.arc.turn === 'clockwise' ? 'anticlockwise' : 'clockwise' } }
          : [-entry[0], entry[1]],
      ),
  ];
  for (const change of changed) {
    const again = sewn(drawn.map(change));
    expect([again.order, again.others]).toEqual([order, others]);
  }
});

test('of several orders that comes first whose seams cross the shorter seams, then that of the drawn numbers', () => {
  // Three wedges whose seams end at one place on the long seam under them.
  const rim: readonly Point[] = [
    [3, 0],
    [4, 4],
    [-1, 2],
    [-3, 0],
  ];
  const wedges: readonly Outline[] = [0, 1, 2].map((k) => [[0, 0], rim[k]!, rim[k + 1]!]);
  const { order } = sewn([...wedges, oblong(0, -1, 6, 2)]);
  // The shorter of their seams, between the second and the third, is sewn first and crossed by the longer one.
  expect(order).toEqual([1, 2, 0, 3]);
  const strips = [0, 1, 2, 3].map((x) => oblong(x, 0, 1, 3));
  const found = sewn(strips);
  expect(found.order).toEqual([0, 1, 2, 3]);
  expect(found.others.map((each) => each[0])).toEqual([1, 2, 3]);
});
