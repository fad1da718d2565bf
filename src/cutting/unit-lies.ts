/** For each piece with a directional print, how it lies on its foundation before the flip, place by place. */
import { copyTurns } from '../quilt/copy-turns.ts';
import { facingOf } from '../quilt/facing-of.ts';
import { placesOf } from '../quilt/places.ts';
import type { Block, Cloth, Quilt, Scheme, Unit } from '../quilt/quilt.ts';
import { edgesOf, mirrorOutline } from '../shape/outline.ts';
import { outlineCentroid } from '../shape/outline-measures.ts';
import { printDirection } from './facing.ts';
import { type LaidPiece, laidPiece } from './laid-piece.ts';
import { sewnSides } from './sewn-side.ts';
import { isDirectional } from './turn-sets.ts';
import { unitAxis } from './unit-axis.ts';
import { makingOf } from './wanted.ts';

export interface UnitLie {
  /** The places where all lies so, counted from 1 round the block; each with the block's turn in the quilt, if copies are turned. */
  readonly places: readonly { readonly place: number; readonly turn: number | null }[];
  readonly mirrored: boolean;
  readonly pieces: readonly PieceLie[];
}

export interface PieceLie {
  /** Index of the patch in its unit. */
  readonly index: number;
  readonly cloth: Cloth;
  readonly lie: LaidPiece;
}

/** @returns one for each way the prints lie; empty where no patch of the unit has a print that must point somewhere */
export function unitLies(quilt: Quilt, scheme: Scheme, block: Block, unit: Unit): readonly UnitLie[] {
  const sewn = sewnSides(unit);
  const drawn = unitAxis(unit);
  const turns = [...new Set(copyTurns(block))];
  const found = new Map<string, UnitLie>();
  for (const { index: place, mirrored, turn } of placesOf(unit)) {
    for (const blockTurn of turns) {
      const axis = drawn === null || !mirrored ? drawn : -drawn;
      const ways = unit.patches.map((patch) => {
        const role = quilt.roles.find(({ id }) => id === patch.role);
        const cloth = clothOf(quilt, scheme, patch.role);
        if (role === undefined || cloth === undefined || !isDirectional(cloth)) {
          return null;
        }
        const outline = mirrored ? mirrorOutline(patch.outline) : patch.outline;
        const middle = outlineCentroid(outline);
        const placed = { middle, axis, edges: edgesOf(outline), turn: turn + blockTurn, mirrored };
        const up = printDirection(facingOf(block, patch, role, place), placed);
        return typeof up === 'number' ? { outline, role, cloth, up } : null;
      });
      if (ways.every((way) => way === null)) {
        continue;
      }
      const key = JSON.stringify([mirrored, ways.map((way) => (way === null ? null : Math.round(way.up * 10) % 3600))]);
      const told = { place: place + 1, turn: turns.length > 1 ? blockTurn : null };
      const before = found.get(key);
      const pieces = (): readonly PieceLie[] =>
        ways.flatMap((way, index) => {
          if (way === null) {
            return [];
          }
          const making = makingOf(quilt, unit, unit.patches[index]!, sewn[index]!, way.role);
          return [{ index, cloth: way.cloth, lie: laidPiece(way.outline, making, way.up) }];
        });
      found.set(key, {
        places: [...(before?.places ?? []), told],
        mirrored,
        pieces: before?.pieces ?? pieces(),
      });
    }
  }
  return [...found.values()];
}

/** The first cloth that fills a role in the scheme. */
function clothOf(quilt: Quilt, scheme: Scheme, role: string): Cloth | undefined {
  const [id] = [scheme.cloths[role] ?? []].flat();
  return quilt.cloths.find((cloth) => cloth.id === id);
}
