import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Drawing } from '../../draw/display-list.ts';
import { drawImport } from '../../draw/draw-import.ts';
import type { ImportNote } from '../../import/import-notes.ts';
import { type ImportedSvg, importSvg } from '../../import/import-svg.ts';
import { LONGEST_FILE } from '../../import/svg/read-xml.ts';
import { lengthIn } from '../../quilt/measure.ts';
import type { Length, Quilt } from '../../quilt/quilt.ts';
import { sendDrawn } from '../drawn-event.ts';
import { freshId, PageElement } from '../page-element.ts';
import { shownDrawing } from '../shown-drawing.ts';
import { chosenField, typedField } from '../trace/trace-field.ts';
import { WidthWatch } from '../width-watch.ts';
import { fieldText, typedLength, UNITS, type Units, written } from '../written.ts';
import { repeatWords, sewingWords } from './unit-words.ts';

type Field = 'width' | 'tolerance';

/**
 * A block from an SVG file: choose or drop it, see what was found in it and what is to be looked at, put it into the quilt. Fires
 * `yw-drawn` with the block, a CustomEvent<DrawnBlock>. The file is only read; nothing in it is run, fetched or shown as it is.
 */
@customElement('yw-svg-import')
export class SvgImport extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  @state() private file: { readonly name: string; readonly text: string } | null = null;
  @state() private fault: string | null = null;
  @state() private name = '';
  @state() private width: Length | null = null;
  @state() private tolerance: Length = '1/64 in';
  @state() private centre: 'middle' | 'page' = 'middle';
  @state() private over = false;
  @state() private readonly faults = new Map<Field, string>();
  private found: ImportedSvg | null = null;
  private readonly watch = new WidthWatch(this, '.import-figure');
  private readonly stem = freshId('svg');
  private drawn: { of: ImportedSvg; pixels: number; drawing: Drawing } | null = null;

  protected override willUpdate(changed: PropertyValues): void {
    const asked = ['file', 'width', 'tolerance', 'centre', 'units', 'name'];
    if (asked.some((field) => changed.has(field as keyof SvgImport))) this.found = this.imported();
  }

  private imported(): ImportedSvg | null {
    const { file, units, width, tolerance, centre, name } = this;
    if (file === null) return null;
    return importSvg(file.text, {
      unit: units.quilt,
      name,
      tolerance: lengthIn(units.quilt, tolerance),
      centre,
      ...(width === null ? {} : { width: lengthIn(units.quilt, width) }),
    });
  }

  protected override render(): TemplateResult {
    const { found } = this;
    return html`<div class="svg-import">
      <div class="made">${this.chooser()} ${found === null ? nothing : html`${this.fields(found)} ${this.summary(found)}`}</div>
      <div class="made" ?hidden=${found === null}>
        <figure class="import-figure">${found === null ? nothing : this.picture(found)}</figure>
        ${found === null ? nothing : this.notes(found.notes)}
      </div>
    </div>`;
  }

  private chooser(): TemplateResult {
    return html`<div
        class="trace-drop"
        ?data-over=${this.over}
        @dragover=${(event: DragEvent) => this.onDrag(event, true)}
        @dragleave=${(event: DragEvent) => this.onDrag(event, false)}
        @drop=${this.onDrop}
      >
        <label class="button">
          ${this.file === null ? 'Choose an SVG file' : 'Choose another SVG file'}
          <input type="file" accept=".svg,image/svg+xml" @change=${this.onFile} />
        </label>
        <p class="hint">
          Or drop it here. Each closed outline is a patch, each group of outlines a unit; ids, titles, and words inside a patch name it.
          The file stays on this machine, and nothing in it is run or fetched.
        </p>
        ${this.file === null ? nothing : html`<p><strong>${this.file.name}</strong></p>`}
      </div>
      <p class="fault" role="alert" ?hidden=${this.fault === null}>${this.fault ?? ''}</p>`;
  }

  private fields(found: ImportedSvg): TemplateResult {
    return html`<div class="import-fields">
      ${typedField({
        id: `${this.stem}-name`,
        label: 'Name of the block',
        value: this.name,
        onTyped: (text) => {
          this.name = text === '' ? 'Drawn block' : text;
        },
      })}
      ${typedField({
        id: `${this.stem}-width`,
        label: 'True width, finished',
        hint: this.widthHint(found),
        value: this.width === null ? '' : fieldText(this.width, this.units),
        fault: this.faults.get('width') ?? null,
        onTyped: (text) => this.typed('width', text),
      })}
      ${typedField({
        id: `${this.stem}-tolerance`,
        label: 'What is let pass',
        hint: 'corners so near each other are made one, and thinner gaps and overlaps are not told',
        value: fieldText(this.tolerance, this.units),
        fault: this.faults.get('tolerance') ?? null,
        onTyped: (text) => this.typed('tolerance', text),
      })}
      ${chosenField({
        id: `${this.stem}-centre`,
        label: 'The block’s centre',
        value: this.centre,
        choices: [
          { value: 'middle', words: 'a mark named “centre”, or the drawing’s middle' },
          { value: 'page', words: 'the middle of the page' },
        ],
        onChosen: (value) => {
          this.centre = value;
        },
      })}
    </div>`;
  }

  private widthHint({ scale, size }: ImportedSvg): string {
    if (size === null) return 'of all patches together';
    const wide = written(size.width, this.units);
    switch (scale) {
      case 'given':
        return 'as you say; empty it to take what the file says';
      case 'physical':
        return `the file says ${wide}; fill in another width if that is not so`;
      case 'pixels':
        return `${wide}, if 96 pixels make an inch; fill in the width if that is not so`;
      case 'none':
        return 'of all patches together; the file does not say';
    }
  }

  private typed(field: Field, text: string): void {
    try {
      this.faults.delete(field);
      if (field === 'width' && text === '') {
        this.width = null;
      } else {
        const length = typedLength(text, this.units);
        if (!(lengthIn(this.units.quilt, length) > 0)) throw new RangeError('Expected a length above zero.');
        this[field] = length;
      }
    } catch (error) {
      this.faults.set(field, error instanceof Error ? error.message : String(error));
    }
    this.requestUpdate();
  }

  private summary(found: ImportedSvg): TemplateResult {
    const units = found.block?.units ?? [];
    const error = found.notes.find(({ kind }) => kind === 'error');
    return html`<div role="status">
        ${error === undefined ? nothing : html`<p class="fault">${error.text}</p>`}
        ${
          found.size === null || found.block === null
            ? nothing
            : html`<p>
                ${found.patches.length} ${found.patches.length === 1 ? 'patch' : 'patches'} in ${units.length}
                ${units.length === 1 ? 'unit' : 'units'}, ${written(found.size.width, this.units)} wide and
                ${written(found.size.height, this.units)} high.
              </p>`
        }
      </div>
      ${units.length === 0 ? nothing : this.table(found)}
      <p>
        <button type="button" class="chief" ?disabled=${found.block === null} @click=${() => found.block && sendDrawn(this, found.block)}>
          Put it into the quilt
        </button>
      </p>`;
  }

  private table({ block }: ImportedSvg): TemplateResult {
    const roleName = (id: string): string => block!.roles.find((role) => role.id === id)?.name ?? id;
    return html`<div class="table-frame" tabindex="0" role="region" aria-label="The units that were found">
      <table>
        <thead>
          <tr><th scope="col">Unit</th><th scope="col">How often</th><th scope="col">How pieced</th><th scope="col">Roles</th></tr>
        </thead>
        <tbody>
          ${block!.units.map(
            (unit) => html`<tr>
              <th scope="row">${unit.id}${unit.name === undefined ? '' : ` ${unit.name}`}</th>
              <td>${repeatWords(unit.repeat)}</td>
              <td>${sewingWords(unit)}</td>
              <td>${[...new Set(unit.patches.map(({ role }) => roleName(role)))].join('; ')}</td>
            </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }

  private picture(found: ImportedSvg): TemplateResult | typeof nothing {
    const { watch } = this;
    if (watch.width === 0 || found.size === null) return nothing;
    if (this.drawn?.of !== found || this.drawn.pixels !== watch.width) {
      const textSize = (watch.smallText * Math.max(found.size.width, found.size.height)) / watch.width;
      const marked = found.notes.filter(({ places }) => places.length > 0).map(({ places }) => places);
      this.drawn = {
        of: found,
        pixels: watch.width,
        drawing: drawImport({ patches: found.patches, marked, textSize }),
      };
    }
    return shownDrawing(this.drawn.drawing, this.stem);
  }

  /** Those with a ring on the drawing carry its number. */
  private notes(notes: readonly ImportNote[]): TemplateResult {
    const ringed = notes.filter(({ places }) => places.length > 0);
    const said = notes.filter(({ kind }) => kind !== 'error');
    return html`<ul class="import-notes" aria-label="What to know about this drawing">
      ${said.map(
        (note) => html`<li data-kind=${note.kind}>
          ${ringed.includes(note) ? html`<span class="ring-number">${ringed.indexOf(note) + 1}</span>` : nothing}
          ${note.kind === 'warning' ? html`<strong>Look:</strong>` : nothing} ${note.text}
        </li>`,
      )}
    </ul>`;
  }

  private onDrag(event: DragEvent, over: boolean): void {
    event.preventDefault();
    this.over = over;
  }

  private onDrop(event: DragEvent): void {
    event.preventDefault();
    event.stopPropagation();
    this.over = false;
    const file = event.dataTransfer?.files[0];
    if (file !== undefined) void this.read(file);
  }

  private onFile(event: Event): void {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    // The same file chosen again, once mended, must be a change again.
    if (file !== undefined) void this.read(file).then(() => (input.value = ''));
  }

  /** What was found before stays until another file could be read. */
  private async read(file: File): Promise<void> {
    this.fault = null;
    if (file.size > LONGEST_FILE) {
      this.fault = `“${file.name}” has ${Math.round(file.size / 1e6)} MB; at most ${LONGEST_FILE / 1e6} MB are read. Save the block alone, without pictures.`;
      return;
    }
    try {
      const text = await file.text();
      this.width = null;
      this.faults.clear();
      this.name =
        file.name
          .replace(/\.svg$/i, '')
          .replace(/[-_]+/g, ' ')
          .trim() || 'Drawn block';
      this.file = { name: file.name, text };
    } catch (error) {
      this.fault = `“${file.name}” could not be read: ${error instanceof Error ? error.message : String(error)}`;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yw-svg-import': SvgImport;
  }
}
