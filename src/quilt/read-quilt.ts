/** The one way in for quilt files: text from outside becomes a quilt, or an error that says what is wrong with it. */
import { faultsBetweenFields } from './check-quilt.ts';
import { QUILT_FORMAT, QUILT_VERSION, type Quilt } from './quilt.ts';
import { quiltSchema } from './quilt-schema.ts';
import { type Fault, fieldName, found, wordsFor } from './say-fault.ts';
import { whereTextEnds } from './where-text-ends.ts';

export class QuiltFileError extends Error {
  /** One or several, each with its field and what was expected there. */
  readonly messages: readonly string[];

  constructor(messages: readonly string[]) {
    super(messages.join('\n'));
    this.name = 'QuiltFileError';
    this.messages = messages;
  }
}

/**
 * Reads and checks a quilt file.
 * @param text the file as it stands, JSON
 * @throws QuiltFileError with a message for every fault found
 */
export function readQuilt(text: string): Quilt {
  const data = readJson(text);
  checkFormatAndVersion(data);
  const result = quiltSchema.safeParse(data, { error: wordsFor });
  if (!result.success) {
    throw faulty(result.error.issues);
  }
  const faults = faultsBetweenFields(result.data);
  if (faults.length > 0) {
    throw faulty(faults);
  }
  return result.data;
}

function faulty(faults: readonly Fault[]): QuiltFileError {
  return new QuiltFileError(
    faults.map(({ path, message }) => (path.length === 0 ? `the file ${message}` : `${fieldName(path)}: ${message}`)),
  );
}

function readJson(text: string): unknown {
  if (text.trim() === '') {
    throw new QuiltFileError(['the file is empty; expected a Yardwright quilt']);
  }
  try {
    return JSON.parse(text);
  } catch (error) {
    const ending = whereTextEnds(text);
    if (ending !== null) {
      const inside = ending.path.length === 0 ? '' : `, inside ${fieldName(ending.path)}`;
      throw new QuiltFileError([`the file is cut short: it ends at line ${ending.line}${inside}, with more expected`]);
    }
    throw new QuiltFileError([`the file is not JSON: ${error instanceof Error ? error.message : String(error)}`]);
  }
}

/** Told before all else: a file of another kind or version would only give a list of misleading faults. */
function checkFormatAndVersion(data: unknown): void {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    throw new QuiltFileError([`expected a Yardwright quilt, an object { … }; ${found(data)}`]);
  }
  const { format, version } = data as { readonly format?: unknown; readonly version?: unknown };
  if (format !== QUILT_FORMAT) {
    throw new QuiltFileError([`format: expected "${QUILT_FORMAT}", the mark of a quilt file; ${found(format)}`]);
  }
  if (version !== QUILT_VERSION) {
    throw new QuiltFileError([
      typeof version === 'number'
        ? `version: this file is version ${version}; this Yardwright reads version ${QUILT_VERSION}`
        : `version: expected the number ${QUILT_VERSION}; ${found(version)}`,
    ]);
  }
}
