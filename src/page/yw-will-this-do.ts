import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Change } from '../plan/give-up.ts';
import { sayChanges, sayLength } from '../plan/say-changes.ts';
import { sayMoney } from '../plan/say-money.ts';
import { sayVerdict } from '../plan/say-verdict.ts';
import type { ClothTally, Tally } from '../plan/tally.ts';
import type { Try } from '../plan/try-with-hand.ts';
import { leastTaken, questionFault } from '../plan/will-this-do.ts';
import { parseLength } from '../quilt/measure.ts';
import type { Cloth, Quilt } from '../quilt/quilt.ts';
import { freshId, PageElement } from './page-element.ts';
import { AskEvent } from './question-events.ts';
import type { HandAsked } from './questions.ts';
import { UNITS, type Units, written, writtenPurchase } from './written.ts';
import './yw-look.ts';

/** Whether what she has of a cloth will do; and where it is short, which plans would fit, each to be looked at and taken over. */
@customElement('yw-will-this-do')
export class WillThisDo extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) cloth: Cloth | null = null;
  @property({ attribute: false }) asked: HandAsked | null = null;
  /** Of the plan as it stands, to say what a try buys beyond it. */
  @property({ attribute: false }) tally: Tally | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private fault: string | null = null;
  @state() private open = false;
  private readonly field = freshId('hand');

  /** A question under way is in sight, wherever it was asked. */
  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('asked') && this.asked?.status === 'working') {
      this.open = true;
    }
  }

  protected override render(): TemplateResult | typeof nothing {
    const { cloth, asked, field } = this;
    if (cloth === null) {
      return nothing;
    }
    return html`<details class="will-do" ?open=${this.open} @toggle=${this.onToggle}>
      <summary>Will this do? <span>Say what you have in hand</span></summary>
      <form @submit=${this.onSubmit} novalidate>
        <div class="field">
          <label for=${field}>In hand of ${cloth.name}</label>
          <input
            id=${field}
            type="text"
            autocomplete="off"
            spellcheck="false"
            placeholder=${this.units.shown === 'in' ? '1 1/4 yd' : '1.1 m'}
            aria-describedby="${field}-hint ${field}-fault"
            aria-invalid=${this.fault === null ? nothing : 'true'}
          />
          <p class="hint" id="${field}-hint">Its length at the whole width, as bought and unwashed, in yd, in, m or cm; shelf pieces told above are counted besides.</p>
          <p class="fault" id="${field}-fault" role="alert" ?hidden=${this.fault === null}>${this.fault ?? ''}</p>
        </div>
        <button type="submit">Will this do?</button>
        ${asked?.status === 'working' ? html`<button type="button" @click=${this.onStop}>Stop asking</button>` : nothing}
      </form>
      ${asked === null ? nothing : this.answer(asked)}
    </details>`;
  }

  private answer(asked: HandAsked): TemplateResult {
    const former = asked.quilt !== this.quilt;
    return html`<div class="will-do-answer" ?data-former=${former}>
      <p role="status" class="verdict">${this.sentence(asked, former)}</p>
      ${asked.status === 'failed' ? html`<p class="fault">${asked.error ?? 'planning failed'}</p>` : nothing}
      ${former ? html`<details><summary>What was found then</summary>${this.ways(asked, former)}</details>` : this.ways(asked, former)}
    </div>`;
  }

  private ways(asked: HandAsked, former: boolean): TemplateResult {
    return html`<ul class="ways">
        ${repeat(
          asked.tries,
          (found) => JSON.stringify(found.changes),
          (found) => this.way(asked, found, former),
        )}
        ${asked.status === 'working' ? asked.open.map((changes) => html`<li data-verdict="open"><p><strong>${this.name(asked, changes)}</strong> being planned</p></li>`) : nothing}
      </ul>`;
  }

  private sentence({ quilt, cloth, have, status, tries }: HandAsked, former: boolean): string {
    const name = quilt.cloths.find(({ id }) => id === cloth)?.name ?? cloth;
    const what = `${sayLength(have, quilt)} of ${name}`;
    const fitting = tries.filter(({ verdict }) => verdict === 'fits');
    const [wanted] = tries;
    const said =
      wanted?.verdict === 'fits'
        ? `${what} will do as wanted.`
        : fitting.length > 0
          ? `${what} ${wanted === undefined ? 'is being tried' : 'is short as wanted'}; ${fitting.length === 1 ? 'one plan would fit' : `${fitting.length} plans would fit`}${status === 'working' ? ' so far' : ''}.`
          : status === 'working'
            ? `${what}: being planned${wanted === undefined ? '' : '; short as wanted'}.`
            : `${what} will not do: ${tries.some(({ verdict }) => verdict === 'open') ? 'no plan was found that fits, though not of every one that is proved' : 'none of these plans can fit'}.`;
    const ended = status === 'stopped' ? ' Stopped; what was found stays.' : '';
    return `${former ? 'Out of date, of your former choice: ' : ''}${said}${ended}`;
  }

  private name({ quilt }: HandAsked, changes: readonly Change[]): string {
    const words = sayChanges(quilt, changes);
    return `${words.charAt(0).toUpperCase()}${words.slice(1)}:`;
  }

  private way(asked: HandAsked, found: Try, former: boolean): TemplateResult {
    const { verdict, changes, tally } = found;
    const least = leastTaken(asked.tries, found);
    const others = tally.cloths.filter(({ cloth, buy }) => cloth !== asked.cloth && buy > 0 && verdict === 'fits');
    const canTake = !former && (verdict === 'fits' || changes.length === 0);
    return html`<li data-verdict=${verdict}>
      <p><strong>${this.name(asked, changes)}</strong> ${sayVerdict(found, least, (length) => written(length, this.units))}</p>
      ${others.map((line) => html`<p>${this.bought(asked.quilt, line, former)}</p>`)}
      ${verdict === 'fits' ? html`<yw-look .what=${sayChanges(asked.quilt, changes)} .quilt=${found.quilt} .cutList=${found.cutList} .answers=${found.answers} .hand=${asked.cloth} .units=${this.units}></yw-look>` : nothing}
      ${canTake ? html`<button type="button" @click=${() => this.take(asked, found)}>${this.takeWords(found)}</button>` : nothing}
    </li>`;
  }

  /** What is then bought of another cloth, for all its roles; and how much more that is than as wanted. */
  private bought(quilt: Quilt, line: ClothTally, former: boolean): string {
    const { step, price } = quilt.cloths.find(({ id }) => id === line.cloth) ?? {};
    const amount = (length: number, money: number | null): string => {
      const cost = money === null ? '' : `, ${sayMoney(money, price?.currency ?? null)}`;
      return `${writtenPurchase(length, step, this.units)}${cost}`;
    };
    const now = former ? null : this.tally;
    const before = now?.cloths.find(({ cloth }) => cloth === line.cloth);
    const more = before === undefined ? 0 : line.buy - before.buy;
    const cost = line.price === null ? null : line.price - (before?.price ?? 0);
    const beyond =
      now === null || before === undefined || before.buy === 0
        ? ''
        : more > 1e-6
          ? `: ${amount(more, cost)} more than your plan buys`
          : ': no more than your plan buys';
    return `then to buy of ${line.name}: ${amount(line.buy, line.price)}${beyond === '' ? '' : ' in all'}${beyond}`;
  }

  private takeWords({ verdict, changes }: Try): string {
    return verdict !== 'fits'
      ? 'Put it on the shelf, buy the rest'
      : changes.length === 0
        ? 'Put it on the shelf and cut from it'
        : 'Take this plan';
  }

  private onToggle(event: Event): void {
    this.open = (event.target as HTMLDetailsElement).open;
  }

  private onSubmit(event: Event): void {
    event.preventDefault();
    const { quilt, cloth } = this;
    const text = this.querySelector<HTMLInputElement>(`#${this.field}`)?.value ?? '';
    if (quilt === null || cloth === null) {
      return;
    }
    try {
      const have = text.trim() === '' ? null : parseLength(text);
      if (have?.unit == null) {
        const number = have === null ? '1 1/4' : text.trim();
        const what = have === null ? 'Say how much you have' : `${number} of what? Write its unit`;
        this.fault = `${what}: ${number} yd, ${number} in, ${number} m or ${number} cm.`;
        return;
      }
      this.fault = questionFault({ quilt, cloth: cloth.id, have: text.trim() });
      if (this.fault === null) {
        this.send({ what: 'hand', cloth: cloth.id, have: text.trim() });
      }
    } catch (error) {
      this.fault = error instanceof Error ? error.message : String(error);
    }
  }

  private onStop(): void {
    this.send({ what: 'stop', about: this.cloth?.id ?? null });
  }

  /** What she pressed goes with the answer, which is out of date then. */
  private take(asked: HandAsked, found: Try): void {
    this.querySelector<HTMLElement>('summary')?.focus();
    this.send({ what: 'take over', asked, found });
  }

  private send(asking: AskEvent['asking']): void {
    this.dispatchEvent(new AskEvent(asking));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-will-this-do': WillThisDo;
  }
}
