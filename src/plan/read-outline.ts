/** Reads an outline of a layout job: a simple polygon of straight edges, either way round. */
import { orient2d } from 'robust-predicates';
import type { Point, Polygon } from '../shape/point.ts';
import { fail, quote, readList, readNumber } from './job-field.ts';

/**
 * @param field where it stands in the job, for the message
 * @throws JobError when there are fewer than 3 points, the area is zero, or edges cross, touch or fold back
 */
export function readOutline(value: unknown, field: string): Polygon {
  const expected = 'a list of 3 or more points [x, y]';
  const list = readList(value, field, expected);
  if (list.length < 3) fail(field, `has ${list.length} points`, value, expected);
  const outline = list.map((entry, index) => readPoint(entry, `${field}[${index}]`));
  outline.forEach((point, index) => {
    const next = outline[(index + 1) % outline.length]!;
    if (point[0] === next[0] && point[1] === next[1]) {
      const after = (index + 1) % outline.length;
      fail(field, `repeats point ${index} as point ${after}`, point, 'each corner once, the last joined to the first');
    }
  });
  // All points on one line: the exact test, so that a thin sliver still counts as a shape.
  if (outline.every((point) => orient(outline[0]!, outline[1]!, point) === 0)) {
    fail(field, 'has no area', value, 'a polygon whose points are not all on one line');
  }
  refuseCrossings(outline, field);
  return outline;
}

function readPoint(value: unknown, field: string): Point {
  const expected = 'a point, two numbers [x, y]';
  const pair = readList(value, field, expected);
  if (pair.length !== 2) fail(field, `has ${pair.length} entries`, value, expected);
  return [readNumber(pair[0], `${field}[0]`, expected), readNumber(pair[1], `${field}[1]`, expected)];
}

function refuseCrossings(outline: Polygon, field: string): void {
  const n = outline.length;
  for (let i = 0; i < n; i++) {
    const [a, b] = edge(outline, i);
    for (let j = i + 1; j < n; j++) {
      const [c, d] = edge(outline, j);
      const neighbours = j === i + 1 || (i === 0 && j === n - 1);
      const meets = neighbours ? foldsBack(a, b, c, d) : edgesMeet(a, b, c, d);
      if (!meets) continue;
      const how = neighbours ? 'folds back on itself' : 'crosses or touches itself';
      fail(
        field,
        `${how} where edge ${i} from ${quote(a)} to ${quote(b)} meets edge ${j} from ${quote(c)} to ${quote(d)}`,
        outline,
        'a polygon whose edges meet only at its corners',
      );
    }
  }
}

const edge = (outline: Polygon, index: number): readonly [Point, Point] => [
  outline[index]!,
  outline[(index + 1) % outline.length]!,
];

/** Two edges that share a corner overlap only when they lie on one line and leave the corner the same way. */
function foldsBack(a: Point, b: Point, c: Point, d: Point): boolean {
  const [corner, from, to] = b === c ? [b, a, d] : [a, b, c];
  if (orient(from, corner, to) !== 0) return false;
  return (from[0] - corner[0]) * (to[0] - corner[0]) + (from[1] - corner[1]) * (to[1] - corner[1]) > 0;
}

function edgesMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  const apart =
    Math.max(a[0], b[0]) < Math.min(c[0], d[0]) ||
    Math.max(c[0], d[0]) < Math.min(a[0], b[0]) ||
    Math.max(a[1], b[1]) < Math.min(c[1], d[1]) ||
    Math.max(c[1], d[1]) < Math.min(a[1], b[1]);
  if (apart) return false;
  // Boxes that meet and both segments astride (or on) the other's line: for collinear ones the boxes decide.
  return orient(a, b, c) * orient(a, b, d) <= 0 && orient(c, d, a) * orient(c, d, b) <= 0;
}

/** Its sign is exact, so that points exactly on a line are told from points hardly off it. */
const orient = (a: Point, b: Point, c: Point): number => Math.sign(orient2d(a[0], a[1], b[0], b[1], c[0], c[1]));
