/** After so many frames she has gone on to something else. */
const FRAMES_MOST = 120;

/**
 * Puts the focus on something that comes with the page's next look at the quilt, which may be a few frames off; nothing
 * happens where it does not come.
 */
export async function focusSoon(root: ParentNode, selector: string): Promise<void> {
  for (let frame = 0; frame < FRAMES_MOST; frame++) {
    await new Promise(requestAnimationFrame);
    const found = root.querySelector<HTMLElement>(selector);
    if (found !== null) {
      found.focus();
      if (found instanceof HTMLInputElement && found.type === 'text') {
        found.select();
      }
      return;
    }
  }
}
