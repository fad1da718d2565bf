import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { JobError } from '../../src/plan/job-field.ts';
import { readLayoutJob, readLayoutJobValue } from '../../src/plan/read-layout-job.ts';

const SQUARE = [
  [0, 0],
  [4, 0],
  [4, 3],
  [0, 3],
];

/** A job with every field, each rightly set; a test spoils one of them. */
const whole = () => ({
  method: 'strips' as unknown,
  stages: 2 as unknown,
  ruler: 0.125 as unknown,
  seconds: 10 as unknown,
  seed: 1 as unknown,
  cloths: [
    { id: 'bolt', width: 42, length: null, step: 4.5, cost: 1, firstCut: 'either', squaring: 1 },
    { id: 'shelf', width: 21, length: 18, count: 3, cost: 0, firstCut: 'along' },
    { id: 'roll', width: 21, length: 18, count: null },
  ] as Record<string, unknown>[],
  blanks: [
    {
      id: 'a',
      outline: SQUARE,
      demand: 12,
      turns: [0, { centre: 180, within: 5 }],
      mirror: true,
      cloths: ['bolt', { id: 'shelf', turns: 'any', mirror: false }],
    },
    { id: 'b', demand: 0, shapes: [{ outline: SQUARE, turns: 'any' }, { outline: SQUARE.slice(1) }] },
  ] as Record<string, unknown>[],
});

type Job = ReturnType<typeof whole>;

function messageOf(spoil: (job: Job) => void): string {
  const job = whole();
  spoil(job);
  // Through text, as a file comes; a number that JSON cannot hold is written as a file would hold it.
  const text = JSON.stringify(job, (_, value) => (value === Infinity ? '1e999' : value)).replaceAll('"1e999"', '1e999');
  try {
    readLayoutJob(text);
  } catch (error) {
    expect(error).toBeInstanceOf(JobError);
    return (error as Error).message;
  }
  return 'no fault found';
}

test('a job with every field is read as it stands', () => {
  expect(readLayoutJob(JSON.stringify(whole()))).toEqual(whole());
});

test('fields that are not part of a job are passed over', () => {
  const job = { ...whole(), name: 'gcut1', twoStageOptimum: 1016 };
  Object.assign(job.cloths[0]!, { colour: 'blue' });
  Object.assign(job.blanks[0]!, { note: 'cut first' });
  expect(readLayoutJob(JSON.stringify(job))).toEqual(whole());
});

test('absent fields stay absent and a bolt is written with length null', () => {
  const text = '{"method":"shears","cloths":[{"id":"c","width":1}],"blanks":[]}';
  expect(readLayoutJob(text)).toEqual({ method: 'shears', cloths: [{ id: 'c', width: 1, length: null }], blanks: [] });
});

test('three stages and shears are part of the format', () => {
  expect(readLayoutJobValue({ ...whole(), stages: 3 }).stages).toBe(3);
  expect(readLayoutJobValue({ ...whole(), method: 'shears' }).method).toBe('shears');
});

describe('a fault is told in one line that names the field, the value and what was expected', () => {
  const bolt = (job: Job) => job.cloths[0]!;
  const piece = (job: Job) => job.cloths[1]!;
  const a = (job: Job) => job.blanks[0]!;
  const b = (job: Job) => job.blanks[1]!;
  const set = (of: (job: Job) => object, fields: object) => (job: Job) => void Object.assign(of(job), fields);
  const job = (fields: object) => set((j) => j, fields);
  const outline = (points: unknown) => set(a, { outline: points });
  const cases: readonly (readonly [string, (job: Job) => void, string])[] = [
    ['a wrong method', job({ method: 'laser' }), 'method: is not known: "laser"; expected "strips" or "shears"'],
    ['no method', job({ method: undefined }), 'method: is missing: nothing; expected "strips" or "shears"'],
    ['four stages', job({ stages: 4 }), 'stages: is not known: 4; expected 2 or 3'],
    ['a ruler of zero', job({ ruler: 0 }), 'ruler: is zero: 0; expected'],
    ['a negative time', job({ seconds: -1 }), 'seconds: is negative: -1; expected'],
    ['a broken seed', job({ seed: 1.5 }), 'seed: is not a whole number: 1.5; expected'],
    ['no cloths', job({ cloths: [] }), 'cloths: is empty: []; expected at least one cloth'],
    ['cloths that are no list', job({ cloths: {} }), 'cloths: is not a list: {}; expected'],
    ['a cloth that is no object', job({ cloths: [42] }), 'cloths[0]: is not an object: 42; expected'],
    ['no blanks', job({ blanks: undefined }), 'blanks: is missing: nothing; expected'],
    ['a negative width', set(bolt, { width: -42 }), 'cloths[0].width: is negative: -42; expected'],
    ['a width of zero', set(bolt, { width: 0 }), 'cloths[0].width: is zero: 0; expected'],
    ['a width in words', set(bolt, { width: '42 in' }), 'cloths[0].width: is not a number: "42 in"; expected'],
    ['an endless width', set(bolt, { width: Infinity }), 'cloths[0].width: is not finite: Infinity; expected'],
    ['a piece without length', set(piece, { length: 0 }), 'cloths[1].length: is zero: 0; expected'],
    ['half a piece', set(piece, { count: 1.5 }), 'cloths[1].count: is not a whole number: 1.5; expected'],
    ['a step on a piece', set(piece, { step: 4.5 }), 'cloths[1].step: stands on a piece: 4.5; expected'],
    ['squaring on a piece', set(piece, { squaring: 1 }), 'cloths[1].squaring: stands on a piece: 1; expected'],
    ['a count on a bolt', set(bolt, { count: 2 }), 'cloths[0].count: stands on a bolt: 2; expected'],
    ['a step of zero', set(bolt, { step: 0 }), 'cloths[0].step: is zero: 0; expected'],
    ['a negative cost', set(bolt, { cost: -1 }), 'cloths[0].cost: is negative: -1; expected'],
    ['negative squaring', set(bolt, { squaring: -1 }), 'cloths[0].squaring: is negative: -1; expected'],
    [
      'a first cut askew',
      set(bolt, { firstCut: 'bias' }),
      'cloths[0].firstCut: is not known: "bias"; expected "across"',
    ],
    ['two cloths of one id', set(piece, { id: 'bolt' }), 'cloths[1].id: is the same as cloths[0].id: "bolt"; expected'],
    ['two blanks of one id', set(b, { id: 'a' }), 'blanks[1].id: is the same as blanks[0].id: "a"; expected'],
    ['a blank without id', set(a, { id: undefined }), 'blanks[0].id: is missing: nothing; expected'],
    ['an empty id', set(a, { id: ' ' }), 'blanks[0].id: is empty: " "; expected'],
    ['half a blank', set(a, { demand: 2.5 }), 'blanks[0].demand: is not a whole number: 2.5; expected'],
    ['a negative demand', set(a, { demand: -1 }), 'blanks[0].demand: is negative: -1; expected'],
    ['a demand in words', set(a, { demand: 'two' }), 'blanks[0].demand: is not a number: "two"; expected'],
    [
      'an unknown cloth',
      set(a, { cloths: ['x'] }),
      'blanks[0].cloths[0]: is no cloth of this job: "x"; expected one of',
    ],
    [
      'an unknown cloth with turns',
      set(a, { cloths: ['bolt', { id: 'x' }] }),
      'blanks[0].cloths[1].id: is no cloth of this job: "x"; expected one of "bolt"',
    ],
    ['a cloth named twice', set(a, { cloths: ['bolt', 'bolt'] }), 'blanks[0].cloths[1]: is the same as'],
    ['a blank from no cloth', set(a, { cloths: [] }), 'blanks[0].cloths: is empty: []; expected'],
    ['outline and shapes', set(b, { outline: SQUARE }), 'blanks[1].shapes: stands beside an outline'],
    ['neither outline nor shapes', set(b, { shapes: undefined }), 'blanks[1].outline: is missing: nothing; expected'],
    ['shapes that are none', set(b, { shapes: [] }), 'blanks[1].shapes: is empty: []; expected'],
    ['turns beside shapes', set(b, { turns: [0] }), 'blanks[1].turns: stands beside shapes: [0]; expected'],
    ['a mirror in words', set(a, { mirror: 'yes' }), 'blanks[0].mirror: is neither true nor false: "yes"; expected'],
    ['turns in words', set(a, { turns: 'all' }), 'blanks[0].turns: is not known: "all"; expected "any"'],
    ['turns that are none', set(a, { turns: [] }), 'blanks[0].turns: is empty: []; expected'],
    ['a turn that is no number', set(a, { turns: [0, 'up'] }), 'blanks[0].turns[1]: is not an object: "up"; expected'],
    [
      'an interval without centre',
      set(a, { turns: [{ within: 5 }] }),
      'blanks[0].turns[0].centre: is missing: nothing; expected',
    ],
    [
      'an interval of negative width',
      set(a, { turns: [{ centre: 0, within: -5 }] }),
      'blanks[0].turns[0].within: is negative: -5; expected',
    ],
    [
      'turns of one cloth',
      set(a, { cloths: [{ id: 'bolt', turns: [Infinity] }] }),
      'blanks[0].cloths[0].turns[0]: is not finite: Infinity; expected',
    ],
    ['two points', outline(SQUARE.slice(0, 2)), 'blanks[0].outline: has 2 points: [[0,0],[4,0]]; expected'],
    [
      'a point of three numbers',
      outline([[0, 0, 0], ...SQUARE]),
      'blanks[0].outline[0]: has 3 entries: [0,0,0]; expect',
    ],
    ['a point that is no number', outline([['0', 0], ...SQUARE]), 'blanks[0].outline[0][0]: is not a number: "0"; exp'],
    ['a closing point', outline([...SQUARE, [0, 0]]), 'blanks[0].outline: repeats point 4 as point 0: [0,0]; expected'],
    [
      'no area',
      outline([...SQUARE.slice(0, 2), [2, 0]]),
      'blanks[0].outline: has no area: [[0,0],[4,0],[2,0]]; expected',
    ],
    [
      'a crossing',
      outline([SQUARE[0], SQUARE[2], SQUARE[1], SQUARE[3]]),
      'blanks[0].outline: crosses or touches itself where edge 0 from [0,0] to [4,3] meets edge 2 from [4,0] to [0,3]',
    ],
    [
      'a corner on another edge',
      outline([...SQUARE, [2, 0]]),
      'blanks[0].outline: crosses or touches itself where edge 0 from [0,0] to [4,0] meets edge 3',
    ],
    [
      'a spike',
      outline([SQUARE[0], [6, 0], ...SQUARE.slice(1)]),
      'blanks[0].outline: folds back on itself where edge 0 from [0,0] to [6,0] meets edge 1 from [6,0] to [4,0]',
    ],
    [
      'a crossing in a second shape',
      set(b, { shapes: [{ outline: SQUARE }, { outline: [SQUARE[0], SQUARE[2], SQUARE[1], SQUARE[3]] }] }),
      'blanks[1].shapes[1].outline: crosses or touches itself',
    ],
  ];
  test.each(cases)('%s', (_, spoil, start) => {
    const message = messageOf(spoil);
    expect(message.slice(0, start.length)).toBe(start);
    expect(message).toContain('expected');
    expect(message).not.toContain('\n');
  });
});

describe('text that is no job', () => {
  test.each([
    ['a truncated file', JSON.stringify(whole(), null, 2).slice(0, 200)],
    ['an empty file', ''],
    ['a drawing', '<svg>\n</svg>'],
  ])('%s is not JSON', (_, text) => {
    expect(() => readLayoutJob(text)).toThrow(/^job: is not JSON .*; expected one whole JSON object$/);
  });

  test.each(['[]', 'null', '42', '"job"'])('%s is not an object', (text) => {
    expect(() => readLayoutJob(text)).toThrow(`job: is not an object: ${text}; expected an object with method`);
  });
});

test('a file cut anywhere is refused with one line', () => {
  const text = JSON.stringify(whole());
  fc.assert(
    fc.property(fc.integer({ min: 0, max: text.length - 1 }), (end) => {
      expect(() => readLayoutJob(text.slice(0, end))).toThrow(/^job: [^\n]*$/);
    }),
    { numRuns: 50 },
  );
});

test('a ring of corners is read, and joined by every second corner it is refused', () => {
  const ring = fc.tuple(
    fc.integer({ min: 2, max: 12 }),
    fc.double({ min: 0, max: 6.2, noNaN: true }),
    fc.array(fc.double({ min: 1, max: 3, noNaN: true }), { minLength: 25, maxLength: 25 }),
  );
  fc.assert(
    fc.property(ring, ([half, start, radii]) => {
      const count = 2 * half + 1;
      const outline = Array.from({ length: count }, (_, i) => {
        const angle = start + (2 * Math.PI * i) / count;
        return [radii[i]! * Math.cos(angle), radii[i]! * Math.sin(angle)];
      });
      const read = (points: unknown) =>
        readLayoutJobValue({ ...whole(), blanks: [{ id: 'a', outline: points, demand: 1 }] });
      expect(read(outline).blanks[0]?.outline).toEqual(outline);
      // With an odd number of corners this goes twice round the origin, as no simple polygon does.
      const starred = outline.map((_, i) => outline[(2 * i) % count]);
      expect(() => read(starred)).toThrow(/^blanks\[0\]\.outline: crosses or touches itself/);
    }),
  );
});

test('the published benchmark jobs are read', (context) => {
  const folder = fileURLToPath(new URL('../../../shared/benchmarks/', import.meta.url));
  if (!existsSync(folder)) return context.skip(`no benchmarks at ${folder}`);
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.json'));
  expect(files.length).toBeGreaterThan(0);
  for (const file of files) expect(readLayoutJob(readFileSync(folder + file, 'utf8')).blanks.length).toBeGreaterThan(0);
});
