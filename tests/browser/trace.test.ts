import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { DrawnBlock } from '../../src/quilt/drawn-block.ts';
import { flatten } from '../../src/shape/flatten.ts';
import type { Outline } from '../../src/shape/outline.ts';
import { BuiltPage, shot } from './built-page.ts';
import { PAGE, PHOTO, seen, takePhoto } from './slanted-picture.ts';

let site: BuiltPage;
let page: Page;
let photo: Buffer;

beforeAll(async () => {
  site = await BuiltPage.start();
  page = await site.open({ bypassCSP: true });
  photo = Buffer.from(await takePhoto(page), 'base64');
}, 120_000);

afterAll(async () => {
  await site?.stop();
});

type Place = readonly [number, number];

/** Where on the screen a pixel of the photo lies: read from how the browser is told to lay the picture. */
async function onScreen(places: readonly Place[]): Promise<readonly Place[]> {
  return page.evaluate(
    ({ list, width }) => {
      const canvas = document.querySelector<HTMLCanvasElement>('yw-picture-board .board-picture')!;
      const frame = canvas.parentElement!;
      const box = frame.getBoundingClientRect();
      const laid = new DOMMatrix(canvas.style.transform);
      const shrunk = width / canvas.width;
      return list.map(([x, y]): [number, number] => {
        const point = laid.transformPoint(new DOMPoint(x / shrunk, y / shrunk));
        return [box.left + frame.clientLeft + point.x / point.w, box.top + frame.clientTop + point.y / point.w];
      });
    },
    { list: places as [number, number][], width: PHOTO.width },
  );
}

let clicks = 0;

/** A click at a place of the page, at the nearest whole pixel of the screen. */
async function click(place: Place): Promise<void> {
  const [[x, y]] = (await onScreen([seen(place as [number, number])])) as [Place];
  await page.mouse.click(Math.round(x), Math.round(y));
  clicks++;
}

async function drag(from: Place, to: Place): Promise<void> {
  const [a, b] = (await onScreen([from, to].map((each) => seen(each as [number, number])))) as [Place, Place];
  await page.mouse.move(Math.round(a[0]), Math.round(a[1]));
  await page.mouse.down();
  await page.mouse.move(Math.round((a[0] + b[0]) / 2), Math.round((a[1] + b[1]) / 2));
  await page.mouse.move(Math.round(b[0]), Math.round(b[1]));
  await page.mouse.up();
  clicks++;
}

const at = (radius: number, degrees: number): Place => [
  PAGE.centre[0] - radius * Math.sin((degrees * Math.PI) / 180),
  PAGE.centre[1] + radius * Math.cos((degrees * Math.PI) / 180),
];

/** The true wedge, all round, about the centre. */
function trueWedge(k: number): readonly Place[] {
  const step = 360 / PAGE.wedges;
  const [a, b] = [PAGE.first + k * step, PAGE.first + (k + 1) * step];
  const parts = Array.from({ length: 41 }, (_, i) => i / 40);
  const along = (radius: (part: number) => number, angle: (part: number) => number): readonly Place[] =>
    parts.map((part) => about(at(radius(part), angle(part))));
  const [across, turned] = [
    (part: number) => PAGE.inner + part * (PAGE.outer - PAGE.inner),
    (part: number) => a + part * (b - a),
  ];
  return [
    ...along(across, () => a),
    ...along(() => PAGE.outer, turned),
    ...along(
      (part) => across(1 - part),
      () => b,
    ),
    ...along(
      () => PAGE.inner,
      (part) => turned(1 - part),
    ),
  ];
}

const about = ([x, y]: Place): Place => [x - PAGE.centre[0], y - PAGE.centre[1]];

/** The farthest that two closed lines of places part, taken from each place to the nearest of the other line. */
function parted(one: readonly Place[], other: readonly Place[]): number {
  const from = (a: readonly Place[], b: readonly Place[]): number =>
    Math.max(...a.map((p) => Math.min(...b.map((q, i) => toSegment(p, q, b[(i + 1) % b.length]!)))));
  return Math.max(from(one, other), from(other, one));
}

function toSegment(p: Place, a: Place, b: Place): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const size = dx * dx + dy * dy;
  const part = size === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / size));
  return Math.hypot(p[0] - a[0] - part * dx, p[1] - a[1] - part * dy);
}

const drawnOutline = (outline: Outline): readonly Place[] => flatten(outline, { side: 'chord', within: 1e-4 });

/** Traces wedge k of the ring: its corners round, the first again, then each chord pulled to its arc. */
async function traceWedge(k: number): Promise<void> {
  const step = 360 / PAGE.wedges;
  const [a, b] = [PAGE.first + k * step, PAGE.first + (k + 1) * step];
  const middle = (a + b) / 2;
  const chord = Math.cos((step * Math.PI) / 360);
  const corners = [at(PAGE.inner, a), at(PAGE.outer, a), at(PAGE.outer, b), at(PAGE.inner, b), at(PAGE.inner, a)];
  for (const corner of corners) {
    await click(corner);
  }
  await drag(at(PAGE.outer * chord, middle), at(PAGE.outer, middle));
  await drag(at(PAGE.inner * chord, middle), at(PAGE.inner, middle));
}

async function taken(): Promise<DrawnBlock> {
  const drawn = page.evaluate(
    () =>
      new Promise<DrawnBlock>((done) => {
        document.addEventListener('yw-drawn', (event) => done((event as CustomEvent<DrawnBlock>).detail), {
          once: true,
          capture: true,
        });
      }),
  );
  await page.getByRole('button', { name: 'Use this block' }).click();
  return drawn;
}

test('a printed ring photographed at a slant comes back within 1/32 in, with 12 clicks a patch or fewer', async () => {
  await page.getByRole('button', { name: 'Add another block' }).click();
  await page.getByLabel('Traced from a picture').check();
  await page.setInputFiles('yw-trace input[type=file]', { name: 'page.jpg', mimeType: 'image/jpeg', buffer: photo });
  await page.locator('yw-trace-size .board-picture').waitFor();
  await shot(page, 'trace-size');
  for (const corner of [
    [0, PAGE.height],
    [PAGE.width, PAGE.height],
    [PAGE.width, 0],
    [0, 0],
  ] as const) {
    await click(corner);
  }
  await page.getByLabel('Its width').fill('10');
  await page.getByLabel('Its height').fill('8');
  await page.getByRole('button', { name: 'Trace on it' }).click();
  await page.locator('.trace-tools').waitFor();
  for (let k = 0; k < PAGE.wedges; k++) {
    await traceWedge(k);
  }
  await page.getByRole('button', { name: 'Click it' }).click();
  await click(PAGE.centre);
  await shot(page, 'trace-ring');
  const drawn = await taken();
  expect(clicks / PAGE.wedges).toBeLessThanOrEqual(12);
  const patches = drawn.units.flatMap((unit) => unit.patches);
  expect(patches).toHaveLength(PAGE.wedges);
  const apart = Array.from({ length: PAGE.wedges }, (_, k) =>
    Math.min(...patches.map((patch) => parted(drawnOutline(patch.outline), trueWedge(k)))),
  );
  expect(Math.max(...apart)).toBeLessThan(1 / 32);
  expect(site.errors).toEqual([]);
});
