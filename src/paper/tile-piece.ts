/** A piece larger than a sheet, parted over several that overlap: which window of it each sheet shows, and where crosses join them. */
import type { Box } from '../draw/display-list.ts';
import { rectangle } from '../draw/display-list.ts';
import { difference } from '../shape/combine.ts';
import { add, modulo, type Point, type Polygon, turn } from '../shape/point.ts';
import { polygonArea, polygonBox, turnPolygon } from '../shape/polygon.ts';
import type { Orientation, PaperSize } from './paper-size.ts';
import type { PaperPiece } from './pieces.ts';
import { bandArea } from './sheet-frame.ts';
import { sheetOutline, sheetTurns } from './sheet-outline.ts';

/** How far neighbouring sheets show the same, in inches. */
export const OVERLAP = 0.5;
/** Arms of a join cross. */
export const CROSS = 0.12;

export interface Tiling {
  readonly piece: PaperPiece;
  readonly orientation: Orientation;
  /** How the piece is turned; then its box begins at the origin. */
  readonly turn: number;
  readonly by: Point;
  readonly columns: number;
  readonly rows: number;
  readonly tiles: readonly Tile[];
  /** In the frame of the turned piece. */
  readonly crosses: readonly JoinCross[];
}

export interface Tile {
  /** From 1, left to right, then from the top down, those without anything on them left out. */
  readonly number: number;
  readonly column: number;
  readonly row: number;
  /** What it shows, in the frame of the turned piece. */
  readonly window: Box;
}

export interface JoinCross {
  readonly letter: string;
  readonly at: Point;
}

/** The way that takes fewest sheets. */
export function tilePiece(piece: PaperPiece, paper: PaperSize): Tiling {
  const turns = sheetTurns(sheetOutline(piece.trim));
  const ways = turns.flatMap((degrees) =>
    (['portrait', 'landscape'] as const).map((orientation) => tiled(piece, paper, orientation, degrees)),
  );
  return ways.reduce((best, way) => (way.tiles.length < best.tiles.length ? way : best));
}

function tiled(piece: PaperPiece, paper: PaperSize, orientation: Orientation, degrees: number): Tiling {
  const turned = turnPolygon(piece.trim, degrees);
  const { min, max } = polygonBox(turned);
  const by: Point = [-min[0], -min[1]];
  const trim = turned.map((point) => add(point, by));
  const area = bandArea(paper, orientation);
  const [wide, tall] = [max[0] - min[0], max[1] - min[1]];
  const columns = countFor(wide, area.width);
  const rows = countFor(tall, area.height);
  // What is over is left at both ends, so that joins lie well within.
  const [left, bottom] = [(wide - span(columns, area.width)) / 2, (tall - span(rows, area.height)) / 2];
  const windows = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (__, column) => ({
      column,
      row,
      window: {
        left: left + column * (area.width - OVERLAP),
        bottom: bottom + (rows - 1 - row) * (area.height - OVERLAP),
        width: area.width,
        height: area.height,
      },
    })),
  ).flat();
  const shown = windows.filter(({ window }) => holds(window, trim));
  return {
    piece,
    orientation,
    turn: modulo(degrees, 360),
    by,
    columns,
    rows,
    tiles: shown.map((tile, i) => ({ ...tile, number: i + 1 })),
    crosses: crossesOf(shown.map(({ window }) => window)),
  };
}

const countFor = (size: number, room: number): number =>
  Math.max(1, Math.ceil((size - OVERLAP) / (room - OVERLAP) - 1e-9));
const span = (count: number, room: number): number => count * (room - OVERLAP) + OVERLAP;

/** Whether anything of the piece is seen in the window that no overlap shows elsewhere. */
function holds(window: Box, trim: Polygon): boolean {
  const box = rectangle(window.left, window.bottom, window.width, window.height);
  const bare = difference(box, trim).reduce((sum, each) => sum + polygonArea(each), 0);
  return bare < window.width * window.height - 1e-6;
}

/** Two in every overlap of two neighbours, a quarter of its length from its ends, each told once. */
function crossesOf(windows: readonly Box[]): readonly JoinCross[] {
  const found: Point[] = [];
  windows.forEach((a, i) => {
    for (const b of windows.slice(i + 1)) {
      const left = Math.max(a.left, b.left);
      const right = Math.min(a.left + a.width, b.left + b.width);
      const bottom = Math.max(a.bottom, b.bottom);
      const top = Math.min(a.bottom + a.height, b.bottom + b.height);
      const [wide, tall] = [right - left, top - bottom];
      // Windows that meet at a corner only are joined by way of the others.
      if (Math.min(wide, tall) < OVERLAP - 1e-9 || Math.max(wide, tall) < 2 * OVERLAP) continue;
      for (const part of [0.25, 0.75]) {
        found.push(wide > tall ? [left + wide * part, bottom + tall / 2] : [left + wide / 2, bottom + tall * part]);
      }
    }
  });
  return found.map((at, i) => ({ letter: letterOf(i), at }));
}

const letterOf = (i: number): string =>
  `${i >= 26 ? String.fromCharCode(96 + Math.floor(i / 26)) : ''}${String.fromCharCode(97 + (i % 26))}`;

/** A point of the piece in the frame of its tiling. */
export const inTiling = (tiling: Tiling, point: Point): Point => add(turn(point, tiling.turn), tiling.by);
