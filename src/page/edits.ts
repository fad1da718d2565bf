/** The changes that the page can make to a quilt, each a pure function from the old one to the new. */
import type { Block, Cloth, CompassStarForm, Facing, Quilt } from '../quilt/quilt.ts';
import type { Edit } from './edit-event.ts';

/** Allowance, room, ruler, squaring, spares, scheme. */
export const setQuilt =
  (fields: Partial<Pick<Quilt, 'allowance' | 'room' | 'ruler' | 'squaring' | 'spares' | 'scheme' | 'name'>>): Edit =>
  (quilt) => ({ ...quilt, ...fields });

export const setBlockCount =
  (block: string, count: number): Edit =>
  (quilt) =>
    mapBlock(quilt, block, (old) => ({ ...old, count }));

export const setForm =
  (block: string, fields: Partial<CompassStarForm>): Edit =>
  (quilt) =>
    mapBlock(quilt, block, (old) => (old.form === undefined ? old : { ...old, form: { ...old.form, ...fields } }));

export const setCloth =
  (cloth: string, fields: Partial<Cloth>): Edit =>
  (quilt) => ({ ...quilt, cloths: quilt.cloths.map((old) => (old.id === cloth ? { ...old, ...fields } : old)) });

/** Which cloth fills a role in the scheme being planned. */
export const setRoleCloth =
  (role: string, cloth: string): Edit =>
  (quilt) => ({
    ...quilt,
    schemes: quilt.schemes.map((scheme) =>
      scheme.id === quilt.scheme ? { ...scheme, cloths: { ...scheme.cloths, [role]: cloth } } : scheme,
    ),
  });

/** How a role faces. A patch that has a facing of its own keeps it. */
export const setFacing =
  (role: string, fields: Partial<Facing>): Edit =>
  (quilt) => ({
    ...quilt,
    roles: quilt.roles.map((old) => (old.id === role ? { ...old, facing: { ...old.facing, ...fields } } : old)),
  });

function mapBlock(quilt: Quilt, id: string, change: (block: Block) => Block): Quilt {
  return { ...quilt, blocks: quilt.blocks.map((block) => (block.id === id ? change(block) : block)) };
}
