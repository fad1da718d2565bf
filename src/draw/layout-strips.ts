/** The strips of one layout where they lie on the cloth: leftovers hatched, blanks in their cloth, named. */
import type { Blank } from '../cutting/cut-list.ts';
import type { StripSteps } from '../plan/cut-steps.ts';
import type { Placement } from '../plan/layout-job.ts';
import { placedPolygon } from '../plan/placed.ts';
import type { Cloth } from '../quilt/quilt.ts';
import type { Point } from '../shape/point.ts';
import { type GroupItem, type Item, lineRun, moved, polygonRun, type Run, rectangle } from './display-list.ts';
import { hatch } from './hatch.ts';
import { edgeOn } from './ink.ts';
import { label } from './label.ts';
import { shortName } from './short-name.ts';
import type { LaidLayout } from './unroll.ts';

export interface StripsInput {
  readonly laid: LaidLayout;
  /** The cloth's width. */
  readonly width: number;
  readonly cloth: Cloth;
  readonly blanks: ReadonlyMap<string, Blank>;
  readonly textSize: number;
  /** The answer's strips as ruler work, for the lines of the subcuts. */
  readonly steps: readonly StripSteps[];
  readonly mistaken: ReadonlySet<string>;
  /** Blanks drawn already, at the origin, so that hundreds cut alike are labelled once. */
  readonly drawn: Map<string, GroupItem>;
}

export function layoutStrips(input: StripsInput): readonly Item[] {
  const { width, textSize } = input;
  const { layout, at, index } = input.laid;
  const up = (p: Point): Point => [p[0], p[1] + at];
  const whole = rectangle(0, 0, width, layout.length).map(up);
  const cuts = (layout.strips ?? []).map(({ from, height }) => {
    const end = from + height;
    return layout.firstCut === 'along'
      ? lineRun(up([end, 0]), up([end, layout.length]))
      : lineRun(up([0, end]), up([width, end]));
  });
  const steps = input.steps.filter((strip) => strip.layout === index);
  return [
    { kind: 'path', class: 'paper', runs: [polygonRun(whole)] },
    { kind: 'path', class: 'hatch', runs: hatch(whole, textSize * 0.6) },
    ...layout.placements.map((placement) => blankItem(input, placement)),
    { kind: 'path', class: 'subcut', runs: steps.flatMap((strip) => subcuts(strip, up)) },
    { kind: 'path', class: 'cut', runs: cuts },
  ];
}

/** A blank as it lies, with its label: worked out once for all that are cut alike, and then moved. */
function blankItem(input: StripsInput, placement: Placement): GroupItem {
  const { blank, shape, turn, mirror, x, y } = placement;
  const key = JSON.stringify([blank, shape, turn, mirror]);
  const alike = input.drawn.get(key) ?? drawnBlank(input, { ...placement, x: 0, y: 0 });
  input.drawn.set(key, alike);
  return { ...alike, items: alike.items.map((item) => moved(item, [x, y + input.laid.at])) };
}

function drawnBlank({ cloth, textSize, blanks, mistaken }: StripsInput, placement: Placement): GroupItem {
  const blank = blanks.get(placement.blank);
  const placed = placedPolygon(blank?.shapes[placement.shape]?.outline ?? [], placement);
  const printUp = cloth.up === 'across' ? 270 : 0;
  const named = label(placed, {
    name: `${shortName(placement.blank)}${mistaken.has(placement.blank) ? '*' : ''}`,
    size: textSize,
    on: cloth.colour,
    arrow: blank?.directional ? { degrees: printUp, heads: cloth.print === 'one-way' ? 1 : 2 } : null,
  });
  const fill = { colour: cloth.colour, print: cloth.print, turn: printUp };
  return {
    kind: 'group',
    class: 'blank',
    data: { blank: placement.blank },
    items: [{ kind: 'path', class: 'cloth', runs: [polygonRun(placed)], fill, ink: edgeOn(cloth.colour) }, ...named],
  };
}

/** The cuts across one strip, from its near edge to its far edge. A strip along the cloth is seen from its own start. */
function subcuts(strip: StripSteps, up: (p: Point) => Point): readonly Run[] {
  const place = (along: number, across: number): Point =>
    up(strip.firstCut === 'along' ? [strip.from + across, along] : [along, strip.from + across]);
  return strip.pieces.flatMap(({ near, far, stack }) => {
    const across = lineRun(place(near, 0), place(far, strip.height));
    if (stack === undefined) return [across];
    const along = lineRun(place(stack.from, stack.high), place(near, stack.high));
    // One square cut ends the whole stack; what is cut at the strip's far edge is cut already.
    return [...(stack.layer === stack.of ? [across] : []), ...(stack.high < strip.height - 1e-6 ? [along] : [])];
  });
}
