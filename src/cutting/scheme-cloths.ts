/** Which cloths a scheme gives to a role, and what is wrong with it. */
import type { Cloth, Quilt, Scheme } from '../quilt/quilt.ts';
import type { Problem } from './cut-list.ts';

/** Answers with the cloths of a role. What is amiss is told once a role, and only of roles asked for. */
export function schemeCloths(quilt: Quilt, scheme: Scheme, problems: Problem[]): (role: string) => readonly Cloth[] {
  const cloths = new Map(quilt.cloths.map((cloth) => [cloth.id, cloth]));
  const known = new Map<string, readonly Cloth[]>();
  return (role) => {
    const before = known.get(role);
    if (before !== undefined) {
      return before;
    }
    const found = namedBy(scheme, role).flatMap((id) => {
      const cloth = cloths.get(id);
      if (cloth === undefined) {
        problems.push({
          kind: 'error',
          text: `Scheme “${scheme.name}” fills ${roleName(quilt, role)} with the cloth “${id}”, which the quilt does not have; add the cloth or choose another.`,
          role,
          cloth: id,
        });
      } else if (cloth.step === undefined && (cloth.pieces ?? []).length === 0) {
        problems.push({
          kind: 'error',
          text: `“${cloth.name}” has no selling step, so it cannot be bought, and no shelf pieces; ${roleName(quilt, role)} cannot be cut from it.`,
          role,
          cloth: id,
        });
        return [];
      }
      return cloth === undefined ? [] : [cloth];
    });
    if (namedBy(scheme, role).length === 0) {
      problems.push({
        kind: 'error',
        text: `Scheme “${scheme.name}” gives no cloth to ${roleName(quilt, role)}; its patches are left out of the plan.`,
        role,
      });
    }
    known.set(role, found);
    return found;
  };
}

/** Cloths that no scheme of the quilt names: most likely forgotten. */
export function forgottenCloths(quilt: Quilt): readonly Problem[] {
  const named = new Set(
    quilt.schemes.flatMap((scheme) => Object.keys(scheme.cloths).flatMap((role) => namedBy(scheme, role))),
  );
  return quilt.cloths
    .filter((cloth) => !named.has(cloth.id))
    .map((cloth) => ({
      kind: 'warning',
      text: `No scheme uses the cloth “${cloth.name}”; give it to a role, or take it out.`,
      cloth: cloth.id,
    }));
}

function namedBy(scheme: Scheme, role: string): readonly string[] {
  const named = Object.hasOwn(scheme.cloths, role) ? scheme.cloths[role] : undefined;
  return named === undefined ? [] : typeof named === 'string' ? [named] : [...new Set(named)];
}

function roleName(quilt: Quilt, role: string): string {
  return `“${quilt.roles.find((each) => each.id === role)?.name ?? role}”`;
}
