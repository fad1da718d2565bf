/**
 * In which order the pieces of a block are joined. Thought from the finished block backwards: it comes apart along a whole circle,
 * else along one straight line, else where a ring opens at two seams, else along a curve, else piece by piece round corners; each
 * part again, equal parts before unequal ones and halves before lopsided parts, so that what is sewn is pairs, quarters, halves.
 */
import type { Unit } from '../quilt/quilt.ts';
import { outlineCentroid } from '../shape/outline-measures.ts';
import { add, cross, distance, dot, modulo, type Point, scale, subtract } from '../shape/point.ts';
import { BlockParting, type Parting } from './block-parting.ts';
import { type BlockPiece, blockPieces } from './block-pieces.ts';
import { type Joint, jointsOf } from './joint.ts';
import { usualTolerance } from './sewing-unit.ts';

export interface JoinStep {
  /** straight: along one line. ring: at two straight seams that close a ring. curve: along one circle. bent: round corners. */
  readonly kind: Parting['kind'];
  /** What is joined, two groups, or a row of more in their order; of all that are alike, the first. */
  readonly parts: readonly JoinGroup[];
  readonly makes: JoinGroup;
  /** How often one block needs it. */
  readonly times: number;
  /** Length of the seam, all its stretches together. */
  readonly size: number;
  /** Places along the seam where seams end on both sides and must meet. */
  readonly points: readonly Point[];
  readonly joints: readonly Joint[];
}

export interface JoinGroup {
  /** Groups that are alike but for a turn about the centre have the same. */
  readonly key: string;
  readonly pieces: readonly BlockPiece[];
  /** How many groups like it make up the round that it belongs to: 2 for halves, 1 for the round itself; null where none do. */
  readonly ofRound: number | null;
}

export interface JoinOrder {
  /** In the order of sewing. */
  readonly steps: readonly JoinStep[];
  /** Where the pieces do not all meet, the first of each lot that hangs together; else empty. */
  readonly apart: readonly BlockPiece[];
}

/** @param units as unitsOf gives them; their outlines must be sound */
export function joinOrder(units: readonly Unit[], tolerance?: number): JoinOrder {
  const pieces = blockPieces(units);
  const finest = units.map((unit) => usualTolerance(unit.patches.map((patch) => patch.outline)));
  const within = tolerance ?? Math.min(...finest);
  return new Joiner(pieces, jointsOf(pieces, within), within).order();
}

interface Part {
  readonly key: string;
  readonly group: readonly number[];
}

interface Known {
  readonly group: readonly number[];
  readonly round: number;
  /** null for a single piece. */
  readonly kind: Parting['kind'] | null;
  readonly joints: readonly Joint[];
  readonly parts: readonly Part[];
  times: number;
}

class Joiner {
  private readonly pieces: readonly BlockPiece[];
  private readonly tolerance: number;
  private readonly parter: BlockParting;
  /** In the order of sewing. */
  private readonly known = new Map<string, Known>();

  constructor(pieces: readonly BlockPiece[], joints: readonly Joint[], tolerance: number) {
    this.pieces = pieces;
    this.tolerance = tolerance;
    this.parter = new BlockParting(pieces.length, joints, tolerance, (group) => this.keyOf(group));
  }

  order(): JoinOrder {
    const lots = this.parter.lots(this.pieces.map((_, index) => index));
    for (const lot of lots) {
      this.visit(lot, lot.length, null);
    }
    this.makeRows();
    const steps = [...this.known.values()].flatMap((known) =>
      known.kind === null ? [] : [this.step(known, known.kind)],
    );
    return { steps, apart: lots.length > 1 ? lots.map((lot) => this.pieces[lot[0]!]!) : [] };
  }

  /** Takes a group apart, unless one like it has been; the parts are known before the whole. @param round pieces in its round */
  private visit(group: readonly number[], round: number, before: Parting | null): string {
    const key = this.keyOf(group);
    if (this.known.has(key)) {
      this.again(key);
      return key;
    }
    const parting = group.length === 1 ? null : this.parter.part(group, before);
    const isRound = parting?.kind === 'straight' || parting?.kind === 'ring';
    const parts = (parting?.parts ?? []).map((part) => ({
      key: this.visit(part, isRound ? round : part.length, parting),
      group: part,
    }));
    this.known.set(key, { group, round, kind: parting?.kind ?? null, joints: parting?.joints ?? [], parts, times: 1 });
    return key;
  }

  private again(key: string): void {
    const known = this.known.get(key)!;
    known.times++;
    for (const part of known.parts) {
      this.again(part.key);
    }
  }

  /** Joins along lines side by side, of which the one makes nothing but a part of the other, are one row. */
  private makeRows(): void {
    for (const [key, known] of this.known) {
      const across = acrossOf(known);
      const within = known.parts.filter((part) => across !== null && this.isInRow(part, known, across));
      if (across !== null && within.length > 0) {
        const made = within.map((part) => this.known.get(part.key)!);
        const parts = known.parts.flatMap((part) => (within.includes(part) ? this.known.get(part.key)!.parts : [part]));
        const place = ({ group }: Part): number => dot(across, this.middleOf(group));
        const joints = [...known.joints, ...made.flatMap((each) => each.joints)];
        this.known.set(key, { ...known, joints, parts: parts.sort((a, b) => place(a) - place(b)) });
        for (const part of within) {
          this.known.delete(part.key);
        }
      }
    }
  }

  /** A part that is made for this alone, by joins side by side with its own, and that meets the others at one of its ends. */
  private isInRow({ key, group }: Part, known: Known, across: Point): boolean {
    const made = this.known.get(key)!;
    const side = acrossOf(made);
    const once = known.parts.filter((part) => part.key === key).length === 1 && made.times === known.times;
    if (!once || side === null || Math.abs(cross(across, side)) > 1e-3) {
      return false;
    }
    const meeting = new Set(known.joints.flatMap(({ pieces }) => pieces).filter((piece) => group.includes(piece)));
    return made.parts.filter((part) => part.group.some((piece) => meeting.has(piece))).length === 1;
  }

  private middleOf(group: readonly number[]): Point {
    const middles = group.flatMap((index) =>
      this.pieces[index]!.patches.map(({ outline }) => outlineCentroid(outline)),
    );
    return scale(middles.reduce(add), 1 / middles.length);
  }

  private step(known: Known, kind: Parting['kind']): JoinStep {
    const { joints, times, group, parts } = known;
    return {
      kind,
      parts: parts.map((part) => this.groupOf(part.group, this.known.get(part.key)!)),
      makes: this.groupOf(group, known),
      times,
      size: joints.reduce((sum, joint) => sum + joint.size, 0),
      points: this.meetings(joints),
      joints,
    };
  }

  private groupOf(group: readonly number[], { times, round }: Known): JoinGroup {
    return {
      key: this.keyOf(group),
      pieces: group.map((index) => this.pieces[index]!),
      ofRound: group.length * times === round ? times : null,
    };
  }

  /** What the pieces are, and how each is turned as seen from one of them. */
  private keyOf(group: readonly number[]): string {
    const all = group.map((index) => {
      const { name, mirrored, turn } = this.pieces[index]!;
      return { name: mirrored ? `${name}'` : name, turn };
    });
    const least = all.map(({ name }) => name).sort()[0];
    const seenFrom = (base: number): string =>
      all
        .map(({ name, turn }) => `${name}@${(Math.round(modulo(turn - base, 360) * 1e3) / 1e3) % 360}`)
        .sort()
        .join(' ');
    const views = all.filter(({ name }) => name === least).map(({ turn }) => seenFrom(turn));
    return views.sort()[0]!;
  }

  /** Where two stretches of the seam end and both sides go on with another patch. */
  private meetings(joints: readonly Joint[]): readonly Point[] {
    const places: { readonly at: Point; readonly patches: readonly (readonly [number, number])[] }[] = [];
    for (const { from, to, patches } of joints) {
      for (const at of [from, to]) {
        const found = places.findIndex((place) => distance(place.at, at) <= 2 * this.tolerance);
        const before = places[found];
        if (before === undefined) {
          places.push({ at, patches: [patches] });
        } else {
          places[found] = { at: before.at, patches: [...before.patches, patches] };
        }
      }
    }
    return places
      .filter(({ patches }) =>
        patches.some((one) => patches.some((other) => one.every((patch) => !other.includes(patch)))),
      )
      .map(({ at }) => at);
  }
}

/** Square to the line of a straight join; null for others. */
function acrossOf({ kind, joints }: Known): Point | null {
  if (kind !== 'straight') {
    return null;
  }
  const { from, to } = joints[0]!;
  const [x, y] = scale(subtract(to, from), 1 / distance(from, to));
  // One way for all lines that lie side by side, whichever way they were found: rows are told from the left or from the top.
  return Math.abs(y) > 1e-6 ? [Math.abs(y), y > 0 ? -x : x] : [0, -1];
}
