/** Keeps the tracing under way, a moment after each change. */
import { encoded, type Picture, readPicture } from '../../keep/picture.ts';
import { forgetTracing, keepTracing, keptTracing, type TracingKept } from '../../keep/tracing-store.ts';
import { tracingFault } from '../../quilt/tracing/traced-from.ts';

/** Milliseconds without a change before it is kept. */
const PAUSE = 600;

type UnderWay = Pick<TracingKept, 'size' | 'unit' | 'tracing'>;

export class TraceKeeper {
  private waiting = 0;
  private picture: { readonly of: Picture; readonly blob: Promise<Blob> } | null = null;

  /** What was kept, if it can be gone on with. */
  async taken(): Promise<(UnderWay & { readonly picture: Picture }) | null> {
    const kept = await keptTracing();
    if (kept === null || tracingFault(kept.tracing) !== null) return null;
    const read = await readPicture(new File([kept.picture], kept.name));
    if (!read.ok) return null;
    this.picture = { of: read.picture, blob: Promise.resolve(kept.picture) };
    return { ...kept, picture: read.picture };
  }

  keep(picture: Picture, underWay: UnderWay): void {
    clearTimeout(this.waiting);
    this.waiting = window.setTimeout(() => void this.put(picture, underWay), PAUSE);
  }

  private async put(picture: Picture, underWay: UnderWay): Promise<void> {
    if (this.picture?.of !== picture) this.picture = { of: picture, blob: encoded(picture) };
    await keepTracing({ ...underWay, name: picture.name, picture: await this.picture.blob });
  }

  async forget(): Promise<void> {
    clearTimeout(this.waiting);
    await forgetTracing();
  }
}
