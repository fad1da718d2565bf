import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { CutList } from '../cutting/cut-list.ts';
import { sayJoined } from '../plan/say-joined.ts';
import type { JoinedLength, Length, Quilt } from '../quilt/quilt.ts';
import { sendEdit } from './edit-event.ts';
import { setRoleCloths } from './edits.ts';
import { giveOwnRole, isShared, removeJoined, setJoined } from './joined-edits.ts';
import { freshId, PageElement } from './page-element.ts';
import { problemNotes } from './problem-notes.ts';
import { UNITS, type Units, written } from './written.ts';
import './yw-field.ts';

/** One joined length: its sizes and its cloth to be changed, and how it is made up. */
@customElement('yw-joined-form')
export class JoinedForm extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) joined: JoinedLength | null = null;
  /** The latest; of the quilt before while the present one's is being made. */
  @property({ attribute: false }) cutList: CutList | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  private readonly stem = freshId('joined');

  protected override render(): TemplateResult | typeof nothing {
    const { quilt, joined, cutList } = this;
    if (quilt === null || joined === null) {
      return nothing;
    }
    const words = cutList === null ? null : sayJoined(quilt, joined, cutList, (length) => written(length, this.units));
    const problems = (cutList?.problems ?? []).filter(({ text }) => text.startsWith(`“${joined.name}”`));
    return html`<fieldset class="joined">
      <legend>${joined.name}</legend>
      <div class="cloth-numbers">
        <yw-text-field
          label="Name"
          wanted="a name, such as Binding"
          .value=${joined.name}
          .edit=${(name: string) => setJoined(joined.id, { name })}
        ></yw-text-field>
        ${joined.kind === 'panels' ? this.panels(joined) : this.strips(joined)} ${this.cloth(quilt, joined)}
      </div>
      ${words === null ? nothing : html`<p class="joined-words">${words}</p>`} ${problemNotes(problems)}
      <p><button type="button" class="quiet" @click=${this.onRemove}>Take “${joined.name}” out</button></p>
    </fieldset>`;
  }

  private strips(joined: JoinedLength): TemplateResult {
    return html`
      ${this.size('Total length', 'length', 'of all of it, joins not counted')}
      ${this.size('Strip width', 'width', 'as it is cut')}
      ${this.size('Lost at each join', 'join', 'straight: both seam allowances; on the slant: the strip’s width')}
      <yw-length-field
        label="Shortest piece"
        hint="empty: only strips right across"
        optional
        .value=${joined.shortest ?? null}
        .units=${this.units}
        .edit=${(shortest: Length) => setJoined(joined.id, { shortest })}
        .clear=${() => setJoined(joined.id, { shortest: undefined })}
      ></yw-length-field>
    `;
  }

  private panels(joined: JoinedLength): TemplateResult {
    return html`
      ${this.size('Quilt’s width', 'width', 'to be covered')} ${this.size('Quilt’s length', 'length', 'to be covered')}
      <yw-length-field
        label="Overhang"
        hint="on every side"
        .value=${joined.overhang ?? 0}
        .units=${this.units}
        .edit=${(overhang: Length) => setJoined(joined.id, { overhang })}
      ></yw-length-field>
      ${this.size('Lost at each seam', 'join', 'both seam allowances, and the selvages if they are left on')}
    `;
  }

  private size(label: string, field: 'length' | 'width' | 'join', hint: string): TemplateResult {
    const joined = this.joined!;
    return html`<yw-length-field
      label=${label}
      hint=${hint}
      .value=${joined[field]}
      .units=${this.units}
      .edit=${(value: Length) => setJoined(joined.id, { [field]: value })}
    ></yw-length-field>`;
  }

  /** A role that patches have too gives them all one cloth; what is chosen there is not chosen here. */
  private cloth(quilt: Quilt, joined: JoinedLength): TemplateResult {
    const others = { ...quilt, joined: quilt.joined.filter(({ id }) => id !== joined.id) };
    const role = quilt.roles.find(({ id }) => id === joined.role);
    if (isShared(others, joined.role)) {
      return html`<div class="field">
        <p>Its cloth is that of “${role?.name ?? joined.role}”.</p>
        <button type="button" class="quiet" @click=${() => sendEdit(this, giveOwnRole(joined.id))}>
          Choose its cloth apart
        </button>
      </div>`;
    }
    const id = `${this.stem}-cloth`;
    const scheme = quilt.schemes.find((one) => one.id === quilt.scheme);
    const [own = '', ...more] = [scheme?.cloths[joined.role] ?? []].flat();
    return html`<div class="field">
      <label for=${id}>Cloth</label>
      <select id=${id} @change=${(event: Event) => this.onCloth(joined, event)}>
        ${own === '' ? html`<option value="" selected>none yet</option>` : nothing}
        ${quilt.cloths.map((one) => html`<option value=${one.id} .selected=${live(one.id === own)}>${one.name}</option>`)}
      </select>
      ${more.length === 0 ? nothing : html`<p class="hint">or another: see which cloth fills which role</p>`}
    </div>`;
  }

  private onCloth(joined: JoinedLength, event: Event): void {
    const { value } = event.target as HTMLSelectElement;
    sendEdit(this, setRoleCloths(joined.role, value === '' ? [] : [value]));
  }

  private onRemove(): void {
    const list = this.closest('yw-joined-lengths');
    sendEdit(this, removeJoined(this.joined!.id));
    list?.querySelector<HTMLButtonElement>('.add-joined button')?.focus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-joined-form': JoinedForm;
  }
}
