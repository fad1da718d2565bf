import { expect, test } from 'vitest';
import { stripWords } from '../../src/page/lit-words.ts';

test('strips that follow one another are told as a stretch', () => {
  expect(stripWords([3])).toBe('strip 3');
  expect(stripWords([1, 2])).toBe('strips 1 and 2');
  expect(stripWords([4, 1, 2, 3, 7, 9, 10])).toBe('strips 1 to 4, 7, 9 and 10');
});
