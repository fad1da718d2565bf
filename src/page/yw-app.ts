import { html, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { proofread } from '../../workers/proof/proofread.ts';
import { fileNameOf, readTextFile, saveTextFile } from '../keep/file.ts';
import { QuiltSession } from '../keep/quilt-session.ts';
import { openStorage } from '../keep/storage.ts';
import { makeTally } from '../plan/make-tally.ts';
import { takenOver } from '../plan/take-over.ts';
import type { Try } from '../plan/try-with-hand.ts';
import { emptyQuilt } from '../quilt/empty-quilt.ts';
import type { LengthUnit } from '../quilt/quilt.ts';
import { writeQuilt } from '../quilt/write-quilt.ts';
import { Asker } from './asker.ts';
import { atMostEvery } from './at-most-every.ts';
import { oneByOne, startCutter } from './cutter.ts';
import type { EditEvent } from './edit-event.ts';
import { EXAMPLES } from './examples.ts';
import { Lighting } from './lighting.ts';
import { PageElement } from './page-element.ts';
import type { PlannerState } from './plan-state.ts';
import { Planner } from './planner.ts';
import type { Asking } from './question-events.ts';
import type { HandAsked, Questions } from './questions.ts';
import { shownRolls } from './shown-rolls.ts';
import { readyPackers, startPacker } from './start-packer.ts';
import { testFirstLines } from './test-first-lines.ts';
import type { Units } from './written.ts';
import type { BlockSide } from './yw-block-side.ts';
import './yw-block-side.ts';
import './yw-cloth-side.ts';
import './yw-field.ts';
import type { FileWish } from './yw-file-bar.ts';
import './yw-file-bar.ts';
import './yw-lit-line.ts';
import type { Message } from './yw-messages.ts';
import './yw-messages.ts';
import './yw-prices.ts';
import './yw-papers.ts';
import './yw-print-sheet.ts';
import './yw-progress.ts';
import './yw-tally-slip.ts';

/** As many as work at once: more would each have too little of a small machine. */
const PACKERS = 2;

const NO_LINES: readonly string[] = [];

/** Milliseconds between two looks at a planning that tells of itself dozens of times a second. */
const TICK = 150;

/**
 * The table at which all is seen. Edits come up as events, go through the session (which checks, remembers and keeps them)
 * and on to the planner; both are then read down into the elements. Nothing else on the page holds state that matters.
 */
@customElement('yw-app')
export class App extends PageElement {
  private readonly storage = openStorage();
  private readonly session = new QuiltSession(this.storage, EXAMPLES[0].text);
  private readonly planner = new Planner({ startPacker, makeCutList: startCutter(), makeTally, packers: PACKERS });
  private readonly asker = new Asker({
    aside: (job, seconds) => this.planner.aside(job, seconds),
    makeCutList: oneByOne(startCutter()),
    read: proofread,
  });
  private readonly lighting = new Lighting();
  @state() private questions: Questions = this.asker.questions;
  @state() private plan: PlannerState = this.planner.state;
  @state() private shown: LengthUnit = this.unitToShow();
  @state() private messages: readonly Message[] = [];
  private lastMessage = 0;

  override connectedCallback(): void {
    super.connectedCallback();
    this.lighting.follow(document);
    this.addEventListener('yw-edit', (event) => this.onEdit(event));
    this.addEventListener('yw-ask', (event) => void this.onAsk(event.asking));
    this.addEventListener('yw-stop', () => this.planner.stop());
    this.addEventListener('yw-resume', () => this.planner.resume());
    this.addEventListener('yw-wish', (event) => this.onWish((event as CustomEvent<FileWish>).detail));
    this.addEventListener('yw-open', (event) => void this.openFile((event as CustomEvent<File>).detail));
    this.addEventListener('yw-unit', (event) => this.showUnit((event as CustomEvent<LengthUnit>).detail));
    this.addEventListener('yw-dismiss', (event) => this.dismiss((event as CustomEvent<number>).detail));
    document.addEventListener('dragover', (event) => event.preventDefault());
    document.addEventListener('drop', (event) => this.onDrop(event));
    const show = atMostEvery(TICK, (plan: PlannerState) => {
      this.plan = plan;
    });
    this.planner.subscribe(show);
    this.asker.subscribe((questions) => {
      this.questions = questions;
    });
    this.sayStorageFault();
    this.planner.plan(this.session.quilt);
    readyPackers(PACKERS);
  }

  protected override render(): TemplateResult {
    const { session, plan } = this;
    const { quilt } = session;
    const units: Units = { quilt: quilt.unit, shown: this.shown };
    const rolls = shownRolls(plan);
    return html`
      <nav class="skips" aria-label="Parts of the page">
        <a href="#block">The block</a> <a href="#cloth">The cloth</a> <a href="#slip">To buy</a>
      </nav>
      <header class="masthead">
        <p class="brand">Yardwright</p>
        <h1>${quilt.name}</h1>
        <yw-file-bar
          .canUndo=${session.canUndo}
          .canRedo=${session.canRedo}
          .canPrint=${plan.plan !== null}
          .shown=${this.shown}
        ></yw-file-bar>
      </header>
      <yw-messages .messages=${this.messages}></yw-messages>
      <yw-progress .state=${plan}></yw-progress>
      <main class="cutting-table">
        <section id="block" tabindex="-1" aria-label="The block">
          <yw-block-side .quilt=${quilt} .state=${plan} .units=${units}></yw-block-side>
        </section>
        <section id="cloth" tabindex="-1" aria-labelledby="cloth-title">
          <yw-cloth-side .quilt=${quilt} .shown=${rolls} .hands=${this.questions.hands} .tally=${plan.current ? (plan.plan?.tally ?? null) : null} .units=${units}></yw-cloth-side>
        </section>
        <aside id="slip" tabindex="-1" aria-labelledby="slip-title">
          <yw-tally-slip
            .quilt=${quilt}
            .planned=${plan.plan?.quilt ?? null}
            .tally=${plan.plan?.tally ?? null}
            .problems=${plan.plan?.cutList.problems ?? []}
            .testFirst=${plan.plan === null ? NO_LINES : testFirstLines(plan.plan)}
            .former=${plan.plan !== null && !plan.current}
            .coming=${plan.plan === null && plan.busy}
            .units=${units}
          ></yw-tally-slip>
          <yw-prices
            .quilt=${quilt}
            .tally=${plan.current ? (plan.plan?.tally ?? null) : null}
            .asked=${this.questions.prices}
            .units=${units}
          ></yw-prices>
        </aside>
      </main>
      <yw-lit-line .lighting=${this.lighting} .quilt=${quilt} .rolls=${rolls.lit}></yw-lit-line>
      <footer class="foot">
        <p>Yardwright is free software, under the <a href="./gpl-3.0.txt">GNU General Public License, version 3</a> or later.
          Your quilt stays in this browser; nothing is sent anywhere.</p>
      </footer>
      <yw-papers .plan=${plan.plan} .units=${{ quilt: plan.plan?.quilt.unit ?? quilt.unit, shown: this.shown }}></yw-papers>
      <yw-print-sheet .plan=${plan.plan} .units=${{ quilt: plan.plan?.quilt.unit ?? quilt.unit, shown: this.shown }}></yw-print-sheet>
    `;
  }

  private onEdit(event: EditEvent): void {
    event.refusal = this.session.edit(event.edit);
    if (event.refusal === null) {
      this.afterChange();
    }
  }

  private async onAsk(asking: Asking): Promise<void> {
    const { quilt } = this.session;
    switch (asking.what) {
      case 'prices':
        if (this.plan.plan !== null && this.plan.current) {
          await this.asker.askPrices(this.plan.plan);
        }
        break;
      case 'hand':
        await this.asker.askHand(quilt, asking.cloth, asking.have);
        break;
      case 'stop':
        this.asker.stop(asking.about);
        break;
      default:
        await this.takeOver(asking.asked, asking.found);
    }
  }

  /** As one edit, with the plan that was found already known to the planner. */
  private async takeOver(asked: HandAsked, found: Try): Promise<void> {
    for (const { job, answer } of await this.asker.takeOver(asked, found)) {
      this.planner.know(job, answer);
    }
    const why = this.session.edit((quilt) => takenOver(quilt, asked.cloth, asked.have, found.changes));
    if (why === null) {
      this.afterChange();
    } else {
      this.say('error', 'The plan was not taken over; your quilt is as it was.', [why]);
    }
  }

  private onWish(wish: FileWish): void {
    switch (wish) {
      case 'new':
        this.openText(writeQuilt(emptyQuilt(this.shown)), 'A new quilt');
        void this.blockSide()?.beginFirst();
        break;
      case 'save':
        saveTextFile(fileNameOf(this.session.quilt.name), writeQuilt(this.session.quilt));
        break;
      case 'print':
        void this.querySelector('yw-papers')?.open();
        break;
      case 'undo':
        this.session.undo();
        this.afterChange();
        break;
      case 'redo':
        this.session.redo();
        this.afterChange();
        break;
      default:
        this.openText(EXAMPLES[wish.example]!.text, 'The example');
    }
  }

  private blockSide(): BlockSide | null {
    return this.querySelector('yw-block-side');
  }

  private onDrop(event: DragEvent): void {
    if (event.defaultPrevented) {
      return;
    }
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file !== undefined) {
      void this.openFile(file);
    }
  }

  private async openFile(file: File): Promise<void> {
    const text = await readTextFile(file);
    if (text.ok) {
      this.openText(text.value, `“${file.name}”`);
    } else {
      this.say('error', text.why, []);
    }
  }

  private openText(text: string, name: string): void {
    const faults = this.session.open(text);
    if (faults === null) {
      this.messages = this.messages.filter((message) => message.kind !== 'error');
      for (const part of [document.documentElement, ...this.querySelectorAll('#block, #slip')]) {
        part.scrollTop = 0;
      }
      this.afterChange();
    } else {
      this.say('error', `${name} was not opened; your quilt is as it was.`, faults);
    }
  }

  private afterChange(): void {
    this.sayStorageFault();
    this.shown = this.unitToShow();
    if (this.planner.state.quilt !== this.session.quilt) {
      this.asker.stopAll();
    }
    this.planner.plan(this.session.quilt);
    this.requestUpdate();
  }

  private say(kind: Message['kind'], title: string, lines: readonly string[]): void {
    const others = this.messages.filter((message) => message.kind !== kind || message.title === title);
    const rest = others.filter((message) => message.title !== title);
    this.messages = [...rest, { id: ++this.lastMessage, kind, title, lines }];
  }

  private sayStorageFault(): void {
    const fault = this.session.storageFault;
    if (fault !== null && this.messages.every((message) => message.title !== fault)) {
      this.say('note', fault, []);
    }
  }

  private dismiss(id: number): void {
    this.messages = this.messages.filter((message) => message.id !== id);
  }

  /** What she chose, or the quilt's own. */
  private unitToShow(): LengthUnit {
    const kept = this.storage.shownUnit();
    return kept.ok && (kept.value === 'in' || kept.value === 'cm') ? kept.value : this.session.quilt.unit;
  }

  private showUnit(unit: LengthUnit): void {
    this.shown = unit;
    this.storage.keepShownUnit(unit);
  }
}
