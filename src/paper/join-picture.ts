/** One step of joining, seen from the front: the groups that are joined, drawn a little apart. */
import type { BlockPiece } from '../cutting/block-pieces.ts';
import type { JoinGroup, JoinOrder, JoinStep } from '../cutting/join-order.ts';
import { sayHow } from '../cutting/say-joins.ts';
import { type Item, moved, outlineRun, placed } from '../draw/display-list.ts';
import { edgeOn } from '../draw/ink.ts';
import { flatten } from '../shape/flatten.ts';
import { outlineArea, outlineCentroid } from '../shape/outline-measures.ts';
import { add, type Point, scale, subtract } from '../shape/point.ts';
import { boxHeight, boxWidth, polygonBox } from '../shape/polygon.ts';
import type { Part } from './page-flow.ts';
import { textPart } from './text-part.ts';

const TALL = 1.9;
/** Between groups, in inches on the page. */
const APART = 0.12;

/** @param colourOf a role's cloth @param length writes a length of the quilt */
export function joinPart(
  order: JoinOrder,
  step: JoinStep,
  width: number,
  colourOf: (role: string) => string,
  length: (size: number) => string,
): Part {
  const text = textPart(joinWords(order, step, length), width - 0.1, { points: 7.5 });
  const whole = polygonBox(
    step.parts.flatMap(({ pieces }) =>
      pieces.flatMap(({ patches }) =>
        patches.flatMap(({ outline }) => flatten(outline, { side: 'chord', within: 0.05 })),
      ),
    ),
  );
  const times = Math.min((width - 0.1 - 2 * APART) / boxWidth(whole), (TALL - 2 * APART) / boxHeight(whole));
  const middle = scale(add(whole.min, whole.max), 0.5);
  const heart = middleOf(step.parts.flatMap(({ pieces }) => pieces));
  const tall = boxHeight(whole) * times + 2 * APART;
  const items = step.parts.flatMap((part): readonly Item[] => {
    const away = subtract(middleOf(part.pieces), heart);
    const size = Math.hypot(...away);
    // A ring and what it goes round have one middle, and are told apart by their colours.
    const shift: Point = size < 1e-6 * boxWidth(whole) ? [0, 0] : scale(away, APART / size);
    return part.pieces.flatMap(({ patches }) =>
      patches.map(({ outline, role }) =>
        moved(
          placed(
            {
              kind: 'path',
              class: 'seam',
              runs: [outlineRun(outline)],
              fill: { colour: colourOf(role) },
              ink: edgeOn(colourOf(role)),
            },
            { scale: times, by: scale(middle, -times) },
          ),
          shift,
        ),
      ),
    );
  });
  return {
    height: tall + text.height + 0.2,
    items: (left, top) => [
      ...items.map((item) => moved(item, [left + width / 2, top - tall / 2])),
      ...text.items(left, top - tall - 0.08),
    ],
  };
}

/** The middle of the area of some pieces. */
function middleOf(pieces: readonly BlockPiece[]): Point {
  let [x, y, area] = [0, 0, 0];
  for (const { outline } of pieces.flatMap(({ patches }) => patches)) {
    const own = Math.abs(outlineArea(outline));
    const [atX, atY] = outlineCentroid(outline);
    x += own * atX;
    y += own * atY;
    area += own;
  }
  return [x / area, y / area];
}

export function joinWords(order: JoinOrder, step: JoinStep, length: (size: number) => string): string {
  const number = order.steps.indexOf(step) + 1;
  const names = countParts(step.parts).map(({ part, count }) => partName(order, part, count));
  const often = step.times === 1 ? 'once' : `${step.times} times`;
  return `${number}. ${names.join(' and ')}; ${often} for each block. ${sayHow(step, length)}`;
}

function countParts(parts: readonly JoinGroup[]): readonly { readonly part: JoinGroup; readonly count: number }[] {
  return [...new Set(parts.map(({ key }) => key))].map((key) => {
    const own = parts.filter((part) => part.key === key);
    return { part: own[0]!, count: own.length };
  });
}

function partName(order: JoinOrder, { key, pieces, ofRound }: JoinGroup, count: number): string {
  const [first] = pieces;
  if (pieces.length === 1) {
    return `${count === 1 ? '' : `${count} × `}${first!.name}${first!.mirrored ? ' mirrored' : ''}`;
  }
  const made = `from step ${order.steps.findIndex((step) => step.makes.key === key) + 1}`;
  const [one, many] =
    ofRound === 1
      ? ['Round', 'rounds']
      : ofRound === 2
        ? ['Half', 'halves']
        : ofRound === 4
          ? ['Quarter', 'quarters']
          : ['Piece', 'pieces'];
  return count === 1 ? `${one} ${made}` : `${count} ${many} ${made}`;
}
