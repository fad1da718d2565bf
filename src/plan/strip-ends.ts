/** What is left at the ends of strips that are cut already, as cloth for the blanks still to be cut. */
import type { Polygon } from '../shape/point.ts';
import { polygonBox, turnPolygon } from '../shape/polygon.ts';
import type { StripSteps } from './cut-steps.ts';
import type { JobBlank, JobCloth, LayoutAnswer, LayoutJob, Turns } from './layout-job.ts';
import { makeCutSteps } from './make-cut-steps.ts';
import { type ShapeOn, shapesOn } from './shapes-on.ts';

export interface StripEnd {
  /** As a piece that is paid for: as high as the strip, as long as what is left of it, cut as the strip runs. */
  readonly cloth: JobCloth;
  /** The layout and the strip that it is the end of, and where along the strip it begins. */
  readonly layout: number;
  readonly strip: number;
  readonly begins: number;
  /** The blanks that may be cut from it, each with its turns there. */
  readonly turns: ReadonlyMap<string, readonly number[]>;
}

/**
 * The ends of an answer's strips. A row goes on in them, so each is to hold one strip and not two: blanks lie there only at
 * turns at which they are more than half as high as the strip.
 * @param job the whole job
 * @param wanted what is still to be cut
 */
export function stripEnds(job: LayoutJob, answer: LayoutAnswer, wanted: readonly JobBlank[]): readonly StripEnd[] {
  return makeCutSteps(job, answer).flatMap((strip): readonly StripEnd[] => {
    if (strip.left < 1e-6 || isPassedOver(strip)) {
      return [];
    }
    const along = strip.firstCut === 'along';
    const { height, left, layout } = strip;
    const turns = new Map(
      wanted.flatMap(({ id }) => {
        const own = shapesOn(job, strip.cloth).filter(({ blank }) => blank === id);
        const fitting = turnsIn(own, height, left, along);
        return fitting.length === 0 ? [] : [[id, fitting] as const];
      }),
    );
    const size = along ? { width: height, length: left } : { width: left, length: height };
    const cloth: JobCloth = {
      id: `${strip.cloth} end ${layout + 1}.${strip.strip + 1}`,
      ...size,
      count: 1,
      cost: 0,
      firstCut: strip.firstCut,
    };
    return turns.size === 0 ? [] : [{ cloth, layout, strip: strip.strip, begins: strip.across - left, turns }];
  });
}

/** Whether any strip has an end that stripEnds passes over, so that a bound on what is cut from ends is none on all plans. */
export function passesOverEnds(job: LayoutJob, answer: LayoutAnswer): boolean {
  return makeCutSteps(job, answer).some((strip) => strip.left >= 1e-6 && isPassedOver(strip));
}

/** A layout cut several times would have to be told apart from itself; a stack has its own height. */
const isPassedOver = ({ count, pieces }: StripSteps): boolean =>
  count > 1 || pieces.some(({ stack }) => stack !== undefined);

/** The turns at which some shape fits and none is so low that another strip could lie above it. */
function turnsIn(shapes: readonly ShapeOn[], height: number, left: number, along: boolean): readonly number[] {
  const turns = new Set(shapes.flatMap((shape) => stripTurns(shape.turns, shape.outline)));
  return [...turns].filter((turn) => {
    const sizes = shapes.map(({ outline }) => extents(outline, turn, along));
    const isHigh = sizes.every(({ up }) => up > height / 2 + 1e-6);
    return isHigh && sizes.some(({ up, on }) => up <= height + 1e-6 && on <= left + 1e-6);
  });
}

function extents(outline: Polygon, turn: number, along: boolean): { readonly up: number; readonly on: number } {
  const { min, max } = polygonBox(turnPolygon(outline, turn));
  const [wide, tall] = [max[0] - min[0], max[1] - min[1]];
  return along ? { up: wide, on: tall } : { up: tall, on: wide };
}

/** The turns that a strip knows of, as numbers: of a range its middle, its ends, and what lays an edge along or square. */
function stripTurns(turns: Turns, outline: Polygon): readonly number[] {
  const square = outline.flatMap((from, i) => {
    const to = outline[(i + 1) % outline.length]!;
    const edge = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
    return [0, 90, 180, 270].map((quarter) => tidy(quarter - edge));
  });
  if (turns === 'any') {
    return [...Array.from({ length: 24 }, (_, i) => i * 15), ...square];
  }
  return turns.flatMap((range) => {
    if (typeof range === 'number') {
      return [range];
    }
    const { centre, within } = range;
    const inside = square.filter((turn) => Math.abs(tidy(turn - centre + 180) - 180) <= within);
    return [centre, centre - within, centre + within, ...inside];
  });
}

/** In [0, 360), a rounding below a whole turn being none. */
function tidy(degrees: number): number {
  const turn = ((degrees % 360) + 360) % 360;
  return Math.abs(turn - Math.round(turn)) < 1e-9 ? Math.round(turn) % 360 : turn;
}
