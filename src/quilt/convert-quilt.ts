/** Changes the unit that a quilt's bare numbers are in. */
import type { Outline } from '../shape/outline.ts';
import { mapFormLengths } from './forms/forms.ts';
import { convert, parseLength } from './measure.ts';
import type { Block, Cloth, JoinedLength, Length, LengthUnit, Quilt, Unit } from './quilt.ts';

/**
 * The same quilt with its bare numbers in `unit`. Lengths written with a unit of their own stay as written, so that going to
 * centimetres and back gives them back to the letter; bare numbers come back within 1e-9.
 */
export function convertQuilt(quilt: Quilt, unit: LengthUnit): Quilt {
  if (quilt.unit === unit) {
    return quilt;
  }
  const number = (value: number): number => convert(value, quilt.unit, unit);
  const length = (value: Length): Length => {
    if (typeof value === 'number') {
      return number(value);
    }
    return parseLength(value).unit === null ? `${value} ${quilt.unit}` : value;
  };
  return {
    ...quilt,
    unit,
    allowance: length(quilt.allowance),
    room: length(quilt.room),
    ruler: length(quilt.ruler),
    squaring: length(quilt.squaring),
    ...(quilt.keep !== undefined && { keep: length(quilt.keep) }),
    ...(quilt.finished && {
      finished: { width: length(quilt.finished.width), length: length(quilt.finished.length) },
    }),
    blocks: quilt.blocks.map((block) => convertBlock(block, length, number)),
    joined: quilt.joined.map((joined) => convertJoined(joined, length)),
    roles: quilt.roles.map((role) => withLength(role, 'room', length)),
    cloths: quilt.cloths.map((cloth) => convertCloth(cloth, length)),
  };
}

type ConvertLength = (value: Length) => Length;
type ConvertNumber = (value: number) => number;

function convertBlock(block: Block, length: ConvertLength, number: ConvertNumber): Block {
  return {
    ...block,
    ...(block.form && { form: mapFormLengths(block.form, length) }),
    ...(block.own && {
      own: Object.fromEntries(
        Object.entries(block.own).map(([patch, own]) => [patch, withLength(own, 'room', length)]),
      ),
    }),
    ...(block.units && { units: block.units.map((unit) => convertUnit(unit, length, number)) }),
  };
}

function convertUnit(unit: Unit, length: ConvertLength, number: ConvertNumber): Unit {
  const patches = unit.patches.map((patch) => ({
    ...withLength(patch, 'room', length),
    outline: convertOutline(patch.outline, number),
  }));
  return { ...unit, patches };
}

function convertOutline(outline: Outline, number: ConvertNumber): Outline {
  return outline.map((entry) =>
    'arc' in entry
      ? { arc: { ...entry.arc, radius: number(entry.arc.radius) } }
      : ([number(entry[0]), number(entry[1])] as const),
  );
}

function convertJoined(joined: JoinedLength, length: ConvertLength): JoinedLength {
  return {
    ...withLength(withLength(joined, 'shortest', length), 'overhang', length),
    length: length(joined.length),
    width: length(joined.width),
    join: length(joined.join),
  };
}

function convertCloth(cloth: Cloth, length: ConvertLength): Cloth {
  return {
    ...withLength(withLength(cloth, 'step', length), 'repeat', length),
    width: length(cloth.width),
    ...(cloth.pieces && {
      pieces: cloth.pieces.map((piece) => ({
        ...piece,
        width: length(piece.width),
        length: length(piece.length),
      })),
    }),
  };
}

/** Converts a length that may be absent, and leaves it absent then. */
function withLength<Key extends string, Holder extends { readonly [K in Key]?: Length }>(
  holder: Holder,
  key: Key,
  length: ConvertLength,
): Holder {
  const value = holder[key];
  return value === undefined ? holder : { ...holder, [key]: length(value) };
}
