import { readFileSync } from 'node:fs';
import type { PaperFaces } from '../draw/to-pdf.ts';

const face = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../draw/fonts/noto-sans-${name}.ttf`, import.meta.url)));

export const paperFaces = (): PaperFaces => ({ regular: face('regular'), bold: face('bold') });
