/** The changes that the page can make to whole blocks and to the list of roles, each from the old quilt to the new. */
import * as blocks from '../quilt/change-blocks.ts';
import { freshIdFor, freshName } from '../quilt/fresh-id.ts';
import type { Block, Quilt } from '../quilt/quilt.ts';
import type { Edit } from './edit-event.ts';

/** Its name, how many of it the quilt has, how its copies are turned; undefined takes the turns out. */
export const setBlock =
  (id: string, fields: { readonly [Field in 'name' | 'count' | 'turns']?: Block[Field] | undefined }): Edit =>
  (quilt) => ({
    ...quilt,
    blocks: quilt.blocks.map((block) => (block.id === id ? withFields(block, fields) : block)),
  });

export const removeBlock =
  (id: string): Edit =>
  (quilt) =>
    blocks.removeBlock(quilt, id);

export const copyBlock =
  (id: string): Edit =>
  (quilt) =>
    blocks.copyBlock(quilt, id);

/** One more role, that no patch has yet. */
export const addRole =
  (name: string): Edit =>
  (quilt) => ({
    ...quilt,
    roles: [...quilt.roles, { id: freshIdFor(name, quilt.roles, 'role'), name, facing: { to: 'free' } }],
  });

export const renameRole =
  (id: string, name: string): Edit =>
  (quilt) => ({ ...quilt, roles: quilt.roles.map((role) => (role.id === id ? { ...role, name } : role)) });

/** Takes out a role that nothing has. A quilt of which a patch has it would be no quilt any more, and is refused by the session. */
export const removeRole =
  (id: string): Edit =>
  (quilt) =>
    blocks.removeRole(quilt, id);

/** "New role", or "New role 2" where there is one. */
export const newRoleName = (quilt: Quilt): string =>
  freshName(
    'New role',
    quilt.roles.map((role) => role.name),
  );

function withFields(block: Block, fields: object): Block {
  const entries = Object.entries({ ...block, ...fields }).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as unknown as Block;
}
