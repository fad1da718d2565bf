/** An SVG file as closed shapes at their true size, in inches about wherever its page begins. */
import type { Point } from '../shape/point.ts';
import { extentOf } from './extent.ts';
import { ImportFault } from './import-fault.ts';
import type { ImportNotes } from './import-notes.ts';
import { withoutFrame } from './leave-frame.ts';
import { followedBy, scaling } from './svg/matrix.ts';
import { readXml } from './svg/read-xml.ts';
import { type Traced, type TracedShape, traceShapes } from './svg/trace-shapes.ts';
import { pageSize } from './svg/view-box.ts';
import { walkSvg } from './svg/walk-svg.ts';

/** given: she said it. physical: in a ruler's units. pixels: taken at 96 to the inch. none: not known. */
export type SaidScale = 'given' | 'physical' | 'pixels' | 'none';

export interface ReadDrawing extends Pick<Traced, 'centre' | 'words'> {
  readonly shapes: readonly TracedShape[];
  readonly scale: SaidScale;
  readonly pageMiddle: Point | null;
}

const MOST_PATCHES = 2_000;
const MOST_EDGES = 20_000;

/**
 * @param width inches that all patches together are wide, if she says so
 * @throws ImportFault where nothing can come of it
 */
export function readDrawing(text: string, width: number | null, notes: ImportNotes): ReadDrawing {
  const { root, leftOut } = readXml(text);
  const page = pageSize(root.attributes);
  const walked = walkSvg(root);
  for (const [what, times] of [...leftOut, ...walked.passed]) {
    notes.note(`Left out: ${what}${times > 1 ? `, ${times} times` : ''}.`);
  }
  for (const fault of walked.faults) notes.warn(fault);
  const asWritten = traceShapes(walked, page.matrix);
  const drawn = extentOf(withoutFrame(patchShapes(asWritten)).kept.map(({ outline }) => outline));
  // Curves are straightened to the true size, so a size that she gives is taken into account before.
  const factor = width === null || !(drawn.width > 0) ? 1 : width / drawn.width;
  const traced = factor === 1 ? asWritten : traceShapes(walked, followedBy(page.matrix, scaling(factor, factor)));
  const { kept: shapes, frame } = withoutFrame(patchShapes(traced));
  if (shapes.length === 0) {
    throw new ImportFault(
      'The file holds no closed shapes. Draw each patch as a closed outline, and turn lettering and thick strokes into none.',
    );
  }
  if (shapes.length > MOST_PATCHES || shapes.reduce((sum, each) => sum + each.outline.length, 0) > MOST_EDGES) {
    throw new ImportFault(
      `The drawing has more than ${MOST_PATCHES} patches or ${MOST_EDGES} edges. Save the block alone.`,
    );
  }
  if (frame !== null) {
    notes.note(`Left out as a frame: the shape in line ${frame.shape.line}, which holds all the others.`);
  }
  for (const fault of traced.faults) notes.warn(fault);
  if (traced.flattened > 0) {
    const many = traced.flattened === 1 ? '1 curve is' : `${traced.flattened} curves are`;
    notes.note(`${many} no arc of a circle, and cut into straight edges within 1/1000 in.`);
  }
  const middle: Point | null =
    page.width === null || page.height === null ? null : [(page.width * factor) / 2, (-page.height * factor) / 2];
  const { centre, words } = traced;
  return { shapes, centre, words, scale: width === null ? page.said : 'given', pageMiddle: middle };
}

const patchShapes = (traced: Traced): readonly TracedShape[] => traced.closed;
