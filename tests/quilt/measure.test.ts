import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatClothLength,
  formatFraction,
  formatLength,
  formatMark,
  formatNumber,
} from '../../src/quilt/format-length.ts';
import { convert, lengthIn, parseLength } from '../../src/quilt/measure.ts';

describe('reading lengths', () => {
  test.each([
    ['1 1/4', 1.25, null],
    ['1-1/4', 1.25, null],
    ['1¼', 1.25, null],
    ['1 ¼ in', 1.25, 'in'],
    ['1.25 in', 1.25, 'in'],
    ['1 1/4"', 1.25, 'in'],
    ['1 1/4″', 1.25, 'in'],
    ['3⁄8 inch', 0.375, 'in'],
    ['-1/2 in', -0.5, 'in'],
    ['15 cm', 15, 'cm'],
    ['15cm', 15, 'cm'],
    ['6 mm', 6, 'mm'],
    ['0,5 m', 0.5, 'm'],
    ['1/4 yd', 0.25, 'yd'],
    ['2 yards', 2, 'yd'],
    ['3 metres', 3, 'm'],
    ['.5', 0.5, null],
  ])('%s is understood', (text, value, unit) => {
    expect(parseLength(text)).toEqual({ value, unit });
  });

  test.each([
    ['', /not a length/],
    ['in', /"in" is not a length/],
    ['wide', /has the unit "wide"; expected in, cm, mm, yd or m/],
    ['2 ft', /unit "ft"/],
    ['1 .5', /not a length/],
    ['1/0 in', /divides by zero/],
    ['1,000 mm', /thousands or thousandths/],
    ['1 1/4 1/4', /not a length/],
  ])('"%s" is refused with its reason', (text, message) => {
    expect(() => parseLength(text)).toThrow(message);
  });

  test('bare numbers are in the unit asked for, written units are converted', () => {
    expect(lengthIn('in', 3)).toBe(3);
    expect(lengthIn('cm', '3')).toBe(3);
    // The international yard and inch: 0.9144 m and 25.4 mm exactly.
    expect(lengthIn('in', '1/4 yd')).toBe(9);
    expect(lengthIn('cm', '1 in')).toBe(2.54);
    expect(lengthIn('cm', '1 yd')).toBe(91.44);
    expect(lengthIn('in', '1 m')).toBeCloseTo(39.3700787, 6);
    expect(lengthIn('cm', '1/2 m')).toBe(50);
    expect(lengthIn('cm', '15 mm')).toBe(1.5);
  });
});

describe('writing lengths', () => {
  test('inches are fractions in lowest terms, to the part of an inch that is asked for', () => {
    expect(formatLength(1.25, 'in')).toBe('1 1/4 in');
    expect(formatNumber(0.5, 'in')).toBe('1/2');
    expect(formatNumber(0, 'in')).toBe('0');
    expect(formatNumber(-0.01, 'in')).toBe('0');
    expect(formatNumber(-1.5, 'in')).toBe('-1 1/2');
    expect(formatNumber(1.99, 'in')).toBe('2');
    expect(formatNumber(1 / 64, 'in', { denominator: 64 })).toBe('1/64');
    expect(formatFraction(2.3, 4)).toBe('2 1/4');
  });

  test('centimetres are decimals without trailing zeros', () => {
    expect(formatLength(3.2, 'cm', { decimals: 2 })).toBe('3.2 cm');
    expect(formatNumber(10, 'cm')).toBe('10');
    expect(formatNumber(-0.001, 'cm')).toBe('0');
  });

  test('cloth is told in eighths of a yard or in metres', () => {
    expect(formatClothLength(63, 'in', 'yd')).toBe('1 3/4 yd');
    expect(formatClothLength(4.5, 'in', 'yd')).toBe('1/8 yd');
    expect(formatClothLength(40, 'in', 'yd')).toBe('1.11 yd');
    expect(formatClothLength(75, 'cm', 'm')).toBe('0.75 m');
    expect(formatClothLength(100, 'cm', 'm')).toBe('1 m');
  });

  test('marks between two lines of the ruler say that they are rounded', () => {
    expect(formatMark(5.3125, 'in')).toBe('5 5/16');
    expect(formatMark(5.309, 'in')).toBe('≈5 5/16');
    expect(formatMark(4.2, 'cm')).toBe('4.2');
    expect(formatMark(4.23, 'cm')).toBe('≈4.2');
  });

  test('what is written is read back as the same number, for every sixty-fourth of an inch', () => {
    fc.assert(
      fc.property(fc.integer({ min: -64 * 500, max: 64 * 500 }), (parts) => {
        const value = parts === 0 ? 0 : parts / 64;
        expect(lengthIn('in', formatLength(value, 'in', { denominator: 64 }))).toBe(value);
      }),
    );
  });

  test('what is written is read back as the same number, for every tenth of a millimetre', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100 * 2000 }), (parts) => {
        const value = parts / 100;
        expect(lengthIn('cm', formatLength(value, 'cm', { decimals: 2 }))).toBe(value);
        expect(parseLength(formatLength(value, 'cm', { decimals: 2 })).value).toBe(value);
      }),
    );
  });

  test('there and back between units is the same number within rounding of the last place', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 5000, noNaN: true }),
        fc.constantFrom('cm', 'mm', 'yd', 'm'),
        (x, unit) => {
          expect(Math.abs(convert(convert(x, 'in', unit), unit, 'in') / x - 1)).toBeLessThan(1e-15);
        },
      ),
    );
  });
});
