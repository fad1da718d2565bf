/** How large the quilt is, and the joined lengths that follow from it. */
import { mirrorOutline, moveOutline } from '../shape/outline.ts';
import { type Box, outlineBox } from '../shape/outline-measures.ts';
import { turn } from '../shape/point.ts';
import { formSpec, frameSize } from './forms/forms.ts';
import { lengthIn } from './measure.ts';
import { placesOf } from './places.ts';
import type { Block, JoinedLength, LengthUnit, Quilt } from './quilt.ts';
import { unitsOf } from './units-of.ts';

/** In the quilt's unit. */
export interface Size {
  readonly width: number;
  readonly length: number;
}

/** How the blocks are taken to lie: as square as they make, so many abreast and so many rows, each as wide as the widest. */
export interface Laid extends Size {
  readonly abreast: number;
  readonly rows: number;
}

/** Extra length of binding or border for turning corners and for joining its ends: common practice, ten inches. */
const ENDS = { in: 10, cm: 25 } as const;

/** A block's size as it is drawn, arcs and all. */
export function blockSize(block: Block, unit: LengthUnit): Size {
  const boxes = unitsOf(block, unit).flatMap((one) =>
    placesOf(one).flatMap((place) =>
      one.patches.map(({ outline }): Box => {
        const hand = place.mirrored ? mirrorOutline(outline) : outline;
        return outlineBox(moveOutline(hand, (corner) => turn(corner, place.turn)));
      }),
    ),
  );
  const span = (axis: 0 | 1): number =>
    Math.max(...boxes.map(({ max }) => max[axis])) - Math.min(...boxes.map(({ min }) => min[axis]));
  return boxes.length === 0 ? { width: 1, length: 1 } : { width: span(0), length: span(1) };
}

/** Whether a block goes round others or between them, so that its size is the quilt's. */
export const isFrame = ({ form }: Block): boolean => form !== undefined && formSpec(form.kind).frame !== undefined;

/** The blocks laid side by side; what frames them is left out. */
export function laidSideBySide({ blocks, unit }: Pick<Quilt, 'blocks' | 'unit'>): Laid {
  const laid = blocks.filter((block) => !isFrame(block));
  const count = Math.max(
    1,
    laid.reduce((sum, block) => sum + block.count, 0),
  );
  const sizes = laid.map((block) => blockSize(block, unit));
  const side = sizes.length === 0 ? 1 : Math.max(...sizes.flatMap(({ width, length }) => [width, length]));
  const abreast = Math.ceil(Math.sqrt(count));
  const rows = Math.ceil(count / abreast);
  return { abreast, rows, width: abreast * side, length: rows * side };
}

/** Without borders that are joined lengths: what frames the blocks, or the blocks with the sashing that is a joined length. */
function withoutBorders(quilt: Quilt): Size {
  const frames = quilt.blocks.flatMap(({ form }) => (form === undefined ? [] : (frameSize(form, quilt.unit) ?? [])));
  if (frames.length > 0) {
    const most = (field: keyof Size): number => Math.max(...frames.map((frame) => frame[field]));
    return { width: most('width'), length: most('length') };
  }
  const { abreast, rows, width, length } = laidSideBySide(quilt);
  const sash = finishedWidths(quilt, 'sashing').reduce((most, each) => Math.max(most, each), 0);
  return { width: width + (abreast - 1) * sash, length: length + (rows - 1) * sash };
}

/** Of the strips of that sort, as they will be seen: their cut width less both seam allowances. */
function finishedWidths(quilt: Quilt, sort: 'border' | 'sashing'): readonly number[] {
  const seams = 2 * lengthIn(quilt.unit, quilt.allowance);
  return quilt.joined
    .filter(({ follows }) => follows === sort)
    .map(({ width }) => Math.max(0, lengthIn(quilt.unit, width) - seams));
}

/** The finished quilt with its borders, reckoned from its blocks and what goes round them. */
export function reckonedSize(quilt: Quilt): Size {
  const inside = withoutBorders(quilt);
  const more = 2 * sum(finishedWidths(quilt, 'border'));
  return { width: inside.width + more, length: inside.length + more };
}

/** The same, or as she has said. */
export function quiltSize(quilt: Quilt): Size {
  const { finished, unit } = quilt;
  return finished === undefined
    ? reckonedSize(quilt)
    : { width: lengthIn(unit, finished.width), length: lengthIn(unit, finished.length) };
}

/**
 * A joined length with the size that follows from the quilt's; as it is where it follows nothing. Binding goes once round;
 * borders go on in their order, each round the one before; a backing is as large as the quilt.
 */
export function followed(quilt: Quilt, joined: JoinedLength): JoinedLength {
  const { follows } = joined;
  if (follows === undefined) {
    return joined;
  }
  const { width, length } = quiltSize(quilt);
  switch (follows) {
    case 'binding':
      return { ...joined, length: roundedUp(quilt.unit, 2 * (width + length) + ENDS[quilt.unit]) };
    case 'backing':
      return { ...joined, width: roundedUp(quilt.unit, width), length: roundedUp(quilt.unit, length) };
    case 'sashing':
      return { ...joined, length: roundedUp(quilt.unit, sashingLength(quilt, joined)) };
    case 'border': {
      const outside = quilt.joined.filter((other) => other.follows === 'border');
      const beyond = finishedWidths(quilt, 'border').slice(outside.findIndex(({ id }) => id === joined.id));
      const [own = 0] = beyond;
      // Both sides of what it goes round, and the two ends with its own corners.
      const round = 2 * (width + length - 4 * sum(beyond)) + 4 * own;
      return { ...joined, length: roundedUp(quilt.unit, round + ENDS[quilt.unit]) };
    }
  }
}

/** Short strips between the blocks of each row, long ones between the rows, each with its seam allowances; or what a drawn sashing leaves out. */
function sashingLength(quilt: Quilt, joined: JoinedLength): number {
  const { unit } = quilt;
  const seams = 2 * lengthIn(unit, quilt.allowance);
  const leftOut = quilt.blocks.flatMap((block) => {
    const { form } = block;
    if (form?.kind !== 'sashing' || form.crossing !== 'joined') {
      return [];
    }
    const strips = form.outside === false ? form.down - 1 : form.down + 1;
    return [block.count * strips * (frameSize(form, unit)!.width + seams)];
  });
  if (leftOut.length > 0) {
    return sum(leftOut);
  }
  const { abreast, rows, width, length } = laidSideBySide(quilt);
  const own = Math.max(0, lengthIn(unit, joined.width) - seams);
  const short = (abreast - 1) * (length + rows * seams);
  const long = (rows - 1) * (width + (abreast - 1) * own + seams);
  return short + long;
}

/** Up to whole inches, or to 2.5 cm, as lengths of cloth are told. */
function roundedUp(unit: LengthUnit, value: number): string {
  const step = unit === 'in' ? 1 : 2.5;
  return `${Math.max(step, Math.ceil(value / step - 1e-9) * step)} ${unit}`;
}

const sum = (values: readonly number[]): number => values.reduce((all, each) => all + each, 0);
