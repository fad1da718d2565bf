/** What is proved of a purchase, in a quilter's words. */
import type { Group } from '../cutting/cut-list.ts';
import { formatLength } from '../quilt/format-length.ts';
import type { Cloth, LengthUnit } from '../quilt/quilt.ts';
import type { JobCloth, LayoutAnswer } from './layout-job.ts';
import { saySteps, stepsFor } from './say-steps.ts';
import type { Proof } from './tally.ts';

export interface Purchase {
  readonly group: Group;
  readonly answer: LayoutAnswer;
  readonly cloth: Cloth;
  readonly unit: LengthUnit;
  /** The cloth's bolt in the job; null when it cannot be bought. */
  readonly bolt: JobCloth | null;
  /** Bolt length needed, as washed, squaring included. */
  readonly need: number;
  /** Whether anything is cut from the cloth's shelf pieces. */
  readonly fromShelf: boolean;
  /** Area of what is cut from the bolt, each blank at its smallest, as washed. */
  readonly boltArea: number;
}

export function proofOf(purchase: Purchase): Proof {
  const { group, answer, bolt, need } = purchase;
  const byArea = stepsByArea(purchase);
  if (answer.unplaced.length > 0 || answer.bound === null) {
    const names = answer.unplaced.map((each) => `${each.blank} (${each.count})`).join(', ');
    return {
      state: 'none',
      atLeast: null,
      words: `Not everything can be cut, so nothing is proved: ${names}.`,
      byArea,
    };
  }
  if (bolt === null || need === 0) {
    const words = purchase.fromShelf ? 'The shelf is enough: nothing to buy.' : 'Nothing of this cloth to buy.';
    return { state: 'least', atLeast: 0, words, byArea };
  }
  return isAlone(group, bolt) ? proofAlone(purchase, bolt, byArea) : proofTogether(purchase, byArea);
}

/** Whether no other cloth can be bought for the same blanks, so that the bound on the cost is one on this purchase. */
function isAlone(group: Group, bolt: JobCloth): boolean {
  return group.job.cloths.every((each) => each.id === bolt.id || each.length != null);
}

function proofAlone(purchase: Purchase, bolt: JobCloth, byArea: number | null): Proof {
  const { answer, need, group } = purchase;
  // What the pieces cost at most may be part of the bound; the rest of it must be paid for the bolt.
  const pieces = group.job.cloths.filter((each) => each.length != null);
  const pieceCost = pieces.reduce((sum, each) => sum + (each.cost ?? each.length ?? 0) * (each.count ?? 1), 0);
  const cost = bolt.cost ?? 1;
  // A bolt that costs nothing is not bounded by what the plan costs.
  const leastLength = cost > 0 ? Math.max(0, ((answer.bound ?? 0) - pieceCost) / cost) : 0;
  const bought = bolt.step === undefined ? need : stepsFor(need, bolt.step);
  const atLeast = bolt.step === undefined ? leastLength : Math.min(bought, stepsFor(leastLength, bolt.step));
  const least = bolt.step === undefined ? need - leastLength < 1e-6 * need : bought === atLeast;
  const say = (amount: number) => sayAmount(purchase, bolt, amount);
  const words = least
    ? `No plan ${howCut(group)} buys less than ${say(atLeast)}.`
    : `This plan buys ${say(bought)}. ${gapWords(howCut(group), atLeast, say)}`;
  return { state: least ? 'least' : 'gap', atLeast, words, byArea };
}

function gapWords(how: string, atLeast: number, say: (amount: number) => string): string {
  return atLeast <= 0
    ? 'Whether less would do is not known yet.'
    : `No plan ${how} buys less than ${say(atLeast)}; whether one buys less than this is not known.`;
}

/** Where several cloths may serve, the bound is on what they cost together and says nothing of one alone. */
function proofTogether({ answer, group, cloth }: Purchase, byArea: number | null): Proof {
  const others = group.cloths.filter((id) => id !== cloth.id).length;
  const together =
    others === 1 ? 'this cloth and the one that may stand in for it' : 'this cloth and those that may stand in for it';
  return answer.status === 'optimal'
    ? {
        state: 'least',
        atLeast: null,
        words: `No plan ${howCut(group)} buys ${together} for less, taken together.`,
        byArea,
      }
    : { state: 'gap', atLeast: null, words: `Whether ${together} can be bought for less is not known.`, byArea };
}

function howCut(group: Group): string {
  return group.job.method === 'strips' ? 'with straight strips' : 'with blanks cut one by one';
}

function sayAmount({ cloth, unit }: Purchase, bolt: JobCloth, amount: number): string {
  return bolt.step === undefined || cloth.step === undefined
    ? formatLength(amount, unit, { denominator: 16, decimals: 1 })
    : saySteps(amount, cloth.step, unit);
}

/** What naive reckoning would allow: the blanks' area over the width, and the squaring, in whole steps. */
function stepsByArea({ bolt, boltArea, need }: Purchase): number | null {
  if (bolt?.step === undefined) {
    return null;
  }
  return need === 0 ? 0 : stepsFor(boltArea / bolt.width + (bolt.squaring ?? 0), bolt.step);
}
