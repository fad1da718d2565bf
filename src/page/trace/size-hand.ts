/** The pointer and the keys on the board where a picture is brought to true size. Places are pixels of the picture, y turned up. */
import { type SVGTemplateResult, svg } from 'lit';
import type { Straightening } from '../../quilt/tracing/straightening.ts';
import type { Homography, Quad } from '../../shape/homography.ts';
import { distance, type Point } from '../../shape/point.ts';
import type { BoardHand } from './board-hand.ts';
import { type Sight, toBoard } from './sight.ts';

/** The picture as it is, but for y, which points up on every board. */
const FLIP: Homography = [1, 0, 0, 0, -1, 0, 0, 0, 1];
export const AS_IT_IS = { toTrue: FLIP, toPicture: FLIP };

const CORNERS = ['top left', 'top right', 'bottom right', 'bottom left'] as const;
const ENDS = ['first end', 'second end'] as const;

export class SizeHand implements BoardHand {
  private readonly now: () => Straightening;
  private readonly change: (to: Straightening) => void;
  private held: { readonly handle: number; readonly before: Straightening } | null = null;
  /** The handle that the next click sets. */
  private next = 0;

  constructor(now: () => Straightening, change: (to: Straightening) => void) {
    this.now = now;
    this.change = change;
  }

  /** Begins again with the first handle. */
  restart(): void {
    this.next = 0;
  }

  grab(at: Point, reach: number): boolean {
    const handle = this.nearest(at, reach);
    this.held = handle === null ? null : { handle, before: this.now() };
    return handle !== null;
  }

  drag(at: Point): void {
    if (this.held !== null) this.set(this.held.handle, at);
  }

  drop(made: boolean): void {
    if (this.held !== null && !made) this.change(this.held.before);
    this.held = null;
  }

  click(at: Point): void {
    this.set(this.next, at);
    this.next = (this.next + 1) % this.names.length;
  }

  hover(): void {}

  key(): boolean {
    return false;
  }

  wordsAt(at: Point, reach: number): string {
    const here = this.nearest(at, reach);
    const place = `${Math.round(at[0])} across, ${Math.round(-at[1])} down.`;
    return `${place} ${here === null ? '' : `On the ${this.names[here]}.`} ${this.nextWords}`;
  }

  get nextWords(): string {
    return `The next click sets the ${this.names[this.next]}.`;
  }

  leap(from: Point, forward: boolean): Point | null {
    const places = this.places;
    const here = places.findIndex((place) => distance(place, from) < 1e-9);
    const size = places.length;
    return places[here < 0 ? 0 : (here + (forward ? 1 : size - 1)) % size]!;
  }

  draw(sight: Sight): SVGTemplateResult {
    const places = this.places.map((place) => toBoard(sight, place));
    const path = `M${places.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}${places.length > 2 ? 'Z' : ''}`;
    return svg`<path class="board-under" d=${path} /><path class="size-frame" d=${path} />
      ${places.map(([x, y], i) => {
        // A cross-hair with an open middle, so that the printed corner is seen in it.
        const cross = `M${x - 14} ${y}h11m6 0h11M${x} ${y - 14}v11m0 6v11M${x - 9} ${y}a9 9 0 1 0 18 0a9 9 0 1 0 -18 0`;
        return svg`<path class="board-under" d=${cross} />
          <path class=${i === this.next ? 'size-handle next' : 'size-handle'} d=${cross} />
          <text class="size-name" x=${x + (i === 0 || i === 3 ? 16 : -16)} y=${y + (i < 2 ? 24 : -14)}
            text-anchor=${i === 0 || i === 3 ? 'start' : 'end'}>${i + 1}</text>`;
      })}`;
  }

  private get names(): readonly string[] {
    return this.now().kind === 'rectangle' ? CORNERS : ENDS;
  }

  /** On the board, y up. */
  private get places(): readonly Point[] {
    const now = this.now();
    return (now.kind === 'rectangle' ? now.corners : [now.from, now.to]).map(([x, y]): Point => [x, -y]);
  }

  private nearest(at: Point, reach: number): number | null {
    const away = this.places.map((place) => distance(place, at));
    const least = Math.min(...away);
    return least <= 1.6 * reach ? away.indexOf(least) : null;
  }

  private set(handle: number, [x, y]: Point): void {
    const now = this.now();
    const at: Point = [x, -y];
    if (now.kind === 'rectangle') {
      this.change({ ...now, corners: now.corners.map((corner, i) => (i === handle ? at : corner)) as unknown as Quad });
    } else {
      this.change({ ...now, ...(handle === 0 ? { from: at } : { to: at }) });
    }
  }
}

/** Where the handles begin: well inside the picture, so that each is seen. */
export function startSize(kind: Straightening['kind'], width: number, height: number): Straightening {
  const [left, right, top, bottom] = [0.15 * width, 0.85 * width, 0.15 * height, 0.85 * height];
  if (kind === 'length') {
    return { kind, from: [left, height / 2], to: [right, height / 2], length: 0 };
  }
  return {
    kind,
    corners: [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
    width: 0,
    height: 0,
  };
}
