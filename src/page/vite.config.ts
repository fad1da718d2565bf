import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = fileURLToPath(new URL('.', import.meta.url));

/** The page is built into a hidden folder so that the top level stays what a newcomer needs to see. */
export default defineConfig({
  root: here,
  base: './',
  build: { outDir: '../../.dist', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 1500 },
  worker: { format: 'es' },
  server: { port: 5178, host: '127.0.0.1' },
  preview: { port: 4178, host: '127.0.0.1' },
});
