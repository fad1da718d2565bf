/** A backing: panels as wide as the cloth, sewn side by side, that cover an area. */

/** 'up': panels run up the quilt, so their seams do; 'across': they run across it. */
export type PanelWay = 'up' | 'across';

/** In one unit throughout. */
export interface PanelsWanted {
  /** Of the area to be covered, overhang included. */
  readonly width: number;
  readonly length: number;
  /** Lost at each seam. */
  readonly join: number;
  /** Usable width of the cloth as washed. */
  readonly clothWidth: number;
  /** What it is sold by; null where length alone counts. */
  readonly step: number | null;
}

export interface Panels {
  readonly way: PanelWay;
  /** Panels as wide as the cloth. */
  readonly whole: number;
  /** Width of the one narrower panel; null where all are whole. */
  readonly narrow: number | null;
  /** Of each panel, along the cloth. */
  readonly length: number;
  readonly seams: number;
  /** Cloth that the panels take, and what must be bought for it. */
  readonly takes: number;
  readonly buys: number;
}

/**
 * Panels laid one way.
 * @returns null where a seam takes the whole width
 */
export function panelsRunning(way: PanelWay, wanted: PanelsWanted): Panels | null {
  const { clothWidth, join, step } = wanted;
  const [across, length] = way === 'up' ? [wanted.width, wanted.length] : [wanted.length, wanted.width];
  if (join >= clothWidth && across > clothWidth) {
    return null;
  }
  const count = across <= clothWidth + 1e-9 ? 1 : Math.ceil((across - join) / (clothWidth - join) - 1e-9);
  const left = across - (count - 1) * (clothWidth - join);
  const narrow = left < clothWidth - 1e-9 ? left : null;
  const takes = count * length;
  return {
    way,
    whole: narrow === null ? count : count - 1,
    narrow,
    length,
    seams: count - 1,
    takes,
    buys: step === null ? takes : Math.ceil(takes / step - 1e-6) * step,
  };
}

/** Of the ways that the print allows: what buys least, then the fewest seams, then what takes least. */
export function bestPanels(ways: readonly PanelWay[], wanted: PanelsWanted): Panels | null {
  return ways
    .flatMap((way) => panelsRunning(way, wanted) ?? [])
    .reduce<Panels | null>((best, each) => (best === null || isBetter(each, best) ? each : best), null);
}

function isBetter(a: Panels, b: Panels): boolean {
  const [first] = [a.buys - b.buys, a.seams - b.seams, a.takes - b.takes].filter((less) => Math.abs(less) > 1e-9);
  return first !== undefined && first < 0;
}
