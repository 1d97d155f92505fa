import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import { HtmlValidate } from 'html-validate';
import type { Browser, Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT, runProgram } from '../cli/run-program.ts';
import { openBrowser } from './browser.ts';
import { clippedParts } from './page-faults.ts';

const SCENARIOS = readdirSync(join(ROOT, 'scenarios')).filter((name) => name.endsWith('.json'));
/** A name that tries to be markup must do no harm in a real browser either. */
const HOSTILE = {
  schema: 'cladwright-scenario/1',
  place: { climate_zone: '6A' },
  name: '"><img src=x onerror=alert(1)><script>alert(2)</script>',
};

/** Width between the margins of 12 mm, CSS pixels (96 to an inch). */
const PAPER = {
  a4: Math.floor(((210 - 24) / 25.4) * 96),
  letter: Math.floor((8.5 - 24 / 25.4) * 96),
} as const;

type Kind = { readonly end: string; readonly least: number; readonly most: number };
const RECORD: Kind = { end: '.html', least: 2, most: 6 };
const SHEET: Kind = { end: '.build-sheet.html', least: 1, most: 2 };

const dir = mkdtempSync(join(tmpdir(), 'cladwright-pages-'));
let browser: Browser;
const saved = new Map<string, string>();

beforeAll(async () => {
  browser = await openBrowser();
  for (const scenario of [...SCENARIOS, 'hostile']) {
    const { code, stderr } =
      scenario === 'hostile'
        ? await runProgram(['advise', '-', '--save', dir], { stdin: JSON.stringify(HOSTILE) })
        : await runProgram(['advise', join('scenarios', scenario), '--save', dir]);
    expect(code, stderr).toBe(0);
    const base = /^saved (.+)\.json$/m.exec(stderr)?.[1];
    if (base === undefined) throw new Error(`nothing was saved: ${stderr}`);
    saved.set(scenario, base);
  }
});
afterAll(async () => {
  await browser?.close();
  rmSync(dir, { recursive: true, force: true });
});

async function withPage(path: string, work: (page: Page) => Promise<void>): Promise<void> {
  const page = await browser.newPage();
  const asked: string[] = [];
  const said: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  page.on('pageerror', (error) => said.push(String(error)));
  page.on('dialog', (dialog) => said.push(`dialog: ${dialog.message()}`));
  try {
    await page.goto(pathToFileURL(path).href, { waitUntil: 'load' });
    await work(page);
    expect(said).toEqual([]);
    expect([...new Set(asked)]).toEqual([pathToFileURL(path).href]);
  } finally {
    await page.close();
  }
}

/** Chromium writes its page objects uncompressed. */
function pagesOf(pdf: Uint8Array): number {
  return (
    Buffer.from(pdf)
      .toString('latin1')
      .match(/\/Type\s*\/Page(?![a-zA-Z])/g)?.length ?? 0
  );
}

describe.each([...SCENARIOS, 'hostile'])('%s', (scenario) => {
  describe.each([
    ['record', RECORD],
    ['build sheet', SHEET],
  ] as const)('%s', (_, { end, least, most }) => {
    const path = () => `${saved.get(scenario)}${end}`;

    it('is valid HTML', async () => {
      const report = await new HtmlValidate({
        extends: ['html-validate:standard'],
        // A scrolling box must be reachable by keyboard, and the doctype is written as XHTML tools like it.
        rules: {
          'doctype-style': 'off',
          'no-inline-style': 'error',
          'prefer-native-element': 'off',
          'long-title': 'off',
        },
      }).validateString(readFileSync(path(), 'utf8'));
      const messages = report.results.flatMap(({ messages }) =>
        messages.map(({ line, ruleId, message }) => `${line}: ${ruleId}: ${message}`),
      );
      expect(messages.slice(0, 5)).toEqual([]);
    });

    it.each(['a4', 'letter'] as const)(`prints on ${least} to ${most} pages of %s`, async (format) => {
      await withPage(path(), async (page) => {
        const count = pagesOf(await page.pdf({ format, printBackground: true }));
        expect(count).toBeGreaterThanOrEqual(least);
        expect(count).toBeLessThanOrEqual(most);
        await page.emulateMediaType('print');
        await page.setViewport({ width: PAPER[format], height: 1000 });
        expect(await page.evaluate(clippedParts)).toEqual([]);
      });
    });

    it.each(['light', 'dark'])(
      'has no serious fault for who sees little or nothing, in %s',
      async (scheme) => {
        await withPage(path(), async (page) => {
          await page.setBypassCSP(true);
          await page.reload();
          await page.setViewport({ width: 1200, height: 1000 });
          await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
          await page.evaluate(() => {
            for (const folded of document.querySelectorAll('details')) folded.open = true;
          });
          await page.evaluate(axe.source);
          const found = await page.evaluate(async () => {
            const { axe: checker } = window as unknown as { axe: typeof axe };
            const { violations } = await checker.run(document);
            return violations.map(
              ({ impact, id, nodes }) => `${impact} ${id}: ${nodes[0]?.html.slice(0, 200)}`,
            );
          });
          expect(found).toEqual([]);
        });
      },
    );

    it.each([360, 1200])('clips nothing on a screen %d wide', async (width) => {
      await withPage(path(), async (page) => {
        await page.setViewport({ width, height: 800 });
        await page.evaluate(() => {
          for (const folded of document.querySelectorAll('details')) folded.open = true;
        });
        expect(await page.evaluate(clippedParts)).toEqual([]);
      });
    });
  });
});
