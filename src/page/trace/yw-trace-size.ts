import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Picture } from '../../keep/picture.ts';
import { lengthIn } from '../../quilt/measure.ts';
import type { Length } from '../../quilt/quilt.ts';
import { pixelLength, type Straightening, straighteningFault, trueMap } from '../../quilt/tracing/straightening.ts';
import { scale } from '../../shape/point.ts';
import { freshId, PageElement } from '../page-element.ts';
import { fieldText, typedLength, UNITS, type Units } from '../written.ts';
import { AS_IT_IS, SizeHand, startSize } from './size-hand.ts';
import { typedField } from './trace-field.ts';
import './yw-picture-board.ts';

/** How large a picture's page is: from a rectangle on it, or from one length. Fires `yw-sized`. */
@customElement('yw-trace-size')
export class TraceSize extends PageElement {
  @property({ attribute: false }) picture: Picture | null = null;
  /** What was told before, to be changed. */
  @property({ attribute: false }) former: Straightening | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private size: Straightening | null = null;
  @state() private faults: Readonly<Record<string, string>> = {};
  @state() private fault: string | null = null;
  private readonly ids = freshId('trace-size');
  private readonly hand = new SizeHand(
    () => this.size!,
    (to) => {
      this.size = to;
      this.fault = null;
    },
  );

  protected override willUpdate(): void {
    if (this.size === null && this.picture !== null) {
      this.size = this.former ?? this.start('rectangle');
    }
  }

  protected override render(): TemplateResult | typeof nothing {
    const { picture, size } = this;
    if (picture === null || size === null) return nothing;
    return html`<div class="trace-work">
      <yw-picture-board
        label="The picture. Arrow keys move a cross, Enter sets a corner there; plus and minus zoom, square brackets leap between corners."
        .picture=${picture.canvas}
        .map=${AS_IT_IS}
        .hand=${this.hand}
      ></yw-picture-board>
      <div class="trace-panel">
        <fieldset class="trace-ways">
          <legend>What do you know of its size?</legend>
          ${this.way('rectangle', 'A rectangle’s sides', 'For a photo: the page’s edge, a printed frame, a block. Takes the slant out.')}
          ${this.way('length', 'One length', 'For a scan, or a picture taken straight on.')}
        </fieldset>
        ${
          size.kind === 'rectangle'
            ? html`<p>
                  Drag the four crosses to the rectangle’s corners, or click the corners in turn: top left, top right, bottom
                  right, bottom left. Zoom in for the last bit.
                </p>
                <div class="numbers">${this.length('Its width', 'width', size.width)} ${this.length('Its height', 'height', size.height)}</div>`
            : html`<p>Drag the two crosses to the ends of a length you know, or click both ends.</p>
                <div class="numbers">${this.length('How long it is', 'length', size.length)}</div>`
        }
        <p class="hint">${this.hand.nextWords}</p>
        <p class="fault" role="alert" ?hidden=${this.fault === null}>${this.fault ?? ''}</p>
        <button type="button" class="trace-go" @click=${this.onDone}>Trace on it</button>
        <p class="hint">${this.fineness()}</p>
      </div>
    </div>`;
  }

  private way(kind: Straightening['kind'], words: string, hint: string): TemplateResult {
    const id = `${this.ids}-${kind}`;
    return html`<div class="trace-way">
      <input
        type="radio"
        id=${id}
        name=${this.ids}
        .checked=${this.size?.kind === kind}
        aria-describedby="${id}-hint"
        @change=${() => {
          this.size = this.start(kind);
          this.hand.restart();
          this.fault = null;
        }}
      />
      <label for=${id}>${words}</label>
      <p class="hint" id="${id}-hint">${hint}</p>
    </div>`;
  }

  private start(kind: Straightening['kind']): Straightening {
    const { width, height } = this.picture!.canvas;
    return this.former?.kind === kind ? this.former : startSize(kind, width, height);
  }

  private length(label: string, field: string, value: Length): TemplateResult {
    return typedField({
      id: `${this.ids}-${field}`,
      label,
      value: value === 0 ? '' : fieldText(value, this.units),
      fault: this.faults[field] ?? null,
      onTyped: (text) => {
        const { [field]: _, ...others } = this.faults;
        this.faults = others;
        this.fault = null;
        try {
          const length = text === '' ? 0 : typedLength(text, this.units);
          this.size = { ...this.size!, [field]: length } as Straightening;
        } catch (error) {
          this.faults = { ...others, [field]: (error as Error).message };
        }
      },
    });
  }

  /** What one pixel of the picture is on the page, so that she knows how fine she can be. */
  private fineness(): string {
    const { size, units } = this;
    if (size === null || straighteningFault(size, units.quilt) !== null) return '';
    const map = trueMap(size, units.quilt);
    const places =
      size.kind === 'rectangle' ? size.corners : [scale([size.from[0] + size.to[0], size.from[1] + size.to[1]], 0.5)];
    const coarsest = Math.max(...places.map((place) => pixelLength(map, place)));
    const inch = lengthIn(units.quilt, '1 in');
    const perInch = Math.round(inch / coarsest);
    const enough = perInch >= 40 ? '' : ' That is coarse: a nearer or larger picture would be traced more truly.';
    return `An inch is at least ${perInch} pixels of the picture.${enough}`;
  }

  private onDone(): void {
    const { size, units } = this;
    if (size === null || Object.keys(this.faults).length > 0) return;
    this.fault = straighteningFault(size, units.quilt);
    if (this.fault === null) {
      this.dispatchEvent(new CustomEvent<Straightening>('yw-sized', { detail: size, bubbles: true }));
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-trace-size': TraceSize;
  }
}
