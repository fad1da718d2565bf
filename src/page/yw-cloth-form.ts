import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Cloth, Length, PrintKind } from '../quilt/quilt.ts';
import { setCloth } from './cloth-edits.ts';
import { NAMES_OF_PER } from './cloth-words.ts';
import { sendEdit } from './edit-event.ts';
import { PRINTS } from './facing-words.ts';
import { PageElement } from './page-element.ts';
import { UNITS, type Units } from './written.ts';
import './yw-field.ts';
import './yw-shelf-pieces.ts';

const PRINT_CHOICES = PRINTS.map(({ print, words }) => ({ value: print, words }));
const UP_CHOICES = [
  { value: 'along', words: 'along the selvage' },
  { value: 'across', words: 'across the cloth' },
];
/** As shops sell cloth, by the yard and by the metre. */
const STEPS: readonly string[] = ['1/4 yd', '1/8 yd', '1/4 m', '10 cm'];
const PER_CHOICES = (['yd', 'm'] as const).map((per) => ({ value: per, words: `a ${NAMES_OF_PER[per]}` }));

/** Everything about one cloth that can be changed: what it looks like, how it is sold, how it washes, what lies on the shelf. */
@customElement('yw-cloth-form')
export class ClothForm extends PageElement {
  @property({ attribute: false }) cloth: Cloth | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };

  protected override render(): TemplateResult | typeof nothing {
    const { cloth } = this;
    if (cloth === null) {
      return nothing;
    }
    return html`
      <div class="cloth-numbers">${this.looks(cloth)}</div>
      <div class="cloth-numbers">${this.sold(cloth)}</div>
      <div class="cloth-numbers">${this.washing(cloth)}</div>
      <yw-shelf-pieces .cloth=${cloth} .units=${this.units}></yw-shelf-pieces>
    `;
  }

  private looks(cloth: Cloth): TemplateResult {
    const points = cloth.print !== 'solid' && cloth.print !== 'tossed';
    return html`
      <yw-text-field
        label="Name"
        wanted="a name, by which you know the cloth"
        .value=${cloth.name}
        .edit=${(name: string) => setCloth(cloth.id, { name })}
      ></yw-text-field>
      <yw-text-field
        label="Colour"
        type="color"
        .value=${cloth.colour}
        .edit=${(colour: string) => setCloth(cloth.id, { colour })}
      ></yw-text-field>
      <yw-choice-field
        label="Print"
        .value=${cloth.print}
        .choices=${PRINT_CHOICES}
        .edit=${(print: string) => setCloth(cloth.id, { print: print as PrintKind })}
      ></yw-choice-field>
      <yw-choice-field
        label="The print’s up runs"
        ?hidden=${!points}
        .value=${cloth.up ?? 'along'}
        .choices=${UP_CHOICES}
        .edit=${(up: string) => setCloth(cloth.id, { up: up === 'across' ? 'across' : undefined })}
      ></yw-choice-field>
      <label class="tick">
        <input type="checkbox" .checked=${cloth.wrongSide === false} @change=${(event: Event) => this.onSides(cloth, event)} />
        Both sides look alike
      </label>
    `;
  }

  private sold(cloth: Cloth): TemplateResult {
    const { price } = cloth;
    const per = price?.per ?? (this.units.quilt === 'in' ? 'yd' : 'm');
    return html`
      <yw-length-field
        label="Width"
        hint="usable, between the selvages"
        .value=${cloth.width}
        .units=${this.units}
        .edit=${(width: Length) => setCloth(cloth.id, { width })}
      ></yw-length-field>
      <yw-length-field
        label="Sold by"
        hint="the shop’s step; empty if you cannot buy more"
        .offered=${STEPS}
        optional
        .value=${cloth.step ?? null}
        .units=${this.units}
        .edit=${(step: Length) => setCloth(cloth.id, { step })}
        .clear=${() => setCloth(cloth.id, { step: undefined })}
      ></yw-length-field>
      <yw-number-field
        label="Price"
        optional
        step="any"
        .value=${price?.amount ?? null}
        .edit=${(amount: number) => setCloth(cloth.id, { price: { per, ...price, amount } })}
        .clear=${() => setCloth(cloth.id, { price: undefined })}
      ></yw-number-field>
      ${
        price === undefined
          ? nothing
          : html`<yw-choice-field
              label="Priced by"
              .value=${per}
              .choices=${PER_CHOICES}
              .edit=${(chosen: string) => setCloth(cloth.id, { price: { ...price, per: chosen as 'yd' | 'm' } })}
            ></yw-choice-field>
            <yw-text-field
              label="Currency"
              hint="a sign or a code"
              .value=${price.currency ?? ''}
              .edit=${(currency: string) => setCloth(cloth.id, { price: withCurrency(price, currency) })}
            ></yw-text-field>`
      }
    `;
  }

  private washing(cloth: Cloth): TemplateResult {
    const { along, across } = cloth.shrinkage ?? { along: 0, across: 0 };
    const percent = (label: string, value: number, edit: (value: number) => { along: number; across: number }) =>
      html`<yw-number-field
        label=${label}
        hint="percent, in the first wash"
        step="any"
        .max=${50}
        .value=${value}
        .edit=${(typed: number) => setCloth(cloth.id, { shrinkage: edit(typed) })}
      ></yw-number-field>`;
    return html`
      ${percent('Shrinks along', along, (typed) => ({ along: typed, across }))}
      ${percent('Shrinks across', across, (typed) => ({ along, across: typed }))}
      <label class="tick" ?hidden=${along === 0 && across === 0}>
        <input type="checkbox" .checked=${cloth.washFirst !== false} @change=${(event: Event) => this.onWash(cloth, event)} />
        Washed before it is cut
      </label>
    `;
  }

  private onWash(cloth: Cloth, event: Event): void {
    const first = (event.target as HTMLInputElement).checked;
    sendEdit(this, setCloth(cloth.id, { washFirst: first ? undefined : false }));
  }

  private onSides(cloth: Cloth, event: Event): void {
    const alike = (event.target as HTMLInputElement).checked;
    sendEdit(this, setCloth(cloth.id, { wrongSide: alike ? false : undefined }));
  }
}

function withCurrency({ amount, per }: NonNullable<Cloth['price']>, currency: string): NonNullable<Cloth['price']> {
  return currency === '' ? { amount, per } : { amount, per, currency };
}
