/** What the usual rule of thumb would buy, laid out as a plan that can be cut and read. */
import type { Point, Polygon } from '../shape/point.ts';
import { boxHeight, boxWidth, polygonBox, turnPolygon } from '../shape/polygon.ts';
import type { JobBlank, JobCloth, LayoutAnswer, LayoutJob, Placement, Strip, Turns, Unplaced } from './layout-job.ts';
import { stepsFor } from './say-steps.ts';

/** One way of laying a blank: its turn, and the corner of its box then. */
interface Way {
  readonly turn: number;
  readonly corner: Point;
  readonly width: number;
  /** Of the strip that holds it. */
  readonly height: number;
  readonly perStrip: number;
  readonly strips: number;
}

const SLACK = 1e-9;

/**
 * Each kind of blank has strips of its own, right across the cloth: as many to a strip as fit side by side, as many strips
 * as that takes, the better of the ways that a whole or a quarter turn gives it; all strips added up, and the sum rounded up
 * to the selling step.
 * @param job of one bolt that serves every blank, with its first shape: see boxedFromBolts (cutting/variants.ts)
 * @returns an answer to that job, with nothing proved; what is wider than the cloth is unplaced
 */
export function ruleOfThumb(job: LayoutJob): LayoutAnswer {
  const [cloth] = job.cloths;
  if (cloth === undefined || job.cloths.length > 1 || cloth.length != null) {
    throw new Error(`the rule of thumb is for one bolt; found ${job.cloths.map((each) => each.id).join(', ')}`);
  }
  const squaring = cloth.squaring ?? 0;
  const strips: Strip[] = squaring > 0 ? [{ from: 0, height: squaring }] : [];
  const placements: Placement[] = [];
  const unplaced: Unplaced[] = [];
  let from = squaring;
  for (const blank of job.blanks) {
    const way = bestWay(job, cloth, blank);
    if (way === null) {
      unplaced.push({ blank: blank.id, count: blank.demand, why: 'it is wider than the cloth' });
      continue;
    }
    for (let placed = 0; placed < blank.demand; placed += way.perStrip) {
      const count = Math.min(way.perStrip, blank.demand - placed);
      strips.push({ from, height: way.height });
      placements.push(...Array.from({ length: count }, (_, i) => placement(blank.id, way, i * way.width, from)));
      from += way.height;
    }
  }
  const length = placements.length === 0 ? 0 : from;
  const bought = cloth.step === undefined ? length : stepsFor(length, cloth.step) * cloth.step;
  const cost = bought * (cloth.cost ?? 1);
  const layout = { cloth: cloth.id, count: 1, length, firstCut: 'across' as const, strips, placements };
  return {
    status: unplaced.length > 0 ? 'partial' : cost === 0 ? 'optimal' : 'feasible',
    cost,
    bound: unplaced.length > 0 ? null : 0,
    boundFrom: 'nothing: a rule of thumb proves nothing',
    seconds: 0,
    layouts: length === 0 ? [] : [layout],
    unplaced,
  };
}

function bestWay(job: LayoutJob, cloth: JobCloth, blank: JobBlank): Way | null {
  const shape = blank.shapes?.[0] ?? blank;
  const choice = blank.cloths?.find((each) => typeof each !== 'string' && each.id === cloth.id);
  const turns = (typeof choice === 'object' ? choice.turns : undefined) ?? shape.turns ?? [0];
  return quarterTurns(turns)
    .flatMap((turn) => wayOf(job, cloth, shape.outline ?? [], blank.demand, turn) ?? [])
    .reduce<Way | null>((best, way) => (best === null || total(way) < total(best) - SLACK ? way : best), null);
}

const total = ({ strips, height }: Way): number => strips * height;

/** The middles of the turns allowed; where any is, as it stands and a quarter round. */
const quarterTurns = (turns: Turns): readonly number[] =>
  turns === 'any' ? [0, 90] : turns.map((range) => (typeof range === 'number' ? range : range.centre));

function wayOf(job: LayoutJob, cloth: JobCloth, outline: Polygon, demand: number, turn: number): Way | null {
  const box = polygonBox(turnPolygon(outline, turn));
  const width = boxWidth(box);
  const perStrip = Math.floor(cloth.width / width + SLACK);
  if (perStrip < 1) {
    return null;
  }
  const high = boxHeight(box);
  const height = job.ruler === undefined ? high : Math.ceil(high / job.ruler - 1e-6) * job.ruler;
  return { turn, corner: box.min, width, height, perStrip, strips: Math.ceil(demand / perStrip) };
}

const placement = (blank: string, { turn, corner }: Way, x: number, y: number): Placement => ({
  blank,
  shape: 0,
  turn,
  mirror: false,
  x: x - corner[0],
  y: y - corner[1],
});
