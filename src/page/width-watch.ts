import type { ReactiveController, ReactiveControllerHost } from 'lit';

/**
 * Tells its host how wide it stands on the page, in pixels, and asks it to render anew when that changes by more than a
 * hair, so that the text of a drawing keeps its size whatever the drawing's scale.
 */
export class WidthWatch implements ReactiveController {
  /** 0 until it has been measured. */
  width = 0;
  private readonly host: ReactiveControllerHost & HTMLElement;
  private readonly observer: ResizeObserver;

  constructor(host: ReactiveControllerHost & HTMLElement) {
    this.host = host;
    this.observer = new ResizeObserver(([entry]) => {
      const width = Math.floor(entry?.contentRect.width ?? 0);
      if (Math.abs(width - this.width) > 4) {
        this.width = width;
        host.requestUpdate();
      }
    });
    host.addController(this);
  }

  hostConnected(): void {
    this.observer.observe(this.host);
  }

  hostDisconnected(): void {
    this.observer.disconnect();
  }
}

/** The height of small text in pixels, which grows with the reader's own setting. */
export function smallTextPixels(): number {
  return Number.parseFloat(getComputedStyle(document.documentElement).fontSize) * 0.75;
}
