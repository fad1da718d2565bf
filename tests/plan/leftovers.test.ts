/** What is left whole, on plans of random small jobs and on plans written by hand. */
import { describe, expect, test } from 'vitest';
import type { Group } from '../../src/cutting/cut-list.ts';
import { leftoversOf, type Rectangle } from '../../src/plan/leftovers.ts';
import { blanksById, placedBlanks } from '../../src/plan/placed.ts';
import { changesShelf, shelveLeftovers } from '../../src/plan/shelve-leftovers.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { writeQuilt } from '../../src/quilt/write-quilt.ts';
import { polygonBox } from '../../src/shape/polygon.ts';
import { planned } from '../outside/engine.ts';
import { numbers } from '../workers/numbers.ts';
import { answerOf, blank, four, groupOf, linen, onBolt, quiltWith, tally } from './sample-cloth.ts';

const KEEP = 3;

const owning = (keep: number): Quilt => ({
  ...quiltWith({ ...linen, pieces: [{ id: 'scrap', width: 21, length: 19, count: 2 }] }),
  keep,
});

/** Boxes off a bolt and two pieces that are cut either way. */
function randomGroup(seed: number): Group {
  const draw = numbers(seed);
  const kinds = Array.from({ length: draw(2, 4) }, (_, i) =>
    blank(`K${i}`, draw(8, 36) / 4, draw(8, 36) / 4, { demand: draw(2, 9) }),
  );
  return groupOf(
    kinds,
    [
      { id: 'linen', cloth: 'linen', piece: null },
      { id: 'linen/scrap', cloth: 'linen', piece: 'scrap' },
    ],
    [
      { id: 'linen', width: 40, step: 9, squaring: 1 },
      { id: 'linen/scrap', width: 21, length: 18, count: 2, cost: 0, firstCut: 'either' },
    ],
  );
}

const overlap = (a: Rectangle, b: Rectangle): number =>
  Math.max(0, Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)) *
  Math.max(0, Math.min(a.y + a.length, b.y + b.length) - Math.max(a.y, b.y));

const boxOf = (outline: Parameters<typeof polygonBox>[0]): Rectangle => {
  const { min, max } = polygonBox(outline);
  return { x: min[0], y: min[1], width: max[0] - min[0], length: max[1] - min[1] };
};

describe('what is left of random plans', () => {
  test('lies on its cloth, clear of every blank and of one another, and all areas add up', async () => {
    const seen = { end: 0, side: 0, strip: 0 };
    for (let seed = 1; seed <= 40; seed++) {
      const group = randomGroup(seed);
      const answer = await planned({ ...group.job, seconds: 0.3 });
      const quilt = owning(KEEP);
      const left = leftoversOf(quilt, group, answer);
      const { areas } = tally(quilt, group, answer);
      expect(left.reduce((sum, part) => sum + part.count * part.width * part.length, 0)).toBeCloseTo(areas.kept, 6);
      const { used, ...parts } = areas;
      expect(Object.values(parts).reduce((sum, part) => sum + part, 0)).toBeCloseTo(used, 6);
      expect(Math.min(...Object.values(parts)), `seed ${seed}`).toBeGreaterThanOrEqual(-1e-9);
      for (const part of left) {
        seen[part.place]++;
        expect(Math.min(part.width, part.length)).toBeGreaterThanOrEqual(KEEP - 1e-6);
        const cloth = group.job.cloths.find(({ id }) => id === (part.piece === null ? 'linen' : 'linen/scrap'))!;
        expect(part.x + part.width).toBeLessThanOrEqual(cloth.width + 1e-6);
        if (part.layout === null) continue;
        const layout = answer.layouts[part.layout]!;
        expect(part.y + part.length).toBeLessThanOrEqual((cloth.length ?? layout.length) + 1e-6);
        for (const { outline } of placedBlanks(layout, blanksById(group.blanks)))
          expect(overlap(part, boxOf(outline)), `seed ${seed}`).toBeLessThan(1e-6);
        for (const other of left)
          if (other !== part && other.layout === part.layout) expect(overlap(part, other)).toBeLessThan(1e-6);
      }
    }
    for (const n of Object.values(seen)) expect(n).toBeGreaterThan(0);
  });

  test('is more the smaller the pieces she keeps, and what is not kept is waste', async () => {
    const group = randomGroup(3);
    const answer = await planned({ ...group.job, seconds: 0.3 });
    const sums = [2, 4, 6, 100].map((keep) => tally(owning(keep), group, answer).areas);
    sums.slice(1).forEach((areas, i) => {
      expect(areas.kept).toBeLessThanOrEqual(sums[i]!.kept);
      expect(areas.kept + areas.waste).toBeCloseTo(sums[i]!.kept + sums[i]!.waste, 6);
    });
    expect(sums[0]!.kept).toBeGreaterThan(sums[3]!.kept);
    expect(sums[3]!.kept).toBe(0);
  });
});

describe('one strip off a bolt', () => {
  const group = onBolt([blank('A1', 5, 3)]);

  test('leaves its own end and what is bought beyond it', () => {
    const quilt = { ...quiltWith(linen), keep: 3 };
    expect(leftoversOf(quilt, group, answerOf([four]))).toMatchObject([
      { place: 'end', layout: null, x: 0, y: 4, width: 40, length: 5, piece: null },
      { place: 'strip', layout: 0, x: 20, y: 1, width: 20, length: 3 },
    ]);
  });

  test('counts nothing smaller than 6 in unless she says so', () => {
    expect(leftoversOf(quiltWith(linen), group, answerOf([four]))).toEqual([]);
    expect(leftoversOf({ ...quiltWith(linen), keep: '10 cm' }, group, answerOf([four]))).toHaveLength(1);
  });
});

describe('back on the shelf', () => {
  test('used pieces go, leftovers come, those of a size together, and the quilt is still one', () => {
    const quilt = owning(3);
    const group = randomGroup(1);
    const placement = { blank: 'K0', shape: 0, turn: 0, mirror: false, x: 0, y: 0 };
    const { outline } = group.blanks[0]!.shapes[0]!;
    const { width, length } = boxOf(outline!);
    const layout = {
      cloth: 'linen/scrap',
      count: 1,
      length,
      strips: [{ from: 0, height: length }],
      placements: [placement],
    };
    const result = tally(quilt, group, answerOf([layout]));
    expect(changesShelf(result)).toBe(true);
    const shelf = shelveLeftovers(quilt, result).cloths[0]!.pieces!;
    const down = (value: number) => Math.floor(value * 8) / 8;
    expect(shelf).toEqual([
      { id: 'scrap', width: 21, length: 19 },
      { id: 'left 1', width: 21, length: down(18 - length) },
      ...(length >= 3 ? [{ id: 'left 2', width: down(21 - width), length: down(length) }] : []),
    ]);
    const roles = { schemes: [{ id: 's', name: 'S', cloths: {} }] };
    const kept = { ...shelveLeftovers(quilt, result), ...roles };
    expect(readQuilt(writeQuilt(kept))).toEqual(kept);
  });

  test('a cloth of which nothing is left has no list of pieces', () => {
    const quilt = owning(50);
    const group = randomGroup(1);
    const whole = { cloth: 'linen/scrap', count: 2, length: 18, strips: [], placements: [] };
    const result = tally(quilt, group, answerOf([whole]));
    expect(shelveLeftovers(quilt, result).cloths[0]).toEqual(linen);
  });
});
