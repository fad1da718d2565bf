/** Reads single fields of a layout job and says in one line which field is at fault, how, and what was expected. */

/** A layout job that breaks the rules. The message is one line: field, fault, the value as found, what was expected. */
export class JobError extends Error {
  override readonly name = 'JobError';

  /** @param field where it stands, as `blanks[3].outline`; `job` for the whole file */
  constructor(
    readonly field: string,
    fault: string,
  ) {
    super(oneLine(`${field}: ${fault}`));
  }
}

export type Fields = Readonly<Record<string, unknown>>;

/** The value as it is written in a file, cut short so that the message stays one readable line. */
export function quote(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 70 ? `${text.slice(0, 60)} … (${text.length} characters)` : text;
}

/** Throws the one message that all readers share: what is wrong, the value, what was expected. */
export function fail(field: string, fault: string, value: unknown, expected: string): never {
  throw new JobError(field, `${fault}: ${quote(value)}; expected ${expected}`);
}

export function readObject(value: unknown, field: string, expected: string): Fields {
  if (value === undefined) fail(field, 'is missing', value, expected);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    fail(field, 'is not an object', value, expected);
  }
  return value as Fields;
}

export function readList(value: unknown, field: string, expected: string): readonly unknown[] {
  if (value === undefined) fail(field, 'is missing', value, expected);
  if (!Array.isArray(value)) fail(field, 'is not a list', value, expected);
  return value;
}

/** A name: text that is not empty, so that it can be shown and found again. */
export function readId(value: unknown, field: string): string {
  if (value === undefined) fail(field, 'is missing', value, 'a name, as "a"');
  if (typeof value !== 'string') fail(field, 'is not text', value, 'a name, as "a"');
  if (value.trim() === '') fail(field, 'is empty', value, 'a name, as "a"');
  return value;
}

export function readNumber(value: unknown, field: string, expected: string): number {
  if (value === undefined) fail(field, 'is missing', value, expected);
  if (typeof value !== 'number') fail(field, 'is not a number', value, expected);
  // A file cannot hold NaN, but 1e999 in it reads as Infinity.
  if (!Number.isFinite(value)) fail(field, 'is not finite', value, expected);
  return value;
}

export function readPositive(value: unknown, field: string, what: string): number {
  const expected = `${what}, a number above 0`;
  const number = readNumber(value, field, expected);
  if (number <= 0) fail(field, number < 0 ? 'is negative' : 'is zero', value, expected);
  return number;
}

export function readNotNegative(value: unknown, field: string, what: string): number {
  const expected = `${what}, 0 or more`;
  const number = readNumber(value, field, expected);
  if (number < 0) fail(field, 'is negative', value, expected);
  return number;
}

export function readWhole(value: unknown, field: string, what: string): number {
  const expected = `${what}, a whole number from 0 up`;
  const number = readNumber(value, field, expected);
  if (number < 0) fail(field, 'is negative', value, expected);
  // Beyond 2^53 whole numbers have gaps, so a count could silently be another one.
  if (!Number.isSafeInteger(number)) fail(field, 'is not a whole number', value, expected);
  return number;
}

export function readTruth(value: unknown, field: string): boolean {
  if (typeof value !== 'boolean') fail(field, 'is neither true nor false', value, 'true or false');
  return value;
}

export function readChoice<const T extends string | number>(value: unknown, field: string, choices: readonly T[]): T {
  const expected = choices.map(quote).join(' or ');
  if (value === undefined) fail(field, 'is missing', value, expected);
  if (!choices.includes(value as T)) fail(field, 'is not known', value, expected);
  return value as T;
}

/** Ids must differ, or a placement would not say which one it means. */
export function refuseDoubles(ids: readonly string[], fieldOf: (index: number) => string): void {
  const first = new Map<string, number>();
  ids.forEach((id, index) => {
    const before = first.get(id);
    if (before !== undefined) fail(fieldOf(index), `is the same as ${fieldOf(before)}`, id, 'ids that differ');
    first.set(id, index);
  });
}

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();
