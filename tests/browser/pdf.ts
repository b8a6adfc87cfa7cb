/** The texts of a PDF with where they stand, read by a program that did not make it. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface PlacedText {
  /** From 1. */
  readonly page: number;
  readonly text: string;
  /** Points from the left and from the bottom of the sheet. */
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

export interface PrintedPages {
  readonly width: number;
  readonly height: number;
  readonly pages: number;
  readonly texts: readonly PlacedText[];
}

export async function readPdf(bytes: Uint8Array): Promise<PrintedPages> {
  const task = getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 });
  const document = await task.promise;
  const texts: PlacedText[] = [];
  let [width, height] = [0, 0];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    ({ width, height } = page.getViewport({ scale: 1 }));
    const { items } = await page.getTextContent();
    const runs = items.flatMap((item): PlacedText[] => {
      if (!('str' in item)) return [];
      const place: readonly unknown[] = item.transform;
      const [x, y] = [place[4], place[5]];
      if (typeof x !== 'number' || typeof y !== 'number') throw new Error('a text without a place');
      return [{ page: number, text: item.str, left: x, right: x + item.width, bottom: y, top: y + item.height }];
    });
    texts.push(...joined(runs));
  }
  const pages = document.numPages;
  await task.destroy();
  return { width, height, pages, texts };
}

/**
 * Runs of one line that stand no further apart than words do are one text: where a font has a sign for two letters,
 * «fish» is drawn as two runs. Blanks are as wide as whoever made the page likes, and say only that they are there.
 */
function joined(runs: readonly PlacedText[]): PlacedText[] {
  const texts: PlacedText[] = [];
  let blank = '';
  for (const run of runs) {
    if (run.text.trim() === '') {
      blank = ' ';
      continue;
    }
    const before = texts.at(-1);
    if (before === undefined || !goesOn(before, run, blank !== '')) texts.push(run);
    else {
      const [right, top] = [Math.max(before.right, run.right), Math.max(before.top, run.top)];
      texts[texts.length - 1] = { ...before, text: before.text + blank + run.text, right, top };
    }
    blank = '';
  }
  return texts;
}

/** Points between two runs of one word at most, and between two words as a share of their height. */
const IN_WORD = 1;
const BETWEEN_WORDS = 0.45;

function goesOn(one: PlacedText, next: PlacedText, blank: boolean): boolean {
  const gap = next.left - one.right;
  const most = blank ? BETWEEN_WORDS * (one.top - one.bottom) : IN_WORD;
  return Math.abs(one.bottom - next.bottom) < IN_WORD / 2 && gap > -IN_WORD && gap < most;
}
