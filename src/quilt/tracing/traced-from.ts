/** What a block was traced from, where she keeps that in the quilt file: picture, size and tracing, to go on with. */
import type { LengthUnit } from '../quilt.ts';
import type { Straightening } from './straightening.ts';
import { type Step, stepEnd, stepStart, type Tracing } from './tracing.ts';

export interface TracedFrom {
  /** A `data:` address of a JPEG, PNG or WebP picture, drawn anew before it was kept. */
  readonly picture: string;
  /** Its points are pixels of that picture. */
  readonly size: Straightening;
  /** The unit of the tracing's places. */
  readonly unit: LengthUnit;
  readonly tracing: Tracing;
}

/** What such an address may look like: nothing that a browser would take for a page or a drawing. */
export const PICTURE_ADDRESS = /^data:image\/(?:jpeg|png|webp);base64,[A-Za-z0-9+/]+={0,2}$/;
/** Characters; above it a browser's own store would not hold the quilt. */
export const LONGEST_ADDRESS = 4_000_000;

/** What does not fit together in a tracing that came from a file, in words; null where all does. */
export function tracingFault(tracing: Tracing): string | null {
  const corners = new Set(tracing.corners.map((corner) => corner.id));
  const lines = new Set(tracing.lines.map((line) => line.id));
  const ids = [...tracing.corners, ...tracing.lines, ...tracing.patches].map((each) => each.id);
  if (new Set(ids).size < ids.length || ids.some((id) => id >= tracing.next)) {
    return 'expected an id of its own for each corner, line and patch, all below next';
  }
  if (tracing.lines.some((line) => !corners.has(line.from) || !corners.has(line.to) || line.from === line.to)) {
    return 'expected each line to run between two of the corners';
  }
  const units = new Set(tracing.units.map((unit) => unit.id));
  for (const patch of tracing.patches) {
    if (!units.has(patch.unit)) return `names the unit "${patch.unit}", which units does not list`;
    if (!goesOn(tracing, patch.steps, lines) || !meets(tracing, patch.steps)) {
      return 'expected the steps of each patch to go all round it, each from where the last one ended';
    }
  }
  const { begun } = tracing;
  if (begun === undefined) return null;
  const sound = corners.has(begun.start) && goesOn(tracing, begun.steps, lines);
  const starts = begun.steps[0] === undefined || (sound && stepStart(tracing, begun.steps[0]) === begun.start);
  return sound && starts ? null : 'expected the way that is begun to go from corner to corner';
}

function goesOn(tracing: Tracing, steps: readonly Step[], lines: ReadonlySet<number>): boolean {
  return (
    steps.every((step) => lines.has(step.line)) &&
    steps.slice(1).every((step, i) => stepStart(tracing, step) === stepEnd(tracing, steps[i]!))
  );
}

const meets = (tracing: Tracing, steps: readonly Step[]): boolean =>
  steps.length >= 2 && stepEnd(tracing, steps.at(-1)!) === stepStart(tracing, steps[0]!);
