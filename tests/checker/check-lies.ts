/** How one blank lies: turned and turned over as its cloth allows. */
import type { BlankShape, JobBlank, LayoutJob, Placement } from '../../src/plan/layout-job.ts';
import { type Pair, type Ring, wrapped } from './rings.ts';

/** Degrees. */
const CLOSE = 1e-6;

/** A blank as it lies on its cloth. */
export interface Laid {
  readonly name: string;
  readonly ring: Ring;
}

/** The shape with the turns and the mirror that hold on this cloth; nothing where the blank may not be cut from it. */
export function shapeFor(blank: JobBlank, cloth: string, index: number): BlankShape | undefined {
  const shape = blank.shapes ? blank.shapes[index] : index === 0 ? (blank as BlankShape) : undefined;
  if (!shape || !blank.cloths) return shape;
  for (const choice of blank.cloths) {
    if (choice === cloth) return shape;
    if (typeof choice === 'object' && choice.id === cloth) return { ...shape, ...choice };
  }
  return undefined;
}

export function spin([x, y]: Pair, degrees: number): Pair {
  const angle = (degrees / 180) * Math.PI;
  return [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];
}

/** Turned, turned over, moved; as its convex hull where cuts are straight from edge to edge. */
export function layOutline(outline: Ring, { turn, mirror, x, y }: Placement, asHull: boolean): Ring {
  const ring = outline.map((point): Pair => {
    const [u, v] = spin(point, turn);
    return [(mirror ? -u : u) + x, v + y];
  });
  return asHull ? wrapped(ring) : ring;
}

export function checkBlankLies(job: LayoutJob, shape: BlankShape, placement: Placement): string[] {
  const wrong: string[] = [];
  if (!mayTurn(shape, placement.turn, job.method === 'strips')) wrong.push(`turned by ${placement.turn}`);
  if (placement.mirror && !shape.mirror) wrong.push('turned over');
  return wrong;
}

function mayTurn(shape: BlankShape, turn: number, isStrips: boolean): boolean {
  const turns = shape.turns ?? [0];
  // Listing more turns than there are edges is no help: an edge lies along or square to the strip, or it does not.
  const levels = () => liesSquare(shape.outline, turn) || liesSquare(wrapped(shape.outline), turn);
  if (turns === 'any') return !isStrips || Math.abs(turn / 15 - Math.round(turn / 15)) * 15 < CLOSE || levels();
  return turns.some((range) => {
    if (typeof range === 'number') return away(turn, range) < CLOSE;
    const off = away(turn, range.centre);
    if (off > range.within + CLOSE) return false;
    const atEnd = away(turn, range.centre + range.within) < CLOSE || away(turn, range.centre - range.within) < CLOSE;
    return !isStrips || off < CLOSE || atEnd || levels();
  });
}

function liesSquare(outline: Ring, turn: number): boolean {
  return outline.some((p, i) => {
    const q = outline[(i + 1) % outline.length]!;
    const [dx, dy] = spin([q[0] - p[0], q[1] - p[1]], turn);
    return Math.min(Math.abs(dx), Math.abs(dy)) < 1e-7 * Math.hypot(dx, dy);
  });
}

function away(a: number, b: number): number {
  const full = Math.abs(a - b) % 360;
  return full > 180 ? 360 - full : full;
}
