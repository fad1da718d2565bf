/** A block on trial: the quilt as it would be with it, changed by the same edits that change a quilt. */
import { addBlock, type FormBlock } from '../quilt/add-block.ts';
import type { Block, Quilt } from '../quilt/quilt.ts';
import { QuiltFileError, readQuilt } from '../quilt/read-quilt.ts';
import { writeQuilt } from '../quilt/write-quilt.ts';
import type { Edit } from './edit-event.ts';

export class DraftQuilt {
  private quilt: Quilt;
  private readonly id: string;

  constructor(quilt: Quilt, block: FormBlock) {
    const added = addBlock(quilt, block);
    this.quilt = added.quilt;
    this.id = added.block;
  }

  get block(): Block {
    return this.quilt.blocks.find(({ id }) => id === this.id)!;
  }

  /** Makes a change if the quilt would still be sound afterwards. Why not, or null. */
  edit(make: Edit): string | null {
    try {
      this.quilt = readQuilt(writeQuilt(make(this.quilt)));
      return null;
    } catch (error) {
      return error instanceof QuiltFileError ? error.messages.join(' ') : String(error);
    }
  }
}
