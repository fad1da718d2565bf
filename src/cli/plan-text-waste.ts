/** Where the cloth goes, in shares of all that is used. */
import { keepSize } from '../plan/leftovers.ts';
import { sayLeftovers } from '../plan/say-leftovers.ts';
import type { Areas, Tally } from '../plan/tally.ts';
import { formatDecimal, formatLength } from '../quilt/format-length.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { columns } from './plan-text-buying.ts';

const ACCOUNTS: readonly (readonly [keyof Areas, string])[] = [
  ['finished', 'seen'],
  ['seams', 'seams'],
  ['room', 'trimmed'],
  ['spares', 'spares'],
  ['squaring', 'squaring'],
  ['kept', 'kept'],
  ['waste', 'waste'],
];

/** A row for each cloth and one for all: the area used, and what became of it in percent. */
export function wasteLines(quilt: Quilt, tally: Tally): readonly string[] {
  const rows = [...tally.cloths.map(({ name, areas }) => [name, areas] as const), ['All', tally.areas] as const];
  return columns([
    ['', `${quilt.unit}²`, ...ACCOUNTS.map(([, words]) => words)],
    ...rows.map(([name, areas]) => [
      name,
      formatDecimal(areas.used, 0),
      ...ACCOUNTS.map(([account]) => share(areas[account], areas.used)),
    ]),
  ]);
}

const share = (part: number, whole: number): string =>
  whole === 0 ? '' : `${formatDecimal((part / whole) * 100, 0)} %`;

/** What is left whole and worth keeping, cloth by cloth: width across by length along. */
export function leftoverLines(quilt: Quilt, tally: Tally): readonly string[] {
  const rows = tally.cloths.flatMap(({ name, leftovers }) =>
    leftovers.length === 0 ? [] : [[name, sayLeftovers(leftovers, quilt.unit)]],
  );
  const size = formatLength(keepSize(quilt), quilt.unit);
  return rows.length === 0 ? [`  Nothing of ${size} or more both ways.`] : columns(rows);
}
