import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Outline } from '../../src/shape/outline.ts';
import { clothOf, oblong, patchOf, quiltOf, unitOf } from '../cutting/sample-quilt.ts';
import { BuiltPage, dropFile, shot } from './built-page.ts';

let site: BuiltPage;
let page: Page;

/** A: four squares, which hold each other. B: three strips in an order that cannot be sewn, their print upright. */
const squares = [oblong(-1, 1, 2, 2), oblong(1, 1, 2, 2), oblong(-1, -1, 2, 2), oblong(1, -1, 2, 2)];
const strips: readonly Outline[] = [oblong(5, 1.5, 4, 1), oblong(5, -0.5, 4, 1), oblong(5, 0.5, 4, 1)];
const numbered = (outlines: readonly Outline[]) => outlines.map((outline, i) => patchOf(i + 1, outline));
const quilt = quiltOf(
  [
    unitOf([], { count: 1 }, { id: 'A', paper: true, patches: numbered(squares) }),
    unitOf([], { count: 1 }, { id: 'B', paper: true, patches: numbered(strips) }),
  ],
  { to: 'upright' },
  clothOf('one-way'),
);

beforeAll(async () => {
  site = await BuiltPage.start();
  page = await site.open({ bypassCSP: true });
  await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core/axe.min.js') });
  await dropFile(page, 'trouble.yardwright.json', JSON.stringify(quilt));
  await page.getByText('Sewing and joining Block').click();
}, 120_000);

afterAll(async () => {
  expect(site.errors).toEqual([]);
  await site.stop();
});

test('a unit whose order cannot be sewn is put in one that can, after a wrong one was told apart', async () => {
  const unit = page.locator('yw-unit-order').filter({ has: page.getByRole('heading', { name: /^B/ }) });
  await expect.poll(() => unit.locator('> section > .fault').textContent()).toContain('B2 shares no straight seam');
  const field = unit.getByLabel('Sewing order of B');
  await field.fill('2 1 3');
  await field.press('Enter');
  await expect.poll(() => unit.getByRole('alert').textContent()).toContain('B1 shares no straight seam');
  expect(await unit.locator('ol.steps').count()).toBe(0);
  await unit.getByLabel('Orders that can be sewn').selectOption('1 3 2');
  expect(await unit.locator('ol.steps > li').count()).toBe(3);
  await unit.getByRole('button', { name: 'Number B in this order' }).click();
  await expect.poll(() => field.inputValue()).toBe('1 2 3');
  expect(await unit.locator('> section > .fault').count()).toBe(0);
  // Upright from the front; the seams are level, so that each flip turns the print upside down (derived).
  const lies = await unit.locator('.before-flip li p').allTextContents();
  expect(lies.map((words) => /points to (\d+)/.exec(words)?.[1])).toEqual(['12', '6', '6']);
});

test('a unit that cannot be sewn says what holds, and is parted where it is shown', async () => {
  const unit = page.locator('yw-unit-order').first();
  expect(await unit.locator('.faults li').allTextContents()).toHaveLength(4);
  await unit.getByRole('button', { name: 'Part A so' }).first().click();
  await expect.poll(() => page.locator('yw-unit-order').count()).toBe(3);
  expect(await page.locator('yw-unit-order .faults').count()).toBe(0);
  expect(await page.locator('.joining').textContent()).toContain('Sew A to C');
});

test('axe finds nothing in it, by day and by night, and it stays within a narrow page', async () => {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const found = await page.evaluate(() =>
      (window as unknown as { axe: { run: (where: string) => Promise<AxeResults> } }).axe.run('yw-sewing'),
    );
    expect(
      found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 90)).join(' · ')}`),
    ).toEqual([]);
  }
  await page.setViewportSize({ width: 390, height: 844 });
  await page.waitForTimeout(200);
  const beyond = await page.evaluate(() =>
    [...document.querySelectorAll('yw-sewing *')]
      .filter((part) => part.getBoundingClientRect().right > innerWidth + 1)
      .map((part) => `${part.tagName}.${part.getAttribute('class')}`),
  );
  expect(beyond).toEqual([]);
  await shot(page, 'sewing-390');
});
