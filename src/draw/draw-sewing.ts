/** Small pictures for the machine: one step of a unit from the front, a piece before its flip from the paper side, one join. */

import type { JoinStep } from '../cutting/join-order.ts';
import type { Joint } from '../cutting/joint.ts';
import type { LaidPiece } from '../cutting/laid-piece.ts';
import type { Seam } from '../cutting/sewing-step.ts';
import { flatten } from '../shape/flatten.ts';
import { mirrorOutline, type Outline } from '../shape/outline.ts';
import { add, degreesFromUp, type Point, type Polygon, scale } from '../shape/point.ts';
import { polygonBox } from '../shape/polygon.ts';
import {
  type Box,
  type Drawing,
  type Fill,
  type Item,
  lineRun,
  outlineRun,
  polygonRun,
  type Run,
} from './display-list.ts';
import { edgeOn, inkOn, mix } from './ink.ts';
import { label } from './label.ts';

/** How large the pictures stand on the page, along their longer side, in heights of small text: of a unit, and of a join. */
export const UNIT_TEXTS = 20;
export const JOIN_TEXTS = 12;

export interface DrawnPatch {
  /** "A2" */
  readonly name: string;
  readonly outline: Outline;
  /** The cloth's colour. */
  readonly colour: string;
}

/**
 * A unit from the front when a patch has just been sewn and pressed: those before it, the seam, which way it is pressed; what
 * comes later in dashes.
 * @param order indices of the patches in sewing order. @param step which of them has just been sewn, from 0
 */
export function drawStep(
  patches: readonly DrawnPatch[],
  order: readonly number[],
  step: number,
  seam: Seam | null,
): Drawing {
  const box = boxOf(patches.map(({ outline }) => outline));
  const textSize = Math.max(box.width, box.height) / UNIT_TEXTS;
  const done = order.slice(0, step + 1).map((index) => patches[index]!);
  const later = order.slice(step + 1).map((index) => patches[index]!);
  const fresh = done.at(-1)!;
  const press = seam === null ? null : degreesFromUp([-seam.line.along[1], seam.line.along[0]]);
  return {
    title: seam === null ? `${fresh.name} is laid first` : `${fresh.name} is sewn`,
    description:
      seam === null
        ? 'Seen from the front.'
        : 'Seen from the front: a thick line for the seam, an arrow for the way it is pressed.',
    box,
    printSpacing: textSize,
    items: [
      ...later.map(({ outline }): Item => ({ kind: 'path', class: 'trim', runs: [outlineRun(outline)] })),
      ...done.map((patch) => cloth(patch.outline, { colour: patch.colour })),
      ...(seam === null
        ? []
        : [
            stitched(
              [fresh.colour, ...seam.against.map((index) => patches[index]!.colour)],
              lineRun(seam.line.from, seam.line.to),
            ),
          ]),
      ...done.flatMap(({ name, outline, colour }) =>
        label(flatten(outline, { side: 'inside', within: textSize * 0.1 }), {
          name,
          size: textSize,
          on: colour,
          arrow: outline === fresh.outline && press !== null ? { degrees: press, heads: 1 } : null,
        }),
      ),
    ],
  };
}

const cloth = (outline: Outline, fill: Fill): Item => ({
  kind: 'path',
  class: 'cloth',
  runs: [outlineRun(outline)],
  fill,
  ink: edgeOn(fill.colour),
});
/** A seam in ink that is seen on the cloths it lies between, by day and by night. */
const stitched = (colours: readonly string[], ...runs: readonly Run[]): Item => ({
  kind: 'path',
  class: 'seam-sewn',
  runs,
  ink: inkOnAll(colours),
});

/** Ink for what lies on several cloths: that for their middle colour. */
const inkOnAll = (colours: readonly string[]): string =>
  inkOn(colours.reduce((middle, colour, i) => mix(middle, colour, 1 / (i + 1))));

/**
 * The foundation's printed side, with the piece of one patch as it lies before it is flipped. The paper's lines are those of the
 * unit seen in a mirror.
 * @param fill the piece's cloth; its print turned as it lies before the flip
 */
export function drawBeforeFlip(patches: readonly DrawnPatch[], index: number, lie: LaidPiece, fill: Fill): Drawing {
  const paper = patches.map(({ outline }) => mirrorOutline(outline));
  const box = boxRound([...paper.map(coarse), lie.piece, lie.flipped]);
  const textSize = Math.max(box.width, box.height) / UNIT_TEXTS;
  const { name } = patches[index]!;
  const heads = fill.print === 'one-way' ? 1 : 2;
  const print = lie.up === null ? {} : { turn: lie.up.before };
  const later = lie.up !== null && lie.seam !== null ? arrowIn(lie.flipped, lie.up.after, textSize, heads) : [];
  return {
    title: lie.seam === null ? `${name} laid first` : `${name} before the flip`,
    description: 'Seen from the printed side of the paper, through it.',
    box,
    printSpacing: textSize * 1.2,
    items: [
      ...paper.map((outline): Item => ({ kind: 'path', class: 'seam', runs: [outlineRun(outline)] })),
      ...patches.flatMap((patch, i) =>
        i === index
          ? []
          : label(coarse(paper[i]!), { name: patch.name, size: textSize * 0.9, on: '#ffffff', arrow: null }).map(
              onPaper,
            ),
      ),
      ...(lie.seam === null ? [] : [{ kind: 'path', class: 'trim', runs: [polygonRun(lie.flipped)] } as const]),
      ...later,
      {
        kind: 'path',
        class: 'cloth',
        runs: [polygonRun(lie.piece)],
        fill: { ...fill, ...print },
        ink: edgeOn(fill.colour),
      },
      ...label(lie.piece, {
        name,
        size: textSize,
        on: fill.colour,
        arrow: lie.up === null ? null : { degrees: lie.up.before, heads },
      }),
      ...(lie.seam === null ? [] : [stitched([fill.colour], lineRun(lie.seam.from, lie.seam.to))]),
    ],
  };
}

/** A name on the paper itself is in the paper's ink. */
function onPaper(item: Item): Item {
  if (item.kind !== 'text') {
    return item;
  }
  const { on: _, ...rest } = item;
  return rest;
}

function arrowIn(polygon: Polygon, degrees: number, textSize: number, heads: 1 | 2): readonly Item[] {
  const items = label(polygon, { name: '', size: textSize, on: '#ffffff', arrow: { degrees, heads } });
  return items.filter((item) => item.kind === 'path').map(({ ink: _, ...item }) => item);
}

/** Two groups or a row of them, with the seam that joins them and the places where seams must meet. */
export function drawJoin(step: JoinStep, colourOf: (role: string) => string): Drawing {
  const patches = step.makes.pieces.flatMap((piece) => piece.patches);
  const box = boxOf(patches.map(({ outline }) => outline));
  const textSize = Math.max(box.width, box.height) / JOIN_TEXTS;
  return {
    title: 'The join',
    description: 'Seen from the front: a thick line for the seam, rings where seams must meet.',
    box,
    printSpacing: textSize,
    items: [
      ...patches.map(({ outline, role }) => cloth(outline, { colour: colourOf(role) })),
      stitched(
        patches.map(({ role }) => colourOf(role)),
        ...step.joints.map(jointRun),
      ),
      ...step.points.flatMap((at): readonly Item[] => [
        { kind: 'path', class: 'paper', runs: [ring(at, textSize * 0.28)] },
        { kind: 'path', class: 'edge', runs: [ring(at, textSize * 0.28)] },
      ]),
    ],
  };
}

function jointRun({ from, to, arc }: Joint): Run {
  const bend = arc && { radius: arc.radius, large: Math.abs(arc.sweep) > Math.PI, clockwise: arc.sweep < 0 };
  return { start: from, steps: [bend === null ? { to } : { to, arc: bend }], closed: false };
}

function ring(at: Point, radius: number): Run {
  const [left, right] = [add(at, [-radius, 0]), add(at, [radius, 0])];
  const arc = { radius, large: false, clockwise: false };
  return {
    start: left,
    steps: [
      { to: right, arc },
      { to: left, arc },
    ],
    closed: true,
  };
}

/** A unit with what is wrong with it: patches that hold each other hatched by a thick edge, a cut as a dashed line. */
export function drawBlocked(
  patches: readonly DrawnPatch[],
  blocking: readonly number[],
  cut: { readonly from: Point; readonly to: Point } | null,
): Drawing {
  const box = boxOf(patches.map(({ outline }) => outline));
  const textSize = Math.max(box.width, box.height) / UNIT_TEXTS;
  return {
    title: cut === null ? 'Patches that hold each other' : 'Where it can be cut in two',
    description: `Seen from the front: ${blocking.map((index) => patches[index]!.name).join(', ')} hold each other, with thick edges.`,
    box,
    printSpacing: textSize,
    items: [
      ...patches.map(({ outline, colour }) => cloth(outline, { colour })),
      ...blocking.map(
        (index): Item => ({
          kind: 'path',
          class: 'edge',
          runs: [outlineRun(patches[index]!.outline)],
          ink: inkOn(patches[index]!.colour),
        }),
      ),
      ...patches.flatMap(({ name, outline, colour }) =>
        label(coarse(outline), { name, size: textSize, on: colour, arrow: null }),
      ),
      ...(cut === null
        ? []
        : [
            stitched(
              patches.map(({ colour }) => colour),
              lineRun(cut.from, cut.to),
            ),
          ]),
    ],
  };
}

const coarse = (outline: Outline): Polygon => flatten(outline, { side: 'chord', within: 1e-2 });
const boxOf = (outlines: readonly Outline[]): Box => boxRound(outlines.map(coarse));

/** Never so narrow that a name finds no room. */
const NARROWEST = 0.4;

function boxRound(polygons: readonly Polygon[]): Box {
  const { min, max } = polygonBox(polygons.flat());
  const long = Math.max(max[0] - min[0], max[1] - min[1]);
  const [width, height] = [max[0] - min[0], max[1] - min[1]].map(
    (side) => Math.max(side, NARROWEST * long) + 0.06 * long,
  );
  const [x, y] = scale(add(min, max), 0.5);
  return { left: x - width! / 2, bottom: y - height! / 2, width: width!, height: height! };
}
