/**
 * The plan that anybody would make without thinking: every blank in its box, tallest first, each into the first strip that has room,
 * else into a new strip. Where a bolt may serve it does, the first that fits; else the pieces. Written for tests, to be beaten.
 */
import type { BlankShape, JobBlank, JobCloth, LayoutJob, Turns } from '../../../src/plan/layout-job.ts';
import { shapeFor, spin } from '../../checker/check-lies.ts';

export interface Boxing {
  readonly unplaced: number;
  readonly cost: number;
}

/** A blank's box on a cloth: how much of the strip's length and of its height it takes. */
interface Box {
  readonly cloth: number;
  readonly along: number;
  readonly high: number;
}

interface OpenStrip {
  readonly height: number;
  left: number;
  readonly sheet: Sheet;
}

/** A bolt, or one piece. */
interface Sheet {
  readonly cloth: number;
  /** Height that strips may still take. */
  room: number;
  used: number;
}

export function simpleBoxing(job: LayoutJob): Boxing {
  const asked = job.blanks.map((blank) => ({ blank, boxes: boxesOf(job, blank) }));
  asked.sort((a, b) => (b.boxes[0]?.high ?? 0) - (a.boxes[0]?.high ?? 0));
  const strips: OpenStrip[] = [];
  const sheets: Sheet[] = [];
  let unplaced = 0;
  for (const { blank, boxes } of asked) {
    for (let i = 0; i < blank.demand; i++) if (!lay(job, boxes, strips, sheets)) unplaced++;
  }
  return { unplaced, cost: costOf(job, sheets) };
}

function lay(job: LayoutJob, boxes: readonly Box[], strips: OpenStrip[], sheets: Sheet[]): boolean {
  for (const box of boxes) {
    const strip = strips.find((s) => s.sheet.cloth === box.cloth && s.height >= box.high && s.left >= box.along);
    if (strip) {
      strip.left -= box.along;
      return true;
    }
    const sheet = sheets.find((s) => s.cloth === box.cloth && s.room >= box.high) ?? newSheet(job, box, sheets);
    if (!sheet) continue;
    sheet.room -= box.high;
    sheet.used += box.high;
    strips.push({ height: box.high, left: frameOf(job.cloths[box.cloth]!).strip - box.along, sheet });
    return true;
  }
  return false;
}

function newSheet(job: LayoutJob, box: Box, sheets: Sheet[]): Sheet | undefined {
  const cloth = job.cloths[box.cloth]!;
  const most = isBolt(cloth) ? 1 : cloth.count === undefined ? 1 : (cloth.count ?? Infinity);
  const { stack } = frameOf(cloth);
  if (sheets.filter((s) => s.cloth === box.cloth).length >= most || stack < box.high) return undefined;
  const sheet = { cloth: box.cloth, room: stack, used: 0 };
  sheets.push(sheet);
  return sheet;
}

const isBolt = (cloth: JobCloth): boolean => cloth.length === null || cloth.length === undefined;

/**
 * How long strips are and how much height of them there is. On a bolt whose strips run along it, blanks lie side by side
 * across the width, each a strip of its own: that comes to strips across, but for what the ruler rounds.
 */
function frameOf(cloth: JobCloth): { readonly strip: number; readonly stack: number } {
  if (isBolt(cloth)) return { strip: cloth.width, stack: Infinity };
  return cloth.firstCut === 'along'
    ? { strip: cloth.length!, stack: cloth.width }
    : { strip: cloth.width, stack: cloth.length! };
}

/** One box for each cloth that can take the blank, bolts first: the first shape and turn whose box fits. */
function boxesOf(job: LayoutJob, blank: JobBlank): readonly Box[] {
  const order = [...job.cloths.keys()].sort(
    (a, b) => Number(isBolt(job.cloths[b]!)) - Number(isBolt(job.cloths[a]!)) || a - b,
  );
  return order.flatMap((cloth) => {
    const { strip, stack } = frameOf(job.cloths[cloth]!);
    const all = Array.from({ length: blank.shapes?.length ?? 1 }, (_, i) => shapeFor(blank, job.cloths[cloth]!.id, i));
    const boxes = all.flatMap((shape) =>
      shape ? plainTurns(shape.turns ?? [0]).map((t) => boxAt(job, cloth, shape, t)) : [],
    );
    return boxes.filter((box) => box.along <= strip && box.high <= stack).slice(0, 1);
  });
}

function boxAt(job: LayoutJob, cloth: number, shape: BlankShape, turn: number): Box {
  const turned = shape.outline.map((p) => spin(p, turn));
  const [across, up] = [0, 1].map((k) => Math.max(...turned.map((p) => p[k]!)) - Math.min(...turned.map((p) => p[k]!)));
  const onRuler = (v: number) => (job.ruler === undefined ? v : Math.ceil(v / job.ruler - 1e-9) * job.ruler);
  if (job.cloths[cloth]!.firstCut !== 'along') return { cloth, along: across!, high: onRuler(up!) };
  return isBolt(job.cloths[cloth]!)
    ? { cloth, along: onRuler(across!), high: up! }
    : { cloth, along: up!, high: onRuler(across!) };
}

/** Turns that are allowed for certain. */
const plainTurns = (turns: Turns): readonly number[] =>
  turns === 'any' ? [0, 90] : turns.map((range) => (typeof range === 'number' ? range : range.centre));

function costOf(job: LayoutJob, sheets: readonly Sheet[]): number {
  return sheets.reduce((sum, sheet) => {
    const cloth = job.cloths[sheet.cloth]!;
    if (!isBolt(cloth)) return sum + (cloth.cost ?? cloth.length!);
    const length = sheet.used + (cloth.squaring ?? 0);
    return (
      sum + (cloth.cost ?? 1) * (cloth.step === undefined ? length : Math.ceil(length / cloth.step - 1e-9) * cloth.step)
    );
  }, 0);
}
