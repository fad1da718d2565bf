/**
 * What is lit: the blank that is pointed at, on the cloth and in the block alike. It is shown by one rule in one style
 * sheet, so that nothing has to be rendered anew while a pointer wanders over hundreds of blanks.
 */
export class Lighting extends EventTarget {
  /** Three ways of pointing, the fleeting first: a pointer over a thing, the keyboard's focus on it, a tap that keeps it. */
  private hovered: string | null = null;
  private focused: string | null = null;
  private kept: string | null = null;
  private lit: string | null = null;
  private readonly sheet = new CSSStyleSheet();

  /** The blank that is lit. */
  get blank(): string | null {
    return this.lit;
  }

  /** Follows pointer, focus, taps and keys wherever things carry `data-blank`. */
  follow(root: Document): void {
    root.adoptedStyleSheets = [...root.adoptedStyleSheets, this.sheet];
    root.addEventListener('pointerover', (event) => {
      this.hovered = event.pointerType === 'mouse' ? blankAt(event) : null;
      this.tell();
    });
    root.addEventListener('focusin', (event) => {
      this.focused = blankAt(event);
      this.tell();
    });
    root.addEventListener('click', (event) => this.onClick(event));
    root.addEventListener('keydown', (event) => {
      if (event.key === 'Escape') {
        Object.assign(this, { hovered: null, focused: null, kept: null });
        this.tell();
      }
    });
  }

  /** A tap keeps a blank lit until it, or the drawing beside it, is tapped. */
  private onClick(event: Event): void {
    const blank = blankAt(event);
    if (blank !== null || (event.target instanceof Element && event.target.closest('.drawing') !== null)) {
      this.kept = blank === this.kept ? null : blank;
      this.tell();
    }
  }

  private tell(): void {
    const lit = this.hovered ?? this.focused ?? this.kept;
    if (lit !== this.lit) {
      this.lit = lit;
      this.sheet.replaceSync(lit === null ? '' : litRule(lit));
      this.dispatchEvent(new Event('change'));
    }
  }
}

function litRule(blank: string): string {
  const lit = `[data-blank=${JSON.stringify(blank)}]`;
  return `
    .drawing [data-blank]:not(${lit}) { opacity: 0.35; }
    .drawing ${lit} > path.cloth { stroke: var(--lit) !important; stroke-width: 3.5px; }
    .tag${lit} { outline: 3px solid var(--lit); outline-offset: 1px; }`;
}

function blankAt(event: Event): string | null {
  const target = event.target instanceof Element ? event.target.closest('[data-blank]') : null;
  return target?.getAttribute('data-blank') ?? null;
}
