import { describe, expect, it } from 'vitest';
import { makePieces } from '../../src/paper/make-pieces.ts';
import { addBlock } from '../../src/quilt/add-block.ts';
import { emptyQuilt } from '../../src/quilt/empty-quilt.ts';
import { FORMS, type Form, rolesOfForm } from '../../src/quilt/forms/forms.ts';
import { placesOf } from '../../src/quilt/places.ts';
import { unitsOf } from '../../src/quilt/units-of.ts';
import { cornersOf } from '../../src/shape/outline.ts';
import { cross, distance, dot, type Point, type Polygon, subtract } from '../../src/shape/point.ts';
import { isInside } from '../../src/shape/polygon.ts';

/** How near a point comes to the edges of a polygon. */
function nearness(polygon: Polygon, point: Point): number {
  return Math.min(
    ...polygon.map((from, i) => {
      const to = polygon[(i + 1) % polygon.length]!;
      const along = subtract(to, from);
      const size = Math.hypot(...along);
      const part = dot(subtract(point, from), along) / size;
      if (part < 0) return distance(point, from);
      return part > size ? distance(point, to) : Math.abs(cross(along, subtract(point, from))) / size;
    }),
  );
}

// Arcs of geese came with a trimming line round one of their patches: rounded coordinates leave hairs between neighbours.
describe.each(FORMS.map((spec) => [spec.kind, spec] as const))('%s', (_, spec) => {
  const form = spec.start('in') as Form;
  const quilt = addBlock(emptyQuilt('in'), { name: spec.title, form, roles: rolesOfForm(form), count: 3 }).quilt;
  const scheme = { id: 's', name: 's', cloths: {} };
  const pieces = makePieces({ quilt, scheme, blanks: [], foundation: { kind: 'freezer', uses: 4 } });

  it('is trimmed the allowance beyond every seam', () => {
    for (const { trim, patches } of pieces) {
      for (const corner of patches.flatMap(({ outline }) => cornersOf(outline))) {
        expect(isInside(trim, ...corner)).toBe(true);
        expect(nearness(trim, corner)).toBeGreaterThan(0.25 - 0.003);
      }
    }
  });

  it('has as many foundations as its places ask, each patch named once', () => {
    const block = quilt.blocks[0]!;
    const units = unitsOf(block, 'in').filter(({ paper }) => paper);
    const places = units.reduce((sum, unit) => sum + placesOf(unit).length * block.count, 0);
    const foundations = pieces.filter(({ kind }) => kind === 'foundation');
    expect(foundations.reduce((sum, { needed }) => sum + needed, 0)).toBe(places);
    for (const { patches, needed, copies } of foundations) {
      expect(new Set(patches.map(({ name }) => name)).size).toBe(patches.length);
      expect(copies).toBe(Math.ceil(needed / 4));
    }
  });
});
