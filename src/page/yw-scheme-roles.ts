import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Problem } from '../cutting/cut-list.ts';
import { isDirectional } from '../cutting/turn-sets.ts';
import { usedRoles } from '../quilt/change-blocks.ts';
import type { Cloth, Facing, Quilt, Role } from '../quilt/quilt.ts';
import { addRole, newRoleName } from './block-edits.ts';
import { sendEdit } from './edit-event.ts';
import { setFacing, setQuilt, setRole, setRoleCloths } from './edits.ts';
import { FACINGS, printWords } from './facing-words.ts';
import { addRoleCloth } from './new-cloths.ts';
import { freshId, PageElement } from './page-element.ts';
import { problemNotes } from './problem-notes.ts';
import { swatch } from './swatch.ts';
import { UNITS, type Units } from './written.ts';
import './yw-role-finer.ts';

/** Which cloth, or which cloths, fill each role, and how it faces. */
@customElement('yw-scheme-roles')
export class SchemeRoles extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) problems: readonly Problem[] = [];
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  /** The role to which a further cloth is being added. */
  @state() private widened: string | null = null;
  private readonly stem = freshId('roles');

  protected override render(): TemplateResult | typeof nothing {
    const { quilt } = this;
    const scheme = quilt?.schemes.find((one) => one.id === quilt.scheme);
    if (quilt === null || scheme === undefined) {
      return nothing;
    }
    const used = usedRoles(quilt);
    return html`
      <div class="field">
        <label for="${this.stem}-scheme">Colour scheme</label>
        <select id="${this.stem}-scheme" @change=${(event: Event) => sendEdit(this, setQuilt({ scheme: chosen(event) }))}>
          ${quilt.schemes.map((one) => html`<option value=${one.id} .selected=${live(one.id === scheme.id)}>${one.name}</option>`)}
        </select>
      </div>
      <ul class="roles">
        ${quilt.roles.map((role) => this.roleRow(quilt, role, [scheme.cloths[role.id] ?? []].flat(), used.has(role.id)))}
      </ul>
      ${quilt.roles.length === 0 ? html`<p class="hint">Roles come with the blocks.</p>` : nothing}
      <p><button type="button" class="quiet" @click=${() => sendEdit(this, addRole(newRoleName(quilt)))}>Add a role</button></p>
    `;
  }

  private roleRow(quilt: Quilt, role: Role, ids: readonly string[], isUsed: boolean): TemplateResult {
    const cloth = quilt.cloths.find((one) => one.id === ids[0]);
    const id = `${this.stem}-${role.id}`;
    const free = quilt.cloths.filter((one) => !ids.includes(one.id));
    return html`<li>
      <fieldset>
        <legend>${swatch(cloth)} ${role.name}</legend>
        <div class="pair">
          ${this.cloths(quilt, role, ids, id)} ${this.facing(role, cloth, id)}
        </div>
        ${
          cloth === undefined || free.length === 0 || role.id === this.widened
            ? nothing
            : html`<button type="button" class="quiet" @click=${() => this.widen(role.id)}>Another cloth may serve too</button>`
        }
        <yw-role-finer
          .colourRole=${role}
          .points=${ids.some((one) => quilt.cloths.some((each) => each.id === one && isDirectional(each)))}
          .units=${this.units}
          ?unused=${!isUsed}
        ></yw-role-finer>
        ${problemNotes(this.problems.filter((problem) => problem.role === role.id))}
      </fieldset>
    </li>`;
  }

  /** One choice for each cloth that may serve; those after the first can be taken out again. */
  private cloths(quilt: Quilt, role: Role, ids: readonly string[], stem: string): TemplateResult {
    const choose = (index: number, event: Event): void => {
      if ((event.target as HTMLSelectElement).selectedOptions[0]?.dataset.fresh !== undefined) {
        this.widened = null;
        sendEdit(this, addRoleCloth(role, ids, index));
        return;
      }
      const changed = [...ids.slice(0, index), chosen(event), ...ids.slice(index + 1)];
      this.widened = null;
      sendEdit(
        this,
        setRoleCloths(
          role.id,
          changed.filter((one) => one !== ''),
        ),
      );
    };
    const selects = ids.length === 0 || role.id === this.widened ? [...ids, ''] : ids;
    return html`<div class="field">
      ${selects.map((own, index) => {
        const id = `${stem}-cloth-${index}`;
        const choices = quilt.cloths.filter((one) => one.id === own || !ids.includes(one.id));
        return html`<label for=${id}>${index === 0 ? 'Cloth' : 'or cut from'}</label>
          <select id=${id} @change=${(event: Event) => choose(index, event)}>
            ${index > 0 || own === '' ? html`<option value="" .selected=${live(own === '')}>${index > 0 ? 'no other' : 'none yet'}</option>` : nothing}
            ${choices.map((one) => html`<option value=${one.id} .selected=${live(one.id === own)}>${one.name}</option>`)}
            <option data-fresh .selected=${live(false)}>a new cloth</option>
          </select>`;
      })}
      ${ids.length > 1 ? this.oneCloth(role) : nothing}
    </div>`;
  }

  private oneCloth(role: Role): TemplateResult {
    const words = role.oneCloth === true ? 'block by block' : 'blank by blank';
    return html`<label class="tick">
        <input type="checkbox" .checked=${live(role.oneCloth === true)} @change=${(event: Event) => this.onOneCloth(role, event)} />
        One cloth throughout each block
      </label>
      <p class="hint">The plan chooses among these, ${words}.</p>`;
  }

  private onOneCloth(role: Role, event: Event): void {
    const oneCloth = (event.target as HTMLInputElement).checked;
    sendEdit(this, setRole(role.id, { oneCloth: oneCloth ? true : undefined }));
  }

  private async widen(role: string): Promise<void> {
    this.widened = role;
    await this.updateComplete;
    const selects = this.querySelectorAll<HTMLSelectElement>(`[id^="${CSS.escape(`${this.stem}-${role}`)}-cloth-"]`);
    selects.item(selects.length - 1).focus();
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
          ${choices.map((one) => html`<option value=${one.to} .selected=${live(one.to === to)}>${one.words}</option>`)}
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
