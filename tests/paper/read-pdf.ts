/** Reads a PDF back with pdf.js, which shares no code with what wrote it: lines, boxes, texts and faces, in points from the lower left. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export type Point = readonly [number, number];

export interface PageRead {
  readonly width: number;
  readonly height: number;
  /** Each run of a path that is stroked or filled: its corners, ends of curves among them. */
  readonly runs: readonly { readonly corners: readonly Point[]; readonly closed: boolean }[];
  readonly texts: readonly TextRead[];
}

export interface TextRead {
  readonly text: string;
  /** Where its first letter stands. */
  readonly at: Point;
  readonly size: number;
  /** Of the four corners of the oblong that it takes up. */
  readonly corners: readonly Point[];
  readonly middle: Point;
}

export interface PdfRead {
  readonly pages: readonly PageRead[];
  /** Faces by name: whether the file holds them. */
  readonly faces: ReadonlyMap<string, boolean>;
  /** Signs that were shown by a glyph of their own, with a width. */
  readonly signs: ReadonlySet<string>;
}

type Matrix = readonly [number, number, number, number, number, number];
interface Glyph {
  readonly unicode: string;
  readonly width: number;
}

/** As pdf.js 5 tells the steps of a path. */
const STEPS = { move: 0, line: 1, curve: 2, quadratic: 3, close: 4 } as const;

export async function readPdf(bytes: Uint8Array): Promise<PdfRead> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const faces = new Map<string, boolean>();
  const signs = new Set<string>();
  const pages: PageRead[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const [left, bottom, right, top] = page.view as [number, number, number, number];
    const list = await page.getOperatorList();
    const runs: { corners: Point[]; closed: boolean }[] = [];
    const stack: Matrix[] = [];
    let matrix: Matrix = [1, 0, 0, 1, 0, 0];
    list.fnArray.forEach((operator, i) => {
      const args = list.argsArray[i] as unknown[];
      if (operator === OPS.save) stack.push(matrix);
      else if (operator === OPS.restore) matrix = stack.pop() ?? matrix;
      else if (operator === OPS.transform) matrix = times(matrix, args as unknown as Matrix);
      else if (operator === OPS.constructPath && args[0] !== OPS.endPath) runs.push(...runsOf(args, matrix));
      else if (operator === OPS.setFont) {
        const font = page.commonObjs.get(args[0] as string) as { name: string; missingFile?: boolean };
        faces.set(font.name, font.missingFile !== true);
      } else if (operator === OPS.showText) {
        for (const glyph of args[0] as (Glyph | number)[]) {
          if (typeof glyph === 'object' && glyph.width > 0) signs.add(glyph.unicode);
        }
      }
    });
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [textOf(item)] : []));
    pages.push({ width: right - left, height: top - bottom, runs, texts });
  }
  await document.destroy();
  return { pages, faces, signs };
}

function runsOf(args: readonly unknown[], matrix: Matrix): { corners: Point[]; closed: boolean }[] {
  const found: { corners: Point[]; closed: boolean }[] = [];
  const [data] = args[1] as [ArrayLike<number> | null];
  if (data === null) return found;
  const at = (i: number): Point => applied(matrix, [data[i]!, data[i + 1]!]);
  for (let i = 0; i < data.length; ) {
    const step = data[i++];
    if (step === STEPS.move) found.push({ corners: [at(i)], closed: false });
    if (step === STEPS.line) found.at(-1)!.corners.push(at(i));
    if (step === STEPS.curve) found.at(-1)!.corners.push(at(i + 4));
    if (step === STEPS.close) found.at(-1)!.closed = true;
    i += step === STEPS.close ? 0 : step === STEPS.curve ? 6 : step === STEPS.quadratic ? 4 : 2;
  }
  return found;
}

function textOf(item: { str: string; transform: number[]; width: number }): TextRead {
  const [a, b, , , x, y] = item.transform as unknown as Matrix;
  const size = Math.hypot(a, b);
  const [along, up]: [Point, Point] = [
    [a / size, b / size],
    [-b / size, a / size],
  ];
  const corner = (right: number, high: number): Point => [
    x + along[0] * right + up[0] * high,
    y + along[1] * right + up[1] * high,
  ];
  const corners = [
    corner(0, -0.2 * size),
    corner(item.width, -0.2 * size),
    corner(item.width, 0.75 * size),
    corner(0, 0.75 * size),
  ];
  return { text: item.str, at: [x, y], size, corners, middle: corner(item.width / 2, 0.35 * size) };
}

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

const applied = (m: Matrix, [x, y]: Point): Point => [m[0] * x + m[2] * y + m[4], m[1] * x + m[3] * y + m[5]];
