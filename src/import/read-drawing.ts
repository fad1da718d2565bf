/** An SVG file as closed shapes at their true size, in inches about wherever its page begins. */

import { edgesOf } from '../shape/outline.ts';
import type { Point } from '../shape/point.ts';
import { extentOf } from './extent.ts';
import { findFaces } from './faces.ts';
import { ImportFault } from './import-fault.ts';
import type { ImportNotes } from './import-notes.ts';
import { withoutFrame } from './leave-frame.ts';
import { followedBy, IDENTITY, scaling } from './svg/matrix.ts';
import { readXml } from './svg/read-xml.ts';
import { type Traced, type TracedShape, traceShapes } from './svg/trace-shapes.ts';
import { pageSize } from './svg/view-box.ts';
import { type SvgShape, walkSvg } from './svg/walk-svg.ts';

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
 * @param tolerance inches within which lines meet
 * @throws ImportFault where nothing can come of it
 */
export function readDrawing(text: string, width: number | null, tolerance: number, notes: ImportNotes): ReadDrawing {
  const { root, leftOut } = readXml(text);
  const page = pageSize(root.attributes);
  const walked = walkSvg(root);
  for (const [what, times] of [...leftOut, ...walked.passed]) {
    notes.note(`Left out: ${what}${times > 1 ? `, ${times} times` : ''}.`);
  }
  for (const fault of walked.faults) notes.warn(fault);
  const asWritten = traceShapes(walked, page.matrix);
  const drawn = extentOf(withoutFrame(patchShapes(asWritten, null).shapes).kept.map(({ outline }) => outline));
  // Curves are straightened to the true size, so a size that she gives is taken into account before.
  const factor = width === null || !(drawn.width > 0) ? 1 : width / drawn.width;
  const traced = factor === 1 ? asWritten : traceShapes(walked, followedBy(page.matrix, scaling(factor, factor)));
  const patches = patchShapes(traced, tolerance);
  const { kept: shapes, frame } = withoutFrame(patches.shapes);
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
  for (const fault of [...traced.faults, ...patches.faults]) notes.warn(fault);
  if (traced.flattened > 0) {
    const many = traced.flattened === 1 ? '1 curve is' : `${traced.flattened} curves are`;
    notes.note(`${many} no arc of a circle, and cut into straight edges within 1/1000 in.`);
  }
  const middle: Point | null =
    page.width === null || page.height === null ? null : [(page.width * factor) / 2, (-page.height * factor) / 2];
  const { centre, words } = traced;
  return { shapes, centre, words, scale: width === null ? page.said : 'given', pageMiddle: middle };
}

/**
 * Where a drawing has lines and nothing is painted, its patches are what lies between the lines; else they are its closed shapes.
 * @param tolerance null: only to be measured, so that no faces need be found
 */
function patchShapes(
  traced: Traced,
  tolerance: number | null,
): { readonly shapes: readonly TracedShape[]; readonly faults: readonly string[] } {
  const { closed, lines } = traced;
  if (lines.length === 0) return { shapes: closed, faults: [] };
  if (closed.some(({ filled }) => filled)) {
    const fault =
      'Lines that enclose nothing are left out. If they are seams, take the fill out of the shapes, and save again.';
    return { shapes: closed, faults: [fault] };
  }
  if (tolerance === null) {
    const drawn = lines.map(({ from, to }): TracedShape => ({ shape: NO_SHAPE, outline: [from, to], filled: false }));
    return { shapes: [...closed, ...drawn], faults: [] };
  }
  const { outlines, loose } = findFaces([...lines, ...closed.flatMap(({ outline }) => edgesOf(outline))], tolerance);
  const called = loose === 1 ? '1 line that parts' : `${loose} lines, or ends of lines, that part`;
  return {
    shapes: outlines.map((outline) => ({ shape: NO_SHAPE, outline, filled: false })),
    faults: loose === 0 ? [] : [`Left out: ${called} nothing.`],
  };
}

/** What is known of a shape that lies between lines. */
const NO_SHAPE: SvgShape = {
  names: { id: '', title: '', label: '', role: '', unit: '', paper: true },
  groups: [],
  runs: [],
  matrix: IDENTITY,
  look: { fill: 'none', stroke: 'none', hidden: false },
  line: 0,
};
