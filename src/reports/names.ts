/** Keeps buyers' names out of what other programs read: lines are quoted there, and lines name people. */

const HIDDEN = '…';
/** After `to` stands a buyer wherever words in quotes do. */
const TO_QUOTED = /(?<=\bto\s+)["“”„][^"“”„]*["“”„]/giu;

/** A copy of an answer in which no text holds one of these names. Keys, numbers and ids stay. */
export function withoutNames(answer: object, names: readonly string[]): object {
  return hideInside(answer, patternsOf(names));
}

/** The same for single texts. */
export function nameHider(names: readonly string[]): (text: string) => string {
  const patterns = patternsOf(names);
  return (text) => hideIn(text, patterns);
}

function hideInside(value: object, patterns: readonly RegExp[]): object {
  const hide = (one: unknown): unknown => {
    if (typeof one === 'string') return hideIn(one, patterns);
    return typeof one === 'object' && one !== null ? hideInside(one, patterns) : one;
  };
  if (Array.isArray(value)) return value.map(hide);
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, key === 'id' ? one : hide(one)]));
}

function hideIn(text: string, patterns: readonly RegExp[]): string {
  const quoted = text.replace(TO_QUOTED, `"${HIDDEN}"`);
  return patterns.reduce((told, pattern) => told.replace(pattern, HIDDEN), quoted);
}

/**
 * A name of a capital letter or of several words is hidden wherever it stands; any other (`shop`) after
 * `to` alone, since it may well be a word of the answer itself.
 */
function patternsOf(names: readonly string[]): readonly RegExp[] {
  return names.map((name) => {
    const own = /\p{Lu}|\s/u.test(name) ? '' : '(?<=\\bto\\s+)';
    return new RegExp(
      `${own}(?<![\\p{L}\\p{N}])${name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![\\p{L}\\p{N}])`,
      'giu',
    );
  });
}
