/** Whether what she has in hand will do, as text for people. */
import { sayChanges, sayLength } from '../plan/say-changes.ts';
import { sayMoney } from '../plan/say-money.ts';
import { sayVerdict } from '../plan/say-verdict.ts';
import type { Try } from '../plan/try-with-hand.ts';
import { leastTaken, type WillItDo } from '../plan/will-this-do.ts';
import { formatLength } from '../quilt/format-length.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { columns } from './plan-text-buying.ts';

export function haveLines(quilt: Quilt, { cloth, have, tries, suffices }: WillItDo): readonly string[] {
  const name = quilt.cloths.find((each) => each.id === cloth)?.name ?? cloth;
  const write = (length: number) => formatLength(length, quilt.unit, { denominator: 8 });
  return [
    `  In hand: ${sayLength(have, quilt)} of ${name}`,
    ...columns(
      tries.map((each) => [capital(sayChanges(quilt, each.changes)), sayVerdict(each, leastTaken(tries, each), write)]),
    ),
    ...tries.flatMap((each) => otherLines(quilt, cloth, each)),
    ...(tries[0]?.cutList.problems ?? [])
      .filter((problem) => problem.kind === 'error')
      .map((problem) => `  Not planned: ${problem.text}`),
    suffices === null
      ? tries.some(({ verdict }) => verdict === 'open')
        ? '  None of these was found to fit, though not of all of them that is proved; more --seconds may tell.'
        : '  It will not do: none of these plans can fit.'
      : `  It will do ${suffices.changes.length === 0 ? 'as wanted' : `with ${sayChanges(quilt, suffices.changes)}`}.`,
  ];
}

/** What is bought of the other cloths concerned: all that is cut from them, for other roles too. */
function otherLines(quilt: Quilt, cloth: string, { changes, tally, verdict }: Try): readonly string[] {
  return tally.cloths
    .filter((each) => each.cloth !== cloth && each.buy > 0 && verdict === 'fits')
    .map(({ cloth: id, name, buy, price }) => {
      const currency = quilt.cloths.find((each) => each.id === id)?.price?.currency ?? null;
      const money = price === null ? '' : `, ${sayMoney(price, currency)}`;
      return `  With ${sayChanges(quilt, changes)}, all told ${formatLength(buy, quilt.unit)} of ${name} is bought${money}.`;
    });
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
