/** Mouse, pen and fingers on a board: clicks, drags, pushing, pinching, and a finger that rests to aim. */
import { distance, type Point, subtract } from '../../shape/point.ts';
import type { BoardHand } from './board-hand.ts';
import { fromBoard, push, type Sight } from './sight.ts';

/** What the pointers need of their board. */
export interface PointedBoard {
  readonly hand: BoardHand | null;
  sight: Sight | null;
  /** Where an event happened, in board pixels. */
  place(event: MouseEvent): Point;
  /** How near is near enough, in the plane's unit. */
  reach(kind: string): number;
  zoomBy(by: number, at: Point): void;
  requestUpdate(): void;
}

/** Pixels that a press may wander and still be a click. What is held follows a mouse sooner: flat arcs are pulled by little. */
const STILL = 4;
const STILL_HELD = 1.5;
/** Milliseconds that a finger rests before it aims instead of pushing the picture. */
const REST = 350;

interface Press {
  readonly id: number;
  readonly from: Point;
  readonly grabbed: boolean;
  readonly finger: boolean;
  moved: boolean;
  /** A finger that rested: where it is lifted is where it clicks. */
  aims: boolean;
  now: Point;
}

export class BoardPointers {
  private readonly board: PointedBoard;
  private readonly down = new Map<number, Point>();
  private press: Press | null = null;
  private resting = 0;

  constructor(board: PointedBoard) {
    this.board = board;
  }

  /** Where a finger hides what it does, in board pixels; null where none does. */
  get hidden(): Point | null {
    const { press } = this;
    return press?.finger && (press.aims || (press.grabbed && press.moved)) ? press.now : null;
  }

  /** The board is gone. */
  stop(): void {
    clearTimeout(this.resting);
  }

  onDown(event: PointerEvent): void {
    const { board, down } = this;
    const { sight, hand } = board;
    if (sight === null || hand === null || (event.pointerType === 'mouse' && event.button === 2)) return;
    const at = board.place(event);
    down.set(event.pointerId, at);
    clearTimeout(this.resting);
    if (down.size > 1) {
      // A second finger: what the first one held goes back, and both zoom.
      if (this.press?.grabbed) hand.drop(false);
      this.press = null;
      return;
    }
    const finger = event.pointerType === 'touch';
    const grabbed = event.button === 0 && hand.grab(fromBoard(sight, at), board.reach(event.pointerType));
    const press: Press = { id: event.pointerId, from: at, grabbed, finger, moved: false, aims: false, now: at };
    this.press = press;
    if (finger && !grabbed) this.resting = window.setTimeout(() => this.rest(press), REST);
  }

  private rest(press: Press): void {
    const { board } = this;
    if (this.press !== press || press.moved || board.sight === null) return;
    press.aims = true;
    board.hand?.hover(fromBoard(board.sight, press.now), board.reach('mouse'));
    board.requestUpdate();
  }

  onMove(event: PointerEvent): void {
    const { board, down, press } = this;
    const { sight, hand } = board;
    if (sight === null || hand === null) return;
    const at = board.place(event);
    const before = down.get(event.pointerId);
    if (before === undefined) {
      hand.hover(fromBoard(sight, at), board.reach(event.pointerType));
      board.requestUpdate();
      return;
    }
    if (down.size > 1) {
      this.pinch(sight, event.pointerId, before, at);
    } else if (press !== null) {
      const still = press.grabbed && event.pointerType === 'mouse' ? STILL_HELD : STILL;
      press.moved ||= distance(press.from, at) > still;
      if (!press.moved) return;
      this.drag(press, sight, hand, at, subtract(at, before), event.pointerType);
    }
    down.set(event.pointerId, at);
    board.requestUpdate();
  }

  private drag(press: Press, sight: Sight, hand: BoardHand, at: Point, step: Point, kind: string): void {
    const { board } = this;
    press.now = at;
    if (press.aims) {
      hand.hover(fromBoard(sight, at), board.reach('mouse'));
    } else if (press.grabbed) {
      hand.drag(fromBoard(sight, at), board.reach(kind));
    } else {
      board.sight = push(sight, step);
    }
  }

  private pinch(sight: Sight, id: number, before: Point, at: Point): void {
    const [, other] = [...this.down].find(([each]) => each !== id)!;
    const by = distance(at, other) / Math.max(1, distance(before, other));
    const middle: Point = [(at[0] + other[0]) / 2, (at[1] + other[1]) / 2];
    this.board.sight = push(sight, [(at[0] - before[0]) / 2, (at[1] - before[1]) / 2]);
    this.board.zoomBy(by, middle);
  }

  onUp(event: PointerEvent): void {
    const { board, press } = this;
    const { sight, hand } = board;
    this.down.delete(event.pointerId);
    clearTimeout(this.resting);
    if (sight === null || hand === null || press === null || press.id !== event.pointerId) return;
    this.press = null;
    if (press.grabbed) hand.drop(press.moved);
    if (press.aims) {
      // Under the glass she sees what she does, so the snapping is as fine as a mouse's.
      hand.click(fromBoard(sight, press.now), board.reach('mouse'));
    } else if (!press.moved && event.button === 0) {
      // Where it was pressed, not where it slipped to.
      hand.click(fromBoard(sight, press.from), board.reach(event.pointerType));
    }
    board.requestUpdate();
  }

  onCancel(event: PointerEvent): void {
    this.down.delete(event.pointerId);
    clearTimeout(this.resting);
    if (this.press?.grabbed) this.board.hand?.drop(false);
    this.press = null;
    this.board.requestUpdate();
  }
}
