/** Whether what she has in hand will do, as text for people. */
import { type Change, leastTaken, type Try, type WillItDo } from '../plan/will-this-do.ts';
import { formatLength } from '../quilt/format-length.ts';
import { parseLength } from '../quilt/measure.ts';
import type { Length, Quilt } from '../quilt/quilt.ts';
import { columns } from './plan-text-buying.ts';

export function haveLines(quilt: Quilt, { cloth, have, tries, suffices }: WillItDo): readonly string[] {
  const name = quilt.cloths.find((each) => each.id === cloth)?.name ?? cloth;
  return [
    `  In hand: ${written(have, quilt)} of ${name}`,
    ...columns(
      tries.map((each) => [
        capital(changesText(quilt, each.changes)),
        verdictText(quilt, each, leastTaken(tries, each)),
      ]),
    ),
    ...tries.flatMap((each) => otherLines(quilt, cloth, each)),
    ...(tries[0]?.cutList.problems ?? [])
      .filter((problem) => problem.kind === 'error')
      .map((problem) => `  Not planned: ${problem.text}`),
    suffices === null
      ? tries.some(({ verdict }) => verdict === 'open')
        ? '  None of these was found to fit, though not of all of them that is proved; more --seconds may tell.'
        : '  It will not do: none of these plans can fit.'
      : `  It will do ${suffices.changes.length === 0 ? 'as wanted' : `with ${changesText(quilt, suffices.changes)}`}.`,
  ];
}

export function changesText(quilt: Quilt, changes: readonly Change[]): string {
  return changes.length === 0 ? 'as wanted' : changes.map((change) => changeText(quilt, change)).join(' and ');
}

function changeText(quilt: Quilt, change: Change): string {
  if (change.kind === 'room') {
    return change.room === 0 ? 'no room' : `room of ${written(change.room, quilt)}`;
  }
  if (change.kind === 'facing') {
    return `facing within ${change.within}°`;
  }
  const left =
    change.spares === 0 ? 'no spares' : `${change.spares} spare${change.spares === 1 ? '' : 's'} of each blank`;
  return left;
}

function verdictText(quilt: Quilt, { verdict, takes, there, answers: [answer] }: Try, least: number): string {
  const write = (length: number) => formatLength(length, quilt.unit, { denominator: 8 });
  const missing = answer.unplaced.reduce((sum, each) => sum + each.count, 0);
  if (verdict === 'fits') {
    return `fits: takes ${write(takes)} of the ${write(there)} there are`;
  }
  const short =
    missing > 0
      ? `${missing} blank${missing === 1 ? '' : 's'} find no place`
      : `the shortest found takes ${write(least)}, there are ${write(there)}`;
  return `${verdict === 'short' ? 'short, proved: no plan with strips cut like these fits' : 'none found that fits'}; ${short}`;
}

/** Where other cloths serve too, what would be bought of them. */
function otherLines(quilt: Quilt, cloth: string, { changes, tally, verdict }: Try): readonly string[] {
  return tally.cloths
    .filter((each) => each.cloth !== cloth && each.buy > 0 && verdict === 'fits')
    .map(
      ({ name, buy }) =>
        `  With ${changesText(quilt, changes)}, ${formatLength(buy, quilt.unit)} of ${name} is bought beside it.`,
    );
}

function written(length: Length, quilt: Quilt): string {
  if (typeof length === 'number') {
    return formatLength(length, quilt.unit);
  }
  return parseLength(length).unit === null ? `${length} ${quilt.unit}` : length;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
