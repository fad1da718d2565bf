/** What may be printed, and what she chooses about it. */
import type { LengthUnit } from '../quilt/quilt.ts';
import type { PaperSize } from './paper-size.ts';

export const PAPER_KINDS = ['slip', 'booklet', 'labels', 'foundations', 'templates', 'sewing'] as const;
export type PaperKind = (typeof PAPER_KINDS)[number];

/** What each is called, and what it is for. */
export const PAPER_WORDS: Readonly<Record<PaperKind, { readonly name: string; readonly about: string }>> = {
  foundations: {
    name: 'Foundations',
    about: 'the units sewn on paper, at true scale, mirrored as the printed side must be',
  },
  sewing: {
    name: 'Sewing sheet',
    about: 'each unit step by step, how the block is joined, and the block from both sides',
  },
  templates: { name: 'Templates', about: 'the patches sewn without paper, at true scale with their seam allowance' },
  slip: { name: 'Shopping slip', about: 'what to ask for at the counter, what to bring from the shelf' },
  booklet: { name: 'Cutting booklet', about: 'strip by strip, with pictures and boxes to tick' },
  labels: { name: 'Bag labels', about: 'what goes into each bag' },
};

export interface PaperChoice {
  readonly paper: PaperSize;
  readonly foundation: FoundationPaper;
  readonly labels: LabelChoice;
  readonly slip: SlipChoice;
}

/** On a page, or as narrow as a phone. */
export type SlipChoice = 'page' | 'narrow';

/** How foundations are used: each sewn through once and torn away, or ironed on, sewn beside and used again. */
export type FoundationPaper = { readonly kind: 'sewn' } | { readonly kind: 'freezer'; readonly uses: number };

/** How often freezer paper still sticks, 3 to 8 times: quiltingclimber.blogspot.com/2011/07. */
export const FREEZER_USES = { least: 3, most: 8, usual: 5 } as const;

export interface LabelChoice {
  readonly perSheet: LabelsPerSheet;
  /** A label for each bag, or one for each unit of it. */
  readonly by: 'block' | 'unit';
}

export type LabelsPerSheet = 8 | 10 | 12;

export const LABEL_GRIDS: Readonly<Record<LabelsPerSheet, { readonly columns: number; readonly rows: number }>> = {
  8: { columns: 2, rows: 4 },
  10: { columns: 2, rows: 5 },
  12: { columns: 3, rows: 4 },
};

/** What a unit of length suggests until she chooses. */
export const usualChoice = (unit: LengthUnit): PaperChoice => ({
  paper: unit === 'in' ? 'letter' : 'a4',
  foundation: { kind: 'freezer', uses: FREEZER_USES.usual },
  labels: { perSheet: 10, by: 'block' },
  slip: 'page',
});
