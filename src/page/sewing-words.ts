/** What the machine's pictures show, in words. */
import type { LaidPiece } from '../cutting/laid-piece.ts';
import { sayList } from '../cutting/say-step-fault.ts';
import type { Seam } from '../cutting/sewing-step.ts';
import type { UnitCut } from '../cutting/unit-cuts.ts';
import type { UnitLie } from '../cutting/unit-lies.ts';
import type { PrintKind } from '../quilt/quilt.ts';

/** "A2: sew it to A1; press toward A2." */
export function sayStep(name: string, seam: Seam | null, names: readonly string[]): string {
  return seam === null
    ? `${name}: lay it first, wrong side to the paper.`
    : `${name}: sew it to ${sayList(seam.against.map((index) => names[index]!))}, press toward ${name}.`;
}

/** As on a clock laid on the paper: 12 is up. @param degrees anticlockwise from up */
export function clockHour(degrees: number): number {
  return Math.round((360 - degrees) / 30) % 12 || 12;
}

export function sayLie(name: string, { up, seam }: LaidPiece, print: PrintKind): string {
  const before = up === null ? '' : ` ${printAt(print, up.before)}`;
  if (seam === null) {
    return `${name}, laid first and not flipped: seen through the paper,${before}.`;
  }
  const after = up === null ? '' : `; flipped, ${printAt(print, up.after)}`;
  return `${name} before the flip:${before}${after}.`;
}

function printAt(print: PrintKind, degrees: number): string {
  const hour = clockHour(degrees);
  const opposite = ((hour + 5) % 12) + 1;
  switch (print) {
    case 'one-way':
      return `its print points to ${hour} o’clock`;
    case 'two-way':
      return `its print runs from ${hour} to ${opposite} o’clock`;
    default:
      return `a line of its check runs from ${hour} to ${opposite} o’clock`;
  }
}

/** "Places 1, 3 and 5, mirrored". */
export function sayPlaces({ places, mirrored }: UnitLie): string {
  const turned = places[0]?.turn ?? null;
  const same = turned !== null && places.every(({ turn }) => turn === turned);
  const numbers = sayList([...new Set(places.map(({ place }) => `${place}`))]);
  const many = new Set(places.map(({ place }) => place)).size > 1;
  const block = same ? `, block turned ${turned}°` : '';
  return `${many ? 'Places' : 'Place'} ${numbers}${mirrored ? ', mirrored' : ''}${block}`;
}

export function sayCut({ kind, parts, parted }: UnitCut, names: readonly string[]): string {
  const [one, other] = parts.map((part) => sayList(part.map((index) => names[index]!)));
  switch (kind) {
    case 'seam':
      return `Cut along the seams on one straight line: ${one} make one unit, ${other} the other, and a straight seam joins them.`;
    case 'through':
      return `Draw one seam on, right across: it parts ${sayList(parted.map((index) => names[index]!))}, and either side can be sewn.`;
    case 'curve':
      return `Cut along the curve: ${parts.map((part) => sayList(part.map((index) => names[index]!))).join('; ')}. The curved seam is sewn without paper.`;
    case 'apart':
      return `They do not meet: ${parts.map((part) => sayList(part.map((index) => names[index]!))).join('; ')}. Make each a unit of its own.`;
  }
}
