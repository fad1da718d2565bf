import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { readArguments } from '../../src/cli/plan-arguments.ts';
import { drawingFiles } from '../../src/cli/plan-drawings.ts';
import { planGroups } from '../../src/cli/plan-groups.ts';
import { type PlannedQuilt, planText } from '../../src/cli/plan-text.ts';
import type { Blank, Group } from '../../src/cutting/cut-list.ts';
import type { LayoutAnswer, LayoutJob, Placement } from '../../src/plan/layout-job.ts';
import { makeTally } from '../../src/plan/make-tally.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import type { Polygon } from '../../src/shape/point.ts';

const fixture = (name: string) =>
  readFileSync(new URL(`../quilt/fixtures/${name}.yardwright.json`, import.meta.url), 'utf8');

const square: Polygon = [
  [0, 0],
  [6.5, 0],
  [6.5, 6.5],
  [0, 6.5],
];
/** A trapezium with sides at 60°: parallel sides 3 and 3 + 4/√3, height 2. */
const slant: Polygon = [
  [0, 0],
  [3 + 4 / Math.sqrt(3), 0],
  [3 + 2 / Math.sqrt(3), 2],
  [2 / Math.sqrt(3), 2],
];

function blank(id: string, outline: Polygon, demand: number): Blank {
  return {
    id,
    role: 'all',
    demand,
    spares: 0,
    shapes: [{ kind: 'outline', outline }],
    patch: outline,
    finishedArea: 4,
    sewnArea: 5,
    uses: [],
    directional: true,
    joined: null,
  };
}

/** Six squares in two strips that are cut alike and three trapeziums head to tail in one: worked out by hand. */
function byHand(): PlannedQuilt {
  const read = readQuilt(fixture('one-square'));
  const linen = { ...read.cloths[0]!, price: { amount: 12, per: 'yd' as const, currency: '$' } };
  const quilt = { ...read, cloths: [linen], squaring: '1 in' };
  const blanks = [blank('A1', square, 6), blank('B1', slant, 3)];
  const job: LayoutJob = {
    method: 'strips',
    ruler: 0.125,
    cloths: [{ id: 'linen', width: 42, step: 9, squaring: 1 }],
    blanks: blanks.map(({ id, demand, shapes }) => ({ id, demand, shapes })),
  };
  const group: Group = {
    id: 'linen',
    cloths: ['linen'],
    job,
    blanks,
    lengths: [{ id: 'linen', cloth: 'linen', piece: null }],
  };
  const at = (id: string, x: number, y: number, turn = 0): Placement => ({
    blank: id,
    shape: 0,
    turn,
    mirror: false,
    x,
    y,
  });
  const pitch = 3 + 2 / Math.sqrt(3);
  const answer: LayoutAnswer = {
    status: 'feasible',
    cost: 18,
    bound: 15.2,
    boundFrom: 'by hand',
    seconds: 0,
    layouts: [
      {
        cloth: 'linen',
        count: 1,
        length: 16,
        firstCut: 'across',
        strips: [
          { from: 0, height: 1 },
          { from: 1, height: 6.5 },
          { from: 7.5, height: 6.5 },
          { from: 14, height: 2 },
        ],
        placements: [
          ...[0, 1, 2].flatMap((k) => [at('A1', 6.5 * k, 1), at('A1', 6.5 * k, 7.5)]),
          at('B1', 0, 14),
          at('B1', 2 * pitch + 2 / Math.sqrt(3), 16, 180),
          at('B1', 2 * pitch, 14),
        ],
      },
    ],
    unplaced: [],
  };
  const cutList = {
    groups: [group],
    problems: [{ kind: 'warning' as const, text: 'The cloth "Felt" is in no scheme.' }],
  };
  return { quilt, cutList, answers: [answer], tally: makeTally(quilt, cutList, [answer]) };
}

describe('the plan as text', () => {
  const text = planText(byHand());

  test('says what to buy in steps and in yards, at what price, and what is left', () => {
    expect(text).toMatch(
      /WHAT TO BUY\n {2}Linen {2}1\/2 yd \(2 quarter yards\) {2}\$6\.00 {2}2 in beyond the need; proved least\n/,
    );
    expect(text).toContain('All together $6.00.');
  });

  test('says what is proved in words, with what is counted in', () => {
    expect(text).toContain('Linen: No plan with strips cut like these buys less than 2 quarter yards.');
    expect(text).toContain('squaring up (1 in off each end) and no spare blanks counted in');
  });

  test('shows the cautions before the first strip', () => {
    expect(text).toContain('Cut away from your body, and close the guard after every cut.');
    expect(text.indexOf('Measure your own cloth')).toBeLessThan(text.indexOf('Strips 1 to 2'));
  });

  test('tells strips cut alike once, with the marks of their subcuts', () => {
    expect(text).toContain('Trim 1 in to square the end.');
    expect(text).toContain(
      'Strips 1 to 2, each 6 1/2 in high, 3 blanks; 22 1/2 in left over\n      Open it flat, right side up. Two may lie one on the other, both right side up.\n      3 × A1: cut at 6 1/2, 13, 19 1/2\n',
    );
  });

  test('gives near and far mark of slanted cuts, in the ruler’s fractions, and the angle that rulers carry', () => {
    // The first cut runs from 3 + 4/√3 = 5.309 to 3 + 2/√3 = 4.155.
    expect(text).toContain('Strip 3: 2 in high, 3 blanks');
    expect(text).toMatch(/3 × B1: cut at ≈5 5\/16 \/ ≈4 1\/8 \(60°\), /);
    expect(text).toContain('≈ is to the nearest sixteenth of an inch');
  });

  test('passes on what the cut list has to say, and where the cloth goes', () => {
    expect(text).toContain('PLEASE NOTE\n  The cloth "Felt" is in no scheme.');
    expect(text).toMatch(/WHERE THE CLOTH GOES\n.*in².*seen.*waste\n {2}Linen +756 /);
  });

  test('names what could not be placed', () => {
    const planned = byHand();
    const answer: LayoutAnswer = {
      ...planned.answers[0]!,
      status: 'partial',
      bound: null,
      unplaced: [{ blank: 'A1', count: 2, why: 'needs a width of 60 in' }],
    };
    const partial = planText({
      ...planned,
      answers: [answer],
      tally: makeTally(planned.quilt, planned.cutList, [answer]),
    });
    expect(partial).toContain('Not planned: 2 × A1: needs a width of 60 in');
    expect(partial).not.toContain('proved least');
  });
});

test('a drawing is written for each length of cloth and each side of a block, under a name that files may have', () => {
  const [file, front, back, ...more] = drawingFiles(byHand());
  expect(more).toEqual([]);
  expect(file?.name).toBe('linen.svg');
  expect(back?.name).toBe(front?.name.replace('.svg', '-back.svg'));
  expect(back?.svg).not.toBe(front?.svg);
  expect(file?.svg).toMatch(/^<svg [\s\S]*<\/svg>\n?$/);
});

describe('the command line', () => {
  test('is read', () => {
    expect(readArguments(['a.json', '--json', '--out', 'dir', '--seconds', '5'])).toEqual({
      file: 'a.json',
      json: true,
      out: 'dir',
      papers: {},
      seconds: 5,
      compare: false,
      stacks: false,
      have: [],
    });
    expect(readArguments(['a.json', '--stacks'])).toMatchObject({ stacks: true });
    expect(readArguments(['a.json'])).toMatchObject({ json: false, out: null });
    expect(readArguments(['a.json', '--compare'])).toMatchObject({ compare: true });
    expect(readArguments(['a.json', '--have', 'noon-gold=1 1/4 yd', '--have', 'Sky = 40'])).toMatchObject({
      have: [
        { cloth: 'noon-gold', length: '1 1/4 yd' },
        { cloth: 'Sky', length: '40' },
      ],
    });
    expect(readArguments(['--schema'])).toBe('schema');
    expect(readArguments(['-h'])).toBe('help');
  });

  test.each([
    [[], /no quilt file is named/],
    [['a', 'b'], /one quilt file at a time; found a and b/],
    [['a', '--seconds', 'ten'], /--seconds: expected a number above zero; found "ten"/],
    [['a', '--seconds', '0'], /--seconds/],
    [['a', '--colour'], /--colour/],
    [['a', '--compare', '--have', 'x=1 yd'], /--compare and --have: one at a time/],
    [['a', '--have', '1 yd'], /--have: expected CLOTH=LENGTH, such as "noon-gold=1 1\/4 yd"; found "1 yd"/],
  ])('%j is refused', (words, message) => {
    expect(() => readArguments(words)).toThrow(message);
  });
});

describe('groups on several packers', () => {
  const group = (id: string): Group => ({
    id,
    cloths: [id],
    job: { method: 'strips', cloths: [{ id, width: 40 }], blanks: [] },
    blanks: [],
    lengths: [],
  });
  const groups = ['a', 'b', 'c', 'd'].map(group);

  test('answers come back in the order of the groups, and time not used goes to those after', async () => {
    let clock = 0;
    const busy: string[] = [];
    const packer = {
      plan: async (job: LayoutJob): Promise<LayoutAnswer> => {
        busy.push(job.cloths[0]!.id);
        clock += 1;
        return {
          status: 'optimal',
          cost: 0,
          bound: 0,
          boundFrom: job.cloths[0]!.id,
          seconds: job.seconds!,
          layouts: [],
          unplaced: [],
        };
      },
    };
    const plans = await planGroups(groups, [packer], 12, () => clock);
    expect(plans.map((each) => each.answer.boundFrom)).toEqual(['a', 'b', 'c', 'd']);
    expect(plans.map((each) => each.job.seconds)).toEqual([3, 11 / 3, 5, 9]);
    expect(busy).toEqual(['a', 'b', 'c', 'd']);
  });

  test('two packers share the groups', async () => {
    const taken: string[][] = [[], []];
    const packers = taken.map((list) => ({
      plan: async (job: LayoutJob): Promise<LayoutAnswer> => {
        list.push(job.cloths[0]!.id);
        await new Promise((resolve) => setTimeout(resolve, 1));
        return { status: 'optimal', cost: 0, bound: 0, boundFrom: '', seconds: 0, layouts: [], unplaced: [] };
      },
    }));
    await planGroups(groups, packers, 10, () => 0);
    expect(taken.map((list) => list.length)).toEqual([2, 2]);
  });

  test('a packer that fails fails the plan', async () => {
    const packer = { plan: () => Promise.reject(new Error('engine at fault')) };
    await expect(planGroups(groups, [packer], 1, () => 0)).rejects.toThrow('engine at fault');
  });
});

describe('the command itself', () => {
  const top = fileURLToPath(new URL('../..', import.meta.url));
  const run = (...words: readonly string[]) =>
    spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/plan.ts', ...words], { cwd: top, encoding: 'utf8' });

  test('tells a bad file in one line a fault, with status 2 and nothing on standard output', () => {
    const file = 'tests/quilt/fixtures/negative-width.yardwright.json';
    const { status, stdout, stderr } = run(file);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toBe(`${file}: cloths[0].width: expected a length above zero; found -42\n`);
  });

  test('tells a file that is not there, and a command that it does not understand', () => {
    expect(run('nowhere.json')).toMatchObject({ status: 2, stdout: '' });
    const { status, stderr } = run('--bright');
    expect(status).toBe(2);
    expect(stderr).toMatch(/--bright[\s\S]*usage: npm run -s plan/);
  });

  test('prints the JSON Schema', () => {
    const { status, stdout } = run('--schema');
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({ type: 'object', properties: { format: { const: 'yardwright' } } });
  });
});
