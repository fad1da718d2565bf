import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readPdf } from '../paper/read-pdf.ts';
import { BuiltPage, planned } from './built-page.ts';

let built: BuiltPage;
beforeAll(async () => {
  built = await BuiltPage.start();
});
afterAll(() => built.stop());

test('what is ticked is saved as one PDF; it can be cancelled, and nothing was loaded for it before', async () => {
  const page = await built.open();
  await planned(page);
  const loaded = (): readonly string[] => built.requests.filter((url) => /paper-worker|noto-sans/.test(url));
  expect(loaded()).toEqual([]);
  await page.getByRole('button', { name: 'Print…' }).click();
  const bench = page.getByRole('dialog', { name: 'Print' });

  // Cancelled at once, nothing is saved and all can be asked for anew.
  const saved: string[] = [];
  page.on('download', (file) => saved.push(file.suggestedFilename()));
  await bench.getByRole('button', { name: 'Save as PDF' }).click();
  await bench.getByRole('button', { name: 'Cancel' }).click();
  await bench.getByRole('button', { name: 'Cancel' }).waitFor({ state: 'detached' });
  expect(saved).toEqual([]);

  for (const name of ['Cutting booklet', 'Templates', 'Sewing sheet']) await bench.getByLabel(name).uncheck();
  await bench.getByLabel('Paper', { exact: true }).selectOption('A4');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    bench.getByRole('button', { name: 'Save as PDF' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('solstice-dial.pdf');
  const pdf = await readPdf(new Uint8Array(readFileSync(await download.path())));
  await expect.poll(() => bench.getByRole('status').textContent()).toContain(`${pdf.pages.length} pages saved`);
  // A slip, a sheet of labels, and foundations: A4 all of them.
  expect(pdf.pages.length).toBeGreaterThanOrEqual(3);
  for (const { width, height } of pdf.pages) expect([width, height].map(Math.round).sort()).toEqual([595, 842]);
  expect(pdf.pages.flatMap(({ texts }) => texts.map(({ text }) => text))).toContain('Dial 1');
  expect(built.errors).toEqual([]);
});
