import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Block } from '../quilt/quilt.ts';
import { copyBlock, removeBlock, setBlock } from './block-edits.ts';
import type { Edit } from './edit-event.ts';
import { sendEdit } from './edit-event.ts';
import { PageElement } from './page-element.ts';
import { UNITS, type Units } from './written.ts';
import './yw-form-numbers.ts';

/** All of one block that is said in numbers and words: name, how many, how turned, its form's numbers; and the ways to copy it or be rid of it. */
@customElement('yw-block-card')
export class BlockCard extends PageElement {
  @property({ attribute: false }) block: Block | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };

  protected override render(): TemplateResult | typeof nothing {
    const { block } = this;
    if (block === null) {
      return nothing;
    }
    return html`
      <yw-form-numbers .block=${block} .units=${this.units}></yw-form-numbers>
      <div class="numbers block-names">
        <yw-text-field
          label="Name of the block"
          wanted="a name"
          .value=${block.name}
          .edit=${(name: string) => setBlock(block.id, { name })}
        ></yw-text-field>
        <yw-text-field
          label="Turned in the quilt"
          hint="degrees, copy by copy, then again from the first: 0 90 180 270"
          .value=${(block.turns ?? [0]).join(' ')}
          .edit=${(text: string) => setTurns(block.id, text)}
        ></yw-text-field>
      </div>
      <div class="row-buttons">
        <button type="button" class="quiet" @click=${() => sendEdit(this, copyBlock(block.id))}>Copy ${block.name}</button>
        <button type="button" class="quiet" @click=${() => sendEdit(this, removeBlock(block.id))}>
          Take ${block.name} out of the quilt
        </button>
      </div>
    `;
  }
}

/** Numbers with blanks, commas or semicolons between them. @throws RangeError that says what was expected */
function setTurns(block: string, text: string): Edit {
  const turns = text
    .split(/[\s,;°]+/)
    .filter((part) => part !== '')
    .map(Number);
  if (turns.some((turn) => !Number.isFinite(turn))) {
    throw new RangeError(`Expected degrees such as 0 90 180 270; found “${text}”.`);
  }
  return setBlock(block, { turns: turns.length === 0 || turns.every((turn) => turn === 0) ? undefined : turns });
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-block-card': BlockCard;
  }
}
