import { expect, test } from 'vitest';
import { pictureHeader } from '../../src/keep/picture-header.ts';

const bytes = (...parts: readonly (string | readonly number[])[]): Uint8Array =>
  Uint8Array.from(parts.flatMap((part) => (typeof part === 'string' ? [...part].map((c) => c.charCodeAt(0)) : part)));

/** Laid out after the PNG specification (W3C, 5.2 and 11.2.2): signature, length, IHDR, width, height. */
const png = bytes([0x89], 'PNG\r\n', [0x1a, 0x0a], [0, 0, 0, 13], 'IHDR', [0, 0, 4, 1], [0, 0, 2, 3], [8, 2, 0, 0, 0]);
/** After ITU-T T.81, B.2: start, an application part of 6 bytes, filling, a frame of 8 bits, height, width. */
const jpeg = bytes([0xff, 0xd8, 0xff, 0xe0, 0, 6, 1, 2, 3, 4, 0xff, 0xff, 0xc2, 0, 11, 8, 2, 3, 4, 1, 1, 1, 0x11, 0]);
/** After RFC 9649, 2.5 to 2.7: each of the three kinds of WebP. */
const riff = (...chunk: readonly (string | readonly number[])[]) => bytes('RIFF', [40, 0, 0, 0], 'WEBP', ...chunk);
const lossy = riff('VP8 ', [20, 0, 0, 0], [0, 0, 0, 0x9d, 0x01, 0x2a], [0x01, 0x44], [0x03, 0x02]);
const lossless = riff('VP8L', [20, 0, 0, 0], [0x2f], [0x00, 0x84, 0x80, 0x00]);
const extended = riff('VP8X', [10, 0, 0, 0], [0, 0, 0, 0], [0, 4, 0], [2, 2, 0]);

test.each([
  ['PNG', png, 1025, 515],
  ['JPEG', jpeg, 1025, 515],
  ['WebP', lossy, 1025, 515],
  ['WebP', lossless, 1025, 515],
  ['WebP', extended, 1025, 515],
] as const)('the first bytes of a %s say its kind and size', (kind, header, width, height) => {
  expect(pictureHeader(header)).toEqual({ kind, width, height });
});

test('what is none of the three, is cut short or has no size is no picture', () => {
  for (const none of [
    bytes('<svg xmlns="http://www.w3.org/2000/svg"/>'),
    bytes('GIF89a', [1, 0, 1, 0]),
    bytes(''),
    png.slice(0, 20),
    jpeg.slice(0, 14),
    bytes([0xff, 0xd8, 0xff, 0xda, 0, 2, 0xff, 0xc0]),
    riff('VP9 ', [0, 0, 0, 0]),
    png.map((byte, i) => (i >= 16 && i < 20 ? 0 : byte)),
  ]) {
    expect(pictureHeader(none)).toBeNull();
  }
});
