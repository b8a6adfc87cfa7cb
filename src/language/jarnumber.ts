/** A culture called by its number alone, as on its lid: which of those that have names is meant. */
import type { Piece } from '../../grammar/syntax.ts';
import { asRemark } from './faults.ts';
import type { Edit } from './faults.ts';
import type { LineContext } from './line.ts';

/** `jar 2`, or the number alone. */
const JAR = /^(?:(?:jar|culture|tub)\s+)?(\d+)(?!\S)/i;

/** The word that may stand before a number that goes wrong by itself. */
const JAR_BEFORE = /(?:jar|culture|tub)\s+$/i;

/**
 * What would be read for the number of a jar: the name of the one culture with that number, called otherwise as the
 * one of the line; else the words in quotes, for whose it was. Null where no number stands there.
 */
export function jarByNumber(line: LineContext, at: Piece, end: number): Edit | null {
  const before = JAR_BEFORE.exec(line.text.slice(0, at.from))?.[0].length ?? 0;
  const from = at.from - before;
  const match = JAR.exec(line.text.slice(from, end));
  if (match === null) return null;
  const words = { from, to: from + match[0].length };
  return { ...words, text: numbered(line, Number(match[1])) ?? asRemark(match[0]) };
}

function numbered(line: LineContext, number: number): string | null {
  const own = /(\p{L}\S*?)\s*:/u.exec(line.text)?.[1]?.toLowerCase() ?? '';
  const names = [...line.names.all('culture')]
    .filter(({ name, day }) => day <= line.day && numberOf(name) === number && name.toLowerCase() !== own)
    .map(({ name }) => name);
  const alike = names.filter((name) => lettersOf(name) === lettersOf(own));
  const [first, ...others] = alike.length > 0 ? alike : names;
  return others.length === 0 ? (first ?? null) : null;
}

function numberOf(name: string): number | null {
  const digits = /\d+$/.exec(name)?.[0];
  return digits === undefined ? null : Number(digits);
}

function lettersOf(name: string): string {
  return name.replace(/\d+$/, '').toLowerCase();
}
