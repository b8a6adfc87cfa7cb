/** A journal as a phone would have sent it: what its keyboard does to quotes, dashes, signs and first letters. */

/** Every entry in phone punctuation. Comments, and notes (which are kept as written) only in their heads. */
export function asPhone(journal: string): string {
  return journal.split('\n').map(line).join('\n');
}

function line(text: string): string {
  const [entry = '', ...comment] = text.split(/(?=\s+#\s)/u);
  if (!/^\d{4}-/u.test(entry) || /\bnote\b/u.test(entry)) return text;
  const quotes = entry.split(/("[^"]*")/u);
  const changed = quotes.map((part, index) => (index % 2 === 1 ? curly(part) : bare(part, index === 0)));
  const closed = /[\d"]$/u.test(changed.join('')) ? changed.join('') : `${changed.join('')}.`;
  return closed + comment.join('');
}

function curly(quote: string): string {
  return `“${quote.slice(1, -1)}”`;
}

function bare(part: string, first: boolean): string {
  const signs = part
    .replaceAll(/(?<=\d) x (?=\d)/gu, ' × ')
    .replaceAll(/(?<=[^\d-]\d+)-(?=\d+(?!\d*-))/gu, '–')
    .replaceAll(/(?<=\d) C\b/gu, ' °C')
    .replaceAll(/(?<=\d) (?=(?:mm|cm|L|%)(?:\W|$))/gu, '\u00a0');
  return first ? signs.replace(/(?<=: )\p{Ll}/u, (letter) => letter.toUpperCase()) : signs;
}
