import { expect, test } from 'vitest';
import { makeCutList } from '../../../src/cutting/make-cut-list.ts';
import { addBlock } from '../../../src/quilt/add-block.ts';
import { emptyQuilt } from '../../../src/quilt/empty-quilt.ts';
import { measuredBlock } from '../../../src/quilt/measured/measured-block.ts';
import { isUntouched, type MeasuredPiece, readRow } from '../../../src/quilt/measured/measured-row.ts';
import { readTable } from '../../../src/quilt/measured/read-table.ts';
import { readQuilt } from '../../../src/quilt/read-quilt.ts';
import { writeQuilt } from '../../../src/quilt/write-quilt.ts';

const inches = { quilt: 'in', shown: 'in' } as const;

test('tabs, semicolons and commas; quotes; headings in any order; units in headings', () => {
  const expected = [
    {
      shape: 'rectangle',
      sizes: { width: '2 1/2 in', height: '4,5 in' },
      count: '16',
      name: 'A1',
      role: 'Sky, light',
      facing: 'up',
    },
    {
      shape: 'triangle',
      sizes: { base: '6 cm', height: '3 in', lean: '3 in' },
      count: '8',
      name: 'B1',
      role: 'Sun',
      facing: '',
    },
  ];
  const rows = [
    ['Name', 'Role', 'How many', 'Shape', 'Width (in)', 'Height [in]', 'Lean (in)', 'Facing'],
    ['A1', 'Sky, light', '16', 'Rectangle', '2 1/2', '4,5', '', 'up'],
    ['B1', 'Sun', '8', 'triangle', '6 cm', '3', '3', ''],
  ];
  const quoted = (separator: string) =>
    rows.map((row) => row.map((cell) => (/[,;"\t]/.test(cell) ? `"${cell}"` : cell)).join(separator)).join('\r\n');
  for (const separator of ['\t', ';', ',']) {
    expect(readTable(`﻿${quoted(separator)}\n\n`), separator).toEqual({ rows: expected, notes: [] });
  }
});

test('without headings the order is fixed, and a list of numbers is one of rectangles', () => {
  expect(readTable('kite\t4\t3\t5\t12\tK1\tPetals\tup').rows).toEqual([
    {
      shape: 'kite',
      sizes: { width: '4', upper: '3', lower: '5' },
      count: '12',
      name: 'K1',
      role: 'Petals',
      facing: 'up',
    },
  ]);
  expect(readTable('2 1/2;4,5;16;A1\n3;;4').rows).toMatchObject([
    { shape: 'rectangle', sizes: { width: '2 1/2', height: '4,5' }, count: '16', name: 'A1' },
    { shape: 'rectangle', sizes: { width: '3' }, count: '4' },
  ]);
});

test('what is not used is told; a hexagon has six sides; bad rows come through to be mended', () => {
  const { rows, notes } = readTable('Shape,Side,Notes\nHexagon,2,pretty\nblob,3,\nwedge,,');
  expect(notes).toEqual(['The column “Notes” is not used.']);
  expect(rows[0]).toMatchObject({ shape: 'polygon', sizes: { corners: '6', side: '2' } });
  expect(rows[1]).toMatchObject({ shape: 'blob', sizes: { side: '3', width: '3' } });
  expect(rows.map(isUntouched)).toEqual([false, false, true]);
  expect(rows.map((row) => 'piece' in readRow(row, inches))).toEqual([true, false, false]);
  expect(readTable(Array.from({ length: 450 }, () => '2,3').join('\n')).notes[0]).toMatch(/first 400 of 450 rows/);
  expect(readTable('').rows).toEqual([]);
});

const pieces = (text: string): readonly MeasuredPiece[] =>
  readTable(text).rows.flatMap((row) => {
    const read = readRow(row, inches);
    return 'piece' in read ? [read.piece] : [];
  });

test('pieces become a loose block: counted right, free of the outside’s grain, facing by their own up', () => {
  const list = pieces(
    'name,width,height,count,role,facing\nA1,2,3,10,Sky,up\nA2,1,3,10,Sky,up\nA3,1,1,4,Sky,up\nBack,5,,2,Sun,any\n,4,4,1,Sun,right',
  );
  const drawn = measuredBlock(list, { name: 'Pieces', paper: false, roles: [] });
  const names = drawn.units.map(({ id, name, repeat, patches }) => [
    id,
    name,
    repeat.count,
    patches.map((patch) => patch.number),
  ]);
  expect(names).toEqual([
    ['A', undefined, 10, [1, 2]],
    ['B', 'A3', 4, [1]],
    ['C', 'Back', 2, [1]],
    ['D', undefined, 1, [1]],
  ]);
  const added = addBlock(emptyQuilt('in'), drawn).quilt;
  const cloth = { id: 'c', name: 'Cloth', colour: '#888888', print: 'one-way', width: 42, step: 9 } as const;
  const scheme = { ...added.schemes[0]!, cloths: { sky: 'c', sun: 'c' } };
  const quilt = readQuilt(writeQuilt({ ...added, cloths: [cloth], schemes: [scheme] }));
  const { groups, problems } = makeCutList(quilt);
  expect(problems).toEqual([]);
  const { blanks } = groups[0]!;
  expect(blanks.map(({ id, demand }) => [id, demand])).toEqual([
    ['A1', 10],
    ['A2', 10],
    ['B1', 4],
    ['C1', 2],
    ['D1', 1],
  ]);
  const directional = blanks.filter(({ directional: is }) => is).map(({ id }) => id);
  expect(directional).toEqual(['A1', 'A2', 'B1', 'D1']);
  const onPaper = measuredBlock(list, { name: 'Pieces', paper: true, roles: [{ id: 'heaven', name: 'Sky' }] });
  expect(onPaper.units.every(({ paper, patches }) => paper && patches.length === 1)).toBe(true);
  expect(onPaper.roles.map(({ id }) => id)).toEqual(['heaven', 'sun']);
});
