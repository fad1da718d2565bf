import type { Block, Quilt } from './quilt.ts';

/** What tells a block from the others on diagrams, bags and paper: its name, or its id where another has the same name. */
export function blockLabel(quilt: Quilt, block: Block): string {
  return quilt.blocks.some((other) => other !== block && other.name === block.name) ? block.id : block.name;
}
