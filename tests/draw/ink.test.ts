import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contrast, inkOn, mix } from '../../src/draw/ink.ts';

// The extremes of the contrast ratio are given in the W3C's Web Content Accessibility Guidelines 2.2 as 1 and 21.
test('black on white contrasts 21 to 1 and a colour on itself 1 to 1', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#86a85a', '#86a85a')).toBe(1);
});

// WCAG 2.2, success criterion 1.4.3: at least 4.5 to 1 for text.
test('the ink chosen for a cloth can be read on it whatever its colour', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 0xffffff }), (value) => {
      const colour = `#${value.toString(16).padStart(6, '0')}`;
      expect(contrast(colour, inkOn(colour))).toBeGreaterThanOrEqual(4.5);
    }),
  );
});

test('mixing goes from the one colour to the other', () => {
  expect(mix('#102030', '#ffffff', 0)).toBe('#102030');
  expect(mix('#102030', '#ffffff', 1)).toBe('#ffffff');
  expect(() => mix('red', '#ffffff', 1)).toThrow('"red" is not a colour');
});
