import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { ImportedSvg } from '../../import/import-svg.ts';
import type { Facing, Role } from '../../quilt/quilt.ts';
import { freshId, PageElement } from '../page-element.ts';
import { chosenField } from '../trace/trace-field.ts';

/** What she calls the roles that were found, by their ids, and where prints of new ones point. */
export interface RolesNamed {
  readonly names: ReadonlyMap<string, string>;
  readonly facing: Facing['to'];
}

/** The roles found in a drawing, to be called otherwise. Fires `yw-roles-named` with RolesNamed. */
@customElement('yw-import-roles')
export class ImportRoles extends PageElement {
  @property({ attribute: false }) found: ImportedSvg | null = null;
  @property({ attribute: false }) known: readonly Role[] = [];
  @property({ attribute: false }) names: RolesNamed['names'] = new Map();
  @property() facing: Facing['to'] = 'free';
  private readonly stem = freshId('roles');

  protected override render(): TemplateResult | typeof nothing {
    const seeds = this.found?.block?.roles ?? [];
    if (seeds.length === 0) return nothing;
    return html`<fieldset class="import-roles">
        <legend>Roles</legend>
        <p class="hint">Two that you call alike become one; a role that the quilt has already is shared.</p>
        <datalist id=${this.stem}>${this.known.map(({ name }) => html`<option value=${name}></option>`)}</datalist>
        ${seeds.map(({ id, name }) => this.naming(id, name))}
      </fieldset>
      ${chosenField<Facing['to']>({
        id: `${this.stem}-facing`,
        label: 'Prints of new roles point',
        value: this.facing,
        choices: [
          { value: 'free', words: 'any way: choose later' },
          { value: 'outward', words: 'outward from the centre' },
          { value: 'upright', words: 'up in the quilt' },
        ],
        onChosen: (facing) => this.send({ names: this.names, facing }),
      })}`;
  }

  private naming(id: string, name: string): TemplateResult {
    const colour = this.found?.patches.find((patch) => patch.role === id)?.colour ?? 'transparent';
    return html`<label>
      <span class="import-swatch" style="background:${colour}"></span>
      <span class="import-role">${name}</span>
      <input
        type="text"
        autocomplete="off"
        list=${this.stem}
        .value=${live(this.names.get(id) ?? name)}
        @change=${(event: Event) => this.rename(id, (event.target as HTMLInputElement).value.trim())}
      />
    </label>`;
  }

  /** An empty name is the one that was found. */
  private rename(id: string, name: string): void {
    const names = new Map(this.names);
    if (name === '') {
      names.delete(id);
      this.requestUpdate();
    } else {
      names.set(id, name);
    }
    this.send({ names, facing: this.facing });
  }

  private send(detail: RolesNamed): void {
    this.dispatchEvent(new CustomEvent<RolesNamed>('yw-roles-named', { detail }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-import-roles': ImportRoles;
  }
}
