/** What was asked about a plan, and what came of it so far: plain data that never changes once told. */
import type { Change } from '../plan/give-up.ts';
import type { Version, VersionKind } from '../plan/side-by-side.ts';
import type { Try } from '../plan/try-with-hand.ts';
import type { Length, Quilt } from '../quilt/quilt.ts';

/** stopped: by her, or because the quilt was changed meanwhile. */
export type AskedStatus = 'working' | 'answered' | 'stopped' | 'failed';

interface Asked {
  /** As it was when it was asked; out of date where the quilt is another by now. */
  readonly quilt: Quilt;
  readonly status: AskedStatus;
  /** Why it failed. */
  readonly error: string | null;
}

/** What facing and room cost, beside the rule of thumb. */
export interface PricesAsked extends Asked {
  readonly versions: ReadonlyMap<VersionKind, Version>;
}

/** Whether so much of a cloth will do. */
export interface HandAsked extends Asked {
  readonly cloth: string;
  readonly have: Length;
  /** What is being tried and has no answer yet. */
  readonly open: readonly (readonly Change[])[];
  /** In the order in which they were asked for. */
  readonly tries: readonly Try[];
}

export interface Questions {
  readonly prices: PricesAsked | null;
  /** By cloth. */
  readonly hands: ReadonlyMap<string, HandAsked>;
}
