/**
 * The line to write instead, made whole: a problem found by the room knows the words that are missing, but
 * not the date and the rest of the line that they belong to.
 */
import type { Mend, Problem } from '../core/problem.ts';
import type { Place } from '../core/span.ts';

const HEAD = /^\s*(?<date>\d{4}-\d{2}-\d{2})(?:\s+\d{1,2}[:.]\d{2})?\s+(?<heading>[^:;"]+?)\s*:/u;

/** What to write for a problem, given its line as it stands in the file (null where there is none). */
export function lineToWrite({ kind, write, at, mend }: Problem, text: string | null): string {
  const mended = mend === undefined || text === null ? null : withMend(text, at, mend);
  if (mended !== null) return mended;
  const head = text === null ? null : HEAD.exec(text)?.groups;
  if (text === null || head === null || head === undefined) return write;
  const heading = `${head['heading'] ?? ''}: `;
  if (!write.startsWith(heading)) return write;
  const rest = write.slice(heading.length);
  if (!rest.includes('…')) return `${head['date'] ?? ''} ${write}`;
  // `A1: Alder chasing …`: the name is what was missing, right before the clause.
  const [name = ''] = rest.split(' ');
  return kind === 'which-fish' ? `${text.slice(0, at.from)}${name} ${text.slice(at.from)}`.trim() : write;
}

/** The line with those words where they belong; null where the word that they stand for is not in it. */
function withMend(text: string, { from, to }: Pick<Place, 'from' | 'to'>, { words, instead }: Mend): string | null {
  if (instead === null) return `${text.slice(0, from)}${words} ${text.slice(from)}`.trim();
  const clause = text.slice(from, to);
  // Of `guppy` there are guppies.
  const forms = new RegExp(
    `(?<![\\p{L}\\p{N}])${literally(instead.replace(/y$/iu, ''))}\\p{L}{0,3}(?![\\p{L}\\p{N}])`,
    'iu',
  );
  return forms.test(clause)
    ? `${text.slice(0, from)}${clause.replace(forms, () => words)}${text.slice(to)}`.trim()
    : null;
}

function literally(words: string): string {
  return words.replace(/[^\p{L}\p{N}]/gu, (sign) => `\\u{${sign.codePointAt(0)?.toString(16) ?? ''}}`);
}
