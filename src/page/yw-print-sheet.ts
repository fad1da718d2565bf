import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Drawing } from '../draw/display-list.ts';
import { drawBlock } from '../draw/draw-block.ts';
import { drawLayout, layoutTextSize } from '../draw/draw-layout.ts';
import { type ClothLengthDrawn, wholeLength } from '../draw/unroll.ts';
import { easilyMistaken } from '../plan/look-alikes.ts';
import { sayAllJoined } from '../plan/say-joined.ts';
import { sayMoney } from '../plan/say-money.ts';
import { sayTestFirst } from '../plan/say-test-first.ts';
import { sayWashing } from '../plan/say-washing.ts';
import type { ClothTally } from '../plan/tally.ts';
import type { Block, Cloth } from '../quilt/quilt.ts';
import { alikeNotes } from './alike-notes.ts';
import { blockExtent } from './block-extent.ts';
import { cautions } from './cautions.ts';
import { lengthName } from './length-name.ts';
import { PageElement } from './page-element.ts';
import type { Plan } from './plan-state.ts';
import { bagsOfPlan, type Roll, rollsOf } from './rolls.ts';
import { shownDrawing } from './shown-drawing.ts';
import { marksExplained, stripTables } from './strip-tables.ts';
import { testFirstLines } from './test-first-lines.ts';
import { UNITS, type Units, written, writtenPurchase } from './written.ts';

/** Pixels that a page of A4 or Letter leaves for a drawing, and the height of small text on it. */
const PAPER = { wide: 660, tall: 700, text: 10.5, block: 270 };

/** The cutting page on paper: what to buy, care, and for each cloth its layout and its cuts. Only made when it is printed. */
@customElement('yw-print-sheet')
export class PrintSheet extends PageElement {
  @property({ attribute: false }) plan: Plan | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private wanted = false;

  /** The browser prints right after this event, so the sheet must be there when the listener returns. */
  private readonly beforePrint = (): void => {
    this.wanted = true;
    this.performUpdate();
  };
  private readonly afterPrint = (): void => {
    this.wanted = false;
  };

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('beforeprint', this.beforePrint);
    window.addEventListener('afterprint', this.afterPrint);
  }

  override disconnectedCallback(): void {
    window.removeEventListener('beforeprint', this.beforePrint);
    window.removeEventListener('afterprint', this.afterPrint);
    super.disconnectedCallback();
  }

  protected override render(): TemplateResult | typeof nothing {
    const { plan } = this;
    if (!this.wanted) {
      return nothing;
    }
    if (plan === null) {
      return html`<p>There is no whole plan to print yet.</p>`;
    }
    return html`<h1>${plan.quilt.name}: cutting page</h1>
      ${this.bill(plan)} ${this.blockCloths(plan)} ${cautions()}
      ${this.firstWords(plan)}
      <div class="print-blocks">
        ${plan.quilt.blocks.map((block) => this.block(plan, block))}
        <div class="beside-blocks">
          <p class="marks-explained">${marksExplained(this.units, plan.quilt.stacks ?? false)}</p>
          ${this.joined(plan)}
        </div>
      </div>
      ${this.cloths(plan)}`;
  }

  private firstWords(plan: Plan): TemplateResult | typeof nothing {
    const words = sayTestFirst(plan.quilt, plan.answers);
    return words === null
      ? nothing
      : html`<p class="test-first"><strong>${words}</strong> ${testFirstLines(plan).join(' ')}</p>`;
  }

  private block({ quilt, cutList }: Plan, block: Block): TemplateResult {
    const scheme = quilt.schemes.find((one) => one.id === quilt.scheme)!;
    const blanks = cutList.groups.flatMap((group) => group.blanks);
    const textSize = (PAPER.text * blockExtent(block, quilt.unit)) / PAPER.block;
    const drawing = drawBlock({ quilt, scheme, block, blanks, textSize });
    return html`<figure style="width:${PAPER.block}px">
      <figcaption>${block.name}, ${block.count === 1 ? 'one' : block.count} in the quilt</figcaption>
      ${shownDrawing(drawing, null)}
    </figure>`;
  }

  private joined({ quilt, cutList }: Plan): TemplateResult | typeof nothing {
    const all = sayAllJoined(quilt, cutList, (length) => written(length, this.units));
    return all.length === 0
      ? nothing
      : html`<section>
          <h2>Join up</h2>
          <ul>
            ${all.map(([name, words]) => html`<li><strong>${name}:</strong> ${words}</li>`)}
          </ul>
        </section>`;
  }

  private bill(plan: Plan): TemplateResult {
    const { tally, quilt } = plan;
    return html`<table class="print-bill">
      <caption>
        To buy
      </caption>
      <thead>
        <tr>
          <th scope="col">Cloth</th>
          <th scope="col">Buy</th>
          <th scope="col">Need</th>
          <th scope="col">Price</th>
          <th scope="col">Proof</th>
        </tr>
      </thead>
      <tbody>
        ${tally.cloths.map((line) => {
          const cloth = quilt.cloths.find((one) => one.id === line.cloth);
          return html`<tr>
            <th scope="row">${line.name}</th>
            <td>${this.buyWords(line, cloth)}</td>
            <td>${line.need > 0 ? written(line.need, this.units) : ''}</td>
            <td>${line.price === null || line.buy === 0 ? '' : sayMoney(line.price, cloth?.price?.currency ?? null)}</td>
            <td>${line.proof.words}</td>
          </tr>`;
        })}
      </tbody>
      ${
        tally.price === null
          ? nothing
          : html`<tfoot><tr><th scope="row" colspan="3">Together</th><td colspan="2">${sayMoney(tally.price, tally.currency)}</td></tr></tfoot>`
      }
    </table>`;
  }

  /** Which block has which of several cloths: whoever sews it must know. */
  private blockCloths({ tally }: Plan): readonly TemplateResult[] {
    return tally.blockCloths.map(
      ({ role, words }) => html`<p class="block-cloths"><strong>${role}</strong>: ${words}</p>`,
    );
  }

  private buyWords(line: ClothTally, cloth: Cloth | undefined): string {
    const buy = line.buy > 0 ? writtenPurchase(line.buy, cloth?.step, this.units) : 'nothing to buy';
    const washing = sayWashing(cloth, line.need, this.units.quilt, (length) => written(length, this.units));
    const shelf = line.pieces.filter(({ used }) => used > 0).map(({ piece, used }) => `${used} × “${piece}”`);
    const parts = [buy, ...(washing === null ? [] : [washing])];
    return [...parts, ...(shelf.length === 0 ? [] : [`from the shelf ${shelf.join(', ')}`])].join('; ');
  }

  private cloths(plan: Plan): readonly TemplateResult[] {
    const bagsOf = bagsOfPlan(plan);
    return plan.cutList.groups.flatMap((group, index) =>
      rollsOf(group, plan.answers[index]!, plan.quilt.unit).flatMap((roll) => {
        const cloth = plan.quilt.cloths.find((one) => one.id === roll.cloth)!;
        return roll.lengths.map((length) => {
          const { drawing, pixels } = this.fitted(cloth, roll, length);
          const name = lengthName(cloth, length);
          return html`<section class="print-cloth">
            <h2>${name}</h2>
            <div style="width:${pixels}px">${shownDrawing(drawing, null)}</div>
            ${stripTables(length, { group: group.id, steps: roll.steps, bagsOf, units: this.units, name })}
            ${alikeNotes(roll.alike)}
          </section>`;
        });
      }),
    );
  }

  /** As wide as the page, or, for a long cloth, as narrow as makes it fit the page's height with its text still readable. */
  private fitted(cloth: Cloth, roll: Roll, length: ClothLengthDrawn): { drawing: Drawing; pixels: number } {
    const at = (pixels: number): Drawing =>
      drawLayout({
        cloth,
        length,
        blanks: roll.group.blanks,
        steps: roll.steps,
        mistaken: easilyMistaken(roll.alike),
        whole: wholeLength(length),
        textSize: layoutTextSize(length.jobCloth.width, pixels, PAPER.text),
        write: (value) => written(value, this.units),
      });
    const wide = at(PAPER.wide);
    const tall = (PAPER.wide * wide.box.height) / wide.box.width;
    if (tall <= PAPER.tall) {
      return { drawing: wide, pixels: PAPER.wide };
    }
    const pixels = Math.max(PAPER.wide / 3, (PAPER.wide * PAPER.tall) / tall);
    return { drawing: at(pixels), pixels };
  }
}
