/** A photo of a printed ring, taken at a slant: made from the drawing by a camera told by its own numbers, with noise and blur. */
import type { Page } from 'playwright-core';

/** All in inches, from the bottom left of a printed frame, y up. */
export const PAGE = {
  width: 10,
  height: 8,
  centre: [5.1, 3.9],
  wedges: 8,
  inner: 1.4,
  outer: 3.5,
  /** Degrees anticlockwise from up where the first wedge begins. */
  first: 7,
  /** Half the width of a printed line. */
  ink: 0.012,
} as const;

export const PHOTO = { width: 2000, height: 1500 } as const;

/**
 * Where a place of the page is seen. Plain pinhole geometry: the page is rolled and tilted away, stands off along the line of sight,
 * and each place is drawn where its ray meets the picture.
 */
const ROLL = (6 * Math.PI) / 180;
const TILT = (34 * Math.PI) / 180;
const SWING = (13 * Math.PI) / 180;
const OFF = 19;
const FOCAL = 2750;

export function seen([x, y]: readonly [number, number]): [number, number] {
  const [u, v] = [x - PAGE.width / 2, y - PAGE.height / 2];
  const [rx, ry] = [u * Math.cos(ROLL) - v * Math.sin(ROLL), u * Math.sin(ROLL) + v * Math.cos(ROLL)];
  const [ty, tz] = [ry * Math.cos(TILT), ry * Math.sin(TILT)];
  const [sx, sz] = [rx * Math.cos(SWING) + tz * Math.sin(SWING), tz * Math.cos(SWING) - rx * Math.sin(SWING)];
  return [PHOTO.width / 2 + (FOCAL * sx) / (sz + OFF), PHOTO.height / 2 - (FOCAL * ty) / (sz + OFF)];
}

export interface Photo {
  /** As JPEG. */
  readonly upright: Buffer;
  /** The same stored a quarter turned, with the note that cameras then write, and with a note of the place. */
  readonly sideways: Buffer;
}

/** The photo. Each of its pixels looks back along its ray to the page. */
export async function takePhoto(page: Page): Promise<Photo> {
  const [upright, sideways] = await page.evaluate(
    async ({ PAGE: sheet, PHOTO: photo, camera }) => {
      const [roll, tilt, swing, off, focal] = camera as [number, number, number, number, number];
      const canvas = document.createElement('canvas');
      canvas.width = photo.width;
      canvas.height = photo.height;
      const context = canvas.getContext('2d')!;
      const pixels = context.createImageData(photo.width, photo.height);
      let seed = 12345;
      const noise = (): number => {
        seed = (seed * 1103515245 + 12345) % 2147483648;
        return seed / 2147483648 - 0.5;
      };
      // Two directions in the page and the page's middle, in the camera's frame.
      const rotate = (x: number, y: number): [number, number, number] => {
        const [rx, ry] = [x * Math.cos(roll) - y * Math.sin(roll), x * Math.sin(roll) + y * Math.cos(roll)];
        const [ty, tz] = [ry * Math.cos(tilt), ry * Math.sin(tilt)];
        return [rx * Math.cos(swing) + tz * Math.sin(swing), ty, tz * Math.cos(swing) - rx * Math.sin(swing)];
      };
      const [a, b] = [rotate(1, 0), rotate(0, 1)];
      const step = (2 * Math.PI) / sheet.wedges;
      for (let row = 0; row < photo.height; row++) {
        for (let column = 0; column < photo.width; column++) {
          // u a + v b + (0, 0, off) lies along the ray (dx, dy, 1): two equations in u and v.
          const dx = (column + 0.5 - photo.width / 2) / focal;
          const dy = (photo.height / 2 - row - 0.5) / focal;
          const [m, n, p, q] = [a[0] - dx * a[2], b[0] - dx * b[2], a[1] - dy * a[2], b[1] - dy * b[2]];
          const det = m * q - n * p;
          const u = (dx * off * q - n * dy * off) / det + sheet.width / 2;
          const v = (m * dy * off - dx * off * p) / det + sheet.height / 2;
          const [x, y] = [u - sheet.centre[0], v - sheet.centre[1]];
          const radius = Math.hypot(x, y);
          const turn = (((Math.atan2(-x, y) - (sheet.first * Math.PI) / 180) % step) + step) % step;
          const side = Math.min(turn, step - turn) * radius;
          const frame = Math.max(
            Math.max(-u, u - sheet.width, -v, v - sheet.height),
            -Math.min(u, sheet.width - u, v, sheet.height - v),
          );
          const within = radius > sheet.inner && radius < sheet.outer;
          const away = Math.min(
            Math.abs(radius - sheet.inner),
            Math.abs(radius - sheet.outer),
            within ? side : 9,
            Math.abs(frame),
          );
          const ink = Math.min(1, Math.max(0, (sheet.ink + 0.004 - away) / 0.008));
          const paper = frame > 0.6 ? 120 : 236;
          const light = paper - ink * (paper - 40) + 26 * noise() - 12 * (column / photo.width);
          pixels.data.set([light, light * 0.98, light * 0.94, 255], 4 * (row * photo.width + column));
        }
      }
      context.putImageData(pixels, 0, 0);
      context.filter = 'blur(1.2px)';
      context.drawImage(canvas, 0, 0);
      const side = document.createElement('canvas');
      side.width = photo.height;
      side.height = photo.width;
      const turned = side.getContext('2d')!;
      turned.translate(0, photo.width);
      turned.rotate(-Math.PI / 2);
      turned.drawImage(canvas, 0, 0);
      return [canvas, side].map((each) => each.toDataURL('image/jpeg', 0.82).split(',')[1]!);
    },
    { PAGE, PHOTO, camera: [ROLL, TILT, SWING, OFF, FOCAL] },
  );
  const bytes = Buffer.from(sideways!, 'base64');
  return {
    upright: Buffer.from(upright!, 'base64'),
    sideways: Buffer.concat([bytes.subarray(0, 2), cameraNote(), bytes.subarray(2)]),
  };
}

/** What the photo says of where it was taken. */
export const PLACE = 'Anna Wimschneider Weg 7, 84339 Unterdietfurt';

/** A JPEG part as cameras write it (Exif 2.3, JEITA CP-3451C): show it a quarter turned clockwise; and a description. */
function cameraNote(): Buffer {
  const words = Buffer.from(`${PLACE}\0`, 'ascii');
  const tiff = Buffer.alloc(38 + words.length);
  tiff.write('II*\0', 0, 'latin1');
  tiff.writeUInt32LE(8, 4);
  tiff.writeUInt16LE(2, 8);
  const entry = (at: number, tag: number, type: number, count: number, value: number): void => {
    tiff.writeUInt16LE(tag, at);
    tiff.writeUInt16LE(type, at + 2);
    tiff.writeUInt32LE(count, at + 4);
    tiff.writeUInt32LE(value, at + 8);
  };
  entry(10, 0x010e, 2, words.length, 38);
  entry(22, 0x0112, 3, 1, 6);
  words.copy(tiff, 38);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(2 + 6 + tiff.length, 2);
  return Buffer.concat([head, Buffer.from('Exif\0\0', 'latin1'), tiff]);
}
