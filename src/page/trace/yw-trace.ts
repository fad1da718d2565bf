import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { keptPicture, type Picture, readKeptPicture } from '../../keep/picture.ts';
import { convert, lengthIn } from '../../quilt/measure.ts';
import type { LengthUnit, Quilt } from '../../quilt/quilt.ts';
import { moveTracing } from '../../quilt/tracing/mend-lines.ts';
import {
  between,
  type Straightening,
  shrinkStraightening,
  straighteningFault,
  trueMap,
} from '../../quilt/tracing/straightening.ts';
import { EMPTY_TRACING } from '../../quilt/tracing/tracing.ts';
import { type Point, scale } from '../../shape/point.ts';
import { sendDrawn } from '../drawn-event.ts';
import { focusSoon } from '../focus-soon.ts';
import { PageElement } from '../page-element.ts';
import { UNITS, type Units } from '../written.ts';
import { TraceKeeper } from './trace-keeper.ts';
import { TRACE_SEWING } from './trace-sewing.ts';
import { Tracer } from './tracer.ts';
import type { GoOn } from './yw-trace-picture.ts';
import type { TraceDone } from './yw-trace-sheet.ts';
import './yw-trace-picture.ts';
import './yw-trace-sheet.ts';
import './yw-trace-size.ts';

/** Places this near to a copy of each other are the same: three clicks' slip. */
const SAME = '3/32 in';
const UNNAMED = 'Traced block';

type Stage = 'picture' | 'size' | 'trace';

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
  @state() private stage: Stage = 'picture';
  @state() private fault: string | null = null;
  @state() private name = UNNAMED;
  /** Raised with every change of the tracer, so that what shows it is made anew. */
  @state() private turns = 0;
  /** In which the tracing is. */
  private unit: LengthUnit = 'in';
  private readonly tracer = new Tracer(() => {
    this.turns++;
    this.keep();
  });
  private readonly keeper = new TraceKeeper();

  override connectedCallback(): void {
    super.connectedCallback();
    void this.takeUp();
  }

  protected override willUpdate(changed: PropertyValues): void {
    const unit = this.units.quilt;
    if (unit !== this.unit) {
      this.tracer.restart(moveTracing(this.tracer.tracing, inUnit(this.unit, unit)));
      this.unit = unit;
    }
    if (changed.has('quilt') || changed.has('name' as keyof Trace) || changed.has('units')) {
      const known = (this.quilt?.roles ?? []).map(({ id, name, facing }) => ({ id, name, facing }));
      this.tracer.options = { name: this.name, known, within: lengthIn(unit, SAME), sewing: TRACE_SEWING };
    }
  }

  protected override render(): TemplateResult {
    return html`<section
      class="trace"
      aria-label="Trace over a picture"
      @yw-picture=${this.onPicture}
      @yw-go-on=${this.onGoOn}
      @yw-afresh=${this.onAfresh}
      @yw-sized=${this.onSized}
      @yw-traced=${this.onTraced}
      @yw-trace-name=${this.onName}
    >
      <ol class="trace-steps">
        ${this.step('picture', '1. The picture', true)} ${this.step('size', '2. Its true size', this.picture !== null)}
        ${this.step('trace', '3. The patches', this.picture !== null && this.size !== null)}
      </ol>
      <p class="fault" role="alert" ?hidden=${this.fault === null}>${this.fault ?? ''}</p>
      ${this.shown()}
    </section>`;
  }

  private step(stage: Stage, words: string, open: boolean): TemplateResult {
    const current = this.stage === stage ? 'step' : nothing;
    return html`<li>
      <button type="button" class="quiet" aria-current=${current} ?disabled=${!open} @click=${() => this.goTo(stage)}>${words}</button>
    </li>`;
  }

  private shown(): TemplateResult {
    const { stage, picture, size, units } = this;
    if (stage === 'picture' || picture === null) {
      const blocks = this.quilt?.blocks ?? [];
      return html`<yw-trace-picture .present=${picture?.name ?? null} .blocks=${blocks}></yw-trace-picture>`;
    }
    if (stage === 'size' || size === null) {
      return html`<yw-trace-size .picture=${picture} .former=${size} .units=${units}></yw-trace-size>`;
    }
    return html`<yw-trace-sheet
      .tracer=${this.tracer}
      .turns=${this.turns}
      .picture=${picture}
      .size=${size}
      .quilt=${this.quilt}
      .units=${units}
    ></yw-trace-sheet>`;
  }

  /** To another step, with its beginning in sight and the board ready for keys. */
  private goTo(stage: Stage): void {
    this.stage = stage;
    this.focusBoard();
  }

  private focusBoard(): void {
    const { stage } = this;
    void this.updateComplete.then(async () => {
      this.querySelector('.trace-steps')?.scrollIntoView({ block: 'start' });
      await focusSoon(this, stage === 'picture' ? '.trace-drop input' : '.board-frame');
    });
  }

  private onPicture(event: CustomEvent<Picture>): void {
    this.picture = event.detail;
    this.size = null;
    this.fault = null;
    this.keep();
    this.goTo('size');
  }

  private onSized(event: CustomEvent<Straightening>): void {
    const before = this.size;
    this.size = event.detail;
    if (before !== null && before !== this.size) {
      const move = between(trueMap(before, this.unit), trueMap(this.size, this.unit));
      this.tracer.restart(moveTracing(this.tracer.tracing, move));
    }
    this.keep();
    this.goTo('trace');
  }

  private onName(event: CustomEvent<string>): void {
    this.name = event.detail === '' ? UNNAMED : event.detail;
  }

  private onAfresh(): void {
    this.picture = null;
    this.size = null;
    this.name = UNNAMED;
    this.tracer.restart(EMPTY_TRACING);
    void this.keeper.forget();
    this.goTo('picture');
  }

  private onTraced(event: CustomEvent<TraceDone>): void {
    const { block, keep } = event.detail;
    if (!keep || this.picture === null || this.size === null) {
      sendDrawn(this, block);
      return;
    }
    const { address, shrunk } = keptPicture(this.picture);
    const size = shrinkStraightening(this.size, shrunk);
    sendDrawn(this, { ...block, traced: { picture: address, size, unit: this.unit, tracing: this.tracer.tracing } });
  }

  private async onGoOn(event: CustomEvent<GoOn>): Promise<void> {
    const { name, traced } = event.detail;
    const read = await readKeptPicture(traced.picture, `${name}, as kept`);
    this.fault = read.ok ? null : read.why;
    if (!read.ok) return;
    this.name = name;
    this.goOnWith(read.picture, traced.size, traced.unit, traced.tracing);
    this.focusBoard();
  }

  private goOnWith(picture: Picture, size: Straightening | null, unit: LengthUnit, tracing: Tracer['tracing']): void {
    const fault = size === null ? null : straighteningFault(size, this.unit);
    this.fault = fault;
    this.picture = picture;
    this.size = fault === null ? size : null;
    this.tracer.restart(moveTracing(tracing, inUnit(unit, this.unit)));
    this.stage = this.size === null ? 'size' : 'trace';
  }

  /** What was under way when the page was last closed. */
  private async takeUp(): Promise<void> {
    const kept = await this.keeper.taken();
    if (kept !== null && this.picture === null) {
      this.goOnWith(kept.picture, kept.size, kept.unit, kept.tracing);
    }
  }

  private keep(): void {
    const { picture, size, unit, tracer } = this;
    if (picture !== null) this.keeper.keep(picture, { size, unit, tracing: tracer.tracing });
  }
}

/** From places in one unit to places in another. */
function inUnit(from: LengthUnit, to: LengthUnit): (place: Point) => Point {
  const by = convert(1, from, to);
  return (place) => (by === 1 ? place : scale(place, by));
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-trace': Trace;
  }
}
