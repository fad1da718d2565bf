/** One row of the table of measured pieces: what was typed in it, and the piece that it means or why it means none. */
import { moveOutline, type Outline } from '../../shape/outline.ts';
import { outlineFault } from '../../shape/outline-fault.ts';
import { outlineArea, outlineBox } from '../../shape/outline-measures.ts';
import { add, scale, subtract } from '../../shape/point.ts';
import { formatLength } from '../format-length.ts';
import { convert, parseLength } from '../measure.ts';
import type { Facing, LengthUnit } from '../quilt.ts';
import { readPieceFacing } from './piece-facing.ts';
import { ShapeError, type ShapeSpec, type SizeSpec } from './shape-spec.ts';
import { SHAPES, shapeCalled } from './shapes.ts';

/** Everything as typed. */
export interface MeasuredRow {
  readonly shape: string;
  /** By the name of the size; those of other shapes are kept, in case she changes the shape back. */
  readonly sizes: Readonly<Record<string, string>>;
  readonly count: string;
  readonly name: string;
  readonly role: string;
  readonly facing: string;
}

export interface MeasuredPiece {
  /** In the quilt's unit, anticlockwise, the middle of its box at the origin. */
  readonly outline: Outline;
  readonly count: number;
  readonly name: string;
  readonly role: string;
  /** Outward is the piece's own up. */
  readonly facing: Facing;
}

export interface RowFault {
  /** "shape", "count", "facing", or the name of a size. */
  readonly field: string;
  readonly message: string;
}

export type RowRead = { readonly piece: MeasuredPiece } | { readonly faults: readonly RowFault[] };

/** The quilt's unit, and that in which a number without one is meant. */
export interface RowUnits {
  readonly quilt: LengthUnit;
  readonly shown: LengthUnit;
}

export const NEW_ROW: MeasuredRow = { shape: 'rectangle', sizes: {}, count: '1', name: '', role: '', facing: '' };

/** Whether nothing has been measured yet. */
export const isUntouched = (row: MeasuredRow): boolean =>
  row.name === '' &&
  shapeCalled(row.shape) !== undefined &&
  Object.values(row.sizes).every((text) => text.trim() === '');

/** What a row means. Every fault of it is told, each at its field. */
export function readRow(row: MeasuredRow, units: RowUnits): RowRead {
  const spec = shapeCalled(row.shape);
  if (spec === undefined) {
    const known = SHAPES.map(({ title }) => title.toLowerCase()).join('; ');
    return { faults: [{ field: 'shape', message: `“${row.shape}” is no shape known here; choose one of ${known}` }] };
  }
  const faults: RowFault[] = [];
  const attempt = <Value>(field: string, read: () => Value): Value | undefined => {
    try {
      return read();
    } catch (error) {
      const named = error instanceof ShapeError ? error.size : field;
      faults.push({ field: named, message: error instanceof Error ? error.message : String(error) });
      return undefined;
    }
  };
  const sizes: Record<string, number> = {};
  for (const size of spec.sizes) {
    const value = attempt(size.size, () => readSize(size, row.sizes[size.size] ?? '', units));
    if (value !== undefined) {
      sizes[size.size] = value;
    }
  }
  const count = attempt('count', () => readCount(row.count));
  const outline =
    faults.length > 0 ? undefined : attempt(spec.sizes[0]!.size, () => drawPiece(spec, sizes, units.quilt));
  const facing = attempt('facing', () => readPieceFacing(row.facing, outline));
  if (outline === undefined || count === undefined || facing === undefined) {
    return { faults };
  }
  return { piece: { outline, count, name: row.name.trim(), role: row.role.trim(), facing } };
}

function readSize(size: SizeSpec, text: string, units: RowUnits): number | undefined {
  if (text.trim() === '') {
    if (size.optional !== true) {
      throw new RangeError(`${size.label.toLowerCase()} is missing`);
    }
    return undefined;
  }
  if (size.type === 'angle' || size.type === 'count') {
    const value = Number(text.replace(',', '.').replace('°', '').trim());
    if (!(value > 0) || (size.type === 'count' && !Number.isInteger(value))) {
      throw new RangeError(
        `expected ${size.type === 'count' ? 'a whole number' : 'degrees'} above zero; found “${text}”`,
      );
    }
    return value;
  }
  const { value, unit } = parseLength(text);
  if (size.type === 'length' && !(value > 0)) {
    throw new RangeError(`expected a length above zero; found “${text}”`);
  }
  return convert(value, unit ?? units.shown, units.quilt);
}

function readCount(text: string): number {
  const value = text.trim() === '' ? 1 : Number(text);
  if (!Number.isInteger(value) || value < 1 || value > 9999) {
    throw new RangeError(`expected a whole number from 1 to 9999; found “${text}”`);
  }
  return value;
}

function drawPiece(spec: ShapeSpec, sizes: Readonly<Record<string, number>>, unit: LengthUnit): Outline {
  const outline = spec.outline(sizes, (length) => formatLength(length, unit, { denominator: 16, decimals: 1 }));
  const fault = outlineFault(outline);
  if (fault !== null || outlineArea(outline) <= 0) {
    throw new RangeError(fault ?? 'these sizes turn the shape inside out');
  }
  const { min, max } = outlineBox(outline);
  const middle = scale(add(min, max), 0.5);
  return moveOutline(outline, (corner) => subtract(corner, middle));
}
