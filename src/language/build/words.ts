/** Words of the keeper, as they stand in a line. */
import type { LinkValue } from '../../../grammar/syntax.ts';
import type { Clause } from '../clause.ts';

/** Words of the keeper, without their quotes. */
export function wordsOf(clause: Clause, value: LinkValue): string {
  const text = clause.written(value).trim();
  return value.type === 'quote' ? text.slice(1, -1).trim() : text;
}
