import type { Polygon } from '../shape/point.ts';

export interface ImportNote {
  /** error: no block comes of it. warning: look at it. note: good to know. */
  readonly kind: 'error' | 'warning' | 'note';
  /** What, where and what to do, for a person. */
  readonly text: string;
  /** Where on the drawing, about the block's centre. */
  readonly places: readonly Polygon[];
}

/** What is said of a drawing while it is read. */
export class ImportNotes {
  readonly all: ImportNote[] = [];

  error(text: string): void {
    this.all.push({ kind: 'error', text, places: [] });
  }

  warn(text: string, places: readonly Polygon[] = []): void {
    this.all.push({ kind: 'warning', text, places });
  }

  note(text: string, places: readonly Polygon[] = []): void {
    this.all.push({ kind: 'note', text, places });
  }

  get failed(): boolean {
    return this.all.some(({ kind }) => kind === 'error');
  }
}
