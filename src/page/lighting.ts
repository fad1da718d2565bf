/**
 * What is lit: the blank that is pointed at, on the cloth and in the block alike. It is shown by one rule in one style
 * sheet, so that nothing has to be rendered anew while a pointer wanders over hundreds of blanks.
 */
export class Lighting extends EventTarget {
  private pointed: string | null = null;
  private pinned: string | null = null;
  private readonly sheet = new CSSStyleSheet();

  /** Follows pointer, focus, taps and keys in a part of the page where things carry `data-blank`. */
  follow(root: Document): void {
    root.adoptedStyleSheets = [...root.adoptedStyleSheets, this.sheet];
    root.addEventListener('pointerover', (event) => event.pointerType === 'mouse' && this.point(blankAt(event)));
    root.addEventListener('focusin', (event) => this.point(blankAt(event)));
    root.addEventListener('focusout', () => this.point(null));
    root.addEventListener('click', (event) => {
      const blank = blankAt(event);
      if (blank !== null || (event.target instanceof Element && event.target.closest('.drawing') !== null)) {
        this.pin(blank === this.pinned ? null : blank);
      }
    });
    root.addEventListener('keydown', (event) => event.key === 'Escape' && this.pin(null));
  }

  /** The blank that is lit: what is pointed at, or else what was tapped. */
  get blank(): string | null {
    return this.pointed ?? this.pinned;
  }

  /** The blank that stays lit until it is tapped again. */
  get kept(): string | null {
    return this.pinned;
  }

  private point(blank: string | null): void {
    if (blank !== this.pointed) {
      this.pointed = blank;
      this.tell();
    }
  }

  private pin(blank: string | null): void {
    this.pinned = blank;
    this.pointed = blank;
    this.tell();
  }

  private tell(): void {
    this.sheet.replaceSync(this.blank === null ? '' : litRule(this.blank));
    this.dispatchEvent(new Event('change'));
  }
}

function litRule(blank: string): string {
  const lit = `[data-blank=${JSON.stringify(blank)}]`;
  return `
    .drawing [data-blank]:not(${lit}) { opacity: 0.35; }
    .drawing ${lit} > path.cloth { stroke: var(--lit); stroke-width: 3.5px; }
    .tag${lit} { outline: 3px solid var(--lit); outline-offset: 1px; }`;
}

function blankAt(event: Event): string | null {
  const target = event.target instanceof Element ? event.target.closest('[data-blank]') : null;
  return target?.getAttribute('data-blank') ?? null;
}
