/** Files in and out of the page. Reading checks nothing: what the text means is read-quilt.ts's business. */
import type { Kept } from './storage.ts';

/** Far above any quilt; a film dropped by mistake is refused before it fills the memory. */
const LARGEST = 20_000_000;

/** The text of a file that she chose or dropped. */
export async function readTextFile(file: Blob & { readonly name: string }): Promise<Kept<string>> {
  if (file.size > LARGEST) {
    return { ok: false, why: `"${file.name}" is too large to be a quilt file (${Math.round(file.size / 1e6)} MB).` };
  }
  try {
    return { ok: true, value: await file.text() };
  } catch (error) {
    return { ok: false, why: `"${file.name}" could not be read: ${error instanceof Error ? error.message : error}` };
  }
}

/** "Solstice dial" as "solstice-dial.yardwright.json". */
export function fileNameOf(name: string, ending = 'yardwright.json'): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return `${plain === '' ? 'quilt' : plain}.${ending}`;
}

/** Hands the browser a file to save. */
export function saveTextFile(name: string, text: string, type = 'application/json'): void {
  saveFile(name, new Blob([text], { type }));
}

export function saveFile(name: string, contents: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(contents);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
