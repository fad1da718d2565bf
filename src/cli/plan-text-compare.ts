/** The plan beside those that show what facing, room and a rule of thumb cost. */
import { priceOf } from '../plan/price-of.ts';
import { sayMoney } from '../plan/say-money.ts';
import { stepShop } from '../plan/say-steps.ts';
import type { Version, VersionKind } from '../plan/side-by-side.ts';
import type { Tally } from '../plan/tally.ts';
import { formatClothLength } from '../quilt/format-length.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { columns } from './plan-text-buying.ts';

const HEADINGS: Readonly<Record<VersionKind, string>> = {
  'as wanted': 'this plan',
  'facing ignored': 'facing ignored',
  'no room': 'no room',
  'rule of thumb': 'rule of thumb',
};

/** @param versions the plan as wanted first */
export function compareLines(quilt: Quilt, versions: readonly Version[]): readonly string[] {
  const [wanted] = versions;
  if (wanted === undefined) {
    return [];
  }
  const rows = wanted.tally.cloths.map(({ cloth, name }) => [
    name,
    ...versions.map((version) => cell(quilt, version, cloth)),
  ]);
  const total = [
    'All together',
    ...versions.map(({ tally }) => (tally.price === null ? '' : sayMoney(tally.price, tally.currency))),
  ];
  const table = columns([
    ['', ...versions.map(({ kind }) => HEADINGS[kind])],
    ...rows,
    ...(wanted.tally.price === null ? [] : [total]),
  ]);
  const notes = versions.flatMap(({ kind, cutList, tally }) => [
    ...cutList.problems
      .filter(
        (problem) => problem.kind === 'error' && !wanted.cutList.problems.some(({ text }) => text === problem.text),
      )
      .map((problem) => `  With ${HEADINGS[kind]}: ${problem.text}`),
    ...tally.cloths
      .filter(({ unplaced }) => unplaced.length > 0)
      .map(({ name }) => `  With ${HEADINGS[kind]} not everything fits on ${name}.`),
  ]);
  return [
    ...table,
    '',
    '  Each is a plan of its own that can be cut. * Proved: no plan cut so buys less.',
    '  Facing ignored: prints lie as the cutting likes. No room: nothing to spare beyond the seam allowance.',
    '  Rule of thumb: every patch boxed, each kind in strips of its own, all from the bolt and nothing from the shelf.',
    ...versions.slice(1).flatMap((other) => priceLines(quilt, wanted.tally, other)),
    ...notes,
  ];
}

/** Of a rule nothing is proved but what area alone proves of it, which would mislead beside the others. */
function cell(quilt: Quilt, { kind, tally }: Version, id: string): string {
  const cloth = tally.cloths.find((each) => each.cloth === id);
  if (cloth === undefined) {
    return '–';
  }
  const least = cloth.proof.state === 'least' && kind !== 'rule of thumb';
  return `${length(quilt, id, cloth.buy)}${least ? ' *' : ''}`;
}

function length(quilt: Quilt, id: string, value: number): string {
  const step = quilt.cloths.find((cloth) => cloth.id === id)?.step;
  return formatClothLength(value, quilt.unit, stepShop(step, quilt.unit));
}

/** What one version makes cheaper or dearer, cloth by cloth, in a sentence. */
function priceLines(quilt: Quilt, wanted: Tally, version: Version): readonly string[] {
  const words = priceOf(wanted, version)
    .cloths.filter(({ more }) => more !== 0)
    .map(({ cloth, name, more }) => `${length(quilt, cloth, Math.abs(more))} ${more > 0 ? 'more' : 'less'} of ${name}`);
  return [
    `  ${SUBJECTS[version.kind]} ${words.length === 0 ? 'would buy the same' : `would buy ${words.join(', ')}`}.`,
  ];
}

const SUBJECTS: Readonly<Record<VersionKind, string>> = {
  'as wanted': 'This plan',
  'facing ignored': 'Ignoring facing',
  'no room': 'Cutting without room',
  'rule of thumb': 'The rule of thumb',
};
