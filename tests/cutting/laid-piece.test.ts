import fc from 'fast-check';
import { expect, test } from 'vitest';
import { laidPiece } from '../../src/cutting/laid-piece.ts';
import { unitLies } from '../../src/cutting/unit-lies.ts';
import { cornersOf, type Outline } from '../../src/shape/outline.ts';
import { degreesFromUp, fromUp, type Point, turn } from '../../src/shape/point.ts';
import { blockOf, clothOf, oblong, patchOf, quiltOf, unitOf } from './sample-quilt.ts';

const making = { allowance: 0.25, room: 0.25, sewnEdge: 0, paper: true, ruler: 0.125 };

/** A sheet of paper turned over about the vertical, and cloth turned over about a line, in space: x, y, and the side that faces us. */
interface Sheet {
  readonly at: Point;
  readonly rightSideUp: boolean;
}
const turnedOver = ({ at, rightSideUp }: Sheet, through: Point, along: Point): Sheet => {
  // Half a turn in space about a line in the plane of the table: a reflection in it, and the other side up.
  const [x, y] = [at[0] - through[0], at[1] - through[1]];
  const twice = 2 * (x * along[0] + y * along[1]);
  return { at: [through[0] + twice * along[0] - x, through[1] + twice * along[1] - y], rightSideUp: !rightSideUp };
};

test('the piece before the flip is what turning the block over and then the piece back about its seam makes of it', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { minLength: 2, maxLength: 2 }),
      fc.double({ min: 0, max: 360, noNaN: true }),
      fc.double({ min: 0, max: 360, noNaN: true }),
      (shift, turned, up) => {
        const triangle: Outline = (
          [
            [0, 0],
            [3, 0.5],
            [1, 2],
          ] as const
        ).map((corner) => {
          const [x, y] = turn(corner, turned);
          return [x + shift[0]!, y + shift[1]!];
        });
        const lie = laidPiece(triangle, making, up);
        const [from, to] = cornersOf(triangle) as [Point, Point];
        // Seen from the front, then all turned over about the vertical through the centre: now the paper faces us.
        const over = (at: Point): Sheet => turnedOver({ at, rightSideUp: true }, [0, 0], [0, 1]);
        const [a, b] = [over(from).at, over(to).at];
        const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
        const along: Point = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
        const flippedBack = (at: Point): Sheet => turnedOver(over(at), a, along);
        // The print's up as a short step from a place in the patch.
        const place = from;
        const step = fromUp(up);
        const ahead = flippedBack([place[0] + step[0], place[1] + step[1]]);
        const here = flippedBack(place);
        expect(here.rightSideUp).toBe(true);
        const seen = degreesFromUp([ahead.at[0] - here.at[0], ahead.at[1] - here.at[1]]);
        expect(Math.abs(((lie.up!.before - seen + 540) % 360) - 180)).toBeLessThan(1e-6);
        // The third corner lies across the seam from where it ends up.
        const third = cornersOf(triangle)[2]!;
        const side = (p: Point): number => along[0] * (p[1] - a[1]) - along[1] * (p[0] - a[0]);
        expect(side(flippedBack(third).at)).toBeCloseTo(-side(over(third).at), 9);
        const reach = (points: readonly Point[], way: number): number => Math.max(...points.map((p) => way * side(p)));
        const way = Math.sign(side(flippedBack(third).at));
        // Past the seam by the allowance only; on the far side by allowance and room beyond the patch's height or its cut tip.
        expect(reach(lie.piece, -way)).toBeCloseTo(0.25, 6);
        expect(reach(lie.flipped, way)).toBeCloseTo(0.25, 6);
      },
    ),
    { numRuns: 60 },
  );
});

test('a print that must stand upright lies otherwise at each place, and mirrored places lie in a mirror', () => {
  const patches = [patchOf(1, oblong(0, 2, 1, 2)), patchOf(2, oblong(0, 3.5, 1, 1))];
  const unit = (mirrored: 'no' | 'alternate') => unitOf([], { count: 4, mirrored }, { patches, paper: true });
  const quilt = quiltOf([unit('no')], { to: 'upright' }, clothOf('one-way'));
  const scheme = quilt.schemes[0]!;
  const lies = unitLies(quilt, scheme, quilt.blocks[0]!, unit('no'));
  expect(lies.map(({ places }) => places.map(({ place }) => place))).toEqual([[1], [2], [3], [4]]);
  // At the second place, a quarter turn on, upright points right from the front, so left from the paper; the seam is level, and a flip
  // over it leaves left where it is and turns up into down (derived).
  expect(lies.map(({ pieces }) => Math.round(pieces[1]!.lie.up!.before))).toEqual([180, 90, 0, 270]);
  const outward = quiltOf([unit('alternate')], { to: 'outward' }, clothOf('one-way'));
  const mirrored = unitLies(outward, scheme, outward.blocks[0]!, unit('alternate'));
  expect(mirrored.map(({ mirrored: hand, places }) => [hand, places.length])).toEqual([
    [false, 2],
    [true, 2],
  ]);
  const tossed = quiltOf([unit('no')], { to: 'outward' }, clothOf('tossed'));
  expect(unitLies(tossed, tossed.schemes[0]!, tossed.blocks[0]!, unit('no'))).toEqual([]);
  expect(unitLies(quilt, scheme, blockOf([unit('no')], { turns: [0, 90], count: 2 }), unit('no'))).toHaveLength(4);
});
