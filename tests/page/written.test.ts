import { expect, test } from 'vitest';
import { fieldText, typedLength, written, writtenPurchase } from '../../src/page/written.ts';

const inches = { quilt: 'in', shown: 'in' } as const;
const shownInCm = { quilt: 'in', shown: 'cm' } as const;

test('a computed length is written in the unit shown', () => {
  expect(written(6.5, inches)).toBe('6 1/2 in');
  expect(written(6.5, shownInCm)).toBe('16.5 cm');
});

test('a field shows what was written while its unit is the one shown, and a shop’s unit always', () => {
  expect(fieldText('1 1/4 in', inches)).toBe('1 1/4 in');
  expect(fieldText('1 1/4 in', shownInCm)).toBe('3.175 cm');
  expect(fieldText('1/4 yd', shownInCm)).toBe('1/4 yd');
  expect(fieldText(28, inches)).toBe('28 in');
});

test('what is typed without a unit is meant in the unit shown', () => {
  expect(typedLength(' 3/8 ', inches)).toBe('3/8 in');
  expect(typedLength('1,5', shownInCm)).toBe('1,5 cm');
  expect(typedLength('15 mm', inches)).toBe('15 mm');
  expect(() => typedLength('wide', inches)).toThrow(RangeError);
});

test('a purchase is told in the shop’s unit with the length beside it', () => {
  expect(writtenPurchase(27, '1/4 yd', inches)).toBe('3/4 yd (27 in)');
  expect(writtenPurchase(27, '10 cm', shownInCm)).toBe('0.69 m (68.6 cm)');
});
