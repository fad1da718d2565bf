/**
 * What stacks are worth: for each width that some blank's box has and each height, the blanks of boxes no wider that may lie one
 * above the other in so much height and are worth most together. One bounded knapsack over heights, blanks taken in by width, so
 * that it answers for all widths on the way.
 *
 * Heights lie on a grid: rounded up, every stack really fits; rounded down, no stack is worth more than is said. Where all
 * heights are whole cells the two are the same.
 */
import type { Family } from './family.ts';
import type { Variant } from './variant.ts';

export interface Grid {
  readonly cell: number;
  /** Whether all sizes are whole cells. */
  readonly exact: boolean;
}

export interface StackTable {
  /** Widths that stacks may have, ascending. */
  readonly widths: readonly number[];
  /** value(w, height): the most that a stack no wider than widths[w] and no taller than `height` is worth. */
  readonly value: (w: number, height: number) => number;
  readonly stack: (w: number, height: number) => readonly Variant[];
  /**
   * The same of stacks of at least two blanks. A single blank is an item of the row itself, of which a row holds no more than are
   * wanted; were it to stand for all stacks of its width, a row with that blank and a poorer stack beside it would be forgotten.
   */
  readonly several: Omit<StackTable, 'widths' | 'several'>;
}

interface Piece {
  readonly variant: Variant;
  readonly times: number;
  readonly cells: number;
  /** By room in cells: whether the best of any stack takes it, and whether the best of two blanks or more does. */
  readonly taken: Uint8Array;
  readonly takenBySeveral: Uint8Array;
}

const CELLS_MOST = 3000;
const PARTS = [1, 2, 4, 8];

/** The coarsest cells, of the ruler or of one, that all sizes are multiples of; else a quarter of the ruler, or many to the range. */
export function gridFor(sizes: readonly number[], range: number, ruler: number | null): Grid {
  for (const part of PARTS) {
    const cell = (ruler ?? 1) / part;
    if (range / cell > CELLS_MOST) break;
    if (sizes.every((s) => Math.abs(s / cell - Math.round(s / cell)) < 1e-6)) return { cell, exact: true };
  }
  const fine = ruler === null ? range / 1000 : Math.max(range / CELLS_MOST, ruler / 4);
  // No size may come to nothing when it is rounded down.
  return { cell: Math.min(fine, ...sizes), exact: false };
}

/** Of each blank the boxes that no other box of it is within: no stack needs another. By width. */
export function boxesForStacks(family: Family): readonly Variant[] {
  const known = stackBoxes.get(family);
  if (known) return known;
  const kept = family.variants.filter(
    (v) =>
      !family.variants.some(
        (o) =>
          o.blank === v.blank &&
          o.width <= v.width + 1e-9 &&
          o.height <= v.height + 1e-9 &&
          (o.width < v.width - 1e-9 ||
            o.height < v.height - 1e-9 ||
            family.variants.indexOf(o) < family.variants.indexOf(v)),
      ),
  );
  const boxes = kept.sort((a, b) => a.width - b.width || a.height - b.height);
  stackBoxes.set(family, boxes);
  return boxes;
}

const stackBoxes = new WeakMap<Family, readonly Variant[]>();

/**
 * @param boxes by width @param values by blank of the job @param demand by blank: no more of one box lies in a stack
 * @param top the tallest strip asked about
 */
export function stackTable(
  boxes: readonly Variant[],
  values: Float64Array,
  demand: Int32Array,
  top: number,
  grid: Grid,
  round: 'up' | 'down',
): StackTable {
  const { cell } = grid;
  const cellsOf =
    round === 'up' ? (v: number) => Math.ceil(v / cell - 1e-6) : (v: number) => Math.floor(v / cell + 1e-6);
  const room = (height: number) => Math.floor(Math.min(height, top) / cell + 1e-6);
  const cells = room(top);
  const best = new Float64Array(cells + 1);
  const several = new Float64Array(cells + 1).fill(-Infinity);
  const pieces: Piece[] = [];
  const widths: number[] = [];
  const byWidth: Float64Array[] = [];
  const severalByWidth: Float64Array[] = [];
  const until: number[] = [];
  const usable = boxes.filter((v) => values[v.blank]! > 1e-9 && demand[v.blank]! > 0);
  usable.forEach((variant, i) => {
    const size = Math.max(1, cellsOf(variant.height));
    let left = Math.min(demand[variant.blank]!, Math.floor(cells / size));
    // Any number up to the demand is a sum of doublings and a rest.
    for (let n = 1; left > 0; n *= 2) {
      const times = Math.min(n, left);
      left -= times;
      pieces.push(takePiece(best, several, variant, times, size * times, times * values[variant.blank]!));
    }
    const next = usable[i + 1];
    if (next && next.width <= variant.width + 1e-9) return;
    widths.push(variant.width);
    byWidth.push(best.slice());
    severalByWidth.push(several.slice());
    until.push(pieces.length);
  });
  const stack = (w: number, height: number, wanted: 'any' | 'several'): readonly Variant[] => {
    const held: Variant[] = [];
    let c = room(height);
    let isSeveral = wanted === 'several';
    if (isSeveral && severalByWidth[w]![c]! <= 0) return [];
    for (let i = until[w]! - 1; i >= 0; i--) {
      const piece = pieces[i]!;
      if (!(isSeveral ? piece.takenBySeveral : piece.taken)[c]) continue;
      for (let k = 0; k < piece.times; k++) held.push(piece.variant);
      c -= piece.cells;
      // What lies with it is the best there is for the rest of the room.
      isSeveral = false;
    }
    return held;
  };
  return {
    widths,
    value: (w, height) => byWidth[w]![room(height)]!,
    stack: (w, height) => stack(w, height, 'any'),
    several: {
      value: (w, height) => Math.max(0, severalByWidth[w]![room(height)]!),
      stack: (w, height) => stack(w, height, 'several'),
    },
  };
}

function takePiece(
  best: Float64Array,
  several: Float64Array,
  variant: Variant,
  times: number,
  cells: number,
  value: number,
): Piece {
  const taken = new Uint8Array(best.length);
  const takenBySeveral = new Uint8Array(best.length);
  for (let c = best.length - 1; c >= cells; c--) {
    const before = best[c - cells]!;
    const sum = before + value;
    if ((times > 1 || before > 0) && sum > several[c]! + 1e-12) {
      several[c] = sum;
      takenBySeveral[c] = 1;
    }
    if (sum > best[c]! + 1e-12) {
      best[c] = sum;
      taken[c] = 1;
    }
  }
  return { variant, times, cells, taken, takenBySeveral };
}
