/** Drawings of lines alone: their patches are what lies between the lines. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { importSvg } from '../../src/import/import-svg.ts';
import type { CompassStarForm } from '../../src/quilt/forms/compass-star.ts';
import { drawForm } from '../../src/quilt/forms/forms.ts';
import { outlineArea } from '../../src/shape/outline-measures.ts';
import { inLines } from './star-drawings.ts';

const page = (lines: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="6in" height="6in" viewBox="0 0 6 6"><g fill="none" stroke="#000">${lines}</g></svg>`;
const areas = (text: string): readonly number[] =>
  importSvg(text, { unit: 'in', name: 'x' })
    .patches.map(({ outline }) => Math.abs(outlineArea(outline)))
    .sort((a, b) => a - b);

test('a square, its diagonals, and a circle about their crossing', () => {
  const found = areas(page('<rect width="6" height="6"/><path d="M0 0L6 6M6 0L0 6"/><circle cx="3" cy="3" r="2"/>'));
  const quarter = Math.PI;
  expect(found.length).toBe(8);
  for (const area of found.slice(0, 4)) expect(area).toBeCloseTo(quarter, 6);
  for (const area of found.slice(4)) expect(area).toBeCloseTo(9 - quarter, 6);
});

test('lines that end a hair short or too long still meet, and what ends nowhere is told', () => {
  const text = page('<path d="M0 0H6V6H0V0"/><path d="M3 0.01V5.99"/><path d="M-0.01 2H3.01"/><path d="M4 4L5 5"/>');
  expect(areas(text).map((area) => Math.round(area * 100) / 100)).toEqual([6, 12, 18]);
  const notes = importSvg(text, { unit: 'in', name: 'x' }).notes.map((note) => note.text);
  expect(notes).toContain('Left out: 1 line that parts nothing.');
});

test('straight cuts right across a square leave as many patches as the plane geometry of lines says', () => {
  const cut = fc.tuple(fc.integer({ min: 3, max: 57 }), fc.integer({ min: 3, max: 57 }), fc.boolean());
  fc.assert(
    fc.property(fc.uniqueArray(cut, { minLength: 1, maxLength: 6, selector: ([a]) => a }), (cuts) => {
      const ends = cuts.map(([a, b, flat]) => (flat ? [0, a / 10, 6, b / 10] : [a / 10, 0, b / 10, 6]));
      const meets = ends.flatMap((one, i) => ends.slice(i + 1).flatMap((other) => crossing(one, other)));
      // Places nearer than the tolerance are one, and the count below holds for places apart.
      const apart = meets.every((place, i) =>
        meets.every((other, k) => i === k || Math.hypot(place[0]! - other[0]!, place[1]! - other[1]!) > 0.1),
      );
      const ending = ends.flatMap(([a, b, c, d]) => [
        [a!, b!],
        [c!, d!],
      ]);
      const clear = ending.every((place, i) =>
        [...ending.filter((_, k) => k !== i), ...meets].every(
          (other) => Math.hypot(place[0]! - other[0]!, place[1]! - other[1]!) > 0.1,
        ),
      );
      fc.pre(apart && clear);
      const found = areas(
        page(
          `<rect width="6" height="6"/>${ends.map(([a, b, c, d]) => `<line x1="${a}" y1="${b}" x2="${c}" y2="${d}"/>`).join('')}`,
        ),
      );
      expect(found.length).toBe(1 + ends.length + meets.length);
      expect(found.reduce((sum, area) => sum + area, 0)).toBeCloseTo(36, 3);
    }),
    { numRuns: 12, seed: 11 },
  );
});

/** Inside the square, where two lines cross. */
function crossing(one: readonly number[], other: readonly number[]): readonly (readonly number[])[] {
  const [a, b, c, d] = one as [number, number, number, number];
  const [e, f, g, h] = other as [number, number, number, number];
  const turn = (c - a) * (h - f) - (d - b) * (g - e);
  if (turn === 0) return [];
  const t = ((e - a) * (h - f) - (f - b) * (g - e)) / turn;
  const place = [a + t * (c - a), b + t * (d - b)];
  return place.every((value) => value > 1e-9 && value < 6 - 1e-9) ? [place] : [];
}

test('a compass star drawn seam by seam', () => {
  const form: CompassStarForm = {
    kind: 'compass-star',
    points: 16,
    inner: 3,
    outer: 8,
    ring: 10,
    wedges: 20,
    side: 24,
  };
  const { block, patches, notes } = importSvg(inLines(form), { unit: 'in', name: 'Star' });
  expect(notes.filter(({ kind }) => kind !== 'note')).toEqual([]);
  const wanted = drawForm(form, 'in').flatMap((unit) =>
    unit.patches.flatMap(({ outline }) =>
      Array.from({ length: unit.repeat.count }, () => Math.abs(outlineArea(outline))),
    ),
  );
  const found = patches.map(({ outline }) => Math.abs(outlineArea(outline)));
  const sorted = (list: readonly number[]) =>
    [...list].sort((a, b) => a - b).map((each) => Math.round(each * 1e3) / 1e3);
  expect(sorted(found)).toEqual(sorted(wanted));
  expect(
    block!.units.map(({ paper, repeat, patches: each }) => `${each.length}×${repeat.count} ${paper}`).sort(),
  ).toEqual(['1×20 false', '1×4 false', '4×8 true', '4×8 true'].sort());
});
