/** Tracing over a picture, driven as a person would: by mouse, by keyboard alone, by finger. */
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BuiltPage, shot } from './built-page.ts';
import { PAGE, type Photo, PLACE, takePhoto } from './slanted-picture.ts';
import {
  at,
  choosePicture,
  drawnBy,
  FRAME,
  onScreen,
  openTracing,
  type Place,
  parted,
  STEP,
  trueWedge,
} from './trace-steps.ts';

/** What the tracing promises. */
const WITHIN = 1 / 32;
const CLICKS_A_PATCH = 12;

let site: BuiltPage;
let page: Page;
let photo: Photo;

beforeAll(async () => {
  site = await BuiltPage.start();
  page = await site.open({ bypassCSP: true });
  photo = await takePhoto(page);
}, 120_000);

afterAll(async () => {
  await site?.stop();
});

async function violations(one: Page): Promise<readonly string[]> {
  await one.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core/axe.min.js') });
  const results = await one.evaluate(() =>
    (window as unknown as { axe: { run: (root: Element) => Promise<AxeResults> } }).axe.run(
      document.querySelector('.trace')!,
    ),
  );
  return results.violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' · ')}`,
  );
}

test('a printed ring photographed at a slant comes back within 1/32 in, with 12 clicks a patch or fewer', async () => {
  let clicks = 0;
  const click = async (place: Place): Promise<void> => {
    const [x, y] = await onScreen(page, place);
    await page.mouse.click(x, y);
    clicks++;
  };
  const drag = async (from: Place, to: Place): Promise<void> => {
    const [a, b] = [await onScreen(page, from), await onScreen(page, to)];
    await page.mouse.move(a[0], a[1]);
    await page.mouse.down();
    await page.mouse.move((a[0] + b[0]) / 2, (a[1] + b[1]) / 2);
    await page.mouse.move(b[0], b[1]);
    await page.mouse.up();
    clicks++;
  };
  await openTracing(page);
  await choosePicture(page, 'page.jpg', photo.upright);
  await page.locator('yw-trace-size .board-picture').waitFor();
  await shot(page, 'trace-size');
  // The size is worth a nearer look: the wheel zooms in about the corner, and out again.
  for (const corner of FRAME) {
    const [x, y] = await onScreen(page, corner);
    await page.mouse.move(x, y);
    await page.mouse.wheel(0, -480);
    await click(corner);
    await page.mouse.move(x, y);
    await page.mouse.wheel(0, 480);
  }
  await page.getByLabel('Its width').fill('10');
  await page.getByLabel('Its height').fill('8');
  await page.getByRole('button', { name: 'Trace on it' }).click();
  await page.locator('.trace-tools').waitFor();
  const chord = Math.cos((STEP * Math.PI) / 360);
  for (let k = 0; k < PAGE.wedges; k++) {
    const [a, b] = [PAGE.first + k * STEP, PAGE.first + (k + 1) * STEP];
    for (const [radius, angle] of [
      [PAGE.inner, a],
      [PAGE.outer, a],
      [PAGE.outer, b],
      [PAGE.inner, b],
      [PAGE.inner, a],
    ] as const) {
      await click(at(radius, angle));
    }
    for (const radius of [PAGE.outer, PAGE.inner]) {
      await drag(at(radius * chord, (a + b) / 2), at(radius, (a + b) / 2));
    }
  }
  await page.getByRole('button', { name: 'Click it' }).click();
  await click(PAGE.centre);
  await shot(page, 'trace-ring');
  expect(await violations(page)).toEqual([]);
  const drawn = await drawnBy(page, () => page.getByRole('button', { name: 'Use this block' }).click());
  const patches = drawn.units.flatMap((unit) => unit.patches);
  expect(patches).toHaveLength(PAGE.wedges);
  const apart = patches.map((_, k) => Math.min(...patches.map((patch) => parted(patch.outline, trueWedge(k)))));
  if (process.env.SHOTS) console.log('clicks a patch', clicks / PAGE.wedges, 'farthest apart', Math.max(...apart));
  expect(Math.max(...apart)).toBeLessThan(WITHIN);
  expect(clicks / PAGE.wedges).toBeLessThanOrEqual(CLICKS_A_PATCH);
  expect(drawn.traced).toBeUndefined();

  // The page closed and opened again, the tracing is where it was; its wedges, alike, become one that is their mean.
  await page.waitForTimeout(900);
  await page.reload();
  await openTracing(page);
  await page.getByRole('button', { name: 'alike 8 times over' }).click();
  await shot(page, 'trace-mean');
  const mean = await drawnBy(page, () => page.getByRole('button', { name: 'Use this block' }).click());
  expect(mean.units.map((unit) => [unit.repeat, unit.patches.length])).toEqual([[{ count: 8 }, 1]]);
  const ofMean = parted(mean.units[0]!.patches[0]!.outline, trueWedge(0));
  if (process.env.SHOTS) console.log('their mean', ofMean);
  expect(ofMean).toBeLessThan(WITHIN);
  expect(site.errors).toEqual([]);
});

test('by keyboard alone, from a photo that lies on its side; kept in the file without what its camera wrote', async () => {
  const one = await site.open();
  const keys = one.keyboard;
  const tabTo = async (name: RegExp): Promise<void> => {
    for (let press = 0; press < 80; press++) {
      await keys.press('Tab');
      const words = await one.evaluate(() => {
        const active = document.activeElement as HTMLInputElement;
        return `${active.labels?.[0]?.textContent ?? ''} ${active.getAttribute('aria-label') ?? ''} ${active.textContent}`;
      });
      if (name.test(words)) return;
    }
    throw new Error(`Tab does not lead to ${name}`);
  };
  /** Moves the cross there, twenty pixels a press and then one, from wherever it is. */
  const goTo = async (place: Place): Promise<void> => {
    if ((await one.locator('.board-cursor').count()) === 0) await keys.press('ArrowUp');
    const now = await one.locator('.board-cursor').evaluate((cross) => {
      const box = cross.getBoundingClientRect();
      return [box.left + box.width / 2, box.top + box.height / 2] as [number, number];
    });
    const to = await onScreen(one, place);
    for (const [axis, back, on] of [
      [0, 'ArrowLeft', 'ArrowRight'],
      [1, 'ArrowUp', 'ArrowDown'],
    ] as const) {
      const steps = Math.round(to[axis] - now[axis]);
      const key = steps < 0 ? back : on;
      for (let i = 0; i < Math.trunc(Math.abs(steps) / 20); i++) await keys.press(`Shift+${key}`);
      for (let i = 0; i < Math.abs(steps) % 20; i++) await keys.press(key);
    }
  };
  await openTracing(one);
  await choosePicture(one, 'side.jpg', photo.sideways);
  await one.locator('yw-trace-size .board-frame:focus').waitFor();
  for (const corner of FRAME) {
    await goTo(corner);
    await keys.press('Enter');
  }
  await tabTo(/Its width/);
  await keys.type(`${PAGE.width * 2.54} cm`);
  await tabTo(/Its height/);
  await keys.type('8');
  await tabTo(/Trace on it/);
  await keys.press('Enter');
  await one.locator('yw-trace-sheet .board-frame:focus').waitFor();
  const [a, b] = [PAGE.first, PAGE.first + STEP];
  await goTo(at(PAGE.inner, a));
  await keys.press('Enter');
  await goTo(at(PAGE.outer, a));
  await keys.press('Enter');
  await keys.press('a');
  await goTo(at(PAGE.outer, (a + b) / 2));
  await keys.press('Enter');
  await goTo(at(PAGE.outer, b));
  await keys.press('Enter');
  await goTo(at(PAGE.inner, b));
  await keys.press('Enter');
  await keys.press('a');
  await goTo(at(PAGE.inner, (a + b) / 2));
  await keys.press('Enter');
  await keys.press('c');
  await one.locator('.trace-said').filter({ hasText: 'Patch A1 is closed' }).waitFor();
  // Back to the patch's first corner, which is said aloud.
  await keys.press(']');
  await one.locator('.board-words').filter({ hasText: 'On a corner' }).waitFor();
  await goTo(PAGE.centre);
  await keys.press('o');
  await tabTo(/^Role/);
  await keys.press('ControlOrMeta+a');
  await keys.type('Hours, dark');
  await tabTo(/Times about the centre/);
  await keys.press('ControlOrMeta+a');
  await keys.type('8');
  await tabTo(/Keep picture and tracing/);
  await keys.press(' ');
  await shot(one, 'trace-keyboard');
  await tabTo(/Use this block/);
  const drawn = await drawnBy(one, () => keys.press('Enter'));
  const [unit] = drawn.units;
  expect(unit!.repeat.count).toBe(PAGE.wedges);
  const apart = parted(unit!.patches[0]!.outline, trueWedge(0));
  if (process.env.SHOTS) console.log('by keyboard', apart);
  expect(apart).toBeLessThan(WITHIN);
  expect(drawn.roles.map((role) => role.name)).toEqual(['Hours, dark']);
  const kept = Buffer.from(drawn.traced!.picture.split(',')[1]!, 'base64').toString('latin1');
  expect(photo.sideways.includes(PLACE)).toBe(true);
  expect(kept.includes(PLACE)).toBe(false);
  expect(kept.includes('Exif')).toBe(false);
  // From the quilt it can be gone on with, upright and of the same size.
  await openTracing(one);
  await one.getByRole('button', { name: '1. The picture' }).click();
  await one.getByRole('button', { name: 'Go on with Traced block' }).click();
  const again = await drawnBy(one, () => one.getByRole('button', { name: 'Use this block' }).click());
  expect(again.units).toEqual(drawn.units);
  expect(site.errors).toEqual([]);
  await one.context().close();
});

test('by finger on a phone: taps, a finger that rests and aims, two that zoom; what is no picture is refused', async () => {
  const phone = await site.open({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    bypassCSP: true,
  });
  await openTracing(phone);
  await choosePicture(
    phone,
    'drawing.svg.png',
    Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'),
  );
  await phone.getByText('“drawing.svg.png” was not opened: it is no PNG, JPEG or WebP picture.').waitFor();
  await choosePicture(phone, 'cut.jpg', photo.upright.subarray(0, 5000));
  await phone.getByText('“cut.jpg” was not opened').waitFor();
  await choosePicture(phone, 'page.jpg', photo.upright);
  await phone.locator('yw-trace-size .board-picture').waitFor();
  const finger = await phone.context().newCDPSession(phone);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: readonly Place[]) =>
    finger.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
  for (const corner of FRAME) {
    const [x, y] = await onScreen(phone, corner);
    await phone.touchscreen.tap(x, y);
  }
  await phone.getByLabel('Its width').fill('10');
  await phone.getByLabel('Its height').fill('8');
  await phone.getByRole('button', { name: 'Trace on it' }).tap();
  await phone.locator('.trace-tools').waitFor();
  const before = await onScreen(phone, [10, 4]);
  const middle = await onScreen(phone, [5, 4]);
  await touch('touchStart', [middle[0] - 30, middle[1]], [middle[0] + 30, middle[1]]);
  await touch('touchMove', [middle[0] - 60, middle[1]], [middle[0] + 60, middle[1]]);
  await touch('touchEnd');
  const after = await onScreen(phone, [10, 4]);
  expect((after[0] - middle[0]) / (before[0] - middle[0])).toBeCloseTo(2, 1);
  const aim = async (place: Place): Promise<void> => {
    const [x, y] = await onScreen(phone, place);
    await touch('touchStart', [x - 12, y + 9]);
    await phone.locator('.board-glass').waitFor();
    await touch('touchMove', [x, y]);
    if (place[0] === at(PAGE.outer, PAGE.first)[0]) await shot(phone, 'trace-aim');
    await touch('touchEnd');
  };
  for (const place of [at(PAGE.inner, PAGE.first), at(PAGE.outer, PAGE.first), at(PAGE.outer, PAGE.first + STEP)]) {
    await aim(place);
  }
  await phone.getByRole('button', { name: 'Close the patch' }).tap();
  await phone.locator('.trace-said').filter({ hasText: 'Patch A1 is closed' }).waitFor();
  await shot(phone, 'trace-phone');
  await phone.emulateMedia({ colorScheme: 'dark' });
  expect(await violations(phone)).toEqual([]);
  await shot(phone, 'trace-phone-dark');
  expect(await phone.locator('dialog[open]').evaluate((bench) => bench.scrollWidth)).toBeLessThanOrEqual(390);
  const drawn = await drawnBy(phone, () => phone.getByRole('button', { name: 'Use this block' }).tap());
  const corners = drawn.units[0]!.patches[0]!.outline as readonly Place[];
  const sides = corners.map((corner, i) =>
    Math.hypot(corner[0] - corners.at(i - 1)![0], corner[1] - corners.at(i - 1)![1]),
  );
  const across = PAGE.outer - PAGE.inner;
  expect(sides.some((side) => Math.abs(side - across) < 0.1)).toBe(true);
  expect(site.errors).toEqual([]);
  await phone.context().close();
});
