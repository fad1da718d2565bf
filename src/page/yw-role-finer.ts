import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Length, Role } from '../quilt/quilt.ts';
import { removeRole, renameRole } from './block-edits.ts';
import { sendEdit } from './edit-event.ts';
import { setRole } from './edits.ts';
import { PageElement } from './page-element.ts';
import { UNITS, type Units } from './written.ts';
import './yw-field.ts';

/** What one role asks for in its own way: its name, room, spares, and whether it is hardly seen. Folded away until it is wanted. */
@customElement('yw-role-finer')
export class RoleFiner extends PageElement {
  @property({ attribute: false }) colourRole: Role | null = null;
  /** Whether its cloth has a print that points anywhere. */
  @property({ type: Boolean }) points = false;
  /** Whether nothing has the role, so that it can be taken out. */
  @property({ type: Boolean }) unused = false;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private unfolded = false;

  protected override render(): TemplateResult | typeof nothing {
    const { colourRole: role } = this;
    if (role === null) {
      return nothing;
    }
    const own = [role.room !== undefined, role.spares !== undefined, role.hidden === true].some((is) => is);
    return html`<details class="finer" @toggle=${this.onToggle}>
      <summary>Its name, and room and spares of its own${own ? ': some are set' : ''}</summary>
      ${this.unfolded ? this.fields(role) : nothing}
    </details>`;
  }

  private fields(role: Role): TemplateResult {
    return html`<div class="pair">
      <yw-text-field
        class="beside-all"
        label="Name of the role"
        wanted="a name"
        .value=${role.name}
        .edit=${(name: string) => renameRole(role.id, name)}
      ></yw-text-field>
      <yw-length-field
        label="Room"
        hint="empty: as everywhere"
        optional
        .value=${role.room ?? null}
        .units=${this.units}
        .edit=${(room: Length) => setRole(role.id, { room })}
        .clear=${() => setRole(role.id, { room: undefined })}
      ></yw-length-field>
      <yw-number-field
        label="Spares"
        hint="empty: as everywhere"
        optional
        .max=${99}
        .value=${role.spares ?? null}
        .edit=${(spares: number) => setRole(role.id, { spares })}
        .clear=${() => setRole(role.id, { spares: undefined })}
      ></yw-number-field>
      <label class="tick" ?hidden=${!this.points}>
        <input
          type="checkbox"
          .checked=${role.hidden === true}
          @change=${(event: Event) => this.onHidden(role, event)}
        />
        Hardly seen: may lie any way if cloth is short
      </label>
      ${
        this.unused
          ? html`<p><button type="button" class="quiet" @click=${() => sendEdit(this, removeRole(role.id))}>Take ${role.name} out: nothing has it</button></p>`
          : nothing
      }
    </div>`;
  }

  private onHidden(role: Role, event: Event): void {
    const hidden = (event.target as HTMLInputElement).checked;
    sendEdit(this, setRole(role.id, { hidden: hidden ? true : undefined }));
  }

  private onToggle(event: Event): void {
    this.unfolded ||= (event.target as HTMLDetailsElement).open;
  }
}
