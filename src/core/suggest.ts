/**
 * The nearest words to one that was not known. What is offered must not state another fact than was meant,
 * so a word counts as near only where it is surely a slip of the thumb: it begins as it should, and few
 * letters are wrong (`hosed` is another verb than `dosed`). A swap of two neighbouring letters is one slip,
 * as it is on a phone's keys.
 */

/** More slips than this and it is another word. */
const MOST_SLIPS = 2;
/** Words up to this length take one slip only: with two of four wrong, `salt` would be `fault`. */
const SHORT = 5;
/** In shorter words than this any slip makes another word. */
const SHORTEST = 3;

/**
 * Optimal string alignment distance: the fewest insertions, deletions, replacements and swaps of
 * neighbours (no part of the text edited twice) from one word to the other. Counted in code points.
 * Formula: the dynamic programme of Damerau and Levenshtein in its restricted form (from memory).
 */
export function slips(a: string, b: string): number {
  const from = [...a];
  const to = [...b];
  let before: number[] = [];
  let above = to.map((_, index) => index);
  above.push(to.length);
  for (let i = 1; i <= from.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= to.length; j += 1) row.push(cheapest(from, to, i, j, row, above, before));
    before = above;
    above = row;
  }
  return above[to.length] ?? 0;
}

function cheapest(
  from: readonly string[],
  to: readonly string[],
  i: number,
  j: number,
  row: readonly number[],
  above: readonly number[],
  before: readonly number[],
): number {
  const same = from[i - 1] === to[j - 1];
  const one = Math.min(
    (above[j] ?? Infinity) + 1,
    (row[j - 1] ?? Infinity) + 1,
    (above[j - 1] ?? Infinity) + (same ? 0 : 1),
  );
  const swapped = i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
  return swapped ? Math.min(one, (before[j - 2] ?? Infinity) + 1) : one;
}

/**
 * The candidates that `word` was probably meant to be, nearest first, then by name; at most `max`.
 * Compared without regard to case and given back as they are written. A candidate equal to the word
 * but for case is the nearest of all.
 */
export function nearest(word: string, candidates: Iterable<string>, max = 3): readonly string[] {
  const folded = word.toLowerCase();
  const found: { name: string; cost: number }[] = [];
  for (const name of new Set(candidates)) {
    const cost = near(folded, name.toLowerCase());
    if (cost !== null) found.push({ name, cost });
  }
  found.sort((a, b) => a.cost - b.cost || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  return found.slice(0, max).map(({ name }) => name);
}

function near(word: string, candidate: string): number | null {
  if (word === candidate) return 0;
  const length = Math.max([...word].length, [...candidate].length);
  if (length < SHORTEST || Math.abs(word.length - candidate.length) > MOST_SLIPS * 2) return null;
  if (!beginsAlike(word, candidate)) return null;
  if (!isNearEach(word, candidate)) return null;
  const cost = slips(word, candidate);
  return cost <= (length > SHORT ? MOST_SLIPS : 1) ? cost : null;
}

/** Of several words each is near to its own: `all gone` is no slip for `all fine`. */
function isNearEach(word: string, candidate: string): boolean {
  const [words, others] = [word.split(' '), candidate.split(' ')];
  if (words.length === 1 || words.length !== others.length) return true;
  return words.every((one, index) => {
    const other = others[index] ?? '';
    return one === other || slips(one, other) <= (Math.max(one.length, other.length) > SHORT ? MOST_SLIPS : 1);
  });
}

/** The same first letter, or one of the first two left out, doubled or swapped. */
function beginsAlike(word: string, candidate: string): boolean {
  const [a = '', b = ''] = [word[0], candidate[0]];
  return a === b || a === candidate[1] || b === word[1];
}
