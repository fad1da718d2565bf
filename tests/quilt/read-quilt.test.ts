import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { quiltJsonSchema } from '../../src/quilt/quilt-schema.ts';
import { QuiltFileError, readQuilt } from '../../src/quilt/read-quilt.ts';
import { writeQuilt } from '../../src/quilt/write-quilt.ts';

const fixture = (name: string) => readFileSync(new URL(`fixtures/${name}`, import.meta.url), 'utf8');
const scenario = (name: string) =>
  readFileSync(new URL(`../../scenarios/${name}.yardwright.json`, import.meta.url), 'utf8');

/** The messages for a text that is not a quilt file. */
function messagesFor(text: string): readonly string[] {
  try {
    readQuilt(text);
  } catch (error) {
    if (error instanceof QuiltFileError) {
      return error.messages;
    }
    throw error;
  }
  throw new Error('it was read without complaint');
}

/** The messages for a sound quilt after a change to its data. */
// biome-ignore lint/suspicious/noExplicitAny: faults are planted that the type would not let pass
function messagesAfter(change: (quilt: any) => void, base = fixture('one-square.yardwright.json')): readonly string[] {
  const quilt = JSON.parse(base);
  change(quilt);
  return messagesFor(JSON.stringify(quilt));
}

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

describe('faults between fields', () => {
  // biome-ignore lint/suspicious/noExplicitAny: faults are planted that the type would not let pass
  test.each<[string, (quilt: any) => void, RegExp]>([
    ['two roles of one id', (q) => q.roles.push(q.roles[0]), /^roles\[1\]\.id: .*"all" is already that of roles\[0\]/],
    ['two cloths of one id', (q) => q.cloths.push(q.cloths[0]), /^cloths\[1\]\.id: .*"linen"/],
    [
      'two patches of one number',
      (q) => q.blocks[0].units[0].patches.push(q.blocks[0].units[0].patches[0]),
      /^blocks\[0\]\.units\[0\]\.patches\[1\]\.number: .*1 is already that of patches\[0\]/,
    ],
    [
      'a patch of unknown role',
      (q) => (q.blocks[0].units[0].patches[0].role = 'sea'),
      /^blocks\[0\]\.units\[0\]\.patches\[0\]\.role: names the role "sea"; the roles are "all"/,
    ],
    [
      'a scheme of unknown cloth',
      (q) => (q.schemes[0].cloths.all = 'silk'),
      /^schemes\[0\]\.cloths\.all: names the cloth "silk"/,
    ],
    ['one unknown cloth of two', (q) => (q.schemes[0].cloths.all = ['linen', 'silk']), /names the cloth "silk"/],
    [
      'a scheme of unknown role',
      (q) => (q.schemes[0].cloths.sea = 'linen'),
      /^schemes\[0\]\.cloths\.sea: names the role "sea"/,
    ],
    ['an unknown scheme', (q) => (q.scheme = 'other'), /^scheme: names the scheme "other"; the schemes are "only"/],
    [
      'neither form nor units',
      (q) => delete q.blocks[0].units,
      /^blocks\[0\]: expected either a form or units, and it has neither/,
    ],
    [
      'both form and units',
      (q) =>
        (q.blocks[0].form = { kind: 'compass-star', points: 16, inner: 4, outer: 10, ring: 13, wedges: 20, side: 28 }),
      /^blocks\[0\]: expected either a form or units, and it has both/,
    ],
    ['along no edge', (q) => (q.roles[0].facing = { to: 'along' }), /^roles\[0\]\.facing\.edge: is missing/],
    [
      'along an edge that is not there',
      (q) => (q.blocks[0].units[0].patches[0].facing = { to: 'along', edge: 4 }),
      /^blocks\[0\]\.units\[0\]\.patches\[0\]\.facing\.edge: expected an edge of this outline, 0 to 3; found 4/,
    ],
    [
      'along an arc',
      (q) =>
        Object.assign(q.blocks[0].units[0].patches[0], {
          facing: { to: 'along', edge: 1 },
          outline: [[0, 0], [1, 0], { arc: { radius: 1, turn: 'anticlockwise' } }, [0, 1]],
        }),
      /facing\.edge: expected a straight edge; edge 1 is an arc/,
    ],
  ])('%s', (_, change, message) => {
    expect(messagesAfter(change)).toEqual([expect.stringMatching(message)]);
  });

  // biome-ignore lint/suspicious/noExplicitAny: faults are planted that the type would not let pass
  test.each<[string, (form: any) => void, RegExp]>([
    [
      'an odd number of points',
      (f) => (f.points = 15),
      /^blocks\[0\]\.form\.points: expected an even number from 4 to 64; found 15/,
    ],
    ['too many points', (f) => (f.points = 66), /^blocks\[0\]\.form\.points: expected 64 or less; found 66/],
    ['too few wedges', (f) => (f.wedges = 2), /^blocks\[0\]\.form\.wedges: expected 3 or more; found 2/],
    [
      'valleys beyond the tips',
      (f) => (f.inner = 11),
      /^blocks\[0\]\.form\.inner: expected less than outer, which is 10 in; found 11 in/,
    ],
    [
      'tips beyond the ring',
      (f) => (f.outer = '40 cm'),
      /^blocks\[0\]\.form\.outer: expected less than ring, which is 13.25 in; found 40 cm/,
    ],
    [
      'a ring as wide as the square',
      (f) => (f.ring = 14),
      /^blocks\[0\]\.form\.ring: expected less than half the side, which is half of 28 in; found 14 in/,
    ],
  ])('a form with %s', (_, change, message) => {
    expect(messagesAfter((q) => change(q.blocks[0].form), scenario('solstice-dial'))).toEqual([
      expect.stringMatching(message),
    ]);
  });

  test('a form whose roles are not all listed', () => {
    const messages = messagesAfter((q) => {
      q.roles.pop();
      for (const scheme of q.schemes) {
        delete scheme.cloths.sky;
      }
    }, scenario('solstice-dial'));
    expect(messages).toEqual(['blocks[0].form: needs the role "sky", which roles does not list']);
  });
});

describe('outlines', () => {
  const outline = (points: unknown) =>
    messagesAfter((q) => {
      q.blocks[0].units[0].patches[0].outline = points;
    });
  const field = 'blocks[0].units[0].patches[0].outline: ';

  test('one that crosses itself is told with the place', () => {
    expect(messagesFor(fixture('self-crossing.yardwright.json'))).toEqual([
      `${field}the outline crosses or touches itself at (0, 0); each edge may meet only its two neighbours`,
    ]);
  });

  test('an arc that swings across another edge is told too', () => {
    expect(messagesFor(fixture('self-crossing-arc.yardwright.json'))).toEqual([
      expect.stringMatching(/outline: the outline crosses or touches itself at \(/),
    ]);
  });

  test('an arc that cannot exist is told with its chord, its radius and the least radius that would do', () => {
    expect(messagesFor(fixture('impossible-arc.yardwright.json'))).toEqual([
      `${field}an arc of radius 2.5 cannot join corners 8.4853 apart; its radius must be at least 4.2427 (from (3, -3) to (-3, 3))`,
    ]);
  });

  const bow = { arc: { radius: 1, turn: 'anticlockwise' } };
  test.each<[string, unknown, RegExp]>([
    [
      'two corners',
      [
        [0, 0],
        [1, 0],
      ],
      /an outline of 2 straight edges encloses nothing/,
    ],
    ['an arc first', [bow, [0, 0], [1, 0], [1, 1]], /an outline begins with a corner/],
    ['two arcs in a row', [[0, 0], bow, bow, [1, 0], [1, 1]], /two arcs stand together/],
    [
      'a corner twice',
      [
        [0, 0],
        [1, 0],
        [1, 0],
        [1, 1],
      ],
      /corner \(1, 0\) is given twice in a row/,
    ],
    [
      'no area',
      [
        [0, 0],
        [1, 0],
        [2, 0],
      ],
      /crosses or touches itself/,
    ],
    [
      'a spike',
      [
        [0, 0],
        [4, 0],
        [4, 3],
        [4, 1],
        [0, 1],
      ],
      /crosses or touches itself at \(4, 2\)/,
    ],
    [
      'a waist without width',
      [
        [0, 0],
        [2, 0],
        [1, 1],
        [2, 2],
        [0, 2],
        [1, 1],
      ],
      /crosses or touches itself/,
    ],
    [
      'a radius of zero',
      [[0, 0], [1, 0], { arc: { radius: 0, turn: 'clockwise' } }, [1, 1]],
      /radius 0; it must be greater than 0/,
    ],
  ])('%s', (_, points, message) => {
    expect(outline(points)).toEqual([expect.stringMatching(message)]);
  });

  test.each<[string, unknown]>([
    ['a lens of two arcs', [[0, 0], bow, [1, 0], bow]],
    ['a half disc', [[-1, 0], [1, 0], bow]],
    [
      'a keyhole of more than half a circle',
      [[-0.5, 0], [-0.5, -1], [0.5, -1], [0.5, 0], { arc: { radius: 1, turn: 'anticlockwise', large: true } }],
    ],
    [
      'clockwise corners',
      [
        [0, 0],
        [0, 1],
        [1, 1],
        [1, 0],
      ],
    ],
  ])('%s is sound', (_, points) => {
    const quilt = JSON.parse(fixture('one-square.yardwright.json'));
    quilt.blocks[0].units[0].patches[0].outline = points;
    expect(readQuilt(JSON.stringify(quilt)).blocks).toHaveLength(1);
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
      joined: [{ id: 'b', name: 'Binding', role: 'all', length: '3 m', width: 2.5, join: 0 }],
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
    expect(schema.required).toEqual(Object.keys(schema.properties));
    expect(schema.required).toEqual(expect.arrayContaining(Object.keys(JSON.parse(scenario('solstice-dial')))));
    expect(schema.additionalProperties).toBe(false);
    expect(Object.keys(schema.properties.cloths?.items?.properties ?? {})).toEqual(
      expect.arrayContaining(['id', 'print', 'width', 'step', 'shrinkage', 'pieces']),
    );
  });
});
