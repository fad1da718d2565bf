import { LitElement } from 'lit';

/**
 * What every element of the page is built on. They render into the page itself and not into shadow trees: one style sheet
 * then serves screen and paper, labels may name fields across elements, and a pointer is followed from one listener.
 */
export class PageElement extends LitElement {
  protected override createRenderRoot(): HTMLElement {
    return this;
  }
}

let last = 0;

/** An id that no other element of the page has. */
export const freshId = (kind: string): string => `${kind}-${++last}`;
