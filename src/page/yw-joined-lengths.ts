import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { CutList } from '../cutting/cut-list.ts';
import type { Length, Quilt } from '../quilt/quilt.ts';
import { isFrame, laidSideBySide, quiltSize, reckonedSize } from '../quilt/quilt-size.ts';
import { freeId } from './cloth-edits.ts';
import { sendEdit } from './edit-event.ts';
import { addJoined, JOINED_SORTS, type JoinedSort, setFinished } from './joined-edits.ts';
import { PageElement } from './page-element.ts';
import { UNITS, type Units, written } from './written.ts';
import './yw-joined-form.ts';

/** After so many frames she has gone on to something else. */
const FRAMES_MOST = 120;

/** Binding, sashing, borders and backing: what is joined up from the cloth's width, and the way to add some. */
@customElement('yw-joined-lengths')
export class JoinedLengths extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) cutList: CutList | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };

  protected override render(): TemplateResult | typeof nothing {
    const { quilt } = this;
    if (quilt === null) {
      return nothing;
    }
    return html`
      ${this.finished(quilt)}
      ${repeat(
        quilt.joined,
        ({ id }) => id,
        (joined) => html`<yw-joined-form
          data-joined=${joined.id}
          .quilt=${quilt}
          .joined=${joined}
          .cutList=${this.cutList}
          .units=${this.units}
        ></yw-joined-form>`,
      )}
      <div class="add-joined">
        ${JOINED_SORTS.map(
          (
            sort,
          ) => html`<button type="button" ?disabled=${quilt.cloths.length === 0} @click=${() => this.add(quilt, sort)}>
            Add ${sort.toLowerCase()}
          </button>`,
        )}
      </div>
    `;
  }

  /** The quilt's size, from which what follows it is reckoned; and how it was come by. */
  private finished(quilt: Quilt): TemplateResult {
    const reckoned = reckonedSize(quilt);
    const size = quiltSize(quilt);
    const field = (label: string, side: 'width' | 'length') => html`<yw-length-field
      label=${label}
      hint="finished, borders and all"
      optional
      .value=${quilt.finished?.[side] ?? null}
      .units=${this.units}
      .edit=${(value: Length) =>
        setFinished({
          width: quilt.finished?.width ?? size.width,
          length: quilt.finished?.length ?? size.length,
          [side]: value,
        })}
      .clear=${() => setFinished(null)}
    ></yw-length-field>`;
    const { abreast, rows } = laidSideBySide(quilt);
    const told = `${written(reckoned.width, this.units)} by ${written(reckoned.length, this.units)}`;
    return html`<fieldset class="joined">
      <legend>How large is the quilt?</legend>
      <div class="cloth-numbers">${field('Width', 'width')} ${field('Length', 'length')}</div>
      <p class="hint">
        Left empty it is ${told}: ${
          quilt.blocks.some(isFrame)
            ? 'what frames the blocks, and the borders here'
            : `the blocks side by side, ${abreast} across and ${rows} down, with the sashing and borders here`
        }. Lengths that follow it change with it.
      </p>
    </fieldset>`;
  }

  private add(quilt: Quilt, sort: JoinedSort): void {
    const id = freeId(sort.toLowerCase(), quilt.joined);
    if (sendEdit(this, addJoined(sort, id, quilt.cloths[0]!.id)) === null) {
      void this.focusOn(id);
    }
  }

  /** Its form comes with the page's next look at the quilt, which may be a few frames off. */
  private async focusOn(id: string): Promise<void> {
    for (let frame = 0; frame < FRAMES_MOST; frame++) {
      await new Promise(requestAnimationFrame);
      const first = this.querySelector<HTMLInputElement>(`[data-joined="${CSS.escape(id)}"] yw-length-field input`);
      if (first) {
        first.focus();
        first.select();
        return;
      }
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-joined-lengths': JoinedLengths;
  }
}
