/** From the text of an SVG file to a block at its true size: start reading this folder here. */
import { findSewingOrder, isSewable } from '../cutting/sewing-order.ts';
import { sewnSides } from '../cutting/sewn-side.ts';
import type { DrawnBlock } from '../quilt/drawn-block.ts';
import { convert } from '../quilt/measure.ts';
import { placesOf } from '../quilt/places.ts';
import type { LengthUnit, Unit } from '../quilt/quilt.ts';
import { flatten } from '../shape/flatten.ts';
import { mirrorOutline, moveOutline, type Outline } from '../shape/outline.ts';
import { outlineFault } from '../shape/outline-fault.ts';
import { outlineArea, outlineBox, outlineCentroid } from '../shape/outline-measures.ts';
import { distance, type Point, type Polygon, scale, subtract, turn } from '../shape/point.ts';
import { blockCentre } from './block-centre.ts';
import { findRepeats, type NamedUnit, type RepeatedUnit } from './find-repeats.ts';
import { type FoundPatch, foundPatch } from './found-patch.ts';
import { groupUnits } from './group-units.ts';
import { ImportFault } from './import-fault.ts';
import { neatIn } from './neat-places.ts';
import { findOverlaps } from './overlaps.ts';
import { namePatches } from './patch-names.ts';
import { snap } from './snap.ts';
import { type FindOrder, splitUnits } from './split-units.ts';
import { followedBy } from './svg/matrix.ts';
import { readXml } from './svg/read-xml.ts';
import { type Traced, type TracedShape, traceShapes } from './svg/trace-shapes.ts';
import { pageSize } from './svg/view-box.ts';
import { walkSvg } from './svg/walk-svg.ts';
import { tidyOutline } from './tidy-outline.ts';

export interface ImportChoices {
  /** The quilt's; all lengths below and in the answer are in it. */
  readonly unit: LengthUnit;
  readonly name: string;
  /** How wide all patches together truly are. Needed where the file says no size; else it overrules what the file says. */
  readonly width?: number;
  /** Corners within it become one; gaps and overlaps nowhere wider than it are let pass. Default 1/64 in. */
  readonly tolerance?: number;
  /** Where the block's centre lies. Default: a mark named "centre", else the middle of the drawing. */
  readonly centre?: 'middle' | 'page';
}

export interface ImportNote {
  /** error: no block comes of it. warning: look at it. note: good to know. */
  readonly kind: 'error' | 'warning' | 'note';
  readonly text: string;
  /** Where on the drawing, about the block's centre. */
  readonly places: readonly Polygon[];
}

/** A patch where it lies in the block. */
export interface ShownPatch {
  /** "A1". */
  readonly name: string;
  readonly role: string;
  readonly outline: Outline;
  /** What the file fills it with, "#rrggbb"; null where that is no plain colour. */
  readonly colour: string | null;
}

export interface ImportedSvg {
  /** null where a note of kind error says why. */
  readonly block: DrawnBlock | null;
  readonly patches: readonly ShownPatch[];
  readonly notes: readonly ImportNote[];
  /** Of all patches together; null where there are none. */
  readonly size: { readonly width: number; readonly height: number } | null;
  /** given: she said it. pixels: taken at 96 to the inch. none: not known. */
  readonly scale: 'given' | 'physical' | 'pixels' | 'none';
}

/** Inches. */
export const USUAL_TOLERANCE = 1 / 64;
const MOST_PATCHES = 2_000;
const MOST_EDGES = 20_000;

/** Never throws for what a file holds; what is wrong with it is told in the notes. */
export function importSvg(text: string, choices: ImportChoices): ImportedSvg {
  try {
    return importKnown(text, choices);
  } catch (error) {
    if (!(error instanceof ImportFault)) throw error;
    return { block: null, patches: [], notes: [errorNote(error.message)], size: null, scale: 'none' };
  }
}

function importKnown(text: string, choices: ImportChoices): ImportedSvg {
  const { unit } = choices;
  const notes: ImportNote[] = [];
  const say = (kind: ImportNote['kind'], words: string, places: readonly Polygon[] = []): void => {
    notes.push({ kind, text: words, places });
  };
  const tolerance = choices.tolerance ?? convert(USUAL_TOLERANCE, 'in', unit);
  const { root, leftOut } = readXml(text);
  const page = pageSize(root.attributes);
  const walked = walkSvg(root);
  for (const [what, times] of [...leftOut, ...walked.passed]) {
    say('note', `Left out: ${what}${times > 1 ? `, ${times} times` : ''}.`);
  }
  for (const fault of walked.faults) say('warning', fault);

  const atPage = traceShapes(walked, page.matrix);
  const { kept: shapes, frame } = withoutFrame(atPage.closed);
  if (shapes.length === 0) {
    throw new ImportFault(
      'The file holds no closed shapes. Draw each patch as a closed outline, and turn words and strokes into none.',
    );
  }
  if (frame !== null)
    say('note', `Left out as a frame: the shape in line ${frame.shape.line}, which holds all the others.`);
  const drawn = boxOf(shapes.map(({ outline }) => outline));
  const known = choices.width !== undefined ? 'given' : page.said;
  // Curves are straightened to the true size, so a size that she gives is taken into account before.
  const factor = choices.width === undefined ? 1 : convert(choices.width, unit, 'in') / drawn.width;
  const traced = factor === 1 ? atPage : traceShapes(walked, followedBy(page.matrix, [factor, 0, 0, factor, 0, 0]));
  const patches = factor === 1 ? shapes : withoutFrame(traced.closed).kept;
  for (const fault of traced.faults) say('warning', fault);
  if (traced.flattened > 0) {
    say(
      'note',
      `${many(traced.flattened, 'curve is', 'curves are')} no arc of a circle, and cut into straight edges within 1/1000 in.`,
    );
  }
  if (patches.length > MOST_PATCHES || patches.reduce((sum, each) => sum + each.outline.length, 0) > MOST_EDGES) {
    throw new ImportFault(
      `The drawing has more than ${MOST_PATCHES} patches or ${MOST_EDGES} edges. Save the block alone.`,
    );
  }

  const toUnit = convert(1, 'in', unit);
  const inUnit = (place: Point): Point => scale(place, toUnit);
  const pageMiddle: Point | null =
    page.width === null || page.height === null ? null : [(page.width * factor) / 2, (-page.height * factor) / 2];
  const outlines = patches.map(({ outline }) => scaled(outline, toUnit));
  const centre = centreOf(outlines, traced, choices.centre === 'page' ? pageMiddle : null, inUnit, tolerance);
  const about = outlines.map((outline) => moveOutline(outline, (corner) => subtract(corner, centre)));
  const snapped = snap(about, tolerance, neatIn(unit));
  if (snapped.farthest > convert(2e-3, 'in', unit)) {
    say('note', `Corners were moved by up to ${figure(snapped.farthest)} ${unit} so that neighbours meet.`);
  }
  const within = Math.max(tolerance, convert(1e-3, 'in', unit));
  const sound = snapped.outlines.flatMap((outline, i) => {
    const shape = patches[i]!;
    const neat = outline.length === 0 ? null : tidyOutline(outline, convert(5e-4, 'in', unit));
    const fault = neat === null ? 'it is smaller than the tolerance' : outlineFault(neat);
    if (neat !== null && fault === null) return [{ outline: neat, shape }];
    say('warning', `The shape in line ${shape.shape.line} is left out: ${fault}.`, [flattened(about[i]!)]);
    return [];
  });
  if (sound.length === 0)
    throw new ImportFault(notes.find((note) => note.kind === 'warning')?.text ?? 'No shape can be read.');

  const polygons = sound.map(({ outline }) => flattened(outline));
  const inside = wordsInside(
    sound.map(({ outline }) => outline),
    polygons,
    traced.words.map(({ text: words, at }) => ({ words, at: subtract(inUnit(at), centre) })),
  );
  const named = namePatches(
    sound.map(({ shape: { shape, filled } }, i) => ({
      names: shape.names,
      inside: inside[i]!,
      fill: filled ? shape.look.fill : 'none',
    })),
  );
  const found = sound.map(({ outline, shape }, i) =>
    foundPatch(outline, named.roleOf[i]!, named.codeOf[i]!, shape.shape.groups),
  );
  const units = repeatedUnits(found, within, (words) => say('warning', words));
  const listed = lettered(units);
  const shown = listed.flatMap((each) => patchesInPlace(each, coloursOf(named.roleOf, sound)));
  sayOverlaps(polygons, tolerance, found, shown, say);
  if (named.from !== 'names') {
    say(
      'note',
      named.from === 'colours'
        ? 'Nothing in the file names the patches, so each colour is a role.'
        : 'Nothing in the file tells the patches apart, so all are of one role.',
    );
  }
  if (known === 'pixels') {
    say(
      'warning',
      `The file gives its size in pixels, taken at 96 to the inch. If that is not the true size, say how wide it is.`,
    );
  }
  if (known === 'none') say('error', 'The file says no true size. Say how wide the drawing is when finished.');
  const box = boxOf(about);
  const roles = named.roles.filter(({ id }) => listed.some((each) => each.patches.some((patch) => patch.role === id)));
  return {
    block: notes.some((note) => note.kind === 'error') ? null : { name: choices.name, units: listed, roles },
    patches: shown,
    notes,
    size: { width: box.width, height: box.height },
    scale: known,
  };
}

const errorNote = (text: string): ImportNote => ({ kind: 'error', text, places: [] });
const many = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;
const figure = (value: number): string => `${Math.round(value * 1e4) / 1e4}`;
const flattened = (outline: Outline): Polygon => flatten(outline, { side: 'chord', within: 1e-3 });

function scaled(outline: Outline, by: number): Outline {
  return outline.map((entry) =>
    'arc' in entry ? { arc: { ...entry.arc, radius: entry.arc.radius * by } } : scale(entry, by),
  );
}

interface Extent {
  readonly width: number;
  readonly height: number;
  readonly middle: Point;
}

function boxOf(outlines: readonly Outline[]): Extent {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const outline of outlines) {
    const { min, max } = outlineBox(outline);
    left = Math.min(left, min[0]);
    bottom = Math.min(bottom, min[1]);
    right = Math.max(right, max[0]);
    top = Math.max(top, max[1]);
  }
  return { width: right - left, height: top - bottom, middle: [(left + right) / 2, (bottom + top) / 2] };
}

/** A shape that goes round all the others, where they fill it or are painted and it is not, is a frame or a backdrop. */
function withoutFrame(shapes: readonly TracedShape[]): { kept: readonly TracedShape[]; frame: TracedShape | null } {
  const area = (shape: TracedShape): number => Math.abs(outlineArea(shape.outline));
  const largest = shapes.reduce<TracedShape | null>(
    (best, each) => (best === null || area(each) > area(best) ? each : best),
    null,
  );
  const others = shapes.filter((each) => each !== largest);
  if (largest === null || others.length < 2) return { kept: shapes, frame: null };
  const [outer, inner] = [outlineBox(largest.outline), boxOf(others.map(({ outline }) => outline))];
  const holds =
    inner.width <= outer.max[0] - outer.min[0] + 0.02 &&
    inner.height <= outer.max[1] - outer.min[1] + 0.02 &&
    distance(inner.middle, [(outer.min[0] + outer.max[0]) / 2, (outer.min[1] + outer.max[1]) / 2]) <=
      0.02 + (outer.max[0] - outer.min[0] - inner.width + outer.max[1] - outer.min[1] - inner.height) / 2;
  const filled = others.reduce((sum, each) => sum + area(each), 0) >= 0.97 * area(largest);
  const bare = !largest.filled && others.every((each) => each.filled);
  return holds && (filled || bare) ? { kept: others, frame: largest } : { kept: shapes, frame: null };
}

/** Whichever holds: what she asked for, a mark in the file, what the drawing comes round about. */
function centreOf(
  outlines: readonly Outline[],
  traced: Traced,
  page: Point | null,
  inUnit: (place: Point) => Point,
  tolerance: number,
): Point {
  if (page !== null) return inUnit(page);
  if (traced.centre !== null) return inUnit(traced.centre);
  const masses = outlines.map((outline) => ({
    middle: outlineCentroid(outline),
    area: Math.abs(outlineArea(outline)),
  }));
  return blockCentre(masses, boxOf(outlines).middle, tolerance);
}

/** Words go to the smallest patch that they stand in. */
function wordsInside(
  outlines: readonly Outline[],
  polygons: readonly Polygon[],
  words: readonly { readonly words: string; readonly at: Point }[],
): readonly (readonly string[])[] {
  const inside: string[][] = outlines.map(() => []);
  const bySize = polygons.map((_, i) => i).sort((a, b) => outlineArea(outlines[a]!) - outlineArea(outlines[b]!));
  for (const { words: text, at } of words) {
    const holder = bySize.find((i) => holds(polygons[i]!, at));
    if (holder !== undefined) inside[holder]!.push(text);
  }
  return inside;
}

/** By how often a ray to the right crosses the edge. */
function holds(polygon: Polygon, [x, y]: Point): boolean {
  let odd = false;
  polygon.forEach(([ax, ay], i) => {
    const [bx, by] = polygon[(i + 1) % polygon.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) odd = !odd;
  });
  return odd;
}

/** Numbers that the drawing gives are kept where they can be sewn in that order. */
const findOrder: FindOrder = (patches) => {
  if (areNumbered(patches)) {
    const drawn = patches.map(({ outline }, i) => ({ number: i + 1, role: '', outline }));
    const sides = sewnSides({ id: '', paper: true, repeat: { count: 1 }, patches: drawn });
    if (sides.every(({ fault }) => fault === null)) return patches.map((_, i) => i);
  }
  const found = findSewingOrder(patches.map(({ outline }) => outline));
  return isSewable(found) ? found.order : null;
};

function repeatedUnits(
  found: readonly FoundPatch[],
  within: number,
  warn: (words: string) => void,
): readonly RepeatedUnit[] {
  const units: NamedUnit[] = groupUnits(found).flatMap(({ name, patches, meant }) => {
    const parts = splitUnits(byNumber(patches), findOrder, within);
    const called = name === '' ? 'What lies side by side' : `“${name}”`;
    if (parts.some(({ pieceable }) => !pieceable)) {
      warn(
        `${called}: ${parts.filter(({ pieceable }) => !pieceable).length === 1 ? 'some patches have' : 'several parts have'} no sewing order on one foundation, so they are listed without paper.`,
      );
    } else if (meant && parts.length > 1) {
      warn(`${called} cannot be sewn on one foundation; it is parted into ${parts.length} units.`);
    }
    return parts.map((part) => ({ ...part, name }));
  });
  return findRepeats(units, 2 * within);
}

function areNumbered(patches: readonly FoundPatch[]): boolean {
  const numbers = patches.map(({ code }) => code.number);
  return numbers.every((number) => number !== null) && new Set(numbers).size === numbers.length;
}

/** Patches that carry numbers come in their order. */
function byNumber(patches: readonly FoundPatch[]): readonly FoundPatch[] {
  return areNumbered(patches) ? patches.toSorted((a, b) => a.code.number! - b.code.number!) : patches;
}

/** Letters from the drawing where a unit's patches agree on one that is still free; else the next free one. */
function lettered(units: readonly RepeatedUnit[]): readonly Unit[] {
  const asked = units.map(({ patches }) => {
    const letters = new Set(patches.map(({ code }) => code.letter));
    return letters.size === 1 ? [...letters][0]! : null;
  });
  const used = new Set<string>();
  const own = asked.map((letter) => {
    if (letter === null || used.has(letter)) return null;
    used.add(letter);
    return letter;
  });
  let next = 0;
  const free = (): string => {
    for (;;) {
      const letter = letterOf(next++);
      if (!used.has(letter)) return letter;
    }
  };
  return units.map(({ name, paper, repeat, patches }, i) => ({
    id: own[i] ?? free(),
    ...(name === '' ? {} : { name: name.charAt(0).toUpperCase() + name.slice(1) }),
    paper,
    repeat,
    patches: patches.map(({ outline, role }, k) => ({ number: k + 1, role, outline: rounded(outline) })),
  }));
}

/** Turning leaves figures behind that say nothing; a billionth is far below what arcs and joins are checked to. */
function rounded(outline: Outline): Outline {
  const tidy = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;
  return outline.map((entry) =>
    'arc' in entry ? { arc: { ...entry.arc, radius: tidy(entry.arc.radius) } } : [tidy(entry[0]), tidy(entry[1])],
  );
}

/** A to Z, then AA, AB … */
function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letterOf(Math.floor(index / 26) - 1) + last;
}

/** The first plain colour of each role. */
function coloursOf(
  roleOf: readonly string[],
  sound: readonly { readonly shape: TracedShape }[],
): ReadonlyMap<string, string> {
  const colours = new Map<string, string>();
  sound.forEach(({ shape: { shape, filled } }, i) => {
    const role = roleOf[i]!;
    if (filled && !colours.has(role) && /^#[0-9a-f]{6}$/.test(shape.look.fill)) colours.set(role, shape.look.fill);
  });
  return colours;
}

function patchesInPlace(unit: Unit, colours: ReadonlyMap<string, string>): readonly ShownPatch[] {
  return placesOf(unit).flatMap((place) =>
    unit.patches.map(({ number, role, outline }) => ({
      name: `${unit.id}${number}`,
      role,
      colour: colours.get(role) ?? null,
      outline: moveOutline(place.mirrored ? mirrorOutline(outline) : outline, (corner) => turn(corner, place.turn)),
    })),
  );
}

function sayOverlaps(
  polygons: readonly Polygon[],
  tolerance: number,
  found: readonly FoundPatch[],
  shown: readonly ShownPatch[],
  say: (kind: ImportNote['kind'], words: string, places?: readonly Polygon[]) => void,
): void {
  const { overlaps, gaps, complete } = findOverlaps(polygons, tolerance);
  const middles = shown.map(({ outline }) => outlineCentroid(outline));
  const nameOf = (index: number): string => {
    const { middle } = found[index]!;
    const nearest = middles.reduce(
      (best, each, i) => (distance(each, middle) < distance(middles[best]!, middle) ? i : best),
      0,
    );
    return shown[nearest]!.name;
  };
  for (const {
    patches: [a, b],
    places,
  } of overlaps) {
    say('warning', `${nameOf(a)} and ${nameOf(b)} lie over one another; cloth would be planned for both.`, places);
  }
  for (const gap of gaps) {
    say('warning', 'Nothing covers a place between patches; if it is meant to be open, leave it so.', [gap]);
  }
  if (!complete) say('warning', 'Very many patches lie over one another; only the first are told.');
}
