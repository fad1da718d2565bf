/** A tracing under way: what is drawn, what is chosen, what the next click means. Knows no page. */
import { change, type History, redo, startHistory, undo } from '../../keep/history.ts';
import type { RoleSeed } from '../../quilt/drawn-block.ts';
import { closePatch, dropBegun, placeCorner, type Traced } from '../../quilt/tracing/draw-lines.ts';
import { type DrawnTracing, drawTracing, type TracingOptions } from '../../quilt/tracing/draw-tracing.ts';
import {
  deleteCorner,
  deleteLine,
  deletePatch,
  describePatch,
  type PatchWords,
} from '../../quilt/tracing/mend-lines.ts';
import { type Snap, snapTo } from '../../quilt/tracing/snap.ts';
import { EMPTY_TRACING, type TracedPatch, type Tracing } from '../../quilt/tracing/tracing.ts';
import type { Point } from '../../shape/point.ts';
import { copyPlaces } from './copy-places.ts';

export type Tool = 'draw' | 'choose' | 'centre';

export interface Chosen {
  readonly kind: 'corner' | 'line' | 'patch';
  readonly id: number;
}

export type TracerOptions = Pick<TracingOptions, 'sewing'> & {
  readonly name: string;
  readonly known: readonly RoleSeed[];
  /** How near two places must be to count as copies of one, in the quilt's unit. */
  readonly within: number;
};

export class Tracer {
  private history: History<Tracing>;
  private readonly changed: () => void;
  options: TracerOptions = { name: '', known: [], within: 0.1 };
  tool: Tool = 'draw';
  chosen: Chosen | null = null;
  /** The next line is an arc: its way is asked for, or is known. */
  arc: 'asked' | Point | null = null;
  /** Why the last click or key did nothing. */
  fault: string | null = null;
  /** What the last click or key did. */
  words = '';
  private result: {
    readonly of: Tracing;
    readonly options: TracerOptions;
    readonly drawn: DrawnTracing;
    readonly copies: readonly Point[];
  } | null = null;
  /** Of the patch that is closed next. */
  private described = { unit: 'A', role: 'Patches' };

  constructor(changed: () => void, tracing: Tracing = EMPTY_TRACING) {
    this.changed = changed;
    this.history = startHistory(tracing);
  }

  get tracing(): Tracing {
    return this.history.present;
  }

  get canUndo(): boolean {
    return this.history.past.length > 0;
  }

  get canRedo(): boolean {
    return this.history.future.length > 0;
  }

  /** The block as it would be now; worked out once for each change. */
  get drawn(): DrawnTracing {
    return this.worked().drawn;
  }

  /** Corners of the copies that stand about the centre. */
  get copies(): readonly Point[] {
    return this.worked().copies;
  }

  private worked(): NonNullable<Tracer['result']> {
    const { tracing, options } = this;
    if (this.result === null || this.result.options !== options || !addsOnly(this.result.of, tracing)) {
      const drawn = drawTracing(tracing, options);
      this.result = { of: tracing, options, drawn, copies: copyPlaces(tracing, drawn) };
    }
    return this.result;
  }

  snap(at: Point, within: number, but?: number): Snap {
    return snapTo(this.tracing, at, { within, copies: this.copies, ...(but === undefined ? {} : { but }) });
  }

  /** One step that can be undone, or the fault. */
  step(traced: Traced | Tracing, words: string): void {
    if ('fault' in traced) {
      this.fault = traced.fault;
    } else {
      this.fault = null;
      this.words = words;
      this.history = change(this.history, 'tracing' in traced ? traced.tracing : traced);
    }
    this.forgetGone();
    this.changed();
  }

  /** The next corner of the way round a patch. */
  place(at: Point, within: number): void {
    const { tracing } = this;
    if (this.arc === 'asked' && tracing.begun !== undefined) {
      this.arc = at;
      this.say('The arc passes here. Now the corner where it ends.');
      return;
    }
    const through = this.arc === null || this.arc === 'asked' ? undefined : this.arc;
    const snap = this.snap(at, within);
    this.goOn(placeCorner(tracing, snap, this.described, through), placed(snap));
  }

  close(): void {
    const through = this.arc === null || this.arc === 'asked' ? undefined : this.arc;
    this.goOn(closePatch(this.tracing, this.described, through), '');
  }

  /** What is closed by it is chosen, so that its role can be told at once. */
  private goOn(traced: Traced, words: string): void {
    const before = this.tracing.patches.length;
    if ('tracing' in traced && this.arc !== 'asked') this.arc = null;
    if ('tracing' in traced && traced.tracing.patches.length > before) {
      this.arc = null;
      this.chosen = { kind: 'patch', id: traced.tracing.patches.at(-1)!.id };
    }
    this.step(traced, words);
    const last = this.tracing.patches.at(-1);
    if (last !== undefined && this.tracing.patches.length > before) {
      this.say(`${words} Patch ${this.nameOf(last)} is closed.`.trim());
    }
  }

  /** "A2": its unit's letter and its number, in the sewing order once the block can be drawn, till then as closed. */
  nameOf(patch: TracedPatch): string {
    const { drawn, tracing } = this;
    const number = 'numbers' in drawn ? drawn.numbers.get(patch.id) : undefined;
    const place = tracing.patches.filter((each) => each.unit === patch.unit).indexOf(patch) + 1;
    return `${patch.unit}${number ?? patch.number ?? place}`;
  }

  askArc(): void {
    this.arc = this.arc === null ? 'asked' : null;
    this.say(
      this.arc === null
        ? 'The next line is straight.'
        : this.tracing.begun === undefined
          ? 'The first line will be an arc: set its first corner, then a place on its way, then its end.'
          : 'The next line is an arc: click a place on its way, then its end.',
    );
  }

  /** Gives up, one thing at a time: the arc, what is begun, what is chosen. False where there was nothing to give up. */
  escape(): boolean {
    if (this.arc !== null) {
      this.arc = null;
      this.say('The next line is straight.');
    } else if (this.tracing.begun !== undefined) {
      this.step(dropBegun(this.tracing), 'What was begun is given up.');
    } else if (this.chosen !== null || this.tool !== 'draw') {
      this.choose(null);
      this.tool = 'draw';
    } else {
      return false;
    }
    return true;
  }

  choose(chosen: Chosen | null): void {
    this.chosen = chosen;
    this.fault = null;
    this.changed();
  }

  setTool(tool: Tool): void {
    this.tool = tool;
    this.say(
      tool === 'draw'
        ? 'Clicks set corners.'
        : tool === 'choose'
          ? 'Clicks choose a corner, a line or a patch.'
          : 'Click the centre of the block.',
    );
  }

  markCentre(at: Point): void {
    this.tool = 'draw';
    this.step({ ...this.tracing, centre: at }, 'The centre is marked.');
  }

  deleteChosen(): void {
    const { chosen, tracing } = this;
    if (chosen === null) return;
    const take = { corner: deleteCorner, line: deleteLine, patch: deletePatch }[chosen.kind];
    this.chosen = null;
    this.step(take(tracing, chosen.id), `The ${chosen.kind} is deleted.`);
  }

  describe(id: number, words: PatchWords): void {
    const { unit, role } = { ...this.described, ...words };
    this.described = { unit: unit ?? this.described.unit, role: role ?? this.described.role };
    this.step(describePatch(this.tracing, id, words), 'Noted.');
  }

  undo(): void {
    this.history = undo(this.history);
    this.forgetGone();
    this.say('Taken back.');
  }

  redo(): void {
    this.history = redo(this.history);
    this.forgetGone();
    this.say('Done again.');
  }

  /** Another tracing in its place, with nothing to take back: the picture was straightened anew. */
  restart(tracing: Tracing): void {
    this.history = startHistory(tracing);
    this.forgetGone();
    this.changed();
  }

  say(words: string): void {
    this.fault = null;
    this.words = words;
    this.changed();
  }

  private forgetGone(): void {
    const { chosen, tracing } = this;
    if (chosen === null) return;
    const lists = { corner: tracing.corners, line: tracing.lines, patch: tracing.patches };
    if (!lists[chosen.kind].some((each) => each.id === chosen.id)) this.chosen = null;
    if (tracing.begun === undefined && this.arc !== null && this.arc !== 'asked') this.arc = null;
  }
}

/** Whether one tracing is the other with nothing but more corners and lines, as long as a patch is not closed. */
function addsOnly(before: Tracing, after: Tracing): boolean {
  const kept = <Part>(list: readonly Part[], longer: readonly Part[]): boolean =>
    list.every((part, i) => part === longer[i]);
  return (
    before.patches === after.patches &&
    before.units === after.units &&
    before.centre === after.centre &&
    kept(before.corners, after.corners) &&
    kept(before.lines, after.lines)
  );
}

/** What a click came upon. */
export function placed(snap: Snap): string {
  switch (snap.kind) {
    case 'corner':
      return 'On a corner that is there.';
    case 'middle':
      return 'On the middle of a line.';
    case 'line':
      return 'On a line.';
    case 'centre':
      return 'On the centre.';
    case 'copy':
      return 'On the corner of a copy.';
    default:
      return 'A new corner.';
  }
}
