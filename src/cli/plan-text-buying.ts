/** The shopping list. */
import { sayMoney } from '../plan/say-money.ts';
import { saySteps, stepShop } from '../plan/say-steps.ts';
import { sayWashing } from '../plan/say-washing.ts';
import type { ClothTally, Tally } from '../plan/tally.ts';
import { formatClothLength, formatLength } from '../quilt/format-length.ts';
import type { Quilt } from '../quilt/quilt.ts';

export function buyLines(quilt: Quilt, tally: Tally): readonly string[] {
  const rows = tally.cloths.map((cloth) => [
    cloth.name,
    amount(quilt, cloth),
    cloth.price === null || cloth.buy === 0 ? '' : sayMoney(cloth.price, currencyOf(quilt, cloth)),
    [...remarks(quilt, cloth)].join('; '),
  ]);
  const total = tally.price === null ? [] : [`  All together ${sayMoney(tally.price, tally.currency)}.`];
  const among = tally.cloths.some(({ proof }) => proof.testFirst === true)
    ? ', among plans that begin with this test block'
    : '';
  const proved = tally.provedLeast ? [`  Every purchase is proved least${among}.`] : [];
  const blocks = tally.blockCloths.map(({ role, words }) => `  ${role}: ${words}.`);
  return [...columns(rows), ...total, ...proved, ...blocks];
}

function amount(quilt: Quilt, cloth: ClothTally): string {
  const step = quilt.cloths.find((each) => each.id === cloth.cloth)?.step;
  if (cloth.buy === 0) {
    return 'nothing to buy';
  }
  const length = formatClothLength(cloth.buy, quilt.unit, stepShop(step, quilt.unit));
  return step === undefined || cloth.steps === null ? length : `${length} (${saySteps(cloth.steps, step, quilt.unit)})`;
}

function* remarks(quilt: Quilt, cloth: ClothTally): Generator<string> {
  for (const { piece, used } of cloth.pieces) {
    if (used > 0) {
      yield `uses ${used === 1 ? '' : `${used} of `}the shelf piece "${piece}"`;
    }
  }
  if (cloth.over > 1e-6) {
    yield `${formatLength(cloth.over, quilt.unit, { denominator: 8 })} beyond the need`;
  }
  if (cloth.proof.state === 'least' && cloth.buy > 0) {
    yield cloth.proof.testFirst === true ? 'proved least with the test block first' : 'proved least';
  }
  const own = quilt.cloths.find((each) => each.id === cloth.cloth);
  const washing = sayWashing(own, cloth.need, quilt.unit, (length) =>
    formatLength(length, quilt.unit, { denominator: 8 }),
  );
  if (washing !== null) {
    yield washing;
  }
}

const currencyOf = (quilt: Quilt, cloth: ClothTally): string | null =>
  quilt.cloths.find((each) => each.id === cloth.cloth)?.price?.currency ?? null;

/** Cells padded to the widest of their column. */
export function columns(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = rows.reduce<number[]>((most, row) => row.map((cell, i) => Math.max(most[i] ?? 0, cell.length)), []);
  return rows.map((row) => `  ${row.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join('  ')}`.trimEnd());
}
