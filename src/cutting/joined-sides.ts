/** Whether the sides along which two pieces of a block are joined are equally long. */
import { add, distance, type Point, scale } from '../shape/point.ts';
import type { Closeness, DrawingFault, Placed } from './check-drawing.ts';
import { joined, type Stretch } from './paper-fold.ts';
import { alongLine, isOn, type SeamLine, seamLine } from './seam-line.ts';

/** Sides that differ by no more than this part of them, and by no more than so many times what is near, were meant to be alike. */
const ALIKE = 0.1;
const TIMES_NEAR = 4;

export function joinedSides(patches: readonly Placed[], { tolerance, near }: Closeness): readonly DrawingFault[] {
  const told = new Set<string>();
  return patches.flatMap((patch) =>
    patch.shared.flatMap((run): readonly DrawingFault[] => {
      const other = patches[run.with]!;
      const key = `${patch.piece} ${other.piece}`;
      if (run.arc !== null || patch.piece >= other.piece || told.has(key)) {
        return [];
      }
      told.add(key);
      const line = seamLine(run.from, run.to);
      const middle = line.size / 2;
      const [one, two] = [patch.piece, other.piece].map((piece) => sideAlong(patches, piece, line, middle, tolerance));
      const sizes = [lengthOf(one!), lengthOf(two!)] as const;
      const off = Math.max(Math.abs(one!.from - two!.from), Math.abs(one!.to - two!.to));
      const most = Math.min(ALIKE * Math.max(...sizes), TIMES_NEAR * near);
      const at: Point = add(
        line.from,
        scale(line.along, Math.abs(one!.to - two!.to) > tolerance ? one!.to : one!.from),
      );
      return Math.abs(sizes[0] - sizes[1]) > 2 * tolerance && off <= most
        ? [{ kind: 'lengths', names: [patch.pieceName, other.pieceName], sizes, at, times: 1 }]
        : [];
    }),
  );
}

const lengthOf = ({ from, to }: Stretch): number => to - from;

/** The straight side of a piece along a line, over a place on it. */
function sideAlong(
  patches: readonly Placed[],
  piece: number,
  line: SeamLine,
  place: number,
  tolerance: number,
): Stretch {
  const stretches = patches.flatMap((patch) =>
    patch.piece !== piece
      ? []
      : patch.edges
          .filter(
            (edge) =>
              edge.arc === undefined &&
              distance(edge.from, edge.to) > tolerance &&
              isOn(line, edge.from, tolerance) &&
              isOn(line, edge.to, tolerance),
          )
          .map((edge) => [alongLine(line, edge.from), alongLine(line, edge.to)].sort((a, b) => a - b))
          .map(([from, to]) => ({ from: from!, to: to! })),
  );
  return (
    joined(stretches, 2 * tolerance).find(({ from, to }) => from <= place && place <= to) ?? { from: 0, to: line.size }
  );
}
