/** What one field of a quilt file says about another: ids, references, radii, outlines. */

import { edgesOf } from '../shape/outline.ts';
import { outlineFault } from '../shape/outline-fault.ts';
import { inFile } from './forms/fault-words.ts';
import { type Form, faultsOfForm, rolesOfForm } from './forms/forms.ts';
import type { Block, Facing, JoinedLength, Patch, Quilt } from './quilt.ts';
import { type Fault, found } from './say-fault.ts';
import { tracingFault } from './tracing/traced-from.ts';

type Path = readonly PropertyKey[];

/** All faults between the fields of a quilt whose fields are each in order (quilt-schema.ts). */
export function faultsBetweenFields(quilt: Quilt): readonly Fault[] {
  return [
    ...repeatedIds(quilt.blocks, ['blocks']),
    ...repeatedIds(quilt.joined, ['joined']),
    ...repeatedIds(quilt.roles, ['roles']),
    ...repeatedIds(quilt.cloths, ['cloths']),
    ...repeatedIds(quilt.schemes, ['schemes']),
    ...quilt.cloths.flatMap((cloth, i) => repeatedIds(cloth.pieces ?? [], ['cloths', i, 'pieces'])),
    ...quilt.blocks.flatMap((block, i) => faultsOfBlock(block, ['blocks', i], quilt)),
    ...quilt.joined.flatMap((joined, i) => faultsOfJoined(joined, ['joined', i], quilt)),
    ...quilt.roles.flatMap((role, i) =>
      role.facing.to === 'along' && role.facing.edge === undefined ? [edgeMissing(['roles', i, 'facing', 'edge'])] : [],
    ),
    ...faultsOfSchemes(quilt),
    ...(quilt.testBlock === undefined ? [] : unknownId(quilt.testBlock, 'block', quilt.blocks, ['testBlock'])),
  ];
}

/** A field that only the other kind of joined length has would be passed over in silence. */
function faultsOfJoined(joined: JoinedLength, path: Path, quilt: Quilt): readonly Fault[] {
  const [foreign, home] =
    joined.kind === 'panels' ? (['shortest', 'strips'] as const) : (['overhang', 'panels'] as const);
  const message = `is for joined lengths of kind "${home}"; leave it out, or change the kind`;
  const isBacking = joined.follows === 'backing';
  const other = joined.follows !== undefined && isBacking !== (joined.kind === 'panels');
  return [
    ...unknownId(joined.role, 'role', quilt.roles, [...path, 'role']),
    ...(joined[foreign] === undefined ? [] : [{ path: [...path, foreign], message }]),
    ...(other
      ? [{ path: [...path, 'follows'], message: `expected "backing" for panels alone; ${found(joined.follows)}` }]
      : []),
  ];
}

function faultsOfSchemes(quilt: Quilt): readonly Fault[] {
  const inSchemes = quilt.schemes.flatMap((scheme, i) =>
    Object.entries(scheme.cloths).flatMap(([role, cloths]) => {
      const path = ['schemes', i, 'cloths', role];
      return [
        ...unknownId(role, 'role', quilt.roles, path),
        ...[cloths].flat().flatMap((cloth) => unknownId(cloth, 'cloth', quilt.cloths, path)),
      ];
    }),
  );
  return [...inSchemes, ...unknownId(quilt.scheme, 'scheme', quilt.schemes, ['scheme'])];
}

function faultsOfBlock(block: Block, path: Path, quilt: Quilt): readonly Fault[] {
  if ((block.form === undefined) === (block.units === undefined)) {
    const both = block.form !== undefined;
    return [{ path, message: `expected either a form or units, and it has ${both ? 'both' : 'neither'}` }];
  }
  if (block.form !== undefined) {
    return faultsOfFormBlock(block, block.form, path, quilt);
  }
  const units = block.units ?? [];
  const traced = block.traced === undefined ? null : tracingFault(block.traced.tracing);
  const foreign = (['roles', 'own'] as const)
    .filter((field) => block[field] !== undefined)
    .map((field) => ({
      path: [...path, field],
      message: 'is for blocks with a form; leave it out, and say it in the patches',
    }));
  return [
    ...foreign,
    ...(traced === null ? [] : [{ path: [...path, 'traced', 'tracing'], message: traced }]),
    ...repeatedIds(units, [...path, 'units']),
    ...units.flatMap((unit, i) => {
      const patches = [...path, 'units', i, 'patches'];
      return [
        ...(unit.repeat.over === 0 && block.loose !== true ? [overNone([...path, 'units', i, 'repeat', 'over'])] : []),
        ...repeated(unit.patches, (patch) => patch.number, 'number', patches),
        ...unit.patches.flatMap((patch, k) => faultsOfPatch(patch, [...patches, k], quilt)),
      ];
    }),
  ];
}

function faultsOfFormBlock(block: Block, form: Form, path: Path, quilt: Quilt): readonly Fault[] {
  const wanted = rolesOfForm(form).map(({ id }) => block.roles?.[id] ?? id);
  const missing = wanted.filter((id) => quilt.roles.every((role) => role.id !== id));
  return [
    ...faultsOfForm(form, quilt.unit).map((fault) => ({
      path: [...path, 'form', fault.field],
      message: inFile(fault),
    })),
    ...missing.map((id) => ({
      path: [...path, 'form'],
      message: `needs the role "${id}", which roles does not list`,
    })),
  ];
}

const overNone = (path: Path): Fault => ({
  path,
  message: 'expected more than 0; found 0, which only the pieces of a loose block may have',
});

function faultsOfPatch(patch: Patch, path: Path, quilt: Quilt): readonly Fault[] {
  const fault = outlineFault(patch.outline);
  const role = quilt.roles.find((each) => each.id === patch.role);
  return [
    ...unknownId(patch.role, 'role', quilt.roles, [...path, 'role']),
    ...(fault === null
      ? [
          ...faultsOfEdge(patch, patch.facing ?? role?.facing, [...path, 'facing', 'edge']),
          ...Object.entries(patch.facingAt ?? {}).flatMap(([place, facing]) =>
            faultsOfEdge({ ...patch, facing }, facing, [...path, 'facingAt', place, 'edge']),
          ),
        ]
      : [{ path: [...path, 'outline'], message: fault }]),
  ];
}

/** A print that follows an edge needs one that the outline has, and a straight one: an arc has no one direction. */
function faultsOfEdge(patch: Patch, facing: Facing | undefined, path: Path): readonly Fault[] {
  if (facing?.to !== 'along') {
    return [];
  }
  if (facing.edge === undefined) {
    // A role without its edge is told once, at the role.
    return patch.facing === undefined ? [] : [edgeMissing(path)];
  }
  const edges = edgesOf(patch.outline);
  const edge = edges[facing.edge];
  if (edge === undefined) {
    return [{ path, message: `expected an edge of this outline, 0 to ${edges.length - 1}; ${found(facing.edge)}` }];
  }
  return edge.arc === undefined ? [] : [{ path, message: `expected a straight edge; edge ${facing.edge} is an arc` }];
}

function edgeMissing(path: Path): Fault {
  return { path, message: 'is missing; a print that faces "along" needs the number of an edge, the first being 0' };
}

function repeatedIds(list: readonly { readonly id: string }[], path: Path): readonly Fault[] {
  return repeated(list, (item) => item.id, 'id', path);
}

function repeated<Item>(
  list: readonly Item[],
  keyOf: (item: Item) => string | number,
  field: string,
  path: Path,
): readonly Fault[] {
  const first = new Map<string | number, number>();
  return list.flatMap((item, i) => {
    const key = keyOf(item);
    const earlier = first.get(key);
    if (earlier === undefined) {
      first.set(key, i);
      return [];
    }
    const message = `expected one that no other has; ${JSON.stringify(key)} is already that of ${String(path.at(-1))}[${earlier}]`;
    return [{ path: [...path, i, field], message }];
  });
}

function unknownId(id: string, kind: string, list: readonly { readonly id: string }[], path: Path): readonly Fault[] {
  if (list.some((item) => item.id === id)) {
    return [];
  }
  const known = list.map((item) => `"${item.id}"`).join(', ');
  return [{ path, message: `names the ${kind} "${id}"; the ${kind}s are ${known === '' ? 'none so far' : known}` }];
}
