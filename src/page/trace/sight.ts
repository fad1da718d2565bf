/** What part of the true plane is looked at, and how large: from the plane to the pixels of the board and back. */

import type { TrueMap } from '../../quilt/tracing/straightening.ts';
import { carry, combine, type Homography, stretchAt } from '../../shape/homography.ts';
import type { Box } from '../../shape/outline-measures.ts';
import type { Point } from '../../shape/point.ts';

export interface Sight {
  /** The place in the middle of the board, in the plane's unit. */
  readonly middle: Point;
  /** Board pixels for each of the plane's units. Greater than 0. */
  readonly zoom: number;
  /** Of the board, in pixels. */
  readonly width: number;
  readonly height: number;
}

export const toBoard = ({ middle, zoom, width, height }: Sight, [x, y]: Point): Point => [
  width / 2 + (x - middle[0]) * zoom,
  height / 2 - (y - middle[1]) * zoom,
];

export const fromBoard = ({ middle, zoom, width, height }: Sight, [x, y]: Point): Point => [
  middle[0] + (x - width / 2) / zoom,
  middle[1] - (y - height / 2) / zoom,
];

/** Larger by a factor, with the place under a board pixel kept where it is. */
export function zoomAbout(sight: Sight, at: Point, by: number, most: number): Sight {
  const kept = fromBoard(sight, at);
  const zoom = Math.min(Math.max(sight.zoom * by, 1e-3), most);
  const [x, y] = fromBoard({ ...sight, zoom }, at);
  return { ...sight, zoom, middle: [sight.middle[0] + kept[0] - x, sight.middle[1] + kept[1] - y] };
}

/** Moved by board pixels, as a sheet is pushed by a finger. */
export const push = (sight: Sight, [x, y]: Point): Sight => ({
  ...sight,
  middle: [sight.middle[0] - x / sight.zoom, sight.middle[1] + y / sight.zoom],
});

/** The sight that shows a whole box with a little room round it. */
export function sightOf(box: Box, width: number, height: number): Sight {
  const [across, up] = [box.max[0] - box.min[0], box.max[1] - box.min[1]];
  return {
    middle: [(box.min[0] + box.max[0]) / 2, (box.min[1] + box.max[1]) / 2],
    zoom: 0.94 * Math.min(width / Math.max(across, 1e-9), height / Math.max(up, 1e-9)),
    width,
    height,
  };
}

/** How the picture is laid under the board. */
export interface Laying {
  /** The picture is shown so many times smaller than it is, a power of two, so that fine lines do not break up. */
  readonly shrunk: number;
  /** The `transform` of the smaller picture, about its top left. */
  readonly transform: string;
}

export function layPicture(sight: Sight, map: TrueMap): Laying {
  const { middle, zoom, width, height } = sight;
  const onBoard: Homography = [zoom, 0, width / 2 - zoom * middle[0], 0, -zoom, height / 2 + zoom * middle[1], 0, 0, 1];
  const at = carry(map.toPicture, middle);
  const stretch = zoom * stretchAt(map.toTrue, at).most;
  const shrunk = Number.isFinite(stretch) ? Math.min(16, Math.max(1, 2 ** Math.floor(-Math.log2(stretch)))) : 1;
  const whole = combine(onBoard, combine(map.toTrue, [shrunk, 0, 0, 0, shrunk, 0, 0, 0, 1]));
  // What is in front of the camera must have a positive depth, or the browser does not draw it.
  const depth = whole[6] * (at[0] / shrunk) + whole[7] * (at[1] / shrunk) + whole[8];
  const [a, b, c, d, e, f, g, h, i] = whole.map((each) => each / depth) as unknown as Homography;
  return { shrunk, transform: `matrix3d(${[a, d, 0, g, b, e, 0, h, 0, 0, 1, 0, c, f, 0, i].map(plain).join(', ')})` };
}

/** Numbers as style sheets read them everywhere. */
const plain = (value: number): string => (Math.abs(value) < 1e-12 ? '0' : value.toPrecision(12));
