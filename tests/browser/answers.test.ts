import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BuiltPage, planned, readSlip, replanned, shot } from './built-page.ts';

let site: BuiltPage;
let page: Page;

beforeAll(async () => {
  site = await BuiltPage.start();
  page = await site.open({ bypassCSP: true });
  await planned(page);
}, 120_000);

afterAll(async () => {
  await site?.stop();
});

const roll = (cloth: string) => page.getByRole('article', { name: cloth, exact: true });

async function type(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await field.press('Enter');
}

/** Asks whether so much of a cloth will do; its answer. */
async function ask(cloth: string, have: string): Promise<Locator> {
  const own = roll(cloth).locator('.will-do');
  if (!(await own.evaluate((details) => (details as HTMLDetailsElement).open))) {
    await own.locator('summary').first().click();
  }
  await type(own.getByLabel(`In hand of ${cloth}`), have);
  return own.locator('.will-do-answer');
}

const answered = (cloth: string): Promise<void> =>
  roll(cloth).getByRole('button', { name: 'Stop asking' }).waitFor({ state: 'detached', timeout: 90_000 });

test('what cannot be a length in hand is said under the field, and nothing is asked', async () => {
  const fault = roll('Noon gold').locator('.will-do .fault');
  for (const [text, words] of [
    ['', /Say how much you have: 1 1\/4 yd/],
    ['1 1/4', /1 1\/4 of what\? Write its unit/],
    ['much', /expected in, cm, mm, yd or m/],
    ['-1 yd', /must be above zero/],
  ] as const) {
    await ask('Noon gold', text);
    await expect.poll(() => fault.textContent(), { timeout: 5_000 }).toMatch(words);
  }
  expect(await roll('Noon gold').locator('.will-do-answer').count()).toBe(0);
});

test('1 1/4 yd is short; a plan that fits is looked at, taken over in one step, and taken back', async () => {
  const before = await readSlip(page);
  const answer = await ask('Rising swifts', '1 1/4 yd');
  // The plan stands while the question is answered.
  expect(await readSlip(page)).toEqual(before);
  await answered('Rising swifts');
  await expect
    .poll(() => answer.locator('.verdict').first().textContent())
    .toMatch(/1 1\/4 yd of Rising swifts is short as wanted; .* would fit/);
  expect(await answer.locator('li').first().textContent()).toMatch(/As wanted:\s*short, proved/);
  const fitting = answer.locator('li[data-verdict="fits"]').first();
  await fitting.locator('yw-look > details > summary').click();
  await expect.poll(() => fitting.locator('.drawing [data-blank]').count(), { timeout: 10_000 }).toBeGreaterThan(4);
  expect(await fitting.locator('.cautions').count()).toBe(1);
  await shot(page, 'answers-look');

  await replanned(page, () => fitting.getByRole('button', { name: 'Take this plan' }).click());
  const swifts = async () => (await readSlip(page)).find(({ name }) => name === 'Rising swifts')!;
  await expect.poll(async () => (await swifts()).buy, { timeout: 30_000 }).toBe('nothing to buy');
  expect(await answer.locator('.verdict').first().textContent()).toMatch(/^Out of date/);
  expect(await answer.getByRole('button').count()).toBe(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await planned(page);
  expect(await readSlip(page)).toEqual(before);
  expect(await answer.locator('.verdict').first().textContent()).toMatch(/^1 1\/4 yd/);
});

test('a question is stopped, and what was found stays', async () => {
  const answer = await ask('Thistledown', '1/2 yd');
  await roll('Thistledown').getByRole('button', { name: 'Stop asking' }).click();
  await expect.poll(() => answer.locator('.verdict').first().textContent()).toMatch(/Stopped; what was found stays/);
});

test('what facing and room cost stands beside the plan, with the rule of thumb, proved or not', async () => {
  const prices = page.locator('yw-prices');
  await prices.getByRole('button', { name: 'Work it out' }).click();
  await prices.getByRole('button', { name: 'Stop asking' }).waitFor({ state: 'detached', timeout: 90_000 });
  const money = async (name: string) => {
    const line = prices.locator('.versions > li', { has: page.locator('.bill-head strong', { hasText: name }) });
    return Number(/[\d.]+/.exec((await line.locator('.bill-price').textContent()) ?? '')![0]);
  };
  const wanted = await money('Your plan');
  expect(await money('Facing ignored')).toBeLessThanOrEqual(wanted);
  expect(await money('No room')).toBeLessThanOrEqual(wanted);
  expect(await money('By rule of thumb')).toBeGreaterThan(wanted);
  expect(await prices.locator('.proof').allTextContents()).toHaveLength(2);
});

test('a binding is added, sized and taken out; it is in plan, tally and words', async () => {
  const before = await readSlip(page);
  await replanned(page, () => page.getByRole('button', { name: 'Add binding' }).click());
  const binding = page.locator('yw-joined-form');
  // Its first size waits to be typed.
  const held = () => binding.getByLabel('Total length').evaluate((field) => field === document.activeElement);
  await expect.poll(held, { timeout: 5_000 }).toBe(true);
  await binding.getByLabel('Cloth').selectOption('Moon pearl');
  // castillejacotton.blogspot.com/2013/06, read: 50 by 60 in, 2 in lost a join, 6 strips; there of 40 in, here of 42.
  await type(binding.getByLabel('Total length'), '220 in');
  await replanned(page, () => type(binding.getByLabel('Lost at each join'), '2 in'));
  await expect
    .poll(() => binding.locator('.joined-words').textContent(), { timeout: 20_000 })
    .toMatch(/^6 strips of 42 in, 2 1\/2 in wide, across the cloth; joined end to end, 5 joins, 2 in lost at each/);
  await planned(page);
  // Six strips of 2 1/2 in and 1 in squared off: 16 in.
  expect((await readSlip(page)).find(({ name }) => name === 'Moon pearl')).toMatchObject({
    need: expect.stringMatching(/^needs 16 in/),
  });
  await type(binding.getByLabel('Strip width'), '-1');
  expect(await binding.getByRole('alert').filter({ hasText: 'above zero' }).count()).toBe(1);
  await replanned(page, () => binding.getByRole('button', { name: 'Take “Binding” out' }).click());
  expect(await readSlip(page)).toEqual(before);
});

test('axe finds nothing serious in what was answered, nor does it run out of a narrow page', async () => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.evaluate(() => {
    for (const details of document.querySelectorAll<HTMLDetailsElement>('.will-do, .prices li:last-child details')) {
      details.open = true;
    }
  });
  // Of the tries one look is enough: they are alike, and long.
  await page
    .locator('.will-do-answer .look')
    .first()
    .evaluate((details) => {
      (details as HTMLDetailsElement).open = true;
    });
  await page.waitForTimeout(500);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core/axe.min.js') });
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const found = await page.evaluate(() =>
      (window as unknown as { axe: { run: (at: string) => Promise<AxeResults> } }).axe.run('.will-do-answer, .prices'),
    );
    expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 120)}`)).toEqual([]);
  }
});

test('nothing went wrong unseen', () => {
  expect(site.errors).toEqual([]);
});
