/** Rows of measured pieces from a spreadsheet's cells or a CSV file. */
import Papa from 'papaparse';
import { type MeasuredRow, NEW_ROW } from './measured-row.ts';
import type { ShapeSpec } from './shape-spec.ts';
import { SHAPES, shapeCalled } from './shapes.ts';

export interface TableRead {
  readonly rows: readonly MeasuredRow[];
  /** What was left out of what was pasted, in words for a person. */
  readonly notes: readonly string[];
}

/** More than any quilt has kinds of pieces; a whole book of accounts pasted by mistake is more. */
const ROWS_MOST = 400;

const COLUMNS: Readonly<Record<'shape' | 'count' | 'name' | 'role' | 'facing', readonly string[]>> = {
  shape: ['shape', 'kind', 'form', 'type'],
  count: ['how many', 'count', 'number of', 'quantity', 'qty', 'pieces', 'pcs', 'times', '×', 'x', '#'],
  name: ['name', 'number', 'piece', 'label', 'patch', 'no', 'no.', 'id'],
  role: ['role', 'colour', 'color', 'fabric', 'cloth', 'place'],
  facing: ['facing', 'print points', 'its print points', 'print', 'direction'],
};

type Column = keyof typeof COLUMNS;

/** A column as its heading tells it: one of those every shape has, or a size by whatever word, perhaps with a unit. */
type Heading =
  | { readonly column: Column }
  | { readonly size: string; readonly unit: string }
  | { readonly unknown: string };

/**
 * Tabs, semicolons or commas between the cells, quotes round cells where needed. A first row of headings is recognised and
 * frees the order of the columns. Without one: the shape, three sizes, how many, name, role, facing; or, where the first
 * cell is no shape, a rectangle's width and height, how many, name, role, facing. Cells are not read here but kept as
 * written, so that a bad row is there to be mended.
 */
export function readTable(text: string): TableRead {
  const { data } = Papa.parse<string[]>(text.replace(/^﻿/, ''), {
    skipEmptyLines: 'greedy',
    delimitersToGuess: ['\t', ';', ',', '|'],
  });
  const cells = data.map((row) => row.map((cell) => cell.trim()));
  const headings = headingsOf(cells[0] ?? []);
  const body = headings === null ? cells : cells.slice(1);
  const notes = (headings ?? []).flatMap((heading) =>
    'unknown' in heading && heading.unknown !== '' ? [`The column “${heading.unknown}” is not used.`] : [],
  );
  if (body.length > ROWS_MOST) {
    notes.push(`Only the first ${ROWS_MOST} of ${body.length} rows were taken.`);
  }
  const rows = body.slice(0, ROWS_MOST).map((row) => (headings === null ? unheadedRow(row) : headedRow(row, headings)));
  return { rows, notes };
}

/** Null where the first row is no headings: fewer than two of its cells are words that head a column. */
function headingsOf(cells: readonly string[]): readonly Heading[] | null {
  const headings = cells.map(headingOf);
  const known = headings.filter((heading) => !('unknown' in heading)).length;
  const hasNumber = cells.some((cell) => /^[-−]?[\d.,]/.test(cell));
  const isShape = shapeCalled(cells[0] ?? '') !== undefined;
  return known >= 2 && !hasNumber && !isShape ? headings : null;
}

function headingOf(cell: string): Heading {
  const [, words = '', unit = ''] =
    /^(.*?)\s*(?:[([]\s*(in|inch|inches|cm|mm|yd|m|["″])\s*[)\]])?$/i.exec(cell.toLowerCase()) ?? [];
  const column = (Object.keys(COLUMNS) as Column[]).find((one) => COLUMNS[one].includes(words));
  if (column !== undefined) {
    return { column };
  }
  const isSize = SHAPES.some((shape) => sizeCalled(shape, words) !== undefined);
  return isSize ? { size: words, unit } : { unknown: cell };
}

function headedRow(cells: readonly string[], headings: readonly Heading[]): MeasuredRow {
  const own = (column: Column, otherwise: string): string => {
    const at = headings.findIndex((heading) => 'column' in heading && heading.column === column);
    return cells[at] ?? otherwise;
  };
  const word = own('shape', NEW_ROW.shape) || NEW_ROW.shape;
  const shape = shapeCalled(word);
  const sizes: Record<string, string> = { ...impliedSizes(word) };
  headings.forEach((heading, at) => {
    const cell = cells[at] ?? '';
    // Of a shape that is not known a size is kept under every name it may have, so that it is there once the shape is mended.
    const shapes = shape === undefined ? SHAPES : [shape];
    const names = 'size' in heading && cell !== '' ? shapes.flatMap((one) => sizeCalled(one, heading.size) ?? []) : [];
    for (const size of names.filter((one) => sizes[one] === undefined)) {
      sizes[size] = withUnit(cell, 'size' in heading ? heading.unit : '');
    }
  });
  return {
    shape: shape?.shape ?? word,
    sizes,
    count: own('count', NEW_ROW.count),
    name: own('name', ''),
    role: own('role', ''),
    facing: own('facing', ''),
  };
}

function unheadedRow(cells: readonly string[]): MeasuredRow {
  const [first = '', ...rest] = cells;
  const isNumber = /^[-−]?[\d.,½¼¾⅛⅜⅝⅞]/.test(first);
  const shape = isNumber ? SHAPES[0]! : shapeCalled(first);
  const taken = isNumber ? cells.slice(0, 2) : rest.slice(0, 3);
  const [count = '', name = '', role = '', facing = ''] = isNumber ? cells.slice(2) : rest.slice(3);
  const sizes = Object.fromEntries(
    (shape?.sizes ?? []).slice(0, taken.length).map(({ size }, i) => [size, taken[i]!] as const),
  );
  return {
    shape: shape?.shape ?? first,
    sizes: { ...impliedSizes(first), ...Object.fromEntries(Object.entries(sizes).filter(([, cell]) => cell !== '')) },
    count: count || NEW_ROW.count,
    name,
    role,
    facing,
  };
}

/** The name of the size that a word means for a shape: exactly first, then by its label, then by another word for it. */
function sizeCalled({ sizes }: ShapeSpec, word: string): string | undefined {
  const found =
    sizes.find(({ size }) => size === word) ??
    sizes.find(({ label }) => label.toLowerCase() === word) ??
    sizes.find(({ alias }) => alias.includes(word));
  return found?.size;
}

/** A hexagon need not say that it has six sides. */
function impliedSizes(word: string): Readonly<Record<string, string>> {
  const sides = { pentagon: '5', hexagon: '6', octagon: '8' }[word.trim().toLowerCase()];
  return sides === undefined ? {} : { corners: sides };
}

/** A bare number under a heading with a unit is meant in that unit. */
const withUnit = (cell: string, unit: string): string =>
  unit === '' || /[\p{L}"″”°]/u.test(cell) ? cell : `${cell} ${unit}`;
