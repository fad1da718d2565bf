/**
 * Hints at a print: a small tile of lines for each kind, so that two cloths of like colour differ by more than colour and
 * a one-way print shows which way is up. It stands for the print; it is no picture of it.
 */
import type { PrintKind } from '../quilt/quilt.ts';
import type { Point } from '../shape/point.ts';
import { type Fill, type Item, lineRun, type Run } from './display-list.ts';
import { inkOn, mix } from './ink.ts';

/** The lines of one tile, in a square from 0 to 1 whose up is the print's; empty for a solid. */
export function printTile(print: PrintKind): readonly Run[] {
  switch (print) {
    case 'one-way':
      return [lineRun([0.3, 0.4], [0.5, 0.62], [0.7, 0.4])];
    case 'two-way':
      return [lineRun([0.5, 0.18], [0.5, 0.82])];
    case 'check':
      return [lineRun([0.5, 0], [0.5, 1]), lineRun([0, 0.5], [1, 0.5])];
    case 'tossed':
      return [
        lineRun([0.18, 0.2], [0.32, 0.34]),
        lineRun([0.62, 0.42], [0.8, 0.36]),
        lineRun([0.34, 0.78], [0.38, 0.6]),
      ];
    case 'solid':
      return [];
  }
}

/** Quiet enough to leave labels readable, strong enough to be seen. */
export const printInk = (colour: string): string => mix(colour, inkOn(colour), 0.28);

/** A print tile that several fills of a drawing may share. */
export interface Pattern {
  readonly key: string;
  readonly colour: string;
  readonly print: PrintKind;
  readonly turn: number;
  /** As of the fill. */
  readonly repeat?: number;
}

/** The pattern that a fill needs; null for plain colour. */
export function patternOf(fill: Fill): Pattern | null {
  if (fill.print === undefined || fill.print === 'solid') {
    return null;
  }
  const turn = Math.round((fill.turn ?? 0) * 10) / 10;
  const { colour, print, repeat } = fill;
  const key = `${colour.slice(1)}-${print}-${turn}`;
  return repeat === undefined ? { key, colour, print, turn } : { key: `${key}-${repeat}`, colour, print, turn, repeat };
}

/** Every pattern that a drawing needs, once each. */
export function patternsOf(items: readonly Item[]): readonly Pattern[] {
  const found = new Map<string, Pattern>();
  const visit = (item: Item): void => {
    if (item.kind === 'group') {
      item.items.forEach(visit);
    } else if (item.kind === 'path' && item.fill !== undefined) {
      const pattern = patternOf(item.fill);
      if (pattern !== null) {
        found.set(pattern.key, pattern);
      }
    }
  };
  items.forEach(visit);
  return [...found.values()];
}

/** A tile's runs at a size. */
export function scaledTile(print: PrintKind, size: number): readonly Run[] {
  const scaled = (p: Point): Point => [p[0] * size, p[1] * size];
  return printTile(print).map((run) => ({
    ...run,
    start: scaled(run.start),
    steps: run.steps.map((step) => ({ to: scaled(step.to) })),
  }));
}
