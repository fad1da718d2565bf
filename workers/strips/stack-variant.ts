/**
 * A stack is blanks one above the other between two square cuts, each in a box of its own, parted by cuts along the strip. While
 * rows are priced and laid it is treated as one box, as wide as its widest blank and as tall as all of them together.
 */
import type { LaidBlank } from './lay-row.ts';
import type { Variant } from './variant.ts';

/** @param blank an index beyond the job's, by which the row programmes know it */
export function makeStack(variants: readonly Variant[], blank: number): Variant {
  const stack = [...variants].sort((a, b) => b.width - a.width || b.height - a.height || a.blank - b.blank);
  const width = stack[0]!.width;
  const height = stack.reduce((sum, v) => sum + v.height, 0);
  return {
    blank,
    shape: 0,
    turn: 0,
    mirror: false,
    hull: [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ],
    width,
    height,
    area: stack.reduce((sum, v) => sum + v.area, 0),
    levelled: false,
    shift: [0, 0],
    stack,
  };
}

/** The blanks of these variants, those of stacks one by one. */
export function unstacked(variants: readonly Variant[]): readonly Variant[] {
  return variants.flatMap((v) => v.stack ?? [v]);
}

/**
 * Stacks of a row taken apart into the blanks that lie in them, the cuts between them on the ruler's marks, or on those of half or a
 * quarter of it, where the strip is tall enough.
 * @param height of the strip @param ruler null: as tight as can be
 */
export function unstackRow(blanks: readonly LaidBlank[], height: number, ruler: number | null): readonly LaidBlank[] {
  return blanks.flatMap((laid, index): readonly LaidBlank[] => {
    const { stack } = laid.variant;
    if (!stack) return [laid];
    const rises = risesOf(stack, height, ruler);
    return stack.map((variant, i) => ({ variant, x: laid.x, y: rises[i]!, slope: laid.slope, stack: index }));
  });
}

/** The other way round: what lies in one stack becomes one box again. Blanks of a stack follow each other. */
export function restackRow(blanks: readonly LaidBlank[]): readonly Variant[] {
  const groups: LaidBlank[][] = [];
  for (const laid of blanks) {
    const last = groups.at(-1);
    if (last && laid.stack !== undefined && last[0]!.stack === laid.stack) last.push(laid);
    else groups.push([laid]);
  }
  return groups.map((group) =>
    group.length === 1
      ? group[0]!.variant
      : makeStack(
          group.map((laid) => laid.variant),
          -1,
        ),
  );
}

function risesOf(stack: readonly Variant[], height: number, ruler: number | null): readonly number[] {
  for (const mark of ruler === null ? [] : [ruler, ruler / 2, ruler / 4]) {
    const rises = rise(stack, (v) => Math.ceil(v / mark - 1e-6) * mark);
    if (rises.at(-1)! + stack.at(-1)!.height <= height + 1e-9) return rises;
  }
  return rise(stack, (v) => v);
}

function rise(stack: readonly Variant[], onMark: (v: number) => number): readonly number[] {
  let at = 0;
  return stack.map((variant) => {
    const low = at;
    at = onMark(at + variant.height);
    return low;
  });
}
