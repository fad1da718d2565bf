import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { type BlockToWrite, blockToSvg } from '../../draw/block-to-svg.ts';
import { fileNameOf, saveTextFile } from '../../keep/file.ts';
import type { Block, Quilt } from '../../quilt/quilt.ts';
import { unitsOf } from '../../quilt/units-of.ts';
import { PageElement } from '../page-element.ts';

/** Saves a block as an SVG drawing at its true size, in its cloths' colours, which can be changed elsewhere and read back. */
@customElement('yw-save-drawing')
export class SaveDrawing extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) block: Block | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { quilt, block } = this;
    if (quilt === null || block === null) return nothing;
    return html`<button type="button" class="quiet" @click=${() => saveBlock(quilt, block)}>
      Save ${block.name} as an SVG drawing
    </button>`;
  }
}

function saveBlock(quilt: Quilt, block: Block): void {
  saveTextFile(fileNameOf(block.name, 'svg'), blockToSvg(blockToWrite(quilt, block)), 'image/svg+xml');
}

/** A block with what its roles are called and the colour of the first cloth that fills each. */
export function blockToWrite(quilt: Quilt, block: Block): BlockToWrite {
  const scheme = quilt.schemes.find(({ id }) => id === quilt.scheme);
  const roles = quilt.roles.map(({ id, name }) => {
    const [first] = [scheme?.cloths[id] ?? []].flat();
    return { id, name, colour: quilt.cloths.find((cloth) => cloth.id === first)?.colour ?? '#d8d4cc' };
  });
  return { name: block.name, units: unitsOf(block, quilt.unit), unit: quilt.unit, roles };
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-save-drawing': SaveDrawing;
  }
}
