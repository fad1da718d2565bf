import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { PICTURE_TYPES, type Picture, readPicture } from '../../keep/picture.ts';
import type { Block } from '../../quilt/quilt.ts';
import type { TracedFrom } from '../../quilt/tracing/traced-from.ts';
import { PageElement } from '../page-element.ts';

/** A tracing in the quilt file that is to be gone on with. */
export interface GoOn {
  readonly name: string;
  readonly traced: TracedFrom;
}

/**
 * The picture to trace on: a file of her own, or what an earlier tracing was made on. Fires `yw-picture` with a Picture, `yw-go-on`
 * with a GoOn, `yw-afresh`.
 */
@customElement('yw-trace-picture')
export class TracePicture extends PageElement {
  /** The name of the picture that is there already. */
  @property({ attribute: false }) present: string | null = null;
  @property({ attribute: false }) blocks: readonly Block[] = [];
  @state() private reading = false;
  @state() private fault: string | null = null;

  protected override render(): TemplateResult {
    const kept = this.blocks.flatMap(({ name, traced }) => (traced === undefined ? [] : [{ name, traced }]));
    return html`<div class="trace-drop" @drop=${this.onDrop}>
      <p>A photo or a scan of a page of your own: PNG, JPEG or WebP, up to 40 MB.</p>
      <label class="button"
        >${this.reading ? 'Reading…' : 'Choose a picture'}
        <input type="file" accept=${PICTURE_TYPES} @change=${this.onChosen} />
      </label>
      <p class="fault" role="alert" ?hidden=${this.fault === null}>${this.fault ?? ''}</p>
      <p class="hint">
        Or drop it here. It stays in this browser, and goes into no file unless you ask for it. What your camera wrote into it (place,
        date) is left behind.
      </p>
      ${
        this.present === null
          ? nothing
          : html`<p>Now it is “${this.present}”. Another picture takes its place; what you traced stays.</p>
              <button type="button" class="quiet" @click=${() => this.fire('yw-afresh', null)}>
                Put picture and tracing away, and begin afresh
              </button>`
      }
      ${
        kept.length === 0
          ? nothing
          : html`<p>Traced before, and kept in this quilt:</p>
              <ul class="tags">
                ${kept.map(
                  (each) => html`<li>
                    <button type="button" class="tag" @click=${() => this.fire<GoOn>('yw-go-on', each)}>Go on with ${each.name}</button>
                  </li>`,
                )}
              </ul>`
      }
    </div>`;
  }

  private onChosen(event: Event): void {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (file !== undefined) void this.read(file);
    input.value = '';
  }

  private onDrop(event: DragEvent): void {
    event.preventDefault();
    // Else the page would take it for a quilt file.
    event.stopPropagation();
    const file = event.dataTransfer?.files[0];
    if (file !== undefined) void this.read(file);
  }

  private async read(file: File): Promise<void> {
    this.reading = true;
    const read = await readPicture(file);
    this.reading = false;
    this.fault = read.ok ? null : read.why;
    if (read.ok) this.fire<Picture>('yw-picture', read.picture);
  }

  private fire<Detail>(type: string, detail: Detail): void {
    this.dispatchEvent(new CustomEvent<Detail>(type, { detail, bubbles: true }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-trace-picture': TracePicture;
  }
}
