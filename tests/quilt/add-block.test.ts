import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addBlock, addRoles } from '../../src/quilt/add-block.ts';
import { copyBlock, isUsed, removeBlock } from '../../src/quilt/change-blocks.ts';
import type { DrawnBlock } from '../../src/quilt/drawn-block.ts';
import { emptyQuilt } from '../../src/quilt/empty-quilt.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { roleIdsOf, unitsOf } from '../../src/quilt/units-of.ts';
import { writeQuilt } from '../../src/quilt/write-quilt.ts';

const file = new URL('../../scenarios/solstice-dial.yardwright.json', import.meta.url);
const dial = readQuilt(readFileSync(file, 'utf8'));

const square = (roles: readonly (readonly [id: string, name: string])[], name = 'Square'): DrawnBlock => ({
  name,
  roles: roles.map(([id, roleName]) => ({ id, name: roleName, facing: { to: 'outward' } })),
  units: [
    {
      id: 'A',
      paper: false,
      repeat: { count: 1 },
      patches: roles.map(([role], i) => ({
        number: i + 1,
        role,
        outline: [
          [2 * i, 0],
          [2 * i + 2, 0],
          [2 * i + 2, 2],
          [2 * i, 2],
        ],
      })),
    },
  ],
});

const sound = (quilt: Quilt): Quilt => readQuilt(writeQuilt(quilt));
const roleNames = (quilt: Quilt): readonly string[] => quilt.roles.map((role) => `${role.id}: ${role.name}`);

test('a block put into an empty quilt brings its roles, and the quilt can be read', () => {
  const { quilt, block, roles } = addBlock(emptyQuilt('in'), square([['sky', 'Sky']]));
  expect(sound(quilt).blocks.map(({ id, name, count }) => [id, name, count])).toEqual([['square', 'Square', 1]]);
  expect(block).toBe('square');
  expect(roles).toEqual({ sky: 'sky' });
  expect(quilt.roles).toEqual([{ id: 'sky', name: 'Sky', facing: { to: 'outward' } }]);
});

test('a role of the same id and name is shared and stays as it is; of the same id alone it is another', () => {
  const { name } = dial.roles.find((role) => role.id === 'sky')!;
  const shared = addBlock(dial, square([['sky', name]]));
  expect(sound(shared.quilt).roles).toEqual(dial.roles);
  const other = addBlock(dial, square([['sky', 'Lake']]));
  expect(other.roles).toEqual({ sky: 'sky-2' });
  expect(sound(other.quilt).blocks.at(-1)!.units![0]!.patches[0]!.role).toBe('sky-2');
  const named = addBlock(dial, square([['lake', name]]));
  expect(roleNames(named.quilt).at(-1)).toBe(`lake: ${name} of Square`);
});

test('two seeds never run together, whatever they are called', () => {
  const seed = fc.tuple(fc.constantFrom('a', 'b', 'a-2', ''), fc.constantFrom('A', 'B', 'A of Square'));
  const seeds = fc.uniqueArray(seed, { selector: ([id]) => id, minLength: 1 });
  fc.assert(
    fc.property(seeds, seeds, (first, second) => {
      const once = addBlock(emptyQuilt('in'), square(first)).quilt;
      const { quilt, block, roles } = addBlock(once, square(second));
      const read = sound(quilt);
      expect(block).toBe('square-2');
      expect(new Set(Object.values(roles)).size).toBe(second.length);
      expect(new Set(read.roles.map((role) => role.name)).size).toBe(read.roles.length);
      expect(read.blocks[0]).toEqual(once.blocks[0]);
    }),
    { numRuns: 60 },
  );
});

test('a block with a form is drawn in the roles that the quilt gives it', () => {
  const seeds = dial.roles.map(({ id, facing }) => ({ id, name: `Second ${id}`, facing }));
  const { quilt, block } = addBlock(dial, { name: 'Star', form: dial.blocks[0]!.form!, roles: seeds });
  const read = sound(quilt);
  const star = read.blocks.find(({ id }) => id === block)!;
  expect([...roleIdsOf(star)].sort()).toEqual([...roleIdsOf(dial.blocks[0]!)].map((id) => `${id}-2`).sort());
  expect(unitsOf(star, 'in').length).toBe(4);
  const again = addRoles(read, seeds, 'Star', star.roles);
  expect(again.quilt.roles).toEqual(read.roles);
  expect(removeBlock(read, block)).toEqual(dial);
});

test('a block goes with the roles that only it has; what a border has stays', () => {
  const tested = { ...dial, testBlock: 'dial' };
  const without = sound(removeBlock(tested, 'dial'));
  expect(without.blocks).toEqual([]);
  expect(without.testBlock).toBeUndefined();
  expect(without.roles.every((role) => isUsed(without, role.id) || !roleIdsOf(dial.blocks[0]!).includes(role.id))).toBe(
    true,
  );
  expect(without.cloths).toEqual(dial.cloths);
  expect(removeBlock(dial, 'nothing such')).toBe(dial);
});

test('a copy stands after the block, in the same roles, and goes without taking them along', () => {
  const copied = sound(copyBlock(dial, 'dial'));
  expect(copied.blocks.map(({ name }) => name)).toEqual([dial.blocks[0]!.name, `${dial.blocks[0]!.name} 2`]);
  expect(copied.roles).toEqual(dial.roles);
  expect(removeBlock(copied, copied.blocks[1]!.id)).toEqual(dial);
});
