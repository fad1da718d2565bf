/** The outline of a traced patch, as a quilt has it. */
import { arcOfBulge } from '../../shape/arc-through.ts';
import type { Outline, OutlineEntry } from '../../shape/outline.ts';
import { outlineArea } from '../../shape/outline-measures.ts';
import { cross, dot, type Point, subtract } from '../../shape/point.ts';
import type { Evened } from './even-copies.ts';
import { lineOf, type TracedPatch, type Tracing } from './tracing.ts';

/** The outline of a patch about the centre, anticlockwise, without corners that only its neighbours have. */
export function outlineOf(tracing: Tracing, patch: TracedPatch, evened: Evened): Outline {
  const corners = patch.steps.map((step) => {
    const line = lineOf(tracing, step.line);
    const bulge = evened.bulges.get(line.id) ?? 0;
    return step.backward
      ? { at: evened.places.get(line.to)!, bulge: -bulge }
      : { at: evened.places.get(line.from)!, bulge };
  });
  const kept = withoutPassed(corners);
  const outline = kept.flatMap(({ at, bulge }, i): readonly OutlineEntry[] => {
    const arc = arcOfBulge(at, kept[(i + 1) % kept.length]!.at, bulge);
    return arc === null ? [at] : [at, arc];
  });
  return outlineArea(outline) < 0 ? backwards(kept) : outline;
}

interface Bent {
  readonly at: Point;
  /** Of the edge that begins here. */
  readonly bulge: number;
}

/** A corner is passed over where the edges before and after it are one straight line, or one arc, to within this of their length. */
const PASSED = 2e-4;

function withoutPassed(corners: readonly Bent[]): readonly Bent[] {
  let kept = corners;
  for (let i = 0; i < kept.length && kept.length > 2; ) {
    const before = kept.at(i - 1)!;
    const here = kept[i]!;
    const after = kept[(i + 1) % kept.length]!;
    const joined = asOne(before, here, after.at);
    if (joined === null) {
      i++;
    } else {
      const at = (i + kept.length - 1) % kept.length;
      kept = kept.map((each, k) => (k === at ? { ...each, bulge: joined } : each)).filter((_, k) => k !== i);
    }
  }
  return kept;
}

/** The bulge of two edges that are one; null where they are two. */
function asOne(before: Bent, here: Bent, end: Point): number | null {
  const a = subtract(here.at, before.at);
  const b = subtract(end, here.at);
  const [sizeA, sizeB] = [Math.hypot(...a), Math.hypot(...b)];
  const flat = Math.abs(before.bulge) < 1e-4 && Math.abs(here.bulge) < 1e-4;
  if (flat) {
    const off = Math.abs(cross(a, b)) / (sizeA * sizeB);
    return dot(a, b) > 0 && off * Math.min(sizeA, sizeB) <= PASSED * (sizeA + sizeB) ? 0 : null;
  }
  const [sweepA, sweepB] = [4 * Math.atan(before.bulge), 4 * Math.atan(here.bulge)];
  // On one circle the chords part by half of both sweeps, and are as long as their sweeps say.
  const parted = Math.atan2(cross(a, b), dot(a, b));
  const alike = Math.abs(parted - (sweepA + sweepB) / 2) <= PASSED * 4;
  const radiusA = sizeA / (2 * Math.sin(sweepA / 2));
  const radiusB = sizeB / (2 * Math.sin(sweepB / 2));
  if (!alike || !(Math.abs(radiusA - radiusB) <= 2e-3 * Math.abs(radiusA)) || Math.abs(sweepA + sweepB) > 5.5)
    return null;
  return Math.tan((sweepA + sweepB) / 4);
}

function backwards(corners: readonly Bent[]): Outline {
  const size = corners.length;
  return corners.flatMap((_, i): readonly OutlineEntry[] => {
    const here = corners[size - 1 - i]!;
    const next = corners[(2 * size - 2 - i) % size]!;
    const arc = arcOfBulge(here.at, next.at, -next.bulge);
    return arc === null ? [here.at] : [here.at, arc];
  });
}
