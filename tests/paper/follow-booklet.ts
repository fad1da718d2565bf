/**
 * Follows a cutting booklet as a person would: it knows the cloth's width, the strips' heights and the marks as they are written, and
 * cuts rectangles along straight lines. What comes off is named as the booklet names it.
 */
import type { Booklet, BookletCut, BookletLength, BookletStrip } from '../../src/paper/booklet.ts';
import { convert, parseLength } from '../../src/quilt/measure.ts';
import type { LengthUnit } from '../../src/quilt/quilt.ts';
import { clip } from '../../src/shape/half-plane.ts';
import type { Point, Polygon } from '../../src/shape/point.ts';

export interface CutOff {
  readonly blank: string;
  readonly cloth: string;
  /** In the quilt's unit, on the cloth right side up, but for where it lay: x across the cloth, y along it. */
  readonly outline: Polygon;
  /** By how much its sides may fall short. */
  readonly lacks: number;
}

/** @returns all that comes off the cloth, strip by strip */
export function followBooklet(booklet: Booklet, quilt: LengthUnit, shown: LengthUnit): readonly CutOff[] {
  return booklet.sittings.flatMap(({ lengths }) => lengths.flatMap((length) => followLength(length, quilt, shown)));
}

function followLength(length: BookletLength, quilt: LengthUnit, shown: LengthUnit): readonly CutOff[] {
  const read = (text: string, end: number): number =>
    text === 'end' ? end : convert(parseLength(text).value, shown, quilt);
  return length.strips.flatMap((strip) => {
    if (strip.steps === null) return [];
    const across = strip.steps.firstCut === 'across' ? length.length.jobCloth.width : strip.steps.across;
    const pieces = followStrip(strip, across, read);
    return Array.from({ length: strip.times }, () => pieces).flatMap((each) =>
      each.map(({ blank, outline }) => ({
        blank,
        cloth: length.cloth.id,
        lacks: strip.lacks,
        outline: strip.steps!.firstCut === 'along' ? outline.map(([x, y]): Point => [y, x]).reverse() : outline,
      })),
    );
  });
}

interface Named {
  readonly blank: string;
  readonly outline: Polygon;
}

function followStrip(
  strip: BookletStrip,
  across: number,
  read: (text: string, end: number) => number,
): readonly Named[] {
  const height = read(strip.height, 0);
  let left: Polygon = [
    [0, 0],
    [across, 0],
    [across, height],
    [0, height],
  ];
  const found: Named[] = [];
  for (const cut of strip.cuts) {
    const [near, far] = [read(cut.near, across), read(cut.far, across)];
    const off = before(left, near, far, height);
    left = after(left, near, far, height);
    if (cut.kind === 'pair') {
      // The upper layer lies the other way round, its start on the strip's end.
      found.push({ blank: cut.blanks[0]!, outline: off });
      found.push({ blank: cut.blanks[1]!, outline: off.map(([x, y]): Point => [across - x, y]).reverse() });
      left = before(left, across - near, across - far, height);
    } else if (cut.kind === 'one') {
      found.push({ blank: cut.blanks[0]!, outline: off });
    } else {
      found.push(...followStack(cut, off, read));
    }
  }
  return found;
}

/** "along at 2 1/2: A1, trim to 3 × 2 1/2", from the near edge up. */
function followStack(cut: BookletCut, segment: Polygon, read: (text: string, end: number) => number): readonly Named[] {
  const top = Math.max(...segment.map(([, y]) => y));
  let low = 0;
  return cut.layers.map((words, i) => {
    const along = /^along at ([^:]+):/.exec(words)?.[1];
    const high = along === undefined ? top : read(along, top);
    const band = clip(clip(segment, { normal: [0, 1], reach: high }), { normal: [0, -1], reach: -low });
    low = high;
    return { blank: cut.blanks[i]!, outline: band };
  });
}

/** The line from (near, 0) to (far, height), its normal toward what comes after. */
function line(near: number, far: number, height: number): { readonly normal: Point; readonly reach: number } {
  const size = Math.hypot(height, near - far);
  const normal: Point = [height / size, (near - far) / size];
  return { normal, reach: near * normal[0] };
}

const before = (polygon: Polygon, near: number, far: number, height: number): Polygon =>
  clip(polygon, line(near, far, height));

function after(polygon: Polygon, near: number, far: number, height: number): Polygon {
  const { normal, reach } = line(near, far, height);
  return clip(polygon, { normal: [-normal[0], -normal[1]], reach: -reach });
}
