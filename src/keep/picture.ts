/**
 * The one door for pictures: a file of her own becomes pixels on a canvas and nothing else. The file never reaches the page as
 * markup or as an address; what is kept of it is drawn anew, so that nothing written in it (place, date, camera) survives.
 */
import { pictureHeader } from './picture-header.ts';

export type PictureRead =
  | { readonly ok: true; readonly picture: Picture }
  | { readonly ok: false; readonly why: string };

export interface Picture {
  readonly name: string;
  /** Upright, as its camera meant it. */
  readonly canvas: HTMLCanvasElement;
  /** How much smaller it is than its file; 1 where it was taken as it is. */
  readonly shrunk: number;
}

/** What the file chooser offers. */
export const PICTURE_TYPES = 'image/png,image/jpeg,image/webp,.png,.jpg,.jpeg,.webp';

const MOST_BYTES = 40 * 2 ** 20;
const MOST_PIXELS = 100e6;
/** The longer side is brought down to this: on a page of a foot still some 300 pixels an inch. */
const LONGEST = 4000;
const HEADER_BYTES = 512 * 1024;

/** Reads a picture file. What is wrong with it is told in words; nothing else changes. */
export async function readPicture(file: File): Promise<PictureRead> {
  const no = (why: string): PictureRead => ({ ok: false, why: `“${file.name}” was not opened: ${why}` });
  if (file.size > MOST_BYTES) {
    return no(
      `it has ${Math.round(file.size / 2 ** 20)} MB; pictures may have up to ${MOST_BYTES / 2 ** 20}. Save it smaller first.`,
    );
  }
  try {
    const header = pictureHeader(new Uint8Array(await file.slice(0, HEADER_BYTES).arrayBuffer()));
    if (header === null) {
      return no(
        'it is no PNG, JPEG or WebP picture. A photo in another format can be saved as JPEG; of a PDF take a picture of the screen.',
      );
    }
    if (header.width * header.height > MOST_PIXELS) {
      return no(
        `it is ${header.width} by ${header.height} pixels; up to ${MOST_PIXELS / 1e6} million in all can be read.`,
      );
    }
    // The type is ours, so that nothing but the decoder of that kind is asked.
    const blob = new Blob([file], { type: `image/${header.kind.toLowerCase()}` });
    const image = await createImageBitmap(blob, { imageOrientation: 'from-image' });
    const shrunk = Math.max(1, Math.max(image.width, image.height) / LONGEST);
    const canvas = drawn(image, shrunk);
    image.close();
    return { ok: true, picture: { name: file.name, canvas, shrunk } };
  } catch (error) {
    return no(
      `the browser cannot read it (${error instanceof Error ? error.message : String(error)}). It may be damaged.`,
    );
  }
}

/** The picture drawn anew, so many times smaller. Transparent places become white, as paper is. */
export function drawn(
  image: CanvasImageSource & { readonly width: number; readonly height: number },
  shrunk: number,
): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(image.width / shrunk));
  canvas.height = Math.max(1, Math.round(image.height / shrunk));
  const context = canvas.getContext('2d');
  if (context === null) {
    throw new Error('there is no room left for a picture of this size');
  }
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas;
}

/** The picture whole, for the browser's own store. */
export function encoded({ canvas }: Picture): Promise<Blob> {
  return new Promise((done, failed) => {
    canvas.toBlob(
      (blob) => (blob === null ? failed(new Error('the picture is too large to be kept')) : done(blob)),
      'image/jpeg',
      0.92,
    );
  });
}

/** For a quilt file: small enough for a browser's own store, fine enough to trace on. */
const KEPT_LONGEST = 1600;
const KEPT_QUALITY = 0.8;

export interface KeptPicture {
  /** A `data:` address, JPEG. */
  readonly address: string;
  /** How much smaller it is than the picture. */
  readonly shrunk: number;
}

/** The picture as it goes into a quilt file: from its canvas, so with nothing that its file said beside the pixels. */
export function keptPicture({ canvas }: Picture): KeptPicture {
  const shrunk = Math.max(1, Math.max(canvas.width, canvas.height) / KEPT_LONGEST);
  return { address: drawn(canvas, shrunk).toDataURL('image/jpeg', KEPT_QUALITY), shrunk };
}

/** A picture from a quilt file, by the same door as any other. */
export async function readKeptPicture(address: string, name: string): Promise<PictureRead> {
  const text = atob(address.slice(address.indexOf(',') + 1));
  return readPicture(new File([Uint8Array.from(text, (each) => each.charCodeAt(0))], name));
}
