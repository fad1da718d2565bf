/** The cross with which one draws by keyboard: moved finely, it clicks, takes hold and lets go like a pointer. */
import type { Point } from '../../shape/point.ts';
import type { BoardHand } from './board-hand.ts';
import { push, type Sight, toBoard } from './sight.ts';

export interface CursorBoard {
  readonly hand: BoardHand | null;
  sight: Sight | null;
  reach(kind: string): number;
  zoomBy(by: number): void;
  showAll(): void;
  say(words: string): void;
  /** Says what lies under the cursor, once it has come to rest. */
  saySoon(words: () => string): void;
}

const STEPS: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
/** Board pixels that an arrow key moves, alone and with Shift. */
const FINE = 1;
const COARSE = 20;
/** The cursor keeps so many pixels off the board's edge: the picture is pushed instead. */
const EDGE = 30;

export class BoardCursor {
  private readonly board: CursorBoard;
  /** In the true plane; null as long as no key has been used. */
  at: Point | null = null;
  held = false;

  constructor(board: CursorBoard) {
    this.board = board;
  }

  /** The pointer is used instead. */
  hide(): void {
    if (this.held) this.letGo(false);
    this.at = null;
  }

  /** Whether the key meant something here. */
  onKey(event: KeyboardEvent): boolean {
    const { sight, hand } = this.board;
    if (sight === null || hand === null) return false;
    const at = this.at ?? sight.middle;
    return this.ownKey(event, sight, hand, at) || hand.key(event, at, this.board.reach('mouse'));
  }

  private ownKey(event: KeyboardEvent, sight: Sight, hand: BoardHand, at: Point): boolean {
    if (event.ctrlKey || event.metaKey || event.altKey) return false;
    const step = STEPS[event.key];
    if (step !== undefined) {
      const size = (event.shiftKey ? COARSE : FINE) / sight.zoom;
      this.moveTo([at[0] + step[0] * size, at[1] + step[1] * size], sight, hand);
      return true;
    }
    switch (event.key) {
      case 'Enter':
      case ' ':
        this.at = at;
        if (this.held) this.letGo(true);
        else hand.click(at, this.board.reach('mouse'));
        return true;
      case 'm':
        this.takeOrLetGo(hand, at);
        return true;
      case 'Escape':
        if (!this.held) return false;
        this.letGo(false);
        this.board.say('Put back.');
        return true;
      case '+':
      case '=':
        this.board.zoomBy(1.5);
        return true;
      case '-':
        this.board.zoomBy(1 / 1.5);
        return true;
      case '0':
        this.board.showAll();
        return true;
      case ']':
      case '[': {
        const place = hand.leap(at, event.key === ']');
        if (place !== null) this.moveTo(place, sight, hand);
        return true;
      }
      default:
        return false;
    }
  }

  private takeOrLetGo(hand: BoardHand, at: Point): void {
    this.at = at;
    if (this.held) {
      this.letGo(true);
      this.board.say('Let go.');
      return;
    }
    this.held = hand.grab(at, this.board.reach('mouse'));
    this.board.say(
      this.held
        ? 'Held. Arrow keys move it, Enter lets go, Escape puts it back.'
        : 'Nothing here can be taken hold of: go to a corner or to the middle of a line, with the square brackets.',
    );
  }

  private letGo(made: boolean): void {
    this.board.hand?.drop(made);
    this.held = false;
  }

  /** The cursor goes there, and the sight with it where it would leave the board. */
  private moveTo(to: Point, sight: Sight, hand: BoardHand): void {
    const { board } = this;
    this.at = to;
    const [x, y] = toBoard(sight, to);
    const shift: Point = [inward(x, sight.width), inward(y, sight.height)];
    if (shift[0] !== 0 || shift[1] !== 0) board.sight = push(sight, shift);
    if (this.held) hand.drag(to, board.reach('mouse'));
    else hand.hover(to, board.reach('mouse'));
    board.saySoon(() => hand.wordsAt(to, board.reach('mouse')));
  }
}

/** How far what lies near the edge, or beyond it, is pushed back onto the board. */
function inward(value: number, size: number): number {
  if (value >= EDGE && value <= size - EDGE) return 0;
  const beyond = value < EDGE ? EDGE - value : size - EDGE - value;
  // A little past the edge a nudge is enough; a leap beyond it brings the place to the middle.
  return Math.abs(beyond) > EDGE ? size / 2 - value : beyond;
}
