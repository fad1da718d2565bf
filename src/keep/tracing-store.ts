/**
 * The tracing under way, kept in the browser's own data base so that a page closed by mistake loses nothing. Like the quilt it stays
 * on her machine. A browser may refuse it (private windows); then it simply is not kept.
 */
import type { TracedFrom } from '../quilt/tracing/traced-from.ts';

/** As in a quilt file, but for the picture, which is kept whole. `size` is absent before it is told. */
export interface TracingKept {
  readonly name: string;
  readonly picture: Blob;
  readonly size: TracedFrom['size'] | null;
  readonly unit: TracedFrom['unit'];
  readonly tracing: TracedFrom['tracing'];
}

const BASE = 'yardwright';
const STORE = 'tracing';
const KEY = 'under-way';

/** null where none is kept, or the browser refuses. */
export function keptTracing(): Promise<TracingKept | null> {
  return asked<TracingKept | null>('readonly', null, (store) => store.get(KEY) as IDBRequest<TracingKept | null>);
}

/** Whether it is kept now. */
export function keepTracing(kept: TracingKept): Promise<boolean> {
  return asked('readwrite', null, (store) => store.put(kept, KEY)).then((key) => key !== null);
}

export async function forgetTracing(): Promise<void> {
  await asked('readwrite', undefined, (store) => store.delete(KEY));
}

async function asked<Value>(
  mode: IDBTransactionMode,
  refused: Value,
  ask: (store: IDBObjectStore) => IDBRequest,
): Promise<Value> {
  try {
    const base = await answered(opening());
    try {
      return ((await answered(ask(base.transaction(STORE, mode).objectStore(STORE)))) as Value) ?? refused;
    } finally {
      base.close();
    }
  } catch {
    return refused;
  }
}

function opening(): IDBOpenDBRequest {
  const request = indexedDB.open(BASE, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE);
  return request;
}

function answered<Value>(request: IDBRequest<Value>): Promise<Value> {
  return new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error ?? new Error('the browser’s data base did not answer'));
  });
}
