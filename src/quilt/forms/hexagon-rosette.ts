/** A rosette of hexagons: rings of them round one. Its seams turn at every corner, so it is sewn without foundations. */
import { fromUp, type Point, scale } from '../../shape/point.ts';
import { lengthIn } from '../measure.ts';
import type { Length, Unit } from '../quilt.ts';
import { lettered, numbered } from './drawing.ts';
import { reckoned } from './fault-words.ts';
import type { FormSpec } from './form-spec.ts';

export interface HexagonRosetteForm {
  readonly kind: 'hexagon-rosette';
  /** Of each hexagon. */
  readonly edge: Length;
  /** Rings round the one in the middle. */
  readonly rings: number;
}

export const hexagonRosette: FormSpec<HexagonRosetteForm> = {
  kind: 'hexagon-rosette',
  title: 'Hexagon rosette',
  about: 'rings of hexagons round one, a cloth to each ring',
  fields: [
    { type: 'length', field: 'edge', label: 'Edge of a hexagon', hint: 'finished' },
    { type: 'count', field: 'rings', label: 'Rings', hint: 'round the one in the middle', min: 1, max: 8 },
  ],
  tones: { 'hexagon-0': 'dark', 'hexagon-1': 'bright', 'hexagon-2': 'light', 'hexagon-3': 'ground' },
  start: (unit) => ({ kind: 'hexagon-rosette', edge: unit === 'in' ? 1 : 2.5, rings: 2 }),
  roles: ({ rings }) => [
    { id: 'hexagon-0', name: 'Hexagon in the middle', facing: { to: 'upright' } },
    ...Array.from({ length: rings }, (_, k) => ({
      id: `hexagon-${k + 1}`,
      name: `Hexagons, ring ${k + 1}`,
      facing: { to: 'outward', from: 'middle' } as const,
    })),
  ],
  faults: () => [],
  notes: ({ edge, rings }, unit) => [
    `${1 + 3 * rings * (rings + 1)} hexagons, each ${reckoned(Math.sqrt(3) * lengthIn(unit, edge), unit)} from edge to edge.`,
  ],
  draw({ edge, rings }, unit): readonly Unit[] {
    const size = lengthIn(unit, edge);
    return lettered([
      {
        name: 'Middle',
        paper: false,
        repeat: { count: 1 },
        axis: 0,
        patches: numbered([['hexagon-0', hexagon([0, 0], size)]]),
      },
      ...Array.from({ length: rings }, (_, k) => ({
        name: `Ring ${k + 1}`,
        paper: false,
        repeat: { count: 6 },
        patches: numbered(
          sixthOfRing(k + 1, size).map((middle) => [`hexagon-${k + 1}`, hexagon(middle, size)] as const),
        ),
      })),
    ]);
  },
};

/** With two corners up and down, so that neighbours' middles lie at 30°, 90° and so on from up. */
const hexagon = ([x, y]: Point, edge: number): readonly Point[] =>
  [-150, -90, -30, 30, 90, 150].map((degrees) => {
    const [dx, dy] = scale(fromUp(degrees + 30), edge);
    return [x + dx, y + dy];
  });

/** The middles of a sixth of a ring: from the one to the right's direction on toward the next corner of the ring, without that. */
function sixthOfRing(ring: number, edge: number): readonly Point[] {
  const step = Math.sqrt(3) * edge;
  const corner = scale(fromUp(-90), ring * step);
  const along = scale(fromUp(30), step);
  return Array.from({ length: ring }, (_, k) => [corner[0] + k * along[0], corner[1] + k * along[1]]);
}
