/** Which cloth looks most like another. */
import type { Cloth } from '../quilt/quilt.ts';

/** Cloths in the order of how near their colours are to one of them; equals in the order given. */
export function nearestFirst(cloths: readonly Cloth[], to: Cloth): readonly Cloth[] {
  const own = oklab(to.colour);
  const distance = new Map(cloths.map((cloth) => [cloth.id, apart(oklab(cloth.colour), own)]));
  return [...cloths].sort((a, b) => distance.get(a.id)! - distance.get(b.id)!);
}

type Lab = readonly [lightness: number, a: number, b: number];

const apart = (one: Lab, other: Lab): number => Math.hypot(...one.map((value, i) => value - other[i]!));

/** #rrggbb in Oklab, where distance is near what the eye sees. Björn Ottosson, “A perceptual color space”, 2020. */
function oklab(colour: string): Lab {
  const [r, g, b] = [1, 3, 5].map((at) => linear(Number.parseInt(colour.slice(at, at + 2), 16) / 255)) as [
    number,
    number,
    number,
  ];
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

const linear = (value: number): number => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);
