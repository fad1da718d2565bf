import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Tally } from '../plan/tally.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { cautions } from './cautions.ts';
import { PageElement } from './page-element.ts';
import { problemNotes } from './problem-notes.ts';
import type { HandAsked } from './questions.ts';
import type { ShownRolls } from './shown-rolls.ts';
import { UNITS, type Units } from './written.ts';
import './yw-cloth-roll.ts';
import './yw-other-cloths.ts';

const ZOOMS: readonly { readonly times: number; readonly words: string }[] = [
  { times: 1, words: 'to fit' },
  { times: 1.5, words: 'half as large again' },
  { times: 2, words: 'twice as large' },
  { times: 3, words: 'three times as large' },
];

/** The middle of the table: every cloth unrolled, with the care that cutting asks for. */
@customElement('yw-cloth-side')
export class ClothSide extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) shown: ShownRolls | null = null;
  @property({ attribute: false }) hands: ReadonlyMap<string, HandAsked> = new Map();
  /** Of the plan as it stands; null while there is none of the present choice. */
  @property({ attribute: false }) tally: Tally | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private zoom = 1;

  protected override render(): TemplateResult | typeof nothing {
    const { shown } = this;
    if (shown === null) {
      return nothing;
    }
    return html`
      <header class="cloth-head">
        <h2 id="cloth-title">The cloth, unrolled</h2>
        ${this.zoomChoice()}
      </header>
      <p class="legend">
        The cut end lies before you, and strips are numbered as they are cut. An arrow is the print’s up. Close hatching is
        waste, wide hatching is left over, dots are trimmed off to square the end. A name that ends in “m” is mirrored; a star after it warns of another blank that looks like it.
        Point at a name or a piece to see where it goes.
      </p>
      ${problemNotes(shown.homeless)}
      <div class="rolls">
        ${repeat(
          shown.rolls,
          ({ cloth }) => cloth.id,
          (roll) => html`<yw-cloth-roll
            .quilt=${this.quilt}
            .cloth=${roll.cloth}
            .tally=${this.tally}
            .hand=${this.hands.get(roll.cloth.id) ?? null}
            .roll=${roll.roll}
            .bags=${roll.plan}
            .problems=${roll.problems}
            .status=${roll.status}
            .former=${roll.former}
            .coming=${roll.coming}
            .units=${this.units}
            .zoom=${this.zoom}
          ></yw-cloth-roll>`,
        )}
      </div>
      <yw-other-cloths
        .quilt=${this.quilt}
        .cloths=${shown.others}
        .problems=${shown.otherProblems}
        .units=${this.units}
      ></yw-other-cloths>
      ${cautions()}
    `;
  }

  private zoomChoice(): TemplateResult {
    return html`<span class="field zoom">
      <label for="zoom">Drawn</label>
      <select id="zoom" @change=${this.onZoom}>
        ${ZOOMS.map(({ times, words }) => html`<option value=${times}>${words}</option>`)}
      </select>
    </span>`;
  }

  private onZoom(event: Event): void {
    this.zoom = Number((event.target as HTMLSelectElement).value);
  }
}
