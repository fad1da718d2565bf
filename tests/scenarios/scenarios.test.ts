/** The scenarios end to end: from the file to plans that both readers find clean. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { CutList } from '../../src/cutting/cut-list.ts';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import type { LayoutAnswer } from '../../src/plan/layout-job.ts';
import { makeCutSteps } from '../../src/plan/make-cut-steps.ts';
import { makeTally } from '../../src/plan/make-tally.ts';
import type { Tally } from '../../src/plan/tally.ts';
import { lengthIn } from '../../src/quilt/measure.ts';
import { placesOf } from '../../src/quilt/places.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { unitsOf } from '../../src/quilt/units-of.ts';
import { Packer } from '../../workers/packer.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { area } from '../quilt/exact-outline.ts';

interface Planned {
  readonly quilt: Quilt;
  readonly cutList: CutList;
  readonly answers: readonly LayoutAnswer[];
  readonly tally: Tally;
}

const SECONDS_A_GROUP = 6;

const planned = new Map<string, Promise<Planned>>();

/** Each scenario is planned once, for all the tests that look at it. */
function plan(name: string): Promise<Planned> {
  const known = planned.get(name) ?? planAfresh(name);
  planned.set(name, known);
  return known;
}

async function planAfresh(name: string): Promise<Planned> {
  const quilt = readQuilt(readFileSync(new URL(`../../scenarios/${name}.yardwright.json`, import.meta.url), 'utf8'));
  const cutList = makeCutList(quilt);
  const packer = new Packer();
  const answers: LayoutAnswer[] = [];
  for (const group of cutList.groups) {
    answers.push(await packer.plan({ ...group.job, seconds: SECONDS_A_GROUP }));
  }
  return { quilt, cutList, answers, tally: makeTally(quilt, cutList, answers) };
}

describe.each(['solstice-dial', 'garden-gate'])('%s', (name) => {
  let result: Planned;
  beforeAll(async () => {
    result = await plan(name);
  });

  test('has nothing wrong with its cut list, and everything is placed', () => {
    expect(result.cutList.problems.filter((problem) => problem.kind === 'error')).toEqual([]);
    expect(result.answers.flatMap((answer) => answer.unplaced)).toEqual([]);
  });

  test('every answer is clean under the proof-reader', () => {
    result.cutList.groups.forEach((group, i) => {
      expect(proofread(group.job, result.answers[i]!), group.id).toEqual([]);
    });
  });

  test('every answer is clean under the checker from outside', () => {
    result.cutList.groups.forEach((group, i) => {
      expect(checkAnswer(group.job, result.answers[i]!), group.id).toEqual([]);
    });
  });

  test('every strip can be told as ruler work, every blank once', () => {
    result.cutList.groups.forEach((group, i) => {
      const steps = makeCutSteps(group.job, result.answers[i]!);
      const told = new Map<string, number>();
      for (const strip of steps) {
        for (const piece of strip.pieces) {
          told.set(piece.blank, (told.get(piece.blank) ?? 0) + strip.count);
        }
      }
      expect(Object.fromEntries(told)).toEqual(Object.fromEntries(group.blanks.map((each) => [each.id, each.demand])));
    });
  });

  test('the accounts of every cloth add up to what is used, and none is negative', () => {
    for (const { areas } of result.tally.cloths) {
      const { used, ...parts } = areas;
      expect(Object.values(parts).reduce((sum, part) => sum + part, 0)).toBeCloseTo(used, 6);
      expect(Math.min(...Object.values(parts))).toBeGreaterThan(-1e-9);
    }
  });

  test('what is seen is the area of all its patches, worked out from the drawing', () => {
    const { quilt, cutList, tally } = result;
    const patches = quilt.blocks.reduce((sum, block) => {
      const each = unitsOf(block, quilt.unit).map(
        (unit) => placesOf(unit).length * unit.patches.reduce((all, patch) => all + Math.abs(area(patch.outline)), 0),
      );
      return sum + block.count * each.reduce((all, one) => all + one, 0);
    }, 0);
    const joined = cutList.groups
      .flatMap((group) => group.blanks)
      .filter((blank) => blank.joined !== null)
      .reduce((sum, blank) => sum + (blank.demand - blank.spares) * blank.finishedArea, 0);
    expect(tally.areas.finished / (patches + joined)).toBeCloseTo(1, 3);
  });
});

describe('the Solstice dial', () => {
  test('has three cloths or more proved least, one of them needing three steps or more where area would allow fewer', async () => {
    const { tally } = await plan('solstice-dial');
    const least = tally.cloths.filter((cloth) => cloth.proof.state === 'least' && (cloth.steps ?? 0) > 0);
    expect(least.length).toBeGreaterThanOrEqual(3);
    const beyondArea = least.filter(({ steps, proof }) => steps! >= 3 && proof.byArea! < steps!);
    expect(beyondArea.map((cloth) => cloth.name)).toContain('Rising swifts');
  });

  test('its long background pieces go one to a strip: no fewer strips than pieces, by their length alone', async () => {
    const { quilt, cutList, answers } = await plan('solstice-dial');
    const index = cutList.groups.findIndex((group) => group.cloths.includes('rising-swifts'));
    const { job, blanks } = cutList.groups[index]!;
    // 28 in and two seams of 1/4 in are more than half of the width of 42 in.
    expect(2 * (28 + 2 * lengthIn(quilt.unit, quilt.allowance))).toBeGreaterThan(job.cloths[0]!.width);
    const strips = makeCutSteps(job, answers[index]!).reduce((sum, strip) => sum + strip.count, 0);
    expect(strips).toBe(blanks.reduce((sum, blank) => sum + blank.demand, 0));
  });
});
