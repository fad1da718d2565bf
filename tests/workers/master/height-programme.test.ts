/** How many strips of each height: answers of the programme against every choice tried one by one. */
import { describe, expect, test } from 'vitest';
import { HeightProgramme } from '../../../workers/master/height-programme.ts';
import type { StripWorths } from '../../../workers/strips/strip-worths.ts';
import { numbers, vectors } from '../numbers.ts';
import { secondOpinion } from '../programme/second-opinion.ts';
import { solver } from './sample-master.ts';

/** Heights, and inequalities whose worths ascend, some in leaps and some not at all. */
function drawCase(seed: number) {
  const draw = numbers(seed);
  let height = draw(2, 6) / 2;
  const heights = Array.from({ length: draw(2, 5) }, () => {
    height += draw(1, 4) / 2;
    return height;
  });
  const programme = new HeightProgramme(solver, heights);
  for (let c = draw(1, 3); c > 0; c--) {
    let worth = draw(0, 12) / 60;
    const worths = Float64Array.from(heights, () => {
      worth += draw(0, 2) === 0 ? 0 : draw(1, 15) / 60;
      return worth;
    });
    if (worth > 0) programme.cuts.push({ worths } as unknown as StripWorths);
  }
  const length = draw(10, 50) / 2;
  return { draw, programme, heights, length };
}

const lengthOf = (counts: ArrayLike<number>, heights: readonly number[]) =>
  heights.reduce((sum, h, i) => sum + h * counts[i]!, 0);

const meets = ({ cuts }: HeightProgramme, counts: ArrayLike<number>, least: number) =>
  cuts.every(({ worths }) => worths.reduce((sum, w, i) => sum + w * counts[i]!, 0) >= least);

/** Whether from some height on there are more strips than in the other choice. */
function hasMore(counts: ArrayLike<number>, than: ArrayLike<number>): boolean {
  let more = 0;
  for (let i = than.length - 1; i >= 0; i--) {
    more += counts[i]! - than[i]!;
    if (more > 0) return true;
  }
  return false;
}

function allChoices(heights: readonly number[], length: number): readonly (readonly number[])[] {
  const most = heights.map((h) => Math.floor(length / h + 1e-9));
  return [...vectors(most)].filter((counts) => lengthOf(counts, heights) <= length + 1e-9);
}

describe('the next choice', () => {
  test('meets all inequalities in the length, is none of those tried, and is missing only where there is none', () => {
    const told = { found: 0, none: 0, after: 0 };
    for (let seed = 1; seed <= 250; seed++) {
      const { programme, heights, length, draw } = drawCase(seed);
      const all = allChoices(heights, length).filter((counts) => meets(programme, counts, 1 - 1e-9));
      for (let turn = 0; turn < 6; turn++) {
        const near = draw(0, 1) === 0 ? null : Float64Array.from(heights, () => draw(0, 30) / 10);
        const answer = programme.next(length, 5, near);
        const left = all.filter((counts) => programme.exclusions.every((e) => hasMore(counts, e.counts)));
        const name = `seed ${seed}, turn ${turn}`;
        expect([name, answer.status]).toEqual([name, left.length > 0 ? 'found' : 'none']);
        if (answer.status !== 'found') {
          told.none++;
          break;
        }
        const { counts } = answer.choice;
        expect(Math.min(...counts), name).toBeGreaterThanOrEqual(0);
        expect(lengthOf(counts, heights), name).toBeLessThanOrEqual(length + 1e-6);
        expect(meets(programme, counts, 1 - 1e-6), name).toBe(true);
        expect(
          programme.exclusions.every((e) => hasMore(counts, e.counts)),
          `${name}: ${counts} again`,
        ).toBe(true);
        programme.exclusions.push({ counts, certain: true });
        told.found++;
        if (turn > 0) told.after++;
      }
    }
    expect(told.found).toBeGreaterThan(200);
    expect(told.after).toBeGreaterThan(100);
    expect(told.none).toBeGreaterThan(100);
  });

  test('at the least length any choice has one is found, and none a hair below', () => {
    let tried = 0;
    for (let seed = 1; seed <= 250; seed++) {
      const { programme, heights } = drawCase(seed);
      const lengths = allChoices(heights, 25)
        .filter((counts) => meets(programme, counts, 1 - 1e-9))
        .map((counts) => lengthOf(counts, heights));
      const least = Math.min(...lengths);
      if (least === Infinity || least === 0) continue;
      tried++;
      expect([seed, programme.next(least, 5).status]).toEqual([seed, 'found']);
      expect([seed, programme.next(least - 0.25, 5).status]).toEqual([seed, 'none']);
    }
    expect(tried).toBeGreaterThan(100);
  });
});

test('the shortest is what HiGHS finds over parts of strips, and never above', () => {
  for (let seed = 1; seed <= 250; seed++) {
    const { programme, heights } = drawCase(seed);
    const { length, used } = programme.shortest();
    const { cuts } = programme;
    const rows = cuts.map(({ worths }) => ({
      lower: 1,
      upper: Infinity,
      entries: [...worths.entries()].filter(([, w]) => w > 0),
    }));
    const columns = heights.map((h) => ({ cost: h, lower: 0, upper: Infinity, integer: false }));
    const second = cuts.length === 0 ? 0 : secondOpinion({ columns, rows }, false).value;
    expect(length, `seed ${seed}`).toBeLessThanOrEqual(second + 1e-6);
    expect(length, `seed ${seed}`).toBeGreaterThanOrEqual(second - 1e-5);
    if (cuts.length > 0) expect(used.length).toBeGreaterThan(0);
  }
});
