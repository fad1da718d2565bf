import { describe, expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { bestPanels, panelsRunning } from '../../src/cutting/panels.ts';
import type { Cloth, Facing, JoinedLength } from '../../src/quilt/quilt.ts';
import { clothOf, quiltOf } from './sample-quilt.ts';

const cover = { width: 80, length: 56, join: 0, clothWidth: 40, step: 4.5 };

describe('panels side by side', () => {
  test('80 by 56 in from 40 in usable: two widths, 112 in, 3 1/8 yd', () => {
    // quiltingboard.com t290638, read.
    const panels = bestPanels(['up', 'across'], cover);
    expect(panels).toMatchObject({ way: 'up', whole: 2, narrow: null, length: 56, seams: 1, takes: 112 });
    expect(panels!.buys / 36).toBeCloseTo(3 + 1 / 8, 9);
  });

  test('the same the other way takes two panels of 80 in', () => {
    expect(panelsRunning('across', cover)).toMatchObject({ whole: 1, narrow: 16, length: 80, takes: 160 });
  });

  test('each seam takes its loss: 80 in with 1 in lost is more than two widths have', () => {
    // 40 + 39 = 79, so a third panel makes up 1 in and the 1 in of its own seam (derived).
    expect(panelsRunning('up', { ...cover, join: 1 })).toMatchObject({ whole: 2, narrow: 2, seams: 2 });
    expect(panelsRunning('up', { ...cover, width: 79, join: 1 })).toMatchObject({ whole: 2, narrow: null, seams: 1 });
  });

  test('what is no wider than the cloth needs no seam', () => {
    expect(panelsRunning('up', { ...cover, width: 38, join: 50 })).toMatchObject({ whole: 0, narrow: 38, seams: 0 });
  });

  test('the fewer seams are taken where both ways buy the same', () => {
    // 120 by 40 in: three widths of 40 in, or one of 120 in (derived).
    expect(bestPanels(['up', 'across'], { ...cover, width: 120, length: 40 })).toMatchObject({ seams: 0, length: 120 });
  });

  test('a seam as wide as the cloth is no seam', () => {
    expect(bestPanels(['up', 'across'], { ...cover, join: 40 })).toBeNull();
  });
});

function backing(
  joined: Partial<JoinedLength>,
  facing: Facing = { to: 'free' },
  cloths: readonly Partial<Cloth>[] = [{}],
) {
  const back: JoinedLength = {
    id: 'back',
    name: 'Backing',
    role: 'r',
    kind: 'panels',
    width: 80,
    length: 56,
    join: 0,
    ...joined,
  };
  const all = cloths.map((cloth, i) => clothOf('solid', { id: `c${i}`, width: 40, step: '1/8 yd', ...cloth }));
  return makeCutList(
    quiltOf([], facing, all[0]!, {
      blocks: [],
      joined: [back],
      spares: 2,
      cloths: all,
      schemes: [{ id: 's', name: 'Dawn', cloths: { r: all.map((cloth) => cloth.id) } }],
    }),
  );
}
const sizes = (...of: Parameters<typeof backing>) =>
  backing(...of).groups[0]!.blanks.map(({ id, demand, shapes }) => [id, demand, shapes[0]!.outline[2]]);

describe('a backing among the blanks', () => {
  test('is panels as wide as the cloth, overhang on every side, no spares', () => {
    expect(sizes({})).toEqual([['Backing', 2, [40, 56]]]);
    // 88 by 64 in: three widths of 64 in make 192 in, two of 88 in make 176 (derived).
    expect(sizes({ overhang: 4 })).toEqual([
      ['Backing', 1, [40, 88]],
      ['Backing, last', 1, [24, 88]],
    ]);
  });

  test('one panel narrower than the cloth is not called the last', () => {
    expect(sizes({ width: 30.02 })).toEqual([['Backing', 1, [30.125, 56]]]);
  });

  test('a print that must stand upright settles which way panels run', () => {
    const wide = { width: 60, length: 38 } as const;
    // One panel of 60 in lying across would buy least.
    expect(sizes(wide, { to: 'free' }, [{ print: 'one-way' }])).toEqual([['Backing', 1, [38, 60]]]);
    expect(sizes(wide, { to: 'upright' }, [{ print: 'one-way' }])).toEqual([
      ['Backing', 1, [40, 38]],
      ['Backing, last', 1, [20, 38]],
    ]);
    expect(sizes(wide, { to: 'upright' }, [{ print: 'two-way', up: 'across' }])).toEqual([['Backing', 1, [38, 60]]]);
    expect(sizes(wide, { to: 'upright' }, [{ print: 'check' }])).toEqual([['Backing', 1, [38, 60]]]);
  });

  test('prints that run different ways are told', () => {
    const { problems } = backing({}, { to: 'upright' }, [{ print: 'one-way' }, { print: 'one-way', up: 'across' }]);
    expect(problems[0]!.text).toContain('“Backing” cannot be joined up: the prints of its cloths run different ways');
  });

  test('the print’s arrow is drawn where it matters', () => {
    const directional = (facing: Facing, print: Cloth['print']) =>
      backing({}, facing, [{ print }]).groups[0]!.blanks[0]!.directional;
    expect(directional({ to: 'upright' }, 'one-way')).toBe(true);
    expect(directional({ to: 'free' }, 'one-way')).toBe(false);
    expect(directional({ to: 'upright' }, 'tossed')).toBe(false);
  });
});
