/** The units found in a drawing, in words. */
import type { Repeat, Unit } from '../../quilt/quilt.ts';

export function repeatWords({ count, over = 360, mirrored = 'no' }: Repeat): string {
  if (count === 1) return mirrored === 'also' ? 'once, and once mirrored' : 'once';
  const times = `${count} times ${over === 360 ? 'round' : `over ${Math.round(over * 10) / 10}°`}`;
  if (mirrored === 'also') return `${times}, and as often mirrored`;
  return mirrored === 'alternate' ? `${times}, every second one mirrored` : times;
}

export function sewingWords({ paper, patches }: Unit): string {
  if (patches.length === 1) return 'one patch, no paper';
  return `${patches.length} patches, ${paper ? 'on paper in this order' : 'without paper'}`;
}
