/** Blocks from numbers on the page: every form by its picture, its numbers in any order, what cannot be refused with the reason. */
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { drawForm, FORMS, type Form } from '../../src/quilt/forms/forms.ts';
import { placesOf } from '../../src/quilt/places.ts';
import { BuiltPage, shot } from './built-page.ts';

let site: BuiltPage;
let page: Page;

beforeAll(async () => {
  site = await BuiltPage.start();
  page = await site.open({ bypassCSP: true });
  await page.getByRole('button', { name: 'Begin a new quilt' }).click();
  await page.getByRole('button', { name: 'Add a block', exact: true }).click();
}, 120_000);

afterAll(async () => {
  await site?.stop();
});

const patchesShown = (): Promise<number> => page.locator('yw-drawn-picture .patch').count();

const type = async (label: string, text: string): Promise<void> => {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Enter');
};

const fault = async (label: string): Promise<string> => {
  const field = page
    .locator('yw-length-field, yw-number-field')
    .filter({ has: page.getByLabel(label, { exact: true }) });
  return (await field.locator('.fault:not([hidden])').allTextContents()).join();
};

test('each form is chosen by its picture, and drawn patch for patch', async () => {
  for (const spec of FORMS) {
    await page.getByRole('radio', { name: spec.title, exact: true }).check();
    const units = drawForm(spec.start('in') as Form, 'in');
    const patches = units.reduce((sum, unit) => sum + placesOf(unit).length * unit.patches.length, 0);
    await expect.poll(patchesShown, { message: spec.kind }).toBe(patches);
  }
  expect(site.errors).toEqual([]);
});

test('numbers may be typed in any order: one that is refused says why, and is taken once another makes room for it', async () => {
  await page.getByRole('radio', { name: 'Ring of wedges' }).check();
  await type('Outer edge', '12');
  await expect
    .poll(() => fault('Outer edge'))
    .toMatch(/Expected less than half the “Side”, which is half of 18 in; found 12 in/);
  expect(await page.getByLabel('Outer edge', { exact: true }).getAttribute('aria-invalid')).toBe('true');
  await type('Side', '26');
  await expect.poll(() => fault('Outer edge')).toBe('');
  expect(await page.getByLabel('Outer edge', { exact: true }).inputValue()).toBe('12 in');
  // One that must go into another evenly follows it.
  await type('Roles in turn', '4');
  await expect.poll(patchesShown).toBe(25);
  await type('Wedges', '18');
  await expect.poll(() => page.getByLabel('Roles in turn').inputValue()).toBe('3');
  await expect.poll(patchesShown).toBe(23);
  await type('Roles in turn', '4');
  await expect
    .poll(() => fault('Roles in turn'))
    .toMatch(/Expected a number that goes evenly into “Wedges”, which is 18; found 4/);
  await page.getByLabel('Shape of the outer edge').selectOption('pointed');
  await page.getByLabel('Points stand out').waitFor();
  await shot(page, 'wedge-ring');
});

test('all lengths change with the side, where that is asked for', async () => {
  await page.getByRole('radio', { name: 'Spiked arc' }).check();
  await page.getByLabel('All its lengths change with the side').check();
  await type('Side', '15');
  await expect.poll(() => page.getByLabel('Base of the points', { exact: true }).inputValue()).toBe('7 1/2 in');
  expect(await page.getByLabel('Tips', { exact: true }).inputValue()).toBe('12 in');
  await page.getByRole('radio', { name: 'Ring of wedges' }).check();
});

test('axe finds nothing serious in the numbers, a fault among them', async () => {
  await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core/axe.min.js') });
  const results = await page.evaluate(() =>
    (window as unknown as { axe: { run: (root: string) => Promise<AxeResults> } }).axe.run('yw-form-numbers'),
  );
  expect(results.violations.map(({ id }) => id)).toEqual([]);
});
