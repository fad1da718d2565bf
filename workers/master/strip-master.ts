/**
 * The master programme of the strips method: which strips to cut, how many of each, and what that takes of every cloth.
 * One row for each blank's demand; one for each bolt's length; for pieces, one for each height of slot, cumulative, so that a
 * low strip may use a tall slot; and the cuts that a caller adds on how many strips are at least so tall.
 */
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import type { Solver } from '../programme/glpk.ts';
import type { Programme, ProgrammeColumn, ProgrammeRow } from '../programme/programme.ts';
import type { Family } from '../strips/family.ts';
import { columnKey, type PieceColumn, type StripColumn } from './column.ts';
import { mostDemand, type Share, type Split, type SplitBox, wholeSplitBox } from './shares.ts';

/** Strips of height at least `height`, over all cloths together, number from `least` to `most`. */
export interface HeightCut {
  readonly height: number;
  readonly least: number;
  readonly most: number;
}

export interface MasterPrices {
  /** By blank: what one more of it would cost. Never negative. */
  readonly blank: Float64Array;
  /** What a strip of this family and height costs. May be negative where a cut asks for tall strips. */
  readonly strip: (family: number, height: number) => number;
  /** The same without what the cuts add or take. */
  readonly bare: (family: number, height: number) => number;
  /** Of the cuts, in their order. */
  readonly cut: readonly number[];
  /** What a slot of this height is worth in a piece of this family. */
  readonly slot: (family: number, height: number) => number;
  /** What one more piece of this family costs. */
  readonly piece: (family: number) => number;
}

export interface MasterSolution {
  readonly value: number;
  /** By strip column, then by piece column. */
  readonly strips: Float64Array;
  readonly pieces: Float64Array;
  readonly unplaced: Float64Array;
  /** How shares are split; empty where there are none. */
  readonly split: Split;
}

export interface FixedSlots {
  readonly family: number;
  readonly height: number;
  readonly count: number;
}

/** By cloth of the job: length of strips off a bolt, or number of pieces; Infinity where nothing holds them back. */
export type Caps = readonly number[];

const OPEN = Infinity;
/** Coefficient entries are compared with this slack on heights. */
const SAME = 1e-9;

export class StripMaster {
  readonly job: LayoutJob;
  readonly families: readonly Family[];
  /** The most that may be asked for of each blank. */
  readonly demand: Int32Array;
  /** What is asked for in any case, and what only some way of a share asks for. */
  readonly certain: Int32Array;
  readonly shares: readonly Share[];
  readonly strips: StripColumn[] = [];
  readonly pieces: PieceColumn[] = [];
  /** By cloth: how many pieces of it there still are. */
  readonly stock: readonly number[];
  /** Slots that pieces cut already still have; strips cut already count as slots taken away. */
  private readonly fixedSlots: readonly FixedSlots[];
  private readonly solver: Solver;
  private readonly known = new Set<string>();

  constructor(
    solver: Solver,
    job: LayoutJob,
    families: readonly Family[],
    demand: Int32Array,
    stock: readonly number[],
    fixedSlots: readonly FixedSlots[] = [],
    shares: readonly Share[] = [],
  ) {
    this.fixedSlots = fixedSlots;
    this.solver = solver;
    this.job = job;
    this.families = families;
    this.certain = demand;
    this.shares = shares;
    this.demand = shares.length === 0 ? demand : mostDemand(demand, shares);
    this.stock = stock;
  }

  /** False when the same strip is there already. */
  addStrip(column: StripColumn): boolean {
    const key = columnKey(column);
    if (this.known.has(key)) return false;
    this.known.add(key);
    this.strips.push(column);
    return true;
  }

  addPiece(column: PieceColumn): boolean {
    const key = `p${column.family}|${[...column.slots]
      .sort((a, b) => a[0] - b[0])
      .map(([h, n]) => `${h.toFixed(6)}x${n}`)
      .join(',')}`;
    if (this.known.has(key)) return false;
    this.known.add(key);
    this.pieces.push(column);
    return true;
  }

  /**
   * Solves the linear programme. Null when it has no solution, which only cuts can bring about.
   * @param caps by cloth: no more length of strips, or pieces, than this
   */
  linear(
    cuts: readonly HeightCut[],
    caps?: Caps,
    splits?: SplitBox,
  ): { solution: MasterSolution; prices: MasterPrices } | null {
    const built = this.build(cuts, this.strips, false, OPEN, caps, splits);
    const result = this.solver.linear(built.programme);
    if (result.status !== 'optimal') return null;
    return {
      solution: this.solution(built, result.x, result.value, this.strips.length),
      prices: this.prices(built, result.duals, cuts),
    };
  }

  /**
   * Solves the integer programme over the strips that really can be laid.
   * @param most plans that cost more are not wanted
   */
  integer(cuts: readonly HeightCut[], seconds: number, most: number, columns: readonly StripColumn[], caps?: Caps) {
    const built = this.build(cuts, columns, true, most, caps);
    const result = this.solver.integer(built.programme, seconds);
    const usable = result.status === 'optimal' || result.status === 'feasible';
    return {
      status: result.status,
      solution: usable ? this.solution(built, result.x, result.value, columns.length) : null,
    };
  }

  private build(
    cuts: readonly HeightCut[],
    strips: readonly StripColumn[],
    integer: boolean,
    most = OPEN,
    caps?: Caps,
    splits?: SplitBox,
  ) {
    const columns: ProgrammeColumn[] = [];
    const rows: { lower: number; upper: number; entries: [number, number][] }[] = [];
    const variable = (cost: number, lower = 0, upper = OPEN, whole = true) =>
      columns.push({ cost, lower, upper, integer: whole }) - 1;
    const row = (lower: number, upper: number) => rows.push({ lower, upper, entries: [] }) - 1;
    const put = (r: number, c: number, value: number) => rows[r]!.entries.push([c, value]);
    const { cloths } = this.job;
    const area = integer ? areaWeight(this) : 0;
    const demandRows = Array.from(this.certain, (d) => row(d, OPEN));
    const boltRows = cloths.map((cloth) => (isBolt(cloth) ? row(-OPEN, 0) : -1));
    const stockRows = cloths.map((cloth, i) => {
      const stock = Math.min(this.stock[i]!, caps?.[i] ?? OPEN);
      return !isBolt(cloth) && stock !== OPEN ? row(-OPEN, stock) : -1;
    });
    const cutRows = cuts.map((cut) => row(cut.least > 0 ? cut.least : -OPEN, cut.most));
    const slotRows = this.families.map((family, f) => {
      if (family.stack === null) return [];
      const fixed = this.fixedSlots.filter((s) => s.family === f);
      const heights = new Set([...strips.filter((s) => s.family === f), ...fixed].map((s) => s.height));
      return [...heights]
        .sort((a, b) => a - b)
        .map((height) => {
          const free = fixed.reduce((sum, s) => (s.height >= height - SAME ? sum + s.count : sum), 0);
          return { height, row: row(-free, OPEN) };
        });
    });

    const stripVars = strips.map((strip) => {
      const family = this.families[strip.family]!;
      const x = variable(family.stack === null ? area * family.span * strip.height : 0);
      for (const [blank, n] of strip.counts) put(demandRows[blank]!, x, n);
      if (family.stack === null) put(boltRows[family.clothIndex]!, x, strip.height);
      for (const slot of slotRows[strip.family]!) if (slot.height <= strip.height + SAME) put(slot.row, x, -1);
      cuts.forEach((cut, i) => {
        if (strip.height >= cut.height - SAME) put(cutRows[i]!, x, 1);
      });
      return x;
    });
    const pieceVars = this.pieces.map((piece) => {
      const family = this.families[piece.family]!;
      const c = family.clothIndex;
      const y = variable((family.segment === null ? pieceCost(family) : 0) + area * pieceArea(family, piece));
      if (family.segment !== null) put(boltRows[c]!, y, family.segment);
      else if (stockRows[c]! >= 0) put(stockRows[c]!, y, 1);
      for (const slot of slotRows[piece.family]!) {
        let n = 0;
        for (const [height, count] of piece.slots) if (height >= slot.height - SAME) n += count;
        if (n > 0) put(slot.row, y, n);
      }
      return y;
    });
    const costEntries: [number, number][] = [];
    cloths.forEach((cloth, i) => {
      if (!isBolt(cloth)) return;
      const rate = cloth.cost ?? 1;
      const squaring = cloth.squaring ?? 0;
      // Within caps it does not matter how many steps a length makes.
      if (!integer || cloth.step === undefined || caps) {
        const cap = (caps?.[i] ?? OPEN) + (this.alwaysBought(i) ? squaring : 0);
        const length = variable(rate, 0, cap, false);
        put(boltRows[i]!, length, -1);
        costEntries.push([length, rate]);
      } else {
        const steps = variable(rate * cloth.step);
        put(boltRows[i]!, steps, -cloth.step);
        costEntries.push([steps, rate * cloth.step]);
      }
      if (squaring > 0) {
        const certain = this.alwaysBought(i);
        const used = variable(0, certain ? 1 : 0, 1);
        put(boltRows[i]!, used, squaring);
        if (integer && !certain) {
          const link = row(-OPEN, 0);
          const longest = this.longestBolt();
          strips.forEach((s, k) => {
            const family = this.families[s.family]!;
            if (family.clothIndex === i && family.stack === null) put(link, stripVars[k]!, s.height);
          });
          this.pieces.forEach((p, k) => {
            const family = this.families[p.family]!;
            if (family.clothIndex === i && family.segment !== null) put(link, pieceVars[k]!, family.segment);
          });
          put(link, used, -longest);
        }
      }
    });
    pieceVars.forEach((y, k) => {
      const family = this.families[this.pieces[k]!.family]!;
      if (family.segment === null && pieceCost(family) > 0) costEntries.push([y, pieceCost(family)]);
    });
    const within = splits ?? wholeSplitBox(this.shares);
    const splitVars = this.shares.map((share, s) => {
      const whole = row(share.total, share.total);
      return share.ways.map((way, w) => {
        const z = variable(0, within.least[s]![w]!, within.most[s]![w]!);
        put(whole, z, 1);
        for (const [blank, n] of way) put(demandRows[blank]!, z, -n);
        return z;
      });
    });
    const penalty = this.penalty();
    const unplacedVars = demandRows.map((r, i) => {
      const u = variable(penalty, 0, this.demand[i]!);
      put(r, u, 1);
      costEntries.push([u, penalty]);
      return u;
    });
    // Strips known so far may not be as many as a cut asks for, which says nothing of those that pricing would bring.
    cuts.forEach((cut, i) => {
      if (!integer && cut.least > 0) put(cutRows[i]!, variable(penalty, 0, cut.least), 1);
    });
    if (most !== OPEN) rows.push({ lower: -OPEN, upper: most + 1e-6, entries: costEntries });
    const programme: Programme = { columns, rows: rows as readonly ProgrammeRow[] };
    return {
      programme,
      demandRows,
      boltRows,
      stockRows,
      cutRows,
      slotRows,
      stripVars,
      pieceVars,
      unplacedVars,
      splitVars,
    };
  }

  private solution(
    built: ReturnType<StripMaster['build']>,
    x: Float64Array,
    value: number,
    strips: number,
  ): MasterSolution {
    const pick = (vars: readonly number[]) => Float64Array.from(vars, (v) => x[v]!);
    return {
      value,
      strips: pick(built.stripVars.slice(0, strips)),
      pieces: pick(built.pieceVars),
      unplaced: pick(built.unplacedVars),
      split: built.splitVars.map((vars) => [...pick(vars)]),
    };
  }

  private prices(
    built: ReturnType<StripMaster['build']>,
    duals: Float64Array,
    cuts: readonly HeightCut[],
  ): MasterPrices {
    const blank = Float64Array.from(built.demandRows, (r) => Math.max(0, duals[r]!));
    const slot = (f: number, height: number) => {
      let sum = 0;
      for (const s of built.slotRows[f]!) if (s.height <= height + SAME) sum += Math.max(0, duals[s.row]!);
      return sum;
    };
    const bare = (f: number, height: number) => {
      const family = this.families[f]!;
      return family.stack === null
        ? Math.max(0, -duals[built.boltRows[family.clothIndex]!]!) * height
        : slot(f, height);
    };
    // A count with one open side pays only on the other; what the solver leaves of the wrong sign is noise.
    const cut = cuts.map((c, i) => {
      const dual = duals[built.cutRows[i]!]!;
      return c.most === OPEN ? Math.max(0, dual) : c.least <= 0 ? Math.min(0, dual) : dual;
    });
    const strip = (f: number, height: number) => {
      let cost = bare(f, height);
      cuts.forEach((c, i) => {
        if (height >= c.height - SAME) cost -= cut[i]!;
      });
      return cost;
    };
    const piece = (f: number) => {
      const family = this.families[f]!;
      if (family.segment !== null) return Math.max(0, -duals[built.boltRows[family.clothIndex]!]!) * family.segment;
      const r = built.stockRows[family.clothIndex]!;
      return pieceCost(family) + (r >= 0 ? Math.max(0, -duals[r]!) : 0);
    };
    return { blank, strip, bare, cut, slot, piece };
  }

  /** What the linear programme pays for squaring whatever else it does. */
  fixedCost(): number {
    return this.job.cloths.reduce(
      (sum, c, i) => (isBolt(c) && this.alwaysBought(i) ? sum + (c.cost ?? 1) * (c.squaring ?? 0) : sum),
      0,
    );
  }

  /** A bolt is bought for certain when there is nothing else to cut from. */
  alwaysBought(cloth: number): boolean {
    return this.job.cloths.length === 1 && isBolt(this.job.cloths[cloth]!);
  }

  /** More than any plan costs, so that leaving out one blank is never worth it. */
  private penalty(): number {
    let sum = 1;
    this.job.cloths.forEach((cloth, i) => {
      if (isBolt(cloth)) sum += (cloth.cost ?? 1) * ((cloth.step ?? 0) + (cloth.squaring ?? 0));
      else sum += (cloth.cost ?? cloth.length!) * Math.min(this.stock[i]!, this.totalDemand());
    });
    return sum + this.longestBolt() * Math.max(1, ...this.job.cloths.map((c) => (isBolt(c) ? (c.cost ?? 1) : 0)));
  }

  /** No sensible plan takes more of a bolt: every blank in a strip of its own. */
  private longestBolt(): number {
    let sum = 1;
    this.demand.forEach((d, blank) => {
      let tallest = 0;
      for (const family of this.families) {
        if (family.stack !== null && family.segment === null) continue;
        for (const v of family.variants)
          if (v.blank === blank) tallest = Math.max(tallest, v.height, family.segment ?? 0);
      }
      sum += d * (tallest + (this.job.ruler ?? 0));
    });
    return sum;
  }

  private totalDemand(): number {
    return this.demand.reduce((a, b) => a + b, 0);
  }
}

export function isBolt(cloth: LayoutJob['cloths'][number]): boolean {
  return cloth.length === null || cloth.length === undefined;
}

export function pieceCost(family: Family): number {
  return family.cloth.cost ?? family.cloth.length!;
}

/** Cloth that a piece takes up: all of it, or a whole length of the bolt. */
function pieceArea(family: Family, _piece: PieceColumn): number {
  return family.cloth.width * (family.segment ?? family.cloth.length!);
}

/** Small enough that all the area a plan could save is never worth one step. */
function areaWeight(master: StripMaster): number {
  let least = Infinity;
  let area = 0;
  for (const cloth of master.job.cloths) {
    const cost = isBolt(cloth) ? (cloth.cost ?? 1) * (cloth.step ?? 1) : (cloth.cost ?? cloth.length!);
    if (cost > 0) least = Math.min(least, cost);
    area = Math.max(area, cloth.width);
  }
  if (least === Infinity) least = 1;
  let total = 0;
  master.families.forEach((family) => {
    if (family.stack !== null && family.segment === null)
      total += family.cloth.width * family.cloth.length! * Math.min(1000, master.stock[family.clothIndex]!);
  });
  master.demand.forEach((d, blank) => {
    const v = master.families.flatMap((f) => f.variants).find((x) => x.blank === blank);
    if (v) total += d * v.height * area;
  });
  return (1e-3 * least) / Math.max(1, total);
}
