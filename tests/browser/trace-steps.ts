/** The tracing in a real browser, as tests drive it: where the photo's pixels lie on the screen, and how far outlines part. */
import type { Page } from 'playwright-core';
import type { DrawnBlock } from '../../src/quilt/drawn-block.ts';
import { flatten } from '../../src/shape/flatten.ts';
import type { Outline } from '../../src/shape/outline.ts';
import { PAGE, PHOTO, seen } from './slanted-picture.ts';

export type Place = readonly [number, number];

/** A place of the printed ring, on the page. */
export const at = (radius: number, degrees: number): Place => [
  PAGE.centre[0] - radius * Math.sin((degrees * Math.PI) / 180),
  PAGE.centre[1] + radius * Math.cos((degrees * Math.PI) / 180),
];

/** The corners of the printed frame: top left, top right, bottom right, bottom left. */
export const FRAME: readonly Place[] = [
  [0, PAGE.height],
  [PAGE.width, PAGE.height],
  [PAGE.width, 0],
  [0, 0],
];

export const STEP = 360 / PAGE.wedges;

/** The nearest whole pixel of the screen to where a place of the page is seen: read from how the browser lays the photo. */
export async function onScreen(page: Page, place: Place): Promise<Place> {
  return page.evaluate(
    ({ photo: [x, y], width }) => {
      const canvas = document.querySelector<HTMLCanvasElement>('yw-picture-board .board-picture')!;
      const frame = canvas.parentElement!;
      const box = frame.getBoundingClientRect();
      const shrunk = width / canvas.width;
      const point = new DOMMatrix(canvas.style.transform).transformPoint(new DOMPoint(x / shrunk, y / shrunk));
      return [
        Math.round(box.left + frame.clientLeft + point.x / point.w),
        Math.round(box.top + frame.clientTop + point.y / point.w),
      ] as [number, number];
    },
    { photo: seen(place as [number, number]), width: PHOTO.width },
  );
}

/** Opens the bench where pictures are traced. */
export async function openTracing(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Add another block' }).click();
  await page.getByRole('radio', { name: 'Traced from a picture' }).check();
}

export async function choosePicture(page: Page, name: string, buffer: Buffer): Promise<void> {
  await page.setInputFiles('yw-trace input[type=file]', { name, mimeType: 'image/jpeg', buffer });
}

/** The block that the element hands over when `act` is done. */
export async function drawnBy(page: Page, act: () => Promise<unknown>): Promise<DrawnBlock> {
  // The listener must be there before anything is done: a key may overtake a script that is on its way.
  await page.evaluate(() => {
    (window as unknown as { drawn: Promise<DrawnBlock> }).drawn = new Promise((done) => {
      document.addEventListener('yw-drawn', (event) => done((event as CustomEvent<DrawnBlock>).detail), {
        once: true,
        capture: true,
      });
    });
  });
  await act();
  return page.evaluate(() => (window as unknown as { drawn: Promise<DrawnBlock> }).drawn);
}

/** The true wedge k, all round, about the centre. */
export function trueWedge(k: number): readonly Place[] {
  const [a, b] = [PAGE.first + k * STEP, PAGE.first + (k + 1) * STEP];
  const parts = Array.from({ length: 41 }, (_, i) => i / 40);
  const across = (part: number) => PAGE.inner + part * (PAGE.outer - PAGE.inner);
  const turned = (part: number) => a + part * (b - a);
  return [
    ...parts.map((part) => at(across(part), a)),
    ...parts.map((part) => at(PAGE.outer, turned(part))),
    ...parts.map((part) => at(across(1 - part), b)),
    ...parts.map((part) => at(PAGE.inner, turned(1 - part))),
  ].map(([x, y]) => [x - PAGE.centre[0], y - PAGE.centre[1]]);
}

/** The farthest that an outline and a closed line of places part, from either to the nearest of the other. */
export function parted(outline: Outline, places: readonly Place[]): number {
  const drawn = flatten(outline, { side: 'chord', within: 1e-4 });
  const from = (a: readonly Place[], b: readonly Place[]): number =>
    Math.max(...a.map((p) => Math.min(...b.map((q, i) => toSegment(p, q, b[(i + 1) % b.length]!)))));
  return Math.max(from(drawn, places), from(places, drawn));
}

function toSegment(p: Place, a: Place, b: Place): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const size = dx * dx + dy * dy;
  const part = size === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / size));
  return Math.hypot(p[0] - a[0] - part * dx, p[1] - a[1] - part * dy);
}
