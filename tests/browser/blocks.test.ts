import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BuiltPage, planned, readSlip, shot } from './built-page.ts';

let site: BuiltPage;
/** With the ring on it that the first test makes. */
let ringPage: Page | null = null;

beforeAll(async () => {
  site = await BuiltPage.start();
}, 120_000);

afterAll(async () => {
  expect(site.errors).toEqual([]);
  await site?.stop();
});

const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** All that axe finds wrong in a part of the page, by day and by night, with its folds open. */
async function violations(page: Page, part: string): Promise<readonly string[]> {
  await page.evaluate((selector) => {
    for (const details of document.querySelectorAll<HTMLDetailsElement>(`${selector} details`)) {
      details.open = true;
    }
  }, part);
  await page.addScriptTag({ path: axe });
  const found: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const results = await page.evaluate(
      (selector) => (window as unknown as { axe: { run: (root: string) => Promise<AxeResults> } }).axe.run(selector),
      part,
    );
    found.push(
      ...results.violations.map(
        ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' · ')}`,
      ),
    );
  }
  await page.emulateMedia({ colorScheme: 'light' });
  return found;
}

/** The ring of 20 wedges between radii of 2 and 8 in, each 9.4248 square inches (the derived table of rings). */
async function expectRing(page: Page): Promise<void> {
  await planned(page);
  const [line, ...others] = await readSlip(page);
  expect(others).toEqual([]);
  expect(line!.name).toMatch(/^Cloth for wedges/i);
  expect(line!.buy).toMatch(/quarter yards?: /);
  expect(line!.proof).toMatch(/^Proved least\./);
  expect(await page.locator('yw-progress [role=status]').textContent()).toBe(
    'Planned, and every purchase proved least.',
  );
  const seen = page.locator('.shares tr', { hasText: 'seen in the quilt' }).locator('td').first();
  expect(Number(await seen.textContent())).toBeCloseTo(20 * 9.4248, -0.5);
  await page.getByText('Its blanks by name').click();
  await expect.poll(() => page.locator('yw-block-view tbody tr').allTextContents()).toHaveLength(1);
  expect((await page.locator('yw-block-view tbody td').allTextContents())[2]).toBe('20');
}

test('from an empty page to a proved plan for a ring of 20 wedges: at most 12 actions', async () => {
  const page = await site.open({ bypassCSP: true });
  let actions = 0;
  const act = async (action: Promise<unknown>): Promise<void> => {
    actions++;
    await action;
  };
  const bench = page.getByRole('dialog', { name: 'Add a block' });
  const type = async (label: string, text: string) => act(bench.getByLabel(label, { exact: true }).fill(text));
  await act(page.getByRole('button', { name: 'Begin a new quilt' }).click());
  await act(page.getByRole('button', { name: 'Add a block' }).click());
  await act(bench.getByRole('radio', { name: 'Ring of wedges' }).click());
  await type('Wedges', '20');
  await type('Outer edge', '8');
  await type('Inner edge', '2');
  await act(bench.getByLabel('A disc in the middle').click());
  await act(bench.getByLabel('On a square ground').click());
  await shot(page, 'bench');
  await act(bench.getByRole('button', { name: 'Put it into the quilt' }).click());
  await act(page.getByRole('button', { name: 'Make this cloth' }).click());
  await expectRing(page);
  expect(actions).toBeLessThanOrEqual(12);
  await shot(page, 'ring');
  ringPage = page;
});

test('a print is turned on the picture: by pulling its arrow, by its keys, along an edge, for one place alone', async () => {
  const page = ringPage!;
  await page.getByRole('button', { name: 'Prints and patches of Ring of wedges' }).click();
  await page.locator('yw-prints-picture [data-patch="A1"][data-place="5"]').click();
  const arrow = page.getByRole('slider', { name: 'Where the print of A1 points' });
  await expect.poll(() => arrow.getAttribute('aria-valuetext')).toBe('outward');
  expect(await arrow.getAttribute('aria-valuenow')).toBe('90');
  const patterns = page.locator('yw-prints-picture pattern[id*="one-way"], yw-prints-picture pattern[id*="two-way"]');
  expect(await patterns.count()).toBeGreaterThanOrEqual(20);
  // Pulled to the right, near enough to inward to be caught by it: all the ring follows, since its role does.
  const room = (await page.locator('.grip-room').boundingBox())!;
  const [x, y] = [room.x + room.width / 2, room.y + room.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 60, y + 30, { steps: 3 });
  await page.mouse.move(x + 120, y + 4, { steps: 3 });
  await page.mouse.up();
  await expect.poll(() => arrow.getAttribute('aria-valuetext')).toBe('inward');
  expect(
    await page.getByRole('group', { name: 'Wedges', exact: true }).getByLabel('Its print points').inputValue(),
  ).toBe('inward');
  await arrow.press('ArrowLeft');
  await expect.poll(() => arrow.getAttribute('aria-valuetext')).toBe('inward, turned on 1° anticlockwise');
  await page.getByLabel('this one A1 alone').check();
  const panel = page.getByRole('group', { name: 'The print of one patch' });
  await panel.getByLabel('Its print points').selectOption('along an edge');
  await expect.poll(() => arrow.getAttribute('aria-valuetext')).toMatch(/^along edge 1/);
  await page.locator('.hand-edge[data-edge="2"]').dispatchEvent('click');
  await expect.poll(() => arrow.getAttribute('aria-valuetext')).toBe('along edge 3');
  await page.locator('.hand-edge[data-edge="2"]').dispatchEvent('click');
  await expect.poll(() => arrow.getAttribute('aria-valuetext')).toBe('along edge 3, backward');
  await panel.getByRole('button', { name: /Let it face as its role does/ }).click();
  await expect.poll(() => arrow.getAttribute('aria-valuetext')).toBe('inward, turned on 1° anticlockwise');
  await shot(page, 'prints');
  await page.getByRole('button', { name: 'Look at it larger' }).click();
  await page.waitForTimeout(300);
  await shot(page, 'prints-larger');
  expect(await violations(page, 'dialog[open]')).toEqual([]);
  await page.context().close();
});

test('the same by keyboard alone', async () => {
  const page = await site.open();
  await page.locator('.masthead h1').waitFor();
  let [actions, presses] = [0, 0];
  const press = async (key: string): Promise<void> => {
    presses++;
    await page.keyboard.press(key);
    // What a key changes is on the page with the next frames.
    await page.waitForTimeout(40);
  };
  /** The words by which what has the focus is known. */
  const focused = () =>
    page.evaluate(() => {
      const one = document.activeElement as HTMLElement & { labels?: NodeListOf<HTMLElement> };
      return (one.labels?.[0]?.textContent ?? one.textContent ?? '').replace(/\s+/g, ' ').trim();
    });
  const tabTo = async (words: RegExp, key = 'Tab'): Promise<void> => {
    for (let i = 0; i < 40 && !words.test(await focused()); i++) {
      await press(key);
    }
    expect(await focused()).toMatch(words);
  };
  const act = async (...keys: readonly string[]): Promise<void> => {
    actions++;
    for (const key of keys) {
      await press(key);
    }
  };
  const type = async (label: RegExp, text: string): Promise<void> => {
    await tabTo(label);
    actions++;
    presses += text.length;
    await page.keyboard.press('Control+A');
    await page.keyboard.type(text);
  };
  await tabTo(/^Begin a new quilt$/);
  await act('Enter');
  await expect.poll(focused).toMatch(/^Add a block$/);
  await act('Enter');
  await expect.poll(focused).toMatch(/^From numbers/);
  await tabTo(/^Compass star$/);
  actions++;
  await tabTo(/^Ring of wedges$/, 'ArrowDown');
  await type(/^Wedges$/, '20');
  // The present inner edge lies within the new outer one, so the outer is told first: it comes after, and Shift goes back.
  await type(/^Outer edge$/, '8');
  await tabTo(/^Inner edge$/, 'Shift+Tab');
  await type(/^Inner edge$/, '2');
  await tabTo(/^A disc in the middle$/);
  await act('Space');
  await tabTo(/^On a square ground$/);
  await act('Space');
  await tabTo(/^Put it into the quilt$/);
  await act('Enter');
  await expect.poll(focused).toMatch(/^Make this cloth$/);
  await act('Enter');
  await expectRing(page);
  expect(actions).toBeLessThanOrEqual(12);
  expect(presses).toBeLessThan(80);
  await page.context().close();
});

test('pieces are pasted, bad rows are marked and stay, good ones are planned; the bench is clean', async () => {
  const page = await site.open({ bypassCSP: true });
  await page.getByRole('button', { name: 'Begin a new quilt' }).click();
  await page.getByRole('button', { name: 'Add a block' }).click();
  const bench = page.getByRole('dialog', { name: 'Add a block' });
  await bench.getByText('From measured pieces').click();
  const width = bench.getByLabel('Width', { exact: true });
  await width.evaluate((input) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData(
      'text/plain',
      'Name\tShape\tWidth (cm)\tHeight\tA\tB\tC\tHow many\tRole\nA1\tRectangle\t5,5\t4 1/2 in\t\t\t\t16\tSky\nT\ttriangle-sides\t\t\t2\t3\t6\t4\tSun\n\tblob\t1\t1\t\t\t\t1\tSun',
    );
    input.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
  });
  await bench.getByText('1 kind of piece, 16 to cut. 2 are marked, and stay here until mended.').waitFor();
  const faults = bench.locator('.measured-row .fault:not([hidden])');
  expect(await faults.allTextContents()).toEqual([
    expect.stringMatching(/make no triangle: the longest must be shorter than the other two together, 5 in/),
    expect.stringMatching(/“blob” is no shape known here/),
  ]);
  await shot(page, 'measured');
  expect(await violations(page, 'dialog[open]')).toEqual([]);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.waitForTimeout(200);
  const wide = await bench.evaluate((dialog) => dialog.scrollWidth - dialog.clientWidth);
  expect(wide).toBeLessThanOrEqual(0);
  await shot(page, 'measured-390');
  await page.setViewportSize({ width: 1440, height: 900 });
  await bench.getByRole('button', { name: 'Put it into the quilt' }).click();
  await page.getByRole('button', { name: 'Make this cloth' }).click();
  await planned(page);
  expect((await readSlip(page)).map(({ name }) => name)).toEqual(['Cloth for sky']);
  await page.getByRole('button', { name: 'Add another block' }).click();
  await expect.poll(() => bench.locator('.measured-row').count()).toBe(2);
  await page.context().close();
});
