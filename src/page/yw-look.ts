import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CutList } from '../cutting/cut-list.ts';
import { drawLayout, layoutTextSize } from '../draw/draw-layout.ts';
import { type ClothLengthDrawn, wholeLength } from '../draw/unroll.ts';
import type { LayoutAnswer } from '../plan/layout-job.ts';
import { easilyMistaken } from '../plan/look-alikes.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { cautions } from './cautions.ts';
import { lengthName } from './length-name.ts';
import { freshId, PageElement } from './page-element.ts';
import { type Roll, rollsOf } from './rolls.ts';
import { shownDrawing } from './shown-drawing.ts';
import { marksExplained, stripTables } from './strip-tables.ts';
import { WidthWatch } from './width-watch.ts';
import { UNITS, type Units, written } from './written.ts';

/** A plan that is not the quilt's own, to be looked at: its lengths drawn, its strips as tables. Nothing is made before it is opened. */
@customElement('yw-look')
export class Look extends PageElement {
  @property() label = 'Look at its cutting';
  /** Which plan it is, to tell its tables from those of others. */
  @property() what = '';
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) cutList: CutList | null = null;
  /** In the order of its groups. */
  @property({ attribute: false }) answers: readonly LayoutAnswer[] = [];
  /** The cloth that she has in hand, of which there is no bolt. */
  @property() hand: string | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private open = false;
  private readonly watch = new WidthWatch(this, '.look');
  private readonly stem = freshId('look');

  protected override render(): TemplateResult {
    return html`<details class="look" @toggle=${this.onToggle}>
      <summary>${this.label}</summary>
      ${this.open && this.watch.width > 0 ? this.plan() : nothing}
    </details>`;
  }

  private onToggle(event: Event): void {
    this.open = (event.target as HTMLDetailsElement).open;
  }

  private plan(): TemplateResult | typeof nothing {
    const { quilt, cutList, answers } = this;
    if (quilt === null || cutList === null) {
      return nothing;
    }
    const rolls = cutList.groups.flatMap((group, index) => rollsOf(group, answers[index]!, quilt.unit));
    const lengths = rolls.flatMap((roll) => roll.lengths.map((length) => ({ roll, length })));
    return html`
      <p class="hint">${marksExplained(this.units, quilt.stacks ?? false)}</p>
      ${lengths.map(({ roll, length }, index) => this.length(quilt, roll, length, index))} ${cautions(this.what)}
    `;
  }

  private length(quilt: Quilt, roll: Roll, length: ClothLengthDrawn, index: number): TemplateResult {
    const cloth = quilt.cloths.find(({ id }) => id === roll.cloth)!;
    const isHand = length.piece === null && length.cloth === this.hand;
    const name = isHand ? `${cloth.name}, what is in hand` : lengthName(cloth, length);
    const drawing = drawLayout({
      cloth,
      length,
      blanks: roll.group.blanks,
      steps: roll.steps,
      mistaken: easilyMistaken(roll.alike),
      whole: wholeLength(length),
      textSize: layoutTextSize(length.jobCloth.width, this.watch.width, this.watch.smallText),
      write: (value) => written(value, this.units),
    });
    return html`<figure class="length">
      <figcaption>${name}</figcaption>
      <div class="drawing-frame">${shownDrawing(drawing, `${this.stem}-${index}`)}</div>
      ${stripTables(length, { group: roll.group.id, steps: roll.steps, bagsOf: null, units: this.units, name: `${name}: ${this.what}` })}
    </figure>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-look': Look;
  }
}
