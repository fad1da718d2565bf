/** Tells a plan as ruler work: strip after strip, and on each strip cut after cut. */
import { convexHull } from '../shape/hull.ts';
import type { Polygon } from '../shape/point.ts';
import { angleOf, cutChain, isMark, isRulerAngle } from './cut-chain.ts';
import type { StripPiece, StripSteps } from './cut-steps.ts';
import type { JobBlank, JobCloth, Layout, LayoutAnswer, LayoutJob, Placement, Strip } from './layout-job.ts';
import { type Cut, type CutRules, partingCuts, RULER_PARTS } from './parting-cut.ts';
import { placedPolygon } from './placed.ts';
import { layersOf, markBetween, reach, stacksIn } from './stacked-pieces.ts';

interface Piece {
  readonly placement: Placement;
  /** In the strip's frame. */
  readonly outline: Polygon;
}

/**
 * The strips of every layout that hold blanks, in order, each with its blanks in cutting order. A strip that runs along
 * the cloth is seen with its start at the cut end, its near edge being the one nearer x = 0. The strip that only squares
 * the cut end holds nothing and is left out.
 * @throws Error where blanks cannot be parted by straight cuts, or a blank is not in the job: then it is no plan of strips
 */
export function makeCutSteps(job: LayoutJob, answer: LayoutAnswer): readonly StripSteps[] {
  const blanks = new Map(job.blanks.map((blank) => [blank.id, blank]));
  const cloths = new Map(job.cloths.map((cloth) => [cloth.id, cloth]));
  return answer.layouts.flatMap((layout, index) => {
    const cloth = cloths.get(layout.cloth);
    if (cloth === undefined) {
      throw new Error(`the plan uses the cloth "${layout.cloth}", which the job does not have`);
    }
    const outlines = layout.placements.map((placement) => ({
      placement,
      outline: placedPolygon(outlineOf(blanks.get(placement.blank), placement), placement),
    }));
    return (layout.strips ?? []).flatMap((strip, which) => {
      const pieces = outlines.map((one) => inStrip(one, layout, strip)).filter((one) => liesWithin(one, strip.height));
      return pieces.length === 0 ? [] : [stripSteps(job, cloth, layout, index, which, pieces)];
    });
  });
}

function outlineOf(blank: JobBlank | undefined, placement: Placement): Polygon {
  const outline = blank?.shapes?.[placement.shape]?.outline ?? (placement.shape === 0 ? blank?.outline : undefined);
  if (outline === undefined) {
    throw new Error(`the plan places "${placement.blank}", shape ${placement.shape}, which the job does not have`);
  }
  return outline;
}

/** From the cloth to the strip: along it and up from its near edge. */
function inStrip({ placement, outline }: Piece, layout: Layout, strip: Strip): Piece {
  const along = layout.firstCut === 'along';
  return {
    placement,
    outline: outline.map(([x, y]) => (along ? [y, x - strip.from] : [x, y - strip.from])),
  };
}

function liesWithin({ outline }: Piece, height: number): boolean {
  const ys = outline.map((point) => point[1]);
  const middle = (Math.min(...ys) + Math.max(...ys)) / 2;
  return middle > 0 && middle < height;
}

function stripSteps(
  job: LayoutJob,
  cloth: JobCloth,
  layout: Layout,
  index: number,
  which: number,
  pieces: readonly Piece[],
): StripSteps {
  const { from, height } = layout.strips![which]!;
  const firstCut = layout.firstCut ?? 'across';
  const across = firstCut === 'across' ? cloth.width : (cloth.length ?? layout.length);
  const rules = { height, length: across, ruler: job.ruler ?? null, tolerance: 1e-6 * cloth.width };
  const stacks = job.stages === 3 ? stacksOf(pieces, rules) : pieces.map((piece) => alone(piece));
  const cut = cutInOrder(stacks, rules, `strip ${which + 1} of layout ${index + 1} on "${cloth.id}"`);
  const last = cut.at(-1)!;
  return {
    cloth: cloth.id,
    layout: index,
    strip: which,
    count: layout.count,
    firstCut,
    from,
    height,
    across,
    pieces: cut,
    left: Math.max(0, across - Math.max(last.near, last.far)),
  };
}

/** What one cut parts from all after it: a blank, or a whole stack of them from the near edge up. */
interface Parted {
  readonly pieces: readonly Piece[];
  readonly hull: Polygon;
}

const alone = (piece: Piece): Parted => ({ pieces: [piece], hull: convexHull(piece.outline) });

/** A stack takes the whole height of the strip between two square cuts. */
function stacksOf(pieces: readonly Piece[], { height, tolerance }: CutRules): readonly Parted[] {
  const groups = stacksIn(
    pieces.map(({ outline }) => outline),
    tolerance,
  );
  return groups.map((group): Parted => {
    const held = group.map((index) => pieces[index]!);
    if (held.length === 1) return alone(held[0]!);
    const along = held.map(({ outline }) => reach(outline, 0));
    const [left, right] = [Math.min(...along.map(({ low }) => low)), Math.max(...along.map(({ high }) => high))];
    return {
      pieces: held,
      hull: [
        [left, 0],
        [right, 0],
        [right, height],
        [left, height],
      ],
    };
  });
}

/**
 * Takes the blanks one by one from the start of the strip. Any blank that can be parted from all that are left may come
 * next: what is left of a good order is still a good order. The order of the middles nearly always serves.
 */
function cutInOrder(parted: readonly Parted[], rules: CutRules, where: string): readonly StripPiece[] {
  let left = [...parted].sort((a, b) => middleOf(a.hull) - middleOf(b.hull));
  let after = hullsAfter(left);
  const order: Parted[] = [];
  const offered: (readonly Cut[])[] = [];
  while (left.length > 1) {
    const cuts = partingCuts(left[0]!.hull, after[0]!, rules, true);
    const next = cuts.length > 0 ? { index: 0, cuts } : (otherNext(left, rules, true) ?? otherNext(left, rules, false));
    if (next === null) {
      throw new Error(`${where} cannot be parted by straight cuts after blank ${order.length}`);
    }
    const own = left[next.index]!;
    left = left.filter((_, index) => index !== next.index);
    after = next.index === 0 ? after.slice(1) : hullsAfter(left);
    const beside = isStack(own) || (left[0] !== undefined && isStack(left[0]));
    order.push(own);
    offered.push(
      beside
        ? [
            squareCut(
              own.hull,
              left.flatMap(({ hull }) => hull),
              rules,
            ),
          ]
        : next.cuts,
    );
  }
  const chain = cutChain(offered, rules);
  const last = left[0]!;
  const cuts = [...chain, lastCut(last.hull, chain.at(-1), rules)];
  return [...order, last].flatMap((each, i) => stripPieces(each, cuts[i - 1]?.near ?? 0, cuts[i]!, rules));
}

const isStack = ({ pieces }: Parted): boolean => pieces.length > 1;

/** Beside a stack all cuts are square. */
function squareCut(own: Polygon, others: Polygon, rules: CutRules): Cut {
  const at = markBetween(reach(own, 0).high, reach(others, 0).low, rules);
  return { near: at, far: at };
}

function stripPieces({ pieces }: Parted, from: number, cut: Cut, rules: CutRules): readonly StripPiece[] {
  if (pieces.length === 1) return [stripPiece(pieces[0]!, cut, rules)];
  const layers = layersOf(
    pieces.map(({ outline }) => outline),
    from,
    rules,
  );
  return pieces.map((piece, i) => ({ ...stripPiece(piece, cut, rules), stack: layers[i]! }));
}

/** For each, the hull of all that follow it. */
function hullsAfter(left: readonly Parted[]): readonly Polygon[] {
  let after: Polygon = [];
  return [...left]
    .reverse()
    .map(({ hull }) => {
      const before = after;
      after = convexHull([...after, ...hull]);
      return before;
    })
    .reverse();
}

function otherNext(left: readonly Parted[], rules: CutRules, within: boolean) {
  for (const [index, { hull }] of left.entries()) {
    const others = convexHull(left.flatMap((other, i) => (i === index ? [] : other.hull)));
    const cuts = partingCuts(hull, others, rules, within);
    if (cuts.length > 0) {
      return { index, cuts };
    }
  }
  return null;
}

/** Nothing comes after the last blank, so it is cut square: on the first mark past it, or where it ends. */
function lastCut(outline: Polygon, before: Cut | undefined, { ruler, length, tolerance }: CutRules): Cut {
  const end = Math.max(...outline.map((point) => point[0]), before?.near ?? 0, before?.far ?? 0);
  const marks =
    ruler === null ? [] : RULER_PARTS.map((part) => Math.ceil((end / ruler) * part - 1e-6) * (ruler / part));
  const at = marks.find((mark) => mark <= length + tolerance) ?? end;
  return { near: at, far: at };
}

function middleOf(outline: Polygon): number {
  const xs = outline.map((point) => point[0]);
  return (Math.min(...xs) + Math.max(...xs)) / 2;
}

function stripPiece({ placement, outline }: Piece, cut: Cut, { height, ruler }: CutRules): StripPiece {
  const angle = angleOf(cut, height);
  return {
    blank: placement.blank,
    shape: placement.shape,
    turn: placement.turn,
    mirror: placement.mirror,
    outline,
    ...cut,
    angle,
    rulerAngle: isRulerAngle(angle),
    onRuler: ruler !== null && [cut.near, cut.far].every((mark) => isMark(mark, ruler)),
  };
}
