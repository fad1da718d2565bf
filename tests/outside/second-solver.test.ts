/** The engine's integer programme against the same question put to HiGHS in another form (level-model.ts). */
import { describe, expect, test } from 'vitest';
import { planned, rectangle } from './engine.ts';
import { type Levels, leastLength } from './level-model.ts';

/** Whole numbers that are the same in every run (a linear congruential generator modulo 2^31 − 1, multiplier 48271). */
function numbers(seed: number): (from: number, to: number) => number {
  let state = seed;
  return (from, to) => {
    state = (state * 48271) % 2147483647;
    return from + (state % (to - from + 1));
  };
}

interface Case extends Levels {
  readonly kinds: readonly { readonly width: number; readonly height: number; readonly demand: number }[];
}

function randomCase(seed: number, more: { step?: number; piece?: number }): Case {
  const pick = numbers(seed + 1);
  const width = pick(20, 40);
  const kinds = Array.from({ length: pick(3, 6) }, () => ({
    width: pick(3, Math.floor(width * 0.6)),
    height: pick(2, 15),
    demand: pick(1, 3),
  }));
  const rectangles = kinds.flatMap((kind) => Array.from({ length: kind.demand }, () => kind));
  return { width, kinds, rectangles, ...more };
}

describe.each([
  ['by length', {}],
  ['in whole steps', { step: 9 }],
  ['with a piece to use up first', { piece: 14 }],
])('cloth bought %s', (name, more) => {
  test('costs what HiGHS says, and no bound is above it', async () => {
    for (let seed = 1; seed <= 8; seed++) {
      const { kinds, width, rectangles } = randomCase(seed * 17 + name.length, more);
      const least = await leastLength({ rectangles, width, ...more });
      const { step, piece } = more as { step?: number; piece?: number };
      const bolt = { id: 'bolt', width, ...(step === undefined ? {} : { step }) };
      const answer = await planned({
        method: 'strips',
        seconds: 10,
        cloths: piece === undefined ? [bolt] : [bolt, { id: 'piece', width, length: piece, cost: 0 }],
        blanks: kinds.map((kind, i) => ({
          id: `${i}`,
          outline: rectangle(kind.width, kind.height),
          demand: kind.demand,
        })),
      });
      expect([seed, answer.cost]).toEqual([seed, expect.closeTo(least, 6)]);
      expect(answer.bound).toBeLessThanOrEqual(least + 1e-6);
      expect(answer.status).toBe('optimal');
    }
  });
});
