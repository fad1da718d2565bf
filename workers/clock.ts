/** How long planning may go on, and when messages are let in. */
export interface Clock {
  /** Seconds since planning began. */
  elapsed(): number;
  /** Seconds left; 0 when time is up or planning was stopped. */
  left(): number;
  /** Lets messages in when it is time to; false when planning must end. */
  breath(): Promise<boolean>;
}

/** Letting messages in costs a task switch, so it is done about this often. */
const BREATH_MS = 25;

/** @param seconds from now @param stopped asked at every breath */
export function startClock(seconds: number, stopped: () => boolean): Clock {
  const start = performance.now();
  let last = start;
  const left = () => (stopped() ? 0 : Math.max(0, seconds - (performance.now() - start) / 1000));
  return {
    elapsed: () => (performance.now() - start) / 1000,
    left,
    breath: async () => {
      if (performance.now() - last > BREATH_MS) {
        await letMessagesIn();
        last = performance.now();
      }
      return left() > 0;
    },
  };
}

/** A message to oneself comes back after those that wait; a timer would be held back in pages out of sight. */
function letMessagesIn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
