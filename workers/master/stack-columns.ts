/** Strips with stacks as columns of the master. */
import type { Family } from '../strips/family.ts';
import { fitRow, type LaidRow, layRow } from '../strips/lay-row.ts';
import type { PricedRow } from '../strips/price-row.ts';
import type { Segment } from '../strips/stack-row.ts';
import { boxesForStacks, type Grid, type StackTable, stackTable } from '../strips/stack-table.ts';
import { makeStack, unstacked, unstackRow } from '../strips/stack-variant.ts';
import type { Variant } from '../strips/variant.ts';
import type { StripColumn } from './column.ts';
import type { StripMaster } from './strip-master.ts';

/** Adds the row where it can be laid and no more is in it than is wanted; else what is wanted of it, and the row for the bound alone. */
export function addStackedRow(master: StripMaster, f: number, height: number, row: PricedRow): boolean {
  const family = master.families[f]!;
  const { demand } = master;
  const steps = row.steps.map((s) => (s.variant.stack ? { ...s, variant: makeStack(s.variant.stack, -1) } : s));
  const all = unstacked(steps.map((s) => s.variant));
  const counts = countVariants(all);
  const fits = steps.every((s) => s.variant.height <= height + 1e-9 * (1 + height));
  if (fits && [...counts].every(([blank, n]) => n <= demand[blank]!)) {
    const laid = layRow(steps, height);
    // Stacks may be wider than they were taken for where some were merged for the bound.
    const real =
      laid.middle <= family.span * (1 + 1e-9) + 1e-9 ? laid : fitRow(stepVariants(steps), height, family.span);
    if (real) return addLaid(master, f, height, real);
  }
  const left = Int32Array.from(demand);
  const wanted = steps.flatMap(({ variant }): readonly Variant[] => {
    const kept = (variant.stack ?? [variant]).filter((v) => left[v.blank]! > 0 && left[v.blank]!-- > 0);
    const lying = within(kept, height);
    return lying.length === 0 ? [] : [asOne(lying)];
  });
  const real = fitRow(wanted, height, family.span);
  const added = real !== null && wanted.length > 0 && addLaid(master, f, height, real);
  return master.addStrip({ family: f, height, counts, row: null }) || added;
}

/**
 * A strip of segments that holds no more of any blank than there is left to cut: a stack that asks for more is filled again with what
 * there is, and so is the strip's end. False when it is worth no more than the threshold, or there already.
 */
export function addSegments(
  master: StripMaster,
  f: number,
  height: number,
  table: StackTable,
  segments: readonly Segment[],
  values: Float64Array,
  grid: Grid,
  threshold: number,
): boolean {
  const family = master.families[f]!;
  const { stacks, value } = fillSegments(family, height, table, segments, values, grid, Int32Array.from(master.demand));
  return value > threshold && stacks.length > 0 && master.addStrip(columnOf(family, f, height, stacks));
}

/** The stacks of such a strip. @param left how many of each blank there are; what the strip takes is taken away */
export function fillSegments(
  family: Family,
  height: number,
  table: StackTable,
  segments: readonly Segment[],
  values: Float64Array,
  grid: Grid,
  left: Int32Array,
): { readonly stacks: readonly (readonly Variant[])[]; readonly value: number } {
  const stacks: (readonly Variant[])[] = [];
  let room = family.span * (1 + 1e-9);
  let value = 0;
  const put = (stack: readonly Variant[]) => {
    for (const v of stack) {
      left[v.blank]!--;
      value += values[v.blank]!;
    }
    stacks.push(stack);
    room -= Math.max(...stack.map((v) => v.width));
  };
  const bestIn = (width: number): readonly Variant[] => {
    const narrow = boxesForStacks(family).filter((v) => v.width <= width + 1e-9);
    const again = stackTable(narrow, values, left, height, grid, 'up');
    return again.widths.length === 0 ? [] : honest(again.stack(again.widths.length - 1, height), left);
  };
  const rich = [...segments].sort((a, b) => table.value(b.w, height) - table.value(a.w, height));
  for (const { w, width } of rich) {
    const asked = table.stack(w, height);
    const stack = honest(asked, left).length === asked.length ? asked : bestIn(Math.min(width, room));
    if (stack.length > 0 && width <= room + 1e-9) put(stack);
  }
  for (let more = bestIn(room); more.length > 0; more = bestIn(room)) put(more);
  return { stacks, value };
}

/** A strip of these stacks, side by side. */
export function columnOf(
  family: Family,
  f: number,
  height: number,
  stacks: readonly (readonly Variant[])[],
): StripColumn {
  const steps = stacks.map((stack) => ({ variant: asOne(stack), rise: 0, slope: 0 }));
  return laidColumn(family, f, height, layRow(steps, height));
}

function addLaid(master: StripMaster, f: number, height: number, bundled: LaidRow): boolean {
  return master.addStrip(laidColumn(master.families[f]!, f, height, bundled));
}

function laidColumn(family: Family, f: number, height: number, bundled: LaidRow): StripColumn {
  const row = { ...bundled, blanks: unstackRow(bundled.blanks, height, family.ruler) };
  return { family: f, height, counts: countVariants(row.blanks.map((b) => b.variant)), row };
}

const asOne = (stack: readonly Variant[]): Variant => (stack.length === 1 ? stack[0]! : makeStack(stack, -1));

const stepVariants = (steps: readonly { readonly variant: Variant }[]): readonly Variant[] =>
  steps.map((s) => s.variant);

/** As many of them as the height holds, tallest first. */
function within(stack: readonly Variant[], height: number): readonly Variant[] {
  let room = height * (1 + 1e-9) + 1e-9;
  return [...stack]
    .sort((a, b) => b.height - a.height)
    .filter((v) => {
      if (v.height > room) return false;
      room -= v.height;
      return true;
    });
}

/** Those of them that there is demand for; two boxes of one blank share it. */
function honest(stack: readonly Variant[], left: Int32Array): readonly Variant[] {
  const rest = new Map<number, number>();
  return stack.filter(({ blank }) => {
    const n = rest.get(blank) ?? left[blank]!;
    rest.set(blank, n - 1);
    return n > 0;
  });
}

function countVariants(variants: readonly Variant[]): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const { blank } of variants) counts.set(blank, (counts.get(blank) ?? 0) + 1);
  return counts;
}
