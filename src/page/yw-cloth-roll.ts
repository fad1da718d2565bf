import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import type { Problem } from '../cutting/cut-list.ts';
import type { Drawing } from '../draw/display-list.ts';
import { drawLayout, layoutTextSize } from '../draw/draw-layout.ts';
import { type ClothLengthDrawn, wholeLength } from '../draw/unroll.ts';
import { easilyMistaken } from '../plan/look-alikes.ts';
import { sayAllJoined } from '../plan/say-joined.ts';
import type { Tally } from '../plan/tally.ts';
import type { Cloth, Quilt } from '../quilt/quilt.ts';
import { alikeNotes } from './alike-notes.ts';
import { blankTags } from './blank-tags.ts';
import { printWords } from './facing-words.ts';
import { turnToDraw } from './in-turn.ts';
import { lengthName } from './length-name.ts';
import { freshId, PageElement } from './page-element.ts';
import type { Plan } from './plan-state.ts';
import { problemNotes } from './problem-notes.ts';
import type { HandAsked } from './questions.ts';
import { bagsOfPlan, type Roll } from './rolls.ts';
import { shownDrawing } from './shown-drawing.ts';
import { marksExplained, stripTables } from './strip-tables.ts';
import { swatch } from './swatch.ts';
import { WidthWatch } from './width-watch.ts';
import { UNITS, type Units, written } from './written.ts';
import './yw-cloth-fold.ts';
import './yw-will-this-do.ts';

/** One cloth unrolled: what it is, its lengths drawn to scale, their strips as a table. */
@customElement('yw-cloth-roll')
export class ClothRoll extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) cloth: Cloth | null = null;
  /** What was asked of it. */
  @property({ attribute: false }) hand: HandAsked | null = null;
  /** Of the plan as it stands; null while there is none of the present choice. */
  @property({ attribute: false }) tally: Tally | null = null;
  /** As the shown plan has it: it may be of a former choice. */
  @property({ attribute: false }) roll: Roll | null = null;
  @property({ attribute: false }) problems: readonly Problem[] = [];
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  /** How far the planning of its group has come, in words. */
  @property() status = '';
  @property({ type: Boolean }) former = false;
  /** Its layout is on its way: room is kept for it, so that little moves when it comes. */
  @property({ type: Boolean }) coming = false;
  /** The whole plan that the roll is of, which tells what goes into which bag. */
  @property({ attribute: false }) bags: Plan | null = null;
  /** How many times as wide as the column it is drawn. */
  @property({ type: Number }) zoom = 1;
  /** Tables are long, so none is made before one of them is asked for. */
  @state() private unfolded = false;
  private readonly watch = new WidthWatch(this, '.roll');
  private readonly stem = freshId('roll');
  private drawnRoll: Roll | null = null;
  private drawn: { key: readonly unknown[]; drawings: readonly Drawing[] } | null = null;

  /** Rolls come in numbers, and each is drawn from hundreds of blanks. */
  protected override async scheduleUpdate(): Promise<void> {
    if (this.roll !== this.drawnRoll) {
      await turnToDraw();
    }
    super.scheduleUpdate();
  }

  protected override render(): TemplateResult | typeof nothing {
    const { cloth, roll } = this;
    this.drawnRoll = roll;
    if (cloth === null) {
      return nothing;
    }
    return html`<article class="roll" aria-labelledby="${this.stem}-name" ?data-former=${this.former}>
      <header>
        ${swatch(cloth)}
        <h3 id="${this.stem}-name">${cloth.name}</h3>
        <p class="hint">${printWords(cloth.print)}${cloth.up === 'across' ? ', its up across the cloth' : ''}</p>
        <p class="status">${this.former ? 'Of your former choice. ' : ''}${this.status}</p>
      </header>
      <yw-cloth-fold .cloth=${cloth} .units=${this.units}></yw-cloth-fold>
      <yw-will-this-do .quilt=${this.quilt} .cloth=${cloth} .asked=${this.hand} .tally=${this.tally} .units=${this.units}></yw-will-this-do>
      ${problemNotes(this.problems)} ${this.coming ? html`<p class="coming hint">Being laid out.</p>` : nothing}
      ${roll === null || roll.lengths.length === 0 || this.watch.width === 0 ? nothing : this.lengths(cloth, roll)}
    </article>`;
  }

  private lengths(cloth: Cloth, roll: Roll): TemplateResult {
    const drawings = this.drawings(cloth, roll);
    const cut = new Set(
      roll.lengths.flatMap(({ laid }) => laid.flatMap(({ layout }) => layout.placements.map((p) => p.blank))),
    );
    const blanks = roll.group.blanks.filter((blank) => cut.has(blank.id));
    return html`
      ${roll.lengths.map((length, index) => {
        const name = lengthName(cloth, length);
        return html`<figure class="length">
          <figcaption>${name}</figcaption>
          <div class="drawing-frame" tabindex=${this.zoom > 1 ? 0 : nothing} role=${this.zoom > 1 ? 'region' : nothing}
            aria-label=${this.zoom > 1 ? `${name}, enlarged` : nothing}>
            <div style="width:${this.zoom * 100}%">${shownDrawing(drawings[index]!, `${this.stem}-${index}`)}</div>
          </div>
          <details @toggle=${this.onToggle}>
            <summary>Strips and cuts as tables</summary>
            ${this.unfolded ? html`<p class="hint">${marksExplained(this.units, roll.group.job.stages === 3)}</p>` : nothing}
            ${this.unfolded ? guard([length, this.units.shown, this.bags], () => this.tables(length, roll, name)) : nothing}
          </details>
        </figure>`;
      })}
      ${blankTags(blanks, `Blanks cut from ${cloth.name}`, easilyMistaken(roll.alike))} ${alikeNotes(roll.alike)} ${this.joined(roll)}
    `;
  }

  /** How binding, borders and backing that are cut from it are joined up. */
  private joined(roll: Roll): readonly TemplateResult[] {
    const { bags, units } = this;
    const said =
      bags === null
        ? []
        : sayAllJoined(bags.quilt, { groups: [roll.group], problems: [] }, (length) => written(length, units));
    return said.map(([name, words]) => html`<p class="joined-words"><strong>${name}:</strong> ${words}</p>`);
  }

  private tables(length: ClothLengthDrawn, roll: Roll, name: string): TemplateResult {
    const { units, bags } = this;
    const bagsOf = bags === null ? null : bagsOfPlan(bags);
    return stripTables(length, { group: roll.group.id, steps: roll.steps, bagsOf, units, name });
  }

  private onToggle(event: Event): void {
    this.unfolded ||= (event.target as HTMLDetailsElement).open;
  }

  /** Drawn anew only when what it shows has changed, not with every tick of the planning. */
  private drawings(cloth: Cloth, roll: Roll): readonly Drawing[] {
    const pixels = this.watch.width * this.zoom;
    const key = [cloth.name, cloth.colour, cloth.print, cloth.up, roll, pixels, this.units.shown];
    if (this.drawn === null || key.some((part, index) => part !== this.drawn?.key[index])) {
      const drawings = roll.lengths.map((length) =>
        drawLayout({
          cloth,
          length,
          blanks: roll.group.blanks,
          steps: roll.steps,
          mistaken: easilyMistaken(roll.alike),
          whole: wholeLength(length),
          textSize: layoutTextSize(length.jobCloth.width, pixels, this.watch.smallText),
          write: (value) => written(value, this.units),
        }),
      );
      this.drawn = { key, drawings };
    }
    return this.drawn.drawings;
  }
}
