/** Lines of ASCII alone are cut by patterns of their own: as the patterns for all scripts cut them. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { cut } from '../../grammar/cut.ts';
import { byFirstSign, sticky } from '../../grammar/sticky.ts';
import { changed } from '../support/changed.ts';
import { generateJournal, randomFrom } from '../tools/generate.ts';

const EXAMPLE = readFileSync(new URL('../../examples/workshop/fishroom.txt', import.meta.url), 'utf8');
const ENOUGH = 20_000;
/** A letter beyond ASCII behind a line makes it one for all scripts. */
const BEYOND = ' ñ';

function told(line: string): string {
  return cut(line)
    .map(({ tokenType, image, startOffset }) => `${String(startOffset)} ${tokenType.name} ${image}`)
    .join('\n');
}

/** The same of the longer line, without what the letter adds: a word of its own, or the end of a note or of words in quotes. */
function toldBeyond(line: string): string {
  const tokens = cut(line + BEYOND).flatMap(({ tokenType, image, startOffset }) => {
    const own = image.slice(0, Math.max(0, line.length - startOffset));
    return own === '' ? [] : [`${String(startOffset)} ${tokenType.name} ${own}`];
  });
  return tokens.join('\n');
}

test('as patterns for all scripts do, on twenty thousand lines', { timeout: 120_000 }, () => {
  const random = randomFrom(23);
  const written = `${EXAMPLE}${generateJournal(3_000, 7)}`.split('\n').filter((line) => /^[\0-\x7f]+$/.test(line));
  const lines: string[] = [];
  while (lines.length < ENOUGH) {
    for (const line of written) lines.push(random() < 0.3 ? line : changed(line, random).replace(/[^\0-\x7f]/g, ''));
  }
  const differing = lines.filter((line) => told(line) !== toldBeyond(line));
  expect(differing.slice(0, 5)).toEqual([]);
});

const letters = sticky(String.raw`k[\p{L}]*(?![\p{N}])`, { anyCase: true });

test('letters and digits of other scripts count where a line has them', () => {
  expect(letters('kmé', 0)).toBe('kmé');
  expect(letters('km é', 0)).toBe('km');
  expect(letters('a km', 2)).toBe('km');
  expect(letters('a km', 1)).toBeNull();
  // The sign for kelvin is another case of `k`, the Arabic digit one a digit.
  expect(letters('\u212a', 0)).toBe('\u212a');
  expect(letters('k\u0661', 0)).toBeNull();
});

test('only what may begin with a sign is tried, and all where it is beyond ASCII', () => {
  const tried: (string | null)[] = [];
  const word = byFirstSign((sign) => {
    tried.push(sign);
    return sign === 'x' ? null : 'km|µl';
  });
  expect([word('KM', 0), word('xm', 0), word('1 km', 2), word('µl', 0), word('km', 2)]).toEqual([
    'KM',
    null,
    'km',
    'µl',
    null,
  ]);
  expect(tried).toEqual(['k', 'x', null]);
});
