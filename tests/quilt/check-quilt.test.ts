import { describe, expect, test } from 'vitest';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { fixture, messagesAfter, messagesFor, scenario } from './quilt-faults.ts';

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
    ['an unknown test block', (q) => (q.testBlock = 'moon'), /^testBlock: names the block "moon"; the blocks are/],
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
    [
      'an overhang of strips',
      (q) => q.joined.push({ id: 'b', name: 'B', role: 'all', length: 9, width: 2, join: 0, overhang: 4 }),
      /^joined\[0\]\.overhang: is for joined lengths of kind "panels"/,
    ],
    [
      'a shortest panel',
      (q) =>
        q.joined.push({ id: 'b', name: 'B', role: 'all', kind: 'panels', length: 9, width: 9, join: 0, shortest: 4 }),
      /^joined\[0\]\.shortest: is for joined lengths of kind "strips"/,
    ],
    [
      'a joined length of unknown role',
      (q) => q.joined.push({ id: 'b', name: 'B', role: 'sea', length: 9, width: 2, join: 0 }),
      /^joined\[0\]\.role: names the role "sea"/,
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
