/** Whether a blank has room on a cloth at any of its turns. */
import type { JobCloth, Turns } from '../plan/layout-job.ts';
import { modulo, type Polygon, subtract } from '../shape/point.ts';
import { boxHeight, boxWidth, polygonBox, turnPolygon } from '../shape/polygon.ts';

export interface Extent {
  readonly width: number;
  readonly length: number;
}

/** How much width and length a shape takes at each of the turns worth trying: those named, and those that lay a side. */
export function extentsOf(outline: Polygon, turns: Turns): readonly Extent[] {
  const laid = outline.flatMap((point, i) => {
    const [x, y] = subtract(outline[(i + 1) % outline.length]!, point);
    const level = (-Math.atan2(y, x) * 180) / Math.PI;
    return [level, level + 90, level + 180, level + 270];
  });
  return turnsToTry(turns, laid).map((turn) => {
    const box = polygonBox(turnPolygon(outline, turn));
    return { width: boxWidth(box), length: boxHeight(box) };
  });
}

function turnsToTry(turns: Turns, laid: readonly number[]): readonly number[] {
  if (turns === 'any') {
    return laid;
  }
  return turns.flatMap((range) => {
    if (typeof range === 'number') {
      return [range];
    }
    const inside = laid.filter((turn) => Math.abs(modulo(turn - range.centre + 180, 360) - 180) <= range.within);
    return [range.centre, range.centre - range.within, range.centre + range.within, ...inside];
  });
}

/** Overhang up to a millionth of the width is touching (the layout job's tolerance). */
export function fits(extent: Extent, cloth: JobCloth): boolean {
  const slack = 1e-6 * cloth.width;
  return extent.width <= cloth.width + slack && (cloth.length == null || extent.length <= cloth.length + slack);
}
