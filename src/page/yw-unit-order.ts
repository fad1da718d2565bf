import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { sayHeld } from '../cutting/say-step-fault.ts';
import { findSewingOrder, isSewable, type NotSewable, type SewingOrder } from '../cutting/sewing-order.ts';
import { type CheckedOrder, checkOrder, checkTypedOrder } from '../cutting/typed-order.ts';
import type { UnitCut } from '../cutting/unit-cuts.ts';
import { type UnitLie, unitLies } from '../cutting/unit-lies.ts';
import type { Drawing } from '../draw/display-list.ts';
import { type DrawnPatch, drawBeforeFlip, drawBlocked, drawStep } from '../draw/draw-sewing.ts';
import { placesOf } from '../quilt/places.ts';
import type { Block, Quilt, Unit } from '../quilt/quilt.ts';
import { mirrorOutline } from '../shape/outline.ts';
import { sendEdit } from './edit-event.ts';
import { freshId, PageElement } from './page-element.ts';
import { colourOfRole } from './role-colour.ts';
import { partUnit, setUnitOrder } from './sewing-edits.ts';
import { sayCut, sayLie, sayPlaces, sayStep } from './sewing-words.ts';
import { shownDrawing } from './shown-drawing.ts';

/** As large as its text is reckoned for: UNIT_TEXTS small texts of 3/4 rem along its longer side. */
function picture(drawing: Drawing, prefix: string): TemplateResult {
  const { width, height } = drawing.box;
  const rems = 15 * Math.min(1, width / height);
  return html`<div class="step-picture" style="width:${Math.round(rems * 100) / 100}rem">${shownDrawing(drawing, prefix)}</div>`;
}

/** One foundation: its order step by step, another order tried, what to do where there is none, and its pieces before the flip. */
@customElement('yw-unit-order')
export class UnitOrder extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) block: Block | null = null;
  @property({ attribute: false }) unit: Unit | null = null;
  /** What she typed or chose; null: as drawn. */
  @state() private tried: string | null = null;
  @state() private refusal: string | null = null;
  /** Which of the ways in which its prints lie is shown. */
  @state() private shownLie = 0;
  private readonly stem = freshId('unit');
  private drawn: CheckedOrder = { fault: '' };
  private found: SewingOrder | null = null;
  private key = '';

  protected override willUpdate(changed: PropertyValues): void {
    const { unit } = this;
    const key = unit === null ? '' : JSON.stringify(unit.patches.map((patch) => [patch.number, patch.outline]));
    if (unit !== null && changed.has('unit') && key !== this.key) {
      this.key = key;
      this.tried = null;
      this.refusal = null;
      this.drawn = checkOrder(
        unit,
        unit.patches.map((_, index) => index),
      );
      this.found = findSewingOrder(unit.patches.map((patch) => patch.outline));
    }
  }

  protected override render(): TemplateResult | typeof nothing {
    const { quilt, block, unit, found } = this;
    if (quilt === null || block === null || unit === null || found === null) {
      return nothing;
    }
    const patches = unit.patches.map(
      ({ number, outline, role }): DrawnPatch => ({
        name: `${unit.id}${number}`,
        outline,
        colour: colourOfRole(quilt, role),
      }),
    );
    const count = placesOf(unit).length;
    return html`<section class="unit-order" aria-labelledby="${this.stem}-title">
      <h3 id="${this.stem}-title">
        ${unit.id}${unit.name === undefined ? '' : `: ${unit.name}`}<span class="hint">, ${count === 1 ? 'one' : count} to a block</span>
      </h3>
      ${isSewable(found) ? this.order(block, unit, patches, found.order, found.others) : this.blocked(block, unit, patches, found)}
      ${'fault' in this.drawn ? nothing : this.lies(quilt, block, unit, patches)}
    </section>`;
  }

  private order(
    block: Block,
    unit: Unit,
    patches: readonly DrawnPatch[],
    best: readonly number[],
    others: readonly (readonly number[])[],
  ): TemplateResult {
    const { tried, drawn } = this;
    const checked = tried === null ? drawn : checkTypedOrder(tried, unit);
    const shown = 'fault' in checked ? null : checked;
    const drawnFault = 'fault' in drawn ? drawn.fault : null;
    const say = (order: readonly number[]): string => order.map((index) => unit.patches[index]!.number).join(' ');
    const asDrawn = say(unit.patches.map((_, index) => index));
    const starts = [best, ...others].map(say).filter((each) => each !== asDrawn);
    const fieldId = `${this.stem}-order`;
    const startId = `${this.stem}-start`;
    const fault = tried !== null && 'fault' in checked ? checked.fault : this.refusal;
    return html`
      ${
        drawnFault === null
          ? nothing
          : html`<p class="fault">As numbered it cannot be sewn: ${drawnFault} It can be in another order: ${say(best)}.</p>`
      }
      ${shown === null ? nothing : this.steps(unit, patches, shown.order, shown.seams)}
      <div class="order-fields">
        <div class="field">
          <label for=${fieldId}>Sewing order of ${unit.id}</label>
          <input
            id=${fieldId}
            type="text"
            inputmode="numeric"
            autocomplete="off"
            .value=${live(tried ?? asDrawn)}
            aria-describedby="${fieldId}-hint ${fieldId}-fault"
            aria-invalid=${fault === null ? nothing : 'true'}
            @change=${(event: Event) => this.onTyped(event)}
          />
          <p class="hint" id="${fieldId}-hint">type another to see whether it can be sewn</p>
          <p class="fault" id="${fieldId}-fault" role="alert" ?hidden=${fault === null}>${fault ?? ''}</p>
        </div>
        ${
          starts.length === 0
            ? nothing
            : html`<div class="field">
                <label for=${startId}>Orders that can be sewn</label>
                <select id=${startId} @change=${(event: Event) => this.onChosen(event)}>
                  <option value="" .selected=${live(tried === null)}>${asDrawn}, as numbered${drawnFault === null ? '' : ': cannot be sewn'}</option>
                  ${starts.map((each) => html`<option value=${each} .selected=${live(tried === each)}>${each}</option>`)}
                </select>
                <p class="hint">the one whose seams cross the least of other seams first</p>
              </div>`
        }
      </div>
      ${shown === null || tried === null ? nothing : this.keep(block, unit, shown.order)}
    `;
  }

  private onTyped(event: Event): void {
    const text = (event.target as HTMLInputElement).value.trim();
    this.tried = text === '' ? null : text;
    this.refusal = null;
  }

  private onChosen(event: Event): void {
    const { value } = event.target as HTMLSelectElement;
    this.tried = value === '' ? null : value;
    this.refusal = null;
  }

  private keep(block: Block, unit: Unit, order: readonly number[]): TemplateResult {
    return block.units === undefined
      ? html`<p class="hint">It can be sewn so. The block is drawn from numbers, so its patches keep theirs.</p>`
      : html`<p>
          It can be sewn so.
          <button
            type="button"
            @click=${() => {
              this.refusal = sendEdit(this, setUnitOrder(block.id, unit.id, order));
            }}
          >
            Number ${unit.id} in this order
          </button>
        </p>`;
  }

  private steps(
    unit: Unit,
    patches: readonly DrawnPatch[],
    order: readonly number[],
    seams: Extract<CheckedOrder, { readonly order: unknown }>['seams'],
  ): TemplateResult {
    const names = patches.map(({ name }) => name);
    return html`<ol class="steps" aria-label="Steps of ${unit.id}">
      ${order.map(
        (index, step) => html`<li>
          ${picture(drawStep(patches, order, step, seams[step] ?? null), `${this.stem}-step-${step}`)}
          <p>${sayStep(names[index]!, seams[step] ?? null, names)}</p>
        </li>`,
      )}
    </ol>`;
  }

  private blocked(
    block: Block,
    unit: Unit,
    patches: readonly DrawnPatch[],
    { blocked, cuts, units }: NotSewable,
  ): TemplateResult {
    const names = patches.map(({ name }) => name);
    return html`
      <p class="fault">
        No order can be sewn on one foundation${blocked.proved ? '' : ', as far as was tried'}: these keep each other from being added
        along one straight seam.
      </p>
      <ul class="faults">
        ${blocked.patches.map((index, i) => html`<li>${names[index]} ${sayHeld(blocked.faults[i]!, names)}.</li>`)}
      </ul>
      ${
        cuts.length > 0
          ? html`<ol class="steps">
              ${cuts.map((cut, i) => this.cut(block, unit, patches, blocked.patches, cut, i))}
            </ol>`
          : html`${picture(drawBlocked(patches, blocked.patches, null), `${this.stem}-blocked`)}
              ${this.severalUnits(block, unit, names, units)}`
      }
    `;
  }

  private severalUnits(
    block: Block,
    unit: Unit,
    names: readonly string[],
    units: readonly (readonly number[])[] | null,
  ): TemplateResult {
    if (units === null) {
      return html`<p>No straight cut along its seams mends it. Draw it in smaller units, or sew it without paper.</p>`;
    }
    return html`<p>
      One cut does not mend it; ${units.length} units can be sewn: ${units.map((part) => part.map((index) => names[index]).join(' ')).join('; ')}.
      ${this.partButton(block, unit, units)}
    </p>`;
  }

  private cut(
    block: Block,
    unit: Unit,
    patches: readonly DrawnPatch[],
    blocking: readonly number[],
    cut: UnitCut,
    i: number,
  ): TemplateResult {
    const names = patches.map(({ name }) => name);
    return html`<li>
      ${picture(drawBlocked(patches, blocking, cut.line), `${this.stem}-cut-${i}`)}
      <p>${sayCut(cut, names)}</p>
      ${cut.parted.length > 0 ? nothing : this.partButton(block, unit, cut.parts)}
    </li>`;
  }

  private partButton(block: Block, unit: Unit, parts: readonly (readonly number[])[]): TemplateResult | typeof nothing {
    if (block.units === undefined) {
      return nothing;
    }
    const sewn = parts.map((part) => {
      const found = findSewingOrder(part.map((index) => unit.patches[index]!.outline));
      return isSewable(found) ? found.order.map((k) => part[k]!) : part;
    });
    return html`<button
      type="button"
      @click=${() => {
        this.refusal = sendEdit(this, partUnit(block.id, unit.id, sewn));
      }}
    >
      Part ${unit.id} so
    </button>`;
  }

  /** The commonest mistake at the machine is a print that points the wrong way once it is flipped. */
  private lies(
    quilt: Quilt,
    block: Block,
    unit: Unit,
    patches: readonly DrawnPatch[],
  ): TemplateResult | typeof nothing {
    const scheme = quilt.schemes.find(({ id }) => id === quilt.scheme);
    const all = scheme === undefined ? [] : unitLies(quilt, scheme, block, unit);
    const shown = all[Math.min(this.shownLie, all.length - 1)];
    if (shown === undefined) {
      return nothing;
    }
    return html`<div class="before-flip">
      <h4>Before the flip, from the paper side</h4>
      <p class="hint">
        You look at the printed side; the cloth lies under the paper, its right side to you, the raw edge a seam allowance past the
        thick line. Flipped over that line it fills the dashed shape. 12 o’clock is the top of the paper as shown.
      </p>
      ${all.length < 2 ? nothing : this.whichLie(unit, all)}
      <ul class="steps">
        ${shown.pieces.map(({ index, lie, cloth }) => {
          const { name } = patches[index]!;
          const hands = shown.mirrored
            ? patches.map((patch) => ({ ...patch, outline: mirrorOutline(patch.outline) }))
            : patches;
          const fill = { colour: cloth.colour, print: cloth.print };
          return html`<li>
            ${picture(drawBeforeFlip(hands, index, lie, fill), `${this.stem}-flip-${index}`)}
            <p>${sayLie(name, lie, cloth.print)} <span class="hint">${cloth.name}</span></p>
          </li>`;
        })}
      </ul>
    </div>`;
  }

  private whichLie(unit: Unit, all: readonly UnitLie[]): TemplateResult {
    const id = `${this.stem}-lie`;
    return html`<div class="field">
      <label for=${id}>Where in the block</label>
      <select
        id=${id}
        @change=${(event: Event) => {
          this.shownLie = Number((event.target as HTMLSelectElement).value);
        }}
      >
        ${all.map((lie, i) => html`<option value=${i} .selected=${live(i === this.shownLie)}>${sayPlaces(lie)}</option>`)}
      </select>
      <p class="hint">places of ${unit.id} are counted anticlockwise from where it is drawn</p>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-unit-order': UnitOrder;
  }
}
