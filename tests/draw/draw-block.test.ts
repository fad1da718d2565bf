import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Drawing, GroupItem, PathItem } from '../../src/draw/display-list.ts';
import { drawBlock } from '../../src/draw/draw-block.ts';
import { svgElement } from '../../src/draw/to-svg.ts';
import type { CompassStarForm } from '../../src/quilt/forms/compass-star.ts';
import type { Facing, Quilt } from '../../src/quilt/quilt.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { degreesFromUp, modulo, subtract } from '../../src/shape/point.ts';
import { allItems } from './sample-group.ts';

const file = new URL('../../scenarios/solstice-dial.yardwright.json', import.meta.url);
const dial = readQuilt(readFileSync(file, 'utf8'));
const form = dial.blocks[0]!.form as CompassStarForm;

function draw(quilt: Quilt): Drawing {
  const scheme = quilt.schemes.find((one) => one.id === quilt.scheme)!;
  return drawBlock({ quilt, scheme, block: quilt.blocks[0]!, blanks: [], textSize: 0.5 });
}

const facing = (role: string, to: Facing['to']): Quilt => ({
  ...dial,
  roles: dial.roles.map((one) => (one.id === role ? { ...one, facing: { to } } : one)),
});

const patches = (drawing: Drawing, name: string): readonly GroupItem[] =>
  allItems(drawing.items).filter((item): item is GroupItem => item.kind === 'group' && item.data?.patch === name);

/** Where a patch's arrow points, and the direction in which the patch lies from the centre, degrees from up. */
function arrowAndPlace(patch: GroupItem): readonly [number, number] {
  const paths = patch.items.filter((item): item is PathItem => item.kind === 'path');
  const shaft = paths.find((path) => path.class === 'arrow')!.runs[0]!;
  const corners = paths.find((path) => path.class === 'cloth')!.runs[0]!.steps.map((step) => step.to);
  const middle = corners.reduce((sum, [x, y]) => [sum[0] + x, sum[1] + y] as const, [0, 0] as readonly [
    number,
    number,
  ]);
  return [degreesFromUp(subtract(shaft.steps[0]!.to, shaft.start)), degreesFromUp(middle)];
}

test('every patch of every place is drawn: 8 × 4 + 8 × 4 + 20 + 4 in the dial', () => {
  const all = allItems(draw(dial).items).filter((item) => item.kind === 'group' && item.class === 'patch');
  expect(all).toHaveLength(88);
});

test('arcs stay arcs', () => {
  const [wedge] = patches(draw(dial), 'C1');
  const cloth = wedge!.items.find((item): item is PathItem => item.kind === 'path' && item.class === 'cloth')!;
  const radii = cloth.runs[0]!.steps.flatMap((step) => (step.arc === undefined ? [] : [step.arc.radius]));
  expect(radii).toEqual([form.ring, form.outer]);
});

test('a print that faces outward points away from the centre in every wedge', () => {
  const wedges = patches(draw(dial), 'C1');
  expect(wedges).toHaveLength(20);
  for (const wedge of wedges) {
    const [arrow, place] = arrowAndPlace(wedge);
    expect(modulo(arrow - place + 180, 360)).toBeCloseTo(180, 6);
  }
});

test('a print that faces upright points up in every wedge, and clockwise a quarter turn to the right of outward', () => {
  for (const wedge of patches(draw(facing('hours', 'upright')), 'C1')) {
    expect(modulo(arrowAndPlace(wedge)[0] + 180, 360)).toBeCloseTo(180, 6);
  }
  for (const wedge of patches(draw(facing('hours', 'clockwise')), 'C1')) {
    const [arrow, place] = arrowAndPlace(wedge);
    expect(modulo(arrow - place, 360)).toBeCloseTo(270, 6);
  }
});

test('a print without direction, or free to point anywhere, has no arrow', () => {
  const arrows = (drawing: Drawing, name: string) =>
    patches(drawing, name).flatMap((patch) =>
      patch.items.filter((item) => item.kind === 'path' && item.class === 'arrow'),
    );
  expect(arrows(draw(dial), 'A1')).toEqual([]);
  expect(arrows(draw(facing('hours', 'free')), 'C1')).toEqual([]);
});

test('the drawing holds the whole square of the block', () => {
  const { box } = draw(dial);
  const side = form.side as number;
  expect(box.left).toBeLessThanOrEqual(-side / 2);
  expect(box.left + box.width).toBeGreaterThanOrEqual(side / 2);
  expect(box.width).toBeLessThan(side + 2);
});

test('at their true size prints are turned as they will lie, one repeat as large as the cloth says, with no names over them', () => {
  const scheme = dial.schemes.find((one) => one.id === dial.scheme)!;
  const drawing = drawBlock({
    quilt: dial,
    scheme,
    block: dial.blocks[0]!,
    blanks: [],
    textSize: 0.5,
    trueRepeat: () => 0.75,
  });
  const wedges = patches(drawing, 'C1');
  const fills = wedges.map(({ items }) => (items[0] as PathItem).fill!);
  expect(wedges.every(({ items }) => items.length === 1)).toBe(true);
  expect(fills.map(({ turn }) => Math.round(turn! * 1e6) / 1e6)).toEqual(
    wedges.map((_, k) => (k * 360) / wedges.length),
  );
  expect(new Set(fills.map(({ repeat }) => repeat))).toEqual(new Set([0.75]));
  expect(svgElement(drawing, 'p')).toMatch(/<pattern [^>]*width="0.75" height="0.75" patternTransform="rotate\(-18\)"/);
});
