/** Units that are one another turned, or mirrored and turned, about the centre: told once, with how they repeat. */
import type { Repeat } from '../quilt/quilt.ts';
import { modulo } from '../shape/point.ts';
import { type FoundPatch, type Motion, motionsOnto, moveFound } from './found-patch.ts';
import { meanPatches, type UnitCopy } from './mean-patches.ts';
import type { PieceableUnit } from './split-units.ts';

export interface NamedUnit extends PieceableUnit {
  /** '' where the drawing gives none. */
  readonly name: string;
  /** null where the drawing gives none. */
  readonly letter: string | null;
}

export interface RepeatedUnit extends NamedUnit {
  readonly repeat: Repeat;
}

/** Beyond so many units each is told by itself. */
const MOST_COMPARED = 600;

/** @param within how far corners may part */
export function findRepeats(units: readonly NamedUnit[], within: number): readonly RepeatedUnit[] {
  const kinds: { base: NamedUnit; copies: { unit: NamedUnit; motion: Motion }[] }[] = [];
  for (const unit of units) {
    let found = false;
    for (const kind of units.length <= MOST_COMPARED ? kinds : []) {
      const motion = motionBetween(kind.base, unit, within);
      if (motion === null) continue;
      kind.copies.push({ unit, motion });
      found = true;
      break;
    }
    if (!found) kinds.push({ base: unit, copies: [{ unit, motion: { mirrored: false, degrees: 0 } }] });
  }
  return kinds.flatMap(({ base, copies }) => {
    const farthest = Math.max(...base.patches.map(({ middle }) => Math.hypot(...middle)), within);
    const slack = ((4 * within) / farthest) * (180 / Math.PI);
    const all = copies.map(({ unit, motion }) => ({ unit: unit.patches, motion }));
    const units = copies.map(({ unit }) => unit);
    return repeatsOf(named(units, base), all, { degrees: slack, within });
  });
}

/** The first copy, with the name and the numbers that any of the copies has. */
function named(copies: readonly NamedUnit[], base: NamedUnit): NamedUnit {
  return { ...base, name: base.name || (copies.find(({ name }) => name !== '')?.name ?? '') };
}

function motionBetween(a: NamedUnit, b: NamedUnit, within: number): Motion | null {
  const area = (unit: NamedUnit): number => unit.patches.reduce((sum, patch) => sum + patch.area, 0);
  if (a.letter !== b.letter || a.paper !== b.paper) return null;
  if (a.patches.length !== b.patches.length || Math.abs(area(a) - area(b)) > 0.02 * area(a)) return null;
  return motionsOnto(a.patches, b.patches, false, within) ?? motionsOnto(a.patches, b.patches, true, within);
}

interface Slack {
  /** By which turns may be off. */
  readonly degrees: number;
  /** By which corners may be. */
  readonly within: number;
}

function repeatsOf(base: NamedUnit, copies: readonly UnitCopy[], slack: Slack): readonly RepeatedUnit[] {
  const same = copies.filter(({ motion }) => !motion.mirrored);
  const other = copies.filter(({ motion }) => motion.mirrored);
  const both = other.length === same.length ? mirroredRepeat(base, same, other, slack) : null;
  if (both !== null) return [both];
  const plain = turnsOf(base, same, slack);
  if (other.length === 0) return plain;
  const reflected = other.map(({ unit, motion }) => ({ unit, motion: { mirrored: false, degrees: motion.degrees } }));
  return [...plain, ...turnsOf(moveUnit(base, { mirrored: true, degrees: 0 }), reflected, slack)];
}

/** Equal turns as one repeat; others each by itself. */
function turnsOf(base: NamedUnit, copies: readonly UnitCopy[], slack: Slack): readonly RepeatedUnit[] {
  const degrees = copies.map(({ motion }) => motion.degrees);
  const steps = equalSteps(degrees, slack.degrees);
  if (steps === null) {
    return copies.map(({ motion }) => ({ ...moveUnit(base, motion), repeat: { count: 1 } }));
  }
  if (steps.count === 1) return [{ ...moveUnit(base, { mirrored: false, degrees: steps.from }), repeat: { count: 1 } }];
  const mean = { ...base, patches: meanPatches(base.patches, evened(copies, steps), slack.within) };
  const stands = upright(mean);
  const from = nearRay(steps.from + stands);
  return [
    { ...moveUnit(mean, { mirrored: false, degrees: -stands }), repeat: repeatOf(steps.count, from, steps.over, 'no') },
  ];
}

/** The copies with their turns as even as the steps say. */
function evened(copies: readonly UnitCopy[], { from, count, over }: Steps): readonly UnitCopy[] {
  const step = over / count;
  return copies.map(({ unit, motion }) => {
    const degrees = from + Math.round((motion.degrees - from) / step) * step;
    return { unit, motion: { ...motion, degrees } };
  });
}

interface Steps {
  readonly from: number;
  readonly count: number;
  readonly over: number;
}

/** Turns that lie evenly, all the way round or over a part of it; null where they do not. */
function equalSteps(degrees: readonly number[], slack: number): Steps | null {
  const sorted = degrees.map((each) => tidyTurn(modulo(each, 360))).sort((a, b) => a - b);
  const count = sorted.length;
  if (count === 1) return { from: sorted[0]!, count, over: 360 };
  const gaps = sorted.map((each, i) => modulo(sorted[(i + 1) % count]! - each, 360) || 360);
  const widest = gaps.indexOf(Math.max(...gaps));
  const inner = gaps.filter((_, i) => i !== widest);
  const step = inner.reduce((sum, gap) => sum + gap, 0) / inner.length;
  if (inner.some((gap) => Math.abs(gap - step) > slack)) return null;
  // All the way round, the drawn first copy is the first; over a part, the one after the gap.
  if (Math.abs(gaps[widest]! - step) <= slack) return { from: tidyTurn(modulo(degrees[0]!, 360)), count, over: 360 };
  return { from: sorted[(widest + 1) % count]!, count, over: Math.round(step * count * 1e6) / 1e6 };
}

const tidyTurn = (degrees: number): number => {
  const rounded = Math.round(degrees * 1e6) / 1e6;
  return rounded >= 360 ? 0 : rounded;
};

/**
 * As many mirrored as not. Where the two kinds take turns evenly they alternate; else each stands beside a mirrored one. The
 * unit is turned so that its own mirror image about the vertical lies where the drawing has one.
 */
function mirroredRepeat(
  base: NamedUnit,
  same: readonly UnitCopy[],
  other: readonly UnitCopy[],
  slack: Slack,
): RepeatedUnit | null {
  const [plain, mirrored] = [same, other].map((copies) =>
    equalSteps(
      copies.map(({ motion }) => motion.degrees),
      slack.degrees,
    ),
  );
  if (!plain || !mirrored || Math.abs(plain.over - mirrored.over) > slack.degrees) return null;
  const stands = nearRay(upright(base));
  const step = plain.over / plain.count;
  // How far the first mirrored one stands beyond the first that is not, once both are turned upright.
  const apart = modulo(mirrored.from - stands - (plain.from + stands), step);
  const alternate = plain.over === 360 && Math.abs(apart - step / 2) <= slack.degrees;
  // Mirrored ones lie half a step beyond where the others do.
  const exact = alternate ? { ...mirrored, from: plain.from + 2 * stands + step / 2 } : mirrored;
  const copies = [...evened(same, plain), ...evened(other, exact)];
  const mean = { ...base, patches: meanPatches(base.patches, copies, slack.within) };
  const exactly = upright(mean);
  if (alternate) {
    return {
      ...moveUnit(mean, { mirrored: false, degrees: -exactly }),
      repeat: repeatOf(2 * plain.count, nearRay(plain.from + exactly), 360, 'alternate'),
    };
  }
  // Turned so that the two mirror each other in the vertical, then set back.
  const half = (apart > step / 2 ? apart - step : apart) / 2;
  return {
    ...moveUnit(mean, { mirrored: false, degrees: -exactly - half }),
    repeat: repeatOf(plain.count, nearRay(plain.from + exactly + half), plain.over, 'also'),
  };
}

function repeatOf(count: number, from: number, over: number, mirrored: 'no' | 'also' | 'alternate'): Repeat {
  const start = tidyTurn(modulo(from, 360));
  return {
    count,
    ...(start === 0 ? {} : { from: start }),
    ...(over === 360 ? {} : { over }),
    ...(mirrored === 'no' ? {} : { mirrored }),
  };
}

/** How far a unit's middle stands from up, in degrees. */
function upright({ patches }: NamedUnit): number {
  const total = patches.reduce((sum, { area }) => sum + area, 0);
  const x = patches.reduce((sum, { middle, area }) => sum + middle[0] * area, 0) / total;
  const y = patches.reduce((sum, { middle, area }) => sum + middle[1] * area, 0) / total;
  return Math.hypot(x, y) < 1e-6 ? 0 : (Math.atan2(-x, y) * 180) / Math.PI;
}

/** A whole quarter degree, where that is meant. */
function nearRay(degrees: number): number {
  const ray = Math.round(degrees * 4) / 4;
  return Math.abs(ray - degrees) <= 0.01 ? ray : degrees;
}

function moveUnit<Moved extends NamedUnit>(unit: Moved, motion: Motion): Moved {
  if (!motion.mirrored && motion.degrees === 0) return unit;
  return { ...unit, patches: unit.patches.map((patch): FoundPatch => moveFound(patch, motion)) };
}
