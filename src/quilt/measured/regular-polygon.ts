import { ShapeError, type ShapeSpec } from './shape-spec.ts';

/** A regular polygon on one of its sides. */
export const regularPolygon: ShapeSpec = {
  shape: 'polygon',
  title: 'Regular polygon',
  about: 'how many sides, and how long each is: 6 for a hexagon',
  alias: ['regular polygon', 'hexagon', 'octagon', 'pentagon'],
  sizes: [
    { size: 'corners', label: 'Sides', type: 'count', alias: ['sides', 'corners', 'n'] },
    { size: 'side', label: 'Length of a side', type: 'length', alias: ['side', 'edge', 'width', 'w', 'a', 'base'] },
  ],
  outline: ({ corners = 0, side = 0 }) => {
    if (corners < 3 || corners > 60) {
      throw new ShapeError('corners', `a regular polygon has from 3 to 60 sides; found ${corners}`);
    }
    const radius = side / (2 * Math.sin(Math.PI / corners));
    return Array.from({ length: corners }, (_, k) => {
      const angle = -Math.PI / 2 + ((2 * k - 1) * Math.PI) / corners;
      return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
    });
  },
};
