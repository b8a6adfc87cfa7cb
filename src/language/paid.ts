/** `sold 6 to Bob, paid 40`: money that came for the fish, and none that was spent. */
import type { ClauseNode } from '../../grammar/syntax.ts';
import { fault } from './faults.ts';
import type { Fault } from './faults.ts';
import type { LineContext } from './line.ts';

/** What `paid` is behind fish that went or came: a deposit, or what all of them cost. */
const AS: ReadonlyMap<ClauseNode['kind'], string> = new Map([
  ['reserved', 'deposit'],
  ['sold', 'for'],
  ['bought', 'for'],
]);

/** Asked back wherever it stands behind such fish; with words of its own (`paid 5 for salt`) it is a clause by itself. */
export function paidFor(line: LineContext, clauses: readonly ClauseNode[]): readonly Fault[] {
  return clauses.flatMap((clause, index) => {
    const before = clauses[index - 1];
    const word = before === undefined ? undefined : AS.get(before.kind);
    const isPaid = /^paid$/iu.test(line.text.slice(clause.head.from, clause.head.to));
    const alone = clause.details.every(({ type }) => type === 'quantity');
    if (before === undefined || word === undefined || clause.kind !== 'spent' || !isPaid || !alone) return [];
    const says = `«paid» is what was spent: for these fish it is \`${word}\``;
    const edit = { from: before.to, to: clause.head.to, text: word === 'for' ? ' for' : `, ${word}` };
    return [{ ...fault('two-readings', clause.head, says), edit }];
  });
}
