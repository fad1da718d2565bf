import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Drawing } from '../../draw/display-list.ts';
import { drawImport } from '../../draw/draw-import.ts';
import { type ImportedSvg, importSvg } from '../../import/import-svg.ts';
import { renameRoles } from '../../import/rename-roles.ts';
import type { CentreChoice } from '../../import/sound-patches.ts';
import { LONGEST_FILE } from '../../import/svg/read-xml.ts';
import type { DrawnBlock } from '../../quilt/drawn-block.ts';
import { lengthIn } from '../../quilt/measure.ts';
import type { Facing, Length, Quilt } from '../../quilt/quilt.ts';
import { sendDrawn } from '../drawn-event.ts';
import { freshId, PageElement } from '../page-element.ts';
import { shownDrawing } from '../shown-drawing.ts';
import { chosenField, typedField } from '../trace/trace-field.ts';
import { WidthWatch } from '../width-watch.ts';
import { fieldText, typedLength, UNITS, type Units, written } from '../written.ts';
import { notesList } from './notes-list.ts';
import { unitsTable } from './units-table.ts';
import type { RolesNamed } from './yw-import-roles.ts';
import './yw-import-roles.ts';

type Field = 'width' | 'tolerance';

/** For a quarter of a round, drawn by itself. */
const CORNERS = ['lower left', 'lower right', 'upper left', 'upper right'] as const;

/** A part of the screen's height, as in svg-import.css. */
const TALLEST = 0.54;

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
  @state() private centre: CentreChoice = 'middle';
  @state() private facing: Facing['to'] = 'free';
  /** What she calls the roles that were found, by their ids. */
  @state() private roleNames: ReadonlyMap<string, string> = new Map();
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

  /** What was found, under the names that she has given. */
  private get block(): DrawnBlock | null {
    const block = this.found?.block ?? null;
    const known = (this.quilt?.roles ?? []).map(({ id, name, facing }) => ({ id, name, facing }));
    return block === null ? null : renameRoles(block, this.roleNames, known, { to: this.facing });
  }

  protected override render(): TemplateResult {
    const { found } = this;
    return html`<div class="svg-import">
      <div class="made import-choose">${this.chooser()}</div>
      ${
        found === null
          ? nothing
          : html`<div class="made import-seen">
                <figure class="import-figure">${this.picture(found)}</figure>
                ${notesList(found.notes)}
              </div>
              <div class="made import-rest">${this.fields(found)} ${this.summary(found)}</div>`
      }
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
        fault:
          this.faults.get('width') ?? (found.scale === 'none' && found.size !== null ? 'Say how wide it is.' : null),
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
      ${chosenField<CentreChoice>({
        id: `${this.stem}-centre`,
        label: 'The block’s centre',
        value: this.centre,
        choices: [
          { value: 'middle', words: 'a mark named “centre”, or the middle' },
          { value: 'page', words: 'the middle of the page' },
          ...CORNERS.map((value) => ({ value, words: `the ${value} corner` })),
        ],
        onChosen: (value) => {
          this.centre = value;
        },
      })}
      <yw-import-roles
        .found=${found}
        .known=${this.quilt?.roles ?? []}
        .names=${this.roleNames}
        facing=${this.facing}
        @yw-roles-named=${this.onRoles}
      ></yw-import-roles>
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
      ${this.block === null ? nothing : unitsTable(this.block)}
      <p>
        <button type="button" class="chief" ?disabled=${found.block === null} @click=${() => this.onDone()}>
          Put it into the quilt
        </button>
      </p>`;
  }

  private picture(found: ImportedSvg): TemplateResult | typeof nothing {
    const { watch } = this;
    if (watch.width === 0 || found.size === null) return nothing;
    // As large as the style sheet lets it be: its column's width, or a part of the screen's height.
    const pixels = Math.min(watch.width, (TALLEST * innerHeight * found.size.width) / found.size.height);
    if (this.drawn?.of !== found || this.drawn.pixels !== pixels) {
      const textSize = (watch.smallText * found.size.width) / pixels;
      const marked = found.notes.filter(({ places }) => places.length > 0).map(({ places }) => places);
      const drawing = drawImport({ patches: found.patches, marked, textSize });
      this.drawn = { of: found, pixels, drawing };
    }
    return shownDrawing(this.drawn.drawing, this.stem);
  }

  private onRoles({ detail }: CustomEvent<RolesNamed>): void {
    this.roleNames = detail.names;
    this.facing = detail.facing;
  }

  private onDone(): void {
    const { block } = this;
    if (block !== null) sendDrawn(this, block);
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
      this.roleNames = new Map();
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
