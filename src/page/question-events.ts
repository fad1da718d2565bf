import type { Try } from '../plan/try-with-hand.ts';
import type { Length } from '../quilt/quilt.ts';
import type { HandAsked } from './questions.ts';

/** What she asks of the app, on its way up. */
export type Asking =
  | { readonly what: 'prices' }
  | { readonly what: 'hand'; readonly cloth: string; readonly have: Length }
  /** @see Asker.stop */
  | { readonly what: 'stop'; readonly about: string | null }
  | { readonly what: 'take over'; readonly asked: HandAsked; readonly found: Try };

export class AskEvent extends Event {
  static readonly type = 'yw-ask';
  readonly asking: Asking;

  constructor(asking: Asking) {
    super(AskEvent.type, { bubbles: true, composed: true });
    this.asking = asking;
  }
}

declare global {
  interface HTMLElementEventMap {
    [AskEvent.type]: AskEvent;
  }
}
