import type { OutlineEntry } from '../../shape/outline.ts';
import { fromUp, type Point, scale } from '../../shape/point.ts';
import { ShapeError, type ShapeSpec } from './shape-spec.ts';

/** A wedge of a ring, its outer arc at the top; without an inner radius, a slice with its tip at the centre. */
export const ringWedge: ShapeSpec = {
  shape: 'wedge',
  title: 'Wedge of a ring',
  about: 'the ring’s radii, and either how many wedges go all round or the wedge’s angle',
  alias: ['ring wedge', 'wedge of a ring', 'arc', 'slice'],
  sizes: [
    { size: 'outer', label: 'Outer radius', type: 'length', alias: ['outer', 'outside radius', 'radius', 'r'] },
    {
      size: 'inner',
      label: 'Inner radius',
      hint: 'empty: a slice, down to the centre',
      type: 'length',
      optional: true,
      alias: ['inner', 'inside radius'],
    },
    {
      size: 'ring',
      label: 'Wedges all round',
      type: 'count',
      optional: true,
      alias: ['wedges', 'in the ring', 'ring'],
    },
    {
      size: 'angle',
      label: 'or its angle',
      hint: 'degrees',
      type: 'angle',
      optional: true,
      alias: ['angle', 'degrees'],
    },
  ],
  outline: ({ outer = 0, inner = 0, ring, angle }, write) => {
    if ((ring === undefined) === (angle === undefined)) {
      throw new ShapeError(
        'ring',
        ring === undefined
          ? 'say how many wedges go all round, or the wedge’s angle'
          : 'say either how many wedges go all round or the angle, not both',
      );
    }
    if (ring !== undefined && (ring < 2 || ring > 360)) {
      throw new ShapeError('ring', `expected from 2 to 360 wedges all round; found ${ring}`);
    }
    if (angle !== undefined && angle > 180) {
      throw new ShapeError('angle', `expected an angle up to 180 degrees; found ${angle}`);
    }
    if (inner >= outer) {
      throw new ShapeError(
        'inner',
        `the inner radius must be less than the outer, ${write(outer)}; found ${write(inner)}`,
      );
    }
    const half = (angle ?? 360 / ring!) / 2;
    const at = (radius: number, degrees: number): Point => scale(fromUp(degrees), radius);
    const bow: OutlineEntry = { arc: { radius: outer, turn: 'anticlockwise' } };
    const hollow: OutlineEntry = { arc: { radius: inner, turn: 'clockwise' } };
    return inner === 0
      ? [[0, 0], at(outer, -half), bow, at(outer, half)]
      : [at(inner, -half), at(outer, -half), bow, at(outer, half), at(inner, half), hollow];
  },
};
