/** A compass star drawn in a drawing program gives the blanks of the star drawn from its numbers. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { CutList } from '../../src/cutting/cut-list.ts';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { importSvg } from '../../src/import/import-svg.ts';
import type { CompassStarForm } from '../../src/quilt/forms/compass-star.ts';
import type { Quilt, Unit } from '../../src/quilt/quilt.ts';
import type { Polygon } from '../../src/shape/point.ts';
import { polygonArea, polygonPerimeter } from '../../src/shape/polygon.ts';
import { sameOutline } from '../../src/shape/same-outline.ts';
import { COLOURS, inInches, inMillimetres, inPixels, inPoints } from './star-drawings.ts';

const dial: Quilt = JSON.parse(
  readFileSync(new URL('../../scenarios/solstice-dial.yardwright.json', import.meta.url), 'utf8'),
);
const dialForm = dial.blocks[0]!.form as CompassStarForm;
const DIALECTS = { inches: inInches, millimetres: inMillimetres, pixels: inPixels, points: inPoints };

/** The dial's quilt with a star of these numbers, or with the units that were found in its drawing. */
const quiltOf = (source: { form: CompassStarForm } | { units: readonly Unit[] }): Quilt => {
  const { form: _, ...block } = dial.blocks[0]!;
  return { ...dial, blocks: [{ ...block, ...source }] };
};

type SameShape = (a: Polygon, b: Polygon) => boolean;
const samePolygon: SameShape = (a, b) => sameOutline(a, b, 1 / 64);
/**
 * Where two ways to cut a blank are equally good, a rounding in the file may tip the balance; their areas are then the same to
 * within what 1/64 in all round would make.
 */
const sameCloth: SameShape = (a, b) => Math.abs(polygonArea(a) - polygonArea(b)) <= polygonPerimeter(b) / 64;

/** Blanks are one where role, number and turns agree and every alternative is the same. */
function expectSameBlanks(found: CutList, wanted: CutList, same: SameShape): void {
  const flat = (list: CutList) =>
    list.groups.flatMap(({ blanks, job }) => blanks.map((blank, i) => ({ blank, job: job.blanks[i]! })));
  const left = [...flat(found)];
  expect(left.length).toBe(flat(wanted).length);
  for (const { blank, job } of flat(wanted)) {
    const match = left.findIndex(
      (other) =>
        other.blank.role === blank.role &&
        other.blank.demand === blank.demand &&
        other.blank.directional === blank.directional &&
        Math.abs(other.blank.finishedArea - blank.finishedArea) < 1 / 64 &&
        blank.shapes.every((shape, i) => {
          const twin = other.blank.shapes[i];
          return twin?.kind === shape.kind && same(twin.outline, shape.outline);
        }) &&
        JSON.stringify(other.job.shapes!.map(({ turns }) => turns)) ===
          JSON.stringify(job.shapes!.map(({ turns }) => turns)),
    );
    expect({ blank: blank.id, found: match >= 0 }).toEqual({ blank: blank.id, found: true });
    left.splice(match, 1);
  }
}

/** Roles as the drawing names them, back to the star's own: by id, by the words of a label, or by colour. */
function withOwnRoles(units: readonly Unit[], text: string): readonly Unit[] {
  const seeds = importSvg(text, { unit: 'in', name: 'Star' }).block!.roles;
  const own = Object.keys(COLOURS);
  const byColour = new Map(
    importSvg(colourTable(), { unit: 'in', name: 'x' }).block!.roles.map(({ name }, i) => [name, own[i]!]),
  );
  const roleOf = (id: string): string => {
    const { name } = seeds.find((seed) => seed.id === id)!;
    const words = name.toLowerCase().replace(', ', '-');
    return own.includes(words) ? words : byColour.get(name)!;
  };
  return units.map((unit) => ({
    ...unit,
    patches: unit.patches.map((patch) => ({ ...patch, role: roleOf(patch.role) })),
  }));
}

/** One square of each colour, in the order of the roles, so that colours are named by what is tested. */
const colourTable = (): string =>
  `<svg width="7in" height="1in" viewBox="0 0 7 1">${Object.values(COLOURS)
    .map((colour, i) => `<rect x="${i}" width="1" height="1" fill="${colour}"/>`)
    .join('')}</svg>`;

test.each(Object.entries(DIALECTS))('the dial, drawn in %s', (_, draw) => {
  const text = draw(dialForm);
  const { block, notes } = importSvg(text, { unit: 'in', name: 'Star' });
  expect(notes.filter(({ text: said }) => !said.includes('in pixels') && !said.includes('colour'))).toEqual([]);
  expect(block!.units.map(({ id, paper, repeat, patches }) => [id, paper, repeat.count, patches.length])).toEqual([
    ['A', true, 8, 4],
    ['B', true, 8, 4],
    ['C', false, dialForm.wedges, 1],
    ['D', false, 4, 1],
  ]);
  expect(block!.units[1]!.repeat.mirrored).toBe('alternate');
  expectSameBlanks(
    makeCutList(quiltOf({ units: withOwnRoles(block!.units, text) })),
    makeCutList(quiltOf({ form: dialForm })),
    samePolygon,
  );
});

test('stars of any numbers, in every dialect', () => {
  const inches = (least: number, most: number) =>
    fc.integer({ min: least * 32, max: most * 32 }).map((each) => each / 32);
  const forms = fc
    .record({
      points: fc.constantFrom(8, 12, 16, 24),
      inner: inches(1.5, 3),
      star: inches(2, 5),
      ring: inches(1, 3),
      wedges: fc.integer({ min: 8, max: 30 }),
      ground: inches(0.5, 2),
    })
    .map(({ points, inner, star, ring, wedges, ground }): CompassStarForm => {
      const side = 2 * (inner + star + ring + ground);
      return { kind: 'compass-star', points, inner, outer: inner + star, ring: inner + star + ring, wedges, side };
    });
  fc.assert(
    fc.property(forms, fc.constantFrom(...Object.values(DIALECTS)), (form, draw) => {
      const text = draw(form);
      const { block } = importSvg(text, { unit: 'in', name: 'Star' });
      expectSameBlanks(
        makeCutList({ ...quiltOf({ units: withOwnRoles(block!.units, text) }), ruler: 1 / 64 }),
        makeCutList({ ...quiltOf({ form }), ruler: 1 / 64 }),
        sameCloth,
      );
    }),
    { numRuns: 12, seed: 4 },
  );
});

test('a quarter drawn by itself has its centre in the corner that is told, or at a mark', () => {
  const quarter = (mark: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="4in" height="4in" viewBox="0 0 4 4">${mark}<path d="M0 4V2A2 2 0 0 1 2 4Z"/><path fill="red" d="M0 2V0H4V4H2A2 2 0 0 0 0 2Z"/></svg>`;
  const corner = importSvg(quarter(''), { unit: 'in', name: 'Quarter', centre: 'lower left' });
  const marked = importSvg(quarter('<circle id="centre" cx="0" cy="4" r=".02"/>'), { unit: 'in', name: 'Quarter' });
  expect(corner.block!.units).toEqual(marked.block!.units);
  const found = corner.patches.find(({ outline }) => outline.length === 4)!.outline;
  expect(found).toEqual(
    expect.arrayContaining([[0, 0], [2, 0], { arc: { radius: 2, turn: 'anticlockwise' } }, [0, 2]]),
  );
});
