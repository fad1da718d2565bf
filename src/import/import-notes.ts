import type { Polygon } from '../shape/point.ts';

export interface ImportNote {
  /** error: no block comes of it. warning: look at it. note: good to know. */
  readonly kind: 'error' | 'warning' | 'note';
  /** What, where and what to do, for a person. */
  readonly text: string;
  /** Where on the drawing, about the block's centre. */
  readonly places: readonly Polygon[];
}

/** Beyond so many warnings another one tells nobody anything. */
const MOST_WARNINGS = 100;

/** What is said of a drawing while it is read. */
export class ImportNotes {
  private readonly said: ImportNote[] = [];
  private unsaid = 0;

  get all(): readonly ImportNote[] {
    const more: ImportNote = { kind: 'warning', text: `And ${this.unsaid} more of the kind.`, places: [] };
    return this.unsaid === 0 ? this.said : [...this.said, more];
  }

  error(text: string): void {
    this.said.push({ kind: 'error', text, places: [] });
  }

  warn(text: string, places: readonly Polygon[] = []): void {
    if (this.said.filter(({ kind }) => kind === 'warning').length < MOST_WARNINGS) {
      this.said.push({ kind: 'warning', text, places });
    } else {
      this.unsaid++;
    }
  }

  note(text: string, places: readonly Polygon[] = []): void {
    this.said.push({ kind: 'note', text, places });
  }

  get failed(): boolean {
    return this.all.some(({ kind }) => kind === 'error');
  }
}
