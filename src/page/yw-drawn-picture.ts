import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawBlock } from '../draw/draw-block.ts';
import { addBlock, type FormBlock } from '../quilt/add-block.ts';
import type { DrawnBlock } from '../quilt/drawn-block.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { blockExtent } from './block-extent.ts';
import { type Filling, fillRoles, firstPrint, rolesWithoutCloth } from './new-cloths.ts';
import { freshId, PageElement } from './page-element.ts';
import { shownDrawing } from './shown-drawing.ts';
import { WidthWatch } from './width-watch.ts';

/** A block as it would look in the quilt, before it is put in. Roles without a cloth are shown in the cloths they would be given. */
@customElement('yw-drawn-picture')
export class DrawnPicture extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) drawn: DrawnBlock | FormBlock | null = null;
  private readonly watch = new WidthWatch(this, '.drawn-picture');
  private readonly stem = freshId('drawn');

  protected override render(): TemplateResult {
    return html`<div class="drawn-picture">${this.picture()}</div>`;
  }

  private picture(): TemplateResult | typeof nothing {
    const { quilt, drawn, watch } = this;
    if (quilt === null || drawn === null || watch.width === 0) {
      return nothing;
    }
    try {
      const added = addBlock(quilt, drawn);
      const shown = inFirstCloths(added.quilt, Object.values(added.roles));
      const block = shown.blocks.find(({ id }) => id === added.block)!;
      const scheme = shown.schemes.find(({ id }) => id === shown.scheme)!;
      const textSize = (watch.smallText * blockExtent(block, shown.unit)) / watch.width;
      return shownDrawing(drawBlock({ quilt: shown, scheme, block, blanks: [], textSize }), this.stem);
    } catch (error) {
      return html`<p class="fault">${error instanceof Error ? error.message : String(error)}</p>`;
    }
  }
}

function inFirstCloths(quilt: Quilt, roles: readonly string[]): Quilt {
  const bare = rolesWithoutCloth(quilt, (role) => roles.includes(role));
  return fillRoles(new Map(bare.map((role): [string, Filling] => [role.id, { print: firstPrint(role) }])))(quilt);
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-drawn-picture': DrawnPicture;
  }
}
