/** A planned quilt as PDF files to print. */

import { PAPER_KINDS, type PaperChoice, usualChoice } from '../paper/paper-choice.ts';
import { paperPages } from '../paper/papers.ts';
import type { PlanJob } from '../plan/answerer.ts';
import { paperFaces } from './paper-faces.ts';
import type { PlannedQuilt } from './plan-text.ts';

export interface PaperFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export async function paperFiles(
  planned: PlannedQuilt,
  wished: Partial<PaperChoice>,
  plan: PlanJob,
): Promise<readonly PaperFile[]> {
  // The library that writes PDFs is only loaded where one is wanted.
  const { toPdf } = await import('../draw/to-pdf.ts');
  const choice = { ...usualChoice(planned.quilt.unit), ...wished };
  const files: PaperFile[] = [];
  for (const kind of PAPER_KINDS) {
    const pages = await paperPages(kind, { ...planned, ...choice, shown: planned.quilt.unit, plan });
    if (pages.length > 0) {
      const title = `${planned.quilt.name}: ${kind}`;
      files.push({ name: `${kind}.pdf`, bytes: toPdf({ title, pages, scale: 72, faces: paperFaces() }) });
    }
  }
  return files;
}
