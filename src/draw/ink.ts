/** Ink that can be read on cloth of any colour. Only black and white reach 4.5 to 1 on every middle grey. */

export const DARK_INK = '#000000';
export const LIGHT_INK = '#ffffff';

/** The darker or lighter ink, whichever contrasts more with the colour (#rrggbb). */
export function inkOn(colour: string): string {
  return contrast(colour, DARK_INK) >= contrast(colour, LIGHT_INK) ? DARK_INK : LIGHT_INK;
}

/** Contrast ratio of two colours, 1 to 21, as defined by the W3C's Web Content Accessibility Guidelines 2.2. */
export function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

/** `share` of the second colour mixed into the first, channel by channel. */
export function mix(a: string, b: string, share: number): string {
  const [from, to] = [channels(a), channels(b)];
  const mixed = from.map((value, index) => Math.round((value + ((to[index] ?? 0) - value) * share) * 255));
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

function luminance(colour: string): number {
  const [red, green, blue] = channels(colour).map((value) =>
    value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4,
  ) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function channels(colour: string): readonly [number, number, number] {
  const found = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour);
  if (found === null) {
    throw new RangeError(`"${colour}" is not a colour; expected #rrggbb`);
  }
  return [1, 2, 3].map((index) => Number.parseInt(found[index] ?? '', 16) / 255) as [number, number, number];
}

/** A seam or a cut edge that can be seen on a cloth, by day and by night, without shouting. */
export const edgeOn = (colour: string): string => mix(colour, inkOn(colour), 0.72);
