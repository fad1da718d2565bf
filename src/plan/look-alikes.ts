/**
 * Blanks that are easily taken for each other: left and right hands, sizes that differ by less than the eye sees, and one
 * shape whose print lies two ways. Those that are truly the same were counted together when the cut list was made.
 */
import type { Blank, Group } from '../cutting/cut-list.ts';
import type { LengthUnit } from '../quilt/quilt.ts';
import { distance, dot, type Point, type Polygon, subtract } from '../shape/point.ts';
import {
  anticlockwise,
  mirrorPolygon,
  movePolygon,
  polygonArea,
  polygonCentroid,
  polygonPerimeter,
  turnPolygon,
} from '../shape/polygon.ts';
import { SAME_WITHIN } from '../shape/same-outline.ts';
import type { Layout, LayoutAnswer } from './layout-job.ts';
import { placedPolygon } from './placed.ts';
import { placementsAs, shapesOn } from './shapes-on.ts';

export interface LookAlike {
  readonly blanks: readonly [string, string];
  /** The cloth that both are cut from; blanks of different cloths are told apart by them. */
  readonly cloth: string;
  /** hands: mirror images; size: alike within the tolerance; print: the same outline, its print another way. */
  readonly how: 'hands' | 'size' | 'print';
}

/** What is not seen at a glance. The brief's own figure, not from a source. */
const UNSEEN: Readonly<Record<LengthUnit, number>> = { in: 1 / 8, cm: 0.3 };

/** Told of once for each plan: layouts keep their identity. */
const told = new WeakMap<readonly Layout[], { readonly group: Group; readonly found: readonly LookAlike[] }>();

/** The pairs of a group that are taken for each other, of the shapes and turns that the plan cuts. */
export function lookAlikes(group: Group, { layouts }: LayoutAnswer, unit: LengthUnit): readonly LookAlike[] {
  const known = told.get(layouts);
  if (known?.group === group) {
    return known.found;
  }
  const found = findLookAlikes(group, layouts, UNSEEN[unit]);
  told.set(layouts, { group, found });
  return found;
}

/** A blank as it is cut somewhere from one cloth. */
interface Form {
  readonly blank: string;
  /** The cloth of the job that it lies on. */
  readonly on: string;
  readonly cloth: string;
  /** As it lies. */
  readonly placed: Polygon;
  /** About its middle, anticlockwise. */
  readonly outline: Polygon;
  readonly area: number;
  readonly perimeter: number;
}

function findLookAlikes(group: Group, layouts: readonly Layout[], tolerance: number): readonly LookAlike[] {
  const forms = formsOf(group, layouts);
  const shapes = new Map(group.lengths.map(({ id }) => [id, shapesOn(group.job, id)]));
  const pairs = new Map<string, LookAlike>();
  const serves = (a: Form, b: Form): boolean =>
    placementsAs(
      a.placed,
      shapes.get(a.on)!.filter(({ blank }) => blank === b.blank),
      SAME_WITHIN,
    ).length > 0;
  forms.forEach((a, i) => {
    for (const b of forms.slice(i + 1)) {
      const key = JSON.stringify([a.cloth, ...[a.blank, b.blank].sort()]);
      const how = a.blank === b.blank || a.cloth !== b.cloth ? null : likenessOf(a, b, tolerance);
      const before = pairs.get(key)?.how;
      // What serves for the other just as it is cut may be taken for it without harm.
      if (how !== null && (before === undefined || before === 'size') && !(serves(a, b) && serves(b, a))) {
        pairs.set(key, { blanks: [a.blank, b.blank], cloth: a.cloth, how });
      }
    }
  });
  return [...pairs.values()];
}

function formsOf(group: Group, layouts: readonly Layout[]): readonly Form[] {
  const forms = new Map<string, Form>();
  const blanks = new Map(group.blanks.map((blank) => [blank.id, blank]));
  for (const { cloth: on, placements } of layouts) {
    const cloth = group.lengths.find(({ id }) => id === on)?.cloth ?? on;
    for (const { blank, shape, turn, mirror } of placements) {
      const key = JSON.stringify([cloth, blank, shape, turn, mirror]);
      const own = blanks.get(blank)?.shapes[shape]?.outline;
      if (own !== undefined && !forms.has(key)) {
        const placed = anticlockwise(placedPolygon(own, { blank, shape, turn, mirror, x: 0, y: 0 }));
        const [x, y] = polygonCentroid(placed);
        const outline = movePolygon(placed, [-x, -y]);
        const measures = { area: polygonArea(placed), perimeter: polygonPerimeter(placed) };
        forms.set(key, { blank, on, cloth, placed, outline, ...measures });
      }
    }
  }
  return [...forms.values()].sort((a, b) => order(a.blank, blanks) - order(b.blank, blanks));
}

const order = (id: string, blanks: ReadonlyMap<string, Blank>): number => [...blanks.keys()].indexOf(id);

function likenessOf(a: Form, b: Form, tolerance: number): LookAlike['how'] | null {
  // Outlines that nowhere part by more than the tolerance differ in area by no more than a seam of that width.
  if (Math.abs(a.area - b.area) > tolerance * Math.max(a.perimeter, b.perimeter)) {
    return null;
  }
  const turned = leastParting(a.outline, b.outline);
  const reflected = leastParting(a.outline, mirrorPolygon(b.outline));
  if (Math.min(turned, reflected) > tolerance) {
    return null;
  }
  return reflected < turned - 1e-6 ? 'hands' : turned <= 1e-4 ? 'print' : 'size';
}

/** How far two outlines about their middles part at most, an edge of one turned onto an edge of the other. */
function leastParting(a: Polygon, b: Polygon): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [i] of a.entries()) {
    for (const [j] of b.entries()) {
      const turned = turnPolygon(b, edgeAngle(a, i) - edgeAngle(b, j));
      least = Math.min(least, Math.max(parting(a, turned), parting(turned, a)));
    }
  }
  return least;
}

const parting = (a: Polygon, b: Polygon): number => Math.max(...a.map((point) => distanceTo(b, point)));

function distanceTo(polygon: Polygon, point: Point): number {
  return Math.min(
    ...polygon.map((from, i) => {
      const edge = subtract(polygon[(i + 1) % polygon.length]!, from);
      const along = Math.min(1, Math.max(0, dot(subtract(point, from), edge) / dot(edge, edge)));
      return distance(point, [from[0] + edge[0] * along, from[1] + edge[1] * along]);
    }),
  );
}

function edgeAngle(polygon: Polygon, i: number): number {
  const [x, y] = subtract(polygon[(i + 1) % polygon.length]!, polygon[i]!);
  return (Math.atan2(y, x) * 180) / Math.PI;
}

/** "B1 and B1 mirrored look alike: left and right hand; mark one on the wrong side with chalk." */
export function sayLookAlike({ blanks: [a, b], how }: LookAlike): string {
  switch (how) {
    case 'hands':
      return `${a} and ${b} look alike: left and right hand; mark one on the wrong side with chalk.`;
    case 'size':
      return `${a} and ${b} look alike, and differ a little in size; mark one on the wrong side with chalk.`;
    case 'print':
      return `${a} and ${b} have one shape, with the print lying another way; keep them in bags of their own.`;
  }
}

/** The names of blanks that have a look-alike. */
export const easilyMistaken = (found: readonly LookAlike[]): ReadonlySet<Blank['id']> =>
  new Set(found.flatMap(({ blanks }) => blanks));
