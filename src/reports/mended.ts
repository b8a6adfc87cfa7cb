/**
 * The line to write instead, made whole: a problem found by the room knows the words that are missing, but
 * not the date and the rest of the line that they belong to.
 */
import type { Problem } from '../core/problem.ts';

const HEAD = /^\s*(?<date>\d{4}-\d{2}-\d{2})(?:\s+\d{1,2}[:.]\d{2})?\s+(?<heading>[^:;"]+?)\s*:/u;

/** What to write for a problem, given its line as it stands in the file (null where there is none). */
export function lineToWrite({ kind, write, at }: Problem, text: string | null): string {
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
