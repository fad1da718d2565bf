import { describe, expect, test } from 'vitest';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { quiltJsonSchema } from '../../src/quilt/quilt-schema.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { writeQuilt } from '../../src/quilt/write-quilt.ts';
import { fixture, messagesAfter, messagesFor, scenario } from './quilt-faults.ts';

describe('files that are no quilt files', () => {
  test('a truncated file is told by the line and the field where it ends', () => {
    expect(messagesFor(fixture('truncated.yardwright.txt'))).toEqual([
      expect.stringMatching(
        /^the file is cut short: it ends at line \d+, inside blocks\[0\]\.units\[0\]\.patches\[0\]/,
      ),
    ]);
  });

  test('wherever a file is cut, it is said to be cut short', () => {
    const whole = scenario('garden-gate').trim();
    for (let end = 1; end < whole.length; end += 37) {
      expect(messagesFor(whole.slice(0, end))[0]).toMatch(/^the file is cut short: it ends at line \d+/);
    }
  });

  test.each([
    ['', /^the file is empty/],
    ['  \n', /^the file is empty/],
    ['[1, 2]', /^expected a Yardwright quilt, an object { … }; found \[1,2\]/],
    ['{"format": "yardwright",, }', /^the file is not JSON: /],
    ['{}', /^format: expected "yardwright", the mark of a quilt file; it is missing/],
    ['{"format": "recipe", "version": 1}', /^format: .*found "recipe"/],
    ['{"format": "yardwright", "version": "1"}', /^version: expected the number 1; found "1"/],
    ['{"format": "yardwright"}', /^version: expected the number 1; it is missing/],
  ])('%j', (text, message) => {
    expect(messagesFor(text)).toEqual([expect.stringMatching(message)]);
  });

  test('a file of another version names both versions', () => {
    expect(messagesFor(fixture('version-7.yardwright.json'))).toEqual([
      'version: this file is version 7; this Yardwright reads version 1',
    ]);
  });
});

describe('faults in one field name it and say what was expected and found', () => {
  test('a negative width', () => {
    expect(messagesFor(fixture('negative-width.yardwright.json'))).toEqual([
      'cloths[0].width: expected a length above zero; found -42',
    ]);
  });

  // biome-ignore lint/suspicious/noExplicitAny: faults are planted that the type would not let pass
  test.each<[string, (quilt: any) => void, RegExp]>([
    ['a missing field', (q) => delete q.cloths[0].name, /^cloths\[0\]\.name: expected text in quotes; it is missing/],
    [
      'a length without unit',
      (q) => (q.room = '1 1/4'),
      /^room: expected text with a unit, such as "1 1\/4 in"; found/,
    ],
    ['an unreadable length', (q) => (q.ruler = 'thumb'), /^ruler: "thumb" has the unit "thumb"; expected in, cm/],
    ['a length of zero', (q) => (q.ruler = 0), /^ruler: expected a length above zero; found 0/],
    [
      'a truth value for a length',
      (q) => (q.room = true),
      /^room: expected a number in the quilt’s unit, or .*found true/,
    ],
    ['a misspelt field', (q) => (q.cloths[0].shrinkig = {}), /^cloths\[0\]: has "shrinkig", which this version/],
    ['an unknown field of the file', (q) => (q.notes = ''), /^the file has "notes", which/],
    [
      'an unknown print',
      (q) => (q.cloths[0].print = 'plaid'),
      /^cloths\[0\]\.print: expected one of "one-way", .*"plaid"/,
    ],
    [
      'a colour by name',
      (q) => (q.cloths[0].colour = 'red'),
      /^cloths\[0\]\.colour: expected a colour as #rrggbb.*"red"/,
    ],
    ['half a block', (q) => (q.blocks[0].count = 1.5), /^blocks\[0\]\.count: expected a whole number; found 1.5/],
    ['no block', (q) => (q.blocks[0].count = 0), /^blocks\[0\]\.count: expected 1 or more; found 0/],
    ['stacks in words', (q) => (q.stacks = 'yes'), /^stacks: expected true or false; found "yes"/],
    ['negative spares', (q) => (q.spares = -1), /^spares: expected 0 or more; found -1/],
    [
      'shrinking away',
      (q) => (q.cloths[0].shrinkage = { along: 70, across: 2 }),
      /along: expected 50 or less; found 70/,
    ],
    ['no patches', (q) => (q.blocks[0].units[0].patches = []), /patches: expected a list of 1 or more; found \[\]/],
    ['no id', (q) => (q.roles[0].id = ''), /^roles\[0\]\.id: expected text that is not empty/],
    [
      'a repeat over nothing',
      (q) => (q.blocks[0].units[0].repeat.over = 0),
      /repeat\.over: expected more than 0; found 0/,
    ],
    [
      'a corner in space',
      (q) => (q.blocks[0].units[0].patches[0].outline[1] = [1, 2, 3]),
      /^blocks\[0\]\.units\[0\]\.patches\[0\]\.outline\[1\]: expected a corner \[x, y\], or .*; found \[1,2,3\]/,
    ],
    [
      'a cloth list that is empty',
      (q) => (q.schemes[0].cloths.all = []),
      /^schemes\[0\]\.cloths\.all: expected a list of 1 or more; found \[\]/,
    ],
  ])('%s', (_, change, message) => {
    expect(messagesAfter(change)).toEqual([expect.stringMatching(message)]);
  });

  test('several faults are told together', () => {
    expect(
      messagesAfter((q) => {
        q.cloths[0].width = '-3 in';
        q.spares = 'some';
        q.blocks[0].units[0].paper = 'no';
      }),
    ).toHaveLength(3);
  });
});

describe('sound files', () => {
  test.each(['solstice-dial', 'garden-gate'])('%s is read, written and read again unchanged', (name) => {
    const quilt = readQuilt(scenario(name));
    const text = writeQuilt(quilt);
    expect(readQuilt(text)).toEqual(quilt);
    expect(writeQuilt(readQuilt(text))).toBe(text);
    expect(quilt).toEqual(JSON.parse(scenario(name)));
  });

  test('a cloth that no scheme names is no fault', () => {
    expect(readQuilt(fixture('cloth-without-scheme.yardwright.json')).cloths).toHaveLength(2);
  });

  test('corners and other small things are written on one line', () => {
    const lines = writeQuilt(readQuilt(fixture('one-square.yardwright.json'))).split('\n');
    expect(lines).toContainEqual(expect.stringContaining('"outline": [[-3, -3], [3, -3], [3, 3], [-3, 3]]'));
  });

  test('every field that the type allows is allowed by the schema', () => {
    const full: Quilt = {
      ...readQuilt(fixture('one-square.yardwright.json')),
      testBlock: 'b',
      joined: [
        { id: 'b', name: 'Binding', role: 'all', kind: 'strips', length: '3 m', width: 2.5, join: 0, shortest: 20 },
        { id: 'p', name: 'Back', role: 'all', kind: 'panels', length: 80, width: '2 m', join: '1 in', overhang: 4 },
      ],
      roles: [
        {
          id: 'all',
          name: 'All',
          facing: { to: 'outward', from: 'axis', within: 5 },
          shapes: ['outline', 'box', 'slant'],
          room: '1/2 in',
          biasAllowed: true,
        },
      ],
      blocks: [
        {
          id: 'b',
          name: 'B',
          count: 2,
          turns: [0, 45],
          units: [
            {
              id: 'A',
              name: 'A',
              paper: true,
              axis: 3,
              repeat: { count: 4, from: 10, over: 180, mirrored: 'also' },
              patches: [
                {
                  number: 7,
                  role: 'all',
                  room: 1,
                  facing: { to: 'along', edge: 0, sense: 'backward' },
                  outline: [[0, 0], [2, 0], { arc: { radius: 3, turn: 'clockwise', large: false } }, [1, 3]],
                },
              ],
            },
          ],
        },
      ],
      cloths: [
        {
          id: 'linen',
          name: 'Linen',
          colour: '#ABCDEF',
          print: 'check',
          up: 'across',
          wrongSide: true,
          width: '110 cm',
          step: '10 cm',
          price: { amount: 10, per: 'm', currency: '€' },
          shrinkage: { along: 3.5, across: 0 },
          washFirst: false,
          pieces: [{ id: 'p', width: 10, length: '18 in', count: 2, washed: false }],
        },
      ],
    };
    expect(readQuilt(writeQuilt(full))).toEqual(full);
  });

  test('the JSON Schema has the fields, and forbids others', () => {
    const schema = quiltJsonSchema() as {
      properties: Record<string, { items?: { properties?: object } }>;
      required: string[];
      additionalProperties: boolean;
    };
    // What a version adds later may be absent, so that older files still open.
    const added = ['stacks', 'finished', 'keep', 'testBlock'];
    expect(schema.required).toEqual(Object.keys(schema.properties).filter((field) => !added.includes(field)));
    expect(schema.required).toEqual(expect.arrayContaining(Object.keys(JSON.parse(scenario('solstice-dial')))));
    expect(schema.additionalProperties).toBe(false);
    expect(Object.keys(schema.properties.cloths?.items?.properties ?? {})).toEqual(
      expect.arrayContaining(['id', 'print', 'width', 'step', 'shrinkage', 'pieces']),
    );
  });
});
