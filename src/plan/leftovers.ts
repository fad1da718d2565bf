/** What is left whole when all is cut: rectangles that no cut goes through, and which of them are worth keeping. */
import type { Blank, Group } from '../cutting/cut-list.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { Length, Quilt } from '../quilt/quilt.ts';
import type { JobCloth, Layout, LayoutAnswer } from './layout-job.ts';
import { blanksById, filledStrips } from './placed.ts';

/** A rectangle on the cloth, in the quilt's unit: x and width across it, y and length along it. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly length: number;
}

export interface Leftover extends Rectangle {
  readonly cloth: string;
  /** The shelf piece that it comes from; null: the bolt. */
  readonly piece: string | null;
  /** Where it lies: beyond all that is cut, beside the strips, or at the end of one. */
  readonly place: 'end' | 'side' | 'strip';
  /** Index of its layout in the answer; null: of the bolt, beyond all layouts. */
  readonly layout: number | null;
  readonly count: number;
}

/** Lengths less than this are nothing left. */
const NOTHING = 1e-6;

/** Pieces with both sides at least so long are kept, unless the quilt says otherwise. */
export const usualKeep = (quilt: Pick<Quilt, 'unit'>): Length => (quilt.unit === 'in' ? '6 in' : '15 cm');

/** The least side of a piece worth keeping, in the quilt's unit. */
export const keepSize = (quilt: Quilt): number => lengthIn(quilt.unit, quilt.keep ?? usualKeep(quilt));

/**
 * The leftovers of a group that are worth keeping, largest first. Lengths are of washed cloth, as they lie after cutting.
 * @throws Error where the answer places what the group does not have
 */
export function leftoversOf(quilt: Quilt, group: Group, answer: LayoutAnswer): readonly Leftover[] {
  const size = keepSize(quilt);
  const blanks = blanksById(group.blanks);
  const kept = group.lengths.flatMap(({ id, cloth, piece }, i): readonly Leftover[] => {
    const job = group.job.cloths[i]!;
    const own = answer.layouts.flatMap((layout, index) => (layout.cloth === id ? [{ layout, index }] : []));
    const ends = own.flatMap(({ layout, index }) =>
      wholeParts(layout, job, blanks).map((part) => ({ ...part, cloth, piece, layout: index, count: layout.count })),
    );
    if (piece !== null) return ends;
    const beyond = boltEnd(
      job,
      own.map(({ layout }) => layout),
    );
    return beyond ? [...ends, { ...beyond, cloth, piece, place: 'end', layout: null, count: 1 }] : ends;
  });
  return kept.filter((part) => isKept(part, size)).sort((a, b) => b.width * b.length - a.width * a.length);
}

export const isKept = ({ width, length }: Rectangle, size: number): boolean =>
  width >= size - NOTHING && length >= size - NOTHING;

/** What is bought of a bolt beyond what is cut from it; y counts from its cut end. */
export function boltEnd(job: JobCloth, layouts: readonly Layout[]): Rectangle | null {
  const need = layouts.reduce((sum, layout) => sum + layout.count * layout.length, 0);
  if (job.step === undefined || need <= 0) return null;
  const bought = job.step * Math.ceil(need / job.step - NOTHING);
  return bought - need > NOTHING ? { x: 0, y: need, width: job.width, length: bought - need } : null;
}

/**
 * The rectangles that one cutting of a layout leaves: the end of a piece, the width beside strips along the cloth, and the end
 * of each strip, from a square cut beyond its last blank on.
 */
export function wholeParts(
  layout: Layout,
  job: JobCloth,
  blanks: ReadonlyMap<string, Blank>,
): readonly (Rectangle & { readonly place: Leftover['place'] })[] {
  const along = layout.firstCut === 'along';
  const span = along ? layout.length : job.width;
  const strips = filledStrips(layout, blanks);
  const reached = strips.reduce((most, strip) => Math.max(most, strip.from + strip.height), 0);
  const parts = strips.flatMap(({ from, height, placed }) => {
    if (placed.length === 0) return [];
    const end = Math.max(...placed.flatMap(({ outline }) => outline.map((point) => point[along ? 1 : 0])));
    const part = along
      ? { x: from, y: end, width: height, length: span - end }
      : { x: end, y: from, width: span - end, length: height };
    return [{ ...part, place: 'strip' as const }];
  });
  const beside = along
    ? { x: reached, y: 0, width: job.width - reached, length: layout.length, place: 'side' as const }
    : { x: 0, y: reached, width: job.width, length: layout.length - reached, place: 'side' as const };
  const whole = job.length ?? layout.length;
  const beyond = { x: 0, y: layout.length, width: job.width, length: whole - layout.length, place: 'end' as const };
  return [...parts, beside, beyond].filter((part) => part.width > NOTHING && part.length > NOTHING);
}
