import type { ShapeSpec } from './shape-spec.ts';

export const trapezium: ShapeSpec = {
  shape: 'trapezium',
  title: 'Trapezium',
  about:
    'two level sides, the height between them, and how far the upper stands right of the lower, middle over middle',
  alias: ['trapezoid', 'trap'],
  sizes: [
    { size: 'bottom', label: 'Bottom', type: 'length', alias: ['base', 'width', 'w', 'lower', 'a'] },
    { size: 'top', label: 'Top', type: 'length', alias: ['upper', 'b'] },
    { size: 'height', label: 'Height', type: 'length', alias: ['h', 'high', 'tall', 'length', 'c'] },
    {
      size: 'lean',
      label: 'Top leans right by',
      hint: 'empty: not at all',
      type: 'lean',
      optional: true,
      alias: ['lean', 'offset'],
    },
  ],
  outline: ({ bottom = 0, top = 0, height = 0, lean = 0 }) => {
    const middle = bottom / 2 + lean;
    return [
      [0, 0],
      [bottom, 0],
      [middle + top / 2, height],
      [middle - top / 2, height],
    ];
  },
};

export const parallelogram: ShapeSpec = {
  shape: 'parallelogram',
  title: 'Parallelogram',
  about: 'base, height square to it, and how far the top stands right of the base',
  alias: ['diamond', 'rhombus', 'rhomboid'],
  sizes: [
    { size: 'base', label: 'Base', type: 'length', alias: ['width', 'w', 'bottom', 'a'] },
    { size: 'height', label: 'Height', type: 'length', alias: ['h', 'high', 'tall', 'b'] },
    {
      size: 'lean',
      label: 'Leans right by',
      hint: 'less than zero: to the left',
      type: 'lean',
      alias: ['lean', 'offset', 'c'],
    },
  ],
  outline: ({ base = 0, height = 0, lean = 0 }) => [
    [0, 0],
    [base, 0],
    [base + lean, height],
    [lean, height],
  ],
};

export const kite: ShapeSpec = {
  shape: 'kite',
  title: 'Kite',
  about: 'width across, and how far the upper and the lower tip stand from there',
  alias: ['deltoid'],
  sizes: [
    { size: 'width', label: 'Width', type: 'length', alias: ['w', 'across', 'base', 'a'] },
    { size: 'upper', label: 'Up to the tip', type: 'length', alias: ['top', 'up', 'height', 'b'] },
    { size: 'lower', label: 'Down to the tip', type: 'length', alias: ['bottom', 'down', 'c'] },
  ],
  outline: ({ width = 0, upper = 0, lower = 0 }) => [
    [0, -lower],
    [width / 2, 0],
    [0, upper],
    [-width / 2, 0],
  ],
};
