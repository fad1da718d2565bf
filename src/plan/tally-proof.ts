/** What is proved of a purchase, in a quilter's words. */
import type { Group } from '../cutting/cut-list.ts';
import { formatLength } from '../quilt/format-length.ts';
import type { Cloth, LengthUnit } from '../quilt/quilt.ts';
import type { JobCloth, LayoutAnswer } from './layout-job.ts';
import { saySteps, stepsFor } from './say-steps.ts';
import type { Proof } from './tally.ts';
import { leastCutArea } from './tally-areas.ts';

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
  /** The bound is over plans that begin with the test block's strips as this one does. */
  readonly begun?: boolean;
}

/**
 * What is proved. Where the test block is cut first, a proof over all plans is told if there is one, else one over the plans
 * that begin with the same strips.
 */
export function proofOf(purchase: Purchase): Proof {
  const proof = proofWith(purchase);
  const { answer } = purchase;
  const bound = answer.testFirst?.bound ?? null;
  if (proof.state !== 'gap' || bound === null) {
    return proof;
  }
  const status = answer.cost - bound <= 1e-6 ? 'optimal' : 'feasible';
  return { ...proofWith({ ...purchase, answer: { ...answer, status, bound }, begun: true }), testFirst: true };
}

function proofWith(purchase: Purchase): Proof {
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
  const { need, group } = purchase;
  const amount = (length: number) => (bolt.step === undefined ? length : stepsFor(length, bolt.step));
  const bought = amount(need);
  const byPlan = Math.min(bought, amount(lengthByCost(purchase, bolt)));
  const byBlanks = Math.min(bought, amount(lengthByArea(purchase, bolt)));
  const atLeast = Math.max(byPlan, byBlanks);
  const least = bought - atLeast < 1e-6 * bought;
  const say = (steps: number) => sayAmount(purchase, bolt, steps);
  const bound =
    byPlan >= byBlanks
      ? `No plan ${howCut(group)}${beginning(purchase)} buys less than ${say(atLeast)}`
      : `The blanks alone cover so much cloth that no plan buys less than ${say(atLeast)}`;
  const words = least
    ? `${bound}.`
    : `This plan buys ${say(bought)}. ${atLeast > 0 ? `${bound}; whether` : 'Whether'} less than this would do is not known.`;
  return { state: least ? 'least' : 'gap', atLeast, words, byArea };
}

/** The bolt length that the bound on the cost proves. What the pieces cost at most may be part of that bound. */
function lengthByCost({ answer, group }: Purchase, bolt: JobCloth): number {
  const pieceCost = piecesOf(group).reduce((sum, { cost, count, length }) => sum + (cost ?? length) * count, 0);
  const cost = bolt.cost ?? 1;
  // A bolt that costs nothing is not bounded by what the plan costs.
  return cost > 0 ? Math.max(0, ((answer.bound ?? 0) - pieceCost) / cost) : 0;
}

/**
 * The bolt length that the area alone proves: every blank at its smallest, less all that the shelf has, over the width; and
 * the squaring, which is lost as soon as anything is bought.
 */
function lengthByArea({ group }: Purchase, bolt: JobCloth): number {
  const blanks = group.blanks.reduce((sum, blank) => sum + blank.demand * leastCutArea(blank), 0);
  const shelf = piecesOf(group).reduce((sum, { width, length, count }) => sum + width * length * count, 0);
  const over = blanks - shelf;
  return over <= 0 ? 0 : over / bolt.width + (bolt.squaring ?? 0);
}

/** The shelf pieces of a job. There are only so many of each: quilts have no endless pieces. */
function piecesOf(group: Group): readonly (JobCloth & { readonly length: number; readonly count: number })[] {
  return group.job.cloths.flatMap((each) =>
    each.length == null ? [] : [{ ...each, length: each.length, count: each.count ?? 1 }],
  );
}

/** Where several cloths may serve, the bound is on what they cost together and says nothing of one alone. */
function proofTogether(purchase: Purchase, byArea: number | null): Proof {
  const { answer, group, cloth } = purchase;
  const others = group.cloths.filter((id) => id !== cloth.id).length;
  const together =
    others === 1 ? 'this cloth and the one that may stand in for it' : 'this cloth and those that may stand in for it';
  return answer.status === 'optimal'
    ? {
        state: 'least',
        atLeast: null,
        words: `No plan ${howCut(group)}${beginning(purchase)} buys ${together} for less, taken together.`,
        byArea,
      }
    : { state: 'gap', atLeast: null, words: `Whether ${together} can be bought for less is not known.`, byArea };
}

const beginning = ({ begun }: Purchase): string => (begun === true ? ' that begins with this test block' : '');

function howCut(group: Group): string {
  return group.job.method === 'strips' ? 'with strips cut like these' : 'with blanks cut one by one';
}

function sayAmount({ cloth, unit }: Purchase, bolt: JobCloth, amount: number): string {
  return bolt.step === undefined || cloth.step === undefined
    ? formatLength(amount, unit, { denominator: 16, decimals: 1 })
    : saySteps(amount, cloth.step, unit);
}

/**
 * What naive reckoning would allow: the blanks' area over the width, and the squaring, in whole steps. Where other cloths
 * may serve too, of the blanks that this plan cuts from this one.
 */
function stepsByArea(purchase: Purchase): number | null {
  const { bolt, boltArea, need, group } = purchase;
  if (bolt?.step === undefined) {
    return null;
  }
  if (need === 0) {
    return 0;
  }
  const length = isAlone(group, bolt) ? lengthByArea(purchase, bolt) : boltArea / bolt.width + (bolt.squaring ?? 0);
  return stepsFor(length, bolt.step);
}
