/** Lays parts down a page and goes on to the next where one has no room, with a heading and a page number on each. */
import type { Drawing, Item } from '../draw/display-list.ts';
import { words } from './mark-items.ts';
import { MARGIN, type SheetSize } from './paper-size.ts';

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
  private readonly size: SheetSize;
  private readonly heading: string;
  private readonly isOne: boolean;
  private readonly margin: number;
  private readonly pages: Item[][] = [[]];
  private used = 0;
  /** Parts that wait for the one that they must stand with. */
  private waiting: Part[] = [];

  /** @param isOne for a single page without heading or number, as long as what stands on it */
  constructor(size: SheetSize, heading: string, isOne = false, margin = MARGIN) {
    this.size = size;
    this.heading = heading;
    this.isOne = isOne;
    this.margin = margin;
    this.width = size.width - 2 * margin;
    this.room = size.height - 2 * margin - (isOne ? 0 : HEAD + FOOT);
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
    const { size, isOne } = this;
    const count = this.pages.length;
    const height = isOne ? Math.min(size.height, this.used + 2 * this.margin) : size.height;
    return this.pages.map((items, i) => ({
      title: this.heading,
      description: `${description} Page ${i + 1} of ${count}.`,
      box: { left: 0, bottom: size.height - height, width: size.width, height },
      printSpacing: 0.09,
      items: [...items, ...(isOne ? [] : this.numbered(i + 1, count))],
    }));
  }

  private numbered(page: number, count: number): readonly Item[] {
    const { width, height } = this.size;
    const y = height - MARGIN - 0.07;
    return [
      words({ text: this.heading, at: [MARGIN, y], size: SIZE }),
      words({ text: `page ${page} of ${count}`, at: [width - MARGIN, y], size: SIZE, anchor: 'end' }),
    ];
  }

  /** Puts down what waits: together, unless it is more than a page holds. */
  private settle(): void {
    const parts = this.waiting;
    this.waiting = [];
    const height = parts.reduce((sum, part) => sum + part.height, 0);
    if (this.used + height > this.room && this.used > 0) this.turnOver();
    for (const part of parts) {
      if (this.used + part.height > this.room && this.used > 0) this.turnOver();
      const top = this.size.height - this.margin - (this.isOne ? 0 : HEAD) - this.used;
      this.pages.at(-1)!.push(...part.items(this.margin, top));
      this.used += part.height;
    }
  }

  private turnOver(): void {
    this.pages.push([]);
    this.used = 0;
  }
}
