/** The glass over a finger: the picture about one place, larger, with a cross in its middle. */
import type { TrueMap } from '../../quilt/tracing/straightening.ts';
import { carry } from '../../shape/homography.ts';
import type { Point } from '../../shape/point.ts';
import { fromBoard, type Sight } from './sight.ts';

/** How much larger than on the board. */
const LARGER = 2.5;

/** @param at on the board, in its pixels */
export function drawGlass(
  glass: HTMLCanvasElement,
  picture: HTMLCanvasElement,
  map: TrueMap,
  sight: Sight,
  at: Point,
): void {
  const context = glass.getContext('2d');
  if (context === null) return;
  const inPicture = (x: number, y: number): Point => carry(map.toPicture, fromBoard(sight, [at[0] + x, at[1] + y]));
  const [centre, right, down] = [inPicture(0, 0), inPicture(1, 0), inPicture(0, 1)];
  // So near, the slanted picture is a slanted square: steps of the board in the picture, turned round.
  const [a, b, c, d] = [right[0] - centre[0], down[0] - centre[0], right[1] - centre[1], down[1] - centre[1]];
  const det = a * d - b * c;
  const half = glass.width / 2;
  const size = LARGER * (glass.width / Math.max(1, glass.clientWidth));
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.fillStyle = '#888';
  context.fillRect(0, 0, glass.width, glass.height);
  const [xx, xy, yx, yy] = [d / det, -b / det, -c / det, a / det].map((each) => each * size) as [
    number,
    number,
    number,
    number,
  ];
  context.setTransform(xx, yx, xy, yy, half - xx * centre[0] - xy * centre[1], half - yx * centre[0] - yy * centre[1]);
  context.drawImage(picture, 0, 0);
  context.setTransform(1, 0, 0, 1, half, half);
  for (const [colour, width] of [
    ['#fff', 5],
    ['#96342a', 2],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.beginPath();
    for (const [x, y] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      context.moveTo(x * half * 0.12, y * half * 0.12);
      context.lineTo(x * half * 0.8, y * half * 0.8);
    }
    context.stroke();
  }
}
