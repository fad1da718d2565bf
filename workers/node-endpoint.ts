/** Lets comlink speak through a port or worker of Node, which has `on` and `off` and hands over the message itself. */
import type { Endpoint } from './door.ts';

/** What a worker and a port of node:worker_threads have in common. */
export interface NodePort {
  postMessage(message: unknown, transfer?: readonly never[]): void;
  on(event: 'message', listener: (message: unknown) => void): unknown;
  off(event: 'message', listener: (message: unknown) => void): unknown;
}

export function nodeEndpoint(port: NodePort): Endpoint {
  const wrapped = new Map<EventListenerOrEventListenerObject, (message: unknown) => void>();
  return {
    postMessage: (message, transfer) => port.postMessage(message, transfer as unknown as readonly never[]),
    addEventListener(_, listener) {
      const call = typeof listener === 'function' ? listener : listener.handleEvent.bind(listener);
      const own = (data: unknown) => call({ data } as MessageEvent);
      wrapped.set(listener, own);
      port.on('message', own);
    },
    removeEventListener(_, listener) {
      const own = wrapped.get(listener);
      if (own) port.off('message', own);
      wrapped.delete(listener);
    },
  };
}
