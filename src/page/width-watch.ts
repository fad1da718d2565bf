import type { ReactiveController, ReactiveControllerHost } from 'lit';

/**
 * Tells its host how wide its drawings stand on the page, in pixels, and asks it to render anew when that changes by more
 * than a hair, so that the text of a drawing keeps its size whatever the drawing's scale.
 */
export class WidthWatch implements ReactiveController {
  /** 0 until it has been measured. */
  width = 0;
  /** The height of small text in pixels, which grows with the reader's own setting. */
  smallText = 12;
  private readonly host: ReactiveControllerHost & HTMLElement;
  private readonly selector: string;
  private readonly observer: ResizeObserver;
  private watched: Element | null = null;

  /** @param selector of what is measured, the first such thing inside the host: as wide inside as the drawings stand */
  constructor(host: ReactiveControllerHost & HTMLElement, selector: string) {
    this.host = host;
    this.selector = selector;
    this.observer = new ResizeObserver(([entry]) => this.take(entry?.contentRect.width ?? 0));
    host.addController(this);
  }

  hostUpdated(): void {
    const found = this.host.querySelector(this.selector);
    if (found !== this.watched) {
      this.observer.disconnect();
      this.watched = found;
      if (found !== null) {
        // Measured at once, so that nothing has to make room for the drawing later.
        const { paddingLeft, paddingRight } = getComputedStyle(found);
        this.take(found.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight));
        this.observer.observe(found);
      }
    }
  }

  private take(measured: number): void {
    const width = Math.floor(measured);
    if (width > 0 && Math.abs(width - this.width) > 4) {
      this.width = width;
      this.smallText = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) * 0.75;
      this.host.requestUpdate();
    }
  }

  hostDisconnected(): void {
    this.observer.disconnect();
    this.watched = null;
  }
}
