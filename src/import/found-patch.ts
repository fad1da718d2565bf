/** A patch found in a drawing, about the block's centre. */
import { edgesOf, mirrorOutline, moveOutline, type Outline } from '../shape/outline.ts';
import { outlineArea, outlineCentroid } from '../shape/outline-measures.ts';
import { distance, type Point, turn } from '../shape/point.ts';
import type { PatchCode } from './patch-names.ts';
import type { SvgGroup } from './svg/walk-svg.ts';
import { anticlockwise } from './tidy-outline.ts';

export interface FoundPatch {
  /** Anticlockwise, in the quilt's unit. */
  readonly outline: Outline;
  readonly role: string;
  readonly code: PatchCode;
  /** From the outermost inward. */
  readonly groups: readonly SvgGroup[];
  readonly middle: Point;
  readonly area: number;
}

export function foundPatch(outline: Outline, role: string, code: PatchCode, groups: readonly SvgGroup[]): FoundPatch {
  return { outline, role, code, groups, middle: outlineCentroid(outline), area: Math.abs(outlineArea(outline)) };
}

/** Reflected in the vertical if asked, then turned anticlockwise about the centre. */
export interface Motion {
  readonly mirrored: boolean;
  readonly degrees: number;
}

export function movePlace(place: Point, { mirrored, degrees }: Motion): Point {
  return turn(mirrored ? [-place[0], place[1]] : place, degrees);
}

export function moveFound(patch: FoundPatch, motion: Motion): FoundPatch {
  const hand = motion.mirrored ? anticlockwise(mirrorOutline(patch.outline)) : patch.outline;
  const outline = moveOutline(hand, (corner) => turn(corner, motion.degrees));
  return { ...patch, outline, middle: movePlace(patch.middle, motion) };
}

/** Whether two outlines coincide, wherever each begins to be told; arcs alike within the same tolerance. */
export function coincide(a: Outline, b: Outline, within: number): boolean {
  const [edgesA, edgesB] = [edgesOf(a), edgesOf(b)];
  if (edgesA.length !== edgesB.length) return false;
  return edgesB.some(
    (start, shift) =>
      distance(start.from, edgesA[0]!.from) <= within &&
      edgesA.every((edge, i) => {
        const other = edgesB[(i + shift) % edgesB.length]!;
        if (distance(edge.from, other.from) > within || edge.arc?.turn !== other.arc?.turn) return false;
        return (
          edge.arc === undefined ||
          Math.abs(sagitta(edge.arc.radius, edge) - sagitta(other.arc!.radius, other)) <= within
        );
      }),
  );
}

/** How far an arc bulges from its chord. */
function sagitta(radius: number, { from, to }: { readonly from: Point; readonly to: Point }): number {
  return radius - Math.sqrt(Math.max(0, radius ** 2 - (distance(from, to) / 2) ** 2));
}

/**
 * The motions about the centre that bring some patches onto others, each onto one of its own role.
 * @param roles false: whatever their roles
 */
export function motionsOnto(
  from: readonly FoundPatch[],
  onto: readonly FoundPatch[],
  mirrored: boolean,
  within: number,
  roles = true,
): Motion | null {
  if (from.length !== onto.length) return null;
  const farthest = from.reduce((best, patch) =>
    Math.hypot(...patch.middle) > Math.hypot(...best.middle) ? patch : best,
  );
  const radius = Math.hypot(...farthest.middle);
  for (const target of onto) {
    if (roles && target.role !== farthest.role) continue;
    if (Math.abs(Math.hypot(...target.middle) - radius) > within) continue;
    if (Math.abs(target.area - farthest.area) > 0.02 * farthest.area) continue;
    const start = movePlace(farthest.middle, { mirrored, degrees: 0 });
    const degrees =
      radius <= within
        ? 0
        : (Math.atan2(target.middle[1], target.middle[0]) - Math.atan2(start[1], start[0])) * (180 / Math.PI);
    const motion = { mirrored, degrees };
    if (bringsOnto(from, onto, motion, within, roles)) return motion;
  }
  return null;
}

function bringsOnto(
  from: readonly FoundPatch[],
  onto: readonly FoundPatch[],
  motion: Motion,
  within: number,
  roles: boolean,
): boolean {
  return from.every((patch) => {
    const moved = moveFound(patch, motion);
    return onto.some(
      (other) =>
        (!roles || other.role === patch.role) &&
        distance(other.middle, moved.middle) <= within &&
        coincide(moved.outline, other.outline, within),
    );
  });
}
