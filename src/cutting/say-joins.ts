/** The joining of a block and what is amiss with its drawing, in words. */
import type { DrawingFault } from './check-drawing.ts';
import type { JoinGroup, JoinOrder, JoinStep } from './join-order.ts';

type Write = (length: number) => string;

/** Steps that follow one another and add the same piece again and again are told once. */
export interface ToldJoin {
  readonly step: JoinStep;
  /** "Sew A to B: 8 times." */
  readonly what: string;
  /** How the seam is sewn and pressed. */
  readonly how: string;
}

export function tellJoins({ steps }: JoinOrder, write: Write): readonly ToldJoin[] {
  const told: { step: JoinStep; again: number }[] = [];
  for (const step of steps) {
    const last = told.at(-1);
    if (last !== undefined && addsTheSame(last.step, step)) {
      told[told.length - 1] = { step, again: last.again + 1 };
    } else {
      told.push({ step, again: 1 });
    }
  }
  return told.map(({ step, again }) => ({ step, what: sayWhat(step, again), how: sayHow(step, write) }));
}

/** One piece after another set into what is there. */
function addsTheSame(before: JoinStep, step: JoinStep): boolean {
  const [one, other] = [before, step].map(({ parts }) => parts.at(-1)!);
  return (
    before.kind === 'bent' &&
    step.kind === 'bent' &&
    one!.pieces.length === 1 &&
    other!.pieces.length === 1 &&
    one!.pieces[0]!.name === other!.pieces[0]!.name
  );
}

function sayWhat(step: JoinStep, again: number): string {
  const { parts, times, makes, kind } = step;
  const often = times > 1 ? `, ${times} times` : '';
  if (kind === 'bent' && parts.at(-1)!.pieces.length === 1) {
    const { name } = parts.at(-1)!.pieces[0]!;
    return again > 1 ? `Set in ${name}, one after another, ${again} times` : `Set in ${name}${often}`;
  }
  const made = nameOf(makes);
  const makesWords =
    made === null || kind === 'curve' ? '' : `: ${times > 1 ? `${times} ${plural(made)}` : `the ${made}`}`;
  const keys = new Set(parts.map(({ key }) => key));
  if (parts.length === 2 && keys.size === 1) {
    return `Sew two ${groupWords(parts[0]!, true)} together${often}${makesWords}`;
  }
  const words = parts.map((part) => groupWords(part, false));
  const joined = parts.length === 2 ? `${words[0]} to ${words[1]}` : `a row of ${words.join(', ')}`;
  return `Sew ${joined}${often}${makesWords}`;
}

/** How the seam of a join is sewn and pressed: practice. */
export function sayHow({ kind, size, points, parts }: JoinStep, write: Write): string {
  const match =
    points.length === 0 ? '' : `; ${points.length === 1 ? 'one point' : `${points.length} points`} to match`;
  switch (kind) {
    case 'straight':
      return parts.length > 2
        ? `${parts.length - 1} straight seams side by side, ${write(size)} together${match}. Press them open.`
        : `A straight seam, ${write(size)}${match}. Press it open.`;
    case 'ring':
      return `Two straight seams close the ring, ${write(size)} together${match}. Press them open.`;
    case 'curve':
      return `A curved seam, ${write(size)}${match}. Pin it at the quarters first, then between; press it to the side where it lies flat.`;
    case 'bent':
      return `A seam that turns a corner, ${write(size)}${match}. Stop one allowance before the end of each stretch, then sew on round the corner.`;
  }
}

/** "half", "quarter", "round"; null where it is no such part. */
function nameOf({ ofRound, pieces }: JoinGroup): string | null {
  const names: Readonly<Record<number, string>> = { 1: 'round', 2: 'half', 3: 'third', 4: 'quarter', 8: 'eighth' };
  return pieces.length < 3 || ofRound === null ? null : (names[ofRound] ?? null);
}

const plural = (word: string): string => (word === 'half' ? 'halves' : `${word}s`);

function groupWords(group: JoinGroup, many: boolean): string {
  const { pieces } = group;
  const names = pieces.map(({ name, mirrored }) => (mirrored ? `${name} mirrored` : name));
  if (pieces.length === 1) {
    return many ? `${names[0]} pieces` : names[0]!;
  }
  if (pieces.length === 2) {
    const pair = names[0] === names[1] ? `of ${names[0]}` : names.join(' with ');
    return many ? `pairs ${pair}` : `the pair ${pair}`;
  }
  const part = nameOf(group);
  const kinds = [...new Set(pieces.map(({ name }) => name))].join(', ');
  if (part !== null) {
    return many ? `${plural(part)} (${kinds})` : `the ${part} (${kinds})`;
  }
  return many ? `groups of ${pieces.length} (${kinds})` : `the group of ${pieces.length} (${kinds})`;
}

/** @param write for lengths, finely: faults are small */
export function sayDrawingFault(fault: DrawingFault, write: Write): string {
  const often = fault.times > 1 ? ` (${fault.times} places alike)` : '';
  switch (fault.kind) {
    case 'turn': {
      const off = Math.round((fault.degrees - 360) * 10) / 10;
      return `The angles round the centre come to ${Math.round(fault.degrees * 10) / 10}° and not to a full turn: ${Math.abs(off)}° too ${off > 0 ? 'much' : 'little'}.`;
    }
    case 'lengths':
      return `${fault.names[0]} and ${fault.names[1]} are joined along sides of ${write(fault.sizes[0])} and ${write(fault.sizes[1])}, which differ by ${write(Math.abs(fault.sizes[0] - fault.sizes[1]))}${often}.`;
    case 'points':
      return `A corner of ${fault.names[0]} misses one of ${fault.names[1]} by ${write(fault.apart)}${often}.`;
    case 'gap':
      return `Between ${fault.names[0]} and ${fault.names[1]} there is a gap of up to ${write(fault.apart)}${often}.`;
    case 'hole':
      return `Something is left open inside${fault.times > 1 ? ` in ${fault.times} places` : ''}: nothing of the block lies there.`;
    case 'overlap':
      return `${fault.names[0]} and ${fault.names[1]} lie over one another${often}.`;
  }
}
