/** Turns as a finite set, as strips need them (the layout job's own rule). */
import type { Turns } from '../../src/plan/layout-job.ts';
import { degreesOf } from '../../src/shape/angle.ts';
import { modulo, type Polygon } from '../../src/shape/point.ts';

const SAME = 1e-7;

/**
 * The turns a blank may take in a strip, degrees anticlockwise in [0, 360), ascending.
 * A range stands for its centre, its ends and every turn inside it that lays an edge along or square to the strip;
 * `any` for every turn that does so and every multiple of 15 degrees.
 */
export function turnSet(outline: Polygon, turns: Turns): readonly number[] {
  const found: number[] = [];
  if (turns === 'any') {
    for (let t = 0; t < 360; t += 15) found.push(t);
    found.push(...edgeTurns(outline));
  } else {
    for (const range of turns) {
      if (typeof range === 'number') {
        found.push(range);
      } else {
        const { centre, within } = range;
        found.push(centre, centre - within, centre + within);
        for (const t of edgeTurns(outline)) {
          const off = modulo(t - centre + 180, 360) - 180;
          if (Math.abs(off) <= within) found.push(centre + off);
        }
      }
    }
  }
  return distinct(found);
}

/** Turns that lay some edge along +x, −x, +y or −y. */
function edgeTurns(outline: Polygon): number[] {
  return outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    const angle = degreesOf(b[0] - a[0], b[1] - a[1]);
    return [0, 90, 180, 270].map((quarter) => modulo(quarter - angle, 360));
  });
}

function distinct(turns: readonly number[]): readonly number[] {
  const sorted = turns.map((t) => nearInteger(modulo(t, 360))).sort((a, b) => a - b);
  const kept = sorted.filter((t, i) => i === 0 || t - sorted[i - 1]! > SAME);
  return kept.length > 1 && kept[0]! + 360 - kept[kept.length - 1]! <= SAME ? kept.slice(0, -1) : kept;
}

/** Arithmetic leaves 89.99999999999999 where 90 is meant, and only whole quarter turns are exact. */
function nearInteger(t: number): number {
  const whole = Math.round(t);
  return Math.abs(t - whole) < 1e-9 ? modulo(whole, 360) : t;
}
