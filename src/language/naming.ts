/** Names that are given in the middle of a line: to a fish, a brood, a bought group. */
import { isRefusedName } from '../../grammar/reserved.ts';
import type { NameNode } from '../../grammar/syntax.ts';
import type { Clause } from './clause.ts';
import { kindWords } from './line.ts';
import type { NameKind } from './names.ts';

/** The name as it is shown; a fault where it may not be given. */
export function newName(clause: Clause, node: NameNode, kind: NameKind): string {
  const { names } = clause.line;
  const there = names.find(node.text, clause.day);
  const free = `${node.text}${/\d$/.test(node.text) ? '-a' : '1'}`;
  if (node.numbered)
    clause.fault('name-is-number', node, 'only tanks may be called by a number', `${kind}-${node.text}`);
  else if (isRefusedName(node.text, kind)) {
    clause.fault('name-is-word', node, `«${node.text}» would be read as a word of the journal, not as a name`, free);
  } else if (there !== null && there.kind !== kind) {
    const says = `«${there.name}» is ${kindWords(there.kind)} already, and a name has one meaning`;
    clause.fault('name-taken', node, says, free);
  }
  return there?.name ?? node.text;
}
