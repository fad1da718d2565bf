import { expect, test } from 'vitest';
import type { Outline } from '../../src/shape/outline.ts';
import { outlineFault } from '../../src/shape/outline-fault.ts';

test('ordinary patches have no fault', () => {
  const triangle: Outline = [
    [0, 0],
    [4, 0],
    [0, 4],
  ];
  const lens: Outline = [
    [0, 0],
    { arc: { radius: 3, turn: 'anticlockwise' } },
    [4, 0],
    { arc: { radius: 3, turn: 'anticlockwise' } },
  ];
  const disc: Outline = [
    [-2, 0],
    { arc: { radius: 2, turn: 'anticlockwise' } },
    [2, 0],
    { arc: { radius: 2, turn: 'anticlockwise' } },
  ];
  expect(outlineFault(triangle)).toBeNull();
  expect(outlineFault(lens)).toBeNull();
  expect(outlineFault(disc)).toBeNull();
  expect(outlineFault([...triangle].reverse())).toBeNull();
});

test('an arc set tangent to its neighbour, its figures rounded as in a file, is no crossing', () => {
  const rounded: Outline = [
    [0, 0],
    [5, 0.0001],
    { arc: { radius: 2.0001, turn: 'anticlockwise' } },
    [7, 2],
    [7, 6],
    [0, 6],
  ];
  expect(outlineFault(rounded)).toBeNull();
});

test('crossing edges are found and the place is named', () => {
  const bow: Outline = [
    [0, 0],
    [4, 4],
    [4, 0],
    [0, 4],
  ];
  expect(outlineFault(bow)).toContain('(2, 2)');
  const arcThroughSide: Outline = [[0, 0], [6, 0], [6, 1], { arc: { radius: 3, turn: 'clockwise' } }, [0, 1]];
  expect(outlineFault(arcThroughSide)).toContain('crosses or touches itself');
});

test('touching, folding back and repeating are faults too', () => {
  const touching: Outline = [
    [0, 0],
    [4, 0],
    [4, 4],
    [2, 0],
    [0, 4],
  ];
  expect(outlineFault(touching)).toContain('(2, 0)');
  const folded: Outline = [
    [0, 0],
    [4, 0],
    [2, 0],
    [2, 3],
  ];
  expect(outlineFault(folded)).not.toBeNull();
  expect(
    outlineFault([
      [0, 0],
      [0, 0],
      [2, 0],
      [2, 3],
    ]),
  ).toContain('twice');
});

test('an arc that cannot exist is told with its corners', () => {
  const impossible: Outline = [[0, 0], [9, 0], { arc: { radius: 1, turn: 'anticlockwise' } }, [0, 5]];
  expect(outlineFault(impossible)).toContain('(9, 0)');
});

test('badly ordered arcs and empty outlines are told, not thrown', () => {
  expect(outlineFault([])).toContain('begins with a corner');
  expect(
    outlineFault([[0, 0], { arc: { radius: 1, turn: 'clockwise' } }, { arc: { radius: 1, turn: 'clockwise' } }]),
  ).toContain('two arcs');
  expect(
    outlineFault([
      [0, 0],
      [1, 0],
    ]),
  ).toContain('encloses nothing');
});
