import { html, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { LengthUnit } from '../quilt/quilt.ts';
import { freshId, PageElement } from './page-element.ts';

/** What the file bar asks of the app. */
export type FileWish = 'save' | 'undo' | 'redo' | 'print' | 'fresh';

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
      <label class="button" for=${this.fileId}>Open a file
        <input id=${this.fileId} type="file" accept=".json,application/json" @change=${this.onFile} />
      </label>
      ${this.button('save', 'Save to a file')} ${this.button('undo', 'Undo', !this.canUndo)}
      ${this.button('redo', 'Redo', !this.canRedo)}
      ${this.button('print', 'Print the cutting page', !this.canPrint)} ${this.button('fresh', 'Open the example')}
      <span class="unit-choice">
        <label for=${this.unitId}>Lengths in</label>
        <select id=${this.unitId} @change=${this.onUnit}>
          <option value="in" ?selected=${this.shown === 'in'}>inches</option>
          <option value="cm" ?selected=${this.shown === 'cm'}>centimetres</option>
        </select>
      </span>
    </div>`;
  }

  private button(wish: FileWish, words: string, disabled = false): TemplateResult {
    return html`<button type="button" ?disabled=${disabled} @click=${() => this.send(wish)}>${words}</button>`;
  }

  private send(wish: FileWish): void {
    this.dispatchEvent(new CustomEvent<FileWish>('yw-wish', { detail: wish, bubbles: true }));
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
