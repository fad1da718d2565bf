/** Reads which blocks are to be of one cloth throughout; a field of our own beside those of the layout job. */
import { fail, readId, readList, readObject, readWhole, refuseDoubles } from './job-field.ts';
import type { JobBlank, OneCloth } from './layout-job.ts';

export interface Around {
  readonly method: string;
  readonly cloths: readonly string[];
  readonly blanks: readonly JobBlank[];
}

/** @throws JobError with one line that names the field, the fault, the value found and what was expected */
export function readOneCloth(value: unknown, field: string, around: Around): readonly OneCloth[] {
  const list = readList(value, field, 'a list of blocks').map((entry, i) => readGroup(entry, `${field}[${i}]`, around));
  refuseDoubles(
    list.map(({ id }) => id),
    (i) => `${field}[${i}].id`,
  );
  if (list.length === 0) return list;
  if (around.method !== 'strips') fail(field, 'stands beside shears', value, 'it only with strips');
  for (const blank of around.blanks) {
    const asking = list.filter((group) => Object.hasOwn(group.blanks, blank.id));
    const asked = asking.reduce((sum, group) => sum + group.blocks * group.blanks[blank.id]!, 0);
    if (asked > blank.demand)
      fail(field, `asks for more "${blank.id}" than is wanted`, asked, `at most ${blank.demand}`);
    const ways = asking.map((group) => JSON.stringify(group.cloths));
    if (new Set(ways).size > 1) {
      fail(
        field,
        `has several lists of cloths for "${blank.id}"`,
        ways.join(' and '),
        'the same lists wherever it is asked for',
      );
    }
  }
  return list;
}

function readGroup(value: unknown, at: string, { cloths, blanks }: Around): OneCloth {
  const group = readObject(value, at, 'an object with id, blocks, blanks and cloths');
  const asked = readObject(group.blanks, `${at}.blanks`, 'an object of blank ids with how many a block takes');
  const known = new Set(blanks.map(({ id }) => id));
  const entries = Object.entries(asked).map(([blank, n]) => {
    if (!known.has(blank)) fail(`${at}.blanks`, 'names no blank of this job', blank, 'a blank’s id');
    return [blank, readWhole(n, `${at}.blanks.${blank}`, 'how many a block takes')] as const;
  });
  const ways = readList(group.cloths, `${at}.cloths`, 'lists of cloth ids').map((way, k) => {
    const ids = readList(way, `${at}.cloths[${k}]`, 'a list of cloth ids').map((id, i) => {
      const read = readId(id, `${at}.cloths[${k}][${i}]`);
      if (!cloths.includes(read))
        fail(`${at}.cloths[${k}][${i}]`, 'names no cloth of this job', id, cloths.join(' or '));
      return read;
    });
    if (ids.length === 0) fail(`${at}.cloths[${k}]`, 'is empty', way, 'at least one cloth id');
    return ids;
  });
  if (ways.length === 0) fail(`${at}.cloths`, 'is empty', group.cloths, 'at least one list');
  const all = ways.flat();
  refuseDoubles(all, (i) => `${at}.cloths (cloth ${i})`);
  return {
    id: readId(group.id, `${at}.id`),
    blocks: readWhole(group.blocks, `${at}.blocks`, 'how many blocks'),
    blanks: Object.fromEntries(entries.filter(([, n]) => n > 0)),
    cloths: ways,
  };
}
