import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { addBlock } from '../quilt/add-block.ts';
import type { Quilt } from '../quilt/quilt.ts';
import type { DrawnEvent } from './drawn-event.ts';
import { sendEdit } from './edit-event.ts';
import { focusSoon } from './focus-soon.ts';
import { freshId, PageElement } from './page-element.ts';
import { UNITS, type Units } from './written.ts';
import './svg/yw-svg-import.ts';
import './trace/yw-trace.ts';
import './yw-add-form.ts';
import './yw-measured.ts';

type Way = 'numbers' | 'measured' | 'drawing' | 'picture';

interface WayOffered {
  readonly way: Way;
  readonly words: string;
  readonly about: string;
}

const WAYS: readonly WayOffered[] = [
  { way: 'numbers', words: 'From numbers', about: 'a star, a ring, a border: choose it, say how large' },
  { way: 'measured', words: 'From measured pieces', about: 'sizes typed in, or pasted from a spreadsheet' },
  { way: 'drawing', words: 'From an SVG drawing', about: 'saved from a drawing program, at its true size' },
  { way: 'picture', words: 'Traced from a picture', about: 'a photo or scan of a page of your own' },
];

/**
 * The bench at which a block is made before it is put into the quilt, over the rest of the page. What was begun in one way is
 * kept while she looks at another, or puts the bench away.
 */
@customElement('yw-add-block')
export class AddBlock extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private way: Way = 'numbers';
  /** Whether the bench has been opened yet; what is on it is not made before. */
  @state() private opened = false;
  @state() private fault: string | null = null;
  private visited: ReadonlySet<Way> = new Set(['numbers']);
  private readonly stem = freshId('add-block');

  /** Lays the bench open. */
  async open(): Promise<void> {
    this.opened = true;
    this.fault = null;
    await this.updateComplete;
    this.dialog?.showModal();
    // The first choice is the first thing to do; the browser would take the way out, which comes first in the page.
    await focusSoon(this, WAYS.length > 1 ? '.block-ways :checked' : '.forms :checked');
  }

  protected override render(): TemplateResult {
    return html`<dialog class="bench" aria-labelledby="${this.stem}-title" @yw-drawn=${this.onDrawn}>
      ${this.opened && this.quilt !== null ? this.contents(this.quilt) : nothing}
    </dialog>`;
  }

  private contents(quilt: Quilt): TemplateResult {
    return html`
      <header class="row">
        <h2 id="${this.stem}-title">Add a block</h2>
        <button type="button" @click=${() => this.dialog?.close()}>Put away</button>
      </header>
      ${WAYS.length === 1 ? nothing : this.ways()}
      ${this.fault === null ? nothing : html`<p class="fault" role="alert">It was not put in: ${this.fault}</p>`}
      ${WAYS.filter(({ way }) => this.visited.has(way)).map(
        ({ way, words }) =>
          html`<section aria-label=${words} ?hidden=${way !== this.way}>${this.maker(way, quilt)}</section>`,
      )}
    `;
  }

  private ways(): TemplateResult {
    return html`<fieldset class="block-ways">
      <legend>How will you make it?</legend>
      ${WAYS.map(
        ({ way, words, about }) => html`<label class="way">
          <input
            type="radio"
            name="${this.stem}-way"
            .checked=${live(way === this.way)}
            @change=${() => this.choose(way)}
          />
          <span><strong>${words}</strong> <span class="hint">${about}</span></span>
        </label>`,
      )}
    </fieldset>`;
  }

  private maker(way: Way, quilt: Quilt): TemplateResult {
    switch (way) {
      case 'numbers':
        return html`<yw-add-form .quilt=${quilt} .units=${this.units}></yw-add-form>`;
      case 'measured':
        return html`<yw-measured .quilt=${quilt} .units=${this.units}></yw-measured>`;
      case 'drawing':
        return html`<yw-svg-import .quilt=${quilt} .units=${this.units}></yw-svg-import>`;
      case 'picture':
        return html`<yw-trace .quilt=${quilt} .units=${this.units}></yw-trace>`;
    }
  }

  private choose(way: Way): void {
    this.visited = new Set([...this.visited, way]);
    this.way = way;
    this.fault = null;
  }

  private onDrawn(event: DrawnEvent): void {
    event.stopPropagation();
    const { detail } = event;
    let block = '';
    this.fault = sendEdit(this, (quilt) => {
      const added = addBlock(quilt, detail);
      block = added.block;
      return added.quilt;
    });
    if (this.fault === null) {
      this.dialog?.close();
      this.dispatchEvent(new CustomEvent<string>('yw-block-added', { detail: block, bubbles: true }));
    }
  }

  private get dialog(): HTMLDialogElement | null {
    return this.querySelector('dialog');
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-add-block': AddBlock;
  }
}
