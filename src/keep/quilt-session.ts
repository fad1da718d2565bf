/** The quilt at hand: opened, changed, taken back, kept. Knows no page. */
import type { Quilt } from '../quilt/quilt.ts';
import { QuiltFileError, readQuilt } from '../quilt/read-quilt.ts';
import { writeQuilt } from '../quilt/write-quilt.ts';
import { change, type History, redo, startHistory, undo } from './history.ts';
import type { Kept, Storage } from './storage.ts';

export class QuiltSession {
  private history: History<Quilt>;
  private readonly storage: Storage;
  /** Set when the browser's store refused to keep the quilt or to give it back. */
  storageFault: string | null = null;

  /**
   * Begins with the quilt kept from the last visit, or with `first` where there is none that can be read.
   * @param first the text of a sound quilt file
   */
  constructor(storage: Storage, first: string) {
    this.storage = storage;
    this.history = startHistory(this.kept() ?? readQuilt(first));
  }

  get quilt(): Quilt {
    return this.history.present;
  }

  get canUndo(): boolean {
    return this.history.past.length > 0;
  }

  get canRedo(): boolean {
    return this.history.future.length > 0;
  }

  /** Opens a file's text as one more step, so that it can be taken back. What is wrong with it, or null. */
  open(text: string): readonly string[] | null {
    try {
      this.step(change(this.history, readQuilt(text)));
      return null;
    } catch (error) {
      return error instanceof QuiltFileError ? error.messages : [String(error)];
    }
  }

  /** Makes a change if the quilt is still sound afterwards. Why not, or null. */
  edit(make: (quilt: Quilt) => Quilt): string | null {
    try {
      const text = writeQuilt(make(this.quilt));
      if (text !== writeQuilt(this.quilt)) {
        this.step(change(this.history, readQuilt(text)));
      }
      return null;
    } catch (error) {
      return error instanceof QuiltFileError ? error.messages.map(withoutPath).join(' ') : String(error);
    }
  }

  undo(): void {
    this.step(undo(this.history));
  }

  redo(): void {
    this.step(redo(this.history));
  }

  private step(history: History<Quilt>): void {
    this.history = history;
    this.note(this.storage.keepQuilt(writeQuilt(this.quilt)));
  }

  private kept(): Quilt | null {
    const text = this.note(this.storage.quilt());
    if (text === null) {
      return null;
    }
    try {
      return readQuilt(text);
    } catch (error) {
      this.storageFault = `The quilt kept from your last visit cannot be read, so a new one is begun. ${error instanceof Error ? error.message : error}`;
      return null;
    }
  }

  private note<Value>(kept: Kept<Value>): Value | null {
    this.storageFault = kept.ok ? null : kept.why;
    return kept.ok ? kept.value : null;
  }
}

/** "blocks[0].form.inner: expected …" as "inner: expected …": on the page the block is before her eyes. */
function withoutPath(message: string): string {
  return message.replace(/^[^\s:]*\.(?=[^.\s:]+:)/, '');
}
