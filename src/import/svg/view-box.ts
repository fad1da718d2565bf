/** How the numbers of an svg element become inches: its width and height, viewBox, preserveAspectRatio. */
import { followedBy, type Matrix, moving, numbersOf, scaling } from './matrix.ts';
import { PIXELS_AN_INCH, parseSvgLength } from './svg-length.ts';

export interface Viewport {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Four numbers with a size; null where there are none. */
export function parseViewBox(text: string | undefined): Viewport | null {
  const [x, y, width, height, more] = numbersOf((text ?? '').slice(0, 200));
  if (height === undefined || more !== undefined || !(width! > 0) || !(height > 0)) return null;
  return { x: x!, y: y!, width: width!, height };
}

/**
 * From the viewBox's numbers to those of the viewport, as SVG 2 says in 8.2: by default both ways alike, as large as fits,
 * in the middle.
 */
export function viewBoxMatrix(box: Viewport, port: Viewport, aspect: string | undefined): Matrix {
  const [align = 'xMidYMid', slice] = (aspect ?? '')
    .trim()
    .replace(/^defer\s+/, '')
    .split(/\s+/)
    .filter((word) => word !== '');
  let x = port.width / box.width;
  let y = port.height / box.height;
  if (align === 'none') {
    return followedBy(followedBy(moving(-box.x, -box.y), scaling(x, y)), moving(port.x, port.y));
  }
  x = y = slice === 'slice' ? Math.max(x, y) : Math.min(x, y);
  const left = part(align.slice(1, 4)) * (port.width - box.width * x);
  const top = part(align.slice(5, 8)) * (port.height - box.height * y);
  return followedBy(followedBy(moving(-box.x, -box.y), scaling(x, y)), moving(port.x + left, port.y + top));
}

const part = (word: string): number => (word === 'Min' ? 0 : word === 'Max' ? 1 : 0.5);

export interface PageSize {
  /** From user units to inches, y up. */
  readonly matrix: Matrix;
  /** In inches; null where the file does not say. */
  readonly width: number | null;
  readonly height: number | null;
  /** physical: in a ruler's units. pixels: at 96 to the inch. none: not said at all. */
  readonly said: 'physical' | 'pixels' | 'none';
}

/** The page of the outermost svg element. Where only one of width and height is said, the viewBox gives the other. */
export function pageSize(attributes: ReadonlyMap<string, string>): PageSize {
  const box = parseViewBox(attributes.get('viewBox'));
  const given = (name: string) => {
    const length = parseSvgLength(attributes.get(name));
    return length !== null && length.inches > 0 ? length : null;
  };
  const [width, height] = [given('width'), given('height')];
  const toInches = scaling(1 / PIXELS_AN_INCH, -1 / PIXELS_AN_INCH);
  const said = width === null && height === null ? 'none' : (width ?? height)!.physical ? 'physical' : 'pixels';
  if (box === null) {
    return { matrix: toInches, width: width?.inches ?? null, height: height?.inches ?? null, said };
  }
  if (said === 'none') {
    return { matrix: toInches, width: null, height: null, said };
  }
  const wide = width?.inches ?? (height!.inches * box.width) / box.height;
  const high = height?.inches ?? (width!.inches * box.height) / box.width;
  const port = { x: 0, y: 0, width: wide * PIXELS_AN_INCH, height: high * PIXELS_AN_INCH };
  const matrix = followedBy(viewBoxMatrix(box, port, attributes.get('preserveAspectRatio')), toInches);
  return { matrix, width: wide, height: high, said };
}
