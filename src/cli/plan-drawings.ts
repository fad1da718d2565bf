/** The diagrams of a planned quilt as SVG files. */
import { drawBlock, seenFromBack } from '../draw/draw-block.ts';
import { drawLayout, layoutTextSize } from '../draw/draw-layout.ts';
import { toSvg } from '../draw/to-svg.ts';
import { unroll } from '../draw/unroll.ts';
import { schemeOf } from '../paper/papers.ts';
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

/** One file for each length of cloth, named after cloth and piece, and two for each block, front and back. */
export function drawingFiles(planned: PlannedQuilt): readonly DrawingFile[] {
  const seen = new Map<string, number>();
  return [...clothFiles(planned), ...blockFiles(planned)].map(({ stem, svg }) => {
    const times = (seen.get(stem) ?? 0) + 1;
    seen.set(stem, times);
    return { name: times === 1 ? `${stem}.svg` : `${stem}-${times}.svg`, svg };
  });
}

interface StemmedFile {
  readonly stem: string;
  readonly svg: string;
}

function blockFiles({ quilt, cutList }: PlannedQuilt): readonly StemmedFile[] {
  const scheme = schemeOf(quilt);
  const blanks = cutList.groups.flatMap((group) => group.blanks);
  return quilt.blocks.flatMap((block) => {
    const extent = drawBlock({ quilt, scheme, block, blanks, textSize: 1 }).box;
    const textSize = (TEXT_PIXELS * Math.max(extent.width, extent.height)) / PIXELS;
    const front = drawBlock({ quilt, scheme, block, blanks, textSize });
    const scale = PIXELS / Math.max(front.box.width, front.box.height);
    const stem = `block ${block.name}`;
    return [
      { stem: fileStem(stem, null), svg: toSvg(front, scale) },
      { stem: fileStem(`${stem} back`, null), svg: toSvg(seenFromBack(front), scale) },
    ];
  });
}

function clothFiles({ quilt, cutList, answers, tally }: PlannedQuilt): readonly StemmedFile[] {
  return cutList.groups.flatMap((group, i) => {
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
}

/** Ids are free text; file names are not. */
function fileStem(cloth: string, piece: string | null): string {
  const stem = piece === null ? cloth : `${cloth} shelf ${piece}`;
  return stem.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '') || 'cloth';
}
