/** Exact measures of ring wedges against the table of rings and stars (plane geometry, derived to four places). */
import { expect, test } from 'vitest';
import { edgesOf } from '../../src/shape/outline.ts';
import { edgeLength, outlineArea, outlineBox } from '../../src/shape/outline-measures.ts';
import { distance } from '../../src/shape/point.ts';
import { ringWedge } from '../cutting/sample-quilt.ts';

test.each([
  [20, 2, 8, 0.6257, 2.503, 2.5133, 0.0985, 9.4248],
  [16, 3, 9, 1.1705, 3.5116, 3.5343, 0.1729, 14.1372],
  [32, 4, 10, 0.7841, 1.9603, 1.9635, 0.0482, 8.2467],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: an arc of 6 × 30° happens to be π long
  [12, 3, 6, 1.5529, 3.1058, 3.1416, 0.2044, 7.0686],
])('%i wedges from %f to %f', (n, inner, outer, innerChord, outerChord, outerArc, sagitta, area) => {
  const wedge = ringWedge(n, inner, outer);
  const [, bow, , hollow] = edgesOf(wedge);
  expect(distance(hollow!.from, hollow!.to)).toBeCloseTo(innerChord, 4);
  expect(distance(bow!.from, bow!.to)).toBeCloseTo(outerChord, 4);
  expect(edgeLength(bow!)).toBeCloseTo(outerArc, 4);
  // The wedge stands with its middle up: its top is the arc's, the chord lies lower by the sagitta.
  expect(outlineBox(wedge).max[1] - bow!.from[1]).toBeCloseTo(sagitta, 4);
  expect(outlineArea(wedge)).toBeCloseTo(area, 4);
});
