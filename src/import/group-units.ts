/** Which patches belong together as one unit by the drawing's groups. */

import type { FoundPatch } from './found-patch.ts';
import { isGiven, plainWords } from './patch-names.ts';
import type { SvgGroup } from './svg/walk-svg.ts';

export interface PatchGroup {
  /** As the drawing calls the group; '' where it does not. */
  readonly name: string;
  readonly patches: readonly FoundPatch[];
  /** Whether the drawing grouped them, rather than leaving them side by side. */
  readonly meant: boolean;
  /** What our own files say of a unit; null where nothing is said. */
  readonly told: { readonly letter: string; readonly paper: boolean } | null;
}

interface Node {
  readonly group: SvgGroup | null;
  readonly direct: FoundPatch[];
  readonly inside: Map<number, Node>;
}

/**
 * A group that holds patches is a unit, unless it holds other groups of several patches: those are the units then. One that holds
 * everything is only a layer. What stands in no group is handed back as not meant.
 */
export function groupUnits(patches: readonly FoundPatch[]): readonly PatchGroup[] {
  let root: Node = { group: null, direct: [], inside: new Map() };
  for (const patch of patches) {
    let node = root;
    for (const group of patch.groups) {
      const inner = node.inside.get(group.key) ?? { group, direct: [], inside: new Map() };
      node.inside.set(group.key, inner);
      node = inner;
    }
    node.direct.push(patch);
  }
  while (root.direct.length === 0 && root.inside.size === 1 && toldOf([...root.inside.values()][0]!) === null) {
    root = [...root.inside.values()][0]!;
  }
  return unitsIn({ ...root, group: null });
}

function unitsIn(node: Node): readonly PatchGroup[] {
  const told = toldOf(node);
  const inner = [...node.inside.values()];
  const several = inner.filter((each) => patchesIn(each).length > 1 || toldOf(each) !== null);
  const name = node.group === null ? '' : nameOfGroup(node.group);
  if (several.length === 0 || told !== null) {
    return [{ name, patches: patchesIn(node), meant: node.group !== null, told }];
  }
  return [
    ...(node.direct.length === 0 ? [] : [{ name: '', patches: node.direct, meant: false, told: null }]),
    ...inner.flatMap((each) =>
      several.includes(each)
        ? unitsIn(each)
        : [
            {
              name: each.group === null ? '' : nameOfGroup(each.group),
              patches: patchesIn(each),
              meant: true,
              told: null,
            },
          ],
    ),
  ];
}

function toldOf({ group }: Node): PatchGroup['told'] {
  return group === null || group.names.unit === '' ? null : { letter: group.names.unit, paper: group.names.paper };
}

const patchesIn = (node: Node): readonly FoundPatch[] => [
  ...node.direct,
  ...[...node.inside.values()].flatMap(patchesIn),
];

/** A unit's letter is no name. */
function nameOfGroup({ names }: SvgGroup): string {
  const given = [names.title, names.label, names.id].find((name) => name !== '' && !isGiven(name));
  return given === undefined || /^(?:unit[\s_-]*)?[A-Z]{1,2}(?:[-_.]\d+)?$/.test(given) ? '' : plainWords(given);
}
