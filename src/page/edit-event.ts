import type { Quilt } from '../quilt/quilt.ts';

/** From a quilt to the changed quilt. */
export type Edit = (quilt: Quilt) => Quilt;

/**
 * A wish to change the quilt, on its way up to the app, which answers before `dispatchEvent` returns: `refusal` then says
 * why the changed quilt would be no quilt, or stays null when the change was made.
 */
export class EditEvent extends Event {
  static readonly type = 'yw-edit';
  readonly edit: Edit;
  refusal: string | null = null;

  constructor(edit: Edit) {
    super(EditEvent.type, { bubbles: true, composed: true });
    this.edit = edit;
  }
}

/** Sends an edit up from an element; the refusal, or null. */
export function sendEdit(from: EventTarget, edit: Edit): string | null {
  const event = new EditEvent(edit);
  from.dispatchEvent(event);
  return event.refusal;
}

declare global {
  interface HTMLElementEventMap {
    [EditEvent.type]: EditEvent;
  }
}
