/** Shapes set about the block's centre, made to meet, and those that cannot be patches left out aloud. */
import { convert } from '../quilt/measure.ts';
import type { LengthUnit } from '../quilt/quilt.ts';
import { flatten } from '../shape/flatten.ts';
import { isArc, moveOutline, type Outline } from '../shape/outline.ts';
import { outlineFault } from '../shape/outline-fault.ts';
import { outlineArea, outlineCentroid } from '../shape/outline-measures.ts';
import { type Point, type Polygon, scale, subtract } from '../shape/point.ts';
import { blockCentre } from './block-centre.ts';
import { type Extent, extentOf } from './extent.ts';
import { ImportFault } from './import-fault.ts';
import type { ImportNotes } from './import-notes.ts';
import { neatIn } from './neat-places.ts';
import type { ReadDrawing } from './read-drawing.ts';
import { snap } from './snap.ts';
import type { TracedShape } from './svg/trace-shapes.ts';
import { tidyOutline } from './tidy-outline.ts';

/** middle: a mark named "centre", else what the drawing comes round about. A corner is that of the box round all patches. */
export type CentreChoice = 'middle' | 'page' | 'lower left' | 'lower right' | 'upper left' | 'upper right';

export interface SoundPatch {
  /** Anticlockwise, in the quilt's unit, about the centre. */
  readonly outline: Outline;
  /** The same with its arcs flattened. */
  readonly polygon: Polygon;
  readonly shape: TracedShape;
}

export interface SoundPatches {
  readonly patches: readonly SoundPatch[];
  readonly extent: Extent;
  /** From inches on the page to the block. */
  readonly toBlock: (place: Point) => Point;
}

/** Inches that a corner may lie off a straight edge and still be one that says nothing. */
const IDLE_CORNER = 5e-4;

/** @param tolerance in the quilt's unit */
export function soundPatches(
  drawing: ReadDrawing,
  unit: LengthUnit,
  tolerance: number,
  centreOn: CentreChoice,
  notes: ImportNotes,
): SoundPatches {
  const times = convert(1, 'in', unit);
  const sized = drawing.shapes.map(({ outline }) => scaled(outline, times));
  const centre = centreOf(drawing, sized, times, centreOn, tolerance);
  const about = sized.map((outline) => moveOutline(outline, (corner) => subtract(corner, centre)));
  const snapped = snap(about, tolerance, neatIn(unit));
  if (snapped.farthest > 2e-3 * times) {
    notes.note(
      `Corners were moved by up to ${Math.round(snapped.farthest * 1e4) / 1e4} ${unit} so that neighbours meet.`,
    );
  }
  const patches = snapped.outlines.flatMap((met, i): readonly SoundPatch[] => {
    const shape = drawing.shapes[i]!;
    const outline = met.length === 0 ? null : tidyOutline(met, IDLE_CORNER * times);
    const fault = outline === null ? 'it is smaller than the tolerance' : outlineFault(outline);
    if (outline !== null && fault === null) return [{ outline, polygon: flattened(outline), shape }];
    const called = shape.shape.line === 0 ? 'A shape between lines' : `The shape in line ${shape.shape.line}`;
    notes.warn(`${called} is left out: ${fault}.`, [flattened(about[i]!)]);
    return [];
  });
  if (patches.length === 0) {
    throw new ImportFault(
      notes.all.find(({ kind }) => kind === 'warning')?.text ?? 'No shape of the file can be a patch.',
    );
  }
  return { patches, extent: extentOf(about), toBlock: (place) => subtract(scale(place, times), centre) };
}

const flattened = (outline: Outline): Polygon => flatten(outline, { side: 'chord', within: 1e-3 });

function scaled(outline: Outline, by: number): Outline {
  return outline.map((entry) =>
    isArc(entry) ? { arc: { ...entry.arc, radius: entry.arc.radius * by } } : scale(entry, by),
  );
}

function centreOf(
  drawing: ReadDrawing,
  sized: readonly Outline[],
  times: number,
  choice: CentreChoice,
  tolerance: number,
): Point {
  const { middle, width, height } = extentOf(sized);
  if (choice !== 'middle' && choice !== 'page') {
    return [
      middle[0] + (choice.endsWith('left') ? -width : width) / 2,
      middle[1] + (choice.startsWith('lower') ? -height : height) / 2,
    ];
  }
  const marked = choice === 'page' ? drawing.pageMiddle : drawing.centre;
  return marked === null ? foundCentre(sized, middle, tolerance) : scale(marked, times);
}

function foundCentre(outlines: readonly Outline[], boxMiddle: Point, tolerance: number): Point {
  const masses = outlines.map((outline) => ({
    middle: outlineCentroid(outline),
    area: Math.abs(outlineArea(outline)),
  }));
  return blockCentre(masses, boxMiddle, tolerance);
}
