import { expect, test } from 'vitest';
import { drawLayout, layoutTextSize } from '../../src/draw/draw-layout.ts';
import { toSvg } from '../../src/draw/to-svg.ts';
import { unroll } from '../../src/draw/unroll.ts';
import { allItems, bolt, group, stripAnswer } from './sample-group.ts';

test('a bolt is one length: its layouts end to end, each as often as it is cut, strips numbered throughout', () => {
  const [length, piece, ...more] = unroll(group, stripAnswer);
  expect(more).toEqual([]);
  expect(length).toMatchObject({ id: 'bolt', piece: null, times: 1, used: 10 });
  expect(length?.laid.map(({ at }) => at)).toEqual([0, 4, 7]);
  expect(length?.strips.map(({ number, from, height }) => [number, from, height])).toEqual([
    [null, 0, 1],
    [1, 1, 3],
    [2, 4, 3],
    [3, 7, 3],
  ]);
  expect(piece).toMatchObject({ id: 'bolt/rest', piece: 'rest', times: 2, used: 3 });
});

test('every blank of the answer is drawn where it lies, and each strip is numbered and measured', () => {
  const [length] = unroll(group, stripAnswer);
  const drawing = drawLayout({
    cloth: bolt,
    length: length!,
    blanks: group.blanks,
    steps: [],
    whole: 12,
    textSize: 0.4,
    write: (value) => `${value} in`,
  });
  const items = allItems(drawing.items);
  const blanks = items.filter((item) => item.kind === 'group' && item.class === 'blank');
  expect(blanks).toHaveLength(6);
  const texts = items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
  expect(texts).toEqual(expect.arrayContaining(['trim', '1', '2', '3', 'left', '1 in', '3 in', '2 in', '10 in']));
  expect(texts.filter((text) => text === 'A1m')).toHaveLength(6);
  const paths = items.flatMap((item) => (item.kind === 'path' && item.class === 'cloth' ? item.runs : []));
  expect(paths[0]).toEqual({
    start: [0, 1],
    steps: [{ to: [4, 1] }, { to: [4, 4] }, { to: [0, 4] }],
    closed: true,
  });
});

test('a drawing that is shown smaller has larger text in its own unit, so that it reads the same', () => {
  const wide = layoutTextSize(42, 800, 12);
  const narrow = layoutTextSize(42, 360, 12);
  expect(narrow).toBeGreaterThan(wide * 2);
});

test('an SVG file stands alone and survives names with signs in them', () => {
  const [length] = unroll(group, stripAnswer);
  const cloth = { ...bolt, name: 'Salt & <pepper>' };
  const write = (value: number) => `${value} in`;
  const svg = toSvg(
    drawLayout({ cloth, length: length!, blanks: group.blanks, steps: [], whole: 12, textSize: 0.4, write }),
    20,
  );
  expect(svg).toContain('<title>Salt &amp; &lt;pepper&gt;, unrolled</title>');
  expect(svg).not.toMatch(/NaN|undefined|https?:\/\/(?!www\.w3\.org\/2000\/svg)/);
  expect(svg.match(/data-blank="A1 mirrored"/g)).toHaveLength(6);
});
