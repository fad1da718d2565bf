import type { Block, Cloth, Facing, Patch, Quilt, Repeat, Role, Unit } from '../../src/quilt/quilt.ts';
import type { Outline } from '../../src/shape/outline.ts';
import { fromUp, type Point, scale } from '../../src/shape/point.ts';

/** A cloth of one print kind, 42 in wide, sold by the quarter yard. */
export function clothOf(print: Cloth['print'], more: Partial<Cloth> = {}): Cloth {
  return { id: print, name: print, colour: '#888888', print, width: 42, step: 9, ...more };
}

export function roleOf(id: string, facing: Facing = { to: 'free' }, more: Partial<Role> = {}): Role {
  return { id, name: id, facing, ...more };
}

/** One unit of one patch with role "r". */
export function unitOf(outline: Outline, repeat: Repeat, more: Partial<Unit> = {}): Unit {
  return { id: 'A', paper: false, repeat, patches: [patchOf(1, outline)], ...more };
}

export const patchOf = (number: number, outline: Outline, more: Partial<Patch> = {}): Patch => ({
  number,
  role: 'r',
  outline,
  ...more,
});

/** A quilt of one block, one role "r" and one cloth, unless told otherwise. */
export function quiltOf(units: readonly Unit[], facing: Facing, cloth: Cloth, more: Partial<Quilt> = {}): Quilt {
  return {
    format: 'yardwright',
    version: 1,
    name: 'Sample',
    unit: 'in',
    allowance: 0.25,
    room: 0.25,
    ruler: 0.125,
    squaring: 0,
    spares: 0,
    blocks: [blockOf(units)],
    joined: [],
    roles: [roleOf('r', facing)],
    cloths: [cloth],
    schemes: [{ id: 's', name: 'Dawn', cloths: { r: cloth.id } }],
    scheme: 's',
    ...more,
  };
}

export const blockOf = (units: readonly Unit[], more: Partial<Block> = {}): Block => ({
  id: 'b',
  name: 'Block',
  count: 1,
  units,
  ...more,
});

/** Wedge of a ring of n, its middle up, between two radii, with arcs. */
export function ringWedge(n: number, inner: number, outer: number): Outline {
  const at = (radius: number, degrees: number): Point => scale(fromUp(degrees), radius);
  const half = 180 / n;
  return [
    at(inner, -half),
    at(outer, -half),
    { arc: { radius: outer, turn: 'anticlockwise' } },
    at(outer, half),
    at(inner, half),
    { arc: { radius: inner, turn: 'clockwise' } },
  ];
}

/** An axis-aligned rectangle about a middle. */
export function oblong(x: number, y: number, width: number, height: number): Outline {
  return [
    [x - width / 2, y - height / 2],
    [x + width / 2, y - height / 2],
    [x + width / 2, y + height / 2],
    [x - width / 2, y + height / 2],
  ];
}

/** A triangle with no symmetry, above the centre and to the right. */
export const crooked: Outline = [
  [1, 2],
  [4, 3],
  [2, 6],
];
