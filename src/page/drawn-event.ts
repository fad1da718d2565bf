import type { FormBlock } from '../quilt/add-block.ts';
import type { DrawnBlock } from '../quilt/drawn-block.ts';

/** A block that is ready to be put into the quilt, on its way up from where it was made. */
export type DrawnEvent = CustomEvent<DrawnBlock | FormBlock>;

/** Sends a block up from the element in which it was made. */
export function sendDrawn(from: EventTarget, drawn: DrawnBlock | FormBlock): void {
  from.dispatchEvent(new CustomEvent('yw-drawn', { detail: drawn, bubbles: true }));
}

declare global {
  interface HTMLElementEventMap {
    'yw-drawn': DrawnEvent;
  }
}
