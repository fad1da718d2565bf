/** Lays parts down a page and goes on to the next where one has no room, with a heading and a page number on each. */
import type { Drawing, Item } from '../draw/display-list.ts';
import { words } from './mark-items.ts';
import { MARGIN, type PaperSize, sheetSize } from './paper-size.ts';

/** Something as wide as the page or less. */
export interface Part {
  /** In inches. */
  readonly height: number;
  /** @param left @param top of the room that it is given */
  readonly items: (left: number, top: number) => readonly Item[];
  /** Whether what comes next must stand on the same page. */
  readonly keeps?: boolean;
}

const HEAD = 0.3;
const FOOT = 0.22;
const SIZE = 8 / 72;

export class PageFlow {
  readonly width: number;
  readonly room: number;
  private readonly paper: PaperSize;
  private readonly heading: string;
  private readonly pages: Item[][] = [[]];
  private used = 0;
  /** Parts that wait for the one that they must stand with. */
  private waiting: Part[] = [];

  constructor(paper: PaperSize, heading: string) {
    const { width, height } = sheetSize(paper, 'portrait');
    this.paper = paper;
    this.heading = heading;
    this.width = width - 2 * MARGIN;
    this.room = height - 2 * MARGIN - HEAD - FOOT;
  }

  add(...parts: readonly Part[]): void {
    for (const part of parts) {
      this.waiting.push(part);
      if (part.keeps !== true) this.settle();
    }
  }

  /** Empty room, which is not carried over to a new page. */
  space(height: number): void {
    this.settle();
    if (this.used > 0) this.used = Math.min(this.room, this.used + height);
  }

  /** Goes on to a fresh page unless so much is left of this one. */
  need(height: number): void {
    this.settle();
    if (this.used + height > this.room && this.used > 0) this.turnOver();
  }

  drawings(description: string): readonly Drawing[] {
    this.settle();
    const size = sheetSize(this.paper, 'portrait');
    const count = this.pages.length;
    return this.pages.map((items, i) => ({
      title: this.heading,
      description: `${description} Page ${i + 1} of ${count}.`,
      box: { left: 0, bottom: 0, ...size },
      printSpacing: 0.09,
      items: [
        ...items,
        words({ text: this.heading, at: [MARGIN, size.height - MARGIN - 0.07], size: SIZE }),
        words({
          text: `page ${i + 1} of ${count}`,
          at: [size.width - MARGIN, size.height - MARGIN - 0.07],
          size: SIZE,
          anchor: 'end',
        }),
      ],
    }));
  }

  /** Puts down what waits: together, unless it is more than a page holds. */
  private settle(): void {
    const parts = this.waiting;
    this.waiting = [];
    const height = parts.reduce((sum, part) => sum + part.height, 0);
    if (this.used + height > this.room && this.used > 0) this.turnOver();
    for (const part of parts) {
      if (this.used + part.height > this.room && this.used > 0) this.turnOver();
      const top = sheetSize(this.paper, 'portrait').height - MARGIN - HEAD - this.used;
      this.pages.at(-1)!.push(...part.items(MARGIN, top));
      this.used += part.height;
    }
  }

  private turnOver(): void {
    this.pages.push([]);
    this.used = 0;
  }
}
