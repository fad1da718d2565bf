import { describe, expect, it } from 'vitest';
import { placesOf } from '../../src/quilt/places.ts';
import { unitsOf } from '../../src/quilt/units-of.ts';
import { isInside } from '../../src/shape/polygon.ts';
import { findPieces, handsOf, type Motion, modelOf } from './find-pieces.ts';
import type { PageRead, PdfRead, Point } from './read-pdf.ts';
import { scenario, unplannedPdf } from './sample-papers.ts';

const INCH = 72;
/** ISO 216 and ANSI/ASME Y14.1, in points. */
const SHEETS = { letter: [612, 792], a4: [595.28, 841.89] } as const;

function squares(page: PageRead, side: number): readonly (readonly Point[])[] {
  return page.runs
    .filter(({ corners, closed }) => {
      const sides = corners.map((corner, i) => {
        const next = corners[(i + 1) % corners.length]!;
        return Math.hypot(next[0] - corner[0], next[1] - corner[1]);
      });
      return closed && corners.length === 4 && sides.every((each) => Math.abs(each - side) < 0.01);
    })
    .map(({ corners }) => corners);
}

/** What holds of every sheet. */
function expectSheets(pdf: PdfRead, sheet: readonly [number, number]): void {
  for (const page of pdf.pages) {
    expect([page.width, page.height].sort((a, b) => a - b).map((side) => Math.round(side))).toEqual(
      sheet.map(Math.round),
    );
    expect(squares(page, INCH)).toHaveLength(1);
    expect(squares(page, (2 / 2.54) * INCH)).toHaveLength(1);
    for (const { text, corners } of page.texts) {
      for (const [x, y] of corners) {
        expect(x > 18 && x < page.width - 18 && y > 18 && y < page.height - 18, `"${text}" at ${x}, ${y}`).toBe(true);
      }
    }
  }
  expect(pdf.faces.size).toBeGreaterThan(0);
  expect([...pdf.faces.values()].every((isHeld) => isHeld)).toBe(true);
}

describe.each(['letter', 'a4'] as const)('foundations on %s', (paper) => {
  it('are the mirror image of the model, as many as the paper’s uses ask', async () => {
    const quilt = scenario('solstice-dial');
    const pdf = (await unplannedPdf(quilt, 'foundations', { paper, foundation: { kind: 'freezer', uses: 5 } }))!;
    expectSheets(pdf, SHEETS[paper]);
    // Of the eleven, A4 takes two head to tail; Letter, shorter, one from corner to corner.
    expect(pdf.pages.length).toBe(paper === 'a4' ? 6 : 11);
    const block = quilt.blocks[0]!;
    const units = unitsOf(block, quilt.unit).filter((unit) => unit.paper);
    expect(units.map(({ id }) => id)).toEqual(['A', 'B']);
    for (const unit of units) {
      for (const hand of handsOf(unit)) {
        const needed = placesOf(unit).filter(({ mirrored }) => mirrored === hand).length * block.count;
        const model = modelOf(unit, quilt.unit, hand, true);
        const found = pdf.pages.flatMap((page) => findPieces(page, model).map((motion) => ({ page, motion })));
        const named = found.filter(({ page, motion }) => model.every((patch) => isNamed(page, patch, motion)));
        expect(named).toHaveLength(Math.ceil(needed / 5));
      }
    }
  });

  it('parts of a template too large for a sheet join at their crosses', async () => {
    const quilt = scenario('solstice-dial');
    const pdf = (await unplannedPdf(quilt, 'templates', { paper }))!;
    expectSheets(pdf, SHEETS[paper]);
    const ground = unitsOf(quilt.blocks[0]!, quilt.unit).find(({ id }) => id === 'D')!;
    const model = modelOf(ground, quilt.unit, false, false);
    const parts = pdf.pages.flatMap((page) => findPieces(page, model).map((motion) => ({ page, motion })));
    expect(parts.length).toBeGreaterThan(1);
    // A cross of one letter is one place of the model on every sheet that shows it.
    const places = new Map<string, Point[]>();
    for (const { page, motion } of parts) {
      for (const { letter, at } of crossesOf(page)) {
        places.set(letter, [...(places.get(letter) ?? []), inverse(motion)(at)]);
      }
    }
    expect(places.size).toBeGreaterThanOrEqual(2 * (parts.length - 1));
    for (const [letter, [first, second, ...more]] of places) {
      expect(more, letter).toHaveLength(0);
      expect(Math.hypot(first![0] - second![0], first![1] - second![1]), letter).toBeLessThan(0.72);
    }
  });
});

it('foundations that are sewn through are printed one each', async () => {
  const quilt = scenario('solstice-dial');
  const small = { ...quilt, blocks: quilt.blocks.map((block) => ({ ...block, count: 1 })) };
  const pdf = (await unplannedPdf(small, 'foundations', { paper: 'a4', foundation: { kind: 'sewn' } }))!;
  const [long] = unitsOf(small.blocks[0]!, small.unit);
  const model = modelOf(long!, small.unit, false, true);
  expect(pdf.pages.flatMap((page) => findPieces(page, model))).toHaveLength(8);
});

it('templates show the right side, lengths in centimetres come out at their size', async () => {
  const quilt = scenario('garden-gate');
  expect(await unplannedPdf(quilt, 'foundations')).toBeNull();
  const pdf = (await unplannedPdf(quilt, 'templates', { paper: 'a4' }))!;
  for (const unit of unitsOf(quilt.blocks[0]!, quilt.unit)) {
    for (const patch of modelOf(unit, quilt.unit, false, false)) {
      expect(
        pdf.pages.some((page) => findPieces(page, [patch]).some((motion) => isNamed(page, patch, motion))),
        patch.name,
      ).toBe(true);
    }
  }
});

/** Whether the patch's name stands in it. */
function isNamed(
  page: PageRead,
  { name, corners }: { readonly name: string; readonly corners: readonly Point[] },
  motion: Motion,
): boolean {
  const polygon = corners.map(motion);
  return page.texts.some(({ text, middle }) => text.split(/ [·(]/)[0] === name && isInside(polygon, ...middle));
}

/** Two short lines that cross square in their middles, and the letter at their upper right. */
function crossesOf(page: PageRead): readonly { readonly letter: string; readonly at: Point }[] {
  const level = page.runs.filter(
    ({ corners: [a, b], closed }) =>
      !closed && a && b && Math.abs(b[0] - a[0] - 0.24 * INCH) < 0.01 && Math.abs(a[1] - b[1]) < 0.01,
  );
  return level.flatMap(({ corners: [a, b] }) => {
    const at: Point = [(a![0] + b![0]) / 2, a![1]];
    const letter = page.texts.find(
      ({ text, middle }) =>
        /^[a-z]{1,2}$/.test(text) && Math.hypot(middle[0] - at[0] - 0.09 * INCH, middle[1] - at[1] - 0.09 * INCH) < 2,
    );
    return letter === undefined ? [] : [{ letter: letter.text, at }];
  });
}

function inverse(motion: Motion): Motion {
  const [origin, right] = [motion([0, 0]), motion([1, 0])];
  const [c, s] = [right[0] - origin[0], right[1] - origin[1]];
  return ([x, y]) => [(x - origin[0]) * c + (y - origin[1]) * s, -(x - origin[0]) * s + (y - origin[1]) * c];
}
