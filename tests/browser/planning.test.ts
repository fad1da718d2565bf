import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BuiltPage, planned, readSlip, replanned, type SlipLine, shot, unfolded } from './built-page.ts';

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

/** What the slip says in the moment that it is first of a former choice, which may pass before the next look at it. */
function watchFormer(): Promise<{ readonly stamp: string | null; readonly lines: number }> {
  return page.evaluate(
    () =>
      new Promise((resolve) => {
        const observer = new MutationObserver(() => {
          const slip = document.querySelector('.slip[data-former]');
          const stamp = slip?.querySelector('.stamp')?.textContent ?? '';
          if (slip && stamp !== '') {
            observer.disconnect();
            resolve({ stamp, lines: slip.querySelectorAll('.bill > li').length });
          }
        });
        const all = { subtree: true, attributes: true, childList: true, characterData: true };
        observer.observe(document.querySelector('yw-tally-slip')!, all);
      }),
  );
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
    /^C1: Ring of hours\. \d+ to cut, \d+ spare among them: Foxglove spires, strip/,
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
    /Expected less than “Tips”, which is .* in; found 11 in/,
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
  const swifts = await unfolded(page, 'Rising swifts');
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

test('while a long job is planned the former plan stays, marked; stopping keeps the best; undoing ends it', async () => {
  const before = await readSlip(page);
  const former = watchFormer();
  await role('Ring of hours').getByLabel('Its print points').selectOption('upright');
  // Each of 48 wedges stands its own way, so each is a blank of its own: more than is proved in the time allowed.
  const wedges = page.getByLabel('Wedges in the ring');
  await wedges.fill('48');
  await wedges.press('Enter');
  expect(await former).toEqual({ stamp: 'of your former choice', lines: before.length });

  await page.locator('.slip:not([data-former]) .bill').waitFor({ timeout: 60_000 });
  expect(await page.locator('yw-progress .working').textContent()).toMatch(/Foxglove spires .*\d s; best/);
  await page.getByRole('button', { name: 'Stop, keep the best' }).click();
  await page.getByText('Stopped: the best so far is shown.').waitFor({ timeout: 4_000 });
  expect((await readSlip(page)).map((one) => one.name)).toEqual(before.map((one) => one.name));

  await page.getByRole('button', { name: 'Plan on' }).click();
  await page.getByRole('button', { name: 'Stop, keep the best' }).waitFor();
  const undo = page.getByRole('button', { name: 'Undo' });
  await undo.click();
  await undo.click();
  await planned(page);
  expect(await readSlip(page)).toEqual(before);
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
