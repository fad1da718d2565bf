/**
 * Passes calls on at once where they are rare; where they come thick and fast, only the latest, at most once in `pause`
 * milliseconds. The last one is never lost.
 */
export function atMostEvery<Value>(pause: number, act: (value: Value) => void): (value: Value) => void {
  let waiting: { readonly value: Value } | null = null;
  let resting = false;
  const rest = (): void => {
    resting = true;
    setTimeout(() => {
      resting = false;
      if (waiting !== null) {
        const { value } = waiting;
        waiting = null;
        rest();
        act(value);
      }
    }, pause);
  };
  return (value) => {
    if (resting) {
      waiting = { value };
    } else {
      rest();
      act(value);
    }
  };
}
