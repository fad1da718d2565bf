/**
 * A plan in the order in which she cuts it: strips of a length of cloth may change places freely, and clusters of a row may,
 * so nothing is bought or wasted by it, and the plan is as clean as before.
 *
 * Two wishes pull against each other. Tallest strips first: if a cut goes wrong, what is left must still be long enough to
 * cut it again. Each block's blanks together: so that its bag is full and it can be sewn. The first wins where it matters,
 * which is where the cloth left over at the end is shorter than the tallest strip; where it is as tall, any strip can be cut
 * again from there, and the blocks win. Then come long blanks before short ones, and full strips before part-filled ones, so
 * that what is left of those lies beside the cloth left over.
 */
import type { Blank, ClothLength, Group } from '../cutting/cut-list.ts';
import type { Point, Polygon } from '../shape/point.ts';
import type { StripPiece, StripSteps } from './cut-steps.ts';
import { aboutFold, mayFold, touching } from './folded-row.ts';
import type { JobCloth, Layout, LayoutAnswer, Placement, Strip } from './layout-job.ts';
import { makeCutSteps } from './make-cut-steps.ts';
import { blanksById, type FilledStrip, filledStrips, type Placed, placedPolygon } from './placed.ts';
import { clustersOf, lengthOf } from './row-clusters.ts';
import { stepsFor } from './say-steps.ts';
import { shapesOn } from './shapes-on.ts';

/** Layouts keep their identity while their bound rises, so each is put in order once; what is in order stays as it is. */
const ordered = new WeakMap<readonly Layout[], { readonly group: Group; readonly answer: LayoutAnswer }>();

/**
 * The same plan with its rows laid about the fold where that lets them be cut in two layers, else long blanks first, and its
 * strips in the order of cutting.
 * @throws Error where the answer is no plan of this group's strips
 */
export function inCuttingOrder(group: Group, answer: LayoutAnswer): LayoutAnswer {
  const known = ordered.get(answer.layouts);
  if (known?.group === group) {
    const { layouts, testFirst } = known.answer;
    return layouts === answer.layouts ? answer : { ...answer, layouts, ...(testFirst && { testFirst }) };
  }
  const rows = withRowsInOrder(group, answer);
  const used = usedOf(answer);
  const told = rows.map((layout, i) =>
    stripsInOrder(group, layout, used.get(layout.cloth) ?? 0, answer.testFirst?.held[i] ?? []),
  );
  const layouts = told.map(({ layout }) => layout);
  const testFirst = answer.testFirst && { ...answer.testFirst, held: told.map(({ held }) => held) };
  const found = { ...answer, layouts, ...(testFirst && { testFirst }) };
  ordered.set(answer.layouts, { group, answer: found });
  ordered.set(layouts, { group, answer: found });
  return found;
}

function withRowsInOrder(group: Group, answer: LayoutAnswer): readonly Layout[] {
  const steps = makeCutSteps(group.job, answer);
  return answer.layouts.map((layout, index) => {
    const own = steps.filter((strip) => strip.layout === index);
    return {
      ...layout,
      placements: own.flatMap((strip) =>
        rowInOrder(group, layout, strip, answer.testFirst?.held[index]?.[strip.strip]),
      ),
    };
  });
}

/** @param held how many of its blanks are the test block's, where it is one of its strips */
function rowInOrder(
  group: Group,
  layout: Layout,
  strip: StripSteps,
  held: number = strip.pieces.length,
): readonly Placement[] {
  const within = touching(group.job, layout.cloth);
  const shapes = shapesOn(group.job, layout.cloth);
  const outlines = new Map(shapes.map((shape) => [JSON.stringify([shape.blank, shape.shape]), shape.outline]));
  const onCloth = (outline: Polygon): Polygon =>
    outline.map(([x, y]): Point => (strip.firstCut === 'along' ? [strip.from + y, x] : [x, strip.from + y]));
  const lay = ({ pieces, start }: { pieces: readonly StripPiece[]; start: number }, at: number) =>
    pieces.map((piece): Placement => {
      const moved = onCloth(piece.outline.map(([x, y]): Point => [x - start + at, y]));
      const { blank, shape, turn, mirror } = piece;
      const still = { blank, shape, turn, mirror, x: 0, y: 0 };
      const [own] = placedPolygon(outlines.get(JSON.stringify([blank, shape]))!.slice(0, 1), still);
      return { ...still, x: moved[0]![0] - own![0], y: moved[0]![1] - own![1] };
    });
  // A strip that holds stacks has cuts of its own; one that is cut at two sittings begins with the test block.
  if (held < strip.pieces.length || strip.pieces.some(({ stack }) => stack !== undefined)) {
    return lay({ pieces: strip.pieces, start: 0 }, 0);
  }
  const rank = rankOf(group.blanks);
  const clusters = [...clustersOf(strip, within)].sort(
    (a, b) =>
      compare(ranksOf(a.pieces, rank), ranksOf(b.pieces, rank)) ||
      longest(b.pieces) - longest(a.pieces) ||
      a.holds.localeCompare(b.holds) ||
      a.start - b.start,
  );
  const oneWay = group.lengths.find(({ id }) => id === layout.cloth)?.oneWay;
  const fold = mayFold(strip.firstCut, oneWay) ? aboutFold(strip, clusters, shapes, onCloth, within) : null;
  let at = 0;
  const inTurn = (fold === null ? clusters : [...fold.pairs.map(({ cluster }) => cluster), ...fold.between]).flatMap(
    (cluster) => lay(cluster, (at += lengthOf(cluster)) - lengthOf(cluster)),
  );
  return [...inTurn, ...(fold?.pairs.flatMap(({ mirror }) => mirror) ?? [])];
}

function usedOf(answer: LayoutAnswer): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const { cloth, length, count } of answer.layouts) {
    used.set(cloth, (used.get(cloth) ?? 0) + length * count);
  }
  return used;
}

/**
 * @param used how much of the bolt all its layouts use; of a piece the layout says itself
 * @param held of the test block's strips, which stay before the others, how many blanks are its own
 */
function stripsInOrder(
  group: Group,
  layout: Layout,
  used: number,
  held: readonly number[],
): { readonly layout: Layout; readonly held: readonly number[] } {
  const along = layout.firstCut === 'along';
  const strips = filledStrips(layout, blanksById(group.blanks));
  const fixed = strips.findIndex(({ placed }) => placed.length > 0);
  if (fixed < 0) {
    return { layout, held };
  }
  const index = group.lengths.findIndex(({ id }) => id === layout.cloth);
  const left = leftOver(group.job.cloths[index]!, group.lengths[index]!, layout, used);
  const first = Math.max(fixed, held.length);
  const sorted = [strips.slice(fixed, first), strips.slice(first)].flatMap((part) => inTurn(group, part, left, along));
  let from = strips[fixed]!.from;
  const told: Strip[] = (layout.strips ?? []).slice(0, fixed);
  const placements: Placement[] = [];
  for (const { from: before, height, placed } of sorted) {
    const by = from - before;
    told.push({ from, height });
    placements.push(
      ...placed.map(({ placement }) =>
        along ? { ...placement, x: placement.x + by } : { ...placement, y: placement.y + by },
      ),
    );
    from += height;
  }
  const moved = sorted.slice(0, first - fixed).map((strip) => held[strips.indexOf(strip)] ?? 0);
  return {
    layout: { ...layout, strips: told, placements },
    held: [...held.slice(0, fixed), ...moved].slice(0, held.length),
  };
}

/** Strips that may change places, sorted. @param left what is there beyond the need */
function inTurn(group: Group, strips: readonly FilledStrip[], left: number, along: boolean): readonly FilledStrip[] {
  const byHeight = [...strips].sort((a, b) => b.height - a.height);
  const rank = rankOf(
    group.blanks,
    byHeight.flatMap(({ placed }) => placed),
  );
  const length = (placed: readonly Placed[]) => placed.reduce((sum, each) => sum + extent(each.outline, along), 0);
  const long = (placed: readonly Placed[]) => Math.max(0, ...placed.map((each) => extent(each.outline, along)));
  const blocksFirst = left >= (byHeight[0]?.height ?? 0) - 1e-6;
  return strips
    .map((strip) => ({
      strip,
      blocks: ranksOf(
        strip.placed.map(({ placement }) => placement),
        rank,
      ),
    }))
    .sort((a, b) => {
      const height = differ(b.strip.height, a.strip.height);
      const block = compare(a.blocks, b.blocks);
      return (
        (blocksFirst ? block || height : height || block) ||
        differ(long(b.strip.placed), long(a.strip.placed)) ||
        namesIn(a.strip).localeCompare(namesIn(b.strip)) ||
        differ(length(b.strip.placed), length(a.strip.placed))
      );
    })
    .map(({ strip }) => strip);
}

/** What is there beyond the need, for cutting a strip again: on a bolt up to the selling step, on a piece up to its end. */
function leftOver(job: JobCloth, { piece }: ClothLength, layout: Layout, used: number): number {
  if (piece === null) {
    return job.step === undefined ? 0 : stepsFor(used, job.step) * job.step - used;
  }
  const last = layout.strips?.at(-1);
  const end = last === undefined ? 0 : last.from + last.height;
  return (layout.firstCut === 'along' ? job.width : (job.length ?? end)) - end;
}

/** Blocks in the order of what is told first; what is in no block, such as a binding, comes last. */
function rankOf(blanks: readonly Blank[], first: readonly Placed[] = []): ReadonlyMap<string, readonly number[]> {
  const blocks = [...new Set([...first.map(({ blank }) => blank), ...blanks].flatMap(blocksOf))];
  return new Map(blanks.map((blank) => [blank.id, blocksOf(blank).map((block) => blocks.indexOf(block))]));
}

const blocksOf = ({ uses }: Blank): readonly string[] => [...new Set(uses.map(({ block }) => block))];

/** The first and the last of the blocks that these blanks serve: what serves two lies between what serves either. */
function ranksOf(
  blanks: readonly { readonly blank: string }[],
  rank: ReadonlyMap<string, readonly number[]>,
): readonly number[] {
  const ranks = blanks.flatMap(({ blank }) => {
    const own = rank.get(blank) ?? [];
    return own.length === 0 ? [Number.MAX_SAFE_INTEGER] : own;
  });
  return [Math.min(...ranks), Math.max(...ranks)];
}

const compare = (a: readonly number[], b: readonly number[]): number => a[0]! - b[0]! || a[1]! - b[1]!;
/** Heights and lengths that differ by a rounding are the same. */
const differ = (a: number, b: number): number => (Math.abs(a - b) < 1e-6 ? 0 : a - b);

const longest = (pieces: readonly StripPiece[]): number =>
  Math.max(...pieces.map(({ outline }) => extent(outline, false)));

function extent(outline: Polygon, along: boolean): number {
  const values = outline.map((point) => point[along ? 1 : 0]);
  return Math.round((Math.max(...values) - Math.min(...values)) * 1e6) / 1e6;
}

const namesIn = ({ placed }: FilledStrip): string => [...new Set(placed.map(({ blank }) => blank.id))].sort().join(' ');
