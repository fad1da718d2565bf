/** The sheets of one copy of a piece that no sheet holds whole. */
import {
  type Box,
  type Drawing,
  type Item,
  lineRun,
  type PathItem,
  placed,
  polygonRun,
  rectangle,
  type TextItem,
} from '../draw/display-list.ts';
import { intersection } from '../shape/combine.ts';
import { flatten } from '../shape/flatten.ts';
import { add, type Point, type Polygon, scale } from '../shape/point.ts';
import { anticlockwise, polygonBox } from '../shape/polygon.ts';
import { drawLines } from './draw-piece.ts';
import { MARGIN, type PaperSize, sheetSize } from './paper-size.ts';
import { patchWords } from './patch-words.ts';
import { bandArea, framedSheet } from './sheet-frame.ts';
import { CROSS, inTiling, type Tile, type Tiling } from './tile-piece.ts';

const MAP = 1;
const SMALL = 7 / 72;

export interface TilePagesInput {
  readonly tiling: Tiling;
  readonly paper: PaperSize;
  readonly heading: string;
  /** "copy 2 of 5"; empty for the only one. */
  readonly copy: string;
  readonly notes: readonly string[];
}

export function tilePages(input: TilePagesInput): readonly Drawing[] {
  return input.tiling.tiles.map((tile) => tilePage(input, tile));
}

function tilePage({ tiling, paper, heading, copy, notes }: TilePagesInput, tile: Tile): Drawing {
  const { piece, orientation, tiles } = tiling;
  const area = bandArea(paper, orientation);
  const { window } = tile;
  const shift: Point = [area.left - window.left, area.bottom - window.bottom];
  const lines = drawLines(piece).map((item) => placed(item, { turn: tiling.turn, by: add(tiling.by, shift) }));
  const part = `${piece.name}, part ${tile.number} of ${tiles.length}`;
  const map = mapItems(tiling, tile, sheetSize(paper, orientation).width);
  return framedSheet({
    paper,
    orientation,
    heading: `${heading}: ${part}`,
    count: copy,
    gauges: null,
    notes: [
      `Part ${tile.number} of ${tiles.length}: cut along the frame of one sheet, lay it on the next so that crosses of the same letter meet, and tape. The map at the right shows which is which.`,
      ...notes,
    ],
    notesShort: map.width + 0.15,
    description: `${part}, at true scale.`,
    items: [
      { kind: 'group', class: 'part', clip: area, items: lines },
      ...words(tiling, window).map((item) => placed(item, { by: shift })),
      { kind: 'path', class: 'rule', runs: [polygonRun(rectangle(area.left, area.bottom, area.width, area.height))] },
      ...crosses(tiling, window).map((item) => placed(item, { by: shift })),
      ...map.items,
    ],
  });
}

/** What is seen of each patch is named, clear of the overlap where it can be. */
function words(tiling: Tiling, window: Box): readonly Item[] {
  const frame = rectangle(window.left, window.bottom, window.width, window.height);
  return tiling.piece.patches.flatMap((patch) => {
    const polygon = anticlockwise(flatten(patch.outline, { side: 'inside', within: 0.01 })).map((point) =>
      inTiling(tiling, point),
    );
    const seen = largestPart(intersection(polygon, frame));
    if (seen.length === 0) return [];
    const turned = (degrees: number): number => degrees + tiling.turn;
    const arrow = patch.arrow === null ? null : { ...patch.arrow, degrees: turned(patch.arrow.degrees) };
    const grain = patch.grain === null ? null : turned(patch.grain);
    return patchWords(seen, { ...patch, arrow, grain }, 0);
  });
}

const largestPart = (parts: readonly Polygon[]): Polygon =>
  parts.reduce<Polygon>((best, part) => (boxSize(part) > boxSize(best) ? part : best), []);

function boxSize(polygon: Polygon): number {
  if (polygon.length === 0) return 0;
  const { min, max } = polygonBox(polygon);
  return (max[0] - min[0]) * (max[1] - min[1]);
}

function crosses({ crosses: all }: Tiling, { left, bottom, width, height }: Box): readonly Item[] {
  return all
    .filter(({ at: [x, y] }) => x > left && x < left + width && y > bottom && y < bottom + height)
    .flatMap(({ letter, at }): readonly Item[] => [
      {
        kind: 'path',
        class: 'match',
        runs: [lineRun(add(at, [-CROSS, 0]), add(at, [CROSS, 0])), lineRun(add(at, [0, -CROSS]), add(at, [0, CROSS]))],
      },
      { kind: 'text', class: 'strong', text: letter, at: add(at, [0.09, 0.09]), size: SMALL, anchor: 'middle' },
    ]);
}

/** The whole piece small, its sheets over it, this one's number in a frame of its own. */
function mapItems(
  tiling: Tiling,
  tile: Tile,
  width: number,
): { readonly items: readonly Item[]; readonly width: number } {
  const { piece, tiles } = tiling;
  const left = Math.min(...tiles.map(({ window }) => window.left));
  const bottom = Math.min(...tiles.map(({ window }) => window.bottom));
  const wide = Math.max(...tiles.map(({ window }) => window.left + window.width)) - left;
  const tall = Math.max(...tiles.map(({ window }) => window.bottom + window.height)) - bottom;
  const times = Math.min(MAP / tall, 2 / wide);
  const corner: Point = [width - MARGIN - wide * times, MARGIN];
  const at = (point: Point): Point => add(corner, scale(add(point, [-left, -bottom]), times));
  const frame = ({ window }: Tile): Polygon =>
    rectangle(window.left, window.bottom, window.width, window.height).map(at);
  const outlines: PathItem = {
    kind: 'path',
    class: 'match',
    runs: [polygonRun(piece.trim.map((point) => at(inTiling(tiling, point))))],
  };
  const frames = tiles.map(
    (each): PathItem => ({ kind: 'path', class: each === tile ? 'edge' : 'rule', runs: [polygonRun(frame(each))] }),
  );
  const numbers = tiles.map(
    (each): TextItem => ({
      kind: 'text',
      class: each === tile ? 'strong' : 'plain',
      text: `${each.number}`,
      at: at([each.window.left + each.window.width / 2, each.window.bottom + each.window.height / 2]),
      size: each === tile ? 11 / 72 : SMALL,
      anchor: 'middle',
    }),
  );
  return { items: [outlines, ...frames, ...numbers], width: wide * times };
}
