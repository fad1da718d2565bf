import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { blockPatches } from '../cutting/block-patches.ts';
import { isDirectional } from '../cutting/turn-sets.ts';
import type { Block, Facing, Length, Quilt } from '../quilt/quilt.ts';
import { edgesOf } from '../shape/outline.ts';
import { edgeLength } from '../shape/outline-measures.ts';
import { type ChooseEvent, type ChosenPatch, type PatchInSight, patchInSight, scopeOf } from './chosen-patch.ts';
import { setCloth } from './cloth-edits.ts';
import { type Edit, sendEdit } from './edit-event.ts';
import { facingsOf, printWords, sayFacing } from './facing-words.ts';
import { freshId, PageElement } from './page-element.ts';
import { type FacingScope, setFacingOf } from './patch-edits.ts';
import { UNITS, type Units } from './written.ts';
import './yw-field.ts';
import './yw-patch-fields.ts';
import { usualRepeat } from './yw-prints-picture.ts';

const ANY_EDGE = { edge: 0 };

/** How a patch's print lies, looked at and turned on the picture, or chosen in words beside it. */
@customElement('yw-block-prints')
export class BlockPrints extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) block: Block | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  /** Null: the first patch whose print points anywhere. */
  @property({ attribute: false }) chosen: ChosenPatch | null = null;
  /** Null: as widely as the facing is meant now. */
  @state() private scope: FacingScope | null = null;
  @state() private refusal: string | null = null;
  private readonly stem = freshId('prints');

  /** What is looked at first stays in sight, whatever it becomes. */
  protected override willUpdate(): void {
    const { quilt, block } = this;
    const each =
      this.chosen !== null || quilt === null || block === null ? null : patchInSight(quilt, block, null)?.each;
    if (each != null) {
      this.chosen = { unit: each.unit.id, number: each.patch.number, place: each.place.index };
    }
  }

  protected override render(): TemplateResult | typeof nothing {
    const { quilt, block } = this;
    const sight = quilt === null || block === null ? null : patchInSight(quilt, block, this.chosen);
    if (quilt === null || block === null || sight === null) {
      return nothing;
    }
    const scope = this.scope ?? scopeOf(sight);
    return html`
      <yw-prints-picture
        .quilt=${quilt}
        .block=${block}
        .chosen=${{ unit: sight.each.unit.id, number: sight.each.patch.number, place: sight.each.place.index }}
        scope=${scope}
        @yw-choose=${(event: ChooseEvent) => this.choose(event.detail)}
        @yw-refused=${(event: CustomEvent<string | null>) => this.tell(event.detail)}
      ></yw-prints-picture>
      <fieldset class="prints-panel" aria-label="The print of one patch">
        ${this.which(quilt, block, sight)} ${this.faces(block, sight, scope)} ${this.forWhich(block, sight, scope)}
        <p class="fault" role="alert" ?hidden=${this.refusal === null}>${this.refusal ?? ''}</p>
        ${this.printSize(quilt, sight)}
        <yw-patch-fields .quilt=${quilt} .block=${block} .sight=${sight}></yw-patch-fields>
      </fieldset>
    `;
  }

  private which(quilt: Quilt, block: Block, { each }: PatchInSight): TemplateResult {
    const all = blockPatches(block, quilt.unit);
    const names = all.filter(
      ({ unit, patch }, i) => all.findIndex((one) => one.unit === unit && one.patch === patch) === i,
    );
    const places = all.filter(({ unit, patch }) => unit.id === each.unit.id && patch.number === each.patch.number);
    const own = names.findIndex(({ unit, patch }) => unit.id === each.unit.id && patch.number === each.patch.number);
    const [patchId, placeId] = [`${this.stem}-patch`, `${this.stem}-place`];
    return html`<div class="pair">
      <div class="field">
        <label for=${patchId}>Patch</label>
        <select
          id=${patchId}
          @change=${(event: Event) => this.chooseName(names[Number(valueIn(event))]!)}
        >
          ${names.map(({ unit, patch }, i) => {
            const words = quilt.roles.find(({ id }) => id === patch.role)?.name ?? patch.role;
            return html`<option value=${i} .selected=${live(i === own)}>${unit.id}${patch.number}: ${words}</option>`;
          })}
        </select>
        <p class="hint">or point at it on the picture</p>
      </div>
      ${
        places.length === 1
          ? nothing
          : html`<div class="field">
              <label for=${placeId}>Place round the centre</label>
              <select id=${placeId} @change=${(event: Event) => this.choosePlace(each, Number(valueIn(event)))}>
                ${places.map(({ place }) => html`<option value=${place.index} .selected=${live(place.index === each.place.index)}>${place.index + 1} of ${places.length}${place.mirrored ? ', mirrored' : ''}</option>`)}
              </select>
            </div>`
      }
    </div>`;
  }

  private faces(block: Block, sight: PatchInSight, scope: FacingScope): TemplateResult {
    const { facing, cloth } = sight;
    const id = `${this.stem}-to`;
    const { to, within = 0, turned = 0, from = 'middle' } = facing;
    const set = (fields: Partial<Facing>): Edit => this.edit(sight, scope, { ...facing, ...fields });
    const round = block.loose !== true && to !== 'upright' && to !== 'along' && to !== 'free';
    return html`<div class="pair">
        <div class="field">
          <label for=${id}>Its print points</label>
          <select id=${id} @change=${(event: Event) => this.send(this.edit(sight, scope, named(sight, valueIn(event) as Facing['to'])))}>
            ${facingsOf(block).map((one) => html`<option value=${one.to} .selected=${live(one.to === to)}>${one.words}</option>`)}
          </select>
          <p class="hint">or pull its arrow: ${sayFacing(facing, block)}.</p>
        </div>
        ${to === 'along' ? this.edge(sight, scope) : nothing}
        ${
          round
            ? html`<yw-choice-field
                label="Seen from the centre through"
                .value=${from}
                .choices=${FROM}
                .edit=${(value: string) => set({ from: value as 'middle' | 'axis' })}
              ></yw-choice-field>`
            : nothing
        }
        ${
          to === 'free'
            ? nothing
            : html`<yw-number-field
                  label="Turned on, degrees"
                  hint="anticlockwise; the other way round in mirrored places"
                  step="any"
                  .min=${-180}
                  .max=${180}
                  .value=${turned}
                  .edit=${(value: number) => this.edit(sight, scope, turnedOn(facing, value))}
                ></yw-number-field>
                <yw-number-field
                  label="Give or take, degrees"
                  step="any"
                  .max=${180}
                  .value=${within}
                  .edit=${(value: number) => set({ within: value })}
                ></yw-number-field>`
        }
      </div>
      ${cloth === undefined || isDirectional(cloth) ? nothing : html`<p class="hint">No matter in a ${printWords(cloth.print)}, which is what this role has now.</p>`}`;
  }

  private edge(sight: PatchInSight, scope: FacingScope): TemplateResult {
    const { facing, each } = sight;
    const id = `${this.stem}-edge`;
    const choices = edgesOf(each.outline).flatMap(({ arc }, edge) => (arc === undefined ? [edge] : []));
    const value = (edge: number, backward: boolean) => `${edge}${backward ? ' backward' : ''}`;
    const own = value(facing.edge ?? 0, facing.sense === 'backward');
    const set = (text: string): void => {
      const { sense: _, ...rest } = facing;
      const backward = text.endsWith('backward');
      this.send(
        this.edit(sight, scope, {
          ...rest,
          edge: Number.parseInt(text, 10),
          ...(backward && { sense: 'backward' as const }),
        }),
      );
    };
    return html`<div class="field">
      <label for=${id}>Which edge</label>
      <select id=${id} @change=${(event: Event) => set(valueIn(event))}>
        ${choices.flatMap((edge) =>
          [false, true].map(
            (backward) =>
              html`<option value=${value(edge, backward)} .selected=${live(value(edge, backward) === own)}>edge ${edge + 1}${backward ? ', backward' : ''}</option>`,
          ),
        )}
      </select>
      <p class="hint">or point at the edge; twice for the other way</p>
    </div>`;
  }

  private forWhich(block: Block, sight: PatchInSight, scope: FacingScope): TemplateResult {
    const { each, role } = sight;
    const name = `${each.unit.id}${each.patch.number}`;
    const places =
      each.unit.repeat.over === 0 ? 1 : each.unit.repeat.count * (each.unit.repeat.mirrored === 'also' ? 2 : 1);
    const radio = (value: FacingScope, words: string) => html`<label class="tick">
      <input type="radio" name="${this.stem}-scope" .checked=${live(scope === value)} @change=${() => this.widen(value)} />
      ${words}
    </label>`;
    const own = scopeOf(sight);
    return html`<fieldset class="scopes">
      <legend>A change is for</legend>
      ${radio('role', `every patch of the role “${role.name}”`)}
      ${radio('patch', places === 1 ? `${name} alone` : `${name} in all its ${places} places`)}
      ${places === 1 ? nothing : radio('place', `this one ${name} alone`)}
      ${
        own === 'role'
          ? nothing
          : html`<button type="button" class="quiet" @click=${() => this.asRole(block, sight)}>Let it face as its role does: ${sayFacing(role.facing, block)}</button>`
      }
    </fieldset>`;
  }

  private printSize(quilt: Quilt, { cloth }: PatchInSight): TemplateResult | typeof nothing {
    if (cloth === undefined || cloth.print === 'solid') {
      return nothing;
    }
    return html`<yw-length-field
      label="${cloth.name} repeats every"
      hint="along its up, to draw the print at its true size; empty: drawn as if every ${usualRepeat(quilt.unit)} ${quilt.unit}"
      optional
      .value=${cloth.repeat ?? null}
      .units=${this.units}
      .edit=${(repeat: Length) => setCloth(cloth.id, { repeat })}
      .clear=${() => setCloth(cloth.id, { repeat: undefined })}
    ></yw-length-field>`;
  }

  private edit(sight: PatchInSight, scope: FacingScope, facing: Facing): Edit {
    const { each, role } = sight;
    const { unit, patch, place } = each;
    return setFacingOf(
      { block: this.block!.id, unit: unit.id, number: patch.number, place: place.index, role: role.id },
      scope,
      facing,
    );
  }

  private send(edit: Edit): void {
    this.tell(sendEdit(this, edit));
  }

  private asRole(block: Block, sight: PatchInSight): void {
    this.scope = null;
    const { role } = sight;
    this.send(
      setFacingOf(
        { block: block.id, unit: sight.each.unit.id, number: sight.each.patch.number, place: 0, role: role.id },
        'role',
        role.facing,
      ),
    );
  }

  private tell(refusal: string | null): void {
    this.refusal = refusal;
  }

  private widen(scope: FacingScope): void {
    this.scope = scope;
  }

  private choose(chosen: ChosenPatch): void {
    this.chosen = chosen;
    this.scope = null;
    this.refusal = null;
  }

  private chooseName({ unit, patch, place }: PatchInSight['each']): void {
    this.choose({ unit: unit.id, number: patch.number, place: place.index });
  }

  private choosePlace({ unit, patch }: PatchInSight['each'], place: number): void {
    this.choose({ unit: unit.id, number: patch.number, place });
  }
}

const FROM = [
  { value: 'middle', words: 'its middle' },
  { value: 'axis', words: 'its unit’s axis' },
];

/** The facing of a name; along an edge begins with the longest straight one. */
function named({ facing, each }: PatchInSight, to: Facing['to']): Facing {
  const within = facing.within === undefined ? {} : { within: facing.within };
  const from = facing.from === undefined ? {} : { from: facing.from };
  if (to !== 'along') {
    return { to, ...(to === 'upright' || to === 'free' ? {} : from), ...(to === 'free' ? {} : within) };
  }
  const straight = edgesOf(each.outline).map((one, edge) => ({
    edge,
    long: one.arc === undefined ? edgeLength(one) : -1,
  }));
  const { edge } = straight.reduce((best, one) => (one.long > best.long + 1e-9 ? one : best), {
    ...ANY_EDGE,
    long: -1,
  });
  return { to, edge, ...within };
}

function turnedOn({ turned: _, ...facing }: Facing, degrees: number): Facing {
  return degrees === 0 ? facing : { ...facing, turned: degrees };
}

const valueIn = (event: Event): string => (event.target as HTMLSelectElement).value;

declare global {
  interface HTMLElementTagNameMap {
    'yw-block-prints': BlockPrints;
  }
}
