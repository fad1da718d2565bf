import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { CutList } from '../cutting/cut-list.ts';
import { sayJoined } from '../plan/say-joined.ts';
import type { JoinedLength, Length, Quilt } from '../quilt/quilt.ts';
import { followed } from '../quilt/quilt-size.ts';
import { sendEdit } from './edit-event.ts';
import { setRoleCloths } from './edits.ts';
import { giveOwnRole, isShared, letFollow, removeJoined, setJoined } from './joined-edits.ts';
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
      ${this.size('Total length', 'length', 'of all of it, joins not counted')} ${this.follows(joined)}
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
      ${this.follows(joined)}
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

  /** A size that follows the quilt's is shown as reckoned; typing another settles it. */
  private size(label: string, field: 'length' | 'width' | 'join', hint: string): TemplateResult {
    const joined = this.joined!;
    const isReckoned =
      joined.follows !== undefined && (field === 'length' || (field === 'width' && joined.kind === 'panels'));
    return html`<yw-length-field
      label=${label}
      hint=${isReckoned ? 'from the quilt’s size; or type your own' : hint}
      .value=${isReckoned ? followed(this.quilt!, joined)[field] : joined[field]}
      .units=${this.units}
      .edit=${(value: Length) =>
        isReckoned ? letFollow(joined.id, undefined, { [field]: value }) : setJoined(joined.id, { [field]: value })}
    ></yw-length-field>`;
  }

  /** Offered where it is known what the joined length is: it follows already, or is a backing, or bears the usual name of one. */
  private follows(joined: JoinedLength): TemplateResult | typeof nothing {
    const sort = joined.follows ?? this.sortOf(joined);
    return sort === undefined
      ? nothing
      : html`<yw-tick-field
          label="Follows the quilt’s size"
          .value=${joined.follows !== undefined}
          .edit=${(follow: boolean) => letFollow(joined.id, follow ? sort : undefined)}
        ></yw-tick-field>`;
  }

  private sortOf({ kind, name }: JoinedLength): JoinedLength['follows'] {
    if (kind === 'panels') {
      return 'backing';
    }
    return (['binding', 'border', 'sashing'] as const).find((sort) => name.toLowerCase().startsWith(sort));
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
