import { type LengthUnit, QUILT_FORMAT, QUILT_VERSION, type Quilt } from './quilt.ts';

/**
 * A quilt with nothing in it yet, and the habits most have. Allowance: the usual quarter inch, 0.75 cm where she measures so.
 * Room, ruler and squaring are common practice, and hers to change.
 */
export function emptyQuilt(unit: LengthUnit): Quilt {
  const inches = unit === 'in';
  return {
    format: QUILT_FORMAT,
    version: QUILT_VERSION,
    name: 'New quilt',
    unit,
    allowance: inches ? '1/4 in' : '0.75 cm',
    room: inches ? '1/4 in' : '0.75 cm',
    ruler: inches ? '1/4 in' : '0.5 cm',
    squaring: inches ? '1 in' : '2 cm',
    spares: 0,
    blocks: [],
    joined: [],
    roles: [],
    cloths: [],
    schemes: [{ id: 'first', name: 'First scheme', cloths: {} }],
    scheme: 'first',
  };
}
