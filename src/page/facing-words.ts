import type { Block, Facing, PrintKind } from '../quilt/quilt.ts';

/**
 * How a print points, for a list to choose from. Outward and inward are seen from the
 * block's centre, upright from the quilt. 'along' is left to the file, for it needs an edge of an outline.
 */
export const FACINGS: readonly { readonly to: Facing['to']; readonly words: string }[] = [
  { to: 'outward', words: 'outward' },
  { to: 'inward', words: 'inward' },
  { to: 'clockwise', words: 'clockwise' },
  { to: 'anticlockwise', words: 'anticlockwise' },
  { to: 'upright', words: 'upright' },
  { to: 'along', words: 'along an edge' },
  { to: 'free', words: 'any way' },
];

export const PRINTS: readonly { readonly print: PrintKind; readonly words: string }[] = [
  { print: 'one-way', words: 'one-way print' },
  { print: 'two-way', words: 'two-way print or stripe' },
  { print: 'check', words: 'check' },
  { print: 'tossed', words: 'tossed print' },
  { print: 'solid', words: 'solid' },
];

export const printWords = (print: PrintKind): string => PRINTS.find((one) => one.print === print)?.words ?? print;

/** Of a loose block's pieces, which have no centre to be seen from: by the piece as it is drawn. */
const LOOSE_FACINGS: typeof FACINGS = [
  { to: 'outward', words: 'up' },
  { to: 'inward', words: 'down' },
  { to: 'clockwise', words: 'to the right' },
  { to: 'anticlockwise', words: 'to the left' },
  { to: 'along', words: 'along an edge' },
  { to: 'free', words: 'any way' },
];

/** How a print of a block's patches may point. */
export const facingsOf = ({ loose }: Pick<Block, 'loose'>): typeof FACINGS =>
  loose === true ? LOOSE_FACINGS : FACINGS;

/** "outward, turned on 30° anticlockwise", "along edge 2, backward", "any way": edges are counted from 1. */
export function sayFacing(facing: Facing, block: Pick<Block, 'loose'> = {}): string {
  const { to, edge, sense, turned = 0, within = 0 } = facing;
  const words = [...facingsOf(block), ...FACINGS].find((one) => one.to === to)?.words ?? to;
  const named = to === 'along' && edge !== undefined ? `along edge ${edge + 1}` : words;
  const backward = to === 'along' && sense === 'backward' ? ', backward' : '';
  const on = turned === 0 ? '' : `, turned on ${Math.abs(turned)}° ${turned > 0 ? 'anticlockwise' : 'clockwise'}`;
  return `${named}${backward}${on}${within === 0 || to === 'free' ? '' : `, give or take ${within}°`}`;
}
