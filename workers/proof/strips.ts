/** Whether a layout is strips: in order, of allowed heights, each blank wholly in one and parted by straight subcuts. */
import type { JobCloth, Layout, Strip } from '../../src/plan/layout-job.ts';
import type { Polygon } from '../../src/shape/point.ts';
import { hull } from './convex.ts';
import { type Fault, TOUCH } from './fault.ts';
import type { Placed } from './placed.ts';
import type { Rules } from './rules.ts';
import { unparted } from './segments.ts';
import { uncuttable } from './straight-cuts.ts';
import { heightError } from './strip-heights.ts';

const NO_SUBCUT = 'no straight subcut parts one of these from the others';

interface InStrip {
  readonly placed: Placed;
  /** In the strip's frame: along it, then across it. */
  readonly hull: Polygon;
}

/**
 * @param placed the blanks of the layout as they lie
 * @param overlaps whether some of them overlap: no cut parts those, and that is told already
 */
export function stripFaults(
  rules: Rules,
  cloth: JobCloth,
  layout: Layout,
  at: string,
  placed: readonly Placed[],
  overlaps: boolean,
): readonly Fault[] {
  const touch = TOUCH * cloth.width;
  const strips = layout.strips ?? [];
  const held = strips.map((): InStrip[] => []);
  const faults: Fault[] = [];
  for (const blank of placed) {
    const { low, high } = extent(blank, layout);
    const index = strips.findIndex((strip) => low >= strip.from - touch && high <= strip.from + strip.height + touch);
    if (index < 0) faults.push(nowhere(blank, low, high, strips));
    else held[index]!.push({ placed: blank, hull: hullInStrip(blank.outline, layout) });
  }
  faults.push(...firstCutFaults(cloth, layout, at), ...orderFaults(cloth, layout, at, touch));
  strips.forEach((strip, index) => {
    const where = `${at}.strips[${index}]`;
    faults.push(...heightFaults(rules, cloth, layout, strip, held[index]!.length === 0, where));
    if (!overlaps) faults.push(...cutFaults(rules, cloth, layout, strip, held[index]!, where));
  });
  return faults;
}

/** What first cuts run across is measured up the cloth, what they run along is measured over it. */
const extent = (placed: Placed, layout: Layout): { readonly low: number; readonly high: number } =>
  layout.firstCut === 'along'
    ? { low: placed.box.left, high: placed.box.right }
    : { low: placed.box.bottom, high: placed.box.top };

const hullInStrip = (outline: Polygon, layout: Layout): Polygon =>
  hull(layout.firstCut === 'along' ? outline.map(([x, y]) => [y, x]) : outline);

function nowhere(blank: Placed, low: number, high: number, strips: readonly Strip[]): Fault {
  const over = strips.map((strip) => Math.max(strip.from - low, high - strip.from - strip.height));
  const least = over.length === 0 ? 'there is no strip' : `over the nearest by ${Math.min(...over)}`;
  return { what: 'outside its strip', where: blank.where, howMuch: `spans ${low} to ${high}, ${least}` };
}

function firstCutFaults(cloth: JobCloth, layout: Layout, at: string): readonly Fault[] {
  const [cut, asked] = [layout.firstCut ?? 'across', cloth.firstCut ?? 'across'];
  // A layout that holds nothing but the squared end is cut across whatever the strips of the others do.
  if (asked === 'either' || cut === asked || (layout.placements.length === 0 && cut === 'across')) return [];
  return [{ what: 'first cut', where: `${at}.firstCut`, howMuch: `${cut}, but "${cloth.id}" is cut ${asked}` }];
}

function orderFaults(cloth: JobCloth, layout: Layout, at: string, touch: number): readonly Fault[] {
  const strips = layout.strips;
  if (!strips) return [{ what: 'strip', where: `${at}.strips`, howMuch: 'missing' }];
  const end = layout.firstCut === 'along' ? cloth.width : layout.length;
  const faults: Fault[] = [];
  let before = 0;
  strips.forEach((strip, index) => {
    const where = `${at}.strips[${index}]`;
    if (!(Number.isFinite(strip.from) && strip.height > 0 && Number.isFinite(strip.height))) {
      faults.push({ what: 'malformed', where, howMuch: `from ${strip.from}, height ${strip.height}` });
    }
    if (strip.from < before - touch) {
      faults.push({ what: 'strip', where, howMuch: `begins ${before - strip.from} before ${before}, where it may` });
    }
    before = Math.max(before, strip.from + strip.height);
    if (strip.from + strip.height > end + touch) {
      faults.push({ what: 'strip', where, howMuch: `ends ${strip.from + strip.height - end} beyond ${end}` });
    }
  });
  return faults;
}

function heightFaults(
  rules: Rules,
  cloth: JobCloth,
  layout: Layout,
  strip: Strip,
  isEmpty: boolean,
  where: string,
): readonly Fault[] {
  const touch = TOUCH * cloth.width;
  const squares = (cloth.squaring ?? 0) > 0 && isEmpty && strip.height >= (cloth.squaring ?? 0) - touch;
  if (squares) return [];
  const error = heightError(rules, cloth, layout.firstCut ?? 'across', strip.height);
  if (error <= touch) return [];
  const asked = rules.job.ruler === undefined ? 'the height of any turned blank' : `a multiple of ${rules.job.ruler}`;
  return [{ what: 'strip height', where, howMuch: `${strip.height} is ${error} off ${asked}` }];
}

function cutFaults(
  rules: Rules,
  cloth: JobCloth,
  layout: Layout,
  strip: Strip,
  held: readonly InStrip[],
  where: string,
): readonly Fault[] {
  const frame = {
    length: layout.firstCut === 'along' ? layout.length : cloth.width,
    near: strip.from,
    far: strip.from + strip.height,
  };
  const hulls = held.map((blank) => blank.hull);
  const touch = TOUCH * cloth.width;
  const left = rules.job.stages === 3 ? unparted(hulls, frame, touch) : uncuttable(hulls, frame, touch);
  if (left.length === 0) return [];
  const names = left.slice(0, 6).map((index) => held[index]!.placed.where);
  const more = left.length > names.length ? ` and ${left.length - names.length} more` : '';
  const how = rules.job.stages === 3 ? 'no square cuts part these into rows and stacks' : NO_SUBCUT;
  const howMuch = `${how}: ${left.length} blanks, ${names.join(', ')}${more}`;
  return [{ what: 'not cuttable', where, howMuch }];
}
