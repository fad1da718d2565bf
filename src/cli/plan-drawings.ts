/** The diagrams of a planned quilt as SVG files. */
import { drawLayout, layoutTextSize } from '../draw/draw-layout.ts';
import { toSvg } from '../draw/to-svg.ts';
import { unroll } from '../draw/unroll.ts';
import { inCuttingOrder } from '../plan/cutting-order.ts';
import { easilyMistaken, lookAlikes } from '../plan/look-alikes.ts';
import { makeCutSteps } from '../plan/make-cut-steps.ts';
import { formatLength } from '../quilt/format-length.ts';
import type { PlannedQuilt } from './plan-text.ts';

export interface DrawingFile {
  readonly name: string;
  readonly svg: string;
}

/** The natural width of a diagram and the size of its text, in pixels. */
const PIXELS = 1000;
const TEXT_PIXELS = 13;

/** One file for each length of cloth, named after cloth and piece. */
export function drawingFiles({ quilt, cutList, answers, tally }: PlannedQuilt): readonly DrawingFile[] {
  const files = cutList.groups.flatMap((group, i) => {
    const answer = inCuttingOrder(group, answers[i]!);
    const steps = makeCutSteps(group.job, answer);
    return unroll(group, answer).map((length) => {
      const cloth = quilt.cloths.find((each) => each.id === length.cloth)!;
      const over = tally.cloths.find((each) => each.cloth === length.cloth)?.over ?? 0;
      const drawing = drawLayout({
        cloth,
        length,
        blanks: group.blanks,
        steps,
        mistaken: easilyMistaken(lookAlikes(group, answer, quilt.unit)),
        whole: length.jobCloth.length ?? length.used + over,
        textSize: layoutTextSize(length.jobCloth.width, PIXELS, TEXT_PIXELS),
        write: (value) => formatLength(value, quilt.unit, { denominator: 16 }),
      });
      return { stem: fileStem(length.cloth, length.piece), svg: toSvg(drawing, PIXELS / drawing.box.width) };
    });
  });
  const seen = new Map<string, number>();
  return files.map(({ stem, svg }) => {
    const times = (seen.get(stem) ?? 0) + 1;
    seen.set(stem, times);
    return { name: times === 1 ? `${stem}.svg` : `${stem}-${times}.svg`, svg };
  });
}

/** Ids are free text; file names are not. */
function fileStem(cloth: string, piece: string | null): string {
  const stem = piece === null ? cloth : `${cloth} shelf ${piece}`;
  return stem.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '') || 'cloth';
}
