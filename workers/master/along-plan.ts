/**
 * Lengths of a bolt whose strips run along it, and a plan in boxes that needs no choice of lengths: blanks side by side across
 * the cloth, longest first, each length as long as its longest, shorter ones behind one another where they fit.
 */
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import { type Family, makeFamily, stripHeight } from '../strips/family.ts';
import type { Variant } from '../strips/variant.ts';

/** More where all is boxes, which are priced in no time. */
const MOST_BOXED = 30;
const MOST_SLANTED = 10;

/**
 * Lengths to try: of each blank by itself, in every way that it may lie; then of several end to end, those first that waste least
 * of a selling step; and all of a step.
 */
export function segmentLengths(job: LayoutJob, cloth: number): readonly number[] {
  const bolt = job.cloths[cloth]!;
  const probe = alongFamily(job, cloth);
  if (probe.variants.length === 0) return [];
  const most = probe.slopes.length === 1 ? MOST_BOXED : MOST_SLANTED;
  const single = distinct(probe.variants.map((v) => v.width));
  // Those of the plan in boxes must be there; the others are spread over what there is.
  const demand = Int32Array.from(job.blanks, (b) => b.demand);
  const boxed = boxedLengths(probe, bolt.width, demand).map((l) => l.length);
  const kept = distinct([...boxed, ...spread(single, most - new Set(boxed).size)]);
  const reach = Math.max(single.at(-1)!, 2 * bolt.width);
  const sums = new Set<number>();
  for (const a of single) {
    for (let n = 2; n * a <= reach; n++) sums.add(tidy(n * a));
    for (const b of single) if (a + b <= reach) sums.add(tidy(a + b));
  }
  if (bolt.step !== undefined) for (let n = 1; n <= 4; n++) sums.add(tidy(n * bolt.step - (bolt.squaring ?? 0)));
  const more = distinct([...sums].filter((l) => l > 0 && !kept.some((k) => Math.abs(k - l) < 1e-9)));
  return distinct([...kept, ...spread(more, most - kept.length)]);
}

/** Strips along a bolt as long as may be. */
export function alongFamily(job: LayoutJob, cloth: number): Family {
  return makeFamily(job, cloth, { along: true, span: Infinity, stack: job.cloths[cloth]!.width, segment: null });
}

/** One length with its rows, each a strip along the cloth. */
export interface BoxedLength {
  readonly length: number;
  readonly rows: { readonly height: number; readonly variants: readonly Variant[] }[];
}

/** Lengths of one bolt that hold the demand in boxes; a blank that does not go on the bolt is passed over. */
export function boxedLengths(probe: Family, width: number, demand: Int32Array): readonly BoxedLength[] {
  const lying = [...demand.keys()].flatMap((blank) => {
    const variant = probe.variants
      .filter((v) => v.blank === blank)
      .reduce<Variant | null>(
        (best, v) => (best && takes(best, probe, width) <= takes(v, probe, width) ? best : v),
        null,
      );
    return variant && demand[blank]! > 0 ? new Array<Variant>(demand[blank]!).fill(variant) : [];
  });
  lying.sort((a, b) => b.width - a.width || b.height - a.height);
  const open: { length: number; left: number; rows: { height: number; left: number; variants: Variant[] }[] }[] = [];
  for (const variant of lying) {
    const height = stripHeight(variant.height, probe.ruler);
    const row = open.flatMap((o) => o.rows).find((r) => r.left >= variant.width - 1e-9 && r.height >= height - 1e-9);
    if (row) {
      row.left -= variant.width;
      row.variants.push(variant);
      continue;
    }
    let at = open.find((o) => o.left >= height - 1e-9 && o.length >= variant.width - 1e-9);
    if (!at) {
      at = { length: variant.width, left: width, rows: [] };
      open.push(at);
    }
    at.left -= height;
    at.rows.push({ height, left: at.length - variant.width, variants: [variant] });
  }
  return open;
}

/** Of the bolt, what one takes that lies among its like. */
function takes(v: Variant, probe: Family, width: number): number {
  return v.width / Math.max(1, Math.floor(width / stripHeight(v.height, probe.ruler) + 1e-6));
}

function spread(sorted: readonly number[], most: number): readonly number[] {
  if (most <= 0) return [];
  if (sorted.length <= most) return sorted;
  if (most === 1) return sorted.slice(-1);
  return Array.from({ length: most }, (_, i) => sorted[Math.round((i * (sorted.length - 1)) / (most - 1))]!);
}

const tidy = (value: number): number => Math.round(value * 1e9) / 1e9;

function distinct(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter((v, i) => i === 0 || v - sorted[i - 1]! > 1e-9 * (1 + v));
}
