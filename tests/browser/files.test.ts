import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { BuiltPage, dropFile, planned, readSlip, scenarioText } from './built-page.ts';

let site: BuiltPage;
let page: Page;

beforeAll(async () => {
  site = await BuiltPage.start();
  page = await site.open();
  await dropFile(page, 'garden-gate.yardwright.json', scenarioText('garden-gate'));
  await page.getByRole('heading', { level: 1, name: 'Garden gate' }).waitFor();
  await planned(page);
}, 120_000);

afterAll(async () => {
  await site?.stop();
});

const gate = (): { [key: string]: unknown } => JSON.parse(scenarioText('garden-gate'));

const fixture = (name: string): string => readFileSync(new URL(`../quilt/fixtures/${name}`, import.meta.url), 'utf8');

const bad: readonly (readonly [what: string, file: string, words: RegExp])[] = [
  ['a file cut short', 'truncated.yardwright.txt', /cut short: it ends at line 27, inside blocks\[0\]/],
  ['a file of another version', 'version-7.yardwright.json', /version: this file is version 7/],
  ['a cloth of negative width', 'negative-width.yardwright.json', /width: expected a length above zero; found -42/],
  [
    'an outline that crosses itself',
    'self-crossing.yardwright.json',
    /outline: .*crosses or touches itself at \(0, 0\)/,
  ],
  ['an outline whose arc crosses an edge', 'self-crossing-arc.yardwright.json', /outline: .*crosses or touches itself/],
  ['an arc that cannot exist', 'impossible-arc.yardwright.json', /outline: an arc of radius 2\.5 cannot join corners/],
];

for (const [what, file, words] of bad) {
  test(`${what} is not opened: the message says what is wrong, and the last plan is still there`, async () => {
    const before = await readSlip(page);
    expect(before.length).toBeGreaterThan(0);
    await dropFile(page, 'bad.json', fixture(file));
    const message = page.locator('.message.error');
    await message.filter({ hasText: words }).waitFor({ timeout: 5_000 });
    expect(await message.textContent()).toMatch(/“bad\.json” was not opened; your quilt is as it was\./);
    expect(await readSlip(page)).toEqual(before);
    await message.getByRole('button', { name: /Put away/ }).click();
    expect(await message.count()).toBe(0);
  });
}

test('a patch wider than its cloth is named with the width it would need, and the rest is planned', async () => {
  await dropFile(page, 'wide.json', fixture('patch-wider-than-cloth.yardwright.json'));
  await page.getByText('A1 does not fit on “Linen”: it needs cloth 60 1/2 in wide').first().waitFor();
  await planned(page);
  expect(await page.locator('yw-progress [role=status]').textContent()).toBe('Planned, but not everything can be cut.');
  const [linen] = await readSlip(page);
  expect(linen).toMatchObject({ name: 'Linen' });
  expect(linen?.proof).toMatch(/^Not whole\..*A1/);
  expect(await page.getByLabel('Blanks cut from Linen').getByRole('button').allTextContents()).toContain('B1');
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('heading', { level: 1, name: 'Garden gate' }).waitFor();
  await planned(page);
});

test('both examples can be opened from the page, each in its own unit', async () => {
  const open = async (name: string) => {
    await page.getByText('Open an example').click();
    await page.getByRole('button', { name: new RegExp(`^${name}`) }).click();
    await page.getByRole('heading', { level: 1, name }).waitFor();
    await planned(page);
    return page.getByLabel('Seam allowance').inputValue();
  };
  expect(await open('Solstice dial')).toBe('1/4 in');
  expect(await open('Garden gate')).toBe('0.635 cm');
});

test('a cloth that no scheme uses is pointed out, and the rest is planned', async () => {
  const before = await readSlip(page);
  const quilt = gate() as { cloths: { id: string; name: string }[] };
  quilt.cloths.push({ ...quilt.cloths[0]!, id: 'orphan', name: 'Orphan' });
  await dropFile(page, 'orphan.json', JSON.stringify(quilt));
  await page.getByText('No scheme uses the cloth “Orphan”').waitFor();
  await planned(page);
  expect(await readSlip(page)).toEqual(before);
});

test('what is saved to a file is the quilt, and reads back', async () => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save to a file' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('garden-gate.yardwright.json');
  const saved = readQuilt(readFileSync(await download.path(), 'utf8'));
  expect(saved.cloths.some((cloth) => cloth.name === 'Orphan')).toBe(true);
});

test('a file can be opened by the button', async () => {
  await page.getByLabel('Open a file').setInputFiles({
    name: 'gate.json',
    mimeType: 'application/json',
    buffer: Buffer.from(scenarioText('garden-gate').replace('"Garden gate"', '"Back gate"')),
  });
  await page.getByRole('heading', { level: 1, name: 'Back gate' }).waitFor();
});

test('the quilt is there again on the next visit', async () => {
  await page.reload();
  await page.getByRole('heading', { level: 1, name: 'Back gate' }).waitFor();
  await planned(page);
});

test('a browser that refuses to keep anything is said to do so, and all else works', async () => {
  const refused = await site.open({}, async (fresh) => {
    await fresh.addInitScript(() => {
      Object.defineProperty(window, 'localStorage', {
        get() {
          throw new DOMException('The operation is insecure.', 'SecurityError');
        },
      });
    });
  });
  await refused.getByText('does not let the page keep your quilt').waitFor();
  await dropFile(refused, 'gate.json', scenarioText('garden-gate'));
  await planned(refused);
  expect((await readSlip(refused)).length).toBeGreaterThan(0);
  await refused.context().close();
});

test('nothing went wrong unseen, and no request left the machine', () => {
  expect(site.errors).toEqual([]);
  expect(site.requests.filter((url) => !url.startsWith(site.url) && !/^(data|blob):/.test(url))).toEqual([]);
});
