import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { PICTURE_TYPES, type Picture, readPicture } from '../../keep/picture.ts';
import type { DrawnBlock } from '../../quilt/drawn-block.ts';
import { convert, lengthIn } from '../../quilt/measure.ts';
import type { LengthUnit, Quilt } from '../../quilt/quilt.ts';
import { moveTracing } from '../../quilt/tracing/mend-lines.ts';
import { between, type Straightening, trueMap } from '../../quilt/tracing/straightening.ts';
import type { Box } from '../../shape/outline-measures.ts';
import { scale } from '../../shape/point.ts';
import { sendDrawn } from '../drawn-event.ts';
import { focusSoon } from '../focus-soon.ts';
import { freshId, PageElement } from '../page-element.ts';
import { UNITS, type Units, written } from '../written.ts';
import { typedField } from './trace-field.ts';
import { TraceHand } from './trace-hand.ts';
import { TRACE_SEWING, whyUnsewn } from './trace-sewing.ts';
import { Tracer } from './tracer.ts';
import type { PictureBoard } from './yw-picture-board.ts';
import '../yw-drawn-picture.ts';
import './yw-picture-board.ts';
import './yw-trace-chosen.ts';
import './yw-trace-size.ts';
import './yw-trace-units.ts';

/** How far a click is taken to be off at most: places this near to copies of each other are the same. */
const SLIP = '1/32 in';
const SAME = '3/32 in';

/**
 * A block traced over a picture of her own: choose the picture, say how large it is, click the patches. The picture never leaves
 * the page. Fires `yw-drawn` with the block, a CustomEvent<DrawnBlock>.
 */
@customElement('yw-trace')
export class Trace extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private picture: Picture | null = null;
  @state() private size: Straightening | null = null;
  @state() private stage: 'picture' | 'size' | 'trace' = 'picture';
  @state() private fault: string | null = null;
  @state() private reading = false;
  @state() private name = 'Traced block';
  /** Raised with every change of the tracer, so that what shows it is made anew. */
  @state() private turns = 0;
  /** In which the tracing is. */
  private unit: LengthUnit = 'in';
  private readonly tracer = new Tracer(() => this.turns++);
  private readonly hand = new TraceHand(this.tracer, () => this.units.quilt);
  private readonly ids = freshId('trace');

  protected override willUpdate(changed: PropertyValues): void {
    const unit = this.units.quilt;
    if (unit !== this.unit) {
      const by = convert(1, this.unit, unit);
      this.tracer.restart(moveTracing(this.tracer.tracing, (place) => scale(place, by)));
      this.unit = unit;
      this.map = null;
    }
    if (changed.has('quilt') || changed.has('name' as keyof Trace) || changed.has('units')) {
      const known = (this.quilt?.roles ?? []).map(({ id, name, facing }) => ({ id, name, facing }));
      this.tracer.options = { name: this.name, known, within: lengthIn(this.units.quilt, SAME), sewing: TRACE_SEWING };
    }
  }

  protected override render(): TemplateResult {
    return html`<section class="trace" aria-label="Trace over a picture" @yw-sized=${this.onSized} @drop=${this.onDrop} @dragover=${(event: Event) => event.preventDefault()}>
      ${this.steps()}
      <p class="fault" role="alert" ?hidden=${this.fault === null}>${this.fault ?? ''}</p>
      ${this.stage === 'picture' || this.picture === null ? this.choose() : this.stage === 'size' || this.size === null ? this.sizing() : this.tracing(this.size)}
    </section>`;
  }

  private steps(): TemplateResult {
    const step = (stage: 'picture' | 'size' | 'trace', words: string, open: boolean): TemplateResult => html`<li>
      <button
        type="button"
        class="quiet"
        aria-current=${this.stage === stage ? 'step' : nothing}
        ?disabled=${!open}
        @click=${() => this.goTo(stage)}
      >
        ${words}
      </button>
    </li>`;
    return html`<ol class="trace-steps">
      ${step('picture', '1. The picture', true)} ${step('size', '2. Its true size', this.picture !== null)}
      ${step('trace', '3. The patches', this.picture !== null && this.size !== null)}
    </ol>`;
  }

  private choose(): TemplateResult {
    return html`<div class="trace-drop">
      <p>A photo or a scan of a page of your own: PNG, JPEG or WebP, up to 40 MB.</p>
      <label class="button"
        >${this.reading ? 'Reading…' : 'Choose a picture'}
        <input type="file" accept=${PICTURE_TYPES} @change=${this.onChosen} />
      </label>
      <p class="hint">
        Or drop it here. It stays in this browser and goes into no file. What your camera wrote into it (place, date) is left behind.
        ${this.picture === null ? '' : `Now: ${this.picture.name}. Another picture takes its place; what you traced stays.`}
      </p>
    </div>`;
  }

  private sizing(): TemplateResult {
    return html`<yw-trace-size .picture=${this.picture} .former=${this.size} .units=${this.units}></yw-trace-size>`;
  }

  private tracing(size: Straightening): TemplateResult {
    const { tracer, units } = this;
    return html`<div class="trace-work">
      <div class="trace-sheet">
        ${this.tools()}
        <yw-picture-board
          label="The picture, laid true, and what is traced on it. Arrow keys move a cross, Enter sets a corner there; the keys are listed below."
          .picture=${this.picture!.canvas}
          .map=${this.mapOf(size)}
          .hand=${this.hand}
          .first=${frameOf(size, this.units)}
          .turns=${this.turns}
        ></yw-picture-board>
        <p class="trace-said" role="status">${tracer.fault === null ? tracer.words : nothing}</p>
        <p class="fault" role="alert" ?hidden=${tracer.fault === null}>${tracer.fault ?? ''}</p>
        ${keyList()}
      </div>
      <div class="trace-panel">
        <yw-trace-chosen .tracer=${tracer} .roles=${this.roleNames()} .units=${units} .turns=${this.turns}></yw-trace-chosen>
        <yw-trace-units .tracer=${tracer} .units=${units} .slip=${lengthIn(units.quilt, SLIP)} .turns=${this.turns}></yw-trace-units>
        ${this.finish()}
      </div>
    </div>`;
  }

  private tools(): TemplateResult {
    const { tracer } = this;
    const tool = (kind: 'draw' | 'choose', words: string): TemplateResult =>
      html`<button type="button" aria-pressed=${tracer.tool === kind} @click=${() => tracer.setTool(kind)}>${words}</button>`;
    const begun = tracer.tracing.begun !== undefined;
    return html`<div class="trace-tools" role="group" aria-label="Tools">
      ${tool('draw', 'Draw')} ${tool('choose', 'Choose')}
      <button type="button" aria-pressed=${tracer.arc !== null} @click=${() => tracer.askArc()}>Next is an arc</button>
      <button type="button" ?disabled=${!begun} @click=${() => tracer.close()}>Close the patch</button>
      <button type="button" ?disabled=${!tracer.canUndo} @click=${() => tracer.undo()}>Undo</button>
      <button type="button" ?disabled=${!tracer.canRedo} @click=${() => tracer.redo()}>Redo</button>
      <button type="button" aria-label="Larger" @click=${() => this.board?.zoomBy(1.5)}>+</button>
      <button type="button" aria-label="Smaller" @click=${() => this.board?.zoomBy(1 / 1.5)}>−</button>
      <button type="button" @click=${() => this.board?.showAll()}>All of it</button>
    </div>`;
  }

  private finish(): TemplateResult {
    const { drawn } = this.tracer;
    const faults = 'faults' in drawn ? drawn.faults : [];
    return html`<div class="trace-finish">
      ${typedField({
        id: `${this.ids}-name`,
        label: 'Name of the block',
        value: this.name,
        onTyped: (text) => {
          this.name = text === '' ? 'Traced block' : text;
        },
      })}
      ${faults.length === 0 ? nothing : html`<ul class="trace-faults">${faults.map((fault) => html`<li>${fault}</li>`)}</ul>`}
      ${
        'block' in drawn
          ? html`<yw-drawn-picture .quilt=${this.quilt} .drawn=${drawn.block}></yw-drawn-picture>
              <p class="hint">${this.doneWords(drawn)}</p>`
          : nothing
      }
      <button type="button" class="trace-go" ?disabled=${faults.length > 0} @click=${this.onDone}>Use this block</button>
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
  }): string {
    const patches = block.units.reduce((sum, unit) => sum + unit.patches.length, 0);
    const parts = [`${patches} ${patches === 1 ? 'patch' : 'patches'} to piece.`];
    if (moved > 0) parts.push(`To meet their copies corners were moved by at most ${written(moved, this.units)}.`);
    const apart = block.units.filter((unit) => unsewn.includes(unit.id));
    parts.push(...apart.map(whyUnsewn));
    return parts.join(' ');
  }

  private get board(): PictureBoard | null {
    return this.querySelector('yw-picture-board');
  }

  private map: { readonly of: Straightening; readonly map: ReturnType<typeof trueMap> } | null = null;

  /** One and the same map as long as the size is the same: the board looks at it afresh when it changes. */
  private mapOf(size: Straightening): ReturnType<typeof trueMap> {
    if (this.map?.of !== size) this.map = { of: size, map: trueMap(size, this.units.quilt) };
    return this.map.map;
  }

  private roleNames(): readonly string[] {
    const traced = this.tracer.tracing.patches.map((patch) => patch.role);
    return [...new Set([...traced, ...(this.quilt?.roles ?? []).map((role) => role.name)])];
  }

  private onSized(event: CustomEvent<Straightening>): void {
    const before = this.size;
    this.size = event.detail;
    if (before !== null && before !== event.detail) {
      const move = between(trueMap(before, this.units.quilt), this.mapOf(event.detail));
      this.tracer.restart(moveTracing(this.tracer.tracing, move));
    }
    this.goTo('trace');
  }

  /** To another step, with its beginning in sight and the board ready for keys. */
  private goTo(stage: Trace['stage']): void {
    this.stage = stage;
    void this.updateComplete.then(async () => {
      this.querySelector('.trace-steps')?.scrollIntoView({ block: 'nearest' });
      await focusSoon(this, stage === 'picture' ? '.trace-drop input' : '.board-frame');
    });
  }

  private onChosen(event: Event): void {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    input.value = '';
    if (file !== undefined) void this.read(file);
  }

  private onDrop(event: DragEvent): void {
    event.preventDefault();
    // Else the page would take it for a quilt file.
    event.stopPropagation();
    const file = event.dataTransfer?.files[0];
    if (file !== undefined) void this.read(file);
  }

  private async read(file: File): Promise<void> {
    this.reading = true;
    const read = await readPicture(file);
    this.reading = false;
    this.fault = read.ok ? null : read.why;
    if (read.ok) {
      this.picture = read.picture;
      this.size = null;
      this.goTo('size');
    }
  }

  private onDone(): void {
    const { drawn } = this.tracer;
    if ('block' in drawn) {
      sendDrawn(this, drawn.block);
    }
  }
}

/** The rectangle that is known, with some of what lies round it; of a picture taken straight on, all. */
function frameOf(size: Straightening, units: Units): Box | null {
  if (size.kind === 'length') return null;
  const [width, height] = [lengthIn(units.quilt, size.width), lengthIn(units.quilt, size.height)];
  const round = 0.04 * Math.max(width, height);
  return { min: [-round, -round], max: [width + round, height + round] };
}

const KEYS: readonly (readonly [keys: string, what: string])[] = [
  ['Arrows', 'move the cross by a pixel; with Shift by twenty'],
  ['Enter', 'click there'],
  ['[ and ]', 'leap to the corner or middle before, after'],
  ['m', 'take hold of the corner, or of the middle of a line, and let go'],
  ['a', 'the next line is an arc'],
  ['c', 'close the patch'],
  ['h', 'choose what lies here'],
  ['o', 'mark the centre here'],
  ['Delete', 'delete what is chosen'],
  ['Ctrl Z, Ctrl Y', 'undo, redo'],
  ['+, −, 0', 'larger, smaller, all of it'],
  ['Escape', 'give up what is begun'],
];

function keyList(): TemplateResult {
  return html`<details class="trace-keys">
    <summary>Keys, fingers and pen</summary>
    <p class="hint">
      Drag a corner to move it; drag the diamond in the middle of a line to pull it into an arc. Drag anywhere else to push the
      picture; two fingers or the wheel zoom. On the picture these keys work:
    </p>
    <dl>${KEYS.map(([keys, what]) => html`<div><dt>${keys}</dt><dd>${what}</dd></div>`)}</dl>
  </details>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-trace': Trace;
  }
}
