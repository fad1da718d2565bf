/**
 * The smallest triangle, trapezium or parallelogram over a polygon whose parallel sides run along the strip (here along x)
 * and whose corners lie on the ruler's grid, so that every cut can be marked from the strip's edges.
 */
import { type Point, type Polygon, scale } from '../shape/point.ts';
import { polygonBox, turnPolygon } from '../shape/polygon.ts';

/** In whole rulers: near edge from 0 to `near` at the bottom, far edge from `left` to `near + right` at the top. */
interface Slant {
  readonly height: number;
  readonly near: number;
  readonly left: number;
  readonly right: number;
  /** Where the near edge begins, in lengths. */
  readonly x: number;
  readonly y: number;
  /** Turned half round: told with its near edge at the bottom, lying with it at the top. */
  readonly upended: boolean;
  /** What it is ranked by, least first: area (less a favour to triangles), how odd its slopes are, slack used up. */
  readonly rank: readonly [number, number, number];
}

/** A triangle is cut with one cut fewer, so it may be this much larger than the best trapezium. */
const TRIANGLE_FAVOUR = 1.05;
/** Left and right slopes are tried this many rulers about the best. */
const SLOPE_REACH = 2;
const EXACT = 1e-9;

/**
 * @param cover convex, anticlockwise
 * @param lean where slack goes that rounding up leaves: to the far side of this direction (a sewn side stays flush); [0, 0]
 * for evenly
 * @param accept a further test of coverage; the smallest that passes is taken
 * @returns null where none within a ruler or two of the smallest passes
 */
export function smallestSlant(
  cover: Polygon,
  ruler: number,
  lean: Point,
  accept: (outline: Polygon) => boolean,
): Polygon | null {
  const tight = slantsOver(cover, ruler, lean, 0);
  const best = outlineOf(
    tight.reduce((first, each) => (byRank(each, first) < 0 ? each : first)),
    ruler,
  );
  if (accept(best)) {
    return best;
  }
  const outlines = slantsOver(cover, ruler, lean, 1)
    .sort(byRank)
    .map((slant) => outlineOf(slant, ruler));
  return outlines.find(accept) ?? null;
}

/** @param ease rulers by which sizes may exceed the least that the grid asks for */
function slantsOver(cover: Polygon, ruler: number, lean: Point, ease: 0 | 1): Slant[] {
  const four = trapezia(cover, ruler, lean, ease);
  const most = four.reduce((least, { rank }) => Math.min(least, rank[0]), Number.POSITIVE_INFINITY) * TRIANGLE_FAVOUR;
  const up = triangles(cover, ruler, lean, most);
  const down = triangles(turnPolygon(cover, 180), ruler, scale(lean, -1), most);
  return [...four, ...up, ...down.map((slant) => ({ ...slant, upended: true }))];
}

/**
 * Whatever line bounds the left side of a trapezium of given height, the area counts only where it crosses mid-height; so
 * the best is the side of the polygon that crosses there, and slopes on the grid are sought about it.
 */
function trapezia(cover: Polygon, ruler: number, lean: Point, ease: 0 | 1): readonly Slant[] {
  const { min, max } = polygonBox(cover);
  const least = roundUp((max[1] - min[1]) / ruler);
  const slants: Slant[] = [];
  for (let height = least; height <= least + ease; height++) {
    for (const below of slackBelow(lean, height * ruler - (max[1] - min[1]))) {
      const bottom = min[1] - below;
      const middle = bottom + (height * ruler) / 2;
      const lefts = boundsAt(cover, bottom, height, slopesAbout(slopeAt(cover, middle, -1) * height), -1);
      const rights = boundsAt(cover, bottom, height, slopesAbout(slopeAt(cover, middle, 1) * height), 1);
      for (const { run: left, x: from } of lefts) {
        for (const { run: right, x: to } of rights) {
          const fit = Math.max(0, roundUp((to - from) / ruler), left - right);
          for (let near = fit; near <= fit + ease; near++) {
            slants.push(slantOf(height, near, left, right, from, to, bottom, ruler, lean));
          }
        }
      }
    }
  }
  return slants;
}

/** Triangles with their base at the bottom, their sides as near to sides of the polygon as the grid lets them be. */
function triangles(cover: Polygon, ruler: number, lean: Point, mostArea: number): readonly Slant[] {
  const { min, max } = polygonBox(cover);
  const tall = max[1] - min[1];
  const mostRulers = (2 * mostArea) / (ruler * ruler);
  const middle = tall / 2;
  const widthAtMiddle = xAt(cover, min[1] + middle, 1) - xAt(cover, min[1] + middle, -1);
  const leftSlopes = longSlopes(cover, -1, tall);
  const rightSlopes = longSlopes(cover, 1, tall);
  const slants: Slant[] = [];
  for (let height = Math.max(1, roundUp(tall / ruler)); ; height++) {
    // At mid-height of the polygon the triangle has narrowed to 1 − middle/height of its base and must still hold it.
    const leastNear = widthAtMiddle / (1 - middle / (height * ruler)) / ruler;
    if (!(leastNear * height <= mostRulers)) {
      return slants;
    }
    const lefts = boundsAt(cover, min[1], height, wholeAbout(leftSlopes, height), -1);
    const rights = boundsAt(cover, min[1], height, wholeAbout(rightSlopes, height), 1);
    for (const { run: left, x: from } of lefts) {
      for (const { run: right, x: to } of rights) {
        const near = left - right;
        if (near > 0 && near * height <= mostRulers && to - from <= near * ruler + EXACT) {
          slants.push(slantOf(height, near, left, right, from, to, min[1], ruler, lean));
        }
      }
    }
  }
}

/** @param from the least x that the left side may have at the bottom; `to` the greatest that the right side must have */
function slantOf(
  height: number,
  near: number,
  left: number,
  right: number,
  from: number,
  to: number,
  y: number,
  ruler: number,
  lean: Point,
): Slant {
  const slack = near * ruler - (to - from);
  const x = from - (lean[0] < 0 ? 0 : lean[0] > 0 ? slack : slack / 2);
  const far = near + right - left;
  const area = (height * (near + far) * ruler * ruler) / 2;
  const odd = (left === 0 ? 0 : 1) + (right === 0 ? 0 : 1) + (left === right || left === -right ? 0 : 1);
  const favoured = far === 0 || near === 0 ? area / TRIANGLE_FAVOUR : area;
  return { height, near, left, right, x, y, upended: false, rank: [favoured, odd, -slack] };
}

function outlineOf({ height, near, left, right, x, y, upended }: Slant, ruler: number): Polygon {
  const far = near + right - left;
  const top = y + height * ruler;
  const corners: Point[] = near > 0 ? [[x, y]] : [];
  corners.push([x + near * ruler, y], [x + (near + right) * ruler, top]);
  if (far > 0) {
    corners.push([x + left * ruler, top]);
  }
  return upended ? turnPolygon(corners, 180) : corners;
}

function byRank(a: Slant, b: Slant): number {
  for (const i of [0, 1, 2] as const) {
    if (Math.abs(a.rank[i] - b.rank[i]) > 1e-7) {
      return a.rank[i] - b.rank[i];
    }
  }
  return 0;
}

/** How much of the height's slack to put below: none where the bottom is the sewn side, all where the top is. */
function slackBelow(lean: Point, slack: number): readonly number[] {
  if (lean[1] !== 0) {
    return [lean[1] < 0 ? 0 : slack];
  }
  return [slack / 2, 0, slack];
}

interface Bound {
  /** Rulers that the side runs in x on its way up. */
  readonly run: number;
  /** Where it begins at the bottom so that the polygon just fits inside: the least on the left, the greatest on the right. */
  readonly x: number;
}

function boundsAt(
  cover: Polygon,
  bottom: number,
  height: number,
  runs: readonly number[],
  side: -1 | 1,
): readonly Bound[] {
  return runs.map((run) => {
    let most = Number.NEGATIVE_INFINITY;
    for (const [x, y] of cover) {
      most = Math.max(most, side * (x - (run / height) * (y - bottom)));
    }
    return { run, x: side * most };
  });
}

/** Where the polygon's left (−1) or right (1) side crosses a height. */
function xAt(cover: Polygon, y: number, side: -1 | 1): number {
  const [a, b] = sideAt(cover, y, side);
  return a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]);
}

/** Steps in x for each step in y of the polygon's left (−1) or right (1) side at a height. */
const slopeAt = (cover: Polygon, y: number, side: -1 | 1): number => slopeOf(sideAt(cover, y, side));

/** The edge on that side that crosses a height; the nearest where the height is just outside. */
function sideAt(cover: Polygon, y: number, side: -1 | 1): readonly [Point, Point] {
  const off = ([a, b]: readonly [Point, Point]) => Math.max(Math.min(a[1], b[1]) - y, y - Math.max(a[1], b[1]), 0);
  return sidesOf(cover, side).reduce((best, each) => (off(each) < off(best) ? each : best));
}

function longSlopes(cover: Polygon, side: -1 | 1, height: number): readonly number[] {
  return sidesOf(cover, side)
    .filter(([a, b]) => Math.abs(b[1] - a[1]) >= 0.1 * height)
    .map(slopeOf);
}

const slopeOf = ([a, b]: readonly [Point, Point]): number => (b[0] - a[0]) / (b[1] - a[1]);

/** Edges that run down are the left side of an anticlockwise polygon, those that run up the right side. */
function sidesOf(cover: Polygon, side: -1 | 1): readonly (readonly [Point, Point])[] {
  return cover
    .map((a, i) => [a, cover[(i + 1) % cover.length]!] as const)
    .filter(([a, b]) => side * (b[1] - a[1]) > EXACT);
}

const slopesAbout = (slope: number): readonly number[] =>
  Array.from({ length: 2 * SLOPE_REACH + 1 }, (_, k) => Math.round(slope) - SLOPE_REACH + k);

const wholeAbout = (slopes: readonly number[], height: number): readonly number[] => [
  ...new Set(slopes.flatMap((slope) => [Math.floor(slope * height + EXACT), Math.ceil(slope * height - EXACT)])),
];

/** Whole rulers, up, forgiving what rounding in the sums before may have added. */
export const roundUp = (rulers: number): number => Math.ceil(rulers - 1e-6);
