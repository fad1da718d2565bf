/** Yardage worked out in public by quilters, against the engine: never more cloth than they say. */
import { expect, test } from 'vitest';
import type { Turns } from '../../src/plan/layout-job.ts';
import { planned, rectangle, stripCount } from './engine.ts';

const cut = (width: number, blank: readonly [number, number], demand: number, turns: Turns = [0]) =>
  planned({
    method: 'strips',
    seconds: 5,
    cloths: [{ id: 'cloth', width }],
    blanks: [{ id: 'blank', outline: rectangle(...blank), demand, turns }],
  });

test('63 squares of 9 1/2 in from 42 in take 16 strips, 152 in', async () => {
  // Source: quiltingboard.com/6228687, read.
  const answer = await cut(42, [9.5, 9.5], 63);
  expect(answer.cost).toBeLessThanOrEqual(152 + 1e-6);
  expect(stripCount(answer)).toBeLessThanOrEqual(16);
  // Four to a strip at most (derived), so no plan takes less.
  expect(answer.bound).toBeCloseTo(152, 6);
});

test('12 squares of 4 1/2 in from 40 in take 2 strips, 9 in', async () => {
  // Source: patchworktimes.com/2011/11/12, read.
  const answer = await cut(40, [4.5, 4.5], 12);
  expect(answer.cost).toBeLessThanOrEqual(9 + 1e-6);
  expect(stripCount(answer)).toBeLessThanOrEqual(2);
});

test('48 of 2 1/2 by 4 1/2 in from 40 in take 15 in one way and 13 1/2 in turned', async () => {
  // Source: patchworktimes.com/2011/11/12, read.
  const oneWay = await cut(40, [4.5, 2.5], 48);
  expect([oneWay.status, oneWay.cost]).toEqual(['optimal', expect.closeTo(15, 6)]);
  const turned = await cut(40, [4.5, 2.5], 48, [0, 90]);
  expect(turned.cost).toBeLessThanOrEqual(13.5 + 1e-6);
});

test('40 of 2 1/2 by 12 1/2 in from 40 in take 35 in lying and 37 1/2 in standing', async () => {
  // Source: chocolatecakequiltdesigns.wordpress.com/2013/05/18, read.
  const lying = await cut(40, [12.5, 2.5], 40);
  expect([lying.status, lying.cost]).toEqual(['optimal', expect.closeTo(35, 6)]);
  const standing = await cut(40, [2.5, 12.5], 40);
  expect([standing.status, standing.cost]).toEqual(['optimal', expect.closeTo(37.5, 6)]);
  // Some lying and some standing: two strips of 16 and three of 3 hold 41 in 32 1/2 in (derived).
  const either = await cut(40, [12.5, 2.5], 40, [0, 90]);
  expect(either.cost).toBeLessThanOrEqual(32.5 + 1e-6);
});

test.each([
  // 50 by 60 in, 2 in lost a join: 6 strips. castillejacotton.blogspot.com/2013/06, read; 2 1/2 in wide is practice.
  ['50 by 60 in', 40, 2.5, 6, 15],
  // 46 by 46 in: 5 strips of 2 1/2 in, 12 1/2 in. sylviasquiltdepot.com, read.
  ['46 by 46 in', 40, 2.5, 5, 12.5],
  // 1.5 by 1 m: 5 strips of 12 cm, 60 cm of cloth 110 cm wide. eternalmaker.com/fabric-measuring-tips, read.
  ['1.5 by 1 m', 110, 12, 5, 60],
])('binding for %s: strips that fill the width fit it', async (_, width, height, strips, length) => {
  const answer = await cut(width, [width, height], strips);
  expect([answer.status, stripCount(answer), answer.cost]).toEqual(['optimal', strips, expect.closeTo(length, 6)]);
});
