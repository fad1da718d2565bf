/** Heavy things are made one in a frame, so that the page answers in between. */
const waiting: (() => void)[] = [];

/** Resolves when it is the caller's turn. */
export function turnToDraw(): Promise<void> {
  return new Promise((resolve) => {
    waiting.push(resolve);
    if (waiting.length === 1) {
      requestAnimationFrame(next);
    }
  });
}

function next(): void {
  waiting[0]?.();
  waiting.shift();
  if (waiting.length > 0) {
    requestAnimationFrame(next);
  }
}
