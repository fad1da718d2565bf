/** What stands in a patch: its number, its role and its cloth, as large as there is room for, and an arrow where its print points. */
import { ARROW_BREADTH, arrow } from '../draw/arrow.ts';
import type { Item, TextItem } from '../draw/display-list.ts';
import { type LabelBox, placeBox, placePair } from '../draw/fit-text.ts';
import { label } from '../draw/label.ts';
import { paperTextWidth } from '../draw/paper-text.ts';
import { add, type Point, type Polygon, subtract, turn } from '../shape/point.ts';
import type { PaperPatch } from './pieces.ts';
import { readable } from './readable.ts';

/** Of the number, in inches; what stands under it is smaller by this much. */
const SIZES: readonly number[] = [11, 9, 8, 7].map((points) => points / 72);
const SMALLER = 0.72;
const LINE = 1.22;
const ARROW = 0.42;
const PAPER = '#ffffff';
/** Kept clear between words and seams. */
const AIR = 0.05;

interface Line {
  readonly text: string;
  readonly bold: boolean;
}

/**
 * Whole words level, upright or along a long edge; in one line where a patch is long and thin; else the number alone, which the list
 * at the foot of the sheet explains.
 * @param polygon the patch, in inches
 * @param turned how far the sheet turns it
 */
export function patchWords(polygon: Polygon, patch: PaperPatch, turned: number): readonly Item[] {
  const cloth = patch.cloths.length === 0 ? 'no cloth' : patch.cloths.join(' or ');
  const ways: readonly (readonly Line[])[] = [
    [bold(patch.name), plain(patch.role), plain(cloth)],
    [bold(patch.name), plain(`${patch.role}, ${cloth}`)],
    [bold(`${patch.name} · ${patch.role}, ${cloth}`)],
  ];
  const turns = turnsOf(polygon, turned);
  for (const size of SIZES) {
    for (const lines of ways) {
      for (const degrees of turns) {
        const found = place(polygon, patch, lines, size, degrees);
        if (found !== null) return found;
      }
    }
  }
  const degrees = lieOf(patch);
  return label(polygon, {
    name: patch.name,
    size: 8 / 72,
    on: PAPER,
    arrow: degrees === null || patch.arrow === null ? null : { degrees, heads: patch.arrow.heads },
  }).map((item) => (item.kind === 'text' ? { ...withoutHalo(item), turn: readable(item.turn ?? 0, turned) } : item));
}

const bold = (text: string): Line => ({ text, bold: true });
const plain = (text: string): Line => ({ text, bold: false });
const lieOf = (patch: PaperPatch): number | null => patch.arrow?.degrees ?? patch.grain;

function withoutHalo({ on: _, ...item }: TextItem): TextItem {
  return item;
}

/** Level and upright on the sheet, then along the longest edges. */
function turnsOf(polygon: Polygon, turned: number): readonly number[] {
  const edges = polygon
    .map((from, i) => subtract(polygon[(i + 1) % polygon.length]!, from))
    .sort((a, b) => Math.hypot(...b) - Math.hypot(...a))
    .slice(0, 2)
    .map(([x, y]) => (Math.atan2(y, x) * 180) / Math.PI);
  return [-turned, 90 - turned, ...edges].map((degrees) => readable(degrees, turned));
}

function place(
  polygon: Polygon,
  patch: PaperPatch,
  lines: readonly Line[],
  size: number,
  degrees: number,
): readonly Item[] | null {
  const sizes = lines.map((_, i) => (i === 0 ? size : size * SMALLER));
  const width = Math.max(...lines.map(({ text, bold: isBold }, i) => paperTextWidth(text, sizes[i]!, isBold)));
  const height = sizes.reduce((sum, each) => sum + each * LINE, 0);
  const box: LabelBox = { width: width + 2 * AIR, height: height + AIR, turn: degrees };
  const pointing = lieOf(patch);
  if (pointing === null) {
    const at = placeBox(polygon, box);
    return at === null ? null : textLines(lines, sizes, at, height, degrees);
  }
  const mark: LabelBox = { width: ARROW * ARROW_BREADTH, height: ARROW, turn: pointing };
  const both = placePair(polygon, box, mark);
  return both === null ? null : [...textLines(lines, sizes, both[0], height, degrees), lieMark(patch, both[1], ARROW)];
}

/** An arrow for a print; a thin two-headed line for the grain. */
function lieMark(patch: PaperPatch, at: Point, length: number): Item {
  if (patch.arrow !== null) {
    return arrow(at, patch.arrow.degrees, length * 0.92, patch.arrow.heads);
  }
  return { ...arrow(at, patch.grain ?? 0, length * 0.92, 2), class: 'grain' };
}

function textLines(
  lines: readonly Line[],
  sizes: readonly number[],
  middle: Point,
  height: number,
  degrees: number,
): readonly TextItem[] {
  let down = height / 2;
  return lines.map(({ text, bold: isBold }, i) => {
    const size = sizes[i]!;
    down -= (size * LINE) / 2;
    const at = add(middle, turn([0, down], degrees));
    down -= (size * LINE) / 2;
    return { kind: 'text', class: isBold ? 'strong' : 'plain', text, at, size, anchor: 'middle', turn: degrees };
  });
}
