/** The test block's plan and the plan of the rest made one plan of the whole job. */
import { endOf, lengthOf } from './layout-extent.ts';
import type { JobCloth, Layout, LayoutAnswer, LayoutJob, Placement } from './layout-job.ts';
import { makeCutSteps } from './make-cut-steps.ts';
import { stepsFor } from './say-steps.ts';
import { passesOverEnds, type StripEnd } from './strip-ends.ts';
import type { RestJob } from './test-first.ts';
import { oneClothOfBoth } from './test-one-cloth.ts';

export interface FirstParts {
  /** The test block's id. */
  readonly block: string;
  /** The whole job. */
  readonly job: LayoutJob;
  readonly test: LayoutAnswer;
  /** Null where nothing is left to cut. */
  readonly rest: RestJob | null;
  /** The plan of the rest, where there is one. */
  readonly answer: LayoutAnswer | null;
  /** The plan without the test block first. */
  readonly whole: LayoutAnswer;
}

/** A layout, and of each of its strips that are the test block's how many blanks are. */
interface Begun {
  readonly layout: Layout;
  readonly held: readonly number[];
}

/**
 * One answer to the whole job. Its bound is over all plans, those without the test block first among them; the bound over
 * plans that begin as this one does stands in `testFirst`: it holds for these first strips and no others.
 */
export function joinFirst(parts: FirstParts): LayoutAnswer {
  const { block, job, test, rest, answer, whole } = parts;
  const short = test.unplaced.length > 0 || (answer?.unplaced.length ?? 0) > 0;
  const without = { block, bound: null, without: whole };
  if (short || whole.unplaced.length > 0 || whole.bound === null) {
    return {
      ...whole,
      testFirst: { ...without, strips: whole.layouts.map(() => 0), held: whole.layouts.map(() => []) },
    };
  }
  const first = filled(job, test, answer, rest?.ends ?? []);
  const begun = job.cloths.flatMap((cloth) =>
    cloth.length == null
      ? boltLayouts(cloth, first, answer)
      : pieceLayouts(cloth, first, answer, rest?.remaining ?? []),
  );
  const layouts = begun.map(({ layout }) => layout);
  const cost = costOf(job, layouts);
  const taken = costOf(job, test.layouts);
  const fromPieces = costOf({ ...job, cloths: job.cloths.filter(({ length }) => length != null) }, test.layouts);
  // The rest's own bound knows of the test block's length only where the rest needs more of the same bolt.
  const byRest = rest !== null && passesOverEnds(job, test) ? 0 : (answer?.bound ?? 0) + fromPieces;
  const least = Math.max(taken, byRest, whole.bound);
  return {
    status: cost - whole.bound <= 1e-6 ? 'optimal' : 'feasible',
    cost,
    bound: Math.min(whole.bound, cost),
    boundFrom: whole.boundFrom,
    seconds: whole.seconds + test.seconds + (answer?.seconds ?? 0),
    layouts,
    unplaced: [],
    ...(job.oneCloth && { oneCloth: oneClothOfBoth(job.oneCloth, test.oneCloth ?? [], answer?.oneCloth ?? []) }),
    testFirst: {
      block,
      strips: begun.map(({ held }) => held.length),
      held: begun.map(({ held }) => held),
      bound: Math.min(least, cost),
      without: whole,
    },
  };
}

/** The test block's layouts, their strips filled up with what the rest's plan cuts from their ends. */
function filled(
  job: LayoutJob,
  test: LayoutAnswer,
  rest: LayoutAnswer | null,
  ends: readonly StripEnd[],
): readonly Begun[] {
  const steps = makeCutSteps(job, test);
  return test.layouts.map((layout, index) => {
    const along = layout.firstCut === 'along';
    const more = ends
      .filter((end) => end.layout === index)
      .flatMap((end): readonly Placement[] => {
        const { from } = layout.strips![end.strip]!;
        const by = along ? [from, end.begins] : [end.begins, from];
        const later = (rest?.layouts ?? []).filter(({ cloth }) => cloth === end.cloth.id);
        if (later.some(({ strips }) => strips?.length !== 1)) {
          throw new Error(`the end of a strip, "${end.cloth.id}", is cut into several`);
        }
        return later.flatMap(({ placements }) =>
          placements.map((each) => ({ ...each, x: each.x + by[0]!, y: each.y + by[1]! })),
        );
      });
    const held = (layout.strips ?? []).map((_, strip) => {
      const own = steps.find((each) => each.layout === index && each.strip === strip);
      return own?.pieces.length ?? 0;
    });
    return { layout: { ...layout, placements: [...layout.placements, ...more] }, held };
  });
}

/** The rest's bolt begins with an empty strip, or an empty length, where the test block's strips are. */
function boltLayouts(cloth: JobCloth, test: readonly Begun[], rest: LayoutAnswer | null): readonly Begun[] {
  const first = test.filter(({ layout }) => layout.cloth === cloth.id);
  const later = (rest?.layouts ?? []).filter((layout) => layout.cloth === cloth.id);
  const taken = lengthOf(first.map(({ layout }) => layout));
  const at = taken === 0 ? -1 : later.findIndex((layout) => isEmptyUpTo(layout, taken));
  const untouched = later.filter((_, i) => i !== at).map((layout) => ({ layout, held: [] }));
  const place = later[at];
  if (place === undefined || place.placements.length === 0) {
    return [...first, ...untouched];
  }
  const [only, ...more] = first;
  if (more.length > 0 || only === undefined) {
    throw new Error(`the test block's strips on "${cloth.id}" are told in several layouts`);
  }
  const strips = [...(only.layout.strips ?? []), ...(place.strips ?? []).slice(1)];
  const layout = { ...place, strips, placements: [...only.layout.placements, ...place.placements] };
  return [{ layout, held: only.held }, ...untouched];
}

function isEmptyUpTo(layout: Layout, taken: number): boolean {
  if (layout.placements.length === 0) {
    return Math.abs(layout.length - taken) < 1e-6;
  }
  const first = layout.strips?.[0];
  return layout.firstCut !== 'along' && first !== undefined && Math.abs(first.height - taken) < 1e-6;
}

/** A piece is cut on from where the test block's strips end; pieces of which the rest needs nothing are told as they are. */
function pieceLayouts(
  cloth: JobCloth,
  test: readonly Begun[],
  rest: LayoutAnswer | null,
  remaining: RestJob['remaining'],
): readonly Begun[] {
  const untouched = (rest?.layouts ?? []).filter((layout) => layout.cloth === cloth.id);
  const begun = test.flatMap(({ layout, held }, after): readonly Begun[] => {
    if (layout.cloth !== cloth.id) {
      return [];
    }
    const id = remaining.find((each) => each.after === after)?.id;
    const later = (rest?.layouts ?? []).filter((each) => each.cloth === id);
    const left = layout.count - later.reduce((sum, { count }) => sum + count, 0);
    return [
      ...later.map((each) => ({ layout: cutOn(layout, each), held })),
      ...(left > 0 ? [{ layout: { ...layout, count: left }, held }] : []),
    ];
  });
  return [...begun, ...untouched.map((layout) => ({ layout, held: [] }))];
}

function cutOn(first: Layout, later: Layout): Layout {
  const end = endOf(first);
  const along = first.firstCut === 'along';
  const moved = later.placements.map((each) => (along ? { ...each, x: each.x + end } : { ...each, y: each.y + end }));
  return {
    ...first,
    count: later.count,
    length: along ? Math.max(first.length, later.length) : end + later.length,
    strips: [...(first.strips ?? []), ...(later.strips ?? []).map((strip) => ({ ...strip, from: strip.from + end }))],
    placements: [...first.placements, ...moved],
  };
}

/** As the job reckons it: bolts in whole steps, pieces each. */
function costOf(job: LayoutJob, layouts: readonly Layout[]): number {
  return job.cloths.reduce((sum, cloth) => {
    const own = layouts.filter((layout) => layout.cloth === cloth.id);
    if (cloth.length != null) {
      return sum + own.reduce((pieces, { count }) => pieces + count, 0) * (cloth.cost ?? cloth.length);
    }
    const length = lengthOf(own);
    const bought = cloth.step === undefined ? length : stepsFor(length, cloth.step) * cloth.step;
    return sum + bought * (cloth.cost ?? 1);
  }, 0);
}
