import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { fileNameOf, saveFile } from '../keep/file.ts';
import {
  FREEZER_USES,
  LABEL_GRIDS,
  type LabelsPerSheet,
  PAPER_KINDS,
  PAPER_WORDS,
  type PaperChoice,
  type PaperKind,
  usualChoice,
} from '../paper/paper-choice.ts';
import { PAPER_NAMES, type PaperSize } from '../paper/paper-size.ts';
import { freshId, PageElement } from './page-element.ts';
import { makePaper, type PaperMaking } from './paper-maker.ts';
import type { Plan } from './plan-state.ts';
import { UNITS, type Units } from './written.ts';

interface Wished extends PaperChoice {
  readonly kinds: readonly PaperKind[];
}

/** What is to be printed, on which paper; saved as one PDF that a worker makes. */
@customElement('yw-papers')
export class Papers extends PageElement {
  @property({ attribute: false }) plan: Plan | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private choice: Wished | null = null;
  /** What the worker is doing; null while it does nothing. */
  @state() private doing: string | null = null;
  @state() private said: { readonly fault: boolean; readonly words: string } | null = null;
  private making: PaperMaking | null = null;
  private readonly stem = freshId('papers');

  async open(): Promise<void> {
    this.choice ??= { kinds: PAPER_KINDS, ...usualChoice(this.units.shown) };
    this.said = null;
    await this.updateComplete;
    this.querySelector('dialog')?.showModal();
  }

  override disconnectedCallback(): void {
    this.making?.cancel();
    super.disconnectedCallback();
  }

  protected override render(): TemplateResult {
    const { choice, plan } = this;
    return html`<dialog class="bench papers" aria-labelledby="${this.stem}-title" @close=${() => this.making?.cancel()}>
      ${choice === null || plan === null ? nothing : this.contents(choice, plan)}
    </dialog>`;
  }

  private contents(choice: Wished, plan: Plan): TemplateResult {
    const ready = choice.kinds.length > 0 && this.doing === null;
    return html`
      <header class="row">
        <h2 id="${this.stem}-title">Print</h2>
        <button type="button" @click=${() => this.querySelector('dialog')?.close()}>Put away</button>
      </header>
      <fieldset class="paper-kinds">
        <legend>What?</legend>
        ${PAPER_KINDS.map((kind) => this.kindChoice(choice, kind))}
      </fieldset>
      <div class="paper-numbers">
        ${this.select(
          'Paper',
          choice.paper,
          Object.entries(PAPER_NAMES).map(([value, words]) => ({ value, words })),
          (value) => this.choose({ paper: value as PaperSize }),
        )}
        ${choice.kinds.includes('slip') ? this.slipChoice(choice) : nothing}
        ${choice.kinds.includes('foundations') ? this.foundationChoice(choice) : nothing}
        ${choice.kinds.includes('labels') ? this.labelChoice(choice) : nothing}
      </div>
      <p class="hint">Print at 100 %, not fitted to the page, and measure the boxes on the first sheet of foundations or templates.</p>
      <div class="row">
        <button type="button" class="main" ?disabled=${!ready} @click=${() => void this.save(choice, plan)}>Save as PDF</button>
        ${this.doing === null ? nothing : html`<button type="button" @click=${() => this.making?.cancel()}>Cancel</button>`}
        <button type="button" class="quiet" ?disabled=${this.doing !== null} @click=${this.printPage}>Print the cutting page from the browser</button>
      </div>
      <p role="status">${this.doing ?? (this.said?.fault === false ? this.said.words : '')}</p>
      <p class="fault" role="alert">${this.said?.fault === true ? this.said.words : ''}</p>
    `;
  }

  private kindChoice(choice: Wished, kind: PaperKind): TemplateResult {
    const { name, about } = PAPER_WORDS[kind];
    const kinds = (checked: boolean) =>
      PAPER_KINDS.filter((each) => (each === kind ? checked : choice.kinds.includes(each)));
    return html`<label class="way">
      <input
        type="checkbox"
        .checked=${live(choice.kinds.includes(kind))}
        @change=${(event: Event) => this.choose({ kinds: kinds((event.target as HTMLInputElement).checked) })}
      />
      <span><strong>${name}</strong> <span class="hint">${about}</span></span>
    </label>`;
  }

  private foundationChoice({ foundation }: Wished): TemplateResult {
    const { least, most } = FREEZER_USES;
    const uses = Array.from({ length: most - least + 1 }, (_, i) => `${least + i}`);
    return this.select(
      'Foundations on',
      foundation.kind === 'sewn' ? 'sewn' : `${foundation.uses}`,
      [
        { value: 'sewn', words: 'paper sewn through, one each' },
        ...uses.map((value) => ({ value, words: `freezer paper, each used ${value} times` })),
      ],
      (value) =>
        this.choose({ foundation: value === 'sewn' ? { kind: 'sewn' } : { kind: 'freezer', uses: Number(value) } }),
    );
  }

  private slipChoice({ slip }: Wished): TemplateResult {
    return this.select(
      'Shopping slip',
      slip,
      [
        { value: 'page', words: 'on a page' },
        { value: 'narrow', words: 'narrow, for a phone' },
      ],
      (value) => this.choose({ slip: value === 'narrow' ? 'narrow' : 'page' }),
    );
  }

  private labelChoice({ labels }: Wished): TemplateResult {
    return html`${this.select(
      'Labels to a sheet',
      `${labels.perSheet}`,
      Object.keys(LABEL_GRIDS).map((value) => ({ value, words: value })),
      (value) => this.choose({ labels: { ...labels, perSheet: Number(value) as LabelsPerSheet } }),
    )}
    ${this.select(
      'A label for each',
      labels.by,
      [
        { value: 'block', words: 'block' },
        { value: 'unit', words: 'unit of a block' },
      ],
      (value) => this.choose({ labels: { ...labels, by: value === 'unit' ? 'unit' : 'block' } }),
    )}`;
  }

  private select(
    label: string,
    value: string,
    options: readonly { readonly value: string; readonly words: string }[],
    choose: (value: string) => void,
  ): TemplateResult {
    const id = `${this.stem}-${label.replaceAll(' ', '-')}`;
    return html`<div class="field">
      <label for=${id}>${label}</label>
      <select id=${id} @change=${(event: Event) => choose((event.target as HTMLSelectElement).value)}>
        ${options.map((option) => html`<option value=${option.value} .selected=${live(option.value === value)}>${option.words}</option>`)}
      </select>
    </div>`;
  }

  private choose(change: Partial<Wished>): void {
    if (this.choice !== null) {
      this.choice = { ...this.choice, ...change };
    }
  }

  private async save(choice: Wished, plan: Plan): Promise<void> {
    this.said = null;
    this.doing = 'Getting ready';
    this.making = makePaper({ ...choice, plan, shown: this.units.shown }, (doing) => {
      this.doing = doing;
    });
    try {
      const made = await this.making.made;
      if (made !== null) {
        saveFile(fileNameOf(plan.quilt.name, 'pdf'), new Blob([made.bytes], { type: 'application/pdf' }));
        this.said = { fault: false, words: `${made.pages} ${made.pages === 1 ? 'page' : 'pages'} saved.` };
      }
    } catch (error) {
      this.said = { fault: true, words: `Nothing was saved: ${error instanceof Error ? error.message : error}.` };
    } finally {
      this.making = null;
      this.doing = null;
    }
  }

  private readonly printPage = (): void => {
    this.querySelector('dialog')?.close();
    window.print();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-papers': Papers;
  }
}
