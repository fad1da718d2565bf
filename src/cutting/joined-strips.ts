import { lengthIn } from '../quilt/measure.ts';
import type { JoinedLength, Quilt } from '../quilt/quilt.ts';
import type { Polygon } from '../shape/point.ts';

export interface JoinedStrips {
  readonly count: number;
  /** One strip: right across the cloth, so along x. */
  readonly outline: Polygon;
}

/**
 * How many strips right across the cloth, joined end to end, make a length. n strips have n − 1 joins between them, and each
 * join takes its loss from the cloth once: n·W − (n − 1)·join ≥ total, so n is (total − join)/(W − join), rounded up.
 * @param clothWidth usable width as washed, W
 * @returns null where a join takes the whole width, so that no number of strips is enough
 */
export function joinedStrips(quilt: Quilt, joined: JoinedLength, clothWidth: number): JoinedStrips | null {
  const [total, width, join] = [joined.length, joined.width, joined.join].map((each) => lengthIn(quilt.unit, each));
  if (join! >= clothWidth) {
    return null;
  }
  const count = Math.max(1, Math.ceil((total! - join!) / (clothWidth - join!) - 1e-9));
  return {
    count,
    outline: [
      [0, 0],
      [clothWidth, 0],
      [clothWidth, width!],
      [0, width!],
    ],
  };
}
