/** The best way to part one piece into strips: an unbounded knapsack over slot heights. */
export interface Slots {
  /** Height to how many. */
  readonly slots: ReadonlyMap<number, number>;
  readonly value: number;
}

/** @param items heights with their values @param stack what they may add up to; null when nothing is worth the threshold */
export function bestSlots(
  items: readonly (readonly [height: number, value: number])[],
  stack: number,
  threshold: number,
): Slots | null {
  const room = stack * (1 + 1e-9) + 1e-9;
  const at = [0],
    val = [0],
    item = [-1],
    parent = [-1];
  let front = [0];
  let best = -1;
  let bestValue = threshold;
  const sorted = items.filter(([h, v]) => v > 1e-12 && h <= room).sort((a, b) => b[1] / b[0] - a[1] / a[0]);
  sorted.forEach(([height, value], k) => {
    const rate = value / height;
    const grown = [...front];
    let layer = front;
    while (layer.length > 0) {
      const next: number[] = [];
      for (const l of layer) {
        const position = at[l]! + height;
        if (position > room || val[l]! + value + rate * (room - position) <= bestValue) continue;
        const label = at.push(position) - 1;
        val.push(val[l]! + value);
        item.push(k);
        parent.push(l);
        if (val[label]! > bestValue) {
          bestValue = val[label]!;
          best = label;
        }
        next.push(label);
      }
      grown.push(...next);
      layer = next;
    }
    grown.sort((a, b) => at[a]! - at[b]! || val[b]! - val[a]!);
    let top = -Infinity;
    front = [];
    for (const l of grown) {
      if (val[l]! <= top) continue;
      top = val[l]!;
      front.push(l);
    }
  });
  if (best < 0) return null;
  const slots = new Map<number, number>();
  for (let l = best; parent[l]! >= 0; l = parent[l]!) {
    const height = sorted[item[l]!]![0];
    slots.set(height, (slots.get(height) ?? 0) + 1);
  }
  return { slots, value: bestValue };
}

/**
 * Every parting to which no slot can be added and of which no slot can be made taller, worth at least so much.
 * @param items heights with their values, no taller one worth less
 * @returns null when there are more than `most`
 */
export function listSlots(
  items: readonly (readonly [height: number, value: number])[],
  stack: number,
  least: number,
  most: number,
): readonly ReadonlyMap<number, number>[] | null {
  const room = stack * (1 + 1e-9) + 1e-9;
  const sorted = items.filter(([h]) => h <= room).sort((a, b) => b[0] - a[0]);
  // The best rate of what may still be added, from each place on.
  const rates = sorted.map((_, k) => Math.max(...sorted.slice(k).map(([h, v]) => v / h)));
  const found: ReadonlyMap<number, number>[] = [];
  const taken = sorted.map(() => 0);
  let visits = 0;
  const visit = (k: number, left: number, value: number): boolean => {
    if (++visits > 100 * most + 10_000) return false;
    if (value + (rates[k] ?? 0) * left < least - 1e-9) return true;
    if (k === sorted.length) {
      const full = sorted.every(
        ([height], i) => height > left && (i === 0 || taken[i] === 0 || sorted[i - 1]![0] - height > left),
      );
      if (full) found.push(new Map(sorted.flatMap(([h], i) => (taken[i]! > 0 ? [[h, taken[i]!] as const] : []))));
      return found.length <= most;
    }
    const [height, each] = sorted[k]!;
    for (let n = Math.floor(left / height); n >= 0; n--) {
      taken[k] = n;
      if (!visit(k + 1, left - n * height, value + n * each)) return false;
    }
    taken[k] = 0;
    return true;
  };
  return visit(0, room, 0) ? found : null;
}
