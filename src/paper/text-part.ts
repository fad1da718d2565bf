import { words } from './mark-items.ts';
import type { Part } from './page-flow.ts';
import { wrapText } from './wrap-text.ts';

export interface TextStyle {
  /** In points. */
  readonly points: number;
  readonly bold?: boolean;
  readonly indent?: number;
  /** Before each paragraph, in the indent: a dash, a warning sign. */
  readonly sign?: string;
  readonly keeps?: boolean;
}

const LINE = 1.35;

/** A paragraph as a part of a page. @param width of the page */
export function textPart(
  text: string,
  width: number,
  { points, bold = false, indent = 0, sign, keeps }: TextStyle,
): Part {
  const size = points / 72;
  const lines = wrapText(text, width - indent, size, bold);
  return {
    height: lines.length * size * LINE,
    keeps: keeps === true,
    items: (left, top) => [
      ...lines.map((line, i) => words({ text: line, at: [left + indent, top - (i + 0.5) * size * LINE], size, bold })),
      ...(sign === undefined
        ? []
        : [words({ text: sign, at: [left + indent - size * 1.1, top - 0.5 * size * LINE], size, bold: true })]),
    ],
  };
}
