/** Nothing from a journal becomes mark-up, whatever it says. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isOurPage } from '../../src/reports/html.ts';
import { saleHtml } from '../../src/reports/html-sale.ts';
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
  const marks = (page: string): readonly (string | undefined)[] => [...page.matchAll(/<[^>]*>/g)].map(([mark]) => mark);
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
