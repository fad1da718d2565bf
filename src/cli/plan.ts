/** `npm run -s plan -- FILE`: plans a quilt file and tells the plan. Exit status 2 for a command or a file at fault. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { proofread } from '../../workers/proof/proofread.ts';
import type { CutList } from '../cutting/cut-list.ts';
import { makeCutList } from '../cutting/make-cut-list.ts';
import { inCuttingOrder } from '../plan/cutting-order.ts';
import type { LayoutAnswer } from '../plan/layout-job.ts';
import { makeTally } from '../plan/make-tally.ts';
import { sideBySide, type Version } from '../plan/side-by-side.ts';
import { planTestFirst } from '../plan/test-first.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { quiltJsonSchema } from '../quilt/quilt-schema.ts';
import { QuiltFileError, readQuilt } from '../quilt/read-quilt.ts';
import { queuePackers } from './packer-queue.ts';
import { type PlanArguments, readArguments, USAGE, UsageFault } from './plan-arguments.ts';
import { drawingFiles } from './plan-drawings.ts';
import { type GroupPacker, planGroups } from './plan-groups.ts';
import { haveJson, haveText, planHave } from './plan-have.ts';
import { paperFiles } from './plan-papers.ts';
import { type PlannedQuilt, planText } from './plan-text.ts';
import { compareLines } from './plan-text-compare.ts';
import { startPacker } from './start-packer.ts';

/** More packers than this would each have too little memory and too little to do. */
const MOST_PACKERS = 2;

/** Wall time for laying foundations and templates on sheets; it is seldom needed. */
const PAPER_SECONDS = 15;

/** A file at fault, told in words and without a trace. */
class FileFault extends Error {}

async function plan(asked: PlanArguments): Promise<void> {
  const read = readFile(asked.file);
  const quilt = asked.stacks ? { ...read, stacks: true } : read;
  const packers = Array.from({ length: Math.min(MOST_PACKERS, availableParallelism()) }, () => startPacker());
  try {
    await (asked.have.length > 0 ? tellHave(quilt, asked, packers) : tellPlan(quilt, asked, packers));
  } finally {
    for (const packer of packers) {
      packer.end();
    }
  }
}

async function tellPlan(quilt: Quilt, asked: PlanArguments, packers: readonly GroupPacker[]): Promise<void> {
  const { json, out, seconds, compare } = asked;
  const cutList = makeCutList(quilt);
  const plans = await planGroups(cutList.groups, packers, quilt.testBlock === undefined ? seconds : seconds / 2, clock);
  const wholes = plans.map(({ answer }) => answer);
  const begun = await withTestFirst(quilt, cutList, wholes, packers, seconds / 2);
  const answers = begun.map((answer, i) => inCuttingOrder(cutList.groups[i]!, answer));
  // What is left whole at a strip's end is as large where a fold leaves it in the middle.
  const planned = { quilt, cutList, answers, tally: makeTally(quilt, cutList, begun) };
  const { tally } = planned;
  // What is changed for the comparison is planned without a test block, and so is what it is compared with.
  const plain = { quilt, cutList, answers: wholes, tally };
  const versions = compare
    ? await sideBySide(plain, { plan: queuePackers(packers, seconds, clock), cut: makeCutList, read: proofread })
    : [];
  if (json) {
    for (const problem of cutList.problems) {
      process.stderr.write(`${problem.kind}: ${problem.text}\n`);
    }
  }
  process.stdout.write(
    json
      ? `${JSON.stringify({ plans: plans.map(({ job }, i) => ({ job, answer: answers[i] })), tally, ...(compare && { sideBySide: versions.map(versionJson) }) })}\n`
      : `${planText(planned)}${compareText(quilt, versions)}`,
  );
  writeDrawings(out, [planned]);
  await writePapers(asked, planned, packers);
}

/** The other half of the time, where a block is to be cut first; no job of it may take so long that others go without. */
async function withTestFirst(
  quilt: Quilt,
  cutList: CutList,
  wholes: readonly LayoutAnswer[],
  packers: readonly GroupPacker[],
  seconds: number,
): Promise<readonly LayoutAnswer[]> {
  return quilt.testBlock === undefined
    ? wholes
    : planTestFirst(quilt, cutList.groups, wholes, queuePackers(packers, seconds, clock, seconds / 4), proofread);
}

async function tellHave(quilt: Quilt, asked: PlanArguments, packers: readonly GroupPacker[]): Promise<void> {
  const found = await planHave(quilt, asked.have, packers, asked.seconds, clock);
  process.stdout.write(asked.json ? `${JSON.stringify({ have: found.map(haveJson) })}\n` : haveText(quilt, found));
  writeDrawings(
    asked.out,
    found.flatMap(({ suffices }) => suffices ?? []),
  );
}

function writeDrawings(out: string | null, planned: readonly PlannedQuilt[]): void {
  if (out === null) {
    return;
  }
  mkdirSync(out, { recursive: true });
  for (const { name, svg } of planned.flatMap(drawingFiles)) {
    writeFileSync(join(out, name), svg);
  }
}

async function writePapers(
  asked: PlanArguments,
  planned: PlannedQuilt,
  packers: readonly GroupPacker[],
): Promise<void> {
  if (asked.out === null) {
    return;
  }
  const plan = queuePackers(packers, PAPER_SECONDS, clock);
  for (const { name, bytes } of await paperFiles(planned, asked.papers, plan)) {
    writeFileSync(join(asked.out, name), bytes);
  }
}

const clock = () => performance.now() / 1000;

function compareText(quilt: Quilt, versions: readonly Version[]): string {
  return versions.length === 0 ? '' : `\nSIDE BY SIDE\n${compareLines(quilt, versions).join('\n')}\n`;
}

function versionJson({ kind, cutList, answers, tally }: Version): object {
  return { kind, plans: cutList.groups.map(({ job }, i) => ({ job, answer: answers[i] })), tally };
}

function readFile(file: string) {
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch (error) {
    throw new FileFault(`${file} cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
  try {
    return readQuilt(text);
  } catch (error) {
    if (error instanceof QuiltFileError) {
      throw new FileFault(error.messages.map((message) => `${file}: ${message}`).join('\n'));
    }
    throw error;
  }
}

async function main(): Promise<void> {
  try {
    const asked = readArguments(process.argv.slice(2));
    if (asked === 'help') {
      process.stdout.write(`${USAGE}\n`);
    } else if (asked === 'schema') {
      process.stdout.write(`${JSON.stringify(quiltJsonSchema(), null, 2)}\n`);
    } else {
      await plan(asked);
    }
  } catch (error) {
    if (!(error instanceof FileFault || error instanceof UsageFault)) {
      throw error;
    }
    process.stderr.write(`${error.message}\n${error instanceof UsageFault ? `\n${USAGE}\n` : ''}`);
    process.exitCode = 2;
  }
}

await main();
