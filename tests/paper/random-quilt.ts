import type { Patch, Quilt, Unit } from '../../src/quilt/quilt.ts';
import { fromUp, type Point, scale } from '../../src/shape/point.ts';

/** Small quilts of rings of wedges, triangles and oblongs, in inches or centimetres, of cloths of every print. The same seed, the same quilt. */
export function randomQuilt(seed: number): Quilt {
  const random = generator(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const unit = random() < 0.5 ? 'in' : 'cm';
  const inch = unit === 'in' ? 1 : 2.54;
  const roles = ['a', 'b'].slice(0, 1 + Math.floor(random() * 2));
  const units = roles.map((role, i): Unit => {
    const count = 3 + Math.floor(random() * 5);
    const half = 180 / (count + Math.floor(random() * 6));
    const [inner, outer] = [(1 + random() * 2) * inch, (4 + random() * 4) * inch];
    const corner = (radius: number, degrees: number): Point => scale(fromUp(degrees), radius);
    const lean = random() * half;
    const outline: readonly Point[] = pick([
      [corner(inner, -half), corner(outer, -half), corner(outer, half), corner(inner, half)],
      [[0, inner], corner(outer, -half), corner(outer, half)],
      [
        [-inner, inner],
        [inner, inner],
        [inner, outer],
        [-inner, outer],
      ],
      [corner(inner, -half), corner(outer, -half), corner(outer, half - lean), corner(inner, half)],
    ] as const);
    const patch: Patch = { number: 1, role, outline };
    return {
      id: 'AB'[i]!,
      paper: random() < 0.5,
      axis: 0,
      patches: [patch],
      repeat: { count, mirrored: pick(['no', 'also', 'alternate']) },
    };
  });
  return {
    format: 'yardwright',
    version: 1,
    name: `Random ${seed}`,
    unit,
    allowance: '1/4 in',
    room: '1/4 in',
    ruler: unit === 'in' ? pick([1 / 8, 1 / 4, 1 / 2]) : pick([0.5, 1]),
    squaring: pick([0, 1]),
    spares: pick([0, 1]),
    stacks: random() < 0.5,
    blocks: [
      { id: 'one', name: 'One', count: 1 + Math.floor(random() * 4), units, turns: pick([[0], [0, 90], [0, 30]]) },
    ],
    joined: [],
    roles: roles.map((id) => ({
      id,
      name: id,
      facing: { to: pick(['outward', 'free', 'upright'] as const), from: 'axis' },
      shapes: pick([['slant', 'box'], ['outline'], ['box']] as const),
    })),
    cloths: roles.map((id) => ({
      id,
      name: id,
      colour: '#888888',
      print: pick(['one-way', 'two-way', 'check', 'tossed', 'solid'] as const),
      up: pick(['along', 'across'] as const),
      wrongSide: random() < 0.7,
      width: (20 + random() * 24) * inch,
      step: 9 * inch,
      ...(random() < 0.3 && { pieces: [{ id: 'p', width: 18 * inch, length: 21 * inch }] }),
    })),
    schemes: [{ id: 's', name: 's', cloths: Object.fromEntries(roles.map((id) => [id, id])) }],
    scheme: 's',
  };
}

/** Mulberry32, in the public domain. */
function generator(seed: number): () => number {
  let state = seed * 0x9e3779b9;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
