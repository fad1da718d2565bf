import type { ShapeSpec } from './shape-spec.ts';

export const rectangle: ShapeSpec = {
  shape: 'rectangle',
  title: 'Rectangle',
  about: 'width and height; a square needs only its width',
  alias: ['rect', 'square', 'oblong', 'strip'],
  sizes: [
    { size: 'width', label: 'Width', type: 'length', alias: ['w', 'wide', 'base', 'side', 'breadth', 'a'] },
    {
      size: 'height',
      label: 'Height',
      hint: 'empty: a square',
      type: 'length',
      optional: true,
      alias: ['h', 'high', 'tall', 'length', 'l', 'b'],
    },
  ],
  outline: ({ width = 0, height = width }) => [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ],
};
