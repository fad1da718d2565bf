/**
 * A block as a drawing at its true size, for a drawing program to change and to be read back (import/import-svg.ts): each copy of
 * a unit a group, each patch a path with its name and role. No lettering, no prints, lines as thin as hairs.
 */
import { placesOf } from '../quilt/places.ts';
import type { LengthUnit, Unit } from '../quilt/quilt.ts';
import { edgesOf, mirrorOutline, moveOutline, type Outline } from '../shape/outline.ts';
import { outlineBox } from '../shape/outline-measures.ts';
import { turn } from '../shape/point.ts';
import { escapeXml } from './to-svg.ts';

export interface BlockToWrite {
  readonly name: string;
  readonly units: readonly Unit[];
  /** That of the outlines. Inches are written as inches, centimetres as millimetres. */
  readonly unit: LengthUnit;
  /** Names and colours ("#rrggbb") of the roles that the patches name. */
  readonly roles: readonly { readonly id: string; readonly name: string; readonly colour: string }[];
}

/** Written unit, how many of it the block's unit has, decimals. */
const WRITTEN = { in: ['in', 1, 6], cm: ['mm', 10, 5] } as const;

export function blockToSvg({ name, units, unit, roles }: BlockToWrite): string {
  const [written, times, decimals] = WRITTEN[unit];
  const say = (value: number): string => `${Number((value * times).toFixed(decimals)) + 0}`;
  const placed = units.flatMap((each) =>
    placesOf(each).map((place) => ({ unit: each, place, outlines: placedIn(each, place) })),
  );
  const box = boxOf(placed.flatMap(({ outlines }) => outlines));
  const [width, height] = [say(box.right - box.left), say(box.top - box.bottom)];
  const groups = placed.map(({ unit: each, place, outlines }) => {
    const copy = place.index + 1;
    const paths = each.patches.map((patch, i) => {
      const role = roles.find(({ id }) => id === patch.role);
      const told = `id="${escapeXml(`${each.id}${patch.number}-${copy}`)}" data-role="${escapeXml(patch.role)}" fill="${role?.colour ?? '#d8d4cc'}"`;
      return `    <path ${told} d="${pathOf(outlines[i]!, say)}"><title>${escapeXml(role?.name ?? patch.role)}</title></path>`;
    });
    const title = each.name === undefined ? [] : [`    <title>${escapeXml(each.name)}</title>`];
    const open = `  <g id="${escapeXml(`${each.id}-${copy}`)}" data-unit="${escapeXml(each.id)}" data-paper="${each.paper ? 'yes' : 'no'}">`;
    return [open, ...title, ...paths, '  </g>'].join('\n');
  });
  const hair = say((box.right - box.left) / 1000);
  const arm = say((box.right - box.left) / 100);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}${written}" height="${height}${written}" viewBox="${say(box.left)} ${say(-box.top)} ${width} ${height}">`,
    `  <title>${escapeXml(name)}</title>`,
    `  <g stroke="#2a241f" stroke-width="${hair}" stroke-linejoin="round">`,
    ...groups,
    '  </g>',
    `  <path id="centre" d="M-${arm} 0H${arm}M0 -${arm}V${arm}" fill="none" stroke="#2a241f" stroke-width="${hair}"/>`,
    '</svg>',
    '',
  ].join('\n');
}

function placedIn(unit: Unit, place: ReturnType<typeof placesOf>[number]): readonly Outline[] {
  return unit.patches.map(({ outline }) =>
    moveOutline(place.mirrored ? mirrorOutline(outline) : outline, (corner) => turn(corner, place.turn)),
  );
}

function boxOf(outlines: readonly Outline[]): { left: number; right: number; bottom: number; top: number } {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { min, max } of outlines.map(outlineBox)) {
    left = Math.min(left, min[0]);
    bottom = Math.min(bottom, min[1]);
    right = Math.max(right, max[0]);
    top = Math.max(top, max[1]);
  }
  return { left, right, bottom, top };
}

/** SVG counts y downwards, so a clockwise arc stays clockwise to the eye and has the sweep flag. */
function pathOf(outline: Outline, say: (value: number) => string): string {
  const edges = edgesOf(outline);
  const at = ([x, y]: readonly [number, number]): string => `${say(x)} ${say(-y)}`;
  const steps = edges.map(({ to, arc }) =>
    arc === undefined
      ? `L${at(to)}`
      : `A${say(arc.radius)} ${say(arc.radius)} 0 ${arc.large ? 1 : 0} ${arc.turn === 'clockwise' ? 1 : 0} ${at(to)}`,
  );
  // The last straight edge is what Z draws.
  if (edges.at(-1)!.arc === undefined) steps.pop();
  return `M${at(edges[0]!.from)}${steps.join('')}Z`;
}
