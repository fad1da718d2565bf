import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { blockPatches, printInBlock } from '../../src/cutting/block-patches.ts';
import { facingChoices, facingToward, swing } from '../../src/cutting/facing-choices.ts';
import { withPatchFacing } from '../../src/quilt/patch-own.ts';
import type { Facing } from '../../src/quilt/quilt.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';

const file = new URL('../../scenarios/solstice-dial.yardwright.json', import.meta.url);
const dial = readQuilt(readFileSync(file, 'utf8'));
const block = dial.blocks[0]!;
const patches = blockPatches(block, dial.unit);
const present = fc.constantFrom<Facing>(
  { to: 'outward' },
  { to: 'inward', from: 'axis', within: 3 },
  { to: 'along', edge: 0, turned: 20 },
  { to: 'upright' },
  { to: 'free' },
);

test('pointing anywhere on the picture gives a facing that points there, by name where a name is near', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...patches),
      fc.double({ min: 0, max: 359.9, noNaN: true }),
      present,
      (patch, degrees, old) => {
        const facing = facingToward(patch, degrees, old, 5);
        const points = printInBlock(facing, patch)!;
        const named = facingChoices(patch, old.from).some((choice) => Math.abs(swing(choice.degrees, degrees)) <= 5);
        expect(Math.abs(swing(points, degrees))).toBeLessThanOrEqual(named ? 5.0001 : 0.5001);
        expect(facing.turned === undefined || !named).toBe(true);
        expect(facing.within).toBe(old.within);
      },
    ),
    { numRuns: 300 },
  );
});

test('what is turned on one place of a mirrored pair lies mirrored on the other', () => {
  const pair = patches.filter(({ unit, patch }) => unit.id === 'B' && patch.number === 1);
  const plain = pair.find(({ place }) => !place.mirrored)!;
  const mirrored = pair.find(({ place }) => place.mirrored)!;
  const facing = facingToward(
    plain,
    100 + printInBlock({ to: 'outward', from: 'axis' }, plain)!,
    { to: 'outward', from: 'axis' },
    2,
  );
  const off = (one: typeof plain) =>
    swing(printInBlock({ to: 'outward', from: 'axis' }, one)!, printInBlock(facing, one)!);
  expect(off(plain)).toBeCloseTo(100, 6);
  expect(off(mirrored)).toBeCloseTo(-100, 6);
});

test('a facing given to a patch and taken back leaves the block as it was', () => {
  const name = { unit: 'C', number: 1 };
  const one = withPatchFacing(block, name, 4, { to: 'inward' });
  expect(one.own).toEqual({ C1: { facingAt: { 4: { to: 'inward' } } } });
  const both = withPatchFacing(one, name, null, { to: 'upright' });
  expect(both.own).toEqual({ C1: { facing: { to: 'upright' } } });
  expect(withPatchFacing(both, name, null, null)).toEqual(block);
  expect(withPatchFacing(one, name, 4, null)).toEqual(block);
});
