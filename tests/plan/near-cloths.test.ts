import { expect, test } from 'vitest';
import { nearestFirst } from '../../src/plan/near-cloths.ts';
import { clothOf } from '../cutting/sample-quilt.ts';

const cloth = (id: string, colour: string) => clothOf('solid', { id, colour });

test('a dark blue is nearer to another dark blue than to a light one, a red or a black', () => {
  const cloths = [cloth('red', '#a02020'), cloth('sky', '#a8c8f0'), cloth('navy', '#1a2a5a'), cloth('ink', '#101010')];
  const order = nearestFirst(cloths, cloth('own', '#2b4a78')).map(({ id }) => id);
  expect(order[0]).toBe('navy');
  expect(order.at(-1)).not.toBe('ink');
});

test('equals stay in the order given', () => {
  const cloths = [cloth('b', '#445566'), cloth('a', '#445566')];
  expect(nearestFirst(cloths, cloth('own', '#ffffff')).map(({ id }) => id)).toEqual(['b', 'a']);
});
