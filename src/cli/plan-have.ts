/** Answers whether cloth in hand will do: one cloth after the other, on all the packers. */
import { makeCutList } from '../cutting/make-cut-list.ts';
import { sayChanges } from '../plan/say-changes.ts';
import { type WillItDo, willThisDo } from '../plan/will-this-do.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { queuePackers } from './packer-queue.ts';
import { type HaveArgument, UsageFault } from './plan-arguments.ts';
import type { GroupPacker } from './plan-groups.ts';
import { cuttingLines } from './plan-text.ts';
import { haveLines } from './plan-text-have.ts';

/** As wanted; changes alone; all together; some together: none of these may take more than its part of the time. */
const ROUNDS = 4;

/**
 * @param seconds wall time for each cloth
 * @throws UsageFault where a cloth is not the quilt's, or its length cannot be read
 */
export async function planHave(
  quilt: Quilt,
  haves: readonly HaveArgument[],
  packers: readonly GroupPacker[],
  seconds: number,
  now: () => number,
): Promise<readonly WillItDo[]> {
  const asked = haves.map((have) => ({ cloth: clothId(quilt, have.cloth), length: checked(quilt, have) }));
  const found: WillItDo[] = [];
  for (const { cloth, length } of asked) {
    const plan = queuePackers(packers, seconds, now, seconds / ROUNDS);
    try {
      found.push(await willThisDo({ quilt, cloth, have: length }, { plan, cut: makeCutList }));
    } catch (error) {
      throw error instanceof RangeError ? new UsageFault(`--have: ${error.message}`) : error;
    }
  }
  return found;
}

/** A cloth may be told by its id or by its name. */
function clothId(quilt: Quilt, told: string): string {
  const same = (text: string) => text.toLowerCase() === told.toLowerCase();
  const found =
    quilt.cloths.find((cloth) => cloth.id === told) ?? quilt.cloths.find((cloth) => same(cloth.name) || same(cloth.id));
  if (found === undefined) {
    const known = quilt.cloths.map((cloth) => cloth.id).join(', ');
    throw new UsageFault(`--have: the quilt has no cloth "${told}"; its cloths are ${known}`);
  }
  return found.id;
}

function checked(quilt: Quilt, { cloth, length }: HaveArgument): string {
  try {
    lengthIn(quilt.unit, length);
  } catch (error) {
    throw new UsageFault(`--have ${cloth}: ${error instanceof Error ? error.message : String(error)}`);
  }
  return length;
}

/** The verdicts and, for each cloth that will do, how to cut it. */
export function haveText(quilt: Quilt, found: readonly WillItDo[]): string {
  const lines = found.flatMap((each) => {
    const { suffices } = each;
    const cutting =
      suffices === null
        ? []
        : ['', `HOW TO CUT IT, ${sayChanges(quilt, suffices.changes).toUpperCase()}`, ...cuttingLines(suffices)];
    return ['', 'WILL THIS DO?', ...haveLines(quilt, each), ...cutting];
  });
  const scheme = quilt.schemes.find((each) => each.id === quilt.scheme);
  return [`${quilt.name}, scheme "${scheme?.name ?? quilt.scheme}"`, ...lines, ''].join('\n');
}

export function haveJson({ cloth, have, tries, suffices }: WillItDo): object {
  return {
    cloth,
    have,
    suffices: suffices === null ? null : tries.indexOf(suffices),
    tries: tries.map(({ changes, verdict, takes, there, cutList, answers, tally }) => ({
      changes,
      verdict,
      takes,
      there,
      plans: cutList.groups.map(({ job }, i) => ({ job, answer: answers[i] })),
      tally,
    })),
  };
}
