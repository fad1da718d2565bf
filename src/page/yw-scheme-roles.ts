import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Problem } from '../cutting/cut-list.ts';
import type { Cloth, Facing, Quilt, Role } from '../quilt/quilt.ts';
import { sendEdit } from './edit-event.ts';
import { setFacing, setQuilt, setRoleCloth } from './edits.ts';
import { FACINGS, printWords } from './facing-words.ts';
import { freshId, PageElement } from './page-element.ts';
import { problemNotes } from './problem-notes.ts';
import { swatch } from './swatch.ts';

/** Which cloth fills which role, and how each faces. */
@customElement('yw-scheme-roles')
export class SchemeRoles extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) problems: readonly Problem[] = [];
  private readonly stem = freshId('roles');

  protected override render(): TemplateResult | typeof nothing {
    const { quilt } = this;
    const scheme = quilt?.schemes.find((one) => one.id === quilt.scheme);
    if (quilt === null || scheme === undefined) {
      return nothing;
    }
    return html`
      <div class="field">
        <label for="${this.stem}-scheme">Colour scheme</label>
        <select id="${this.stem}-scheme" @change=${(event: Event) => sendEdit(this, setQuilt({ scheme: chosen(event) }))}>
          ${quilt.schemes.map((one) => html`<option value=${one.id} ?selected=${one.id === scheme.id}>${one.name}</option>`)}
        </select>
      </div>
      <ul class="roles">
        ${quilt.roles.map((role) => this.roleRow(quilt, role, [scheme.cloths[role.id] ?? []].flat()))}
      </ul>
    `;
  }

  private roleRow(quilt: Quilt, role: Role, cloths: readonly string[]): TemplateResult {
    const [first] = cloths;
    const cloth = quilt.cloths.find((one) => one.id === first);
    const id = `${this.stem}-${role.id}`;
    return html`<li>
      <fieldset>
        <legend>${swatch(cloth)} ${role.name}</legend>
        <div class="pair">
          <div class="field">
            <label for="${id}-cloth">Cloth</label>
            <select id="${id}-cloth" @change=${(event: Event) => sendEdit(this, setRoleCloth(role.id, chosen(event)))}>
              ${cloth === undefined ? html`<option value="" disabled selected>none yet</option>` : nothing}
              ${quilt.cloths.map((one) => html`<option value=${one.id} ?selected=${one.id === first}>${one.name}</option>`)}
            </select>
            ${cloths.length > 1 ? html`<p class="hint">or ${cloths.length - 1} more, as the file has it</p>` : nothing}
          </div>
          ${this.facing(role, cloth, id)}
        </div>
        ${problemNotes(this.problems.filter((problem) => problem.role === role.id))}
      </fieldset>
    </li>`;
  }

  private facing(role: Role, cloth: Cloth | undefined, id: string): TemplateResult {
    const { to, within = 0 } = role.facing;
    const choices = FACINGS.filter((one) => one.to !== 'along' || to === 'along');
    const plain = cloth !== undefined && (cloth.print === 'solid' || cloth.print === 'tossed');
    return html`<div class="field">
        <label for="${id}-facing">Its print points</label>
        <select
          id="${id}-facing"
          aria-describedby=${plain ? `${id}-plain` : nothing}
          @change=${(event: Event) => sendEdit(this, setFacing(role.id, { to: chosen(event) as Facing['to'] }))}
        >
          ${choices.map((one) => html`<option value=${one.to} ?selected=${one.to === to}>${one.words}</option>`)}
        </select>
        ${plain ? html`<p class="hint" id="${id}-plain">No matter in a ${printWords(cloth.print)}.</p>` : nothing}
      </div>
      <yw-number-field
        class="beside"
        label="Give or take, degrees"
        .value=${within}
        .max=${180}
        step="any"
        .edit=${(value: number) => setFacing(role.id, { within: value })}
        ?hidden=${plain || to === 'free'}
      ></yw-number-field>`;
  }
}

const chosen = (event: Event): string => (event.target as HTMLSelectElement).value;
