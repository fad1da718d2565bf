import type { Quilt } from './quilt.ts';

/** Lists and objects that fit within this many characters stand on one line. */
const LINE = 100;

/**
 * The quilt as a file: JSON with two spaces of indent, coordinates and other small things on one line, a newline at the
 * end. The same quilt always gives the same text, so that a file under version control changes only where the quilt does.
 */
export function writeQuilt(quilt: Quilt): string {
  return `${write(quilt, '')}\n`;
}

function write(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) {
    return JSON.stringify(value);
  }
  const entries = Object.entries(value).filter(([, item]) => item !== undefined);
  const [open, close] = Array.isArray(value) ? ['[', ']'] : ['{', '}'];
  const key = (name: string) => (Array.isArray(value) ? '' : `${JSON.stringify(name)}: `);
  if (isSmall(entries.map(([, item]) => item))) {
    const inner = entries.map(([name, item]) => key(name) + write(item, '')).join(', ');
    const line = open === '{' && inner !== '' ? `{ ${inner} }` : open + inner + close;
    if (indent.length + line.length <= LINE) {
      return line;
    }
  }
  const deeper = `${indent}  `;
  const lines = entries.map(([name, item]) => `${deeper}${key(name)}${write(item, deeper)}`);
  return `${open}\n${lines.join(',\n')}\n${indent}${close}`;
}

/** Whether what it holds is plain, or plain lists and objects one level down: a corner, an arc, a facing. */
function isSmall(items: readonly unknown[]): boolean {
  const isPlain = (item: unknown): boolean => typeof item !== 'object' || item === null;
  return items.every((item) => isPlain(item) || Object.values(item as object).every(isPlain));
}
