/** The worker that makes paper: the library that writes PDFs, the faces and the engine are loaded when the first is asked for. */
import { Packer } from '../../workers/packer.ts';
import type { Drawing } from '../draw/display-list.ts';
import { type PaperFaces, toPdf } from '../draw/to-pdf.ts';
import { PAPER_WORDS } from '../paper/paper-choice.ts';
import { paperPages } from '../paper/papers.ts';
import type { PaperReply, PaperWish } from './paper-wish.ts';

const reply = (message: PaperReply): void => postMessage(message);

addEventListener('message', (event: MessageEvent<PaperWish>) => {
  make(event.data).then(reply, (error) =>
    reply({ kind: 'failed', why: error instanceof Error ? error.message : String(error) }),
  );
});

async function make({ plan, kinds, ...choice }: PaperWish): Promise<PaperReply> {
  const pages: Drawing[] = [];
  for (const kind of kinds) {
    reply({ kind: 'progress', doing: `Drawing the ${PAPER_WORDS[kind].name.toLowerCase()}` });
    const packer = new Packer();
    pages.push(...(await paperPages(kind, { ...plan, ...choice, plan: (job) => packer.plan(job) })));
  }
  if (pages.length === 0) {
    throw new Error('this quilt has nothing for the papers that are ticked');
  }
  const onPage = (done: number): void => reply({ kind: 'progress', doing: `Writing page ${done} of ${pages.length}` });
  const bytes = toPdf({ title: plan.quilt.name, pages, scale: 72, faces: await faces(), onPage });
  return { kind: 'done', bytes: bytes as Uint8Array<ArrayBuffer>, pages: pages.length };
}

async function faces(): Promise<PaperFaces> {
  const [regular, bold] = await Promise.all([
    face(new URL('../draw/fonts/noto-sans-regular.ttf', import.meta.url)),
    face(new URL('../draw/fonts/noto-sans-bold.ttf', import.meta.url)),
  ]);
  return { regular: regular!, bold: bold! };
}

async function face(url: URL): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) {
    throw new Error('the lettering for paper could not be loaded; go online and try again');
  }
  return new Uint8Array(await response.arrayBuffer());
}
