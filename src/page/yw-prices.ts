import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { type Difference, type Price, priceOf } from '../plan/price-of.ts';
import { sayMoney } from '../plan/say-money.ts';
import { saySteps, stepShop } from '../plan/say-steps.ts';
import type { Version, VersionKind } from '../plan/side-by-side.ts';
import type { Tally } from '../plan/tally.ts';
import { formatClothLength } from '../quilt/format-length.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { PageElement } from './page-element.ts';
import { AskEvent } from './question-events.ts';
import type { PricesAsked } from './questions.ts';
import { UNITS, type Units } from './written.ts';
import './yw-look.ts';

/** The versions beside the plan, each with what it is, where the term stands. */
const VERSIONS: readonly { readonly kind: VersionKind; readonly name: string; readonly about: string }[] = [
  {
    kind: 'facing ignored',
    name: 'Facing ignored',
    about: 'The same quilt with its prints lying as the cutting likes. What that saves is the price of facing.',
  },
  {
    kind: 'no room',
    name: 'No room',
    about:
      'The same quilt with blanks that outrun their patches by the seam allowance alone. What that saves is the price of room; it leaves nothing for a blank laid askew.',
  },
  {
    kind: 'rule of thumb',
    name: 'By rule of thumb',
    about:
      'Every patch boxed, each kind of blank in strips of its own right across the bolt, as many to a strip as fit, and nothing from the shelf.',
  },
];

/** What facing and room cost, and what the usual rule of thumb would buy, beside the plan: each a plan of its own. */
@customElement('yw-prices')
export class Prices extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) asked: PricesAsked | null = null;
  /** Of the plan as it stands; null while there is none of the present choice. */
  @property({ attribute: false }) tally: Tally | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };

  protected override render(): TemplateResult {
    const { asked } = this;
    const former = asked !== null && asked.quilt !== this.quilt;
    const working = asked?.status === 'working';
    return html`<section class="prices" aria-labelledby="prices-title" ?data-former=${former}>
      <h3 id="prices-title">What facing costs</h3>
      <p class="hint">
        Plans the quilt again with facing ignored and without room, and lays both beside your plan with what the usual rule
        of thumb would buy. Your own plan goes on meanwhile.
      </p>
      <p class="row">
        <button type="button" ?disabled=${this.tally === null} @click=${() => this.send({ what: 'prices' })}>
          ${asked === null ? 'Work it out' : 'Work it out anew'}
        </button>
        ${working ? html`<button type="button" @click=${() => this.send({ what: 'stop', about: null })}>Stop asking</button>` : nothing}
      </p>
      <p role="status" class="verdict">${asked === null ? nothing : statusWords(asked, former)}${!former && this.bettered ? ' Your plan has been bettered since.' : nothing}</p>
      ${asked?.status === 'failed' ? html`<p class="fault">${asked.error ?? 'planning failed'}</p>` : nothing}
      ${asked === null ? nothing : this.versions(asked)}
    </section>`;
  }

  /** The plan goes on while others are laid beside it, and may come to buy less. */
  private get bettered(): boolean {
    const beside = this.asked?.versions.get('as wanted')?.tally;
    return (
      this.tally !== null &&
      beside !== undefined &&
      this.tally.cloths.some(({ cloth, buy }) => {
        const before = beside.cloths.find((line) => line.cloth === cloth);
        return before !== undefined && Math.abs(before.buy - buy) > 1e-6;
      })
    );
  }

  private versions(asked: PricesAsked): TemplateResult | typeof nothing {
    const wanted = asked.versions.get('as wanted');
    if (wanted === undefined) {
      return nothing;
    }
    const { tally } = wanted;
    return html`<ul class="bill versions">
      <li>
        <p class="bill-head"><strong>Your plan</strong> <span class="bill-price">${money(tally)}</span></p>
        <p>${stepWords(asked.quilt, tally)}</p>
      </li>
      ${VERSIONS.map(({ kind, name, about }) => {
        const version = asked.versions.get(kind);
        return html`<li>
          ${version === undefined ? html`<p class="bill-head"><strong>${name}</strong></p><p>being planned</p>` : this.version(asked, tally, version, name)}
          <p class="hint">${about}</p>
          ${version === undefined || !version.whole ? nothing : this.folds(asked.quilt, tally, version)}
        </li>`;
      })}
    </ul>`;
  }

  private version({ quilt, status }: PricesAsked, wanted: Tally, version: Version, name: string): TemplateResult {
    const price = priceOf(wanted, version);
    const count = `${version.cutList.groups.length} of its cloths planned`;
    return html`
      <p class="bill-head">
        <strong>${name}</strong>
        ${version.whole ? html`<span class="bill-price">${money(version.tally)}</span>` : nothing}
      </p>
      ${
        version.whole
          ? html`<p>${stepWords(quilt, version.tally)}</p>
              <p class="bill-buy">${differenceWords(price, wanted)}</p>
              ${version.kind === 'rule of thumb' ? nothing : html`<p class="proof" data-state=${price.proof === 'exact' ? 'least' : 'gap'}>${PROOFS[price.proof]}${leastWords(price, version.tally)}</p>`}`
          : html`<p>${status === 'working' ? `${count}, the others being planned` : count}</p>`
      }
    `;
  }

  private folds(quilt: Quilt, wanted: Tally, version: Version): TemplateResult {
    const { cloths } = priceOf(wanted, version);
    const left = wanted.cloths.filter(({ cloth }) => cloths.every((each) => each.cloth !== cloth));
    return html`
      <details>
        <summary>Cloth by cloth</summary>
        <div class="table-frame" tabindex="0" role="region" aria-label="${version.kind}, cloth by cloth">
          <table>
            <thead>
              <tr><th scope="col">Cloth</th><th scope="col">Buys</th><th scope="col">Against your plan</th></tr>
            </thead>
            <tbody>
              ${cloths.map((line) => row(quilt, line, version.kind))}
              ${left.map(({ name }) => html`<tr><th scope="row">${name}</th><td>–</td><td>cannot be bought</td></tr>`)}
            </tbody>
          </table>
        </div>
        ${version.kind === 'rule of thumb' ? nothing : html`<p class="hint">✓ proved: no plan cut so buys less.</p>`}
      </details>
      <yw-look .what=${version.kind} .quilt=${version.quilt} .cutList=${version.cutList} .answers=${version.answers} .units=${this.units}></yw-look>
    `;
  }

  private send(asking: AskEvent['asking']): void {
    this.dispatchEvent(new AskEvent(asking));
  }
}

const PROOFS: Readonly<Record<Price['proof'], string>> = {
  exact: 'Proved: both purchases are least.',
  bound: 'Your plan is proved least, this one is not: it might save more, never less.',
  open: 'Not proved: your plan or this one may yet be bettered.',
};

/** How far it might yet be bettered, where that is known and not nothing. */
function leastWords({ leastPrice }: Price, { price, currency }: Tally): string {
  return leastPrice === null || price === null || price - leastPrice < 0.005
    ? ''
    : ` None such costs less than ${sayMoney(leastPrice, currency)}.`;
}

function statusWords({ status }: PricesAsked, former: boolean): string {
  const words = {
    working: 'Being worked out.',
    answered: 'Worked out.',
    stopped: 'Stopped; what was found stays.',
    failed: 'It broke off.',
  }[status];
  return former ? `Out of date, of your former choice. ${status === 'answered' ? '' : words}` : words;
}

function row(quilt: Quilt, line: Difference, kind: VersionKind): TemplateResult {
  const step = quilt.cloths.find(({ id }) => id === line.cloth)?.step;
  const length = (value: number) => formatClothLength(value, quilt.unit, stepShop(step, quilt.unit));
  const least = line.least && kind !== 'rule of thumb';
  return html`<tr>
    <th scope="row">${line.name}</th>
    <td>${least ? '✓ ' : ''}${length(line.buy)}${line.atLeast !== null && line.buy - line.atLeast > 1e-6 ? `, at least ${length(line.atLeast)}` : ''}</td>
    <td>${line.more === 0 ? 'the same' : `${length(Math.abs(line.more))} ${line.more > 0 ? 'more' : 'less'}`}</td>
  </tr>`;
}

/** "17 quarter yards"; where cloths are sold by different steps, how many steps. */
function stepWords(quilt: Quilt, tally: Tally): string {
  const bought = tally.cloths.filter(({ steps }) => steps !== null);
  const steps = bought.reduce((sum, line) => sum + (line.steps ?? 0), 0);
  const kinds = new Set(bought.map(({ cloth }) => quilt.cloths.find(({ id }) => id === cloth)?.step));
  const [step] = kinds;
  return kinds.size === 1 && step !== undefined
    ? `${saySteps(steps, step, quilt.unit)} altogether`
    : `${steps} selling step${steps === 1 ? '' : 's'} altogether`;
}

const money = ({ price, currency }: Tally): string => (price === null ? '' : sayMoney(price, currency));

/** "$6.50 less, 2 steps": what the version saves is what facing, or room, costs. */
function differenceWords({ morePrice, moreSteps, cloths }: Price, { currency }: Tally): string {
  if (cloths.every(({ more }) => more === 0)) {
    return 'buys the same';
  }
  const steps = Math.abs(moreSteps) === 1 ? '1 step' : `${Math.abs(moreSteps)} steps`;
  const stepsMore = moreSteps === 0 ? 'as many steps' : `${steps} ${moreSteps > 0 ? 'more' : 'less'}`;
  if (morePrice === null) {
    return stepsMore;
  }
  const dear =
    morePrice === 0
      ? 'the same price'
      : `${sayMoney(Math.abs(morePrice), currency)} ${morePrice > 0 ? 'dearer' : 'cheaper'}`;
  return `${dear}, ${stepsMore}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-prices': Prices;
  }
}
