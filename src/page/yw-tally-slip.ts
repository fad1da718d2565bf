import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Problem } from '../cutting/cut-list.ts';
import { sayMoney } from '../plan/say-money.ts';
import { saySteps } from '../plan/say-steps.ts';
import { BEGINNING } from '../plan/say-test-first.ts';
import { sayWashing } from '../plan/say-washing.ts';
import type { Areas, ClothTally, Proof, Tally } from '../plan/tally.ts';
import { whatLeastMeans } from '../plan/what-least-means.ts';
import type { Cloth, Length, Quilt } from '../quilt/quilt.ts';
import { areaShares } from './area-shares.ts';
import { setQuilt } from './edits.ts';
import { PageElement } from './page-element.ts';
import { swatch } from './swatch.ts';
import { UNITS, type Units, written, writtenPurchase } from './written.ts';
import './yw-leftovers.ts';

/** The shop slip: what to buy of each cloth, what it costs, how near the least possible, where the cloth goes. */
@customElement('yw-tally-slip')
export class TallySlip extends PageElement {
  /** The quilt being planned now, for the fields. */
  @property({ attribute: false }) quilt: Quilt | null = null;
  /** The quilt that the tally is of. */
  @property({ attribute: false }) planned: Quilt | null = null;
  @property({ attribute: false }) tally: Tally | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @property({ type: Boolean }) former = false;
  /** Of its cut list. */
  @property({ attribute: false }) problems: readonly Problem[] = [];
  /** What it costs to cut one block first, line by line. */
  @property({ attribute: false }) testFirst: readonly string[] = [];
  /** The first plan is on its way: what stands under it waits for it, so as not to move. */
  @property({ type: Boolean }) coming = false;

  protected override render(): TemplateResult {
    const { tally } = this;
    return html`<div class="slip" ?data-former=${this.former}>
      <h2 id="slip-title">To buy</h2>
      <p class="stamp" role="status">${this.former ? 'of your former choice' : nothing}</p>
      ${this.told()}
      ${this.coming ? nothing : this.safety()}
      ${
        tally === null || tally.cloths.length === 0
          ? nothing
          : html`<h3>Where the cloth goes</h3>${areaShares(tally.areas, this.units)}
            <yw-leftovers .quilt=${this.quilt} .tally=${tally} .units=${this.units} ?former=${this.former}></yw-leftovers>`
      }
    </div>`;
  }

  private told(): TemplateResult {
    const { tally, planned } = this;
    if (tally === null || planned === null) {
      return html`<p>It is told as soon as every cloth has a first plan.</p>`;
    }
    return tally.cloths.length === 0 ? html`<p>Nothing yet: no patch has a cloth.</p>` : this.bill(tally, planned);
  }

  private bill(tally: Tally, planned: Quilt): TemplateResult {
    return html`
      ${tally.price === null ? nothing : this.total(tally, tally.price)}
      <p class="proof-all">
        ${provedWords(tally)}
      </p>
      ${this.testFirst.map((line) => html`<p class="test-first">${line}</p>`)}
      ${tally.cloths.some(({ proof }) => proof.testFirst === true) ? html`<p class="hint">${BEGINNING}</p>` : nothing}
      <p class="hint">${whatLeastMeans(planned.stacks ?? false)}</p>
      <ul class="bill">
        ${tally.cloths.map((cloth) =>
          this.line(
            cloth,
            planned.cloths.find((one) => one.id === cloth.cloth),
          ),
        )}
      </ul>
      ${tally.blockCloths.map(({ role, words }) => html`<p class="block-cloths"><strong>${role}</strong>: ${words}</p>`)}
    `;
  }

  private total(tally: Tally, price: number): TemplateResult {
    const unpriced = tally.cloths.filter((line) => line.price === null && line.buy > 0).map(({ name }) => name);
    return html`<p class="total">
      <span>Together${unpriced.length === 0 ? '' : ` but for ${unpriced.join(' and ')}`}</span>
      <strong>${sayMoney(price, tally.currency)}</strong>
    </p>`;
  }

  private line(line: ClothTally, cloth: Cloth | undefined): TemplateResult {
    return html`<li>
      <p class="bill-head">
        ${swatch(cloth)} <strong>${line.name}</strong>
        <span class="bill-price">${this.price(line, cloth)}</span>
      </p>
      <p class="bill-buy">${this.purchase(line, cloth)}</p>
      ${line.need > 0 ? html`<p class="bill-need">${this.need(line)}</p>` : nothing}
      ${this.washing(line, cloth)}
      ${line.pieces.filter((piece) => piece.used > 0).map((piece) => html`<p>from the shelf: ${piece.used} × “${piece.piece}”</p>`)}
      <p class="proof" data-state=${line.proof.state}>${proofMark(line.proof)} ${line.proof.words}</p>
      ${line.proof.byArea !== null && line.steps !== null && line.proof.byArea < line.steps ? html`<p class="by-area">By area alone it would seem ${line.proof.byArea} of ${line.steps} steps.</p>` : nothing}
      ${line.thirdCuts === undefined ? nothing : html`<p class="third-cuts">${line.thirdCuts}</p>`}
      ${this.unplaced(line)}
      <p class="waste">${Math.round(share(line.areas, 'waste') * 100)} % falls off as waste</p>
    </li>`;
  }

  private washing({ need }: ClothTally, cloth: Cloth | undefined): TemplateResult | typeof nothing {
    const words = sayWashing(cloth, need, this.units.quilt, (length) => written(length, this.units));
    return words === null ? nothing : html`<p class="bill-need">${words}</p>`;
  }

  /** Why blanks are not placed, but for those of which the cloth's roll tells it already, in the quilt's words. */
  private unplaced({ unplaced }: ClothTally): TemplateResult | typeof nothing {
    const why = unplaced.filter(({ blank }) => !this.problems.some((problem) => problem.blank === blank));
    return why.length === 0
      ? nothing
      : html`<p class="fault">${why.map((one) => `${one.blank}: ${one.why}`).join('; ')}</p>`;
  }

  private price({ price, buy }: ClothTally, cloth: Cloth | undefined): string {
    if (buy === 0) {
      return '';
    }
    return price === null ? 'no price' : sayMoney(price, cloth?.price?.currency ?? null);
  }

  private need({ need, over }: ClothTally): string {
    const rest = over > 1e-6 ? `; ${written(over, this.units)} left beyond the need` : ', to the last thread';
    return `needs ${written(need, this.units)}${rest}`;
  }

  private purchase(line: ClothTally, cloth: Cloth | undefined): string {
    if (line.steps === null || cloth?.step === undefined) {
      return 'nothing to buy: the shelf serves';
    }
    if (line.steps === 0) {
      return 'nothing to buy';
    }
    const steps = saySteps(line.steps, cloth.step, this.units.quilt);
    return `${steps}: ${writtenPurchase(line.buy, cloth.step, this.units)}`;
  }

  private safety(): TemplateResult | typeof nothing {
    const { quilt } = this;
    if (quilt === null) {
      return nothing;
    }
    return html`<fieldset class="numbers safety">
      <legend>To be on the safe side</legend>
      <yw-length-field
        label="Squaring up"
        hint="lost at the cut end of each bolt and piece"
        .value=${quilt.squaring}
        .units=${this.units}
        .edit=${(squaring: Length) => setQuilt({ squaring })}
      ></yw-length-field>
      <yw-number-field
        label="Spares"
        hint=${quilt.roles.some(({ spares }) => spares !== undefined) ? 'extra blanks of each kind; some roles have their own' : 'extra blanks of each kind'}
        .value=${quilt.spares}
        .max=${99}
        .edit=${(spares: number) => setQuilt({ spares })}
      ></yw-number-field>
      <p class="hint">A purchase proved least without these two runs short at the first slip of the blade.</p>
    </fieldset>`;
  }
}

function proofMark(proof: Proof): string {
  return { least: 'Proved least.', gap: 'Not proved least.', none: 'Not whole.' }[proof.state];
}

function provedWords(tally: Tally): string {
  if (!tally.provedLeast) {
    return 'Not every purchase is proved least: see each cloth.';
  }
  return tally.cloths.some(({ proof }) => proof.testFirst === true)
    ? 'Every purchase on this slip is proved least, among plans that begin with this test block.'
    : 'Every purchase on this slip is proved least.';
}

const share = (areas: Areas, part: keyof Areas): number => (areas.used === 0 ? 0 : areas[part] / areas.used);

declare global {
  interface HTMLElementTagNameMap {
    'yw-tally-slip': TallySlip;
  }
}
