/** Nothing from a journal becomes mark-up, whatever it says. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isOurPage } from '../../src/reports/html.ts';
import { saleHtml } from '../../src/reports/html-sale.ts';
import { unbroken } from '../../src/reports/markup.ts';
import { papersFor } from '../support/papers.ts';

const HOSTILE = [
  '<script>alert(1)</script>',
  '</style>',
  '"><img src=x onerror=alert(1)>',
  '&lt;',
  "' onclick='",
  '<!--',
  '\u0000',
];

test('any text in any place leaves the elements and attributes of the page as they are', () => {
  const plain = saleHtml(papersFor([1, 2], () => 'x'));
  // A short word with a hyphen is kept whole by an element of ours, and that is all that a text can bring about.
  const marks = (page: string): readonly (string | undefined)[] =>
    [...page.replace(/<span class="word">([^<]*)<\/span>/g, '$1').matchAll(/<[^>]*>/g)].map(([mark]) => mark);
  const texts = fc.oneof(fc.constantFrom(...HOSTILE), fc.string({ unit: 'binary', maxLength: 30 }));
  fc.assert(
    fc.property(texts, (text) => {
      expect(marks(saleHtml(papersFor([1, 2], () => text)))).toEqual(marks(plain));
    }),
  );
});

test('a page of ours is known by its head, another is not', () => {
  const page = saleHtml(papersFor([1], () => 'x'));
  expect(isOurPage(page)).toBe(true);
  expect(isOurPage(page.replace('Tankside', 'Another'))).toBe(false);
  expect(isOurPage('')).toBe(false);
});

test('a name with a hyphen is kept whole, one too long for its column is not', () => {
  expect(unbroken('brood Hazel-2').text).toBe('brood <span class="word">Hazel-2</span>');
  expect(unbroken('a<b-c').text).toBe('<span class="word">a&lt;b-c</span>');
  const long = 'a-name-longer-than-any-column';
  expect(unbroken(long).text).toBe(long);
});

test('what a lot is to be cautioned of is told by its numbers', () => {
  const papers = papersFor([3, 4], (number, what) => `${String(number)} ${what}`);
  const lots = papers.lots.map((one) => ({ ...one, lot: { ...one.lot, cautions: ['count before you promise'] } }));
  const page = saleHtml({ ...papers, lots });
  for (const { bags } of lots)
    expect(page).toContain(`Take care: lot ${String(bags[0]?.number)}, count before you promise.`);
});
