/** The sheets that home printers take, in inches, as all of this folder is. */
export type PaperSize = 'a4' | 'letter';
export type Orientation = 'portrait' | 'landscape';

export interface SheetSize {
  readonly width: number;
  readonly height: number;
}

/** ISO 216 and ANSI/ASME Y14.1. */
const PORTRAIT: Readonly<Record<PaperSize, SheetSize>> = {
  a4: { width: 210 / 25.4, height: 297 / 25.4 },
  letter: { width: 8.5, height: 11 },
};

export const PAPER_NAMES: Readonly<Record<PaperSize, string>> = { a4: 'A4', letter: 'Letter' };

export function sheetSize(paper: PaperSize, orientation: Orientation): SheetSize {
  const { width, height } = PORTRAIT[paper];
  return orientation === 'portrait' ? { width, height } : { width: height, height: width };
}

/** What printers leave blank at the edge, with some to spare. Practice. */
export const MARGIN = 0.35;
