/** Strips: in order, of the right heights, each blank in one, parted by straight subcuts from the strip's start on. */
import type { JobBlank, JobCloth, Layout, LayoutJob } from '../../src/plan/layout-job.ts';
import { type Laid, shapeFor, spin } from './check-lies.ts';
import { canBeParted } from './check-stacks.ts';
import { type Pair, type Ring, SLACK, thicknessOutside, wrapped } from './rings.ts';

export function checkStrips(job: LayoutJob, cloth: JobCloth, layout: Layout, laid: readonly Laid[]): string[] {
  const wrong: string[] = [];
  const slack = SLACK * cloth.width;
  const along = layout.firstCut === 'along';
  const [room, end] = along ? [cloth.width, layout.length] : [layout.length, cloth.width];
  const cut = cloth.firstCut ?? 'across';
  if (cut !== 'either' && laid.length > 0 && (cut === 'along') !== along) wrong.push(`strips run the wrong way`);
  // In the strip's frame u runs along it: on cloth whose strips run along, the two coordinates change places.
  const rings = laid.map(({ ring }) => (along ? ring.map(([x, y]): Pair => [y, x]) : ring));
  const found = new Set<number>();
  let before = 0;
  for (const [index, strip] of (layout.strips ?? []).entries()) {
    const top = strip.from + strip.height;
    if (strip.from < before - slack || top > room + slack) wrong.push(`strip ${index} lies over another or outside`);
    before = top;
    const inside = rings.flatMap((ring, i) => {
      const us = ring.map((p) => p[0]);
      const stretch: Pair = [Math.min(...us) - 1, Math.max(...us) + 1];
      const out = found.has(i) ? Infinity : thicknessOutside(ring, stretch, [strip.from, top]);
      return out <= slack ? [i] : [];
    });
    for (const i of inside) found.add(i);
    const squares = inside.length === 0 && (cloth.squaring ?? 0) > 0 && strip.height > cloth.squaring! - slack;
    if (!squares && !heightIsAllowed(job, cloth, along, strip.height, slack)) {
      wrong.push(`strip ${index} is ${strip.height} high`);
    }
    const held = inside.map((i) => rings[i]!.map(([u, v]): Pair => [u, v - strip.from]));
    const parted = job.stages === 3 ? canBeParted : canBeCut;
    if (!parted(held, end, strip.height, slack)) wrong.push(`strip ${index} cannot be cut by straight subcuts`);
  }
  for (const [i, { name }] of laid.entries()) if (!found.has(i)) wrong.push(`${name} lies in no strip`);
  return wrong;
}

function heightIsAllowed(job: LayoutJob, cloth: JobCloth, along: boolean, height: number, slack: number): boolean {
  if (job.ruler !== undefined) {
    const times = Math.round(height / job.ruler);
    return times >= 1 && Math.abs(times * job.ruler - height) <= slack;
  }
  return job.blanks.some((blank) => heightsOf(blank, cloth.id, along).some((h) => Math.abs(h - height) <= slack));
}

function heightsOf(blank: JobBlank, cloth: string, along: boolean): number[] {
  const count = blank.shapes?.length ?? 1;
  return Array.from({ length: count }, (_, index) => shapeFor(blank, cloth, index)).flatMap((shape) => {
    if (!shape) return [];
    const corners = [shape.outline, wrapped(shape.outline)];
    const slants = corners.flatMap((ring) =>
      ring.map((p, i) => {
        const q = ring[(i + 1) % ring.length]!;
        return (Math.atan2(q[1] - p[1], q[0] - p[0]) * 180) / Math.PI;
      }),
    );
    const quarters = slants.flatMap((slant) => [0, 90, 180, 270].map((quarter) => quarter - slant));
    const asked = shape.turns ?? [0];
    const turns =
      asked === 'any'
        ? [...quarters, ...Array.from({ length: 24 }, (_, i) => 15 * i)]
        : asked.flatMap((range) => {
            if (typeof range === 'number') return [range];
            const near = quarters.filter((t) => Math.cos(((t - range.centre) / 180) * Math.PI) >= cosine(range.within));
            return [range.centre, range.centre - range.within, range.centre + range.within, ...near];
          });
    return turns.map((t) => {
      const values = shape.outline.map((point) => spin(point, t)[along ? 0 : 1]);
      return Math.max(...values) - Math.min(...values);
    });
  });
}

const cosine = (degrees: number): number => (degrees >= 180 ? -1 : Math.cos((degrees / 180) * Math.PI)) - 1e-12;

/** Takes off, from the strip's start, any blank that a straight cut parts from the rest, until none or all are left. */
export function canBeCut(rings: readonly Ring[], length: number, height: number, slack: number): boolean {
  let rest = [...rings].sort((a, b) => Math.min(...a.map((p) => p[0])) - Math.min(...b.map((p) => p[0])));
  while (rest.length > 1) {
    const next = rest.findIndex((ring) => {
      const others = wrapped(rest.filter((other) => other !== ring).flat());
      return partedBySlant(ring, others, length, height, slack);
    });
    if (next < 0) return false;
    rest = rest.filter((_, i) => i !== next);
  }
  return true;
}

/**
 * A cut is a line u + m·v = c. For a slant m the blank needs c at or above its greatest u + m·v, and what comes after needs
 * c at or below its least; meeting the strip's near edge (v = 0) between its ends needs c from 0 to length, and the far
 * edge c − m·height. The room for c is a concave function of m, so a search that keeps the better part finds its best.
 */
export function partedBySlant(ring: Ring, after: Ring, length: number, height: number, slack: number): boolean {
  const roomAt = (m: number, v: number) =>
    Math.min(length + m * v, ...after.map((p) => p[0] + m * p[1])) -
    Math.max(m * v, ...ring.map((p) => p[0] + m * p[1]));
  return [0, height].some((v) => {
    let [low, high] = [-1e4, 1e4];
    const golden = (Math.sqrt(5) - 1) / 2;
    for (let i = 0; i < 120; i++) {
      const [left, right] = [high - golden * (high - low), low + golden * (high - low)];
      if (roomAt(left, v) < roomAt(right, v)) low = left;
      else high = right;
    }
    const m = (low + high) / 2;
    return roomAt(m, v) >= -2 * slack * Math.hypot(1, m);
  });
}
