/**
 * What a picture file says of itself in its first bytes: which of the three kinds it is and how large. Looked at before anything
 * decodes it, so that what merely calls itself a picture, or would fill the machine's memory, never gets that far. After the PNG
 * specification (W3C, 11.2.2), JPEG (ITU-T T.81, B.2.2) and WebP (RFC 9649, 2.5 to 2.7).
 */

export interface PictureHeader {
  readonly kind: 'PNG' | 'JPEG' | 'WebP';
  /** Pixels, before any turning that the file asks for. */
  readonly width: number;
  readonly height: number;
}

/** null where the bytes begin none of the three. JPEG keeps its size behind other parts: give at least the first 256 kB. */
export function pictureHeader(bytes: Uint8Array): PictureHeader | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    return png(view) ?? jpeg(view) ?? webp(view);
  } catch {
    // Read past the end: cut short.
    return null;
  }
}

const text = (view: DataView, at: number, size: number): string =>
  String.fromCharCode(...Array.from({ length: size }, (_, i) => view.getUint8(at + i)));

function png(view: DataView): PictureHeader | null {
  if (view.getUint32(0) !== 0x89504e47 || view.getUint32(4) !== 0x0d0a1a0a || text(view, 12, 4) !== 'IHDR') {
    return null;
  }
  return sized('PNG', view.getUint32(16), view.getUint32(20));
}

function jpeg(view: DataView): PictureHeader | null {
  if (view.getUint16(0) !== 0xffd8) {
    return null;
  }
  for (let at = 2; ; ) {
    if (view.getUint8(at) !== 0xff) return null;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1; // Filling before a marker.
    } else if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)) {
      return sized('JPEG', view.getUint16(at + 7), view.getUint16(at + 5));
    } else if (marker === 0xd9 || marker === 0xda) {
      return null;
    } else {
      at += 2 + view.getUint16(at + 2);
    }
  }
}

function webp(view: DataView): PictureHeader | null {
  if (text(view, 0, 4) !== 'RIFF' || text(view, 8, 4) !== 'WEBP') {
    return null;
  }
  const three = (at: number): number => view.getUint16(at, true) + view.getUint8(at + 2) * 0x10000;
  switch (text(view, 12, 4)) {
    case 'VP8 ':
      return sized('WebP', view.getUint16(26, true) & 0x3fff, view.getUint16(28, true) & 0x3fff);
    case 'VP8L': {
      const bits = view.getUint32(21, true);
      return sized('WebP', (bits & 0x3fff) + 1, ((bits >>> 14) & 0x3fff) + 1);
    }
    case 'VP8X':
      return sized('WebP', three(24) + 1, three(27) + 1);
    default:
      return null;
  }
}

function sized(kind: PictureHeader['kind'], width: number, height: number): PictureHeader | null {
  return width > 0 && height > 0 ? { kind, width, height } : null;
}
