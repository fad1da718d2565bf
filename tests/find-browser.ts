/** Finds a Chromium for the tests that need a browser, or installs Debian's where that is possible. */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';

const USUAL_PLACES: readonly string[] = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/opt/google/chrome/chrome',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/**
 * The path of a browser that can be started. CHROME_PATH, where it is set, is taken at its word.
 * @throws Error that says how to get one
 */
export function findBrowser(): string {
  const given = process.env.CHROME_PATH;
  if (given !== undefined && given !== '') {
    if (!existsSync(given)) {
      throw new Error(`CHROME_PATH names "${given}", which is not there`);
    }
    return given;
  }
  const found = [...USUAL_PLACES, ...fromPlaywright()].find((path) => existsSync(path)) ?? installed();
  if (found === undefined) {
    throw new Error(
      'The tests of the page need a browser and found none. Install Chromium (on Debian: apt-get install chromium) or Chrome, or set CHROME_PATH to one.',
    );
  }
  return found;
}

/** What its browser needs to run here: no requests of its own and, for root, no sandbox. */
export function browserArguments(): readonly string[] {
  const quiet = ['--disable-background-networking', '--disable-component-update', '--disable-sync', '--no-first-run'];
  return process.getuid?.() === 0 ? [...quiet, '--no-sandbox'] : quiet;
}

function fromPlaywright(): readonly string[] {
  const caches = [join(homedir(), '.cache', 'ms-playwright'), join(homedir(), 'Library', 'Caches', 'ms-playwright')];
  return caches
    .filter((cache) => existsSync(cache))
    .flatMap((cache) =>
      readdirSync(cache)
        .filter((name) => name.startsWith('chromium'))
        .map((name) => join(cache, name)),
    )
    .flatMap((folder) => [
      join(folder, 'chrome-linux', 'chrome'),
      join(folder, 'chrome-linux64', 'chrome'),
      join(folder, 'chrome-mac', 'Chromium.app', 'Contents', 'MacOS', 'Chromium'),
    ]);
}

/** Debian's, for root only: in a bare container the tests then need nothing prepared. */
function installed(): string | undefined {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) {
    return undefined;
  }
  const options = { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } } as const;
  try {
    execFileSync('apt-get', ['update', '-qq'], options);
    execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], options);
  } catch {
    return undefined;
  }
  return USUAL_PLACES.find((path) => existsSync(path));
}
