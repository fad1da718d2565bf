import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Cloth, Length, ShelfPiece } from '../quilt/quilt.ts';
import { addPiece, freeId, removePiece, setPiece } from './cloth-edits.ts';
import { sendEdit } from './edit-event.ts';
import { PageElement } from './page-element.ts';
import { UNITS, type Units } from './written.ts';
import './yw-field.ts';

/** The pieces of a cloth that she owns: changed, added, taken away. */
@customElement('yw-shelf-pieces')
export class ShelfPieces extends PageElement {
  @property({ attribute: false }) cloth: Cloth | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };

  protected override render(): TemplateResult | typeof nothing {
    const { cloth } = this;
    if (cloth === null) {
      return nothing;
    }
    return html`
      ${(cloth.pieces ?? []).map((piece) => this.piece(cloth, piece))}
      <p><button type="button" class="add-piece" @click=${() => this.add(cloth)}>Add a piece from the shelf</button></p>
    `;
  }

  private piece(cloth: Cloth, piece: ShelfPiece): TemplateResult {
    const size = (label: string, field: 'width' | 'length', hint: string) => html`<yw-length-field
      label=${label}
      hint=${hint}
      .value=${piece[field]}
      .units=${this.units}
      .edit=${(value: Length) => setPiece(cloth.id, piece.id, { [field]: value })}
    ></yw-length-field>`;
    return html`<fieldset class="shelf-piece">
      <legend>On the shelf: “${piece.id}”</legend>
      <div class="cloth-numbers">
        ${size('Width', 'width', 'across the grain, as it lies now')} ${size('Length', 'length', 'along the selvage')}
        <yw-number-field
          label="How many"
          .value=${piece.count ?? 1}
          .min=${1}
          .max=${999}
          .edit=${(count: number) => setPiece(cloth.id, piece.id, { count: count === 1 ? undefined : count })}
        ></yw-number-field>
      </div>
      <p class="row">
        <label class="tick">
          <input
            type="checkbox"
            .checked=${piece.washed !== false}
            @change=${(event: Event) => this.onWashed(cloth, piece, event)}
          />
          Washed already, so it shrinks no more
        </label>
        <button type="button" @click=${() => this.takeAway(cloth, piece)}>Take “${piece.id}” away</button>
      </p>
    </fieldset>`;
  }

  /** A fat quarter, which is what lies on most shelves. */
  private add(cloth: Cloth): void {
    const size = this.units.quilt === 'in' ? { width: '21 in', length: '18 in' } : { width: '55 cm', length: '50 cm' };
    sendEdit(this, addPiece(cloth.id, { id: freeId('piece', cloth.pieces ?? []), ...size }));
  }

  private takeAway(cloth: Cloth, piece: ShelfPiece): void {
    sendEdit(this, removePiece(cloth.id, piece.id));
    this.querySelector<HTMLButtonElement>('.add-piece')?.focus();
  }

  private onWashed(cloth: Cloth, piece: ShelfPiece, event: Event): void {
    const washed = (event.target as HTMLInputElement).checked;
    sendEdit(this, setPiece(cloth.id, piece.id, { washed: washed ? undefined : false }));
  }
}
