import type { ClothLengthDrawn } from '../draw/unroll.ts';
import type { Cloth } from '../quilt/quilt.ts';

/** "Noon gold, from the bolt", "Noon gold, the piece “fat-quarter”, 3 alike". */
export function lengthName(cloth: Cloth, length: ClothLengthDrawn): string {
  if (length.piece === null) {
    return `${cloth.name}, from the bolt`;
  }
  return `${cloth.name}, the piece “${length.piece}”${length.times > 1 ? `, ${length.times} alike` : ''}`;
}
