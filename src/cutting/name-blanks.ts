import { blockLabel } from '../quilt/block-label.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { unitsOf } from '../quilt/units-of.ts';
import type { Kind } from './kind.ts';

/**
 * Names as on diagrams and bags: "A1"; "A1 mirrored" where every use of it is mirrored; "A1.1", "A1.2" where one patch needs
 * several kinds. A kind goes by the first patch that it serves. Where two blocks use the same letter the block's name comes
 * before it.
 */
export function nameBlanks(quilt: Quilt, kinds: readonly Kind[]): readonly string[] {
  const shared = sharedLetters(quilt);
  const labels = new Map(quilt.blocks.map((block) => [block.id, blockLabel(quilt, block)]));
  const bases = kinds.map(({ uses }) => {
    const { block, unit, patch } = uses[0]!;
    const hand = uses.every((use) => use.mirrored) ? ' mirrored' : '';
    return { patch: `${shared.has(unit) ? `${labels.get(block) ?? block} ` : ''}${unit}${patch}`, hand };
  });
  const counts = new Map<string, number>();
  const next = new Map<string, number>();
  for (const { patch, hand } of bases) {
    counts.set(patch + hand, (counts.get(patch + hand) ?? 0) + 1);
  }
  return bases.map(({ patch, hand }) => {
    if (counts.get(patch + hand) === 1) {
      return patch + hand;
    }
    const number = (next.get(patch + hand) ?? 0) + 1;
    next.set(patch + hand, number);
    return `${patch}.${number}${hand}`;
  });
}

function sharedLetters(quilt: Quilt): ReadonlySet<string> {
  const seen = new Set<string>();
  const shared = new Set<string>();
  for (const block of quilt.blocks) {
    for (const letter of new Set(unitsOf(block, quilt.unit).map((unit) => unit.id))) {
      (seen.has(letter) ? shared : seen).add(letter);
    }
  }
  return shared;
}
