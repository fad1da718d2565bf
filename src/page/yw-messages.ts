import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { PageElement } from './page-element.ts';

/** Something the page must say that belongs to no one field: a file that cannot be read, a store that is refused. */
export interface Message {
  readonly id: number;
  readonly kind: 'error' | 'note';
  readonly title: string;
  readonly lines: readonly string[];
}

@customElement('yw-messages')
export class Messages extends PageElement {
  @property({ attribute: false }) messages: readonly Message[] = [];

  protected override render(): TemplateResult {
    return html`<div class="messages" role="alert">
      ${this.messages.map(
        (message) => html`<div class="message ${message.kind}">
          <div>
            <p><strong>${message.title}</strong></p>
            ${message.lines.length === 0 ? nothing : html`<ul>${message.lines.map((line) => html`<li>${line}</li>`)}</ul>`}
          </div>
          <button type="button" @click=${() => this.dismiss(message.id)} aria-label="Put away: ${message.title}">Put away</button>
        </div>`,
      )}
    </div>`;
  }

  private dismiss(id: number): void {
    this.dispatchEvent(new CustomEvent('yw-dismiss', { detail: id, bubbles: true }));
  }
}
