/** How far layouts reach. */
import type { Layout } from './layout-job.ts';

/** The length that all of them take, each as often as it is cut. */
export const lengthOf = (layouts: readonly Layout[]): number =>
  layouts.reduce((sum, { length, count }) => sum + length * count, 0);

/** The far end of the last strip: up the cloth where strips run across, over it where they run along. */
export const endOf = ({ strips }: Layout): number =>
  (strips ?? []).reduce((end, { from, height }) => Math.max(end, from + height), 0);
