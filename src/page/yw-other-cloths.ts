import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Problem } from '../cutting/cut-list.ts';
import type { Cloth, Quilt } from '../quilt/quilt.ts';
import { addCloth, freeId, newCloth, removeCloth } from './cloth-edits.ts';
import { sendEdit } from './edit-event.ts';
import { printWords } from './facing-words.ts';
import { PageElement } from './page-element.ts';
import { problemNotes } from './problem-notes.ts';
import { swatch } from './swatch.ts';
import { UNITS, type Units } from './written.ts';
import './yw-cloth-fold.ts';

/** After so many frames she has gone on to something else. */
const FRAMES_MOST = 120;

/** The cloths that the scheme does not use, and the way to add one. */
@customElement('yw-other-cloths')
export class OtherCloths extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) cloths: readonly Cloth[] = [];
  @property({ attribute: false }) problems: readonly Problem[] = [];
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  /** The one just added, to be named. */
  @state() private added: string | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { quilt } = this;
    if (quilt === null) {
      return nothing;
    }
    return html`<section class="other-cloths" aria-label="Cloths not in this scheme">
      <header>
        <h3>Not in this scheme</h3>
        <button type="button" @click=${() => this.add(quilt)}>Add a cloth</button>
      </header>
      ${this.cloths.length === 0 ? html`<p class="hint">It uses every cloth of the quilt.</p>` : nothing}
      ${repeat(
        this.cloths,
        ({ id }) => id,
        (cloth) => this.card(quilt, cloth),
      )}
    </section>`;
  }

  private card(quilt: Quilt, cloth: Cloth): TemplateResult {
    const users = quilt.schemes.filter((scheme) => Object.values(scheme.cloths).flat().includes(cloth.id));
    return html`<article class="other-cloth" aria-label=${cloth.name} data-cloth=${cloth.id}>
      <header>
        ${swatch(cloth)}
        <h4>${cloth.name}</h4>
        <p class="hint">${printWords(cloth.print)}</p>
        ${
          users.length > 0
            ? html`<p class="hint">used by ${users.map(({ name }) => `“${name}”`).join(' and ')}</p>`
            : html`<button type="button" @click=${() => sendEdit(this, removeCloth(cloth.id))}>Take ${cloth.name} out of the quilt</button>`
        }
      </header>
      ${problemNotes(this.problems.filter((problem) => problem.cloth === cloth.id))}
      <yw-cloth-fold .cloth=${cloth} .units=${this.units} ?open=${cloth.id === this.added}></yw-cloth-fold>
    </article>`;
  }

  private add(quilt: Quilt): void {
    const cloth = newCloth(quilt, freeId('cloth', quilt.cloths));
    if (sendEdit(this, addCloth(cloth)) === null) {
      this.added = cloth.id;
      void this.startNaming(cloth.id);
    }
  }

  /** Its name is the first thing that a new cloth needs; a busy page may take more than a frame to show where it is written. */
  private async startNaming(id: string): Promise<void> {
    for (let frame = 0; frame < FRAMES_MOST && this.added === id; frame++) {
      await new Promise(requestAnimationFrame);
      const name = this.querySelector<HTMLInputElement>(`[data-cloth="${CSS.escape(id)}"] yw-text-field input`);
      if (name) {
        name.focus();
        name.select();
        return;
      }
    }
  }
}
