/** Papers of a quilt, made as the command makes them but for the planning of cloth where no answer is needed. */
import { readFileSync } from 'node:fs';
import { paperFaces } from '../../src/cli/paper-faces.ts';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { toPdf } from '../../src/draw/to-pdf.ts';
import type { FoundationPaper, PaperKind } from '../../src/paper/paper-choice.ts';
import type { PaperSize } from '../../src/paper/paper-size.ts';
import { paperPages } from '../../src/paper/papers.ts';
import { makeTally } from '../../src/plan/make-tally.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { Packer } from '../../workers/packer.ts';
import { type PdfRead, readPdf } from './read-pdf.ts';

export const scenario = (name: string): Quilt =>
  readQuilt(readFileSync(new URL(`../../scenarios/${name}.yardwright.json`, import.meta.url), 'utf8'));

export interface PaperWish {
  readonly paper?: PaperSize;
  readonly foundation?: FoundationPaper;
}

/** Of papers that need no plan of the cloth. */
export async function unplannedPdf(quilt: Quilt, kind: PaperKind, wish: PaperWish = {}): Promise<PdfRead | null> {
  const cutList = makeCutList(quilt);
  const pages = await paperPages(kind, {
    quilt,
    cutList,
    answers: [],
    tally: makeTally(quilt, { groups: [], problems: [] }, []),
    paper: wish.paper ?? 'letter',
    foundation: wish.foundation ?? { kind: 'freezer', uses: 5 },
    shown: quilt.unit,
    slip: 'page',
    labels: { perSheet: 10, by: 'block' },
    plan: (job) => new Packer().plan({ ...job, seconds: 1 }),
  });
  return pages.length === 0 ? null : readPdf(toPdf({ title: kind, pages, scale: 72, faces: paperFaces() }));
}
