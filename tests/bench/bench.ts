/** Measures the engine: npm run bench -- strips|stock|rings|kinds|growth|bounds|stages|shelf [seeds] [seconds]. Seeds: a number, or a range as 1..40. */
import { benchBounds } from './bench-bounds.ts';
import { benchGrowth } from './bench-growth.ts';
import { benchKinds, benchRings } from './bench-rings.ts';
import { benchStock, benchStrips } from './bench-sets.ts';
import { benchShelf } from './bench-shelf.ts';
import { benchStages } from './bench-stages.ts';

const BENCHES = {
  strips: benchStrips,
  stock: benchStock,
  rings: benchRings,
  kinds: benchKinds,
  growth: benchGrowth,
  bounds: benchBounds,
  stages: benchStages,
  shelf: benchShelf,
};

const [what = '', seedsText = '1', secondsText = '10'] = process.argv.slice(2);
const bench = Object.entries(BENCHES).find(([name]) => name === what)?.[1];
const [, from, , to] = /^(\d+)(\.\.(\d+))?$/.exec(seedsText) ?? [];
const seconds = Number(secondsText);
if (!bench || from === undefined || !(seconds > 0)) {
  console.error(`usage: npm run bench -- ${Object.keys(BENCHES).join('|')} [seeds, as 1 or 1..40] [seconds]`);
  process.exit(2);
}
const first = Number(from);
const last = Number(to ?? from);
await bench(
  Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i),
  seconds,
);
