/** A block's outlines alone, for a picture the size of a thumb: no names, no prints, its roles told apart by light and dark. */
import type { Tone } from '../quilt/forms/form-spec.ts';
import { placesOf } from '../quilt/places.ts';
import type { Unit } from '../quilt/quilt.ts';
import { flatten } from '../shape/flatten.ts';
import { mirrorOutline, moveOutline } from '../shape/outline.ts';
import { turn } from '../shape/point.ts';
import { polygonBox } from '../shape/polygon.ts';
import type { Drawing, PathItem } from './display-list.ts';
import { polygonRun } from './display-list.ts';

/** From light to dark, neighbours in the list far apart. */
const TONES: readonly string[] = [
  '#f0e6d2',
  '#8a6f52',
  '#d8bf97',
  '#5b4734',
  '#b99b72',
  '#ead9b8',
  '#74593f',
  '#cbb083',
];

/** The tones that a form gives its roles, in the same browns. */
const BY_TONE: Readonly<Record<Tone, string>> = {
  ground: '#f3ead8',
  light: '#e2cba0',
  middling: '#b99b72',
  dark: '#5b4734',
  bright: '#96703f',
};

/**
 * @param size of the picture in pixels, by which arcs are flattened
 * @param tones of roles, by id; others take the list above in turn
 */
export function drawThumbnail(
  title: string,
  units: readonly Unit[],
  size: number,
  tones: Readonly<Record<string, Tone>> = {},
): Drawing {
  const roles = [...new Set(units.flatMap((unit) => unit.patches.map((patch) => patch.role)))];
  const reach = Math.max(
    ...units.flatMap((unit) => unit.patches.flatMap((patch) => polygonBox(coarse(patch.outline, 1)).max)),
    1e-9,
  );
  const within = reach / size;
  const items = units.flatMap((unit) =>
    placesOf(unit).flatMap((place) =>
      unit.patches.map((patch): PathItem => {
        const hand = place.mirrored ? mirrorOutline(patch.outline) : patch.outline;
        const polygon = coarse(
          moveOutline(hand, (corner) => turn(corner, place.turn)),
          within,
        );
        const tone = tones[patch.role];
        const colour = tone === undefined ? TONES[roles.indexOf(patch.role) % TONES.length]! : BY_TONE[tone];
        return { kind: 'path', class: 'cloth', runs: [polygonRun(polygon)], fill: { colour }, ink: '#4a3c2e' };
      }),
    ),
  );
  const box = polygonBox(
    items.flatMap(({ runs }) => runs.flatMap(({ start, steps }) => [start, ...steps.map(({ to }) => to)])),
  );
  const [width, height] = [box.max[0] - box.min[0], box.max[1] - box.min[1]];
  const side = Math.max(width, height) * 1.04;
  return {
    title,
    description: '',
    box: { left: box.min[0] - (side - width) / 2, bottom: box.min[1] - (side - height) / 2, width: side, height: side },
    printSpacing: 1,
    items,
  };
}

const coarse = (outline: Unit['patches'][number]['outline'], within: number) =>
  flatten(outline, { side: 'chord', within });
