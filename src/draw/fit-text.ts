/** Where names and arrows fit inside a shape, so that no label lies across a seam. */
import { type Point, type Polygon, turn } from '../shape/point.ts';
import { isInside, polygonArea, polygonBox, polygonCentroid } from '../shape/polygon.ts';

/** A guess at a text's width that errs on the wide side for the usual faces in bold. */
export const textWidth = (text: string, size: number): number =>
  [...text].reduce((sum, letter) => sum + (WIDE.has(letter) ? 1.02 : NARROW.has(letter) ? 0.4 : 0.7), 0) * size;

const WIDE: ReadonlySet<string> = new Set('mwMW@%');
const NARROW: ReadonlySet<string> = new Set("ijlI.,:;'|! ");

/** What a name or an arrow takes up, about its middle. */
export interface LabelBox {
  readonly width: number;
  readonly height: number;
  /** Degrees anticlockwise. */
  readonly turn: number;
}

/** Places tried along and across a shape. */
const STEPS = 10;

/**
 * The centre of a box that lies wholly inside the polygon, as near to the polygon's middle as a search over a grid finds;
 * null when none fits. A place with some air round the box is taken before one without.
 */
export function placeBox(polygon: Polygon, box: LabelBox): Point | null {
  const air = Math.min(box.width, box.height) * 0.45;
  return nearest(polygon, { ...box, width: box.width + air, height: box.height + air }) ?? nearest(polygon, box);
}

/** Centres of two boxes that both lie inside the polygon and clear of each other, close to its middle. */
export function placePair(polygon: Polygon, a: LabelBox, b: LabelBox): readonly [a: Point, b: Point] | null {
  const middle = polygonCentroid(polygon);
  const [sizeA, sizeB] = [upright(a), upright(b)];
  const [across, up] = [(sizeA[0] + sizeB[0]) / 2, (sizeA[1] + sizeB[1]) / 2];
  const placesA = allPlaces(polygon, a, middle);
  const placesB = placesA.length === 0 ? [] : allPlaces(polygon, b, middle);
  let best: readonly [Point, Point] | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const one of placesA) {
    for (const other of placesB) {
      const far = one.far + other.far;
      if (far >= least) {
        // The farther ones come after.
        break;
      }
      if (Math.abs(one.at[0] - other.at[0]) >= across || Math.abs(one.at[1] - other.at[1]) >= up) {
        best = [one.at, other.at];
        least = far;
      }
    }
  }
  return best;
}

/** How far a box reaches across and up as it stands. */
export function upright({ width, height, turn: degrees }: LabelBox): readonly [width: number, height: number] {
  const [c, s] = turn([1, 0], degrees).map(Math.abs) as [number, number];
  return [c * width + s * height, s * width + c * height];
}

function nearest(polygon: Polygon, box: LabelBox): Point | null {
  const middle = polygonCentroid(polygon);
  const points = boxPoints(box);
  let best: Point | null = null;
  let least = Number.POSITIVE_INFINITY;
  forEachPlace(polygon, box, middle, (x, y) => {
    const far = (x - middle[0]) ** 2 + (y - middle[1]) ** 2;
    if (far < least && fits(polygon, points, x, y)) {
      best = [x, y];
      least = far;
    }
  });
  return best;
}

interface PlaceFound {
  readonly at: Point;
  /** From the middle. */
  readonly far: number;
}

/** Those nearest the middle first. */
function allPlaces(polygon: Polygon, box: LabelBox, middle: Point): readonly PlaceFound[] {
  const points = boxPoints(box);
  const found: PlaceFound[] = [];
  forEachPlace(polygon, box, middle, (x, y) => {
    if (fits(polygon, points, x, y)) {
      found.push({ at: [x, y], far: Math.hypot(x - middle[0], y - middle[1]) });
    }
  });
  return found.sort((one, other) => one.far - other.far);
}

/** The polygon's middle, then a grid over the whole of it; nothing where the box is plainly too large for it. */
function forEachPlace(polygon: Polygon, box: LabelBox, middle: Point, visit: (x: number, y: number) => void): void {
  const { min, max } = polygonBox(polygon);
  const [width, height] = upright(box);
  // No rectangle inside a triangle takes more than half of it.
  const most = Math.abs(polygonArea(polygon)) * (polygon.length === 3 ? 0.5 : 1);
  if (max[0] - min[0] < width || max[1] - min[1] < height || box.width * box.height > most) {
    return;
  }
  visit(...middle);
  const across = (max[0] - min[0] - width) / STEPS;
  const up = (max[1] - min[1] - height) / STEPS;
  for (let column = 0; column <= STEPS; column++) {
    for (let row = 0; row <= STEPS; row++) {
      visit(min[0] + width / 2 + column * across, min[1] + height / 2 + row * up);
    }
  }
}

/** Corners and middles of sides suffice: the shapes drawn here have no notch narrower than half a label. */
function boxPoints({ width, height, turn: degrees }: LabelBox): readonly Point[] {
  const parts = [-0.5, 0.5, 0];
  return parts.flatMap((i) => parts.map((j) => turn([i * width, j * height], degrees)));
}

function fits(polygon: Polygon, points: readonly Point[], x: number, y: number): boolean {
  for (const point of points) {
    if (!isInside(polygon, x + point[0], y + point[1])) {
      return false;
    }
  }
  return true;
}
