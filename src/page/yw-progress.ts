import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sayMoney } from '../plan/say-money.ts';
import { PageElement } from './page-element.ts';
import type { PlannerState } from './plan-state.ts';
import { groupName, groupWords, overallWords } from './progress-words.ts';

/** The thread along the top: how far the planning has come, and the way to stop it or go on. */
@customElement('yw-progress')
export class ProgressLine extends PageElement {
  @property({ attribute: false }) state: PlannerState | null = null;

  private timer: ReturnType<typeof setInterval> | null = null;

  /** A packer deep in a solve tells nothing; the clock goes on all the same. */
  protected override updated(): void {
    if (this.state?.busy === true) {
      this.timer ??= setInterval(() => this.requestUpdate(), 1000);
    } else if (this.timer !== null) {
      clearInterval(this.timer);
      this.timer = null;
    }
  }

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this;
    if (state === null) {
      return nothing;
    }
    const working = state.groups.filter((group) => group.status === 'planning');
    return html`<div class="progress" ?data-busy=${state.busy}>
      <p role="status">${overallWords(state)}</p>
      ${this.toSlip(state)} ${this.button(state)}
      <ul class="working">
        ${working.map((group) => html`<li><strong>${groupName(group, state.quilt)}</strong> ${groupWords(group, performance.now())}</li>`)}
      </ul>
    </div>`;
  }

  /** On a narrow page the slip is far below. */
  private toSlip({ plan }: PlannerState): TemplateResult | typeof nothing {
    if (plan === null) {
      return nothing;
    }
    const { price, currency } = plan.tally;
    return html`<a class="to-slip" href="#slip">To buy${price === null ? '' : `: ${sayMoney(price, currency)}`}</a>`;
  }

  private button(state: PlannerState): TemplateResult | typeof nothing {
    if (state.busy) {
      return html`<button type="button" @click=${() => this.send('yw-stop')}><span>Stop<span class="more">, keep the best</span></span></button>`;
    }
    const canResume = state.groups.some((group) => group.status === 'stopped' || group.status === 'failed');
    return canResume ? html`<button type="button" @click=${() => this.send('yw-resume')}>Plan on</button>` : nothing;
  }

  private send(type: 'yw-stop' | 'yw-resume'): void {
    this.dispatchEvent(new Event(type, { bubbles: true }));
  }
}
