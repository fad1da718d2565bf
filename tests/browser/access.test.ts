import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BuiltPage, planned, shot } from './built-page.ts';

let site: BuiltPage;
let page: Page;

beforeAll(async () => {
  site = await BuiltPage.start();
  // axe is put into the page as a script of its own, which the page's policy would refuse.
  page = await site.open({ bypassCSP: true });
  await planned(page);
}, 120_000);

afterAll(async () => {
  await site?.stop();
});

const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

async function violations(): Promise<readonly string[]> {
  await page.addScriptTag({ path: axe });
  const results = await page.evaluate(() =>
    (window as unknown as { axe: { run: (root: Document) => Promise<AxeResults> } }).axe.run(document),
  );
  return results.violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' · ')}`);
}

/** Every fold open, so that what is in them is looked at too. */
const openAll = () =>
  page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) {
      details.open = true;
    }
  });

test('axe finds nothing serious by day and by night, folds open', async () => {
  await openAll();
  await page.emulateMedia({ colorScheme: 'light' });
  expect(await violations()).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await violations()).toEqual([]);
  await shot(page, 'dark');
  await page.emulateMedia({ colorScheme: 'light' });
});

const SIZES = [
  [390, 844],
  [768, 1024],
  [1440, 900],
  [2560, 1440],
] as const;

/** What stands farther right than the page is wide, but for what scrolls in a frame of its own. */
async function outside(one: Page): Promise<readonly string[]> {
  await one.waitForTimeout(300);
  return one.evaluate(() => {
    const beyond = [...document.querySelectorAll('yw-app *')]
      .filter((part) => !part.closest('.table-frame, .drawing-frame, .skips'))
      .filter((part) => part.getBoundingClientRect().right > innerWidth + 1)
      .map((part) => `${part.tagName}.${part.getAttribute('class')}`);
    const wide = document.documentElement.scrollWidth;
    return wide > innerWidth ? [`the page is ${wide} wide`, ...beyond] : beyond;
  });
}

test('nothing runs out of the page from 390 to 2560 wide', async () => {
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height });
    expect(await outside(page), `${width} wide`).toEqual([]);
    await shot(page, `${width}`);
  }
});

test('nor does it for one who reads at twice the size of text', async () => {
  const large = await BuiltPage.start(['--blink-settings=defaultFontSize=32']);
  try {
    const read = await large.open();
    await planned(read);
    expect(await read.evaluate(() => getComputedStyle(document.body).fontSize)).toBe('32px');
    for (const [width, height] of SIZES) {
      await read.setViewportSize({ width, height });
      expect(await outside(read), `${width} wide`).toEqual([]);
      await shot(read, `${width}-large-text`);
    }
  } finally {
    await large.stop();
  }
});

test('names and measures keep their size when the drawing shrinks, and none overlaps another', async () => {
  for (const width of [390, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    await page.waitForTimeout(300);
    const faults = await page.evaluate(() => {
      const found: string[] = [];
      // Also right for upended text, where one of the two is 0.
      const scaleOf = (text: SVGTextElement): number =>
        Math.hypot(text.getScreenCTM()?.a ?? 0, text.getScreenCTM()?.b ?? 0);
      for (const drawing of document.querySelectorAll('yw-cloth-roll .drawing, yw-block-view .drawing')) {
        const boxes = [...drawing.querySelectorAll<SVGTextElement>('text')].map((text) => ({
          words: text.textContent ?? '',
          box: text.getBoundingClientRect(),
          pixels: Number.parseFloat(getComputedStyle(text).fontSize) * scaleOf(text),
        }));
        for (const { words, pixels } of boxes) {
          if (pixels < 10) {
            found.push(`"${words}" is ${pixels.toFixed(1)} pixels tall`);
          }
        }
        boxes.forEach((one, index) => {
          for (const other of boxes.slice(index + 1)) {
            const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
            const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
            if (across > 3 && down > 3) {
              found.push(`"${one.words}" lies over "${other.words}"`);
            }
          }
        });
      }
      return found;
    });
    expect(faults.slice(0, 5)).toEqual([]);
  }
});

test('every control can be reached with the keyboard and shows that it has the focus', async () => {
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.locator('body').press('Tab');
  const reached = new Set<string>();
  for (let press = 0; press < 60; press++) {
    const seen = await page.evaluate(() => {
      const one = document.activeElement as HTMLElement;
      const shown = one.closest('.button') ?? one;
      return { words: one.textContent?.trim().slice(0, 20) || one.id, outline: getComputedStyle(shown).outlineStyle };
    });
    expect(seen.outline, seen.words).toBe('solid');
    reached.add(seen.words);
    await page.keyboard.press('Tab');
  }
  expect(reached.size).toBeGreaterThan(25);
});

test('what to print can be chosen by anyone', async () => {
  await page.getByRole('button', { name: 'Print…' }).click();
  expect(await violations()).toEqual([]);
  await page.getByRole('dialog', { name: 'Print' }).getByRole('button', { name: 'Put away' }).click();
});
