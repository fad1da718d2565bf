/** Seeded jobs of upright boxes off one bolt, the kind that published sets of strip packing hold. */
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import { rectangle } from '../outside/engine.ts';
import { numbers } from './numbers.ts';

/** @param most of each kind that are wanted */
export function boxJob(seed: number, kinds: number, most: number): LayoutJob {
  const draw = numbers(seed);
  const width = draw(24, 44);
  return {
    method: 'strips',
    cloths: [{ id: 'bolt', width }],
    blanks: Array.from({ length: kinds }, (_, i) => ({
      id: `kind${i}`,
      outline: rectangle(draw(3, Math.floor(width * 0.6)), draw(2, 15)),
      demand: draw(1, most),
    })),
  };
}
