import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { readLayoutJob } from '../../src/plan/read-layout-job.ts';
import type { Quilt, Unit } from '../../src/quilt/quilt.ts';
import type { Outline } from '../../src/shape/outline.ts';
import { polygonArea, polygonBox } from '../../src/shape/polygon.ts';
import { blockOf, clothOf, crooked, oblong, patchOf, quiltOf, roleOf, unitOf } from './sample-quilt.ts';

const free = { to: 'free' } as const;
const square = (size: number, repeat = 1): Unit => unitOf(oblong(9, 9, size, size), { count: repeat });
const texts = (quilt: Quilt) => makeCutList(quilt).problems.map((problem) => problem.text);

test('every patch of every repeat of every block is counted, spares added a kind', () => {
  const quilt = quiltOf([], free, clothOf('tossed'), {
    spares: 2,
    blocks: [blockOf([square(3, 4)], { count: 5 }), blockOf([square(3, 2)], { id: 'c', count: 3 })],
  });
  const [blank, ...others] = makeCutList(quilt).groups[0]!.blanks;
  expect(others).toHaveLength(0);
  expect(blank).toMatchObject({ demand: 4 * 5 + 2 * 3 + 2, spares: 2, id: 'b A1' });
  expect(blank!.uses).toHaveLength(6);
  expect(blank!.uses.reduce((sum, use) => sum + use.count, 0)).toBe(26);
});

test('stages are two, three where stacks are cut along the strip, as a file without the choice asks for neither', () => {
  const stagesOf = (more: Partial<Quilt>) => {
    const quilt = quiltOf([], free, clothOf('tossed'), { blocks: [blockOf([square(3, 4)], { count: 5 })], ...more });
    return makeCutList(quilt).groups.map(({ job }) => job.stages);
  };
  expect([stagesOf({}), stagesOf({ stacks: false }), stagesOf({ stacks: true })]).toEqual([[2], [2], [3]]);
});

test('equal blanks of different patches are one, wherever and however turned they were drawn', () => {
  const turned: Outline = [
    [20, 0],
    [22, 2],
    [20, 4],
    [18, 2],
  ];
  const side = Math.sqrt(8);
  const patches = [patchOf(1, turned), patchOf(2, oblong(40, 40, side, side)), patchOf(3, [...turned].reverse())];
  const quilt = quiltOf(
    [unitOf([], { count: 1 }, { patches }), unitOf(oblong(20, 20, 60, 60), { count: 1 }, { id: 'B' })],
    free,
    clothOf('tossed'),
  );
  const blanks = makeCutList(quilt).groups[0]!.blanks;
  expect(blanks.map(({ id, demand }) => [id, demand])).toEqual([
    ['A1', 3],
    ['B1', 1],
  ]);
});

test('blanks are named by patch, hand and number', () => {
  const upright = quiltOf([unitOf(crooked, { count: 2, mirrored: 'also' })], { to: 'upright' }, clothOf('one-way'));
  expect(makeCutList(upright).groups[0]!.blanks.map(({ id }) => id)).toEqual([
    'A1.1',
    'A1.1 mirrored',
    'A1.2',
    'A1.2 mirrored',
  ]);
});

test('the job is one the packing engine accepts, in the order of the blanks and of the lengths', () => {
  const cloth = clothOf('tossed', {
    pieces: [{ id: 'fat', width: 21, length: 18, count: 2 }],
    shrinkage: { along: 4, across: 2.5 },
    price: { amount: 12, per: 'yd', currency: '$' },
  });
  const quilt = quiltOf([square(3, 4)], free, cloth, { squaring: 0.5, room: 0 });
  const [group] = makeCutList(quilt).groups;
  expect(group!.job).toEqual(readLayoutJob(JSON.stringify(group!.job)));
  expect(group!.job.blanks.map(({ id }) => id)).toEqual(group!.blanks.map(({ id }) => id));
  expect(group!.job.cloths.map(({ id }) => id)).toEqual(group!.lengths.map(({ id }) => id));
  expect(group!.lengths).toEqual([
    { id: 'tossed', cloth: 'tossed', piece: null },
    { id: 'tossed/fat', cloth: 'tossed', piece: 'fat' },
  ]);
  const [bolt, piece] = group!.job.cloths;
  // Shrinkage is (before − after)/before (ISO 5077:2007): a step of 9 in leaves 8.64 at 4 %, and costs 9/36 of 12.
  expect(bolt).toMatchObject({ length: null, squaring: 0.5 });
  expect(bolt!.width).toBeCloseTo(42 * 0.975, 12);
  expect(bolt!.step).toBeCloseTo(8.64, 12);
  expect(bolt!.cost! * bolt!.step!).toBeCloseTo(3, 12);
  expect(piece).toMatchObject({ width: 21, length: 17.5, count: 2, cost: 0, firstCut: 'either' });
});

test('to keep 36 in, 37.11 are bought at 3 % and 37.89 at 5 % (ISO 5077:2007, abstract)', () => {
  for (const [along, bought] of [
    [3, 37.11],
    [5, 37.89],
  ] as const) {
    const quilt = quiltOf([square(3)], free, clothOf('tossed', { shrinkage: { along, across: 0 } }));
    expect(36 * makeCutList(quilt).groups[0]!.job.cloths[0]!.cost!).toBeCloseTo(bought, 2);
  }
});

test('a piece not yet washed shrinks as the bolt does', () => {
  const pieces = [{ id: 'raw', width: 20, length: 10, washed: false }];
  const quilt = quiltOf([square(3)], free, clothOf('tossed', { pieces, shrinkage: { along: 10, across: 5 } }));
  expect(makeCutList(quilt).groups[0]!.job.cloths[1]).toMatchObject({ width: 19, length: 9 });
});

test('cloths that share blanks make one group, others their own', () => {
  const roles = ['r', 'q', 'p'].map((id) => roleOf(id));
  const unit = unitOf(
    [],
    { count: 1 },
    { patches: ['r', 'q', 'p'].map((role, i) => patchOf(i + 1, oblong(9 * i, 0, 2 + i, 2), { role })) },
  );
  const cloths = ['a', 'b', 'c', 'd'].map((id) => clothOf('tossed', { id, name: id }));
  const quilt = quiltOf([unit], free, cloths[0]!, {
    roles,
    cloths,
    schemes: [{ id: 's', name: 'Dawn', cloths: { r: ['d', 'a'], q: 'b', p: ['a', 'c'] } }],
  });
  const groups = makeCutList(quilt).groups;
  expect(groups.map(({ id }) => id)).toEqual(['a+c+d', 'b']);
  expect(groups[0]!.job.blanks.map(({ cloths: from }) => from)).toEqual([
    ['d', 'a'],
    ['a', 'c'],
  ]);
});

test('each of several cloths keeps its own turns', () => {
  const cloths = [
    clothOf('one-way'),
    clothOf('one-way', { id: 'x', up: 'across' }),
    clothOf('solid', { wrongSide: false }),
  ];
  const quilt = quiltOf([unitOf(crooked, { count: 1 })], { to: 'upright' }, cloths[0]!, {
    cloths,
    roles: [roleOf('r', { to: 'upright' }, { biasAllowed: true })],
    schemes: [{ id: 's', name: 'Dawn', cloths: { r: ['one-way', 'x', 'solid'] } }],
  });
  const [blank] = makeCutList(quilt).groups[0]!.job.blanks;
  expect(blank!.shapes![0]!.turns).toEqual([0]);
  expect(blank!.cloths).toEqual([
    'one-way',
    { id: 'x', turns: [270], mirror: false },
    { id: 'solid', turns: 'any', mirror: true },
  ]);
});

test('a slant lies with its parallel sides along the strip at the turn that its cloth asks for', () => {
  const along = makeCutList(quiltOf([unitOf(crooked, { count: 1 })], { to: 'upright' }, clothOf('one-way')));
  const across = makeCutList(
    quiltOf([unitOf(crooked, { count: 1 })], { to: 'upright' }, clothOf('one-way', { up: 'across' })),
  );
  const level = (axis: 0 | 1, list: typeof along) => {
    const slant = list.groups[0]!.blanks[0]!.shapes.find(({ kind }) => kind === 'slant')!.outline;
    return new Set(slant.map((corner) => corner[axis])).size;
  };
  expect(level(1, along)).toBe(2);
  expect(level(0, across)).toBe(2);
});

test('each shape begins at the origin and says where its patch lies in it', () => {
  const quilt = quiltOf([unitOf(crooked, { count: 1 })], { to: 'upright' }, clothOf('one-way'), {
    roles: [roleOf('r', { to: 'upright' }, { shapes: ['outline', 'slant', 'box'] })],
  });
  const [blank] = makeCutList(quilt).groups[0]!.blanks;
  expect(blank!.shapes.map(({ kind }) => kind)).toEqual(['outline', 'slant', 'box']);
  expect(blank!.patch).toEqual(blank!.shapes[0]!.patch);
  for (const { outline, patch } of blank!.shapes) {
    expect(polygonBox(outline).min).toEqual([0, 0]);
    expect(polygonArea(patch!)).toBeCloseTo(blank!.finishedArea, 9);
    const [outer, inner] = [polygonBox(outline), polygonBox(patch!)];
    for (const axis of [0, 1] as const) {
      expect(inner.min[axis] - outer.min[axis]).toBeGreaterThanOrEqual(0.25 - 1e-9);
      expect(outer.max[axis] - inner.max[axis]).toBeGreaterThanOrEqual(0.25 - 1e-9);
    }
  }
});

test('a patch too large for its cloth is named with the width it needs, and stays in the job', () => {
  const quilt = quiltOf(
    [unitOf(oblong(0, 0, 50, 44), { count: 1 }), { ...square(3), id: 'B' }],
    { to: 'upright' },
    clothOf('one-way'),
  );
  const list = makeCutList(quilt);
  expect(list.problems).toHaveLength(1);
  expect(list.problems[0]).toMatchObject({ kind: 'error', blank: 'A1', cloth: 'one-way' });
  expect(list.problems[0]!.text).toContain('it needs cloth 50 1/2 in wide');
  expect(list.groups[0]!.job.blanks.map(({ id }) => id)).toEqual(['A1', 'B1']);
  // A tossed print may lie the other way, and then 44 1/2 in is what it needs.
  const tossed = quiltOf([unitOf(oblong(0, 0, 50, 44), { count: 1 })], free, clothOf('tossed'));
  expect(texts(tossed).join()).toContain('it needs cloth 44 1/2 in wide');
  expect(texts(quiltOf([unitOf(oblong(0, 0, 50, 41.5), { count: 1 })], free, clothOf('tossed')))).toEqual([]);
});

test('what is amiss in a scheme is told, not thrown', () => {
  const quilt = quiltOf([square(3)], free, clothOf('tossed'));
  expect(texts({ ...quilt, schemes: [{ id: 's', name: 'Dawn', cloths: {} }] }).join()).toContain(
    'gives no cloth to “r”',
  );
  expect(texts({ ...quilt, schemes: [{ id: 's', name: 'Dawn', cloths: { r: 'gone' } }] }).join()).toContain('“gone”');
  expect(makeCutList(quilt, 'dusk').problems[0]!.text).toContain('no scheme “dusk”');
  const forgotten = makeCutList({ ...quilt, cloths: [...quilt.cloths, clothOf('solid', { name: 'Moss' })] });
  expect(forgotten.problems).toEqual([expect.objectContaining({ kind: 'warning', cloth: 'solid' })]);
  const { step: _, ...unsold } = clothOf('tossed');
  expect(texts({ ...quilt, cloths: [unsold] }).join()).toContain('cannot be bought');
  const stray = unitOf([], { count: 1 }, { patches: [patchOf(1, oblong(0, 0, 1, 1), { role: 'z' })] });
  expect(texts({ ...quilt, blocks: [blockOf([stray])] }).join()).toContain('role “z”');
});

test('a patch that cannot be is left out and named; the rest is planned', () => {
  const impossible: Outline = [[0, 0], [9, 0], { arc: { radius: 1, turn: 'anticlockwise' } }, [0, 5]];
  const bow: Outline = [
    [0, 0],
    [4, 4],
    [4, 0],
    [0, 4],
  ];
  const unit = unitOf(
    [],
    { count: 2 },
    { patches: [impossible, bow, oblong(20, 0, 3, 3)].map((outline, i) => patchOf(i + 1, outline)) },
  );
  const list = makeCutList(quiltOf([unit], free, clothOf('tossed')));
  expect(list.problems.map(({ text }) => text.slice(0, 2))).toEqual(['A1', 'A2']);
  expect(list.groups[0]!.blanks.map(({ id, demand }) => [id, demand])).toEqual([['A3', 2]]);
});

test('room is the patch’s, else the role’s, else the quilt’s, and none without paper', () => {
  const boxWidth = (paper: boolean, patchRoom?: number, roleRoom?: number): number => {
    const patch = patchOf(1, oblong(0, 0, 3, 3), patchRoom === undefined ? {} : { room: patchRoom });
    const role = roleOf('r', free, { shapes: ['box'], ...(roleRoom === undefined ? {} : { room: roleRoom }) });
    const quilt = quiltOf([unitOf([], { count: 1 }, { paper, patches: [patch] })], free, clothOf('tossed'), {
      roles: [role],
    });
    return polygonBox(makeCutList(quilt).groups[0]!.blanks[0]!.shapes[0]!.outline).max[0];
  };
  expect(boxWidth(false, 1, 1)).toBe(3.5);
  expect(boxWidth(true)).toBe(4);
  expect(boxWidth(true, undefined, 0.5)).toBe(4.5);
  expect(boxWidth(true, 0, 0.5)).toBe(3.5);
});

test('the quilt is left as it was', () => {
  const text = readFileSync(new URL('../../scenarios/solstice-dial.yardwright.json', import.meta.url), 'utf8');
  const quilt = JSON.parse(text) as Quilt;
  expect(makeCutList(quilt)).toEqual(makeCutList(quilt));
  expect(quilt).toEqual(JSON.parse(text));
});

test('ten thousand patches share what work they can', () => {
  const many = Array.from({ length: 2500 }, (_, i) =>
    patchOf(i + 1, oblong(3 * (i % 50), 3 * Math.floor(i / 50), 3, 3)),
  );
  const list = makeCutList(quiltOf([unitOf([], { count: 4, over: 4e-9 }, { patches: many })], free, clothOf('tossed')));
  const blanks = list.groups[0]!.blanks;
  // One kind inside, one whose outside edges keep to the grain.
  expect(blanks).toHaveLength(2);
  expect(blanks.reduce((sum, { demand }) => sum + demand, 0)).toBe(10_000);
});
