import { beforeAll, describe, expect, it } from 'vitest';
import { paperFaces } from '../../src/cli/paper-faces.ts';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { toPdf } from '../../src/draw/to-pdf.ts';
import { toSvg } from '../../src/draw/to-svg.ts';
import { makeBooklet } from '../../src/paper/make-booklet.ts';
import { type PaperChoice, type PaperKind, usualChoice } from '../../src/paper/paper-choice.ts';
import { type PapersInput, paperPages } from '../../src/paper/papers.ts';
import { makeTally } from '../../src/plan/make-tally.ts';
import { Packer } from '../../workers/packer.ts';
import { type PdfRead, readPdf } from './read-pdf.ts';
import { scenario } from './sample-papers.ts';

const NAMES = ['solstice-dial', 'garden-gate'] as const;
type Planned = Omit<PapersInput, keyof PaperChoice>;
const planned = new Map<string, Planned>();

beforeAll(async () => {
  for (const name of NAMES) {
    const quilt = scenario(name);
    const cutList = makeCutList(quilt);
    const answers = [];
    for (const { job } of cutList.groups) answers.push(await new Packer().plan({ ...job, seconds: 0.5 }));
    const tally = makeTally(quilt, cutList, answers);
    planned.set(name, { quilt, cutList, answers, tally, shown: quilt.unit, plan: (job) => new Packer().plan(job) });
  }
});

async function made(
  name: string,
  kind: PaperKind,
  choice: Partial<PaperChoice> & { shown?: 'in' | 'cm' } = {},
): Promise<PdfRead> {
  const input = { ...planned.get(name)!, ...usualChoice('in'), ...choice };
  const pages = await paperPages(kind, input);
  expect(pages.map((page) => toSvg(page, 96)).every((svg) => svg.startsWith('<svg') && !svg.includes('NaN'))).toBe(
    true,
  );
  return readPdf(toPdf({ title: kind, pages, scale: 72, faces: paperFaces() }));
}

/** Text on the page with some air, nothing set in a face that the file does not hold, no sign without a glyph. */
function expectPages(pdf: PdfRead, air: number): void {
  expect(pdf.pages.length).toBeGreaterThan(0);
  for (const { width, height, texts } of pdf.pages) {
    for (const { text, corners } of texts) {
      const within = corners.every(([x, y]) => x > air && x < width - air && y > air && y < height - air);
      expect(within, `"${text}" at ${corners[0]}`).toBe(true);
    }
  }
  expect([...pdf.faces.values()].every((isHeld) => isHeld)).toBe(true);
  const shown = new Set(pdf.pages.flatMap(({ texts }) => texts.flatMap(({ text }) => [...text.replaceAll(' ', '')])));
  expect([...shown].filter((sign) => !pdf.signs.has(sign) && sign !== '⁄')).toEqual([]);
}

describe.each(NAMES)('%s', (name) => {
  it.each([
    ['letter', 'in'],
    ['a4', 'cm'],
  ] as const)('booklet, slip and sewing sheet on %s, in %s', async (paper, shown) => {
    const pdf = await made(name, 'booklet', { paper, shown });
    expectPages(pdf, 18);
    // Every mark that the booklet tells stands on its pages, built-up fractions and all.
    const { quilt, cutList, answers } = planned.get(name)!;
    const { sittings } = makeBooklet({ quilt, cutList, answers, shown });
    const told = pdf.pages.flatMap(({ texts }) => texts.map(({ text }) => plainFractions(text)));
    const strips = sittings.flatMap(({ lengths }) => lengths.flatMap((length) => length.strips));
    for (const mark of new Set(strips.flatMap(({ cuts }) => cuts.flatMap(({ near, far }) => [near, far])))) {
      expect(told).toContain(mark);
    }
    expectPages(await made(name, 'slip', { paper }), 18);
    expectPages(await made(name, 'sewing', { paper, shown }), 18);
  });

  it('the slip for a phone is one narrow page that tells every cloth and the total', async () => {
    const pdf = await made(name, 'slip', { slip: 'narrow' });
    expectPages(pdf, 5);
    expect(pdf.pages).toHaveLength(1);
    const text = pdf.pages[0]!.texts.map((each) => each.text).join('\n');
    const { tally } = planned.get(name)!;
    for (const cloth of tally.cloths) expect(text).toContain(cloth.name);
    expect(text).toContain(tally.price!.toFixed(2));
  });
});

describe('bag labels', () => {
  const titles = (pdf: PdfRead, pattern: RegExp): readonly string[] =>
    pdf.pages.flatMap(({ texts }) => texts.map(({ text }) => text)).filter((text) => pattern.test(text));

  it.each([8, 10, 12] as const)('%i to a sheet: one for each block, one for the binding', async (perSheet) => {
    const pdf = await made('garden-gate', 'labels', { paper: 'a4', labels: { perSheet, by: 'block' } });
    expectPages(pdf, 18);
    expect(titles(pdf, /^Gate \d+$/)).toEqual(Array.from({ length: 12 }, (_, i) => `Gate ${i + 1}`));
    expect(titles(pdf, /^Binding$/).length).toBeGreaterThanOrEqual(1);
    expect(pdf.pages).toHaveLength(Math.ceil(13 / perSheet));
  });

  it('one for each unit, and what is counted on them is what the blocks need', async () => {
    const { quilt, cutList } = planned.get('solstice-dial')!;
    const pdf = await made('solstice-dial', 'labels', { labels: { perSheet: 12, by: 'unit' } });
    expectPages(pdf, 18);
    expect(titles(pdf, /^Dial [123], [ABCD]$/)).toHaveLength(12);
    const counted = titles(pdf, /^\d+ × /).reduce((sum, text) => sum + Number.parseInt(text, 10), 0);
    const demand = cutList.groups.flatMap((group) => group.blanks).reduce((sum, blank) => sum + blank.demand, 0);
    expect(counted).toBe(demand);
    expect(quilt.blocks[0]!.count).toBe(3);
  });
});

/** "1³⁄₁₆" as "1 3/16". */
function plainFractions(text: string): string {
  const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹';
  const lowered = '₀₁₂₃₄₅₆₇₈₉';
  const plain = [...text]
    .map((sign) =>
      raised.includes(sign) ? `^${raised.indexOf(sign)}` : lowered.includes(sign) ? `${lowered.indexOf(sign)}` : sign,
    )
    .join('');
  return plain
    .replace(/(?<=\d)\^/, ' ')
    .replaceAll('^', '')
    .replace('⁄', '/');
}
