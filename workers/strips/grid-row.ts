/**
 * Ruler marks: a row that has room to spare is spread so that the cut after each blank meets both edges of the strip on a
 * mark of the ruler. A row without that room stays as it is: cloth is worth more than a round number.
 */
import type { Family } from './family.ts';
import type { LaidBlank } from './lay-row.ts';
import { chainAdvance } from './advance.ts';
import { makeChains } from './variant.ts';

/** @returns the row spread onto the ruler's marks, or the row itself */
export function gridRow(blanks: readonly LaidBlank[], height: number, family: Family): readonly LaidBlank[] {
  const { ruler, span } = family;
  if (ruler === null) return blanks;
  const spread: LaidBlank[] = [];
  let near = 0;
  let far = 0;
  for (const [i, blank] of blanks.entries()) {
    const own = blank.variant.hull.map(([x, y]) => [x, y + blank.y] as const);
    const [, left] = makeChains(own);
    // The cut before it, as the right side of what is already cut off.
    const cut = { y: Float64Array.of(0, height), x: Float64Array.of(near, far) };
    const x = Math.max(0, chainAdvance(cut, left, 0));
    spread.push({ ...blank, x });
    const next = blanks[i + 1];
    const lean = leanAfter(blank, next, height);
    const [right] = makeChains(own.map(([px, py]) => [px + x, py] as const));
    // The least cut of that lean which clears the blank, moved on to marks at both edges.
    const mark = (v: number) => Math.ceil(v / ruler - 1e-6) * ruler;
    let reach = -Infinity;
    for (let k = 0; k < right.y.length; k++) reach = Math.max(reach, right.x[k]! - (lean * right.y[k]!) / height);
    near = Math.max(near, mark(reach));
    far = Math.max(far, mark(reach + lean));
    if (x + blank.variant.width > span * (1 + 1e-9) + 1e-9) return blanks;
  }
  return spread;
}

/** How far the cut after a blank leans from near edge to far edge: along its right side, or its neighbour's left. */
function leanAfter(blank: LaidBlank, next: LaidBlank | undefined, height: number): number {
  if (!next) return 0;
  const right = blank.variant.right;
  const left = next.variant.left;
  const own = ((right.x.at(-1)! - right.x[0]!) / (right.y.at(-1)! - right.y[0]!)) * height;
  const other = ((left.x.at(-1)! - left.x[0]!) / (left.y.at(-1)! - left.y[0]!)) * height;
  return Math.abs(own) <= Math.abs(other) ? own : other;
}
