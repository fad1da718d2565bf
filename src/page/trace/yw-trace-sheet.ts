import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Picture } from '../../keep/picture.ts';
import type { DrawnBlock } from '../../quilt/drawn-block.ts';
import { formatLength } from '../../quilt/format-length.ts';
import { convert, lengthIn } from '../../quilt/measure.ts';
import type { Quilt } from '../../quilt/quilt.ts';
import { type Straightening, type TrueMap, trueMap } from '../../quilt/tracing/straightening.ts';
import type { Box } from '../../shape/outline-measures.ts';
import { freshId, PageElement } from '../page-element.ts';
import { UNITS, type Units } from '../written.ts';
import { typedField } from './trace-field.ts';
import { TraceHand } from './trace-hand.ts';
import { traceKeys } from './trace-keys.ts';
import { whyUnsewn } from './trace-sewing.ts';
import type { Tracer } from './tracer.ts';
import type { PictureBoard } from './yw-picture-board.ts';
import '../yw-drawn-picture.ts';
import './yw-picture-board.ts';
import './yw-trace-chosen.ts';
import './yw-trace-units.ts';

/** How far a click is taken to be off at most. */
const SLIP = '1/32 in';
/** Less than this is not worth a word. */
const SEEN = '1/64 in';

/** A block that is traced, and whether she keeps what it was traced from. */
export interface TraceDone {
  readonly block: DrawnBlock;
  readonly keep: boolean;
}

/** The picture laid true, the tools, and what is traced. Fires `yw-traced` with a TraceDone, `yw-trace-name` with a name. */
@customElement('yw-trace-sheet')
export class TraceSheet extends PageElement {
  @property({ attribute: false }) tracer: Tracer | null = null;
  /** Changes whenever the tracer has changed. */
  @property({ type: Number }) turns = 0;
  @property({ attribute: false }) picture: Picture | null = null;
  @property({ attribute: false }) size: Straightening | null = null;
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private keep = false;
  private hand: TraceHand | null = null;
  private laid: {
    readonly of: Straightening;
    readonly unit: string;
    readonly map: TrueMap;
    readonly first: Box | null;
  } | null = null;
  private readonly ids = freshId('trace-sheet');

  protected override render(): TemplateResult | typeof nothing {
    const { tracer, picture, size, units } = this;
    if (tracer === null || picture === null || size === null) return nothing;
    this.hand ??= new TraceHand(tracer, () => this.units.quilt);
    const { map, first } = this.lay(size);
    return html`<div class="trace-work">
      <div class="trace-sheet">
        ${this.tools(tracer)}
        <yw-picture-board
          label="The picture, laid true, and what is traced on it. Arrow keys move a cross, Enter sets a corner there; all keys are listed below."
          .picture=${picture.canvas}
          .map=${map}
          .first=${first}
          .hand=${this.hand}
          .turns=${this.turns}
        ></yw-picture-board>
        <p class="trace-said" role="status">${tracer.fault === null ? tracer.words : nothing}</p>
        <p class="fault" role="alert" ?hidden=${tracer.fault === null}>${tracer.fault ?? ''}</p>
        ${traceKeys()}
      </div>
      <div class="trace-panel">
        <yw-trace-chosen .tracer=${tracer} .roles=${this.roleNames(tracer)} .units=${units} .turns=${this.turns}></yw-trace-chosen>
        <yw-trace-units .tracer=${tracer} .units=${units} .slip=${lengthIn(units.quilt, SLIP)} .turns=${this.turns}></yw-trace-units>
        ${this.finish(tracer)}
      </div>
    </div>`;
  }

  private tools(tracer: Tracer): TemplateResult {
    const tool = (kind: 'draw' | 'choose', words: string): TemplateResult =>
      html`<button type="button" aria-pressed=${tracer.tool === kind} @click=${() => tracer.setTool(kind)}>${words}</button>`;
    const begun = tracer.tracing.begun !== undefined;
    const board = (): PictureBoard | null => this.querySelector('yw-picture-board');
    return html`<div class="trace-tools" role="group" aria-label="Tools">
      ${tool('draw', 'Draw')} ${tool('choose', 'Choose')}
      <button type="button" aria-pressed=${tracer.arc !== null} @click=${() => tracer.askArc()}>Next is an arc</button>
      <button type="button" ?disabled=${!begun} @click=${() => tracer.close()}>Close the patch</button>
      <button type="button" ?disabled=${!tracer.canUndo} @click=${() => tracer.undo()}>Undo</button>
      <button type="button" ?disabled=${!tracer.canRedo} @click=${() => tracer.redo()}>Redo</button>
      <button type="button" aria-label="Larger" @click=${() => board()?.zoomBy(1.5)}>+</button>
      <button type="button" aria-label="Smaller" @click=${() => board()?.zoomBy(1 / 1.5)}>−</button>
      <button type="button" @click=${() => board()?.showAll()}>All of it</button>
    </div>`;
  }

  private finish(tracer: Tracer): TemplateResult {
    const { drawn, options } = tracer;
    const faults = 'faults' in drawn ? drawn.faults : [];
    const keep = `${this.ids}-keep`;
    return html`<div class="trace-finish">
      ${typedField({
        id: `${this.ids}-name`,
        label: 'Name of the block',
        value: options.name,
        onTyped: (text) => this.fire('yw-trace-name', text),
      })}
      ${faults.length === 0 ? nothing : html`<ul class="trace-faults">${faults.map((fault) => html`<li>${fault}</li>`)}</ul>`}
      ${
        'block' in drawn
          ? html`<yw-drawn-picture .quilt=${this.quilt} .drawn=${drawn.block}></yw-drawn-picture>
              ${this.doneWords(drawn).map((words) => html`<p class="hint">${words}</p>`)}`
          : nothing
      }
      <div class="tick">
        <input
          type="checkbox"
          id=${keep}
          aria-describedby="${keep}-hint"
          .checked=${this.keep}
          @change=${(event: Event) => {
            this.keep = (event.target as HTMLInputElement).checked;
          }}
        />
        <label for=${keep}>Keep picture and tracing in the quilt file</label>
      </div>
      <p class="hint" id="${keep}-hint">
        To go on with it later. The picture is drawn anew for it, smaller, without place or date. Whoever gets the file sees it.
      </p>
      <button type="button" class="trace-go" ?disabled=${!('block' in drawn)} @click=${() => this.onDone(tracer)}>Use this block</button>
    </div>`;
  }

  private doneWords({
    moved,
    unsewn,
    block,
  }: {
    readonly moved: number;
    readonly unsewn: readonly string[];
    readonly block: DrawnBlock;
  }): readonly string[] {
    const patches = block.units.reduce(
      (sum, unit) => sum + unit.patches.length * unit.repeat.count * (unit.repeat.mirrored === 'also' ? 2 : 1),
      0,
    );
    return [
      `${patches} ${patches === 1 ? 'patch' : 'patches'} in the block.`,
      ...(moved > lengthIn(this.units.quilt, SEEN)
        ? [
            `So that seams run straight and copies meet, corners were moved by at most ${formatLength(convert(moved, this.units.quilt, this.units.shown), this.units.shown, { denominator: 64, decimals: 2 })}.`,
          ]
        : []),
      ...block.units.filter((unit) => unsewn.includes(unit.id)).map(whyUnsewn),
    ];
  }

  /** One and the same map as long as the size is the same: the board looks at it afresh when it changes. */
  private lay(size: Straightening): NonNullable<TraceSheet['laid']> {
    const unit = this.units.quilt;
    if (this.laid === null || this.laid.of !== size || this.laid.unit !== unit) {
      this.laid = { of: size, unit, map: trueMap(size, unit), first: frameOf(size, this.units) };
    }
    return this.laid;
  }

  private roleNames(tracer: Tracer): readonly string[] {
    const traced = tracer.tracing.patches.map((patch) => patch.role);
    return [...new Set([...traced, ...(this.quilt?.roles ?? []).map((role) => role.name)])];
  }

  private onDone({ drawn }: Tracer): void {
    if ('block' in drawn) this.fire<TraceDone>('yw-traced', { block: drawn.block, keep: this.keep });
  }

  private fire<Detail>(type: string, detail: Detail): void {
    this.dispatchEvent(new CustomEvent<Detail>(type, { detail, bubbles: true }));
  }
}

/** The rectangle that is known, with some of what lies round it; of a picture taken straight on, all. */
function frameOf(size: Straightening, units: Units): Box | null {
  if (size.kind === 'length') return null;
  const [width, height] = [lengthIn(units.quilt, size.width), lengthIn(units.quilt, size.height)];
  const round = 0.04 * Math.max(width, height);
  return { min: [-round, -round], max: [width + round, height + round] };
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-trace-sheet': TraceSheet;
  }
}
