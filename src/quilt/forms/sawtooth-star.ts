/** A sawtooth star: a square, a goose of two points and their ground on each side, a square in each corner. */
import type { Point } from '../../shape/point.ts';
import { lengthIn } from '../measure.ts';
import type { Length, Unit } from '../quilt.ts';
import { numbered, oblong } from './drawing.ts';
import { reckoned } from './fault-words.ts';
import type { FormSpec } from './form-spec.ts';

export interface SawtoothStarForm {
  readonly kind: 'sawtooth-star';
  readonly side: Length;
}

export const sawtoothStar: FormSpec<SawtoothStarForm> = {
  kind: 'sawtooth-star',
  title: 'Sawtooth star',
  about: 'a square with two points on each side, in quarters',
  fields: [{ type: 'length', field: 'side', label: 'Side', hint: 'of the block, finished' }],
  tones: { 'saw-centre': 'bright', 'saw-points': 'dark', 'saw-ground': 'ground' },
  start: (unit) => ({ kind: 'sawtooth-star', side: unit === 'in' ? 12 : 30 }),
  roles: () => [
    { id: 'saw-centre', name: 'Middle of the star', facing: { to: 'upright' } },
    { id: 'saw-points', name: 'Points of the star', facing: { to: 'outward', from: 'axis' } },
    { id: 'saw-ground', name: 'Ground of the star', facing: { to: 'upright' } },
  ],
  faults: () => [],
  notes: ({ side }, unit) => {
    const quarter = lengthIn(unit, side) / 4;
    return [`Middle square ${reckoned(2 * quarter, unit)}, corner squares ${reckoned(quarter, unit)}, finished.`];
  },
  draw({ side }, unit): readonly Unit[] {
    const u = lengthIn(unit, side) / 4;
    const p = (x: number, y: number): Point => [x * u, y * u];
    return [
      {
        id: 'A',
        name: 'Goose',
        paper: true,
        repeat: { count: 4 },
        axis: 0,
        patches: numbered([
          ['saw-ground', [p(0, 1), p(1, 2), p(-1, 2)]],
          ['saw-points', [p(0, 1), p(1, 1), p(1, 2)]],
          ['saw-points', [p(-1, 1), p(0, 1), p(-1, 2)]],
        ]),
      },
      {
        id: 'B',
        name: 'Middle',
        paper: false,
        repeat: { count: 1 },
        axis: 0,
        patches: numbered([['saw-centre', oblong(-u, -u, u, u)]]),
      },
      {
        id: 'C',
        name: 'Corner',
        paper: false,
        repeat: { count: 4 },
        patches: numbered([['saw-ground', oblong(u, u, 2 * u, 2 * u)]]),
      },
    ];
  },
};
