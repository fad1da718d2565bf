import { ShapeError, type ShapeSpec } from './shape-spec.ts';

/** A triangle by its sides: the first lies at the bottom, the others follow anticlockwise. */
export const triangleBySides: ShapeSpec = {
  shape: 'triangle-sides',
  title: 'Triangle, three sides',
  about: 'its three sides, the bottom one first, then on round anticlockwise',
  alias: ['triangle by sides', 'three sides', 'sss'],
  sizes: [
    { size: 'a', label: 'Bottom side', type: 'length', alias: ['side a', 'side 1', 'base', 'bottom', 'width'] },
    { size: 'b', label: 'Right side', type: 'length', alias: ['side b', 'side 2', 'right'] },
    { size: 'c', label: 'Left side', type: 'length', alias: ['side c', 'side 3', 'left'] },
  ],
  outline: ({ a = 0, b = 0, c = 0 }, write) => {
    const sides = { a, b, c };
    const [longest, ...others] = (['a', 'b', 'c'] as const).toSorted((one, other) => sides[other] - sides[one]);
    const together = others.reduce((sum, side) => sum + sides[side], 0);
    // Nearer than a thousandth to lying flat, no ruler tells it from a line.
    if (sides[longest!] >= together * 0.999) {
      throw new ShapeError(
        longest!,
        `sides of ${write(a)}, ${write(b)} and ${write(c)} make no triangle: the longest must be shorter than the other two together, ${write(together)}`,
      );
    }
    const x = (a * a + c * c - b * b) / (2 * a);
    return [
      [0, 0],
      [a, 0],
      [x, Math.sqrt(c * c - x * x)],
    ];
  },
};

/** A triangle by what a ruler laid square to its base reads. */
export const triangleByHeight: ShapeSpec = {
  shape: 'triangle',
  title: 'Triangle, base and height',
  about: 'base, height, and how far the tip stands right of the base’s middle',
  alias: ['triangle by height', 'tri', 'triangle-height'],
  sizes: [
    { size: 'base', label: 'Base', type: 'length', alias: ['width', 'w', 'bottom', 'a'] },
    { size: 'height', label: 'Height', type: 'length', alias: ['h', 'high', 'tall', 'length', 'b'] },
    {
      size: 'lean',
      label: 'Tip leans right by',
      hint: 'from the base’s middle; empty: not at all; less than zero: to the left',
      type: 'lean',
      optional: true,
      alias: ['lean', 'offset', 'c'],
    },
  ],
  outline: ({ base = 0, height = 0, lean = 0 }) => [
    [0, 0],
    [base, 0],
    [base / 2 + lean, height],
  ],
};
