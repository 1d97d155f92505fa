import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import puppeteer, { type Browser } from 'puppeteer-core';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'chrome'];

/**
 * Starts the installed Chromium: the one that CLADWRIGHT_CHROMIUM names, else the first on the path.
 *
 * @throws Error when there is none: the pages must not count as checked then
 */
export async function openBrowser(): Promise<Browser> {
  const executablePath = process.env.CLADWRIGHT_CHROMIUM ?? onPath();
  if (!executablePath) {
    throw new Error(
      'There is no Chromium to check the pages in. Install one (Debian: apt-get install chromium) or name it in CLADWRIGHT_CHROMIUM.',
    );
  }
  // In a container there is no sandbox to be had; the pages are our own.
  return puppeteer.launch({ executablePath, headless: true, args: ['--no-sandbox', '--disable-gpu'] });
}

function onPath(): string | undefined {
  const folders = (process.env.PATH ?? '').split(delimiter);
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name))).find(isProgram);
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
