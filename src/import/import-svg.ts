/** From the text of an SVG file to a block at its true size: start reading this folder here. */
import type { DrawnBlock } from '../quilt/drawn-block.ts';
import { convert } from '../quilt/measure.ts';
import type { LengthUnit } from '../quilt/quilt.ts';
import { foundPatch } from './found-patch.ts';
import { ImportFault } from './import-fault.ts';
import { type ImportNote, ImportNotes } from './import-notes.ts';
import { letterUnits } from './letter-units.ts';
import { type NamedPatches, namePatches } from './patch-names.ts';
import { type ReadDrawing, readDrawing, type SaidScale } from './read-drawing.ts';
import { repeatedUnits } from './repeated-units.ts';
import { sayOverlaps } from './say-overlaps.ts';
import { type ShownPatch, shownPatches } from './shown-patches.ts';
import { type CentreChoice, type SoundPatches, soundPatches } from './sound-patches.ts';
import { wordsInside } from './words-inside.ts';

export interface ImportChoices {
  /** The quilt's; all lengths below and in the answer are in it. */
  readonly unit: LengthUnit;
  readonly name: string;
  /** How wide all patches together truly are. Needed where the file says no size; else it overrules what the file says. */
  readonly width?: number;
  /** Corners within it become one; gaps and overlaps nowhere wider than it are let pass. Default 1/64 in. */
  readonly tolerance?: number;
  /** Where the block's centre lies. Default: middle. */
  readonly centre?: CentreChoice;
}

export interface ImportedSvg {
  /** null where a note of kind error says why. */
  readonly block: DrawnBlock | null;
  readonly patches: readonly ShownPatch[];
  readonly notes: readonly ImportNote[];
  /** Of all patches together; null where there are none. */
  readonly size: { readonly width: number; readonly height: number } | null;
  readonly scale: SaidScale;
}

/** Inches. */
export const USUAL_TOLERANCE = 1 / 64;

/** Never throws for what a file holds; what is wrong with it is told in the notes. */
export function importSvg(text: string, choices: ImportChoices): ImportedSvg {
  const notes = new ImportNotes();
  try {
    const { unit, width } = choices;
    const tolerance = choices.tolerance ?? convert(USUAL_TOLERANCE, 'in', unit);
    const inInches = (length: number): number => convert(length, unit, 'in');
    const drawing = readDrawing(text, width === undefined ? null : inInches(width), inInches(tolerance), notes);
    const sound = soundPatches(drawing, unit, tolerance, choices.centre ?? 'middle', notes);
    return blockOf(drawing, sound, { ...choices, tolerance }, notes);
  } catch (error) {
    if (!(error instanceof ImportFault)) throw error;
    notes.error(error.message);
    return { block: null, patches: [], notes: notes.all, size: null, scale: 'none' };
  }
}

function blockOf(
  drawing: ReadDrawing,
  sound: SoundPatches,
  { unit, name, tolerance }: ImportChoices & { readonly tolerance: number },
  notes: ImportNotes,
): ImportedSvg {
  const named = namesIn(drawing, sound);
  const found = sound.patches.map(({ outline, shape }, i) =>
    foundPatch(outline, named.roleOf[i]!, named.codeOf[i]!, shape.shape.groups),
  );
  const within = Math.max(tolerance, convert(1e-3, 'in', unit));
  const units = letterUnits(repeatedUnits(found, within, notes));
  const patches = shownPatches(units, coloursOf(sound, named));
  sayOverlaps(
    sound.patches.map(({ polygon }) => polygon),
    tolerance,
    patches,
    notes,
  );
  sayRolesAndScale(named, drawing.scale, notes);
  const { width, height } = sound.extent;
  return {
    block: notes.failed ? null : { name, units, roles: named.roles },
    patches,
    notes: notes.all,
    size: { width, height },
    scale: drawing.scale,
  };
}

function namesIn(drawing: ReadDrawing, { patches, toBlock }: SoundPatches): NamedPatches {
  const inside = wordsInside(
    patches.map(({ polygon }) => polygon),
    drawing.words.map(({ text, at }) => ({ text, at: toBlock(at) })),
  );
  return namePatches(
    patches.map(({ shape: { shape, filled } }, i) => ({
      names: shape.names,
      inside: inside[i]!,
      fill: filled ? shape.look.fill : 'none',
    })),
  );
}

/** The first plain colour of each role. */
function coloursOf({ patches }: SoundPatches, { roleOf }: NamedPatches): ReadonlyMap<string, string> {
  const colours = new Map<string, string>();
  patches.forEach(({ shape: { shape, filled } }, i) => {
    const role = roleOf[i]!;
    if (filled && !colours.has(role) && /^#[0-9a-f]{6}$/.test(shape.look.fill)) colours.set(role, shape.look.fill);
  });
  return colours;
}

function sayRolesAndScale(named: NamedPatches, scale: SaidScale, notes: ImportNotes): void {
  if (named.from === 'colours') {
    notes.note('Nothing in the file names the patches, so each colour is a role.');
  } else if (named.from === 'nothing') {
    notes.note('Nothing in the file tells the patches apart, so all are of one role.');
  }
  if (scale === 'pixels') {
    notes.warn(
      'The file gives its size in pixels, taken at 96 to the inch. If that is not the true size, say how wide it is.',
    );
  }
  if (scale === 'none') notes.error('The file says no true size. Say how wide the drawing is when finished.');
}
