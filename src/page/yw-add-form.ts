import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { live } from 'lit/directives/live.js';
import type { Drawing } from '../draw/display-list.ts';
import { drawThumbnail } from '../draw/draw-thumbnail.ts';
import type { FormBlock } from '../quilt/add-block.ts';
import type { FormSpec } from '../quilt/forms/form-spec.ts';
import { drawForm, FORMS, type Form, formSpec, rolesOfForm } from '../quilt/forms/forms.ts';
import type { LengthUnit, Quilt } from '../quilt/quilt.ts';
import { startForm } from '../quilt/start-form.ts';
import { DraftQuilt } from './draft-quilt.ts';
import { sendDrawn } from './drawn-event.ts';
import type { EditEvent } from './edit-event.ts';
import { freshId, PageElement } from './page-element.ts';
import { shownDrawing } from './shown-drawing.ts';
import { UNITS, type Units } from './written.ts';
import './yw-drawn-picture.ts';
import './yw-form-numbers.ts';

/** A block from numbers: a form chosen by its picture, its numbers beside what they draw. */
@customElement('yw-add-form')
export class AddForm extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private kind = FORMS[0]!.kind;
  /** What was tried of each form, so that looking at another loses nothing. */
  private readonly drafts = new Map<string, DraftQuilt>();
  private readonly stem = freshId('form');

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('quilt')) {
      // The quilt under a draft has changed, so the draft is made anew with the numbers that it had.
      for (const [kind, draft] of this.drafts) {
        this.drafts.set(kind, this.draftOf(draft.block.form!, draft.block.count));
      }
    }
  }

  protected override render(): TemplateResult | typeof nothing {
    const { quilt, units } = this;
    if (quilt === null) {
      return nothing;
    }
    const draft = this.draft(this.kind);
    const { block } = draft;
    const form = block.form!;
    const made: FormBlock = { name: formSpec(form.kind).title, form, roles: rolesOfForm(form), count: block.count };
    return html`<div class="making">
      <fieldset class="forms">
        <legend>Which kind?</legend>
        ${FORMS.map((spec) => this.choice(spec, quilt))}
      </fieldset>
      <div class="made">
        <h3>${made.name}</h3>
        <p class="hint">${formSpec(form.kind).about}</p>
        <div @yw-edit=${(event: EditEvent) => this.onEdit(event, draft)}>
          <yw-form-numbers .block=${block} .units=${units}></yw-form-numbers>
        </div>
        <p><button type="button" class="chief" @click=${() => sendDrawn(this, made)}>Put it into the quilt</button></p>
      </div>
      <yw-drawn-picture .quilt=${quilt} .drawn=${made}></yw-drawn-picture>
    </div>`;
  }

  private choice(spec: FormSpec, quilt: Quilt): TemplateResult {
    const { kind, title } = spec;
    return html`<label class="form-choice">
      <input type="radio" name=${this.stem} .checked=${live(kind === this.kind)} @change=${() => this.choose(kind)} />
      <span class="form-picture" aria-hidden="true">
        ${guard([quilt.unit], () => shownDrawing(thumbnail(spec, quilt.unit), null))}
      </span>
      <span>${title}</span>
    </label>`;
  }

  private choose(kind: string): void {
    this.kind = kind;
  }

  private draft(kind: string): DraftQuilt {
    const known = this.drafts.get(kind) ?? this.draftOf(startForm(kind, this.quilt!));
    this.drafts.set(kind, known);
    return known;
  }

  private draftOf(form: Form, count = 1): DraftQuilt {
    return new DraftQuilt(this.quilt!, { name: formSpec(form.kind).title, form, roles: rolesOfForm(form), count });
  }

  private onEdit(event: EditEvent, draft: DraftQuilt): void {
    event.stopPropagation();
    event.refusal = draft.edit(event.edit);
    this.requestUpdate();
  }
}

/** Roughly how large the pictures to choose by are, in pixels. */
const THUMB = 90;

const thumbnail = (spec: FormSpec, unit: LengthUnit): Drawing =>
  drawThumbnail(spec.title, drawForm(spec.start(unit) as Form, unit), THUMB, spec.tones);

declare global {
  interface HTMLElementTagNameMap {
    'yw-add-form': AddForm;
  }
}
