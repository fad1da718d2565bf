import { expect, test } from 'vitest';
import { checkDrawing } from '../../src/cutting/check-drawing.ts';
import { joinOrder } from '../../src/cutting/join-order.ts';
import { sayDrawingFault, tellJoins } from '../../src/cutting/say-joins.ts';
import { formatLength } from '../../src/quilt/format-length.ts';
import { drawForm, FORMS } from '../../src/quilt/forms/forms.ts';

const write = (length: number): string => formatLength(length, 'in', { denominator: 64, decimals: 3 });

test('joins are told as one would sew them, each with its seam and how it is pressed', () => {
  const star = drawForm(
    { kind: 'compass-star', points: 16, inner: 4, outer: 10, ring: 13.25, wedges: 20, side: 28 },
    'in',
  );
  const told = tellJoins(joinOrder(star), write);
  expect(told.map(({ what }) => what)).toEqual([
    'Sew A to B, 4 times',
    'Sew A to B mirrored, 4 times',
    'Sew the pair A with B to the pair A with B mirrored, 4 times: 4 quarters',
    'Sew two quarters (A, B) together, 2 times: 2 halves',
    'Sew two halves (A, B) together: the round',
    'Sew two C1 pieces together, 8 times',
    'Sew C1 to the pair of C1, 4 times',
    'Sew the group of 3 (C1) to the pair of C1, 4 times: 4 quarters',
    'Sew two quarters (C1) together, 2 times: 2 halves',
    'Sew two halves (C1) together: the round',
    'Sew the round (A, B) to the round (C1)',
    'Sew two D1 pieces together, 2 times',
    'Sew two pairs of D1 together: the round',
    'Sew the round (A, B, C1) to the round (D1)',
  ]);
  expect(told[4]!.how).toBe('A straight seam, 20 in; 3 points to match. Press it open.');
});

test('every form’s start is joined and told, and its drawing is sound but for openings that others fill', () => {
  for (const spec of FORMS) {
    const units = drawForm(spec.start('in') as Parameters<typeof drawForm>[0], 'in');
    const faults = checkDrawing(units, { tolerance: 0.004, near: 1 / 16 });
    expect(
      faults.filter(({ kind }) => kind !== 'hole').map((fault) => sayDrawingFault(fault, write)),
      spec.kind,
    ).toEqual([]);
    const told = tellJoins(joinOrder(units), write);
    expect(
      told.every(({ what, how }) => what.startsWith('Se') && how.includes(' in')),
      spec.kind,
    ).toBe(true);
  }
});

test('a hexagon rosette is set in piece by piece, and told so once for each kind', () => {
  const spec = FORMS.find(({ kind }) => kind === 'hexagon-rosette')!;
  const told = tellJoins(joinOrder(drawForm(spec.start('in') as Parameters<typeof drawForm>[0], 'in')), write);
  expect(told.some(({ what }) => /one after another, \d+ times/.test(what))).toBe(true);
  expect(told.some(({ how }) => how.includes('turns a corner'))).toBe(true);
});
