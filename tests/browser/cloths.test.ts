import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BuiltPage, dropFile, planned, readSlip, replanned, scenarioText, unfolded } from './built-page.ts';

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

const role = (name: string) => page.getByRole('group', { name, exact: true });
const names = async () => (await readSlip(page)).map((one) => one.name);

async function type(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await field.press('Tab');
}

/** What is said under a field. */
const fault = (field: Locator) => field.locator('xpath=ancestor::div[@class="field"]').getByRole('alert');

test('what cannot be is refused under its field, says what was expected, and the last plan stays', async () => {
  const before = await readSlip(page);
  const gold = await unfolded(page, 'Noon gold');
  const cases: readonly (readonly [field: Locator, text: string, words: RegExp])[] = [
    [gold.getByLabel('Width').first(), 'wide', /has the unit "wide"; expected in, cm, mm, yd or m/],
    [gold.getByLabel('Width').first(), '-42', /expected a length above zero; found "-42 in"/],
    [gold.getByLabel('Sold by'), '0 yd', /expected a length above zero/],
    [gold.getByLabel('Price', { exact: true }), '-3', /Expected a number from 0/],
    [gold.getByLabel('Shrinks along'), '70', /Expected a number from 0 to 50/],
    [gold.getByLabel('Name', { exact: true }), ' ', /Expected a name/],
    [gold.getByLabel('Length'), '18 feet', /has the unit "feet"/],
    [gold.getByLabel('How many'), '1.5', /Expected a whole number/],
  ];
  for (const [field, text, words] of cases) {
    const old = await field.inputValue();
    await type(field, text);
    await expect.poll(() => fault(field).textContent(), { timeout: 5_000 }).toMatch(words);
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    await type(field, old);
    await expect.poll(() => fault(field).isHidden(), { timeout: 5_000 }).toBe(true);
  }
  expect(await readSlip(page)).toEqual(before);
});

test('a cloth is renamed and recoloured wherever it is shown', async () => {
  const gold = await unfolded(page, 'Noon gold');
  await type(gold.getByLabel('Name', { exact: true }), 'Brass');
  await gold.page().getByRole('article', { name: 'Brass' }).getByLabel('Colour').fill('#b08d57');
  await planned(page);
  expect(await names()).toContain('Brass');
  expect(await role('Long points, light').getByLabel('Cloth').locator('option:checked').textContent()).toBe('Brass');
  const fill = page.locator('yw-block-view .patch[data-patch="A1"] > path.cloth').first();
  expect(await fill.evaluate((path) => getComputedStyle(path).fill)).toBe('rgb(176, 141, 87)');
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await planned(page);
});

test('the kind of print decides whether an arrow is drawn, and where its up runs turns the arrow', async () => {
  const yew = await unfolded(page, 'Yew rows');
  const arrows = () => yew.locator('.drawing path.arrow').count();
  expect(await arrows()).toBeGreaterThan(10);
  await replanned(page, () => yew.getByLabel('The print’s up runs').selectOption('across the cloth'));
  const run = await yew.locator('.drawing path.arrow').first().getAttribute('d');
  const [, x, , toX] = /^M(\S+) (\S+)L(\S+) (\S+?)M/.exec(run!)!.map(Number);
  expect(Math.abs(toX! - x!)).toBeGreaterThan(0.2);
  await replanned(page, () => yew.getByLabel('Print', { exact: true }).selectOption('solid'));
  await expect.poll(arrows, { timeout: 10_000 }).toBe(0);
  expect(await yew.getByLabel('The print’s up runs').isVisible()).toBe(false);
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await planned(page);
});

test('shrinkage asks for more, and both ways are kept apart', async () => {
  const swifts = await unfolded(page, 'Rising swifts');
  const drawnWidth = () => swifts.locator('.drawing text.measure').last().textContent();
  expect(await drawnWidth()).toBe('42 in');
  await replanned(page, () => type(swifts.getByLabel('Shrinks across'), '5'));
  // ISO 5077: what is washed is (1 − p) of what it was: 42 in at 5 % are 39.9 in.
  await expect.poll(drawnWidth, { timeout: 10_000 }).toBe('39 7/8 in');
  await page.getByRole('button', { name: 'Undo' }).click();
  await planned(page);
});

test('a piece on the shelf is added, sized and taken away, and each time there is more or less to buy', async () => {
  const need = async () => (await readSlip(page)).find((one) => one.name === 'Gnomon bronze')!;
  const before = await need();
  const bronze = await unfolded(page, 'Gnomon bronze');
  await replanned(page, () => bronze.getByRole('button', { name: 'Add a piece from the shelf' }).click());
  const piece = bronze.getByRole('group', { name: /piece 1/ });
  await replanned(page, () => type(piece.getByLabel('Width'), '42'));
  await replanned(page, () => type(piece.getByLabel('Length'), '1 yd'));
  await expect.poll(async () => (await need()).buy, { timeout: 20_000 }).toMatch(/nothing to buy/);
  await piece.getByLabel('How many').fill('2');
  await replanned(page, () => piece.getByRole('button', { name: 'Take “piece 1” away' }).click());
  expect(await need()).toEqual(before);
});

test('a cloth is added with a name, may serve beside another, and is taken out again', async () => {
  await page.getByRole('button', { name: 'Add a cloth' }).click();
  // The name waits to be typed.
  await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe('New cloth');
  await page.keyboard.type('Attic find');
  await page.keyboard.press('Tab');
  const attic = page.getByRole('article', { name: 'Attic find' });
  await attic.getByText('No scheme uses the cloth “Attic find”').waitFor();

  const bronze = role('Long points, dark');
  await bronze.getByRole('button', { name: 'Another cloth may serve too' }).click();
  await replanned(page, () => bronze.getByLabel('or cut from').selectOption('Attic find'));
  expect(await bronze.locator('select').evaluateAll((all) => all.length)).toBe(3);
  // It has no price, so what is compared is length alone, and one of the two is enough.
  expect(await names()).toContain('Attic find');
  await replanned(page, () => bronze.getByLabel('or cut from').selectOption('no other'));
  expect(await names()).not.toContain('Attic find');
  await attic.getByRole('button', { name: 'Take Attic find out of the quilt' }).click();
  await expect.poll(() => attic.count()).toBe(0);
});

test('a role that a file fills with several cloths shows them all', async () => {
  const quilt = JSON.parse(scenarioText('garden-gate')) as { schemes: { cloths: Record<string, unknown> }[] };
  const cloths = quilt.schemes[0]!.cloths;
  const [first, second] = Object.entries(cloths) as [[string, string], [string, string]];
  cloths[first[0]] = [first[1], second[1]];
  await dropFile(page, 'two.json', JSON.stringify(quilt));
  await page.getByRole('heading', { level: 1, name: 'Garden gate' }).waitFor();
  await planned(page);
  const middle = role('Middle square');
  expect(await middle.getByLabel('Cloth').locator('option:checked').textContent()).toBe('Clematis');
  expect(await middle.getByLabel('or cut from').locator('option:checked').textContent()).toBe('Box hedge');
  expect(await middle.textContent()).toMatch(/The plan chooses among these/);
});

test('nothing went wrong unseen, and no request left the machine', () => {
  expect(site.errors).toEqual([]);
  expect(site.requests.filter((url) => !url.startsWith(site.url) && !/^(data|blob):/.test(url))).toEqual([]);
});

test('what is left comes onto the shelf list at one press, pieces used go, and one undo brings both back', async () => {
  const left = page.locator('yw-leftovers');
  // Only the line over each cloth tells what it has on the shelf; the slip under "To buy" uses the same words of the plan.
  const onShelf = async () => (await page.locator('.cloth-fold > summary').allTextContents()).join('\n');
  const keepFrom = (text: string) => replanned(page, () => type(left.getByLabel('Worth keeping from'), text));
  await keepFrom('200 in');
  await expect.poll(() => left.textContent(), { timeout: 20_000 }).toContain('Nothing so large is left.');
  await keepFrom('3 in');
  await expect.poll(() => left.locator('li').count(), { timeout: 20_000 }).toBeGreaterThan(1);
  const before = await onShelf();
  const pieces = (text: string) => text.split(' × ').length;
  await replanned(page, () => left.getByRole('button').click());
  // Rolls are drawn one after another, so what is over them may come a moment after the plan.
  await expect.poll(async () => pieces(await onShelf()), { timeout: 20_000 }).toBeGreaterThan(pieces(before));
  await page.getByRole('button', { name: 'Undo' }).click();
  await planned(page);
  await expect.poll(onShelf, { timeout: 20_000 }).toBe(before);
});
