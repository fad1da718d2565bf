/** A small picture of a form: its block in plain colours, before any cloth is chosen. */
import type { Tone } from '../quilt/forms/form-spec.ts';
import { type Form, formSpec, rolesOfForm } from '../quilt/forms/forms.ts';
import type { Cloth, LengthUnit, Quilt } from '../quilt/quilt.ts';
import type { Drawing, Item } from './display-list.ts';
import { drawBlock } from './draw-block.ts';

const COLOURS: Readonly<Record<Tone, string>> = {
  ground: '#e6dfd0',
  light: '#f3e7c8',
  middling: '#8fae9b',
  dark: '#34506b',
  bright: '#d98e32',
};

/** @param form without faults */
export function drawFormPicture(form: Form, unit: LengthUnit): Drawing {
  const { title, about, tones } = formSpec(form.kind);
  const roles = rolesOfForm(form);
  const cloths = roles.map(
    ({ id }): Cloth => ({ id, name: id, colour: COLOURS[tones[id] ?? 'middling'], print: 'solid', width: 42 }),
  );
  const scheme = { id: 'plain', name: 'plain', cloths: Object.fromEntries(roles.map(({ id }) => [id, id])) };
  const block = { id: form.kind, name: title, count: 1, form };
  const quilt: Quilt = {
    format: 'yardwright',
    version: 1,
    name: title,
    unit,
    allowance: 0,
    room: 0,
    ruler: 1,
    squaring: 0,
    spares: 0,
    blocks: [block],
    joined: [],
    roles,
    cloths,
    schemes: [scheme],
    scheme: scheme.id,
  };
  const drawing = drawBlock({ quilt, scheme, block, blanks: [], textSize: 0.1 });
  return { ...drawing, description: about, items: drawing.items.map(withoutNames) };
}

/** Only the patches: their names could not be read in a small picture, and their groups are for finding blanks. */
function withoutNames(item: Item): Item {
  return item.kind === 'group'
    ? {
        ...item,
        items: item.items
          .filter((one) => one.kind === 'group' || (one.kind === 'path' && one.class === 'cloth'))
          .map(withoutNames),
      }
    : item;
}
