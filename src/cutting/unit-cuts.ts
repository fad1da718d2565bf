/** Where a unit that cannot be sewn on one foundation can be cut into two that can. */
import { difference } from '../shape/combine.ts';
import { add, distance, type Point, type Polygon, scale } from '../shape/point.ts';
import { polygonArea, polygonPerimeter } from '../shape/polygon.ts';
import { foldOf, reachesAcross, type Stretch, stretchesIn } from './paper-fold.ts';
import { alongLine, isOn, lineThrough, type SeamLine, turnedRound } from './seam-line.ts';
import { type SewingUnit, type SharedRun, sewingUnit } from './sewing-unit.ts';
import { canSew, piecesOf } from './take-off.ts';

export interface UnitCut {
  /**
   * seam: along seams that are there, so that one straight seam joins the two. through: along the line of a seam drawn on, which
   * parts patches. curve: along the curved seams, which are then sewn without paper. apart: where they do not meet at all.
   */
  readonly kind: 'seam' | 'through' | 'curve' | 'apart';
  /** The straight line, from one end on the unit to the other; null where it is none. */
  readonly line: { readonly from: Point; readonly to: Point } | null;
  /** The patches of each part by index, in drawn order; a patch that is parted is in both. */
  readonly parts: readonly (readonly number[])[];
  /** The patches that are parted. */
  readonly parted: readonly number[];
}

/** So many are told. */
const MOST_CUTS = 4;

/** The cuts after which each part can be sewn: those that part no patch before others, then even ones before lopsided ones. */
export function unitCuts(unit: SewingUnit): readonly UnitCut[] {
  const whole = byNature(unit);
  if (whole !== null) {
    return whole.parts.every((part) => canSew(partOf(unit, part))) ? [whole] : [];
  }
  const lines = linesOf(unit);
  const alongSeams = lines.flatMap((line) => seamCut(unit, line));
  const cuts = alongSeams.length > 0 ? alongSeams : lines.flatMap((line) => throughCut(unit, line));
  return cuts.sort((a, b) => a.parted.length - b.parted.length || largest(a) - largest(b)).slice(0, MOST_CUTS);
}

/**
 * A unit in units that can be sewn, cut along its seams again and again; null where that does not part all that holds. Each cut
 * is that which leaves fewest patches still to be parted, so that there are few units, not certainly the fewest.
 */
export function unitsOfUnit(unit: SewingUnit): readonly (readonly number[])[] | null {
  if (canSew(unit)) {
    return [unit.patches.map((_, index) => index)];
  }
  const open = partings(unit)
    .map((parts) => ({ parts, open: parts.filter((part) => !canSew(partOf(unit, part))).flat().length }))
    .sort((a, b) => a.open - b.open)[0];
  if (open === undefined) {
    return null;
  }
  const units = open.parts.map((part) => unitsOfUnit(partOf(unit, part))?.map((each) => each.map((i) => part[i]!)));
  return units.every((each) => each !== undefined) ? units.flat() : null;
}

/** Each way to cut it in two along a line of seams, or to leave curves and gaps between its parts. */
function partings(unit: SewingUnit): readonly (readonly (readonly number[])[])[] {
  const whole = byNature(unit);
  return whole !== null
    ? [whole.parts]
    : linesOf(unit)
        .flatMap((line) => seamParting(unit, line) ?? [])
        .map(({ parts }) => parts);
}

const largest = (cut: UnitCut): number => Math.max(...cut.parts.map((part) => part.length));

/** Some of a unit's patches as a unit of their own. */
function partOf(unit: SewingUnit, part: readonly number[]): SewingUnit {
  return {
    tolerance: unit.tolerance,
    patches: part.map((index) => {
      const patch = unit.patches[index]!;
      const shared = patch.shared.filter((run) => part.includes(run.with));
      return { ...patch, shared: shared.map((run) => ({ ...run, with: part.indexOf(run.with) })) };
    }),
  };
}

/** Pieces that do not meet, or meet along curves alone, are units of their own without any choice. */
function byNature(unit: SewingUnit): UnitCut | null {
  const all = unit.patches.map(() => true);
  const apart = piecesOf(unit, all);
  if (apart.length > 1) {
    return { kind: 'apart', line: null, parts: apart, parted: [] };
  }
  const parts = piecesOf(unit, all, (run) => !run.curved);
  return parts.length > 1 ? { kind: 'curve', line: null, parts, parted: [] } : null;
}

/** The straight lines along which patches meet, each once. */
function linesOf(unit: SewingUnit): readonly SeamLine[] {
  const lines: SeamLine[] = [];
  const runs = unit.patches.flatMap((patch) => patch.shared.filter((run) => !run.curved));
  for (const run of [...runs].sort((a, b) => distance(b.from, b.to) - distance(a.from, a.to))) {
    if (!lines.some((line) => liesOn(line, run, unit.tolerance))) {
      lines.push(lineThrough([run.from, run.to]));
    }
  }
  return lines;
}

const liesOn = (line: SeamLine, run: SharedRun, tolerance: number): boolean =>
  !run.curved && isOn(line, run.from, tolerance) && isOn(line, run.to, tolerance);

function seamCut(unit: SewingUnit, line: SeamLine): readonly UnitCut[] {
  const found = seamParting(unit, line);
  return found?.parts.every((part) => canSew(partOf(unit, part))) ? [{ kind: 'seam', ...found, parted: [] }] : [];
}

/** In two along the seams on a line, if they are all that holds the two together and neither reaches across; else null. */
function seamParting(unit: SewingUnit, line: SeamLine): Pick<UnitCut, 'line' | 'parts'> | null {
  const { tolerance } = unit;
  const all = unit.patches.map(() => true);
  const parts = piecesOf(unit, all, (run) => !liesOn(line, run, tolerance));
  if (parts.length !== 2) {
    return null;
  }
  const between = parts[0]!.flatMap((index) =>
    unit.patches[index]!.shared.filter((run) => parts[1]!.includes(run.with)),
  );
  const first = between[0]!;
  // Directed with the first part to its left.
  const seam = alongLine(line, first.to) > alongLine(line, first.from) ? line : turnedRound(line);
  const paper = unit.patches.map((patch) => patch.polygon);
  const stretches = between.map((run) => stretchOf(seam, run.from, run.to));
  const fold = foldOf(seam, paper, stretches, tolerance);
  const back = turnedRound(seam);
  const foldBack = fold.map(({ from, to }) => ({ from: seam.size - to, to: seam.size - from }));
  const clear =
    parts[1]!.every((index) => !reachesAcross(paper[index]!, seam, fold, tolerance)) &&
    parts[0]!.every((index) => !reachesAcross(paper[index]!, back, foldBack, tolerance));
  return clear ? { line: endsOf(seam, stretches), parts } : null;
}

function throughCut(unit: SewingUnit, line: SeamLine): readonly UnitCut[] {
  const { tolerance, patches } = unit;
  const paper = patches.map((patch) => patch.polygon);
  const reach = Math.max(...paper.flat().map((corner) => distance(corner, line.from))) + line.size;
  const halves = [halfPlane(line, reach), halfPlane(turnedRound(line), reach)];
  const parts = halves.map((half) =>
    paper.flatMap((polygon, index) =>
      difference(polygon, half)
        .filter((piece) => polygonArea(piece) > tolerance * polygonPerimeter(piece))
        .map((piece) => ({ index, piece })),
    ),
  );
  if (
    !parts.every(
      (part) =>
        part.length > 0 &&
        canSew(
          sewingUnit(
            part.map(({ piece }) => piece),
            tolerance,
          ),
        ),
    )
  ) {
    return [];
  }
  const [one, other] = parts.map((part) => [...new Set(part.map(({ index }) => index))]) as [number[], number[]];
  const parted = one.filter((index) => other.includes(index));
  const stretches = paper.flatMap((polygon) => stretchesIn(polygon, line, tolerance));
  return [{ kind: 'through', line: endsOf(line, stretches), parts: [one, other], parted }];
}

/** Far enough that it covers whatever lies left of the line. */
function halfPlane({ from, along }: SeamLine, reach: number): Polygon {
  const left: Point = [-along[1], along[0]];
  const [back, ahead] = [add(from, scale(along, -reach)), add(from, scale(along, reach))];
  return [back, ahead, add(ahead, scale(left, reach)), add(back, scale(left, reach))];
}

function stretchOf(line: SeamLine, a: Point, b: Point): Stretch {
  const [from, to] = [alongLine(line, a), alongLine(line, b)];
  return { from: Math.min(from, to), to: Math.max(from, to) };
}

function endsOf(line: SeamLine, stretches: readonly Stretch[]): { readonly from: Point; readonly to: Point } {
  const from = Math.min(...stretches.map((each) => each.from));
  const to = Math.max(...stretches.map((each) => each.to));
  return { from: add(line.from, scale(line.along, from)), to: add(line.from, scale(line.along, to)) };
}
