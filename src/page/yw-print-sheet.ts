import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { drawLayout, layoutTextSize } from '../draw/draw-layout.ts';
import { wholeLength } from '../draw/unroll.ts';
import { sayMoney } from '../plan/say-money.ts';
import { cautions } from './cautions.ts';
import { freshId, PageElement } from './page-element.ts';
import type { Plan } from './plan-state.ts';
import { rollsOf } from './rolls.ts';
import { shownDrawing } from './shown-drawing.ts';
import { stripTable } from './strip-table.ts';
import { type Units, written, writtenPurchase } from './written.ts';
import { lengthName } from './yw-cloth-roll.ts';

/** Pixels that a page of A4 or Letter leaves between its margins, and the height of small text on it. */
const PAPER = { pixels: 660, text: 10.5 };

/** The cutting page on paper: what to buy, care, and for each cloth its layout and its cuts. Only made when it is printed. */
@customElement('yw-print-sheet')
export class PrintSheet extends PageElement {
  @property({ attribute: false }) plan: Plan | null = null;
  @property({ attribute: false }) units: Units = { quilt: 'in', shown: 'in' };
  @state() private wanted = false;
  private readonly stem = freshId('print');

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
      ${this.bill(plan)} ${cautions()} ${this.cloths(plan)}`;
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
            <td>${line.steps === null ? 'from the shelf' : writtenPurchase(line.buy, cloth?.step, this.units)}</td>
            <td>${written(line.need, this.units)}</td>
            <td>${line.price === null ? '' : sayMoney(line.price, cloth?.price?.currency ?? null)}</td>
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

  private cloths(plan: Plan): readonly TemplateResult[] {
    const { quilt } = plan;
    return plan.cutList.groups.flatMap((group, index) =>
      rollsOf(group, plan.answers[index]!).flatMap((roll) =>
        roll.lengths.map((length, which) => {
          const cloth = quilt.cloths.find((one) => one.id === roll.cloth)!;
          const drawing = drawLayout({
            cloth,
            length,
            blanks: group.blanks,
            steps: roll.steps,
            whole: wholeLength(length),
            textSize: layoutTextSize(length.jobCloth.width, PAPER.pixels, PAPER.text),
            write: (value) => written(value, this.units),
          });
          const name = lengthName(cloth, length);
          return html`<section class="print-cloth">
            <h2>${name}</h2>
            ${shownDrawing(drawing, `${this.stem}-${index}-${roll.cloth}-${which}`)}
            ${stripTable(length, roll.steps, this.units, name)}
          </section>`;
        }),
      ),
    );
  }
}
