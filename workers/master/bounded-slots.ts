/** A bounded knapsack over lengths: what goes into a room and is worth most, no more of each than there is. */
export interface BoundedItem {
  readonly size: number;
  readonly value: number;
  readonly most: number;
}

/** By item, how many; worthless ones are left out. Lists of undominated (size, value) pairs, item by item. */
export function bestBounded(
  items: readonly BoundedItem[],
  room: number,
): { readonly value: number; readonly counts: Int32Array } {
  const fits = room * (1 + 1e-9) + 1e-9;
  const at = [0],
    val = [0],
    item = [-1],
    parent = [-1];
  const order = [...items.keys()]
    .filter((i) => items[i]!.value > 1e-12 && items[i]!.most > 0 && items[i]!.size <= fits)
    .sort((a, b) => items[b]!.value / items[b]!.size - items[a]!.value / items[a]!.size);
  let front = [0];
  let best = 0;
  order.forEach((i, k) => {
    const { size, value, most } = items[i]!;
    const grown = [...front];
    let layer = front;
    for (let copy = 0; copy < most && layer.length > 0; copy++) {
      const next: number[] = [];
      for (const l of layer) {
        const place = at[l]! + size;
        if (place > fits) continue;
        const label = at.push(place) - 1;
        val.push(val[l]! + value);
        item.push(i);
        parent.push(l);
        if (val[label]! > val[best]!) best = label;
        next.push(label);
      }
      grown.push(...next);
      layer = next;
    }
    grown.sort((a, b) => at[a]! - at[b]! || val[b]! - val[a]!);
    // What follows is worth less for its size, so no label that cannot catch up with the best is followed.
    const next = order[k + 1];
    const rate = next === undefined ? 0 : items[next]!.value / items[next]!.size;
    let top = -Infinity;
    front = grown.filter((l) => {
      if (val[l]! <= top || val[l]! + rate * (fits - at[l]!) < val[best]!) return false;
      top = val[l]!;
      return true;
    });
  });
  const counts = new Int32Array(items.length);
  for (let l = best; parent[l]! >= 0; l = parent[l]!) counts[item[l]!]!++;
  return { value: val[best]!, counts };
}
