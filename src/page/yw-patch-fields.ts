import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { freshIdFor } from '../quilt/fresh-id.ts';
import type { Block, Quilt } from '../quilt/quilt.ts';
import { addRole, newRoleName } from './block-edits.ts';
import type { PatchInSight } from './chosen-patch.ts';
import { sendEdit } from './edit-event.ts';
import { PageElement } from './page-element.ts';
import { removePatch, setPatchNumber, setPatchRole, setUnit } from './patch-edits.ts';
import './yw-field.ts';

/** What else can be changed of a patch and its unit where a block's units are listed. */
@customElement('yw-patch-fields')
export class PatchFields extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) block: Block | null = null;
  @property({ attribute: false }) sight: PatchInSight | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { quilt, block, sight } = this;
    if (quilt === null || block === null || sight === null) {
      return nothing;
    }
    if (block.units === undefined) {
      return html`<p class="hint">Its shape comes from the numbers of ${block.name}.</p>`;
    }
    const { unit, patch } = sight.each;
    const name = { unit: unit.id, number: patch.number };
    const roles = quilt.roles.map((role) => ({ value: role.id, words: role.name }));
    const fresh = newRoleName(quilt);
    return html`<details class="finer">
      <summary>Role, number and unit of ${unit.id}${patch.number}</summary>
      <div class="pair">
        <yw-choice-field
          label="Role"
          .value=${patch.role}
          .choices=${[...roles, { value: '', words: 'a new role' }]}
          .edit=${(role: string) => (role === '' ? inNewRole(quilt, fresh, block.id, name) : setPatchRole(block.id, name, role))}
        ></yw-choice-field>
        <yw-number-field
          label="Number"
          hint="in sewing order, on paper"
          .min=${1}
          .max=${999}
          .value=${patch.number}
          .edit=${(number: number) => setPatchNumber(block.id, name, number)}
        ></yw-number-field>
        <yw-text-field
          label="Name of unit ${unit.id}"
          .value=${unit.name ?? ''}
          .edit=${(text: string) => setUnit(block.id, unit.id, { name: text })}
        ></yw-text-field>
        <label class="tick">
          <input
            type="checkbox"
            .checked=${live(unit.paper)}
            @change=${(event: Event) => sendEdit(this, setUnit(block.id, unit.id, { paper: (event.target as HTMLInputElement).checked }))}
          />
          Unit ${unit.id} is sewn onto paper
        </label>
      </div>
      <p><button type="button" class="quiet" @click=${() => sendEdit(this, removePatch(block.id, name))}>
        Take ${unit.id}${patch.number} out of the block
      </button></p>
    </details>`;
  }
}

/** The role is added first, under the id that it will then have. */
function inNewRole(quilt: Quilt, fresh: string, block: string, patch: { unit: string; number: number }) {
  const id = freshIdFor(fresh, quilt.roles, 'role');
  return (old: Quilt): Quilt => setPatchRole(block, patch, id)(addRole(fresh)(old));
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-patch-fields': PatchFields;
  }
}
