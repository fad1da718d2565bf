import type { Unit } from '../quilt/quilt.ts';
import type { Outline } from '../shape/outline.ts';
import type { RepeatedUnit } from './find-repeats.ts';

/** Letters from the drawing where a unit's patches agree on one that is still free; else the next free one. */
export function letterUnits(units: readonly RepeatedUnit[]): readonly Unit[] {
  const asked = units.map(({ letter, patches }) => {
    if (letter !== null) return letter;
    const letters = new Set(patches.map(({ code }) => code.letter));
    return letters.size === 1 ? [...letters][0]! : null;
  });
  const used = new Set<string>();
  const own = asked.map((letter) => {
    if (letter === null || used.has(letter)) return null;
    used.add(letter);
    return letter;
  });
  let next = 0;
  const free = (): string => {
    for (;;) {
      const letter = letterOf(next++);
      if (!used.has(letter)) return letter;
    }
  };
  return units.map(({ name, paper, repeat, patches }, i) => ({
    id: own[i] ?? free(),
    ...(name === '' ? {} : { name: name.charAt(0).toUpperCase() + name.slice(1) }),
    paper,
    repeat,
    patches: patches.map(({ outline, role }, k) => ({ number: k + 1, role, outline: rounded(outline) })),
  }));
}

/** Turning leaves figures behind that say nothing; a billionth is far below what arcs and joins are checked to. */
function rounded(outline: Outline): Outline {
  const tidy = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;
  return outline.map((entry) =>
    'arc' in entry ? { arc: { ...entry.arc, radius: tidy(entry.arc.radius) } } : [tidy(entry[0]), tidy(entry[1])],
  );
}

/** A to Z, then AA, AB … */
function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letterOf(Math.floor(index / 26) - 1) + last;
}
