/**
 * Finds a Chromium for the browser tests: the one that CHROME_BIN names, else one on the PATH or in its usual place, else
 * the one packed in a development dependency, unpacked once into node_modules/.cache; that one too for `CHROME_BIN=packed`.
 */
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type FoundBrowser, unpackBrowser } from './unpack-browser.ts';

/** In order of preference: the headless shell starts fastest and draws the same. */
const NAMES = ['chromium-headless-shell', 'google-chrome', 'chrome', 'chromium', 'chromium-browser'];

const USUAL_PLACES = [
  '/usr/lib/chromium/chromium-headless-shell',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

export function findBrowser(): FoundBrowser {
  const named = process.env['CHROME_BIN'];
  if (named === 'packed') return unpackBrowser();
  if (named !== undefined && named !== '') {
    if (!isRunnable(named)) throw new Error(`CHROME_BIN names ${named}, which cannot be run`);
    return { executablePath: named, env: {} };
  }
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  const candidates = [
    ...NAMES.flatMap((name) => folders.map((folder) => join(folder, name))),
    ...USUAL_PLACES,
  ];
  const installed = candidates.find(isRunnable);
  if (installed !== undefined) return { executablePath: installed, env: {} };
  if (process.platform === 'linux' && process.arch === 'x64') return unpackBrowser();
  throw new Error(
    'No Chromium found for the browser tests. Install Chrome or Chromium, or set CHROME_BIN to its program file.',
  );
}

function isRunnable(path: string): boolean {
  if (!existsSync(path)) return false;
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
