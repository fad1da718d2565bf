import { expect, test } from 'vitest';
import { TRACE_SEWING, whyUnsewn } from '../../src/page/trace/trace-sewing.ts';
import { Tracer } from '../../src/page/trace/tracer.ts';
import type { Unit } from '../../src/quilt/quilt.ts';
import { edgeOfLine } from '../../src/quilt/tracing/line-shape.ts';
import type { Point } from '../../src/shape/point.ts';

const WITHIN = 0.05;

function traced(...patches: readonly (readonly Point[])[]): Tracer {
  const tracer = new Tracer(() => {});
  tracer.options = { name: 'Traced', known: [], within: WITHIN, sewing: TRACE_SEWING };
  for (const places of patches) {
    for (const place of places) tracer.place(place, WITHIN);
    tracer.close();
  }
  return tracer;
}

const square = (x: number, y: number): readonly Point[] => [
  [x, y],
  [x + 1, y],
  [x + 1, y + 1],
  [x, y + 1],
];

/** All but the next free id, which is never given twice. */
const drawnParts = ({ tracing: { next: _, ...parts } }: Tracer) => parts;

test('an arc is three clicks: its beginning, a place on its way, its end; then lines are straight again', () => {
  const tracer = traced();
  tracer.place([0, 0], WITHIN);
  tracer.askArc();
  tracer.place([1, 1], WITHIN);
  expect(tracer.tracing.corners).toHaveLength(1);
  tracer.place([2, 0], WITHIN);
  tracer.place([1, -2], WITHIN);
  tracer.place([0, 0], WITHIN);
  const [arc, ...others] = tracer.tracing.lines.map((line) => edgeOfLine(tracer.tracing, line));
  expect(arc!.arc).toEqual({ radius: expect.closeTo(1, 9), turn: 'clockwise' });
  expect(others.map((edge) => edge.arc)).toEqual([undefined, undefined]);
  expect(tracer.words).toBe('On a corner that is there. Patch A1 is closed.');
  expect(tracer.chosen).toEqual({ kind: 'patch', id: tracer.tracing.patches[0]!.id });
});

test('each click is one step back, and giving up what is begun leaves what was there', () => {
  const tracer = traced(square(0, 0));
  const before = drawnParts(tracer);
  tracer.place([3, 3], WITHIN);
  tracer.place([4, 3], WITHIN);
  tracer.undo();
  expect(tracer.tracing.begun!.steps).toHaveLength(0);
  expect(tracer.escape()).toBe(true);
  expect(drawnParts(tracer)).toEqual(before);
  tracer.undo();
  tracer.redo();
  expect(drawnParts(tracer)).toEqual(before);
  tracer.place([0, 0], WITHIN);
  tracer.place([0, 0], WITHIN);
  expect(tracer.fault).toMatch(/here already/);
});

test('patches are named in their sewing order, whatever the order of the clicks, and a new unit can be sewn apart', () => {
  // The middle of a row of three cannot be sewn last, so it is not third.
  const tracer = traced(square(0, 0), square(2, 0), square(1, 0));
  const middle = tracer.tracing.patches[2]!;
  expect(tracer.nameOf(middle)).not.toBe('A3');
  tracer.describe(middle.id, { unit: 'B', role: 'Middles' });
  expect(tracer.tracing.units.map((unit) => unit.id)).toEqual(['A', 'B']);
  tracer.undo();
  for (const place of square(5, 5)) tracer.place(place, WITHIN);
  tracer.close();
  // The letter of the next patch is the last that was told, and its unit is there though that was taken back.
  expect(tracer.tracing.patches.at(-1)).toMatchObject({ unit: 'B', role: 'Middles' });
  expect(tracer.tracing.units.map((unit) => unit.id)).toEqual(['A', 'B']);
});

test('a unit that cannot be sewn says which patches hold one another up and where a letter mends it', () => {
  // Four patches like the sails of a windmill round a square: each is wanted before the next.
  const sails = traced(
    square(1, 1),
    [
      [0, 0],
      [2, 0],
      [2, 1],
      [1, 1],
      [0, 1],
    ],
    [
      [2, 0],
      [3, 0],
      [3, 2],
      [2, 2],
    ],
    [
      [1, 2],
      [3, 2],
      [3, 3],
      [1, 3],
    ],
    [
      [0, 1],
      [1, 1],
      [1, 3],
      [0, 3],
    ],
  );
  const { drawn } = sails;
  expect('unsewn' in drawn && drawn.unsewn).toEqual(['A']);
  const unit = ('block' in drawn ? drawn.block.units[0] : null) as Unit;
  expect(unit.paper).toBe(false);
  expect(whyUnsewn(unit)).toMatch(/^Unit A has no sewing order on paper: A\d.* hold one another up\. A\d /);
});
