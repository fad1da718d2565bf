import { modulo } from '../shape/point.ts';
import type { Block } from './quilt.ts';

/** How each copy of a block is turned in the quilt, in order: degrees anticlockwise, from 0 to 360. */
export function copyTurns({ turns, count }: Block): readonly number[] {
  const list = turns !== undefined && turns.length > 0 ? turns : [0];
  return Array.from({ length: count }, (_, i) => modulo(list[i % list.length]!, 360));
}
