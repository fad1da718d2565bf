import { paperTextWidth } from '../draw/paper-text.ts';

/** Between words, but not within "6 1/2". */
const BREAKS = / (?!(?<=\d )\d{1,2}\/\d)/;

/** A text in lines no wider than `width`, broken between words; a word that is wider alone is broken within. */
export function wrapText(text: string, width: number, size: number, isBold: boolean): readonly string[] {
  const fits = (line: string): boolean => paperTextWidth(line, size, isBold) <= width;
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(BREAKS).flatMap((whole) => pieces(whole, fits))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && !fits(longer)) {
      lines.push(line);
      line = word;
    } else {
      line = longer;
    }
  }
  return line === '' && lines.length > 0 ? lines : [...lines, line];
}

function pieces(word: string, fits: (line: string) => boolean): readonly string[] {
  if (fits(word)) return [word];
  const found: string[] = [];
  let part = '';
  for (const letter of word) {
    if (part !== '' && !fits(part + letter)) {
      found.push(part);
      part = letter;
    } else {
      part += letter;
    }
  }
  return part === '' ? found : [...found, part];
}
