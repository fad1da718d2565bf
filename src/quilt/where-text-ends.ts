/** Finds out whether a JSON text was cut short, and where, so that a damaged file can be told from a mistyped one. */

interface Open {
  readonly kind: '{' | '[';
  key: string | number;
}

export interface Ending {
  /** Of the last character, from 1. */
  readonly line: number;
  /** The way to what was being written. */
  readonly path: readonly (string | number)[];
}

/** Where a text ends that still has something open: a bracket, a brace or a quotation. null when nothing is open. */
export function whereTextEnds(text: string): Ending | null {
  const stack: Open[] = [];
  let lastText = '';
  let at = 0;
  while (at < text.length) {
    const sign = text[at]!;
    const top = stack.at(-1);
    if (sign === '"') {
      const end = endOfQuotation(text, at);
      if (end === null) {
        return ending(text, stack);
      }
      lastText = text.slice(at + 1, end);
      at = end;
    } else if (sign === '{' || sign === '[') {
      stack.push({ kind: sign, key: sign === '{' ? '' : 0 });
    } else if (sign === '}' || sign === ']') {
      stack.pop();
    } else if (sign === ':' && top?.kind === '{') {
      top.key = lastText;
    } else if (sign === ',' && typeof top?.key === 'number') {
      top.key += 1;
    }
    at += 1;
  }
  return stack.length > 0 ? ending(text, stack) : null;
}

function endOfQuotation(text: string, start: number): number | null {
  for (let at = start + 1; at < text.length; at++) {
    if (text[at] === '\\') {
      at += 1;
    } else if (text[at] === '"') {
      return at;
    }
  }
  return null;
}

function ending(text: string, stack: readonly Open[]): Ending {
  const path = stack.map((open) => open.key).filter((key) => key !== '');
  return { line: text.trimEnd().split('\n').length, path };
}
