import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { convertQuilt } from '../../src/quilt/convert-quilt.ts';
import { lengthIn } from '../../src/quilt/measure.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { writeQuilt } from '../../src/quilt/write-quilt.ts';

const scenario = (name: string): Quilt =>
  readQuilt(readFileSync(new URL(`../../scenarios/${name}.yardwright.json`, import.meta.url), 'utf8'));

test.each(['solstice-dial', 'garden-gate'])('%s comes back from the other unit', (name) => {
  const quilt = scenario(name);
  const other = convertQuilt(quilt, quilt.unit === 'in' ? 'cm' : 'in');
  expect(other.unit).not.toBe(quilt.unit);
  const back = convertQuilt(other, quilt.unit);
  expectClose(back, quilt);
  // The converted quilt is a sound file too.
  expect(readQuilt(writeQuilt(other))).toEqual(other);
});

test('written lengths stay to the letter, bare ones change', () => {
  const quilt = scenario('garden-gate');
  const inches = convertQuilt(quilt, 'in');
  expect(inches.allowance).toBe('1/4 in');
  expect(inches.cloths[0]?.width).toBe('110 cm');
  expect(inches.ruler).toBeCloseTo(0.5 / 2.54, 12);
  expect(inches.blocks[0]?.units?.[0]?.patches[0]?.outline[0]).toEqual([-5 / 2.54, -5 / 2.54]);
  for (const [before, after] of [
    [quilt.room, inches.room],
    [quilt.ruler, inches.ruler],
    [quilt.joined[0]!.width, inches.joined[0]!.width],
    [quilt.joined[0]!.length, inches.joined[0]!.length],
  ] as const) {
    expect(lengthIn('in', after) * 2.54).toBeCloseTo(lengthIn('cm', before), 9);
  }
});

test('text without a unit, typed on the page, gets the unit that it was meant in', () => {
  const quilt: Quilt = { ...scenario('solstice-dial'), room: '1 1/4' };
  expect(convertQuilt(quilt, 'cm').room).toBe('1 1/4 in');
});

test('what is optional of a joined length is converted where it is there', () => {
  const quilt: Quilt = {
    ...scenario('solstice-dial'),
    joined: [
      { id: 'a', name: 'A', role: 'sky', length: 100, width: 2, join: 1, shortest: 20 },
      { id: 'b', name: 'B', role: 'sky', kind: 'panels', length: 100, width: '2 m', join: 1, overhang: 4 },
    ],
  };
  const [strips, panels] = convertQuilt(quilt, 'cm').joined;
  expect(strips).toEqual({ ...quilt.joined[0], length: 254, width: 5.08, join: 2.54, shortest: 50.8 });
  expect(panels).toEqual({ ...quilt.joined[1], length: 254, join: 2.54, overhang: 10.16 });
});

test('the unit it already has changes nothing', () => {
  const quilt = scenario('solstice-dial');
  expect(convertQuilt(quilt, 'in')).toBe(quilt);
});

/** Equal but for numbers, which may differ by 1e-9. */
function expectClose(actual: unknown, expected: unknown): void {
  if (typeof expected === 'number') {
    expect(Math.abs((actual as number) - expected)).toBeLessThan(1e-9);
  } else if (typeof expected === 'object' && expected !== null) {
    expect(Object.keys(actual as object)).toEqual(Object.keys(expected));
    for (const [key, value] of Object.entries(expected)) {
      expectClose((actual as Record<string, unknown>)[key], value);
    }
  } else {
    expect(actual).toBe(expected);
  }
}
