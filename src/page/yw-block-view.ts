import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Blank, CutList } from '../cutting/cut-list.ts';
import type { Drawing } from '../draw/display-list.ts';
import { drawBlock } from '../draw/draw-block.ts';
import { easilyMistaken, type LookAlike } from '../plan/look-alikes.ts';
import type { Block, Quilt, Scheme } from '../quilt/quilt.ts';
import { blankTags } from './blank-tags.ts';
import { blockExtent } from './block-extent.ts';
import type { ChosenPatch } from './chosen-patch.ts';
import { turnToDraw } from './in-turn.ts';
import { freshId, PageElement } from './page-element.ts';
import { shownDrawing } from './shown-drawing.ts';
import { WidthWatch } from './width-watch.ts';
import { UNITS, type Units } from './written.ts';
import './yw-block-prints.ts';
import './yw-prints-picture.ts';

/** A drawing taller than this part of its width would hide what scrolls under it. */
const TALL = 1.1;

/** One block as it will be when finished, the names of its patches under it, and the table that says the same. */
@customElement('yw-block-view')
export class BlockView extends PageElement {
  @property({ attribute: false }) quilt: Quilt | null = null;
  @property({ attribute: false }) block: Block | null = null;
  @property({ attribute: false }) cutList: CutList | null = null;
  @property(UNITS) units: Units = { quilt: 'in', shown: 'in' };
  /** Blanks that are easily taken for each other, of the plan that is shown. */
  @property({ attribute: false }) alike: readonly LookAlike[] = [];
  /** The table is long, so it is not made before it is asked for. */
  @state() private unfolded = false;
  /** Whether prints are looked at and turned, in place of the names and blanks. */
  @state() private turning = false;
  /** Whether that is done on the bench, over the rest of the page. */
  @state() private larger = false;
  /** The patch that was looked at when the bench was opened. */
  private looked: ChosenPatch | null = null;
  private readonly watch = new WidthWatch(this, '.block-figure');
  private readonly stem = freshId('block');
  private drawn: { key: readonly unknown[]; drawing: Drawing } | null = null;

  /** The first drawing is there at once; those after it wait their turn among the rolls. */
  protected override async scheduleUpdate(): Promise<void> {
    if (this.drawn !== null) {
      await turnToDraw();
    }
    super.scheduleUpdate();
  }

  protected override render(): TemplateResult | typeof nothing {
    const { quilt, block } = this;
    const scheme = quilt?.schemes.find((one) => one.id === quilt.scheme);
    if (quilt === null || block === null || scheme === undefined) {
      return nothing;
    }
    const blanks = this.blanksOfBlock(block);
    const drawing = this.drawing(quilt, scheme, block, blanks);
    return html`<figure class="block-figure" ?data-tall=${this.turning || (drawing !== null && drawing.box.height > TALL * drawing.box.width)}>
        <figcaption>
          <h2>${block.name}</h2>
          <span>${block.count === 1 ? 'one' : `${block.count}`} in the quilt</span>
        </figcaption>
        <p class="row-buttons">
          <button type="button" class="quiet" @click=${this.onTurning}>
            ${this.turning ? 'Back to its names' : `Prints and patches of ${block.name}`}
          </button>
          ${this.turning ? html`<button type="button" class="quiet" @click=${this.onLarger}>Look at it larger</button>` : nothing}
        </p>
        ${
          this.turning
            ? html`<yw-block-prints .quilt=${quilt} .block=${block} .units=${this.units}></yw-block-prints>`
            : html`<div class="drawing-frame">${drawing === null ? nothing : shownDrawing(drawing, this.stem)}</div>`
        }
      </figure>
      <dialog class="bench" aria-label="Prints and patches of ${block.name}" @close=${this.onSmaller}>
        ${this.larger ? this.bench(quilt, block) : nothing}
      </dialog>
      <details @toggle=${this.onToggle}>
        <summary>Its blanks by name</summary>
        ${this.unfolded ? html`${blankTags(blanks, `Patches of ${block.name}`, easilyMistaken(this.alike))} ${this.table(quilt, blanks)}` : nothing}
      </details>`;
  }

  private bench(quilt: Quilt, block: Block): TemplateResult {
    return html`<header class="row">
        <h2>Prints and patches of ${block.name}</h2>
        <button type="button" @click=${() => this.querySelector('dialog')?.close()}>Put away</button>
      </header>
      <yw-block-prints
        class="large"
        .quilt=${quilt}
        .block=${block}
        .chosen=${this.looked}
        .units=${this.units}
      ></yw-block-prints>`;
  }

  private async onLarger(): Promise<void> {
    this.looked = this.querySelector('yw-block-prints')?.chosen ?? null;
    this.larger = true;
    await this.updateComplete;
    this.querySelector('dialog')?.showModal();
  }

  private onSmaller(): void {
    this.larger = false;
  }

  private onTurning(): void {
    this.turning = !this.turning;
  }

  private onToggle(event: Event): void {
    this.unfolded ||= (event.target as HTMLDetailsElement).open;
  }

  private blanksOfBlock(block: Block): readonly Blank[] {
    const all = (this.cutList?.groups ?? []).flatMap((group) => group.blanks);
    return all
      .filter((blank) => blank.uses.some((use) => use.block === block.id))
      .sort((a, b) => a.id.localeCompare(b.id, undefined, { numeric: true }));
  }

  /** Drawn anew only when what it shows has changed, not with every edit and tick; not before its width is known. */
  private drawing(quilt: Quilt, scheme: Scheme, block: Block, blanks: readonly Blank[]): Drawing | null {
    const pixels = this.watch.width;
    if (pixels === 0) {
      return null;
    }
    const looks = quilt.cloths.map(({ id, colour, print }) => [id, colour, print]);
    const key = [JSON.stringify([block, quilt.roles, scheme, looks]), pixels, ...blanks];
    const { drawn } = this;
    if (drawn?.key.length !== key.length || key.some((part, index) => part !== drawn.key[index])) {
      const textSize = (this.watch.smallText * blockExtent(block, quilt.unit)) / pixels;
      this.drawn = { key, drawing: drawBlock({ quilt, scheme, block, blanks, textSize }) };
    }
    return this.drawn?.drawing ?? null;
  }

  private table(quilt: Quilt, blanks: readonly Blank[]): TemplateResult {
    return html`<div class="table-frame" tabindex="0" role="region" aria-label="Patches and their blanks">
      <table>
        <thead>
          <tr>
            <th scope="col">Blank</th>
            <th scope="col">Role</th>
            <th scope="col">Cloth</th>
            <th scope="col">To cut</th>
            <th scope="col">Spare</th>
            <th scope="col">Looks like</th>
          </tr>
        </thead>
        <tbody>
          ${blanks.map(
            (blank) => html`<tr>
              <th scope="row">${blank.id}</th>
              <td>${quilt.roles.find((role) => role.id === blank.role)?.name ?? blank.role}</td>
              <td>${clothNames(quilt, blank.role)}</td>
              <td>${blank.demand}</td>
              <td>${blank.spares}</td>
              <td>${alikeWords(blank.id, this.alike)}</td>
            </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }
}

/** "B1 mirrored (other hand)". */
function alikeWords(id: string, alike: readonly LookAlike[]): string {
  const how = { hands: 'other hand', size: 'another size', print: 'print another way' } as const;
  return alike
    .filter(({ blanks }) => blanks.includes(id))
    .map((each) => `${each.blanks.find((other) => other !== id) ?? id} (${how[each.how]})`)
    .join(', ');
}

/** The cloths that fill a role in the scheme being planned. */
function clothNames(quilt: Quilt, role: string): string {
  const ids = quilt.schemes.find((scheme) => scheme.id === quilt.scheme)?.cloths[role] ?? [];
  return [ids]
    .flat()
    .map((id) => quilt.cloths.find((cloth) => cloth.id === id)?.name ?? id)
    .join(' or ');
}
