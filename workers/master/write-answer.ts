/** From a plan to the answer of the layout job. */
import type { Layout, LayoutAnswer, LayoutJob, Placement, Strip, Unplaced } from '../../src/plan/layout-job.ts';
import type { Family } from '../strips/family.ts';
import { boltLengths, type Plan, type PlannedStrip, usedLength } from './plan.ts';
import { isBolt } from './strip-master.ts';

/** @param why by blank: what to say of those that are not placed */
export function writeAnswer(
  job: LayoutJob,
  families: readonly Family[],
  plan: Plan,
  bound: number,
  boundFrom: string,
  seconds: number,
  impossible: readonly Unplaced[],
): LayoutAnswer {
  const short: Unplaced[] = [...plan.unplaced].flatMap((count, i) =>
    count > 0 ? [{ blank: job.blanks[i]!.id, count, why: 'no room left on the pieces there are' }] : [],
  );
  const unplaced = [...impossible, ...short];
  const partial = unplaced.length > 0;
  const proved = Math.min(bound, plan.cost);
  return {
    status: partial ? 'partial' : plan.cost - proved <= 1e-6 ? 'optimal' : 'feasible',
    cost: plan.cost,
    bound: partial ? null : proved,
    boundFrom: partial ? 'no bound: some blanks are not placed' : boundFrom,
    seconds,
    layouts: writeLayouts(job, families, plan),
    unplaced,
  };
}

function writeLayouts(job: LayoutJob, families: readonly Family[], plan: Plan): readonly Layout[] {
  const lengths = boltLengths(job, families, plan.strips, plan.pieces);
  const layouts: Layout[] = [];
  job.cloths.forEach((cloth, c) => {
    if (!isBolt(cloth) || lengths[c] === 0) return;
    const strips = plan.strips.filter((s) => families[s.family]!.clothIndex === c);
    const squaring = cloth.squaring ?? 0;
    if (cloth.firstCut === 'along') {
      // What squaring takes off a bolt that is cut along is a length of its own, all of it one empty strip.
      const strip = { from: 0, height: cloth.width };
      if (squaring > 0)
        layouts.push({
          cloth: cloth.id,
          count: 1,
          length: squaring,
          firstCut: 'along',
          strips: [strip],
          placements: [],
        });
    } else if (strips.length > 0 || squaring > 0) {
      layouts.push(writeLayout(job, cloth.id, strips, false, squaring, null));
    }
  });
  for (const piece of plan.pieces) {
    const { cloth, along, segment } = families[piece.family]!;
    const length = segment === null ? (along ? cloth.length! : null) : usedLength(piece);
    layouts.push(writeLayout(job, cloth.id, piece.strips, along, 0, length));
  }
  return merged(layouts);
}

/** @param length null: as much as the strips stack up to */
function writeLayout(
  job: LayoutJob,
  cloth: string,
  strips: readonly PlannedStrip[],
  along: boolean,
  squaring: number,
  length: number | null,
): Layout {
  const ordered = [...strips].sort((a, b) => b.height - a.height || sortKey(a).localeCompare(sortKey(b)));
  const told: Strip[] = [];
  const placements: Placement[] = [];
  let from = 0;
  if (squaring > 0) {
    told.push({ from: 0, height: squaring });
    from = squaring;
  }
  for (const strip of ordered) {
    told.push({ from, height: strip.height });
    for (const { variant, x, y } of strip.blanks) {
      const dx = variant.shift[0] + x;
      const dy = variant.shift[1] + y;
      const turn = along ? (variant.turn + (variant.mirror ? 270 : 90)) % 360 : variant.turn;
      // A strip along the cloth is one across it turned a quarter round: its far edge is then the nearer to x = 0.
      const at = along ? { x: from + strip.height - dy, y: dx } : { x: dx, y: from + dy };
      placements.push({
        blank: job.blanks[variant.blank]!.id,
        shape: variant.shape,
        turn,
        mirror: variant.mirror,
        ...at,
      });
    }
    from += strip.height;
  }
  return { cloth, count: 1, length: length ?? from, firstCut: along ? 'along' : 'across', strips: told, placements };
}

/** Strips of the same height that hold the same come together. */
function sortKey(strip: PlannedStrip): string {
  return strip.blanks
    .map((b) => `${String(b.variant.blank).padStart(4, '0')}:${b.variant.shape}:${b.variant.turn.toFixed(3)}`)
    .join(' ');
}

function merged(layouts: readonly Layout[]): readonly Layout[] {
  const same = new Map<string, Layout>();
  for (const layout of layouts) {
    const key = JSON.stringify(layout);
    const known = same.get(key);
    same.set(key, known ? { ...known, count: known.count + 1 } : layout);
  }
  return [...same.values()];
}
