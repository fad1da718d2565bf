import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import { inCuttingOrder } from '../plan/cutting-order.ts';
import { type LookAlike, lookAlikes } from '../plan/look-alikes.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { focusSoon } from './focus-soon.ts';
import { PageElement } from './page-element.ts';
import type { PlannerState } from './plan-state.ts';
import { UNITS, type Units } from './written.ts';
import type { AddBlock } from './yw-add-block.ts';
import './svg/yw-save-drawing.ts';
import './yw-add-block.ts';
import './yw-block-card.ts';
import './yw-block-view.ts';
import './yw-new-cloths.ts';
import './yw-habits.ts';
import './yw-joined-lengths.ts';
import './yw-scheme-roles.ts';
import './yw-sewing.ts';

/** The left of the table: each block, then the choices that shape it. On a narrow page the choices begin folded away. */
@customElement('yw-block-side')
export class BlockSide extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) state: PlannerState | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  private alike: readonly LookAlike[] = [];
  private readonly wide = matchMedia('(min-width: 48em)').matches;

  protected override render(): TemplateResult | typeof nothing {
    const { quilt, state, units } = this;
    if (quilt === null || state === null) {
      return nothing;
    }
    const { cutList, error } = state;
    const problems = cutList?.problems ?? [];
    const single = quilt.blocks.length === 1;
    return html`
      ${quilt.blocks.length === 0 ? this.beginning() : nothing}
      <yw-new-cloths .quilt=${quilt}></yw-new-cloths>
      ${repeat(
        quilt.blocks,
        ({ id }) => id,
        (block) => html`<yw-block-view
          data-block=${block.id}
          ?data-pinned=${single}
          .quilt=${quilt}
          .block=${block}
          .cutList=${cutList}
          .units=${units}
          .alike=${this.alikeOf(state, quilt)}
        ></yw-block-view>`,
      )}
      <p><button type="button" class=${quilt.blocks.length === 0 ? 'chief' : ''} @click=${() => this.bench?.open()}>
        Add ${quilt.blocks.length === 0 ? 'a block' : 'another block'}
      </button></p>
      <yw-add-block .quilt=${quilt} .units=${units} @yw-block-added=${() => this.afterAdding()}></yw-add-block>
      ${error === null ? nothing : html`<p class="fault" role="alert">${error}</p>`}
      <details class="drawer" ?open=${this.wide || problems.some((problem) => problem.role !== undefined)}>
        <summary>Which cloth fills which role</summary>
        <yw-scheme-roles .quilt=${quilt} .problems=${problems} .units=${units}></yw-scheme-roles>
      </details>
      ${repeat(
        quilt.blocks,
        ({ id }) => id,
        (block) => html`<details class="drawer" ?open=${this.wide}>
          <summary>The numbers of ${block.name}</summary>
          <yw-block-card .block=${block} .units=${units}></yw-block-card>
          <yw-save-drawing .quilt=${quilt} .block=${block}></yw-save-drawing>
        </details>`,
      )}
      ${repeat(
        quilt.blocks,
        ({ id }) => id,
        (block) => html`<yw-sewing .quilt=${quilt} .block=${block} .units=${units}></yw-sewing>`,
      )}
      <details class="drawer" ?open=${this.wide && quilt.blocks.length > 0}>
        <summary>Binding, borders and backing</summary>
        <yw-joined-lengths .quilt=${quilt} .cutList=${cutList} .units=${units}></yw-joined-lengths>
      </details>
      <details class="drawer" ?open=${this.wide && quilt.blocks.length > 0}>
        <summary>At the machine and the ruler</summary>
        <yw-habits .quilt=${quilt} .units=${units}></yw-habits>
      </details>
    `;
  }

  /** Puts the focus on what comes first in an empty quilt. */
  async beginFirst(): Promise<void> {
    await focusSoon(this, ':scope > .beginning ~ p > .chief');
  }

  private beginning(): TemplateResult {
    return html`<div class="beginning">
      <h2>An empty quilt</h2>
      <p>Begin with a block: from a few numbers, from pieces you measured, from a drawing, or traced from a picture.</p>
      <p>Then say which cloth fills which role. What to cut and what to buy is worked out by itself, and anew with every change.</p>
    </div>`;
  }

  /** On to what the new block still lacks: cloths, or else nothing but a look at it. */
  private afterAdding(): void {
    void focusSoon(this, 'yw-new-cloths .chief');
  }

  private get bench(): AddBlock | null {
    return this.querySelector('yw-add-block');
  }

  /** Blanks easily taken for each other, of what is shown; one and the same list as long as it says the same. */
  private alikeOf({ groups, plan, busy }: PlannerState, quilt: Quilt): readonly LookAlike[] {
    if (plan === null && busy) {
      return this.alike;
    }
    const fresh = groups.flatMap(({ group, answer }) =>
      answer === null ? [] : lookAlikes(group, inCuttingOrder(group, answer), quilt.unit),
    );
    if (fresh.length !== this.alike.length || fresh.some((each, i) => each !== this.alike[i])) {
      this.alike = fresh;
    }
    return this.alike;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-block-side': BlockSide;
  }
}
