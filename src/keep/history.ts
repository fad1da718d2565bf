/** Undo and redo, as a line of values that never change. */

export interface History<Value> {
  /** Oldest first. */
  readonly past: readonly Value[];
  readonly present: Value;
  /** What a redo brings back, nearest first. */
  readonly future: readonly Value[];
}

/** Steps kept: more than anyone takes back, few enough to forget about memory. */
const DEPTH = 200;

export const startHistory = <Value>(present: Value): History<Value> => ({ past: [], present, future: [] });

/** A new present; what was undone is gone. The same value again is no step. */
export function change<Value>(history: History<Value>, next: Value): History<Value> {
  if (next === history.present) {
    return history;
  }
  return { past: [...history.past, history.present].slice(-DEPTH), present: next, future: [] };
}

export function undo<Value>(history: History<Value>): History<Value> {
  if (history.past.length === 0) {
    return history;
  }
  const present = history.past.at(-1) as Value;
  return { past: history.past.slice(0, -1), present, future: [history.present, ...history.future] };
}

export function redo<Value>(history: History<Value>): History<Value> {
  if (history.future.length === 0) {
    return history;
  }
  const present = history.future[0] as Value;
  return { past: [...history.past, history.present], present, future: history.future.slice(1) };
}
