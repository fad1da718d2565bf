/**
 * How each class of line and text looks. One table serves the page (which sets the custom properties for light and dark)
 * and files (where the fallbacks hold); a writer of paper may read it too. Widths and dashes are in pixels of the screen.
 */
import type { PathClass, TextClass } from './display-list.ts';

export interface LineStyle {
  readonly stroke: 'ink' | 'soft' | 'none';
  readonly width: number;
  readonly dash?: readonly number[];
  readonly fill?: 'paper' | 'ink' | 'none';
}

export const LINE_STYLES: Readonly<Record<PathClass, LineStyle>> = {
  cloth: { stroke: 'ink', width: 0.9 },
  edge: { stroke: 'ink', width: 1.6, fill: 'none' },
  seam: { stroke: 'ink', width: 0.9, fill: 'none' },
  cut: { stroke: 'ink', width: 1.2, dash: [7, 4], fill: 'none' },
  subcut: { stroke: 'ink', width: 1, dash: [3, 3], fill: 'none' },
  selvage: { stroke: 'soft', width: 3, dash: [1, 4], fill: 'none' },
  hatch: { stroke: 'soft', width: 0.7, fill: 'none' },
  dots: { stroke: 'soft', width: 1.6, dash: [0.1, 5], fill: 'none' },
  leader: { stroke: 'soft', width: 0.8, fill: 'none' },
  dimension: { stroke: 'ink', width: 0.8, fill: 'none' },
  arrow: { stroke: 'ink', width: 1.7, fill: 'none' },
  paper: { stroke: 'none', width: 0, fill: 'paper' },
  sew: { stroke: 'ink', width: 1.2, fill: 'none' },
  trim: { stroke: 'ink', width: 0.9, dash: [5, 3], fill: 'none' },
  match: { stroke: 'ink', width: 1, fill: 'none' },
  gauge: { stroke: 'ink', width: 0.7, fill: 'none' },
  box: { stroke: 'ink', width: 0.9, fill: 'none' },
  rule: { stroke: 'soft', width: 0.5, fill: 'none' },
  'seam-sewn': { stroke: 'ink', width: 2.6, fill: 'none' },
  press: { stroke: 'ink', width: 1.2, fill: 'none' },
  grain: { stroke: 'ink', width: 1, dash: [6, 2, 1, 2], fill: 'none' },
};

export const TEXT_WEIGHT: Readonly<Record<TextClass, number>> = {
  name: 600,
  measure: 400,
  'strip-number': 700,
  title: 700,
  plain: 400,
  strong: 700,
};

/** Ink on paper, where nothing is set by a page. */
export const PAPER_INK = { ink: '#2a241f', soft: '#6b6058', paper: '#ffffff' } as const;

const COLOURS = {
  ink: 'var(--ink, #2a241f)',
  soft: 'var(--ink-soft, #6b6058)',
  paper: 'var(--paper, #fffdf8)',
  none: 'none',
} as const;

/** The style sheet of a drawing, scoped to its class. */
export const DRAWING_CSS = [
  `.drawing text{font-family:var(--hand,ui-sans-serif,system-ui,sans-serif);fill:${COLOURS.ink}}`,
  '.drawing path{vector-effect:non-scaling-stroke;stroke-linejoin:round;stroke-linecap:round}',
  ...Object.entries(LINE_STYLES).map(([name, style]) => `.drawing .${name}{${lineCss(style)}}`),
  ...Object.entries(TEXT_WEIGHT).map(([name, weight]) => `.drawing text.${name}{font-weight:${weight}}`),
].join('\n');

function lineCss(style: LineStyle): string {
  const parts = [`stroke:${COLOURS[style.stroke]}`, `stroke-width:${style.width}px`];
  if (style.dash !== undefined) {
    parts.push(`stroke-dasharray:${style.dash.join(' ')}`);
  }
  if (style.fill !== undefined) {
    parts.push(`fill:${COLOURS[style.fill]}`);
  }
  return parts.join(';');
}
