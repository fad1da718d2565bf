/** A blank as it lies on the cloth, and the faults of how it lies taken alone. */
import type { JobCloth, Layout, Placement } from '../../src/plan/layout-job.ts';
import { add, type Polygon, reflect, turn } from '../../src/shape/point.ts';
import { allowsFreeTurn, allowsStripTurn } from './allowed-turns.ts';
import { type Box, boxOf } from './box.ts';
import { type Fault, TOUCH } from './fault.ts';
import type { Rules, ShapeRule } from './rules.ts';

export interface Placed {
  /** Path of its placement in the answer. */
  readonly where: string;
  readonly blank: string;
  readonly outline: Polygon;
  readonly box: Box;
}

export interface LaidLayout {
  readonly cloth: JobCloth;
  readonly layout: Layout;
  /** Its placements but for those that name nothing real. */
  readonly placed: readonly Placed[];
  readonly faults: readonly Fault[];
}

/** The outline turned anticlockwise about its origin, then x to −x if mirrored, then moved. */
export function lay(outline: Polygon, placement: Placement): Polygon {
  return outline.map((point) => {
    const turned = turn(point, placement.turn);
    return add(placement.mirror ? reflect(turned) : turned, [placement.x, placement.y]);
  });
}

/** Lays every blank of a layout. A placement that names nothing real is a fault and is left out of what follows. */
export function layBlanks(rules: Rules, cloth: JobCloth, layout: Layout, at: string): LaidLayout {
  const faults: Fault[] = [];
  const placed: Placed[] = [];
  layout.placements.forEach((placement, index) => {
    const where = `${at}.placements[${index}]`;
    const rule = findRule(rules, cloth, placement, where);
    if ('what' in rule) {
      faults.push(rule);
      return;
    }
    faults.push(...turnFaults(rules, rule, placement, where));
    const outline = lay(rule.outline, placement);
    const box = boxOf(outline);
    faults.push(...outsideFaults(cloth, layout.length, box, where));
    placed.push({ where, blank: placement.blank, outline, box });
  });
  return { cloth, layout, placed, faults };
}

function findRule(rules: Rules, cloth: JobCloth, placement: Placement, where: string): ShapeRule | Fault {
  const numbers = [placement.x, placement.y, placement.turn];
  if (!numbers.every(Number.isFinite) || typeof placement.mirror !== 'boolean') {
    return { what: 'malformed', where, howMuch: `x, y, turn, mirror are ${numbers.join(', ')}, ${placement.mirror}` };
  }
  const blank = rules.blanks.get(placement.blank);
  if (!blank) return { what: 'malformed', where, howMuch: `"${placement.blank}" is no blank of this job` };
  const shapes = blank.on.get(cloth.id);
  if (!shapes) return { what: 'cloth', where, howMuch: `"${placement.blank}" may not be cut from "${cloth.id}"` };
  const rule = shapes[placement.shape];
  if (rule) return rule;
  return { what: 'malformed', where, howMuch: `shape ${placement.shape} of ${shapes.length}` };
}

function turnFaults(rules: Rules, rule: ShapeRule, placement: Placement, where: string): readonly Fault[] {
  const faults: Fault[] = [];
  const allows = rules.job.method === 'strips' ? allowsStripTurn : allowsFreeTurn;
  if (!allows(rule, placement.turn)) {
    const asked = JSON.stringify(rule.turns);
    faults.push({ what: 'turn', where, howMuch: `"${placement.blank}" lies at ${placement.turn}°, allowed ${asked}` });
  }
  if (placement.mirror && !rule.mirror) {
    faults.push({ what: 'turned over', where, howMuch: `"${placement.blank}" may not be turned over` });
  }
  return faults;
}

function outsideFaults(cloth: JobCloth, length: number, box: Box, where: string): readonly Fault[] {
  const over = Math.max(-box.left, -box.bottom, box.right - cloth.width, box.top - length);
  if (over <= TOUCH * cloth.width) return [];
  return [{ what: 'outside the cloth', where, howMuch: `by ${over} (cloth ${cloth.width} wide, ${length} long)` }];
}
