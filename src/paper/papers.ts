/** All that can be printed of a planned quilt, paper by paper: start reading this folder here. */
import type { CutList } from '../cutting/cut-list.ts';
import type { Drawing } from '../draw/display-list.ts';
import type { PlanJob } from '../plan/answerer.ts';
import type { LayoutAnswer } from '../plan/layout-job.ts';
import type { Tally } from '../plan/tally.ts';
import { convert, lengthIn } from '../quilt/measure.ts';
import type { LengthUnit, Quilt, Scheme } from '../quilt/quilt.ts';
import { bagLabels } from './bag-labels.ts';
import { bookletPages } from './booklet-pages.ts';
import { makePieces } from './make-pieces.ts';
import type { PaperChoice, PaperKind } from './paper-choice.ts';
import { piecePages } from './piece-pages.ts';
import { sewingSheet } from './sewing-sheet.ts';
import { shoppingSlip } from './shopping-slip.ts';

export interface PapersInput extends PaperChoice {
  readonly quilt: Quilt;
  readonly cutList: CutList;
  /** In the order of the groups. */
  readonly answers: readonly LayoutAnswer[];
  readonly tally: Tally;
  /** The unit in which lengths are told. */
  readonly shown: LengthUnit;
  /** Packs pieces of paper on sheets. */
  readonly plan: PlanJob;
}

/** The pages of one paper, in inches; none where the quilt has nothing for it. */
export async function paperPages(kind: PaperKind, input: PapersInput): Promise<readonly Drawing[]> {
  const { quilt, cutList, paper, foundation, plan } = input;
  const scheme = schemeOf(quilt);
  const blanks = cutList.groups.flatMap((group) => group.blanks);
  switch (kind) {
    case 'foundations':
    case 'templates': {
      const wanted = kind === 'foundations' ? 'foundation' : 'template';
      const pieces = makePieces({ quilt, scheme, blanks, foundation }).filter((piece) => piece.kind === wanted);
      return piecePages({
        pieces,
        quiltName: quilt.name,
        paper,
        foundation,
        plan,
        shown: input.shown,
        allowance: convert(lengthIn(quilt.unit, quilt.allowance), quilt.unit, 'in'),
      });
    }
    case 'labels':
      return bagLabels(input);
    case 'sewing': {
      const pieces = makePieces({ quilt, scheme, blanks, foundation });
      return sewingSheet({ ...input, scheme, foundations: pieces.filter((piece) => piece.kind === 'foundation') });
    }
    case 'slip':
      return shoppingSlip(input);
    case 'booklet':
      return bookletPages(input);
  }
}

export const schemeOf = (quilt: Quilt): Scheme =>
  quilt.schemes.find(({ id }) => id === quilt.scheme) ?? { id: '', name: '', cloths: {} };
