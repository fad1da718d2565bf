/** A first plan at once: every blank boxed, tallest first, each into the first strip that still has room. */
import { type Family, stripHeight } from './family.ts';
import type { Variant } from './variant.ts';

export interface BoxRow {
  readonly family: number;
  readonly height: number;
  readonly variants: readonly Variant[];
}

/**
 * Strips that hold the demand in the families given. A blank that none of them takes is passed over.
 * @param order families to try, best first
 */
export function boxRows(families: readonly Family[], order: readonly number[], demand: Int32Array): readonly BoxRow[] {
  const lying = [...demand.keys()].flatMap((blank) => {
    if (demand[blank]! <= 0) return [];
    for (const f of order) {
      const variant = bestBoxed(families[f]!, blank);
      if (variant) return [{ blank, f, variant }];
    }
    return [];
  });
  lying.sort((a, b) => b.variant.height - a.variant.height || b.variant.width - a.variant.width);
  const open: { family: number; height: number; variants: Variant[]; left: number }[] = [];
  for (const { blank, f, variant } of lying) {
    const family = families[f]!;
    for (let i = 0; i < demand[blank]!; i++) {
      let row = open.find((r) => r.family === f && r.left >= variant.width - 1e-9 && r.height >= variant.height - 1e-9);
      if (!row) {
        row = { family: f, height: stripHeight(variant.height, family.ruler), variants: [], left: family.span };
        open.push(row);
      }
      row.variants.push(variant);
      row.left -= variant.width;
    }
  }
  return open;
}

/** The way of lying that takes least of the strips it would fill by itself. */
function bestBoxed(family: Family, blank: number): Variant | undefined {
  let best: Variant | undefined;
  let least = Infinity;
  for (const v of family.variants) {
    if (v.blank !== blank) continue;
    const each = stripHeight(v.height, family.ruler) / Math.floor(family.span / v.width + 1e-6);
    if (each < least - 1e-12) {
      least = each;
      best = v;
    }
  }
  return best;
}
