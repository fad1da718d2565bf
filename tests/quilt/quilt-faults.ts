/** Quilt files for tests, and what is said of those at fault. */
import { readFileSync } from 'node:fs';
import { QuiltFileError, readQuilt } from '../../src/quilt/read-quilt.ts';

export const fixture = (name: string) => readFileSync(new URL(`fixtures/${name}`, import.meta.url), 'utf8');
export const scenario = (name: string) =>
  readFileSync(new URL(`../../scenarios/${name}.yardwright.json`, import.meta.url), 'utf8');

/** The messages for a text that is not a quilt file. */
export function messagesFor(text: string): readonly string[] {
  try {
    readQuilt(text);
  } catch (error) {
    if (error instanceof QuiltFileError) {
      return error.messages;
    }
    throw error;
  }
  throw new Error('it was read without complaint');
}

/** The messages for a sound quilt after a change to its data. */
export function messagesAfter(
  // biome-ignore lint/suspicious/noExplicitAny: faults are planted that the type would not let pass
  change: (quilt: any) => void,
  base = fixture('one-square.yardwright.json'),
): readonly string[] {
  const quilt = JSON.parse(base);
  change(quilt);
  return messagesFor(JSON.stringify(quilt));
}
