import { html, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { LengthUnit } from '../quilt/quilt.ts';
import { EXAMPLES } from './examples.ts';
import { freshId, PageElement } from './page-element.ts';

/** What the file bar asks of the app. */
export type FileWish = 'new' | 'save' | 'undo' | 'redo' | 'print' | { readonly example: number };

/** Open, save, undo, redo, print, and the unit that is shown. */
@customElement('yw-file-bar')
export class FileBar extends PageElement {
  @property({ type: Boolean }) canUndo = false;
  @property({ type: Boolean }) canRedo = false;
  @property({ type: Boolean }) canPrint = false;
  @property() shown: LengthUnit = 'in';
  private readonly fileId = freshId('file');
  private readonly unitId = freshId('unit');

  protected override render(): TemplateResult {
    return html`<div class="file-bar" role="group" aria-label="This quilt">
      ${this.button('new', html`<span class="more">Begin a </span><span class="begins">new</span><span class="more"> quilt</span>`)}
      <label class="button" for=${this.fileId}><span>Open<span class="more"> a file</span></span>
        <input id=${this.fileId} type="file" accept=".json,application/json" @change=${this.onFile} />
      </label>
      ${this.examples()} ${this.button('save', html`Save<span class="more"> to a file</span>`)}
      ${this.button('undo', html`Undo`, !this.canUndo)} ${this.button('redo', html`Redo`, !this.canRedo)}
      ${this.button('print', html`Print…`, !this.canPrint)}
      <span class="unit-choice">
        <label for=${this.unitId} class="more">Lengths in</label>
        <select id=${this.unitId} @change=${this.onUnit}>
          <option value="in" .selected=${live(this.shown === 'in')}>inches</option>
          <option value="cm" .selected=${live(this.shown === 'cm')}>centimetres</option>
        </select>
      </span>
    </div>`;
  }

  private examples(): TemplateResult {
    return html`<details class="menu" @keydown=${this.onMenuKey} @focusout=${this.onMenuLeft}>
      <summary class="button"><span><span class="more">Open an </span><span class="begins">example</span></span></summary>
      <ul>
        ${EXAMPLES.map(
          ({ name, about }, example) => html`<li>
            <button type="button" @click=${(event: Event) => this.onExample(event, example)}><strong>${name}</strong> ${about}</button>
          </li>`,
        )}
      </ul>
    </details>`;
  }

  private button(wish: FileWish, words: TemplateResult, disabled = false): TemplateResult {
    return html`<button type="button" ?disabled=${disabled} @click=${() => this.send(wish)}><span>${words}</span></button>`;
  }

  private send(wish: FileWish): void {
    this.dispatchEvent(new CustomEvent<FileWish>('yw-wish', { detail: wish, bubbles: true }));
  }

  private onExample(event: Event, example: number): void {
    closeMenu(event);
    this.send({ example });
  }

  private onMenuKey(event: KeyboardEvent): void {
    if (event.key === 'Escape') {
      closeMenu(event);
    }
  }

  private onMenuLeft(event: FocusEvent): void {
    const menu = event.currentTarget as HTMLDetailsElement;
    // Where a browser gives a button no focus when it is pressed, nothing is known of where the focus went.
    if (event.relatedTarget instanceof Node && !menu.contains(event.relatedTarget)) {
      menu.open = false;
    }
  }

  private onFile(event: Event): void {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (file !== undefined) {
      this.dispatchEvent(new CustomEvent<File>('yw-open', { detail: file, bubbles: true }));
    }
    // The same file chosen again, once mended, must be a change again.
    input.value = '';
  }

  private onUnit(event: Event): void {
    const unit = (event.target as HTMLSelectElement).value as LengthUnit;
    this.dispatchEvent(new CustomEvent<LengthUnit>('yw-unit', { detail: unit, bubbles: true }));
  }
}

/** The focus goes back to what opened the menu. */
function closeMenu(event: Event): void {
  const menu = (event.target as Element).closest('details');
  if (menu !== null) {
    menu.open = false;
    menu.querySelector('summary')?.focus();
  }
}
