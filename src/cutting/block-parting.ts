/** How a group of a block's pieces comes apart into two that are joined by one seam. */
import { cross, distance, subtract } from '../shape/point.ts';
import type { Joint } from './joint.ts';

export interface Parting {
  readonly kind: 'straight' | 'ring' | 'curve' | 'bent';
  /** Two groups, each of which hangs together. */
  readonly parts: readonly [readonly number[], readonly number[]];
  /** Where they meet. */
  readonly joints: readonly Joint[];
}

/** A ring is opened at any two of its seams; in groups with more seams than this only whole lines are tried. */
const MOST_SEAMS = 120;
const ALL_ROUND = 2 * Math.PI - 0.01;

export class BlockParting {
  private readonly count: number;
  private readonly joints: readonly Joint[];
  private readonly tolerance: number;
  private readonly keyOf: (group: readonly number[]) => string;

  /** @param keyOf the same for groups that are alike */
  constructor(count: number, joints: readonly Joint[], tolerance: number, keyOf: (group: readonly number[]) => string) {
    this.count = count;
    this.joints = joints;
    this.tolerance = tolerance;
    this.keyOf = keyOf;
  }

  /**
   * @param group two pieces or more that hang together
   * @param before how what it is a part of was parted, if it was: cuts side by side make rows
   */
  part(group: readonly number[], before: Parting | null): Parting {
    const within = this.jointsIn(group);
    const along = [...new Set(within.map((joint) => joint.course))].flatMap((course) =>
      this.alongCourse(group, within, course),
    );
    const whole = along.filter(({ rank }) => rank <= STRAIGHT);
    const found = whole.length > 0 ? whole : [...this.opened(group, within), ...along];
    const all = found.length > 0 ? found : this.pieceByPiece(group, within);
    return this.best(all, before);
  }

  /** The lots in which some pieces hang together. */
  lots(group: readonly number[], joints = this.jointsIn(group)): readonly (readonly number[])[] {
    const lot = Array.from({ length: this.count }, (_, index) => index);
    const root = (index: number): number => {
      let top = index;
      while (lot[top] !== top) top = lot[top]!;
      lot[index] = top;
      return top;
    };
    for (const { pieces } of joints) {
      const [a, b] = [root(pieces[0]), root(pieces[1])];
      lot[Math.max(a, b)] = Math.min(a, b);
    }
    const lots = new Map<number, number[]>();
    for (const index of group) {
      const top = root(index);
      lots.set(top, [...(lots.get(top) ?? []), index]);
    }
    return [...lots.values()];
  }

  private jointsIn(group: readonly number[]): readonly Joint[] {
    const is = new Set(group);
    return this.joints.filter(({ pieces }) => is.has(pieces[0]) && is.has(pieces[1]));
  }

  /** Along one straight line or one circle. */
  private alongCourse(group: readonly number[], within: readonly Joint[], course: number): readonly Choice[] {
    const lots = this.lots(
      group,
      within.filter((joint) => joint.course !== course),
    );
    if (lots.length < 2) {
      return [];
    }
    const arcs = within.flatMap((joint) => (joint.course === course && joint.arc !== null ? [joint.arc] : []));
    const round = arcs.reduce((sum, arc) => sum + Math.abs(arc.sweep), 0);
    const radius = arcs[0]?.radius ?? 0;
    const rank = arcs.length === 0 ? STRAIGHT : round >= ALL_ROUND ? WHOLE_CIRCLE - radius : CURVE;
    const kind = arcs.length === 0 ? 'straight' : 'curve';
    return (lots.length === 2 ? lots.slice(1) : lots).flatMap((lot) => this.choice(kind, rank, group, lot, within));
  }

  /** Where dropping two seams opens a ring; or, if they meet at the middle, parts a fan. */
  private opened(group: readonly number[], within: readonly Joint[]): readonly Choice[] {
    const seams = straightSeams(within);
    if (seams.length > MOST_SEAMS) {
      return [];
    }
    return seams.flatMap((one, i) =>
      seams.slice(i + 1).flatMap((other) => {
        const lots = this.lots(
          group,
          within.filter((joint) => !one.includes(joint) && !other.includes(joint)),
        );
        if (lots.length !== 2) {
          return [];
        }
        const apart = ends(one).every((a) => ends(other).every((b) => distance(a, b) > this.tolerance));
        return this.choice(apart ? 'ring' : 'bent', apart ? RING : BENT, group, lots[1]!, within);
      }),
    );
  }

  private pieceByPiece(group: readonly number[], within: readonly Joint[]): readonly Choice[] {
    return group.flatMap((piece) => {
      const courses = new Set(within.flatMap(({ pieces, course }) => (pieces.includes(piece) ? [course] : [])));
      return this.choice('bent', BENT + courses.size, group, [piece], within);
    });
  }

  private choice(
    kind: Parting['kind'],
    rank: number,
    group: readonly number[],
    part: readonly number[],
    within: readonly Joint[],
  ): readonly Choice[] {
    const is = new Set(part);
    const rest = group.filter((index) => !is.has(index));
    if (this.lots(rest, this.jointsIn(rest)).length !== 1) {
      return [];
    }
    const joints = within.filter(({ pieces }) => is.has(pieces[0]) !== is.has(pieces[1]));
    return [{ rank, parting: { kind, parts: [rest, part], joints } }];
  }
  private best(choices: readonly Choice[], before: Parting | null): Parting {
    const least = Math.min(...choices.map(({ rank }) => rank));
    const ranked = choices
      .filter(({ rank }) => rank <= least + 1e-9)
      .map(({ parting }) => ({ parting, merits: this.merits(parting, before) }));
    return ranked.reduce((first, each) => (isBetter(each.merits, first.merits) ? each : first)).parting;
  }

  /** Equal parts first; about the centre parts that are whole pairs; elsewhere rows, level ones first; then halves. */
  private merits(parting: Parting, before: Parting | null): readonly number[] {
    const [a, b] = parting.parts;
    const alike = this.keyOf(a) === this.keyOf(b);
    const isRadial = parting.kind === 'straight' && parting.joints.every((joint) => this.pointsAtCentre(joint));
    const odd = isRadial && !alike ? (a.length % 2) + (b.length % 2) : 0;
    const isRow = before !== null && sideBySide(parting, before);
    const straight = parting.kind === 'straight' && !isRadial;
    const isLevel = straight && parting.joints.every(({ from, to }) => Math.abs(to[1] - from[1]) <= this.tolerance);
    const isUpright = straight && parting.joints.every(({ from, to }) => Math.abs(to[0] - from[0]) <= this.tolerance);
    const again = before !== null && this.keyOf(b) === this.keyOf(before.parts[1]);
    return [
      alike ? 0 : 1,
      odd,
      isRow ? 0 : 1,
      isLevel ? 0 : isUpright ? 1 : 2,
      parting.kind === 'bent' && !again ? 1 : 0,
      Math.abs(a.length - b.length),
    ];
  }

  private pointsAtCentre({ from, to }: Joint): boolean {
    return Math.abs(cross(from, to)) / distance(from, to) <= this.tolerance;
  }
}

/** Whether two straight partings run along lines that are parallel. */
function sideBySide(one: Parting, other: Parting): boolean {
  const [a, b] = [one, other].map(({ joints }) => joints[0]!);
  const across = cross(subtract(a!.to, a!.from), subtract(b!.to, b!.from));
  return one.kind === 'straight' && other.kind === 'straight' && Math.abs(across) < 1e-3 * a!.size * b!.size;
}

interface Choice {
  /** The less, the sooner. */
  readonly rank: number;
  readonly parting: Parting;
}

/** The widest circle comes off first, so that it is sewn last. */
const WHOLE_CIRCLE = 0;
const STRAIGHT = 1;
const RING = 2;
const CURVE = 3;
const BENT = 4;

const isBetter = (a: readonly number[], b: readonly number[]): boolean => {
  const differing = a.findIndex((value, i) => value !== b[i]);
  return differing >= 0 && a[differing]! < b[differing]!;
};

/** The joints of each two pieces that meet along one straight line only. */
function straightSeams(joints: readonly Joint[]): readonly (readonly Joint[])[] {
  const seams = new Map<string, Joint[]>();
  for (const joint of joints) {
    const key = `${Math.min(...joint.pieces)},${Math.max(...joint.pieces)}`;
    seams.set(key, [...(seams.get(key) ?? []), joint]);
  }
  return [...seams.values()].filter((seam) =>
    seam.every(({ arc, course }) => arc === null && course === seam[0]!.course),
  );
}

const ends = (seam: readonly Joint[]) => seam.flatMap(({ from, to }) => [from, to]);
