/**
 * Cloths that share blanks must be planned together; the others apart.
 * @param shared for each blank, the ids of the cloths that it may come from
 * @returns the ids used, in connected groups, each in the order given
 */
export function groupCloths(
  ids: readonly string[],
  shared: readonly (readonly string[])[],
): readonly (readonly string[])[] {
  const leader = new Map<string, string>();
  const find = (id: string): string => {
    const above = leader.get(id) ?? id;
    return above === id ? id : find(above);
  };
  for (const list of shared) {
    for (const id of list) {
      leader.set(id, leader.get(id) ?? id);
      leader.set(find(id), find(list[0]!));
    }
  }
  const groups = new Map<string, string[]>();
  for (const id of ids.filter((each) => leader.has(each))) {
    groups.set(find(id), [...(groups.get(find(id)) ?? []), id]);
  }
  return [...groups.values()];
}
