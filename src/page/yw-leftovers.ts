import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { usualKeep } from '../plan/leftovers.ts';
import { sayLeftovers } from '../plan/say-leftovers.ts';
import { changesShelf, shelveLeftovers } from '../plan/shelve-leftovers.ts';
import type { Tally } from '../plan/tally.ts';
import { convert } from '../quilt/measure.ts';
import type { Length, Quilt } from '../quilt/quilt.ts';
import { sendEdit } from './edit-event.ts';
import { setQuilt } from './edits.ts';
import { PageElement } from './page-element.ts';
import { swatch } from './swatch.ts';
import { UNITS, type Units } from './written.ts';
import './yw-field.ts';

/** What the plan leaves that is worth keeping, how large that must be, and the way back to the shelf list. */
@customElement('yw-leftovers')
export class Leftovers extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) tally: Tally | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  /** The tally is of a former choice, so its leftovers are not those of the quilt. */
  @property({ type: Boolean }) former = false;

  protected override render(): TemplateResult | typeof nothing {
    const { quilt, tally } = this;
    if (quilt === null || tally === null) {
      return nothing;
    }
    const left = tally.cloths.filter(({ leftovers }) => leftovers.length > 0);
    return html`<h3>Back on the shelf</h3>
      ${
        left.length === 0
          ? html`<p class="left-none">Nothing so large is left.</p>`
          : html`<ul class="left">
              ${left.map(
                ({ cloth, name, leftovers }) => html`<li>
                  ${swatch(quilt.cloths.find((one) => one.id === cloth))} <strong>${name}</strong>:
                  ${sayLeftovers(leftovers, this.units.shown, convert(1, this.units.quilt, this.units.shown))}
                </li>`,
              )}
            </ul>`
      }
      <yw-length-field
        label="Worth keeping from"
        hint="both sides at least so long; what is smaller counts as waste"
        .value=${quilt.keep ?? usualKeep(quilt)}
        .units=${this.units}
        .edit=${(keep: Length) => setQuilt({ keep })}
      ></yw-length-field>
      <p>
        <button type="button" class="shelve" ?disabled=${this.former || !changesShelf(tally)} @click=${() => this.shelve(tally)}>
          It is cut: bring the shelf list up to date
        </button>
      </p>
      <p class="hint">
        The pieces that this plan uses come off the shelf list, what is left goes on, and the plan is made anew with
        them. Undo takes it back.
      </p>`;
  }

  private shelve(tally: Tally): void {
    sendEdit(this, (quilt) => shelveLeftovers(quilt, tally));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-leftovers': Leftovers;
  }
}
