/**
 * A strip cut in two layers. Folded in the middle, right sides together, its two ends lie on each other, and every cut parts
 * both layers: the lower gives the blanks as drawn from the strip's start, the upper their mirror images from its end. So a
 * row can be cut folded as far as its two ends are mirror images of each other; what lies between is cut once it is open.
 */
import type { Point, Polygon } from '../shape/point.ts';
import { samePlace } from '../shape/same-outline.ts';
import type { StripPiece, StripSteps } from './cut-steps.ts';
import type { LayoutJob, Placement } from './layout-job.ts';
import { type Cluster, lengthOf } from './row-clusters.ts';
import { placementsAs, type ShapeOn } from './shapes-on.ts';

/** Where a one-way print's up runs; undefined for prints that may be turned. */
export type OneWay = 'along' | 'across' | undefined;

/** Fewer pairs than this are not worth a fold. */
const LEAST_PAIRS = 2;
/** A strip emptier than this is not laid about its middle: what is left of it stays whole. */
const FULL = 3 / 4;

/**
 * Whether strips may be cut folded at all. A strip across the cloth is folded selvage to selvage, one along it end to end;
 * a fold that would lay a one-way print on its head in one layer is never made, whatever the blanks allow.
 */
export function mayFold(firstCut: StripSteps['firstCut'], oneWay: OneWay): boolean {
  return oneWay !== (firstCut === 'across' ? 'across' : 'along');
}

/** How a strip is cut in two layers. */
export interface Fold {
  /** So many blanks from the strip's start are cut through both layers, and give as many at its end. */
  readonly pairs: number;
  /** Uncut between the two ends once all is cut, measured on the shorter edge. */
  readonly left: number;
}

/**
 * What of a strip can be cut in two layers, read from where its blanks lie: each must have its mirror image as far from the
 * other end, and its cut must reach neither the fold nor, in the upper layer, what lies between.
 * @param within what counts as touching
 * @returns null where folding is not worth it or not allowed
 */
export function foldOf(strip: StripSteps, oneWay: OneWay, within: number): Fold | null {
  const { pieces, across } = strip;
  // A strip cut at two sittings is not whole when it is folded.
  if (strip.part !== undefined) {
    return null;
  }
  // The cuts along a stack would have to be found in both layers: it is cut flat.
  if (!mayFold(strip.firstCut, oneWay) || pieces.some(({ stack }) => stack !== undefined)) {
    return null;
  }
  const mirrored = pieces.map(({ outline }) => mirrorIn(outline, across));
  let pairs = 0;
  while (2 * (pairs + 1) <= pieces.length) {
    const piece = pieces[pairs]!;
    const isPair = samePlace(mirrored[pieces.length - 1 - pairs]!, startingAt(piece.outline), within);
    const between = mirrored.slice(pairs + 1, pieces.length - 1 - pairs);
    const reach = Math.max(piece.near, piece.far) <= across / 2 + within;
    if (!isPair || !reach || !between.every((outline) => liesBeyond(outline, piece, strip.height, within))) {
      break;
    }
    pairs++;
  }
  if (pairs < LEAST_PAIRS) {
    return null;
  }
  const fold = pieces[pairs - 1]!;
  const last = pieces[pieces.length - pairs - 1]!;
  const left = Math.min(across - fold.near - last.near, across - fold.far - last.far);
  return { pairs, left: Math.max(0, left) };
}

/** Reflected in the middle of the strip, and walked so that it stays anticlockwise. */
const mirrorIn = (outline: Polygon, across: number): Polygon =>
  startingAt([...outline].map(([x, y]): Point => [across - x, y]).reverse());

/** samePlace minds the sense of walking; strips along the cloth are seen reflected. */
function startingAt(outline: Polygon): Polygon {
  const area = outline.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = outline[(i + 1) % outline.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  return area < 0 ? [...outline].reverse() : outline;
}

const liesBeyond = (outline: Polygon, { near, far }: StripPiece, height: number, within: number): boolean =>
  outline.every(([x, y]) => x >= near + ((far - near) * y) / height - within);

/** A row laid about the fold: clusters from the start, each with its mirror image at the end, and the rest between. */
export interface AboutFold {
  readonly pairs: readonly { readonly cluster: Cluster; readonly mirror: readonly Placement[] }[];
  readonly between: readonly Cluster[];
}

/**
 * Lays a row about the fold, as far as its clusters go in pairs: the mirror image of one must be just what another gives.
 * @param onCloth from the strip's frame to the cloth's, for an outline
 * @param shapes how blanks may lie on this cloth
 * @returns null where too few go in pairs, or the row would not fit
 */
export function aboutFold(
  strip: StripSteps,
  clusters: readonly Cluster[],
  shapes: readonly ShapeOn[],
  onCloth: (outline: Polygon) => Polygon,
  within: number,
): AboutFold | null {
  const filled = clusters.reduce((sum, cluster) => sum + lengthOf(cluster), 0);
  if (filled < FULL * strip.across) {
    return null;
  }
  const left = [...clusters];
  const pairs: { cluster: Cluster; mirror: readonly Placement[] }[] = [];
  const between: Cluster[] = [];
  let start = 0;
  while (left.length > 0) {
    const first = left.shift()!;
    const found = partnerOf(first, left, start, { strip, shapes, onCloth, within });
    if (found === null) {
      between.push(first);
      continue;
    }
    left.splice(found.index, 1);
    pairs.push({ cluster: found.cluster, mirror: found.mirror });
    start += lengthOf(found.cluster);
  }
  const room = strip.across - 2 * start - between.reduce((sum, cluster) => sum + lengthOf(cluster), 0);
  const paired = pairs.reduce((sum, { cluster }) => sum + cluster.pieces.length, 0);
  return paired < LEAST_PAIRS || room < -within ? null : { pairs, between };
}

interface FoldRules {
  readonly strip: StripSteps;
  readonly shapes: readonly ShapeOn[];
  readonly onCloth: (outline: Polygon) => Polygon;
  readonly within: number;
}

/** Another cluster that holds what the mirror image of this one gives; the shorter of the two is cut, and mirrored. */
function partnerOf(first: Cluster, others: readonly Cluster[], start: number, rules: FoldRules) {
  const tried = new Map<string, readonly Placement[] | null>();
  for (const [index, other] of others.entries()) {
    const [cluster, gives] = lengthOf(first) <= lengthOf(other) + rules.within ? [first, other] : [other, first];
    const key = JSON.stringify([cluster === first, gives.holds, cluster === first ? 0 : other.start]);
    const mirror = tried.get(key) ?? (tried.has(key) ? null : mirrorOf(cluster, gives.holds, start, rules));
    tried.set(key, mirror);
    if (mirror !== null) {
      return { index, cluster, mirror };
    }
  }
  return null;
}

/** What the upper layer gives over a cluster that begins at `start`, if that is what is wanted there. */
function mirrorOf(cluster: Cluster, wanted: string, start: number, rules: FoldRules): readonly Placement[] | null {
  const { strip, shapes, onCloth, within } = rules;
  const left: string[] = JSON.parse(wanted);
  const found: Placement[] = [];
  for (const { outline, blank } of cluster.pieces) {
    const moved = outline.map(([x, y]): Point => [x - cluster.start + start, y]);
    const target = onCloth(mirrorIn(moved, strip.across));
    const allowed = shapes.filter((shape) => left.includes(shape.blank));
    const ways = placementsAs(target, allowed, within);
    // A blank that is its own mirror image is taken as itself, so that others are left for those that need them.
    const way = ways.find((each) => each.blank === blank) ?? ways[0];
    if (way === undefined) {
      return null;
    }
    left.splice(left.indexOf(way.blank), 1);
    found.push(way);
  }
  return left.length === 0 ? found : null;
}

/** What counts as touching on a cloth: the job's own tolerance. */
export const touching = (job: LayoutJob, cloth: string): number =>
  1e-6 * (job.cloths.find((each) => each.id === cloth)?.width ?? 1);
