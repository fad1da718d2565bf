/** Places kept by the squares of a grid, so that what lies near another place or an edge is found without looking at all. */
import { arcOf, onArc } from '../shape/arc.ts';
import type { Edge } from '../shape/outline.ts';
import { edgeLength } from '../shape/outline-measures.ts';
import { distance, type Point } from '../shape/point.ts';

export class PlaceGrid {
  private readonly squares = new Map<string, { readonly place: Point; readonly index: number }[]>();
  private readonly size: number;

  /** @param size of a square; no search may reach farther */
  constructor(size: number) {
    this.size = size;
  }

  add(place: Point, index: number): void {
    const key = `${this.cell(place[0])},${this.cell(place[1])}`;
    const square = this.squares.get(key);
    if (square === undefined) {
      this.squares.set(key, [{ place, index }]);
    } else {
      square.push({ place, index });
    }
  }

  /** The index of the nearest place within `reach`, or null. */
  near(place: Point, reach: number): number | null {
    let best: number | null = null;
    let least = reach;
    for (const key of this.keysRound(place)) {
      for (const each of this.squares.get(key) ?? []) {
        const apart = distance(each.place, place);
        if (apart <= least) {
          best = each.index;
          least = apart;
        }
      }
    }
    return best;
  }

  /** Every place in the squares that an edge passes, and in those about them. */
  along(edge: Edge, reach: number): ReadonlySet<number> {
    const arc = arcOf(edge);
    const parts = Math.max(1, Math.ceil(edgeLength(edge) / (this.size - reach)));
    const keys = new Set<string>();
    for (let k = 0; k <= parts; k++) {
      const t = k / parts;
      const at: Point =
        arc === null
          ? [edge.from[0] + t * (edge.to[0] - edge.from[0]), edge.from[1] + t * (edge.to[1] - edge.from[1])]
          : onArc(arc, arc.start + t * arc.sweep);
      for (const key of this.keysRound(at)) keys.add(key);
    }
    const found = new Set<number>();
    for (const key of keys) {
      for (const { index } of this.squares.get(key) ?? []) found.add(index);
    }
    return found;
  }

  private keysRound(place: Point): readonly string[] {
    const [x, y] = [this.cell(place[0]), this.cell(place[1])];
    return [-1, 0, 1].flatMap((dx) => [-1, 0, 1].map((dy) => `${x + dx},${y + dy}`));
  }

  private readonly cell = (value: number): number => Math.floor(value / this.size);
}
