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

/** The gate with the outline of its first patch replaced. */
function withOutline(outline: unknown): string {
  const quilt = structuredClone(gate()) as { blocks: { units: { patches: { outline: unknown }[] }[] }[] };
  quilt.blocks[0]!.units[0]!.patches[0]!.outline = outline;
  return JSON.stringify(quilt);
}

const bad: readonly (readonly [what: string, text: () => string, words: RegExp])[] = [
  ['a file cut short', () => scenarioText('garden-gate').slice(0, 700), /cut short/],
  ['a file of another version', () => JSON.stringify({ ...gate(), version: 7 }), /version: this file is version 7/],
  [
    'a cloth of negative width',
    () => scenarioText('garden-gate').replace(/"width": "?\d+(\.\d+)?( in| cm)?"?/, '"width": -42'),
    /width: .*expected/,
  ],
  [
    'an outline that crosses itself',
    () =>
      withOutline([
        [0, 0],
        [2, 2],
        [2, 0],
        [0, 2],
      ]),
    /outline: .*cross/,
  ],
  [
    'an arc that cannot exist',
    () => withOutline([[0, 0], [3, 0], { arc: { radius: 1, turn: 'anticlockwise' } }, [3, 3], [0, 3]]),
    /outline: .*arc of radius 1 cannot/,
  ],
];

for (const [what, text, words] of bad) {
  test(`${what} is not opened: the message says what is wrong, and the last plan is still there`, async () => {
    const before = await readSlip(page);
    expect(before.length).toBeGreaterThan(0);
    await dropFile(page, 'bad.json', text());
    const message = page.locator('.message.error');
    await message.filter({ hasText: words }).waitFor({ timeout: 5_000 });
    expect(await message.textContent()).toMatch(/“bad\.json” was not opened; your quilt is as it was\./);
    expect(await readSlip(page)).toEqual(before);
    await message.getByRole('button', { name: /Put away/ }).click();
    expect(await message.count()).toBe(0);
  });
}

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
