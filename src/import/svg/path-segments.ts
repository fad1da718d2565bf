/** Every basic shape as one list of lines, arcs and cubic curves in user units, before any transform. */
import svgpath from 'svgpath';
import type { Point } from '../../shape/point.ts';
import { numbersOf } from './matrix.ts';
import type { XmlElement } from './read-xml.ts';
import { userLength } from './svg-length.ts';

export type Segment =
  | { readonly kind: 'line'; readonly to: Point }
  | { readonly kind: 'curve'; readonly first: Point; readonly second: Point; readonly to: Point }
  | {
      readonly kind: 'arc';
      readonly radii: Point;
      /** Degrees that the ellipse's first axis is turned from x. */
      readonly turn: number;
      readonly large: boolean;
      /** In the direction of growing angles, which is clockwise to the eye since y runs down. */
      readonly sweep: boolean;
      readonly to: Point;
    };

export interface UserRun {
  readonly start: Point;
  readonly segments: readonly Segment[];
  readonly closed: boolean;
}

export interface UserShape {
  readonly runs: readonly UserRun[];
  /** What could not be read, in words for a person; the rest is there. */
  readonly fault: string | null;
}

const MOST_SEGMENTS = 60_000;
const NOTHING: UserShape = { runs: [], fault: null };

/** The shape of an element; null where it is no basic shape. */
export function shapeOf(element: XmlElement): UserShape | null {
  switch (element.name) {
    case 'path':
      return pathShape(element.attributes.get('d') ?? '');
    case 'rect':
      return rectangle(element);
    case 'circle':
    case 'ellipse':
      return ellipse(element);
    case 'line':
      return withNumbers(element, ['x1', 'y1', 'x2', 'y2'], ([x1, y1, x2, y2]) => open([x1!, y1!], [x2!, y2!]));
    case 'polyline':
    case 'polygon':
      return points(element);
    default:
      return null;
  }
}

function withNumbers(
  element: XmlElement,
  names: readonly string[],
  make: (values: readonly number[]) => UserShape,
): UserShape {
  const values = names.map((name) => (element.attributes.has(name) ? userLength(element.attributes.get(name)) : 0));
  const missing = names.find((_, i) => values[i] === null);
  return missing === undefined
    ? make(values as number[])
    : {
        runs: [],
        fault: `its ${missing} is “${(element.attributes.get(missing) ?? '').slice(0, 40)}”, which says no length; write it as a number`,
      };
}

function open(start: Point, ...rest: readonly Point[]): UserShape {
  return { runs: [{ start, segments: rest.map((to) => ({ kind: 'line', to })), closed: false }], fault: null };
}

function closed(start: Point, segments: readonly Segment[]): UserShape {
  return { runs: [{ start, segments, closed: true }], fault: null };
}

function rectangle(element: XmlElement): UserShape {
  return withNumbers(element, ['x', 'y', 'width', 'height'], ([x, y, width, height]) => {
    if (!(width! > 0 && height! > 0)) return NOTHING;
    const [right, bottom] = [x! + width!, y! + height!];
    const given = [userLength(element.attributes.get('rx')), userLength(element.attributes.get('ry'))];
    const rx = Math.min(Math.max(0, given[0] ?? given[1] ?? 0), width! / 2);
    const ry = Math.min(Math.max(0, given[1] ?? given[0] ?? 0), height! / 2);
    if (rx === 0 || ry === 0) {
      return closed([x!, y!], lines([right, y!], [right, bottom], [x!, bottom]));
    }
    const bend = (to: Point): Segment => ({ kind: 'arc', radii: [rx, ry], turn: 0, large: false, sweep: true, to });
    return closed(
      [x! + rx, y!],
      [
        ...lines([right - rx, y!]),
        bend([right, y! + ry]),
        ...lines([right, bottom - ry]),
        bend([right - rx, bottom]),
        ...lines([x! + rx, bottom]),
        bend([x!, bottom - ry]),
        ...lines([x!, y! + ry]),
        bend([x! + rx, y!]),
      ],
    );
  });
}

const lines = (...ends: readonly Point[]): readonly Segment[] => ends.map((to) => ({ kind: 'line', to }));

function ellipse(element: XmlElement): UserShape {
  const radii = element.name === 'circle' ? ['r', 'r'] : ['rx', 'ry'];
  return withNumbers(element, ['cx', 'cy', ...radii], ([x, y, rx, ry]) => {
    if (!(rx! > 0 && ry! > 0)) return NOTHING;
    const quarter = (to: Point): Segment => ({
      kind: 'arc',
      radii: [rx!, ry!],
      turn: 0,
      large: false,
      sweep: true,
      to,
    });
    const [cx, cy] = [x!, y!];
    return closed(
      [cx + rx!, cy],
      [quarter([cx, cy + ry!]), quarter([cx - rx!, cy]), quarter([cx, cy - ry!]), quarter([cx + rx!, cy])],
    );
  });
}

function points(element: XmlElement): UserShape {
  const values = numbersOf(element.attributes.get('points') ?? '');
  const corners = Array.from(
    { length: Math.floor(values.length / 2) },
    (_, i): Point => [values[2 * i]!, values[2 * i + 1]!],
  );
  const [start, ...rest] = corners.slice(0, MOST_SEGMENTS);
  if (start === undefined) return NOTHING;
  return element.name === 'polygon' ? closed(start, lines(...rest)) : open(start, ...rest);
}

/** Path data by svgpath (MIT), made absolute and without shorthands. Read as far as it can be, as browsers do. */
function pathShape(data: string): UserShape {
  const path = svgpath(data).abs().unshort();
  const said = (path as unknown as { readonly err: string }).err;
  const runs: { start: Point; segments: Segment[]; closed: boolean }[] = [];
  let at: Point = [0, 0];
  let count = 0;
  const add = (segment: Segment): void => {
    let run = runs.at(-1);
    if (run === undefined || run.closed) {
      // After a Z a new run goes on from where the last one began.
      run = { start: run?.start ?? [0, 0], segments: [], closed: false };
      runs.push(run);
    }
    run.segments.push(segment);
    at = segment.to;
  };
  (path as unknown as { segments: readonly (readonly [string, ...number[]])[] }).segments.forEach(([letter, ...v]) => {
    if (++count > MOST_SEGMENTS) return;
    switch (letter) {
      case 'M':
        at = [v[0]!, v[1]!];
        runs.push({ start: at, segments: [], closed: false });
        break;
      case 'L':
        add({ kind: 'line', to: [v[0]!, v[1]!] });
        break;
      case 'H':
        add({ kind: 'line', to: [v[0]!, at[1]] });
        break;
      case 'V':
        add({ kind: 'line', to: [at[0], v[0]!] });
        break;
      case 'Q':
        add(fromQuadratic(at, [v[0]!, v[1]!], [v[2]!, v[3]!]));
        break;
      case 'C':
        add({ kind: 'curve', first: [v[0]!, v[1]!], second: [v[2]!, v[3]!], to: [v[4]!, v[5]!] });
        break;
      case 'A':
        add({
          kind: 'arc',
          radii: [Math.abs(v[0]!), Math.abs(v[1]!)],
          turn: v[2]!,
          large: v[3] === 1,
          sweep: v[4] === 1,
          to: [v[5]!, v[6]!],
        });
        break;
      case 'Z': {
        const run = runs.at(-1);
        if (run !== undefined) {
          run.closed = true;
          at = run.start;
        }
        break;
      }
    }
  });
  const fault =
    said === '' || said === undefined
      ? null
      : `its path cannot be read to the end (${said.replace('SvgPath: ', '')}); it is taken as far as it goes`;
  return { runs: runs.filter((run) => run.segments.length > 0), fault };
}

/** The same curve as a cubic. */
function fromQuadratic(from: Point, control: Point, to: Point): Segment {
  const near = (end: Point): Point => [
    end[0] + (2 / 3) * (control[0] - end[0]),
    end[1] + (2 / 3) * (control[1] - end[1]),
  ];
  return { kind: 'curve', first: near(from), second: near(to), to };
}
