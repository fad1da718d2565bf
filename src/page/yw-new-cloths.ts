import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { usedRoles } from '../quilt/change-blocks.ts';
import type { PrintKind, Quilt, Role } from '../quilt/quilt.ts';
import { sendEdit } from './edit-event.ts';
import { PRINTS } from './facing-words.ts';
import { type Filling, fillRoles, firstPrint, rolesWithoutCloth } from './new-cloths.ts';
import { freshId, PageElement } from './page-element.ts';

/** The roles that have no cloth yet, each with a cloth to be made for it, all in one step. Nothing where every role has one. */
@customElement('yw-new-cloths')
export class NewCloths extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  /** What she chose for a role, by its id: "new:one-way", a cloth's id after "old:", or "none". */
  @state() private chosen: ReadonlyMap<string, string> = new Map();
  private readonly stem = freshId('new-cloths');

  protected override render(): TemplateResult | typeof nothing {
    const { quilt } = this;
    if (quilt === null) {
      return nothing;
    }
    const used = usedRoles(quilt);
    const roles = rolesWithoutCloth(quilt, (role) => used.has(role));
    if (roles.length === 0) {
      return nothing;
    }
    const width =
      quilt.unit === 'in' ? '42 in wide, sold by the quarter yard' : '107 cm wide, sold by the quarter metre';
    return html`<section class="new-cloths" aria-labelledby="${this.stem}-title">
      <h2 id="${this.stem}-title">${roles.length === 1 ? 'One role has' : `${roles.length} roles have`} no cloth yet</h2>
      <div class="cloth-choices">${roles.map((role) => this.row(quilt, role))}</div>
      <p class="hint">A new cloth is ${width}. A one-way print is the safe guess: what it needs serves any print. Change all of it later.</p>
      <p><button type="button" class="chief" @click=${() => this.make(roles)}>${this.words(roles)}</button></p>
    </section>`;
  }

  private words(roles: readonly Role[]): string {
    const fresh = roles.filter((role) => this.choiceOf(role).startsWith('new:')).length;
    if (fresh === 0) {
      return 'Fill the roles so';
    }
    return fresh === 1 ? 'Make this cloth' : `Make these ${fresh} cloths`;
  }

  private row(quilt: Quilt, role: Role): TemplateResult {
    const id = `${this.stem}-${role.id}`;
    const own = this.choiceOf(role);
    const option = (value: string, words: string) =>
      html`<option value=${value} .selected=${live(value === own)}>${words}</option>`;
    return html`<div class="field">
      <label for=${id}>${role.name}</label>
      <select id=${id} @change=${(event: Event) => this.choose(role, (event.target as HTMLSelectElement).value)}>
        <optgroup label="A new cloth">${PRINTS.map(({ print, words }) => option(`new:${print}`, words))}</optgroup>
        ${
          quilt.cloths.length === 0
            ? nothing
            : html`<optgroup label="One that is there">${quilt.cloths.map((cloth) => option(`old:${cloth.id}`, cloth.name))}</optgroup>`
        }
        ${option('none', 'none yet')}
      </select>
    </div>`;
  }

  private choiceOf(role: Role): string {
    return this.chosen.get(role.id) ?? `new:${firstPrint(role)}`;
  }

  private choose(role: Role, choice: string): void {
    this.chosen = new Map([...this.chosen, [role.id, choice]]);
  }

  private make(roles: readonly Role[]): void {
    const fillings = roles.flatMap((role): readonly (readonly [string, Filling])[] => {
      const [kind, value] = [this.choiceOf(role).slice(0, 4), this.choiceOf(role).slice(4)];
      if (kind === 'new:') {
        return [[role.id, { print: value as PrintKind }]];
      }
      return kind === 'old:' ? [[role.id, { cloth: value }]] : [];
    });
    sendEdit(this, fillRoles(new Map(fillings)));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-new-cloths': NewCloths;
  }
}
