import { drawForm, rolesOfForm } from './forms/forms.ts';
import type { Block, LengthUnit, Unit } from './quilt.ts';

/**
 * A block's units: those listed, or those drawn from the numbers of its form, in the quilt's roles.
 * @param unit the quilt's unit, in which outlines come back
 */
export function unitsOf(block: Block, unit: LengthUnit): readonly Unit[] {
  const { form, roles } = block;
  if (block.units !== undefined) {
    return block.units;
  }
  return form === undefined ? [] : withOwn(inRoles(drawForm(form, unit), roles ?? {}), block.own);
}

/** The ids of the quilt's roles that a block's patches have, each once. */
export function roleIdsOf({ form, roles, units = [] }: Block): readonly string[] {
  if (form !== undefined) {
    return [...new Set(rolesOfForm(form).map(({ id }) => roles?.[id] ?? id))];
  }
  return [...new Set(units.flatMap((unit) => unit.patches.map((patch) => patch.role)))];
}

/** What a patch has of its own is kept by its name, and passed over while the form draws no patch of that name. */
function withOwn(units: readonly Unit[], own: Block['own']): readonly Unit[] {
  if (own === undefined) {
    return units;
  }
  return units.map((unit) => ({
    ...unit,
    patches: unit.patches.map((patch) => ({ ...patch, ...own[`${unit.id}${patch.number}`] })),
  }));
}

/** The same units with each role that `roles` names replaced by what it stands for. */
export function inRoles(units: readonly Unit[], roles: Readonly<Record<string, string>>): readonly Unit[] {
  if (Object.keys(roles).length === 0) {
    return units;
  }
  return units.map((unit) => ({
    ...unit,
    patches: unit.patches.map((patch) => ({ ...patch, role: roles[patch.role] ?? patch.role })),
  }));
}
