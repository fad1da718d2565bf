/**
 * Ruler marks: a row that has room to spare is spread so that the cut after each blank meets both edges of the strip on a
 * mark of the ruler, or of half or a quarter of it where there is less room. A row without even that stays as it is: cloth is
 * worth more than a round number.
 */
import type { LaidBlank } from './lay-row.ts';

/**
 * @param height of the strip @param span its length @param ruler null: nothing to do
 * @returns the row spread onto the ruler's marks, or the row itself
 */
export function gridRow(
  blanks: readonly LaidBlank[],
  height: number,
  span: number,
  ruler: number | null,
): readonly LaidBlank[] {
  if (ruler === null) return blanks;
  return (
    spreadRow(blanks, height, span, ruler) ??
    spreadRow(blanks, height, span, ruler / 2) ??
    spreadRow(blanks, height, span, ruler / 4) ??
    blanks
  );
}

function spreadRow(
  blanks: readonly LaidBlank[],
  height: number,
  span: number,
  ruler: number,
): readonly LaidBlank[] | null {
  const mark = (v: number) => Math.ceil(v / ruler - 1e-6) * ruler;
  const spread: LaidBlank[] = [];
  let near = 0;
  let far = 0;
  for (const blank of blanks) {
    const { variant, y, slope } = blank;
    // As far left as the cut before it lets it lie.
    const x = Math.max(...variant.hull.map(([px, py]) => near + ((far - near) * (py + y)) / height - px));
    if (x + variant.width > span * (1 + 1e-9) + 1e-9) return null;
    const reach = Math.max(...variant.hull.map(([px, py]) => px + x - slope * (py + y)));
    near = Math.max(near, mark(reach));
    far = Math.max(far, mark(reach + slope * height));
    spread.push({ ...blank, x });
  }
  return spread;
}
