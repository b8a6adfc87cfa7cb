/**
 * The papers of an auction in a real browser, on the screen and on paper of both sizes. Skipped, with a word in
 * its name, where no Chromium is installed.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { saleHtml } from '../../src/reports/html-sale.ts';
import { papersFor } from '../support/papers.ts';
import { tankside } from '../support/run.ts';
import { findBrowser, openBrowser } from './chromium.ts';
import { readPdf, type PlacedText, type PrintedPages } from './pdf.ts';

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const PROGRAM = findBrowser();
const FORMATS = ['A4', 'Letter'] as const;
/** Sheet sizes in points: ISO 216 A4 is 210 x 297 mm, US Letter 8.5 x 11 in. */
const SHEETS = { A4: [595.28, 841.89], Letter: [612, 792] } as const;
/** The margin of the page's own style, 12 mm in points, less half a point for rounding. */
const MARGIN = (12 / 25.4) * 72 - 0.5;
/** No label of this paper is higher than this, mm in points. */
const LABEL_POINTS = (75 / 25.4) * 72;
const NUMBERS = Array.from({ length: 25 }, (_, i) => i + 1);
/** Words of a label that stand nowhere else on paper: who wrote `laid` for lot 7 finds it on its label alone. */
const ON_LABELS = ['laid', 'water', 'read'];
const mark = (number: number): string => `L${String(number).padStart(2, '0')}x`;
const WORDS: Readonly<Record<string, string>> = {
  water: 'pH 7.4 · GH 8 dH · KH 6 dH · NO3 20 mg/L · 25 C',
  origin: 'brood of Wide-1 or Longer-2, line of the old river',
};

describe.skipIf(PROGRAM === null)(PROGRAM === null ? 'SKIPPED: no Chromium on the path' : 'in Chromium', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'tankside-papers-'));
  let browser: Browser;

  beforeAll(async () => {
    browser = await openBrowser(PROGRAM ?? '');
  });

  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true });
  });

  /** Opens a page from the disk; what it asks for and complains of comes back. */
  async function opened(html: string): Promise<{ page: Page; asked: string[]; said: string[] }> {
    const file = path.join(folder, 'papers.html');
    writeFileSync(file, html);
    const page = await browser.newPage({ viewport: { width: 900, height: 1200 } });
    const [asked, said]: [string[], string[]] = [[], []];
    page.on('request', (request) => asked.push(request.url()));
    page.on('console', (message) => said.push(message.text()));
    page.on('pageerror', (error) => said.push(error.message));
    await page.goto(pathToFileURL(file).href, { waitUntil: 'load' });
    return { page, asked, said };
  }

  async function printed(html: string, format: (typeof FORMATS)[number]): Promise<PrintedPages> {
    const { page } = await opened(html);
    const pdf = await readPdf(await page.pdf({ format }));
    await page.close();
    return pdf;
  }

  const made = saleHtml(
    papersFor(NUMBERS, (number, what) => `${ON_LABELS.includes(what) ? `${mark(number)} ` : ''}${WORDS[what] ?? what}`),
  );

  test('the workshop’s papers ask for nothing but themselves and complain of nothing', async () => {
    const journal = readFileSync(new URL('../../examples/workshop/fishroom.txt', import.meta.url), 'utf8');
    const files = { '/room/fishroom.txt': journal };
    const { out } = await tankside(['sale', '--for', 'Winter', '--html', '-', '--on', '2026-11-22'], { files });
    const { page, asked, said } = await opened(out);
    await page.emulateMedia({ media: 'print' });
    await page.pdf({ format: 'A4' });
    expect(asked).toEqual([page.url()]);
    expect(said).toEqual([]);
    expect(await page.locator('article.label').count()).toBeGreaterThan(10);
    await page.close();
  });

  test('a text from the journal can load and run nothing', async () => {
    const bad = '<img src="https://example.invalid/x.png" onerror="console.log(1)"><script>console.log(2)</script>';
    const { page, asked, said } = await opened(saleHtml(papersFor([1, 2], () => bad)));
    expect([asked, said]).toEqual([[page.url()], []]);
    expect(await page.locator('article.label').first().textContent()).toContain(bad);
    await page.close();
  });

  test.each(FORMATS)('on %s no label is cut: from its number to its price it stands on one sheet', async (format) => {
    const pdf = await printed(made, format);
    const [width, height] = SHEETS[format];
    expect(Math.abs(pdf.width - width)).toBeLessThan(2);
    expect(Math.abs(pdf.height - height)).toBeLessThan(2);
    const boxes = NUMBERS.map((number) => boxOf(labelTexts(pdf, number)));
    for (const box of boxes) {
      expect(box.pages).toHaveLength(1);
      expect(box.top - box.bottom).toBeLessThan(LABEL_POINTS);
      expect(box.left).toBeGreaterThan(MARGIN);
      expect(box.right).toBeLessThan(pdf.width - MARGIN);
      expect(box.bottom).toBeGreaterThan(MARGIN);
      expect(box.top).toBeLessThan(pdf.height - MARGIN);
    }
    for (const [i, one] of boxes.entries()) {
      for (const other of boxes.slice(i + 1)) expect(overlap(one, other)).toBe(false);
    }
  });

  test('is read at arm’s length: no text under 9 points, the kind and the number far larger', async () => {
    const { page } = await opened(made);
    const sizes = await pointsOf(page, '.label, .label *');
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(9);
    expect(Math.min(...(await pointsOf(page, '.label .lot')))).toBeGreaterThanOrEqual(20);
    expect(Math.min(...(await pointsOf(page, '.label .kind')))).toBeGreaterThanOrEqual(13);
    await page.close();
  });

  test.each([900, 400])(
    'on a screen of %i no number of a lot is broken, no column squeezed to letters',
    async (width) => {
      const { page } = await opened(made);
      await page.setViewportSize({ width, height: 800 });
      const lines = await page.evaluate<unknown>(
        `Math.max(...[...document.querySelectorAll('.sheet td.lot')].map((cell) => {
        const words = document.createRange();
        words.selectNodeContents(cell);
        return words.getClientRects().length;
      }))`,
      );
      expect(lines).toBe(1);
      // Three lines of the largest of its texts, and the space around them, in pixels.
      const highest = await page.evaluate<unknown>(
        `Math.max(...[...document.querySelectorAll('.sold tbody tr')].map((row) => row.clientHeight))`,
      );
      expect(Number(highest)).toBeGreaterThan(20);
      expect(Number(highest)).toBeLessThan(width === 900 ? 90 : 160);
      await page.close();
    },
  );

  test('on a narrow screen nothing runs out at the side', async () => {
    const { page } = await opened(made);
    await page.setViewportSize({ width: 400, height: 800 });
    expect(await page.evaluate<unknown>('document.documentElement.scrollWidth')).toBe(400);
    await page.close();
  });
});

/** What only the label of that lot says: how many fish, above; when they were laid and their water, between; the price, below. */
function labelTexts({ texts }: PrintedPages, number: number): readonly PlacedText[] {
  const many = `${String(100 + number)} fish`;
  const ask = `minimum EUR ${number.toFixed(2)}`;
  const own = texts.filter(({ text }) => text === many || text === ask || text.includes(mark(number)));
  const words = own.map(({ text }) => text).join(' ');
  for (const said of [many, ask, ...ON_LABELS.map((what) => `${mark(number)} ${WORDS[what] ?? what}`.slice(0, 10))]) {
    if (!words.includes(said)) throw new Error(`label ${String(number)} does not say «${said}»: ${words}`);
  }
  return own;
}

interface Box {
  readonly pages: readonly number[];
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

function boxOf(texts: readonly PlacedText[]): Box {
  return {
    pages: [...new Set(texts.map(({ page }) => page))],
    left: Math.min(...texts.map(({ left }) => left)),
    right: Math.max(...texts.map(({ right }) => right)),
    bottom: Math.min(...texts.map(({ bottom }) => bottom)),
    top: Math.max(...texts.map(({ top }) => top)),
  };
}

function overlap(a: Box, b: Box): boolean {
  if (a.pages[0] !== b.pages[0]) return false;
  return a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;
}

async function pointsOf(page: Page, selector: string): Promise<readonly number[]> {
  const found = await page.evaluate<unknown>(
    `[...document.querySelectorAll(${JSON.stringify(selector)})].map((one) => parseFloat(getComputedStyle(one).fontSize) * 0.75)`,
  );
  if (!Array.isArray(found) || found.length === 0) throw new Error(`nothing is ${selector}`);
  return found.map(Number);
}
