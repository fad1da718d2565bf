import { expect, test } from 'vitest';
import { placesOf } from '../../src/quilt/places.ts';
import type { Repeat } from '../../src/quilt/quilt.ts';

const places = (repeat: Repeat) => placesOf({ id: 'A', paper: true, patches: [], repeat });

test('places go evenly round, from the first turn', () => {
  expect(places({ count: 4, from: 10 })).toEqual([
    { index: 0, turn: 10, mirrored: false },
    { index: 1, turn: 100, mirrored: false },
    { index: 2, turn: 190, mirrored: false },
    { index: 3, turn: 280, mirrored: false },
  ]);
});

test('a part of a turn is shared evenly, its end left out', () => {
  expect(places({ count: 3, over: 90 }).map((place) => place.turn)).toEqual([0, 30, 60]);
});

test('alternate mirrors every second place from the second', () => {
  expect(places({ count: 4, mirrored: 'alternate' }).map((place) => place.mirrored)).toEqual([
    false,
    true,
    false,
    true,
  ]);
});

test('also gives each turn one as drawn and one mirrored, numbered through', () => {
  expect(places({ count: 2, mirrored: 'also' })).toEqual([
    { index: 0, turn: 0, mirrored: false },
    { index: 1, turn: 0, mirrored: true },
    { index: 2, turn: 180, mirrored: false },
    { index: 3, turn: 180, mirrored: true },
  ]);
});
