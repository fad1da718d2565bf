/** Packers in the workers of a real browser, without the page around them. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { build, type InlineConfig, type PreviewServer, preview } from 'vite';
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import { browserArguments, findBrowser } from '../find-browser.ts';
import type { Meanwhile, Outcome, PackerPage } from './packer-page/main.ts';

export class Packers {
  private constructor(
    private readonly outDir: string,
    private readonly server: PreviewServer,
    private readonly browser: Browser,
    readonly page: Page,
  ) {}

  static async start(): Promise<Packers> {
    const outDir = mkdtempSync(join(tmpdir(), 'yardwright-packers-'));
    const common: InlineConfig = {
      configFile: false,
      root: fileURLToPath(new URL('./packer-page/', import.meta.url)),
      base: './',
      logLevel: 'error',
      worker: { format: 'es' },
    };
    await build({ ...common, build: { outDir, emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 1500 } });
    const server = await preview({ ...common, build: { outDir }, preview: { port: 0, host: '127.0.0.1' } });
    const browser = await chromium.launch({ executablePath: findBrowser(), args: [...browserArguments()] });
    const page = await browser.newPage();
    await page.goto(server.resolvedUrls!.local[0]!);
    await page.waitForFunction(() => 'packerPage' in window);
    return new Packers(outDir, server, browser, page);
  }

  plan(job: LayoutJob, meanwhile?: Meanwhile): Promise<Outcome> {
    return this.page.evaluate(
      ([given, then]) => (window as unknown as { packerPage: PackerPage }).packerPage.plan(given, then),
      [job, meanwhile] as const,
    );
  }

  async stop(): Promise<void> {
    await this.browser.close();
    await this.server.close();
    rmSync(this.outDir, { recursive: true, force: true });
  }
}
