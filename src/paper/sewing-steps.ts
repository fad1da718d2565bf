/** A foundation's steps at the machine, in the frame of its printed side. */
import { beforeFlip, printBeforeFlip } from '../cutting/before-flip.ts';
import { type SeamLine, seamLine } from '../cutting/seam-line.ts';
import { stepOnto } from '../cutting/sewing-step.ts';
import { sewingUnit, usualTolerance } from '../cutting/sewing-unit.ts';
import type { Outline } from '../shape/outline.ts';
import { add, type Point, scale } from '../shape/point.ts';
import type { PaperPatch, PaperPiece } from './pieces.ts';

export interface SewingPicture {
  /** From 1. */
  readonly number: number;
  readonly patch: PaperPatch;
  /** Those sewn before. */
  readonly before: readonly PaperPatch[];
  /** Null for the first, and where no straight line is found. */
  readonly seam: SeamLine | null;
  /** The line as it is sewn, past both ends of the seam. */
  readonly sewn: readonly [Point, Point] | null;
  /** How the patch lies before it is flipped, and where its print's up points then. */
  readonly lies: Outline | null;
  readonly points: number | null;
  /** From the seam into the patch: the way it is flipped and pressed. */
  readonly press: Point | null;
}

/** Past both ends of the line. Practice. */
export const OVER_RUN = 0.25;

/** In the order of the patches' numbers, which is the order of sewing. */
export function sewingSteps({ patches }: PaperPiece): readonly SewingPicture[] {
  const outlines = patches.map(({ outline }) => outline);
  const unit = sewingUnit(outlines, usualTolerance(outlines));
  const done = patches.map(() => false);
  return patches.map((patch, index): SewingPicture => {
    const step = index === 0 ? null : stepOnto(unit, index, done);
    done[index] = true;
    const seam = step !== null && 'seam' in step ? tidy(step.seam.line) : null;
    const common = { number: index + 1, patch, before: patches.slice(0, index), seam };
    if (seam === null) return { ...common, sewn: null, lies: null, points: null, press: null };
    return {
      ...common,
      sewn: [add(seam.from, scale(seam.along, -OVER_RUN)), add(seam.to, scale(seam.along, OVER_RUN))],
      lies: beforeFlip(seam, patch.outline),
      points: patch.arrow === null ? null : printBeforeFlip(seam, patch.arrow.degrees),
      // The patch lies to the left of its seam.
      press: [-seam.along[1], seam.along[0]],
    };
  });
}

const tidy = ({ from, to }: SeamLine): SeamLine => seamLine(from, to);
