/** A planned quilt as text for people: what to buy, how to cut it, where the cloth goes, and what is proved. */

import type { CutList } from '../cutting/cut-list.ts';
import { unroll } from '../draw/unroll.ts';
import { bagStrips } from '../plan/bagged-strips.ts';
import { CARE } from '../plan/care.ts';
import { inCuttingOrder } from '../plan/cutting-order.ts';
import type { LayoutAnswer } from '../plan/layout-job.ts';
import { lookAlikes, sayLookAlike } from '../plan/look-alikes.ts';
import { makeCutSteps } from '../plan/make-cut-steps.ts';
import { sayAllJoined } from '../plan/say-joined.ts';
import { BEGINNING, priceOfTestFirst, sayTestFirst, testBlockName } from '../plan/say-test-first.ts';
import type { Tally } from '../plan/tally.ts';
import { whatLeastMeans } from '../plan/what-least-means.ts';
import { formatLength, formatMark } from '../quilt/format-length.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { buyLines } from './plan-text-buying.ts';
import { lengthLines } from './plan-text-cutting.ts';
import { leftoverLines, wasteLines } from './plan-text-waste.ts';

export interface PlannedQuilt {
  readonly quilt: Quilt;
  readonly cutList: CutList;
  /** In the order of the groups. */
  readonly answers: readonly LayoutAnswer[];
  readonly tally: Tally;
}

const SLANTED: readonly string[] = [
  '  Two marks "3 / 4": the first on the strip’s near edge, the second on its far edge. The near edge of a strip across',
  '  the cloth is the one toward the cut end; of one along the cloth, the one toward the left selvage.',
];

const STACKED: readonly string[] = [
  '  A stack is cut off square first. Then it is cut along the strip, marks measured up from the strip’s near edge, and each',
  '  blank is trimmed to its size (along × up) from its part.',
];

export function planText(planned: PlannedQuilt): string {
  const { quilt, tally } = planned;
  const scheme = quilt.schemes.find((each) => each.id === quilt.scheme);
  return [
    `${quilt.name}, scheme "${scheme?.name ?? quilt.scheme}"`,
    ...section('What to buy', [
      ...buyLines(quilt, tally),
      ...priceOfTestFirst(quilt, planned.cutList, planned.answers, tally).map((line) => `  ${line}`),
    ]),
    ...section('What is proved', proofLines(planned)),
    ...section('Please note', noteLines(planned)),
    ...section('How to cut', cuttingLines(planned)),
    ...section('How to join', joinLines(planned)),
    ...section('Where the cloth goes', wasteLines(quilt, tally)),
    ...section('Back on the shelf', leftoverLines(quilt, tally)),
    '',
  ].join('\n');
}

function section(title: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : ['', title.toUpperCase(), ...lines];
}

function proofLines({ quilt, tally }: PlannedQuilt): readonly string[] {
  const asked = [
    lengthIn(quilt.unit, quilt.squaring) === 0
      ? 'no squaring up'
      : `squaring up (${written(quilt.squaring, quilt)} off each end)`,
    `${spareWords(quilt.spares)}${ownSpares(quilt)}`,
  ];
  return [
    ...tally.cloths.map(({ name, proof }) => {
      // Worth telling only where the plan is proved to need more than area reckoning would allow.
      const area =
        proof.byArea !== null && proof.atLeast !== null && proof.byArea < proof.atLeast
          ? ` (Area alone would allow ${proof.byArea} step${proof.byArea === 1 ? '' : 's'}.)`
          : '';
      return `  ${name}: ${proof.words}${area}`;
    }),
    ...thirdCutLines(tally),
    `  All this with ${asked.join(' and ')} counted in.`,
    ...(tally.cloths.some(({ proof }) => proof.testFirst === true) ? [`  ${BEGINNING}`] : []),
    `  ${whatLeastMeans(quilt.stacks ?? false)}`,
  ];
}

/** What stacks save, cloths of which the same is to be said together. */
function thirdCutLines({ cloths }: Tally): readonly string[] {
  const names = new Map<string, string[]>();
  for (const { name, thirdCuts } of cloths) {
    if (thirdCuts !== undefined) {
      names.set(thirdCuts, [...(names.get(thirdCuts) ?? []), name]);
    }
  }
  return [...names].map(([words, own]) => `  ${own.join(', ')}: ${words}`);
}

const spareWords = (spares: number): string =>
  spares === 0 ? 'no spare blanks' : `${spares} spare${spares === 1 ? '' : 's'} of each blank`;

/** " (but 2 of Ring of hours)", where roles have their own. */
function ownSpares({ roles, spares }: Quilt): string {
  const own = roles.flatMap((role) =>
    role.spares === undefined || role.spares === spares ? [] : [`${role.spares} of ${role.name}`],
  );
  return own.length === 0 ? '' : ` (but ${own.join(', ')})`;
}

/** Everything she should know before she buys: what is not placed, and what the cut list has to say. */
function noteLines({ cutList, answers }: PlannedQuilt): readonly string[] {
  // What the cut list has told already, in the quilt's words, the engine need not tell again in its own.
  const told = new Set(cutList.problems.map((problem) => problem.blank));
  const unplaced = answers.flatMap((answer) =>
    answer.unplaced
      .filter(({ blank }) => !told.has(blank))
      .map(({ blank, count, why }) => `  Not planned: ${count} × ${blank}: ${why}`),
  );
  const problems = cutList.problems.map(
    (problem) => `  ${problem.kind === 'error' ? 'Not planned: ' : ''}${problem.text}`,
  );
  return [...problems, ...unplaced];
}

function joinLines({ quilt, cutList }: PlannedQuilt): readonly string[] {
  const write = (length: number) => formatLength(length, quilt.unit, { denominator: 16 });
  return sayAllJoined(quilt, cutList, write).map(([name, words]) => `  ${name}: ${words}`);
}

/** Every length of cloth as ruler work, the cautions first. */
export function cuttingLines({ quilt, cutList, answers, tally }: PlannedQuilt): readonly string[] {
  const unit = quilt.unit === 'in' ? 'inches' : 'centimetres';
  const near = quilt.unit === 'in' ? 'sixteenth of an inch' : 'millimetre';
  const inOrder = cutList.groups.map((group, i) => inCuttingOrder(group, answers[i]!));
  const allSteps = cutList.groups.map((group, i) => makeCutSteps(group.job, inOrder[i]!));
  const bagsOf = bagStrips(quilt, cutList, inOrder, allSteps);
  /** All cloths, or only their strips for the test block, or only the others. */
  const pass = (isTest: boolean) =>
    cutList.groups.flatMap((group, i) => {
      const steps = allSteps[i]!;
      const alike = new Set(lookAlikes(group, inOrder[i]!, quilt.unit).map((each) => `  ${sayLookAlike(each)}`));
      const lengths = unroll(group, inOrder[i]!);
      const told = lengths.flatMap((length) => lengthLines({ quilt, group, tally, length, steps, bagsOf, isTest }));
      return [...told, ...(told.length === 0 || alike.size === 0 ? [] : ['', ...alike])];
    });
  const first = sayTestFirst(quilt, inOrder);
  const lines =
    first === null
      ? pass(false)
      : [
          '',
          `  ${first}`,
          '',
          '  TEST BLOCK FIRST',
          ...pass(true),
          '',
          `  THE REST, once ${testBlockName(quilt)} is sewn`,
          ...pass(false),
        ];
  const slanted = lines.some((line) => line.includes(' / '));
  const stacked = lines.some((line) => line.includes('stack of '));
  const rounded = lines.some((line) => line.includes('≈'));
  return [
    ...CARE.map((caution) => `  ! ${caution}`),
    '',
    `  Marks are in ${unit}. Strips are numbered from the cut end as on the diagrams. Marks are measured along the strip`,
    '  from its start; each cut runs from edge to edge and parts a blank from all after it.',
    ...(slanted ? SLANTED : []),
    ...(stacked ? STACKED : []),
    ...(rounded ? [`  ≈ is to the nearest ${near}; the true mark lies between two.`] : []),
    ...lines,
  ];
}

function written(length: Quilt['squaring'], quilt: Quilt): string {
  return typeof length === 'string' ? length : `${formatMark(length, quilt.unit)} ${quilt.unit}`;
}
