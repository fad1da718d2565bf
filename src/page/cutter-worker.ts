/** The worker that makes cut lists: a third of a second for a large star, which would be felt on the page. */
import { makeCutList } from '../cutting/make-cut-list.ts';
import type { Quilt } from '../quilt/quilt.ts';
import type { CutterReply } from './cutter.ts';

addEventListener('message', (event: MessageEvent<Quilt>) => {
  postMessage(reply(event.data));
});

function reply(quilt: Quilt): CutterReply {
  try {
    return { cutList: makeCutList(quilt) };
  } catch (error) {
    return { error: error instanceof Error ? error.message : String(error) };
  }
}
