/** The one door to the browser's own store. A browser may refuse it (private windows, full disks): then that is said. */

export type Kept<Value> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly why: string };

/** What is needed of the browser's local storage. */
export interface TextStore {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

const QUILT_KEY = 'yardwright/quilt';
const UNIT_KEY = 'yardwright/shown-unit';

export interface Storage {
  /** The quilt's file text as last kept; null when there is none. */
  readonly quilt: () => Kept<string | null>;
  readonly keepQuilt: (text: string) => Kept<null>;
  readonly shownUnit: () => Kept<string | null>;
  readonly keepShownUnit: (unit: string) => Kept<null>;
}

/**
 * @param open fetches the store; it is called anew each time, since merely naming `localStorage` throws where it is refused
 */
export function openStorage(open: () => TextStore = () => localStorage): Storage {
  const read = (key: string): Kept<string | null> => attempt(() => open().getItem(key));
  const write = (key: string, text: string): Kept<null> =>
    attempt(() => {
      open().setItem(key, text);
      return null;
    });
  return {
    quilt: () => read(QUILT_KEY),
    keepQuilt: (text) => write(QUILT_KEY, text),
    shownUnit: () => read(UNIT_KEY),
    keepShownUnit: (unit) => write(UNIT_KEY, unit),
  };
}

function attempt<Value>(task: () => Value): Kept<Value> {
  try {
    return { ok: true, value: task() };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return {
      ok: false,
      why: `This browser does not let the page keep your quilt between visits (${reason}). Save it to a file instead.`,
    };
  }
}
