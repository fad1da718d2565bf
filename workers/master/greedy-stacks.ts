/**
 * A whole plan of boxes and stacks without the programme: strip after strip, each time the one whose blanks are worth most for its
 * height. Blanks are worth their area, the larger ones a little more, so that they go first; chance makes every plan another, and
 * its strips are kept for the programme to choose among.
 */

import { stackHeights } from '../strips/stack-heights.ts';
import { type Segment, segmentRow } from '../strips/stack-row.ts';
import { boxesForStacks, gridFor, stackTable } from '../strips/stack-table.ts';
import type { StripColumn } from './column.ts';
import { makePlan, type Plan } from './plan.ts';
import { columnOf, fillSegments } from './stack-columns.ts';
import type { StripMaster } from './strip-master.ts';

/** How much more than its area a blank is worth at most, as a power of it; and by how much chance changes worths and choices. */
const POWER = 0.6;
const SHAKE = 0.25;
const CHOICE = 0.06;

/** Null where there is more than one family, strips come off pieces, or blanks slant and so nest better than boxes do. */
export function greedyStacks(master: StripMaster, random: () => number): Plan | null {
  const [family, ...others] = master.families;
  if (!family || others.length > 0 || family.stack !== null || family.slopes.length > 1) return null;
  const boxes = boxesForStacks(family);
  const all = stackHeights(family, master.job);
  // Strips as tall as some blank waste little at their ends, and there are far fewer of them.
  const heights = random() < 0.5 ? family.heights : all;
  const top = all.at(-1);
  if (top === undefined) return null;
  const grid = gridFor(
    boxes.map((v) => v.height),
    top,
    family.ruler,
  );
  const along = gridFor(
    boxes.map((v) => v.width),
    family.span,
    family.ruler,
  );
  const power = 1 + POWER * random();
  const values = new Float64Array(master.demand.length);
  for (const v of boxes) values[v.blank] = v.area ** power;
  for (const [b, v] of values.entries()) values[b] = v * (1 + SHAKE * (2 * random() - 1));
  const left = Int32Array.from(master.demand);
  const strips: { column: StripColumn; times: number }[] = [];
  while (left.some((n) => n > 0)) {
    const table = stackTable(boxes, values, left, top, grid, 'up');
    let best: { height: number; segments: readonly Segment[] } | null = null;
    let most = 0;
    // Rows that ask for more than there is are worth less than they seem: filling them tells, the most promising first.
    const seeming = heights.map((height) => {
      const { value, segments } = segmentRow(table, height, family.span, along, 'up');
      const luck = 1 + CHOICE * (2 * random() - 1);
      return { height, segments, luck, rate: (luck * value) / height };
    });
    for (const { height, segments, luck, rate } of seeming.sort((x, y) => y.rate - x.rate)) {
      if (rate <= most || segments.length === 0) break;
      const filled = fillSegments(family, height, table, segments, values, grid, Int32Array.from(left));
      if ((luck * filled.value) / height <= most) continue;
      most = (luck * filled.value) / height;
      best = { height, segments };
    }
    if (!best) return null;
    const { stacks } = fillSegments(family, best.height, table, best.segments, values, grid, left);
    const column = columnOf(family, 0, best.height, stacks);
    master.addStrip(column);
    strips.push({ column, times: 1 });
  }
  return makePlan(master.job, master.families, master.demand, { strips, pieces: [] });
}
