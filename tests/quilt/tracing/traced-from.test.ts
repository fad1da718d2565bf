import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { addBlock } from '../../../src/quilt/add-block.ts';
import { convertQuilt } from '../../../src/quilt/convert-quilt.ts';
import { readQuilt } from '../../../src/quilt/read-quilt.ts';
import { drawTracing } from '../../../src/quilt/tracing/draw-tracing.ts';
import { type TracedFrom, tracingFault } from '../../../src/quilt/tracing/traced-from.ts';
import { writeQuilt } from '../../../src/quilt/write-quilt.ts';
import { traceRing } from './trace-clicks.ts';

const tracing = traceRing({ count: 8, inner: 3, outer: 6, traced: 2 }, [7, 7]);
const traced: TracedFrom = {
  picture: 'data:image/jpeg;base64,/9j/4AAQSkZJRg==',
  size: { kind: 'length', from: [0, 0], to: [100, 0], length: '1 in' },
  unit: 'in',
  tracing,
};

const dial = readQuilt(
  readFileSync(new URL('../../../scenarios/solstice-dial.yardwright.json', import.meta.url), 'utf8'),
);

function withTracing(kept: unknown): string {
  const drawn = drawTracing(tracing, { name: 'Traced', known: [], within: 0.1 });
  if (!('block' in drawn)) throw new Error(drawn.faults.join(' '));
  return writeQuilt(addBlock(dial, { ...drawn.block, traced: kept as TracedFrom }).quilt);
}

describe('in a quilt file', () => {
  test('picture and tracing come back as they were, in their own unit whatever the quilt’s', () => {
    const quilt = readQuilt(withTracing(traced));
    expect(quilt.blocks.at(-1)!.traced).toEqual(traced);
    expect(convertQuilt(quilt, 'cm').blocks.at(-1)!.traced).toEqual(traced);
  });

  test.each([
    ['a page', { ...traced, picture: 'data:text/html;base64,PHNjcmlwdD4=' }],
    ['a drawing that may hold scripts', { ...traced, picture: 'data:image/svg+xml;base64,PHN2Zz4=' }],
    ['an address elsewhere', { ...traced, picture: 'https://example.org/a.jpg' }],
    ['words after the picture', { ...traced, picture: `${traced.picture}" onerror="x` }],
  ])('%s is no picture', (_, kept) => {
    expect(() => readQuilt(withTracing(kept))).toThrow(/expected a picture as/);
  });

  test('a tracing whose parts do not fit together is refused', () => {
    const [first, ...others] = tracing.patches;
    const broken = [
      { ...tracing, corners: tracing.corners.slice(1) },
      { ...tracing, next: 2 },
      { ...tracing, units: [] },
      { ...tracing, patches: [{ ...first!, steps: first!.steps.slice(1) }, ...others] },
      { ...tracing, begun: { start: 999, steps: [] } },
    ];
    for (const each of broken) {
      expect(tracingFault(each)).not.toBeNull();
      expect(() => readQuilt(withTracing({ ...traced, tracing: each }))).toThrow(/traced\.tracing/);
    }
    expect(tracingFault(tracing)).toBeNull();
  });
});
