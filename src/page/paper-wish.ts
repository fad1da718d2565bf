/** What is asked of the worker that makes paper, and what it answers. */
import type { PaperChoice, PaperKind } from '../paper/paper-choice.ts';
import type { LengthUnit } from '../quilt/quilt.ts';
import type { Plan } from './plan-state.ts';

export interface PaperWish extends PaperChoice {
  readonly kinds: readonly PaperKind[];
  readonly plan: Plan;
  readonly shown: LengthUnit;
}

export type PaperReply =
  | { readonly kind: 'progress'; readonly doing: string }
  | { readonly kind: 'done'; readonly bytes: Uint8Array<ArrayBuffer>; readonly pages: number }
  | { readonly kind: 'failed'; readonly why: string };
