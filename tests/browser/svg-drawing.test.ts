/** A drawing from another program on the page: chosen, looked at, put into the quilt, and saved as a drawing again. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { importSvg } from '../../src/import/import-svg.ts';
import { flatten } from '../../src/shape/flatten.ts';
import { inMillimetres } from '../import/star-drawings.ts';
import { BuiltPage, shot } from './built-page.ts';

let site: BuiltPage;
let page: Page;
const folder = mkdtempSync(join(tmpdir(), 'yardwright-drawings-'));

beforeAll(async () => {
  site = await BuiltPage.start();
  page = await site.open({ bypassCSP: true });
  await page.getByRole('button', { name: 'Begin a new quilt' }).click();
  await page.getByRole('button', { name: 'Add a block', exact: true }).click();
  await page.getByRole('radio', { name: 'From an SVG drawing' }).check();
}, 120_000);

afterAll(async () => {
  await site?.stop();
  rmSync(folder, { recursive: true, force: true });
});

async function choose(name: string, text: string): Promise<void> {
  writeFileSync(join(folder, name), text);
  await page.locator('yw-svg-import input[type=file]').setInputFiles(join(folder, name));
}

const star = inMillimetres({ kind: 'compass-star', points: 8, inner: 2, outer: 5, ring: 6, wedges: 16, side: 14 });
const shown = () => page.locator('yw-svg-import .patch').count();
const notes = () => page.locator('yw-svg-import .import-notes li').allInnerTexts();
const put = () => page.getByRole('button', { name: 'Put it into the quilt' }).filter({ visible: true });

async function violations(): Promise<readonly string[]> {
  await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core/axe.min.js') });
  const results = await page.evaluate(() =>
    (window as unknown as { axe: { run: (root: Element) => Promise<AxeResults> } }).axe.run(
      document.querySelector('dialog.bench')!,
    ),
  );
  return results.violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 160)).join(' · ')}`,
  );
}

test('what is wrong with a file is said, ringed where it is, and nothing in it is run or fetched', async () => {
  await choose(
    'faulty.svg',
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 6 6" onload="document.title='run'">
      <script>document.title = 'run'</script><image href="https://example.org/x.png" width="6" height="6"/>
      <rect width="3.1" height="3" fill="#88aacc"/><rect x="3" width="3" height="3" fill="#cc8844"/>
      <rect y="3.06" width="6" height="2.94" fill="#88aacc"/></svg>`,
  );
  const width = page.getByLabel('True width, finished');
  expect(await width.getAttribute('aria-invalid')).toBe('true');
  expect(await put().isDisabled()).toBe(true);
  await width.fill('6 in');
  await width.press('Enter');
  await expect
    .poll(notes)
    .toEqual([
      expect.stringMatching(/Left out: script, 2 times/),
      expect.stringMatching(/Left out: picture/),
      expect.stringMatching(/no sewing order|parted/),
      expect.stringMatching(
        /^1\s*Look: A\d and A\d lie over one another|^1\s*Look: [AB]\d and [AB]\d lie over one another/,
      ),
      expect.stringMatching(/^2\s*Look: A gap between patches/),
      expect.stringMatching(/each colour is a role/),
    ]);
  expect(await page.locator('.import-figure text.strip-number').allTextContents()).toEqual(['1', '2']);
  await page.emulateMedia({ colorScheme: 'light' });
  expect(await violations()).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await violations()).toEqual([]);
  await page.emulateMedia({ colorScheme: 'light' });
  writeFileSync(join(folder, 'huge.svg'), `<svg>${' '.repeat(50_000_000)}</svg>`);
  await page.locator('yw-svg-import input[type=file]').setInputFiles(join(folder, 'huge.svg'));
  await page.getByText('“huge.svg” has 50 MB; at most 5 MB are read.').waitFor();
  // What was read before still stands.
  expect(await shown()).toBe(3);
  expect(await page.title()).not.toContain('run');
  expect(site.requests.filter((address) => !address.startsWith(site.url))).toEqual([]);
});

test('a star drawn in millimetres goes into the quilt, and comes out again as a drawing of the same patches', async () => {
  await choose('my-star.svg', star);
  await expect.poll(shown).toBe(8 * 4 + 16 + 4);
  await page.getByRole('combobox', { name: 'Long, light' }).fill('Sunlit');
  await page.getByRole('combobox', { name: 'Long, light' }).press('Enter');
  await shot(page, 'svg-drawing');
  await page.setViewportSize({ width: 390, height: 844 });
  await page.waitForTimeout(200);
  const wide = await page.evaluate(() => document.querySelector('dialog.bench')!.scrollWidth);
  expect(wide).toBeLessThanOrEqual(390);
  await shot(page, 'svg-drawing-phone');
  await page.setViewportSize({ width: 1440, height: 900 });
  await put().press('Enter');
  await page.getByRole('button', { name: /^Save .* as an SVG drawing$/ }).waitFor();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: /^Save .* as an SVG drawing$/ }).click();
  const download = await saving;
  expect(download.suggestedFilename()).toBe('my-star.svg');
  const text = readFileSync(await download.path(), 'utf8');
  const again = importSvg(text, { unit: 'in', name: 'Again' });
  const first = importSvg(star, { unit: 'in', name: 'First' });
  expect(again.notes).toEqual([]);
  expect(again.patches.length).toBe(first.patches.length);
  expect(again.block!.units.map(({ id, paper, repeat }) => [id, paper, repeat])).toEqual(
    first.block!.units.map(({ id, paper, repeat }) => [id, paper, repeat]),
  );
  expect(again.block!.roles.map(({ name }) => name)).toContain('Sunlit');
  expect(site.errors).toEqual([]);
});

/** Everything that can move, turn, skew or scale a shape, in one file: 8 in across, viewBox off the origin and not as wide as the page. */
const HAIRY = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="8in" height="254mm"
  viewBox="-10 5 200 180" preserveAspectRatio="xMaxYMin meet">
  <defs><symbol id="s" viewBox="0 0 10 20" preserveAspectRatio="xMinYMax slice"><path d="M1 1h8v18h-8z"/></symbol>
    <path id="p" d="M0 0L10 0A10 10 0 0 1 0 10Z"/></defs>
  <g transform="translate(20 30) rotate(15)"><g transform="matrix(1 .2 -.1 .9 3 4)"><path d="M0 0q10 -5 20 0t5 15l-20 3z"/></g>
    <rect x="30" y="0" width="20" height="12" rx="4"/></g>
  <g transform="translate(100,40)scale(-1.5 1.5)skewX(10)"><circle r="8"/><ellipse cx="-30" rx="9" ry="5" transform="rotate(-30)"/></g>
  <use xlink:href="#p" x="120" y="30" transform="rotate(20 120 30)"/>
  <use href="#s" x="20" y="90" width="30" height="30"/>
  <svg x="80" y="80" width="60" height="40" viewBox="0 0 30 30" preserveAspectRatio="none"><polygon points="1,1 29,3 20,28"/></svg>
  <g transform="rotate(200 60 160) skewY(-8)"><path d="M40 150a15 9 30 1 0 12 -4z"/><path d="M90 150q10 -8 20 0c8 6 6 20 -4 22s-20 -6 -16 -22z"/></g>
</svg>`;

test('every transform, viewport and curve lies where the browser itself draws it', async () => {
  const fresh = await site.open();
  // The browser's own measure: points along each shape, through its whole chain of transforms, in pixels of 96 to the inch.
  const drawn = await fresh.evaluate((text) => {
    document.body.innerHTML = `<div style="position:absolute;left:0;top:0">${text}</div>`;
    const root = document.querySelector('svg')!;
    const box = root.getBoundingClientRect();
    const inDefs = (each: Element) => each.closest('defs') !== null;
    const direct = [...root.querySelectorAll<SVGGeometryElement>('path,rect,circle,ellipse,polygon')].filter(
      (each) => !inDefs(each),
    );
    return direct.map((shape) => {
      const matrix = shape.getScreenCTM()!;
      const size = shape.getTotalLength();
      return Array.from({ length: 60 }, (_, k) => {
        const point = shape.getPointAtLength((k / 60) * size).matrixTransform(matrix);
        return [(point.x - box.left) / 96, (point.y - box.top) / 96] as [number, number];
      });
    });
  }, HAIRY);
  const picture = await fresh.locator('svg').first().screenshot();
  expect(picture.length).toBeGreaterThan(1000);
  await fresh.close();
  const { patches, notes } = importSvg(HAIRY, { unit: 'in', name: 'Hairy', centre: 'page' });
  expect(notes.filter(({ text }) => /left out/i.test(text))).toEqual([]);
  expect(patches.length).toBe(drawn.length + 2);
  const outlines = patches.map(({ outline }) => flatten(outline, { side: 'chord', within: 1e-4 }));
  for (const points of drawn) {
    // The page's middle is the origin and y runs up.
    const about = points.map(([x, y]): [number, number] => [x - 4, 5 - y]);
    const farthest = outlines.map((outline) => Math.max(...about.map((point) => offOutline(outline, point))));
    expect(Math.min(...farthest)).toBeLessThan(0.003);
  }
});

function offOutline(polygon: readonly (readonly [number, number])[], [x, y]: readonly [number, number]): number {
  return Math.min(
    ...polygon.map(([ax, ay], i) => {
      const [bx, by] = polygon[(i + 1) % polygon.length]!;
      const [dx, dy] = [bx - ax, by - ay];
      const part = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
      return Math.hypot(ax + part * dx - x, ay + part * dy - y);
    }),
  );
}
