/** Small things that stand on many papers: a snippet of cloth with its print's arrow, a box to tick. */
import { arrow } from '../draw/arrow.ts';
import { type Item, polygonRun, rectangle, type TextItem } from '../draw/display-list.ts';
import { edgeOn, inkOn } from '../draw/ink.ts';
import { paperTextWidth } from '../draw/paper-text.ts';
import type { Cloth } from '../quilt/quilt.ts';
import type { Point } from '../shape/point.ts';

/** A snippet of a cloth, its print's up at the top. @param at its lower left corner */
export function swatch(
  cloth: Cloth | undefined,
  [x, y]: Point,
  width: number,
  height: number,
  hasArrow: boolean,
): readonly Item[] {
  const colour = cloth?.colour ?? '#d8d4cc';
  const fill = cloth === undefined ? { colour } : { colour, print: cloth.print, turn: 0 };
  const heads = cloth?.print === 'one-way' ? 1 : 2;
  return [
    {
      kind: 'path',
      class: 'cloth',
      runs: [polygonRun(rectangle(x, y, width, height))],
      fill: hasArrow ? { colour } : fill,
      ink: edgeOn(colour),
    },
    ...(hasArrow ? [{ ...arrow([x + width / 2, y + height / 2], 0, height * 0.8, heads), ink: inkOn(colour) }] : []),
  ];
}

/** @param at its lower left corner */
export const tickBox = ([x, y]: Point, side: number): Item => ({
  kind: 'path',
  class: 'box',
  runs: [polygonRun(rectangle(x, y, side, side))],
});

export interface Words {
  readonly text: string;
  readonly at: Point;
  /** In inches. */
  readonly size: number;
  readonly bold?: boolean;
  readonly anchor?: TextItem['anchor'];
}

export const words = ({ text, at, size, bold = false, anchor = 'start' }: Words): TextItem => ({
  kind: 'text',
  class: bold ? 'strong' : 'plain',
  text,
  at,
  size,
  anchor,
});

/** The text, or as much of it as has room, with dots for the rest. */
export function shortened(text: string, width: number, size: number, isBold: boolean): string {
  if (paperTextWidth(text, size, isBold) <= width) return text;
  let kept = text;
  while (kept.length > 1 && paperTextWidth(`${kept.trimEnd()}…`, size, isBold) > width) {
    kept = kept.slice(0, -1);
  }
  return `${kept.trimEnd()}…`;
}
