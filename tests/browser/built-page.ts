/** The built page, served and opened in a real browser, with what the tests ask of it again and again. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Locator, type Page } from 'playwright-core';
import { build, type PreviewServer, preview } from 'vite';
import { browserArguments, findBrowser } from '../find-browser.ts';

const configFile = fileURLToPath(new URL('../../src/page/vite.config.ts', import.meta.url));

export class BuiltPage {
  private readonly outDir: string;
  private readonly server: PreviewServer;
  private readonly browser: Browser;
  readonly url: string;
  /** Every address that any page asked for. */
  readonly requests: string[] = [];
  /** Errors that nobody caught, and what was written to the console as an error. */
  readonly errors: string[] = [];

  private constructor(outDir: string, server: PreviewServer, browser: Browser) {
    this.outDir = outDir;
    this.server = server;
    this.browser = browser;
    this.url = server.resolvedUrls!.local[0]!;
  }

  /** Builds into a folder of its own, so that test files can run side by side. */
  static async start(extraArguments: readonly string[] = []): Promise<BuiltPage> {
    const outDir = mkdtempSync(join(tmpdir(), 'yardwright-page-'));
    await build({ configFile, build: { outDir, emptyOutDir: true }, logLevel: 'error' });
    const server = await preview({ configFile, build: { outDir }, preview: { port: 0 }, logLevel: 'error' });
    const browser = await chromium.launch({
      executablePath: findBrowser(),
      args: [...browserArguments(), ...extraArguments],
    });
    return new BuiltPage(outDir, server, browser);
  }

  async open(options: BrowserContextOptions = {}, before?: (page: Page) => Promise<void>): Promise<Page> {
    const context = await this.browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
    const page = await context.newPage();
    page.on('request', (request) => this.requests.push(request.url()));
    page.on('pageerror', (error) => this.errors.push(error.message));
    page.on('console', (message) => message.type() === 'error' && this.errors.push(message.text()));
    await before?.(page);
    await page.goto(this.url);
    return page;
  }

  async stop(): Promise<void> {
    await this.browser.close();
    await this.server.close();
    rmSync(this.outDir, { recursive: true, force: true });
  }
}

/** Waits until nothing is being planned any more, and the plan shown is of the present choice. */
export async function planned(page: Page): Promise<void> {
  await page.locator('yw-progress .progress:not([data-busy])').waitFor({ timeout: 90_000 });
  await page.locator('.slip:not([data-former]) .bill').waitFor({ timeout: 5_000 });
}

/** Makes a change and waits for its plan; the change must be taken up before the old plan can be mistaken for the new. */
export async function replanned(page: Page, change: () => Promise<unknown>): Promise<void> {
  await change();
  await page.waitForTimeout(50);
  await planned(page);
}

/** The roll of a cloth, with all that can be changed of it unfolded. */
export async function unfolded(page: Page, cloth: string): Promise<Locator> {
  const roll = page.getByRole('article', { name: cloth });
  const fold = roll.locator('.cloth-fold');
  if (!(await fold.evaluate((details) => (details as HTMLDetailsElement).open))) {
    await fold.locator('summary').click();
  }
  await roll.getByLabel('Sold by').waitFor();
  return page
    .locator('yw-cloth-roll')
    .filter({ has: page.locator('.cloth-fold[open]') })
    .filter({ has: roll });
}

export interface SlipLine {
  readonly name: string;
  readonly buy: string;
  readonly price: number | null;
  readonly need: string;
  readonly proof: string;
}

/** The slip as it stands, line by line. */
export async function readSlip(page: Page): Promise<readonly SlipLine[]> {
  return page.locator('.bill > li').evaluateAll((lines) =>
    lines.map((line) => {
      const text = (selector: string): string =>
        line.querySelector(selector)?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
      const price = /[\d.]+/.exec(text('.bill-price'))?.[0];
      return {
        name: text('.bill-head strong'),
        buy: text('.bill-buy'),
        price: price === undefined ? null : Number(price),
        need: text('.bill-need'),
        proof: text('.proof'),
      };
    }),
  );
}

/** Drops a file of this text anywhere on the page. */
export async function dropFile(page: Page, name: string, text: string): Promise<void> {
  await page.evaluate(
    ([fileName, content]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([content!], fileName!, { type: 'application/json' }));
      document.body.dispatchEvent(new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer }));
    },
    [name, text],
  );
}

export function scenarioText(name: string): string {
  return readFileSync(new URL(`../../scenarios/${name}.yardwright.json`, import.meta.url), 'utf8');
}

/** Writes a picture where SHOTS names a folder, for people to look at. */
export async function shot(page: Page, name: string): Promise<void> {
  if (process.env.SHOTS) {
    await page.screenshot({ path: join(process.env.SHOTS, `${name}.png`) });
  }
}
