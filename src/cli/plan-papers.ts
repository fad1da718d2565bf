/** A planned quilt as PDF files to print. */

import type { LabelsBy, LabelsPerSheet } from '../paper/bag-labels.ts';
import type { FoundationPaper } from '../paper/make-pieces.ts';
import type { PaperSize } from '../paper/paper-size.ts';
import { PAPER_KINDS, paperPages, usualPaper } from '../paper/papers.ts';
import type { PlanJob } from '../plan/answerer.ts';
import { paperFaces } from './paper-faces.ts';
import type { PlannedQuilt } from './plan-text.ts';

export interface PaperChoice {
  /** Null: as the quilt's unit suggests. */
  readonly paper: PaperSize | null;
  readonly foundation: FoundationPaper;
  readonly labels: { readonly perSheet: LabelsPerSheet; readonly by: LabelsBy };
}

export interface PaperFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export async function paperFiles(
  planned: PlannedQuilt,
  choice: PaperChoice,
  plan: PlanJob,
): Promise<readonly PaperFile[]> {
  // The library that writes PDFs is only loaded where one is wanted.
  const { toPdf } = await import('../draw/to-pdf.ts');
  const paper = choice.paper ?? usualPaper(planned.quilt.unit);
  const files: PaperFile[] = [];
  for (const kind of PAPER_KINDS) {
    const pages = await paperPages(kind, { ...planned, ...choice, paper, plan });
    if (pages.length > 0) {
      const title = `${planned.quilt.name}: ${kind}`;
      files.push({ name: `${kind}.pdf`, bytes: toPdf({ title, pages, scale: 72, faces: paperFaces() }) });
    }
  }
  return files;
}
