/** One strip as it lies before her, its start at the left, its cuts numbered: a part of a booklet's page. */
import { type Item, lineRun, moved, polygonRun, rectangle } from '../draw/display-list.ts';
import { hatch } from '../draw/hatch.ts';
import { edgeOn } from '../draw/ink.ts';
import { label } from '../draw/label.ts';
import { shortName } from '../draw/short-name.ts';
import type { StripPiece, StripSteps } from '../plan/cut-steps.ts';
import type { Cloth } from '../quilt/quilt.ts';
import type { Point } from '../shape/point.ts';
import type { BookletCut } from './booklet.ts';
import { words } from './mark-items.ts';
import type { Part } from './page-flow.ts';

export interface PictureInput {
  readonly steps: StripSteps;
  readonly cuts: readonly BookletCut[];
  readonly cloth: Cloth;
  readonly directional: ReadonlySet<string>;
  readonly mistaken: ReadonlySet<string>;
  /** Of the page. */
  readonly width: number;
}

/** Room for the words at the edges, for the numbers over them, and the tallest that a picture may be. */
const SIDE = 0.36;
const OVER = 0.16;
const TALLEST = 1.9;
const NAME = 7 / 72;
const NUMBER = 6.2 / 72;

export function stripPicture({ steps, cuts, cloth, directional, mistaken, width }: PictureInput): Part {
  const { across, height, firstCut } = steps;
  const scale = Math.min((width - SIDE) / across, TALLEST / height);
  const tall = height * scale;
  // A strip along the cloth is turned clockwise to lie before her: its near edge is then the upper one.
  const isAlong = firstCut === 'along';
  const at = ([x, y]: Point): Point => [x * scale, (isAlong ? height - y : y) * scale];
  const up = (isAlong ? -90 : 0) + (cloth.up === 'across' ? -90 : 0);
  const frame = rectangle(0, 0, across * scale, tall);
  const piece = ({ blank, outline }: StripPiece): readonly Item[] => {
    const polygon = outline.map(at);
    const named = label(isAlong ? [...polygon].reverse() : polygon, {
      name: `${shortName(blank)}${mistaken.has(blank) ? '*' : ''}`,
      size: NAME,
      on: cloth.colour,
      arrow: directional.has(blank) ? { degrees: up, heads: cloth.print === 'one-way' ? 1 : 2 } : null,
    });
    return [
      {
        kind: 'path',
        class: 'cloth',
        runs: [polygonRun(polygon)],
        fill: { colour: cloth.colour },
        ink: edgeOn(cloth.colour),
      },
      ...named,
    ];
  };
  const items: readonly Item[] = [
    { kind: 'path', class: 'hatch', runs: hatch(frame, 0.07) },
    ...steps.pieces.flatMap(piece),
    { kind: 'path', class: 'edge', runs: [polygonRun(frame)] },
    {
      kind: 'path',
      class: 'cut',
      runs: cuts.map(({ nearAt, farAt }) => lineRun(at([nearAt, 0]), at([farAt, height]))),
    },
    ...numbers(cuts, scale, tall, isAlong),
    words({ text: isAlong ? 'near' : 'far', at: [-0.05, tall - 0.06], size: 6 / 72, anchor: 'end' }),
    words({ text: isAlong ? 'far' : 'near', at: [-0.05, 0.06], size: 6 / 72, anchor: 'end' }),
  ];
  return {
    height: tall + OVER + 0.06,
    items: (left, top) => items.map((item) => moved(item, [left + SIDE, top - OVER - tall])),
  };
}

/** Over where each cut leaves the upper edge; those that would stand on each other are left to the table. */
function numbers(cuts: readonly BookletCut[], scale: number, tall: number, isAlong: boolean): readonly Item[] {
  let last = Number.NEGATIVE_INFINITY;
  return [...cuts]
    .map(({ number, nearAt, farAt }) => ({ number, x: (isAlong ? nearAt : farAt) * scale }))
    .sort((a, b) => a.x - b.x)
    .flatMap(({ number, x }) => {
      if (x - last < 0.13) return [];
      last = x;
      return [words({ text: `${number}`, at: [x, tall + 0.07], size: NUMBER, anchor: 'middle' })];
    });
}
