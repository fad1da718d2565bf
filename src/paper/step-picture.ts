/** One step at the machine, seen from the paper's printed side: what is sewn already, the seam, the patch as it lies and where it comes to lie. */
import { arrow } from '../draw/arrow.ts';
import { type Item, lineRun, moved, outlineRun, placed, polygonRun } from '../draw/display-list.ts';
import { inkOn, mix } from '../draw/ink.ts';
import { label } from '../draw/label.ts';
import { flatten } from '../shape/flatten.ts';
import { outlineCentroid } from '../shape/outline-measures.ts';
import { add, type Point, type Polygon, scale } from '../shape/point.ts';
import { isInside, polygonBox } from '../shape/polygon.ts';
import { words } from './mark-items.ts';
import type { Part } from './page-flow.ts';
import type { PaperPatch, PaperPiece } from './pieces.ts';
import type { SewingPicture } from './sewing-steps.ts';
import { textPart } from './text-part.ts';

const NAME = 7 / 72;
/** The tallest that a picture may be. */
const TALL = 2.2;

/** Under the paper cloth shows through pale. */
const through = (colour: string): string => mix(colour, '#ffffff', 0.62);

export function stepWords({ number, patch, seam, points }: SewingPicture): string {
  const cloth = patch.cloths.join(' or ');
  if (number === 1) {
    return `${number}. ${patch.name}, ${cloth}: lay it under the paper, its right side away from the paper, past its lines all round by the allowance.`;
  }
  if (seam === null) {
    return `${number}. ${patch.name}, ${cloth}: no single straight line joins it; sew it once the unit is off the paper.`;
  }
  const facing = points === null ? '' : ' Its print points as the arrow shows.';
  return `${number}. ${patch.name}, ${cloth}: right sides together under the paper, as dashed.${facing} Sew the thick line, trim, flip, press toward ${patch.name}.`;
}

/** A picture with its words, as wide as asked. */
export function stepPart(piece: PaperPiece, step: SewingPicture, width: number): Part {
  const all: Polygon = [
    ...piece.trim,
    ...(step.lies === null ? [] : flatten(step.lies, { side: 'chord', within: 0.02 })),
  ];
  const { min, max } = polygonBox(all);
  const times = Math.min((width - 0.1) / (max[0] - min[0]), TALL / (max[1] - min[1]));
  const tall = (max[1] - min[1]) * times;
  const text = textPart(stepWords(step), width - 0.1, { points: 7.5 });
  const items = stepItems(piece, step, times).map((item) =>
    moved(item, [(width - (max[0] - min[0]) * times) / 2 - min[0] * times, -max[1] * times]),
  );
  return {
    height: tall + text.height + 0.2,
    items: (left, top) => [...items.map((item) => moved(item, [left, top])), ...text.items(left, top - tall - 0.08)],
  };
}

function stepItems(piece: PaperPiece, step: SewingPicture, times: number): readonly Item[] {
  const at = (item: Item): Item => placed(item, { scale: times });
  const outline = (patch: PaperPatch): Item => ({ kind: 'path', class: 'rule', runs: [outlineRun(patch.outline)] });
  const filled = (patch: PaperPatch): Item => ({
    kind: 'path',
    class: 'rule',
    runs: [outlineRun(patch.outline)],
    fill: { colour: through(patch.colour) },
  });
  const { patch, before, seam, sewn, lies, points, press } = step;
  const lines: Item[] = [
    { kind: 'path', class: 'rule', runs: [polygonRun(piece.trim)] },
    ...piece.patches.map(outline),
    ...before.map(filled),
  ];
  if (seam === null) lines.push(filled(patch));
  if (lies !== null) {
    lines.push({
      kind: 'path',
      class: 'trim',
      runs: [outlineRun(lies)],
      fill: { colour: through(mix(patch.colour, '#ffffff', 0.25)) },
    });
  }
  if (seam !== null) lines.push({ kind: 'path', class: 'sew', runs: [outlineRun(patch.outline)] });
  if (sewn !== null) lines.push({ kind: 'path', class: 'seam-sewn', runs: [lineRun(...sewn)] });
  const covered = lies === null ? null : flatten(lies, { side: 'chord', within: 0.02 });
  const seen = before.filter(({ outline: each }) => covered === null || !isInside(covered, ...outlineCentroid(each)));
  return [
    ...lines.map(at),
    ...[...seen, patch].flatMap((each) => nameOf(each, times)),
    ...marks(patch, lies, points, seam === null ? null : press, seam?.from, seam?.to, times),
  ];
}

/** Only where it stands clear of the lines. */
function nameOf({ name, outline }: PaperPatch, times: number): readonly Item[] {
  const polygon = flatten(outline, { side: 'inside', within: 0.02 }).map((point) => scale(point, times));
  return label(polygon, { name, size: NAME, on: '#ffffff', arrow: null }).map((item) =>
    item.kind === 'text'
      ? { ...words({ text: name, at: item.at, size: NAME, anchor: 'middle' }), turn: item.turn ?? 0 }
      : item,
  );
}

/** The print's arrow on the patch as it lies, and the way that it is flipped. */
function marks(
  patch: PaperPatch,
  lies: SewingPicture['lies'],
  points: number | null,
  press: Point | null,
  from: Point | undefined,
  to: Point | undefined,
  times: number,
): readonly Item[] {
  const found: Item[] = [];
  if (patch.arrow !== null) {
    const [x, y] = outlineCentroid(lies ?? patch.outline);
    const degrees = lies === null ? patch.arrow.degrees : points!;
    const at: Point = lies === null ? [x * times, y * times - 0.14] : [x * times, y * times];
    found.push({ ...arrow(at, degrees, 0.22, patch.arrow.heads), ink: inkOn(through(patch.colour)) });
  }
  if (press !== null && from !== undefined && to !== undefined) {
    const middle = scale(add(scale(from, 0.7), scale(to, 0.3)), times);
    const degrees = (Math.atan2(-press[0], press[1]) * 180) / Math.PI;
    found.push({ ...arrow(add(middle, scale(press, 0.1)), degrees, 0.2, 1), class: 'press' });
  }
  return found;
}
