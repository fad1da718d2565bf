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
