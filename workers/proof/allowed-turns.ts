/** Which turns a blank may lie at, read straight from the words of the job. */
import type { TurnRange } from '../../src/plan/layout-job.ts';
import { modulo, type Polygon } from '../../src/shape/point.ts';
import { hull } from './convex.ts';
import type { ShapeRule } from './rules.ts';

/** Degrees. Over a blank as wide as the cloth it moves a corner by less than the tolerance of touching. */
const SAME = 1e-6;

/** Whether a blank cut round a template may lie at this turn: an interval means every turn in it. */
export function allowsFreeTurn(rule: ShapeRule, turn: number): boolean {
  return rule.turns === 'any' || rule.turns.some((range) => isIn(range, turn));
}

/**
 * Whether a blank cut from strips may lie at this turn: an interval stands for its centre, its ends and every turn inside
 * it that lays an edge along or square to the strip; any turn for every such turn and the multiples of 15 degrees. Strips
 * run along x or along y, so an edge along or square to one strip is along or square to all.
 */
export function allowsStripTurn(rule: ShapeRule, turn: number): boolean {
  const laysAnEdge = () => squareTurns(rule.outline).some((square) => between(turn, square, 90) <= SAME);
  if (rule.turns === 'any') return between(turn, 0, 15) <= SAME || laysAnEdge();
  return rule.turns.some((range) => {
    if (!isIn(range, turn)) return false;
    return typeof range === 'number' || marksOf(range).some((mark) => between(turn, mark, 360) <= SAME) || laysAnEdge();
  });
}

/** Every turn that allowsStripTurn allows, for knowing which heights a strip may have. */
export function stripTurns(rule: ShapeRule): readonly number[] {
  const square = squareTurns(rule.outline).flatMap((turn) => [turn, turn + 90, turn + 180, turn + 270]);
  if (rule.turns === 'any') return [...Array.from({ length: 24 }, (_, i) => i * 15), ...square];
  return rule.turns.flatMap((range) =>
    typeof range === 'number' ? [range] : [...marksOf(range), ...square.filter((turn) => isIn(range, turn))],
  );
}

type Interval = Exclude<TurnRange, number>;

const marksOf = (range: Interval): readonly number[] => [
  range.centre,
  range.centre - range.within,
  range.centre + range.within,
];

function isIn(range: TurnRange, turn: number): boolean {
  const [centre, within] = typeof range === 'number' ? [range, 0] : [range.centre, range.within];
  return between(turn, centre, 360) <= within + SAME;
}

/** The least angle between two directions that count as the same after every `period` degrees. */
function between(a: number, b: number, period: number): number {
  const apart = modulo(a - b, period);
  return Math.min(apart, period - apart);
}

const known = new WeakMap<Polygon, readonly number[]>();

/** In [0, 90): the turns that lay an edge along an axis. A blank that is not convex is cut as its hull, so both count. */
function squareTurns(outline: Polygon): readonly number[] {
  const before = known.get(outline);
  if (before) return before;
  const turns = [...edgeTurns(outline), ...edgeTurns(hull(outline))];
  known.set(outline, turns);
  return turns;
}

const edgeTurns = (outline: Polygon): readonly number[] =>
  outline.map((from, i) => {
    const to = outline[(i + 1) % outline.length]!;
    return modulo((-Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI, 90);
  });
