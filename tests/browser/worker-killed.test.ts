/** The page when its packers die under it: the last plan stays, others take their place, and what cannot be planned says so. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BuiltPage, planned, readSlip } from './built-page.ts';

let site: BuiltPage;
let page: Page;

beforeAll(async () => {
  site = await BuiltPage.start();
  page = await site.open();
  await planned(page);
}, 120_000);

afterAll(async () => {
  await site?.stop();
});

const packers = () => page.workers().filter((worker) => worker.url().includes('browser-worker'));

/** Lets an error loose in every packer that is alive; one deep in a solve hears of it when it comes up. */
async function killPackers(): Promise<number> {
  const alive = packers();
  await Promise.all(
    alive.map((worker) =>
      worker
        .evaluate(() => {
          setTimeout(() => {
            throw new Error('killed by a test');
          });
        })
        .catch(() => {}),
    ),
  );
  return alive.length;
}

/** Each of so many wedges stands its own way, so each is a blank of its own: more than is proved in the time allowed. */
async function startLongPlan(count: number): Promise<void> {
  await page
    .getByRole('group', { name: 'Ring of hours', exact: true })
    .getByLabel('Its print points')
    .selectOption('upright');
  const wedges = page.getByLabel('Wedges in the ring');
  await wedges.fill(`${count}`);
  await wedges.press('Enter');
  await page.locator('.slip:not([data-former]) .bill').waitFor({ timeout: 60_000 });
}

test('killed once in the middle of a plan: the plan so far stays, other packers go on, and it comes to its end', async () => {
  await startLongPlan(48);
  await expect.poll(async () => (await page.locator('yw-progress .working').allTextContents()).join()).toMatch(/\d s;/);
  const before = await readSlip(page);
  expect(await killPackers()).toBeGreaterThan(0);
  expect((await readSlip(page)).map((line) => line.name)).toEqual(before.map((line) => line.name));
  await planned(page);
  expect((await readSlip(page)).map((line) => line.name)).toEqual(before.map((line) => line.name));
  expect(await page.locator('[role=alert]:visible').count()).toBe(0);
});

test('killed when nothing is planned: the next change is planned all the same', async () => {
  await killPackers();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.waitForTimeout(50);
  await planned(page);
  expect((await readSlip(page)).length).toBeGreaterThan(4);
});

test('killed again and again over one cloth: the last plan stays, and the page says that its planning failed', async () => {
  const before = await readSlip(page);
  // Not the number of before, whose plan is remembered.
  await startLongPlan(44);
  const told = page.getByText(/the packer died/).first();
  await expect
    .poll(
      async () => {
        await killPackers();
        return (await told.isVisible()) || (await page.locator('yw-progress .progress:not([data-busy])').count()) > 0;
      },
      { timeout: 60_000 },
    )
    .toBe(true);
  expect((await readSlip(page)).map((line) => line.name)).toEqual(before.map((line) => line.name));
  expect(await told.isVisible()).toBe(true);
});
