import { expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { sewnSides } from '../../src/cutting/sewn-side.ts';
import { drawForm } from '../../src/quilt/forms/forms.ts';
import { clothOf, oblong, patchOf, quiltOf, unitOf } from './sample-quilt.ts';

const star = drawForm({ kind: 'compass-star', points: 16, inner: 4, outer: 10, ring: 13, wedges: 20, side: 28 }, 'in');

test('each patch of a compass point is sewn along the edge that it shares with those before', () => {
  // The kite's second half on its middle line, then the ground on the kite's long edges.
  for (const unit of star.slice(0, 2)) {
    const sides = sewnSides(unit);
    expect(sides.every((side) => side.fault === null)).toBe(true);
    expect(sides.map((side) => side.edge)).toEqual([null, 0, unit.patches[2]!.outline.length - 2, 0]);
  }
});

test('an edge against several earlier patches is one seam', () => {
  const patches = [patchOf(1, oblong(1, 1, 2, 2)), patchOf(2, oblong(3, 1, 2, 2)), patchOf(3, oblong(2, 3, 4, 2))];
  expect(sewnSides(unitOf([], { count: 1 }, { patches })).map((side) => side.edge)).toEqual([null, 3, 0]);
});

test('a patch that only touches those before it, or is set into a corner, cannot be sewn on a foundation', () => {
  const apart = [patchOf(1, oblong(1, 1, 2, 2)), patchOf(2, oblong(3, 3, 2, 2))];
  const [, second] = sewnSides(unitOf([], { count: 1 }, { patches: apart }));
  expect(second!.edge).toBeNull();
  expect(second!.fault).toContain('A2 shares no straight seam');
  const inset = [...apart, patchOf(3, oblong(3, 1, 2, 2))];
  expect(sewnSides(unitOf([], { count: 1 }, { patches: inset }))[2]!.fault).toContain('along 2 lines');
});

test('a patch that lies on both sides of its seam’s line cannot be flipped into place', () => {
  const bent = patchOf(2, [
    [0, 2],
    [2, 2],
    [4, 1],
    [4, 4],
    [0, 4],
  ]);
  const [, side] = sewnSides(unitOf([], { count: 1 }, { patches: [patchOf(1, oblong(1, 1, 2, 2)), bent] }));
  expect(side!.edge).toBeNull();
  expect(side!.fault).toContain('A2 lies on both sides');
});

test('a curved seam on paper is told, and its patches become blanks cut to their curves', () => {
  const rim = { arc: { radius: 3, turn: 'anticlockwise' } } as const;
  const hollow = { arc: { radius: 3, turn: 'clockwise' } } as const;
  const patches = [
    patchOf(1, [[0, 0], [3, 0], rim, [0, 3]]),
    patchOf(2, [[3, 0], [5, 0], [5, 5], [0, 5], [0, 3], hollow]),
  ];
  const unit = unitOf([], { count: 1 }, { patches, paper: true });
  const { groups, problems } = makeCutList(quiltOf([unit], { to: 'free' }, clothOf('solid')));
  expect(problems.map(({ kind, text }) => [kind, /A2 meets A1 along a curve/.test(text)])).toEqual([['warning', true]]);
  expect(groups.flatMap(({ blanks }) => blanks.map(({ shapes }) => shapes.map(({ kind }) => kind)))).toEqual([
    ['outline'],
    ['outline'],
  ]);
});
