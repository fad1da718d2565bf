import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BuiltPage, planned, readSlip, replanned, type SlipLine, shot } from './built-page.ts';

let site: BuiltPage;
let page: Page;

beforeAll(async () => {
  site = await BuiltPage.start();
  page = await site.open();
}, 120_000);

afterAll(async () => {
  await site?.stop();
});

const line = (slip: readonly SlipLine[], name: string): SlipLine => {
  const found = slip.find((one) => one.name === name);
  if (found === undefined) {
    throw new Error(`${name} is not on the slip: ${slip.map((one) => one.name).join(', ')}`);
  }
  return found;
};

const role = (name: string) => page.getByRole('group', { name, exact: true });

/** "needs 31 1/2 in; …" as 31.5. */
function need(slip: readonly SlipLine[], name: string): number {
  const found = /needs (?:(\d+) )?(?:(\d+)\/(\d+)|(\d+)) in/.exec(line(slip, name).need)!;
  const [, whole = '0', top = '0', bottom = '1', plain = '0'] = found;
  return Number(whole) + Number(top) / Number(bottom) + Number(plain);
}

test('the example is planned on opening: seven cloths to buy, priced, each with its proof', async () => {
  await planned(page);
  const slip = await readSlip(page);
  expect(slip.map((one) => one.name)).toEqual([
    'Noon gold',
    'Gnomon bronze',
    'Mown path',
    'Yew rows',
    'Thistledown',
    'Foxglove spires',
    'Rising swifts',
  ]);
  for (const one of slip) {
    expect(one.proof).toMatch(/^(Proved least|Not proved least)\. ./);
  }
  const total = Number(/[\d.]+/.exec((await page.locator('.total strong').textContent())!)![0]);
  expect(total).toBeCloseTo(
    slip.reduce((sum, one) => sum + (one.price ?? 0), 0),
    2,
  );
  await shot(page, 'desktop');
});

test('pointing at a patch lights its blanks on the cloth, and a tag lights patch and blanks alike', async () => {
  const strokes = (where: string) =>
    page
      .locator(`${where} [data-blank="C1"] > path.cloth`)
      .evaluateAll((paths) => [...new Set(paths.map((path) => getComputedStyle(path).strokeWidth))]);
  expect(await strokes('yw-cloth-roll')).toEqual(['0.9px']);
  await page.locator('yw-block-view .patch[data-patch="C1"]').nth(5).hover();
  expect(await strokes('yw-cloth-roll')).toEqual(['3.5px']);
  expect(await page.locator('.lit-line').textContent()).toMatch(
    /^C1: Ring of hours\. 61 to cut, 1 spare among them: Foxglove spires, strip/,
  );
  await page.mouse.move(0, 0);
  expect(await strokes('yw-cloth-roll')).toEqual(['0.9px']);
  await page.getByLabel('Blanks cut from Foxglove spires').getByRole('button', { name: 'C1' }).focus();
  expect(await strokes('yw-block-view')).toEqual(['3.5px']);
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Save to a file' }).focus();
  expect(await strokes('yw-block-view')).toEqual(['3.5px']);
  await page.keyboard.press('Escape');
  expect(await strokes('yw-block-view')).toEqual(['0.9px']);
});

test('another cloth for a role moves its blanks to that cloth', async () => {
  const before = await readSlip(page);
  await replanned(page, () => role('Ring of hours').getByLabel('Cloth').selectOption('Rising swifts'));
  const after = await readSlip(page);
  expect(after.map((one) => one.name)).not.toContain('Foxglove spires');
  expect(need(after, 'Rising swifts')).toBeGreaterThan(need(before, 'Rising swifts'));
  expect(line(after, 'Noon gold')).toEqual(line(before, 'Noon gold'));
  await page.getByRole('button', { name: 'Undo' }).click();
  await planned(page);
  expect(await readSlip(page)).toEqual(before);
});

test('a print that is to stand upright needs a blank of its own for each way a wedge is turned', async () => {
  const tags = () => page.getByLabel('Blanks cut from Foxglove spires').getByRole('button').allTextContents();
  expect(await tags()).toEqual(['C1']);
  await replanned(page, () => role('Ring of hours').getByLabel('Its print points').selectOption('upright'));
  expect(new Set(await tags()).size).toBeGreaterThan(9);
  await page.getByRole('button', { name: 'Undo' }).click();
  await planned(page);
});

test('the star’s numbers redraw the block and replan: a larger square needs more of its ground', async () => {
  const before = await readSlip(page);
  const field = page.getByLabel('Side', { exact: true });
  await replanned(page, async () => {
    await field.fill('32 1/2');
    await field.press('Enter');
  });
  expect(await field.inputValue()).toBe('32 1/2 in');
  const after = await readSlip(page);
  expect(need(after, 'Rising swifts')).toBeGreaterThan(need(before, 'Rising swifts'));
  expect(line(after, 'Foxglove spires')).toEqual(line(before, 'Foxglove spires'));
  await page.getByRole('button', { name: 'Undo' }).click();
  await planned(page);
});

test('a number that makes no star is refused where it stands, and the plan stays', async () => {
  const before = await readSlip(page);
  const field = page.getByLabel('Valleys', { exact: true });
  const valleys = page.locator('yw-length-field').filter({ has: field });
  await field.fill('11');
  await field.press('Enter');
  expect(await valleys.getByRole('alert').textContent()).toMatch(
    /expected less than outer, which is 10 in; found 11 in/,
  );
  await field.fill('wide');
  await field.press('Enter');
  expect(await valleys.getByRole('alert').textContent()).toMatch(/"wide" is not a length|has the unit "wide"/);
  expect(await readSlip(page)).toEqual(before);
  await field.fill('4');
  await field.press('Enter');
  expect(await valleys.getByRole('alert').isHidden()).toBe(true);
});

test('cloth too narrow for a patch: the patch is named with the width it would need, the rest is planned', async () => {
  const before = await readSlip(page);
  const swifts = page.getByRole('article', { name: 'Rising swifts' });
  const width = swifts.getByLabel('Width');
  await replanned(page, async () => {
    await width.fill('12');
    await width.press('Enter');
  });
  expect(await swifts.locator('.problems').textContent()).toMatch(
    /D1 does not fit on “Rising swifts”: it needs cloth .* in wide/,
  );
  expect(line(await readSlip(page), 'Noon gold')).toEqual(line(before, 'Noon gold'));
  await page.getByRole('button', { name: 'Undo' }).click();
  await planned(page);
});

test('stopping keeps the best so far, and the page stays alive while it plans', async () => {
  const thistledown = page.getByRole('article', { name: 'Thistledown' });
  const room = page.getByLabel('Room', { exact: true });
  await room.fill('5/16');
  await room.press('Enter');
  const stop = page.getByRole('button', { name: 'Stop, keep the best' });
  await stop.waitFor();
  // Every group must have a first plan before there is a whole plan to keep.
  await page.locator('.slip:not([data-former]) .bill').waitFor({ timeout: 60_000 });
  const busy = await page.locator('.progress[data-busy]').count();
  if (busy > 0) {
    await stop.click();
  }
  await page.locator('yw-progress .progress:not([data-busy])').waitFor({ timeout: 15_000 });
  expect(await page.locator('yw-progress [role=status]').textContent()).toMatch(/Stopped|Planned/);
  expect(await thistledown.locator('.status').textContent()).not.toMatch(/no plan/);
  expect((await readSlip(page)).length).toBe(7);
  await page.getByRole('button', { name: 'Undo' }).click();
  await planned(page);
});

test('centimetres are shown when asked for, and inches come back as they were', async () => {
  const before = await readSlip(page);
  await page.getByLabel('Lengths in').selectOption('centimetres');
  expect(await page.getByLabel('Seam allowance').inputValue()).toBe('0.635 cm');
  expect((await readSlip(page))[0]?.need).toMatch(/ cm/);
  await page.getByLabel('Lengths in').selectOption('inches');
  expect(await readSlip(page)).toEqual(before);
  expect(await page.getByLabel('Seam allowance').inputValue()).toBe('1/4 in');
});

test('on paper there is only the cutting page: what to buy, care, every cloth with its strips', async () => {
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  const sheet = page.locator('yw-print-sheet');
  expect(await page.locator('main').isVisible()).toBe(false);
  expect(await sheet.getByRole('heading', { level: 1 }).textContent()).toBe('Solstice dial: cutting page');
  expect(await sheet.textContent()).toMatch(/Cut away from your body/);
  expect(await sheet.locator('.print-cloth').count()).toBeGreaterThanOrEqual(7);
  expect(await sheet.locator('.print-cloth .strips tbody').count()).toBeGreaterThan(10);
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  await page.emulateMedia({ media: 'screen' });
});

test('nothing went wrong unseen, and no request left the machine', () => {
  expect(site.errors).toEqual([]);
  expect(site.requests.length).toBeGreaterThan(3);
  expect(site.requests.filter((url) => !url.startsWith(site.url) && !/^(data|blob):/.test(url))).toEqual([]);
});
