/**
 * Moves labels in a margin apart so that none overlaps its neighbour, each as near as may be to where it belongs. Those
 * that crowd form a heap that is centred on the mean of where its members belong.
 * @param wanted where each label's middle belongs, ascending
 * @param gap least distance between middles
 * @param low @param high where middles may lie; where there is no room for all, they run past `high`
 */
export function spread(wanted: readonly number[], gap: number, low: number, high: number): readonly number[] {
  const heaps: { sum: number; size: number; first: number }[] = [];
  const startOf = (heap: { sum: number; size: number }): number => {
    const centred = heap.sum / heap.size - ((heap.size - 1) * gap) / 2;
    return Math.max(low, Math.min(centred, high - (heap.size - 1) * gap));
  };
  wanted.forEach((at, first) => {
    heaps.push({ sum: at, size: 1, first });
    while (heaps.length > 1) {
      const last = heaps[heaps.length - 1]!;
      const before = heaps[heaps.length - 2]!;
      if (startOf(before) + before.size * gap <= startOf(last)) {
        break;
      }
      heaps.splice(-2, 2, { sum: before.sum + last.sum, size: before.size + last.size, first: before.first });
    }
  });
  return heaps.flatMap((heap) => Array.from({ length: heap.size }, (_, index) => startOf(heap) + index * gap));
}
