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
    for (const item of items) {
      if (!('str' in item) || item.str.trim() === '') continue;
      const place: readonly unknown[] = item.transform;
      const [x, y] = [place[4], place[5]];
      if (typeof x !== 'number' || typeof y !== 'number') throw new Error('a text without a place');
      texts.push({ page: number, text: item.str, left: x, right: x + item.width, bottom: y, top: y + item.height });
    }
  }
  const pages = document.numPages;
  await task.destroy();
  return { width, height, pages, texts };
}
