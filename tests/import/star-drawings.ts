/**
 * Compass stars written as SVG in the ways in which drawing programs write it. Shares nothing with what reads them: it takes the
 * generator's outlines and its places, and does its own arithmetic and text.
 */
import type { CompassStarForm } from '../../src/quilt/forms/compass-star.ts';
import { drawForm } from '../../src/quilt/forms/forms.ts';
import type { Unit } from '../../src/quilt/quilt.ts';

type Pair = readonly [number, number];
interface Step {
  readonly to: Pair;
  /** Present for an arc; about its centre. */
  readonly arc?: { readonly centre: Pair; readonly radius: number; readonly sweep: number };
}
interface Loop {
  readonly start: Pair;
  readonly steps: readonly Step[];
}
export interface Copy {
  readonly unit: string;
  readonly degrees: number;
  readonly mirrored: boolean;
  readonly patches: readonly { readonly number: number; readonly role: string; readonly loop: Loop }[];
}

export const COLOURS: Readonly<Record<string, string>> = {
  'long-light': '#f2d16b',
  'long-dark': '#a8741a',
  'short-light': '#9ec3dd',
  'short-dark': '#2d5f86',
  haze: '#dfe6ea',
  hours: '#b23a48',
  sky: '#1d2a44',
};

/** Every copy of every unit, as drawn in its first place, with the turn that sets it in its own. */
export function copiesOf(form: CompassStarForm): readonly Copy[] {
  return drawForm(form, 'in').flatMap((unit: Unit) =>
    Array.from({ length: unit.repeat.count }, (_, k) => ({
      unit: unit.id,
      degrees: (unit.repeat.from ?? 0) + (k * 360) / unit.repeat.count,
      mirrored: unit.repeat.mirrored === 'alternate' && k % 2 === 1,
      patches: unit.patches.map(({ number, role, outline }) => ({ number, role, loop: loopOf(outline as never) })),
    })),
  );
}

function loopOf(entries: readonly (Pair | { arc: { radius: number; turn: string } })[]): Loop {
  const start = entries[0] as Pair;
  const steps: Step[] = [];
  let from = start;
  let arc: { radius: number; turn: string } | null = null;
  for (const entry of [...entries.slice(1), start]) {
    if ('arc' in entry) {
      arc = entry.arc;
      continue;
    }
    // Every arc of the star is about its centre.
    const swing = Math.atan2(from[0] * entry[1] - from[1] * entry[0], from[0] * entry[0] + from[1] * entry[1]);
    steps.push(arc === null ? { to: entry } : { to: entry, arc: { centre: [0, 0], radius: arc.radius, sweep: swing } });
    from = entry;
    arc = null;
  }
  return { start, steps };
}

/** The loop where it lies in the block. */
function placed(loop: Loop, { degrees, mirrored }: Copy): Loop {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const move = ([x, y]: Pair): Pair => (mirrored ? [-x * c - y * s, -x * s + y * c] : [x * c - y * s, x * s + y * c]);
  return {
    start: move(loop.start),
    steps: loop.steps.map(({ to, arc }) =>
      arc === undefined
        ? { to: move(to) }
        : { to: move(to), arc: { ...arc, sweep: mirrored ? -arc.sweep : arc.sweep } },
    ),
  };
}

const rounded = (places: number) => (value: number) => `${Number(value.toFixed(places))}`;

/** In inches, arcs as arcs, a group with an id for each unit, ids and titles for patches. */
export function inInches(form: CompassStarForm): string {
  const side = Number(form.side);
  const n = rounded(5);
  const at = ([x, y]: Pair): string => `${n(side / 2 + x)},${n(side / 2 - y)}`;
  const groups = copiesOf(form).map((copy, i) => {
    const paths = copy.patches.map(({ number, role, loop }) => {
      const { start, steps } = placed(loop, copy);
      const d = steps.map(({ to, arc }) =>
        arc === undefined
          ? `L ${at(to)}`
          : `A ${n(arc.radius)} ${n(arc.radius)} 0 0 ${arc.sweep > 0 ? 0 : 1} ${at(to)}`,
      );
      return `<path id="${copy.unit}${number}-${i}" fill="${COLOURS[role]}" d="M ${at(start)} ${d.join(' ')} Z"><title>${role}</title></path>`;
    });
    return `<g id="unit-${copy.unit}-${i}">\n${paths.join('\n')}\n</g>`;
  });
  return `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">
<svg xmlns="http://www.w3.org/2000/svg" width="${side}in" height="${side}in" viewBox="0 0 ${side} ${side}">
${groups.join('\n')}
</svg>`;
}

/** In millimetres with y turned over by the layer, each unit turned and mirrored by its group, relative steps, inline styles. */
export function inMillimetres(form: CompassStarForm): string {
  const side = Number(form.side) * 25.4;
  const n = rounded(4);
  const mm = (value: number): string => n(value * 25.4);
  const groups = copiesOf(form).map((copy, i) => {
    const paths = copy.patches.map(({ role, loop }, k) => {
      let from = loop.start;
      const d = loop.steps.map(({ to, arc }) => {
        const by = `${mm(to[0] - from[0])},${mm(to[1] - from[1])}`;
        from = to;
        return arc === undefined
          ? `l ${by}`
          : `a ${mm(arc.radius)},${mm(arc.radius)} 0 0 ${arc.sweep > 0 ? 1 : 0} ${by}`;
      });
      return `<path style="fill:${COLOURS[role]};stroke:#000000;stroke-width:0.1" id="path${1000 + 10 * i + k}" inkscape:label="${role.replace('-', ', ')}" d="m ${mm(loop.start[0])},${mm(loop.start[1])} ${d.join(' ')} z"/>`;
    });
    const turn = `rotate(${n(copy.degrees)})${copy.mirrored ? ' scale(-1 1)' : ''}`;
    return `<g id="g${100 + i}" transform="${turn}">${paths.join('')}</g>`;
  });
  return `<svg width="${n(side)}mm" height="${n(side)}mm" viewBox="0 0 ${n(side)} ${n(side)}" version="1.1"
  xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" xmlns:sodipodi="http://sodipodi.sourceforge.net/DTD/sodipodi-0.dtd" xmlns="http://www.w3.org/2000/svg">
<sodipodi:namedview id="namedview7" pagecolor="#ffffff"/><defs id="defs2"/>
<g inkscape:label="Layer 1" inkscape:groupmode="layer" id="layer1" transform="matrix(1,0,0,-1,${n(side / 2)},${n(side / 2)})">
${groups.join('\n')}
</g></svg>`;
}

/** In pixels at 96 to the inch, arcs as cubic curves, no groups, colours in a style sheet. */
export function inPixels(form: CompassStarForm): string {
  const side = Number(form.side) * 96;
  const n = rounded(3);
  const at = ([x, y]: Pair): string => `${n(side / 2 + 96 * x)} ${n(side / 2 - 96 * y)}`;
  const roles = Object.keys(COLOURS);
  const shapes = copiesOf(form).flatMap((copy) =>
    copy.patches.map(({ role, loop }) => {
      const { start, steps } = placed(loop, copy);
      const look = `class="cls-${roles.indexOf(role) + 1}"`;
      if (steps.every(({ arc }) => arc === undefined)) {
        return `<polygon ${look} points="${[start, ...steps.slice(0, -1).map(({ to }) => to)].map(at).join(' ')}"/>`;
      }
      let from = start;
      const d = steps.map(({ to, arc }) => {
        const text =
          arc === undefined
            ? `L${at(to)}`
            : cubics(from, arc.sweep)
                .map((each) => `C${each.map(at).join(' ')}`)
                .join('');
        from = to;
        return text;
      });
      return `<path ${look} d="M${at(start)}${d.join('')}Z"/>`;
    }),
  );
  const rules = roles.map((role, i) => `.cls-${i + 1}{fill:${COLOURS[role]};}`);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${n(side)}" height="${n(side)}" viewBox="0 0 ${n(side)} ${n(side)}"><defs><style>${rules.join('')}</style></defs><title>star</title>${shapes.join('')}</svg>`;
}

/** A circular arc about the origin in parts of at most a quarter, each by the usual cubic: handles 4/3 tan(part/4) long. */
function cubics(from: Pair, sweep: number): readonly (readonly Pair[])[] {
  const parts = Math.ceil(Math.abs(sweep) / (Math.PI / 2));
  const part = sweep / parts;
  const reach = (4 / 3) * Math.tan(part / 4);
  const turned = ([x, y]: Pair, by: number): Pair => [
    x * Math.cos(by) - y * Math.sin(by),
    x * Math.sin(by) + y * Math.cos(by),
  ];
  return Array.from({ length: parts }, (_, k) => {
    const a = turned(from, k * part);
    const b = turned(from, (k + 1) * part);
    return [[a[0] - reach * a[1], a[1] + reach * a[0]], [b[0] + reach * b[1], b[1] - reach * b[0]], b];
  });
}

/** In points, each unit drawn once among the definitions and used in its places. */
export function inPoints(form: CompassStarForm): string {
  const side = Number(form.side) * 72;
  const n = rounded(4);
  const at = ([x, y]: Pair): string => `${n(72 * x)} ${n(-72 * y)}`;
  const drawn = new Set<string>();
  const definitions: string[] = [];
  const uses = copiesOf(form).map((copy) => {
    if (!drawn.has(copy.unit)) {
      drawn.add(copy.unit);
      const paths = copy.patches.map(({ role, loop }) => {
        const d = loop.steps.map(({ to, arc }) =>
          arc === undefined
            ? `L${at(to)}`
            : `A${n(72 * arc.radius)} ${n(72 * arc.radius)} 0 0 ${arc.sweep > 0 ? 0 : 1} ${at(to)}`,
        );
        return `<path fill="${COLOURS[role]}" d="M${at(loop.start)}${d.join('')}Z"/>`;
      });
      definitions.push(`<g id="u${copy.unit}">${paths.join('')}</g>`);
    }
    const mirror = copy.mirrored ? ' scale(-1,1)' : '';
    return `<use xlink:href="#u${copy.unit}" transform="translate(${n(side / 2)},${n(side / 2)}) rotate(${n(-copy.degrees)})${mirror}"/>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${n(side)}pt" height="${n(side)}pt" viewBox="0 0 ${n(side)} ${n(side)}"><defs>${definitions.join('')}</defs>${uses.join('\n')}</svg>`;
}

/** Seam by seam: each once, as a stroke of its own, nothing filled. */
export function inLines(form: CompassStarForm): string {
  const side = Number(form.side);
  const n = rounded(4);
  const at = ([x, y]: Pair): string => `${n(side / 2 + x)} ${n(side / 2 - y)}`;
  const seams = new Map<string, string>();
  for (const copy of copiesOf(form)) {
    for (const { loop } of copy.patches) {
      const { start, steps } = placed(loop, copy);
      let from = start;
      for (const { to, arc } of steps) {
        const key = [at(from), at(to)].sort().join(' ');
        const way =
          arc === undefined
            ? `L${at(to)}`
            : `A${n(arc.radius)} ${n(arc.radius)} 0 0 ${arc.sweep > 0 ? 0 : 1} ${at(to)}`;
        seams.set(key, `<path d="M${at(from)}${way}"/>`);
        from = to;
      }
    }
  }
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${side}in" height="${side}in" viewBox="0 0 ${side} ${side}"><g fill="none" stroke="#000" stroke-width="0.02">${[...seams.values()].join('')}</g></svg>`;
}
