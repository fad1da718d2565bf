import type { Quilt } from '../quilt/quilt.ts';
import type { Roll } from './rolls.ts';

/** A blank in words: what it is, how many, and where on which cloth: "… strips 1, 2 and 4 of Noon gold". */
export function litWords(id: string, rolls: readonly Roll[], quilt: Quilt): string | null {
  const blank = rolls.flatMap((roll) => roll.group.blanks).find((one) => one.id === id);
  if (blank === undefined) {
    return null;
  }
  const role = quilt.roles.find((one) => one.id === blank.role)?.name ?? blank.role;
  const spares = blank.spares === 0 ? '' : `, ${blank.spares} spare among them`;
  const places = rolls.flatMap((roll) => {
    const name = quilt.cloths.find((cloth) => cloth.id === roll.cloth)?.name ?? roll.cloth;
    return roll.lengths.flatMap((length) => {
      const strips = length.strips.filter(
        (strip) =>
          strip.number !== null &&
          roll.steps.some(
            (step) =>
              step.layout === strip.layout &&
              step.strip === strip.strip &&
              step.pieces.some((piece) => piece.blank === id),
          ),
      );
      const from = length.piece === null ? name : `${name}, piece “${length.piece}”`;
      return strips.length === 0 ? [] : [`${from}, ${stripWords(strips.map((strip) => strip.number!))}`];
    });
  });
  return `${id}: ${role}. ${blank.demand} to cut${spares}${places.length === 0 ? '' : `: ${places.join('; ')}`}.`;
}

/** "strip 3", "strips 1 to 4 and 7". */
export function stripWords(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of [...new Set(numbers)].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && number === last[1] + 1) {
      last[1] = number;
    } else {
      runs.push([number, number]);
    }
  }
  const parts = runs.map(([from, to]) =>
    from === to ? `${from}` : to === from + 1 ? `${from} and ${to}` : `${from} to ${to}`,
  );
  return `${numbers.length === 1 ? 'strip' : 'strips'} ${parts.join(', ')}`;
}
