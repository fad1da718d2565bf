/** The changes that the page can make to a unit's sewing order, each from the old quilt to the new. */
import type { Block } from '../quilt/quilt.ts';
import { withUnitOrder, withUnitParted } from '../quilt/unit-order.ts';
import type { Edit } from './edit-event.ts';

/** @param order indices of the unit's patches */
export const setUnitOrder = (block: string, unit: string, order: readonly number[]): Edit =>
  changeBlock(block, (old) => withUnitOrder(old, unit, order));

/** @param parts indices of the unit's patches, each part in sewing order */
export const partUnit = (block: string, unit: string, parts: readonly (readonly number[])[]): Edit =>
  changeBlock(block, (old) => withUnitParted(old, unit, parts));

function changeBlock(id: string, change: (block: Block) => Block): Edit {
  return (quilt) => ({ ...quilt, blocks: quilt.blocks.map((block) => (block.id === id ? change(block) : block)) });
}
