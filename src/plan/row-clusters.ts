/**
 * A row as she may shuffle it: clusters of blanks that square cuts part from each other. Within a cluster blanks nest and keep
 * their order; whole clusters may change places, for each has its own length of the strip from edge to edge.
 */
import type { Polygon } from '../shape/point.ts';
import type { StripPiece, StripSteps } from './cut-steps.ts';

export interface Cluster {
  readonly pieces: readonly StripPiece[];
  /** Between which square cuts it lies, along the strip. */
  readonly start: number;
  readonly end: number;
  /** Which blanks it holds, the same text for the same blanks. */
  readonly holds: string;
}

/** @param within what counts as touching */
export function clustersOf({ pieces }: StripSteps, within: number): readonly Cluster[] {
  const clusters: Cluster[] = [];
  let own: StripPiece[] = [];
  let start = 0;
  pieces.forEach((piece, i) => {
    own.push(piece);
    const last = i === pieces.length - 1;
    const square = Math.abs(piece.near - piece.far) < 1e-9;
    // A chain of cuts may have to cross somewhere; a square cut then parts no cluster from the next.
    const parts =
      own.every(({ outline }) => farthest(outline) <= piece.near + within) &&
      pieces.slice(i + 1).every(({ outline }) => nearest(outline) >= piece.near - within);
    if (last || (square && parts)) {
      const end = last ? Math.max(piece.near, piece.far, ...own.map(({ outline }) => farthest(outline))) : piece.near;
      clusters.push({ pieces: own, start, end, holds: holding(own.map(({ blank }) => blank)) });
      own = [];
      start = end;
    }
  });
  return clusters;
}

export const holding = (blanks: readonly string[]): string => JSON.stringify([...blanks].sort());

export const lengthOf = ({ start, end }: Cluster): number => end - start;

const xs = (outline: Polygon): readonly number[] => outline.map((point) => point[0]);
export const farthest = (outline: Polygon): number => Math.max(...xs(outline));
export const nearest = (outline: Polygon): number => Math.min(...xs(outline));
