import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = fileURLToPath(new URL('.', import.meta.url));

/** What the PDF library could load to draw whole web pages, which is never asked of it. */
const UNUSED = ['html2canvas', 'dompurify', 'canvg'];

/** The page is built into a hidden folder so that the top level stays what a newcomer needs to see. */
export default defineConfig({
  root: here,
  base: './',
  build: { outDir: '../../.dist', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 1500 },
  worker: { format: 'es' },
  resolve: { alias: UNUSED.map((find) => ({ find, replacement: `${here}not-used.ts` })) },
  server: { port: 5178, host: '127.0.0.1' },
  preview: { port: 4178, host: '127.0.0.1' },
});
