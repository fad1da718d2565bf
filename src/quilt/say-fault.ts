/** How a fault in a quilt file is told: the field, what was expected there, and what was found. */
import type { z } from 'zod';

export interface Fault {
  /** The way to the field: ["blocks", 0, "units", 1]. */
  readonly path: readonly PropertyKey[];
  readonly message: string;
}

/** The path as people write it: blocks[0].units[1].patches[2].outline. */
export function fieldName(path: readonly PropertyKey[]): string {
  return path.reduce<string>((name, step) => {
    if (typeof step === 'number') {
      return `${name}[${step}]`;
    }
    const plain = /^[\p{L}_][\p{L}\p{N}_-]*$/u.test(String(step));
    const key = plain ? String(step) : `["${String(step)}"]`;
    return name === '' || !plain ? name + key : `${name}.${key}`;
  }, '');
}

/** "found 7", short enough for a line. */
export function found(value: unknown): string {
  if (value === undefined) {
    return 'it is missing';
  }
  const text = JSON.stringify(value);
  return `found ${text.length > 60 ? `${text.slice(0, 57)}…` : text}`;
}

/** The words for an issue that the schema raises without words of its own. */
export function wordsFor(issue: z.core.$ZodRawIssue): string {
  const input = issue.input;
  switch (issue.code) {
    case 'invalid_type':
      return `expected ${KINDS.get(issue.expected) ?? issue.expected}; ${found(input)}`;
    case 'invalid_value':
      return `expected ${oneOf(issue.values)}; ${found(input)}`;
    case 'unrecognized_keys':
      return `has ${issue.keys.map((key) => `"${key}"`).join(' and ')}, which this version of Yardwright does not know`;
    case 'too_small':
      return `expected ${least(issue)}; ${found(input)}`;
    case 'too_big':
      return `expected ${issue.maximum} or less; ${found(input)}`;
    default:
      return `is not as expected; ${found(input)}`;
  }
}

const KINDS: ReadonlyMap<string, string> = new Map([
  ['string', 'text in quotes'],
  ['number', 'a number'],
  ['int', 'a whole number'],
  ['boolean', 'true or false'],
  ['array', 'a list [ … ]'],
  ['object', 'an object { … }'],
  ['record', 'an object { … }'],
]);

function oneOf(values: readonly unknown[]): string {
  const quoted = values.map((value) => JSON.stringify(value));
  return quoted.length === 1 ? quoted[0]! : `one of ${quoted.join(', ')}`;
}

function least(issue: z.core.$ZodIssueTooSmall | { origin?: string; minimum?: unknown; inclusive?: boolean }): string {
  if (issue.origin === 'array') {
    return `a list of ${issue.minimum} or more`;
  }
  if (issue.origin === 'string') {
    return 'text that is not empty';
  }
  return issue.inclusive === false ? `more than ${issue.minimum}` : `${issue.minimum} or more`;
}
