import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Engine tests solve integer programmes on both cores, so a test may take a while but files do not fight for more. */
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/seeded.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // What is polled for comes when it comes: a busy machine is not a fault.
    expect: { poll: { timeout: 20_000 } },
    maxWorkers: 2,
  },
});
