/** What a drawing's ids, titles, labels, words and colours say of its patches: their roles, units and numbers. */
import type { RoleSeed } from '../quilt/drawn-block.ts';
import { colourName } from './colour-name.ts';
import type { Names } from './svg/walk-svg.ts';

/** All that is said of one patch. */
export interface PatchWords {
  readonly names: Names | null;
  /** Words that stand inside it. */
  readonly inside: readonly string[];
  /** 'none' where nothing fills it. */
  readonly fill: string;
}

/** "A1" written at a patch: its unit's letter and its number, or either alone. */
export interface PatchCode {
  readonly letter: string | null;
  readonly number: number | null;
}

export interface NamedPatches {
  /** For each patch, in order. */
  readonly roleOf: readonly string[];
  readonly codeOf: readonly PatchCode[];
  readonly roles: readonly RoleSeed[];
  /** Where the roles come from, to be told. */
  readonly from: 'names' | 'colours' | 'nothing';
}

/** More roles than this from ids alone are names of single patches rather than of places in a colour scheme. */
const MOST_FROM_IDS = 12;

/** Names that drawing programs give by themselves. */
const GIVEN_BY_PROGRAM =
  /^(path|rect|rectangle|polygon|polyline|circle|ellipse|line|g|group|layer|shape|object|use|svg|text|tspan|vector|union|subtract|intersect|compound ?path|curve|freeform|star|clip|mask|svgid|xmlid|svgjs[a-z]*|_|x|id)?[\s_-]*[a-z]?[\d_.:-]*$/i;

export const isGiven = (name: string): boolean => GIVEN_BY_PROGRAM.test(name) || /\d{4,}/.test(name);

/** "A1", "AB 12", "A1-3" (the third copy of A1), "7". */
export function patchCode(text: string): PatchCode | null {
  const found = /^(?:([A-Z]{1,2})[\s._-]?)?(\d{1,3})(?:[-_.]\d{1,4})?$/.exec(text.trim());
  return found === null ? null : { letter: found[1] ?? null, number: Number(found[2]) };
}

/** Words for people: "long_point-2" is told as "long point". */
export const plainWords = (name: string): string =>
  name
    .replace(/[_-]+/g, ' ')
    .replace(/\s*(?:copy\s*)?\d*$/i, '')
    .trim();

export function namePatches(patches: readonly PatchWords[]): NamedPatches {
  const codeOf = patches.map(codeFrom);
  const said = patches.map(saidRole);
  const byId = patches.map((patch) =>
    patch.names === null || isGiven(patch.names.id) || patchCode(patch.names.id) !== null
      ? ''
      : plainWords(patch.names.id),
  );
  const idsServe = new Set(byId.filter((name) => name !== '')).size <= MOST_FROM_IDS;
  const named = said.map((name, i) => (name === '' && idsServe ? byId[i]! : name));
  const ofFill = namesOfFills(patches, named);
  const nameOf = patches.map(
    ({ fill }, i) => named[i] || ofFill.get(fill) || (fill === 'none' ? 'patches' : colourName(fill)),
  );
  // Two colours may have one name; they are told apart by their figures.
  const fillsOf = new Map<string, Set<string>>();
  const fromFill = patches.map(({ fill }, i) => named[i] === '' && !ofFill.has(fill));
  patches.forEach(({ fill }, i) => {
    if (fromFill[i]) fillsOf.set(nameOf[i]!, (fillsOf.get(nameOf[i]!) ?? new Set()).add(fill));
  });
  const final = patches.map(({ fill, names }, i) => {
    const twins = fromFill[i] && fillsOf.get(nameOf[i]!)!.size > 1;
    const name = twins ? `${nameOf[i]} ${fill}` : nameOf[i]!;
    return { id: names?.role || idFrom(name), name };
  });
  const roles = new Map<string, RoleSeed>();
  for (const { id, name } of final) {
    if (!roles.has(id)) roles.set(id, { id, name: capital(name), facing: { to: 'free' } });
  }
  return {
    roleOf: final.map(({ id }) => id),
    codeOf,
    roles: [...roles.values()],
    from: named.some((name) => name !== '')
      ? 'names'
      : patches.some(({ fill }) => fill !== 'none')
        ? 'colours'
        : 'nothing',
  };
}

function textsOf({ names, inside }: PatchWords): readonly string[] {
  return [names?.title ?? '', names?.label ?? '', ...inside].filter((text) => text !== '');
}

/** The first words of title, label or text inside that are no patch's number. */
function saidRole(patch: PatchWords): string {
  const words = textsOf(patch).find((text) => patchCode(text) === null && !isGiven(text));
  return words ?? '';
}

function codeFrom(patch: PatchWords): PatchCode {
  const codes = [...patch.inside, ...textsOf(patch), patch.names?.id ?? ''].flatMap((text) => patchCode(text) ?? []);
  return codes.find(({ letter }) => letter !== null) ?? codes[0] ?? { letter: null, number: null };
}

/** Where every named patch of one colour has one name, patches of that colour without a name share it. */
function namesOfFills(patches: readonly PatchWords[], named: readonly string[]): ReadonlyMap<string, string> {
  const names = new Map<string, Set<string>>();
  patches.forEach(({ fill }, i) => {
    if (named[i] !== '' && fill !== 'none') names.set(fill, (names.get(fill) ?? new Set()).add(named[i]!));
  });
  return new Map([...names].flatMap(([fill, all]) => (all.size === 1 ? [[fill, [...all][0]!] as const] : [])));
}

const idFrom = (key: string): string =>
  key
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '') || 'patches';

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
