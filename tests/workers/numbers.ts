/** Whole numbers that are the same in every run. */

/** Draws a whole number between two, ends included. */
export type Draw = (from: number, to: number) => number;

/** A linear congruential generator modulo 2^31 − 1 with multiplier 48271; nearby seeds are driven apart first. */
export function numbers(seed: number): Draw {
  let state = (Math.imul(seed, 2654435761) >>> 1) % 2147483647 || 1;
  const next = () => {
    state = (state * 48271) % 2147483647;
    return state;
  };
  for (let i = 0; i < 4; i++) next();
  return (from, to) => from + (next() % (to - from + 1));
}

export const pickFrom = <T>(draw: Draw, list: readonly T[]): T => list[draw(0, list.length - 1)]!;

/** Every way to take from nothing up to `most[i]` of each, the empty one first. */
export function* vectors(most: readonly number[]): Generator<readonly number[]> {
  const total = most.reduce((product, n) => product * (n + 1), 1);
  for (let code = 0; code < total; code++) yield vectorAt(code, most);
}

/** The vector with this number: the last entry counts fastest. */
function vectorAt(code: number, most: readonly number[]): readonly number[] {
  const vector = most.map(() => 0);
  for (let i = most.length - 1; i >= 0; i--) {
    vector[i] = code % (most[i]! + 1);
    code = Math.floor(code / (most[i]! + 1));
  }
  return vector;
}
