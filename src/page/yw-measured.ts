import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { repeat } from 'lit/directives/repeat.js';
import { readTextFile } from '../keep/file.ts';
import type { DrawnBlock } from '../quilt/drawn-block.ts';
import { measuredBlock } from '../quilt/measured/measured-block.ts';
import { isUntouched, type MeasuredRow, NEW_ROW, type RowRead, readRow } from '../quilt/measured/measured-row.ts';
import { readTable } from '../quilt/measured/read-table.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { sendDrawn } from './drawn-event.ts';
import { focusSoon } from './focus-soon.ts';
import { freshId, PageElement } from './page-element.ts';
import { UNITS, type Units } from './written.ts';
import './yw-drawn-picture.ts';
import './yw-measured-row.ts';

interface KeyedRow {
  readonly key: number;
  readonly row: MeasuredRow;
}

const EXAMPLE = 'shape, width, height, how many, name, role\nrectangle, 2 1/2, 4 1/2, 16, A1, Sky';

/** A block of measured pieces: a table to type into or to paste into, beside a picture of what it holds so far. */
@customElement('yw-measured')
export class Measured extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private rows: readonly KeyedRow[] = [{ key: 0, row: NEW_ROW }];
  @state() private name = 'Pieces';
  @state() private paper = false;
  @state() private notes: readonly string[] = [];
  private lastKey = 0;
  private readonly stem = freshId('measured');

  protected override render(): TemplateResult | typeof nothing {
    const { quilt } = this;
    if (quilt === null) {
      return nothing;
    }
    const read = this.rows.map(({ row }) => readRow(row, this.units));
    const drawn = this.drawn(quilt, read);
    const roles = new Set([...quilt.roles.map((role) => role.name), ...this.rows.map(({ row }) => row.role)]);
    roles.delete('');
    return html`<div class="making measuring">
      <div class="pieces" @paste=${this.onPaste}>
        <datalist id="${this.stem}-roles">${[...roles].map((role) => html`<option value=${role}></option>`)}</datalist>
        ${this.pasting()}
        ${repeat(
          this.rows,
          ({ key }) => key,
          ({ key, row }, i) => {
            const one = read[i]!;
            return html`<yw-measured-row
              data-row=${key}
              .row=${row}
              .number=${i + 1}
              .faults=${'faults' in one ? one.faults : []}
              roles="${this.stem}-roles"
              @yw-row=${(event: CustomEvent<MeasuredRow | null>) => this.onRow(event, key)}
            ></yw-measured-row>`;
          },
        )}
        <p><button type="button" @click=${() => this.addRow()}>Add a piece</button></p>
      </div>
      <div class="made">${this.summary(read, drawn)} <yw-drawn-picture .quilt=${quilt} .drawn=${drawn}></yw-drawn-picture></div>
    </div>`;
  }

  private pasting(): TemplateResult {
    const id = `${this.stem}-paste`;
    return html`<details class="pasting">
      <summary>Paste from a spreadsheet, or open a CSV file</summary>
      <div class="field">
        <label for=${id}>Cells, with headings or without</label>
        <textarea id=${id} rows="4" placeholder=${EXAMPLE} aria-describedby="${id}-hint" spellcheck="false"></textarea>
        <p class="hint" id="${id}-hint">
          With headings the columns may stand in any order: shape; width, height and other sizes by name, a unit after the name if you
          like; how many; name; role; facing. Without: shape, three sizes, how many, name, role, facing.
        </p>
      </div>
      <p class="row-buttons">
        <button type="button" @click=${this.takePasted}>Take these rows</button>
        <label class="button" for="${id}-file"><span>Open a CSV file</span>
          <input id="${id}-file" type="file" accept=".csv,.tsv,.txt,text/csv,text/plain" @change=${this.onFile} />
        </label>
      </p>
      <div role="status">${this.notes.map((note) => html`<p class="hint">${note}</p>`)}</div>
    </details>`;
  }

  private summary(read: readonly RowRead[], drawn: DrawnBlock | null): TemplateResult {
    const good = read.filter((one) => 'piece' in one).length;
    const bad = this.rows.filter(({ row }, i) => 'faults' in read[i]! && !isUntouched(row)).length;
    const pieces = read.reduce((sum, one) => sum + ('piece' in one ? one.piece.count : 0), 0);
    return html`
      <div class="field">
        <label for="${this.stem}-name">Name of the block</label>
        <input id="${this.stem}-name" type="text" autocomplete="off" .value=${live(this.name)} @change=${this.onName} />
      </div>
      <label class="tick">
        <input type="checkbox" .checked=${live(this.paper)} @change=${this.onPaper} />
        Sewn onto paper: cut with room all round
      </label>
      <p role="status">
        ${good === 0 ? 'No piece is measured yet.' : `${good} ${good === 1 ? 'kind' : 'kinds'} of piece, ${pieces} to cut.`}
        ${bad === 0 ? '' : `${bad} ${bad === 1 ? 'is' : 'are'} marked, and ${bad === 1 ? 'stays' : 'stay'} here until mended.`}
      </p>
      <p>
        <button type="button" class="chief" ?disabled=${drawn === null} @click=${() => this.put(read, drawn)}>Put ${good > 1 ? 'them' : 'it'} into the quilt</button>
      </p>
    `;
  }

  private drawn(quilt: Quilt, read: readonly RowRead[]): DrawnBlock | null {
    const pieces = read.flatMap((one) => ('piece' in one ? [one.piece] : []));
    return pieces.length === 0
      ? null
      : measuredBlock(pieces, { name: this.name, paper: this.paper, roles: quilt.roles });
  }

  /** What could be read goes into the quilt; what could not stays on the bench. */
  private put(read: readonly RowRead[], drawn: DrawnBlock | null): void {
    if (drawn === null) {
      return;
    }
    const left = this.rows.filter(({ row }, i) => 'faults' in read[i]! && !isUntouched(row));
    sendDrawn(this, drawn);
    this.rows = left.length > 0 ? left : [{ key: ++this.lastKey, row: NEW_ROW }];
    this.notes = [];
  }

  private onRow(event: CustomEvent<MeasuredRow | null>, key: number): void {
    event.stopPropagation();
    const row = event.detail;
    this.rows = this.rows.flatMap((one) => (one.key !== key ? [one] : row === null ? [] : [{ key, row }]));
    if (row === null) {
      void focusSoon(this, '.pieces > p button');
    }
  }

  /** Begins as the last one: pieces of a pattern are mostly alike. */
  private addRow(): void {
    const last = this.rows.at(-1)?.row ?? NEW_ROW;
    const key = ++this.lastKey;
    const { shape, role, facing } = last;
    this.rows = [...this.rows, { key, row: { ...NEW_ROW, shape, role, facing } }];
    void focusSoon(this, `[data-row="${key}"] select`);
  }

  /** Cells pasted into a field are rows; a word pasted there is a word. */
  private onPaste(event: ClipboardEvent): void {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (!(event.target instanceof HTMLTextAreaElement) && /[\t\n]./.test(text)) {
      event.preventDefault();
      this.take(text);
    }
  }

  private takePasted(): void {
    const area = this.querySelector<HTMLTextAreaElement>('.pasting textarea')!;
    this.take(area.value);
    area.value = '';
  }

  private async onFile(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    input.value = '';
    if (file !== undefined) {
      const text = await readTextFile(file);
      if (text.ok) {
        this.take(text.value);
      } else {
        this.notes = [text.why];
      }
    }
  }

  private take(text: string): void {
    const { rows, notes } = readTable(text);
    const old = this.rows.filter(({ row }) => !isUntouched(row));
    this.rows = [...old, ...rows.map((row) => ({ key: ++this.lastKey, row }))];
    this.notes = [rows.length === 0 ? 'There was no row in it.' : `${rows.length} rows taken.`, ...notes];
  }

  private onName(event: Event): void {
    this.name = (event.target as HTMLInputElement).value.trim() || 'Pieces';
    this.requestUpdate();
  }

  private onPaper(event: Event): void {
    this.paper = (event.target as HTMLInputElement).checked;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-measured': Measured;
  }
}
