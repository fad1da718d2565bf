/**
 * Reads a layout job and checks every rule of it, so that the engine can trust what it is given. Fields that are not
 * part of a job are passed over: benchmark files carry some.
 */

import {
  type Fields,
  fail,
  JobError,
  quote,
  readChoice,
  readId,
  readList,
  readNotNegative,
  readNumber,
  readObject,
  readPositive,
  readTruth,
  readWhole,
  refuseDoubles,
} from './job-field.ts';
import type { BlankShape, ClothChoice, JobBlank, JobCloth, LayoutJob, TurnRange, Turns } from './layout-job.ts';
import { readOneCloth } from './read-one-cloth.ts';
import { readOutline } from './read-outline.ts';

/**
 * @param text a layout job as JSON
 * @throws JobError with one line that names the field, the fault, the value found and what was expected
 */
export function readLayoutJob(text: string): LayoutJob {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const start = text.trim() === '' ? 'the file is empty' : `it begins ${quote(text.trim().slice(0, 40))}`;
    throw new JobError('job', `is not JSON (${(error as Error).message}): ${start}; expected one whole JSON object`);
  }
  return readLayoutJobValue(value);
}

/** The same for a job that is parsed already. */
export function readLayoutJobValue(value: unknown): LayoutJob {
  const job = readObject(value, 'job', 'an object with method, cloths and blanks');
  const method = readChoice(job.method, 'method', ['strips', 'shears']);
  const cloths = readList(job.cloths, 'cloths', 'a list of cloths').map(readCloth);
  if (cloths.length === 0) fail('cloths', 'is empty', job.cloths, 'at least one cloth');
  const ids = cloths.map((cloth) => cloth.id);
  refuseDoubles(ids, (index) => `cloths[${index}].id`);
  const blanks = readList(job.blanks, 'blanks', 'a list of blanks').map((blank, i) => readBlank(blank, i, ids));
  refuseDoubles(
    blanks.map((blank) => blank.id),
    (index) => `blanks[${index}].id`,
  );
  return {
    method,
    ...optional(job, '', 'stages', (v, field) => readChoice(v, field, [2, 3])),
    ...optional(job, '', 'ruler', (v, field) => readPositive(v, field, 'what strip heights are multiples of')),
    ...optional(job, '', 'seconds', (v, field) => readPositive(v, field, 'the time it may take')),
    ...optional(job, '', 'seed', (v, field) => readWhole(v, field, 'a seed')),
    cloths,
    blanks,
    ...optional(job, '', 'oneCloth', (v, field) => readOneCloth(v, field, { method, cloths: ids, blanks })),
  };
}

function readCloth(value: unknown, index: number): JobCloth {
  const at = `cloths[${index}]`;
  const cloth = readObject(value, at, 'a cloth with id and width');
  const length = cloth.length ?? null;
  const isPiece = length !== null;
  const onlyBolts = 'it only on a bolt (length null)';
  if (isPiece && cloth.step !== undefined) fail(`${at}.step`, 'stands on a piece', cloth.step, onlyBolts);
  if (isPiece && cloth.squaring !== undefined) {
    fail(`${at}.squaring`, 'stands on a piece', cloth.squaring, onlyBolts);
  }
  if (!isPiece && cloth.count !== undefined) {
    fail(`${at}.count`, 'stands on a bolt', cloth.count, 'it only on a piece (length a number)');
  }
  return {
    id: readId(cloth.id, `${at}.id`),
    width: readPositive(cloth.width, `${at}.width`, 'the width of the cloth'),
    length: isPiece ? readPositive(length, `${at}.length`, 'the length of a piece, or null for a bolt') : null,
    ...optional(cloth, at, 'count', (v, field) =>
      v === null ? null : readWhole(v, field, 'how many pieces there are, or null for as many as wanted'),
    ),
    ...optional(cloth, at, 'step', (v, field) => readPositive(v, field, 'the length it is sold in')),
    ...optional(cloth, at, 'cost', (v, field) => readNotNegative(v, field, 'a cost')),
    ...optional(cloth, at, 'firstCut', (v, field) => readChoice(v, field, ['across', 'along', 'either'])),
    ...optional(cloth, at, 'squaring', (v, field) => readNotNegative(v, field, 'the length lost to squaring the end')),
  };
}

function readBlank(value: unknown, index: number, cloths: readonly string[]): JobBlank {
  const at = `blanks[${index}]`;
  const blank = readObject(value, at, 'a blank with id, outline and demand');
  const hasOutline = blank.outline !== undefined;
  if (hasOutline && blank.shapes !== undefined) {
    fail(`${at}.shapes`, 'stands beside an outline', blank.shapes, 'either outline or shapes');
  }
  if (!hasOutline && blank.shapes === undefined) {
    fail(`${at}.outline`, 'is missing', undefined, 'an outline, or shapes to choose from');
  }
  if (!hasOutline) {
    for (const name of ['turns', 'mirror'] as const) {
      if (blank[name] !== undefined) fail(`${at}.${name}`, 'stands beside shapes', blank[name], 'it inside each shape');
    }
  }
  const id = readId(blank.id, `${at}.id`);
  const demand = readWhole(blank.demand, `${at}.demand`, 'how many are wanted');
  const from = optional(blank, at, 'cloths', (v, field) => readChoices(v, field, cloths));
  if (hasOutline) return { id, demand, ...readShape(blank, at), ...from };
  const shapes = readList(blank.shapes, `${at}.shapes`, 'a list of shapes').map((entry, i) => {
    const where = `${at}.shapes[${i}]`;
    return readShape(readObject(entry, where, 'a shape with an outline'), where);
  });
  if (shapes.length === 0) fail(`${at}.shapes`, 'is empty', blank.shapes, 'at least one shape');
  return { id, demand, shapes, ...from };
}

const readShape = (shape: Fields, at: string): BlankShape => ({
  outline: readOutline(shape.outline, `${at}.outline`),
  ...optional(shape, at, 'turns', readTurns),
  ...optional(shape, at, 'mirror', readTruth),
});

function readChoices(value: unknown, field: string, cloths: readonly string[]): readonly ClothChoice[] {
  const list = readList(value, field, 'a list of cloth ids');
  if (list.length === 0) fail(field, 'is empty', value, 'at least one cloth id');
  const choices = list.map((entry, index): ClothChoice => {
    const at = `${field}[${index}]`;
    if (typeof entry === 'string') return readKnownId(entry, at, cloths);
    const choice = readObject(entry, at, 'a cloth id, or an object with id, turns and mirror');
    return {
      id: readKnownId(choice.id, `${at}.id`, cloths),
      ...optional(choice, at, 'turns', readTurns),
      ...optional(choice, at, 'mirror', readTruth),
    };
  });
  refuseDoubles(
    choices.map((choice) => (typeof choice === 'string' ? choice : choice.id)),
    (index) => `${field}[${index}]`,
  );
  return choices;
}

function readKnownId(value: unknown, field: string, cloths: readonly string[]): string {
  const id = readId(value, field);
  if (!cloths.includes(id)) fail(field, 'is no cloth of this job', id, `one of ${cloths.map(quote).join(', ')}`);
  return id;
}

function readTurns(value: unknown, field: string): Turns {
  const expected = '"any", or a list of degrees and intervals {"centre": 0, "within": 5}';
  if (value === 'any') return value;
  if (!Array.isArray(value)) fail(field, 'is not known', value, expected);
  if (value.length === 0) fail(field, 'is empty', value, expected);
  return value.map((entry: unknown, index): TurnRange => {
    const at = `${field}[${index}]`;
    if (typeof entry === 'number') return readNumber(entry, at, 'degrees anticlockwise');
    const range = readObject(entry, at, 'degrees, or an interval {"centre": 0, "within": 5}');
    return {
      centre: readNumber(range.centre, `${at}.centre`, 'degrees anticlockwise'),
      within: readNotNegative(range.within, `${at}.within`, 'degrees either way'),
    };
  });
}

/** The field read, or nothing where it is absent: an absent field keeps its default, which the reader does not fill in. */
function optional<K extends string, T>(
  from: Fields,
  at: string,
  name: K,
  read: (value: unknown, field: string) => T,
): { readonly [key in K]?: T } {
  const value = from[name];
  if (value === undefined) return {};
  return { [name]: read(value, at === '' ? name : `${at}.${name}`) } as { readonly [key in K]?: T };
}
