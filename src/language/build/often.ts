/** What stands in place of several faults of one clause, where its words are often said so and never read. */
import type { HeadingKind } from '../../../grammar/phrases.ts';
import type { ClauseNode } from '../../../grammar/syntax.ts';
import type { ProblemKind } from '../../core/problem-kinds.ts';
import type { LineContext } from '../line.ts';
import { oftenSaid } from '../oftensaid.ts';

/** Words that are often said so and never read: one offer for all that is wrong with them. */
export function sayOtherwise(line: LineContext, heading: HeadingKind, node: ClauseNode): void {
  const { faults } = line;
  const others = faults.filter(({ from, to }) => from < node.from || to > node.to);
  const own = faults.filter((wrong) => !others.includes(wrong));
  const often = own.length > 0 && own.every(({ kind }) => UNREAD.has(kind)) ? oftenSaid(line, node, heading) : null;
  if (often !== null) faults.splice(0, faults.length, ...others, often);
}

/** Faults of words that no clause has a place for. Every other kind names its own cause. */
const UNREAD: ReadonlySet<ProblemKind> = new Set<ProblemKind>([
  'does-not-belong',
  'not-understood',
  'something-missing',
  'no-number',
  'one-length',
  'unknown-fish',
  'unknown-species',
]);
