/** Names that are given in the middle of a line: to a fish, a brood, a bought group. */
import { isRefusedName } from '../../grammar/reserved.ts';
import type { NameNode } from '../../grammar/syntax.ts';
import type { Clause } from './clause.ts';
import { kindWords } from './line.ts';
import type { NameKind, Names } from './names.ts';

/** `Rowan-1`, where Rowan is a group. */
function isBroodName(names: Names, text: string, { day }: Clause): boolean {
  const group = /^(.+)-[1-9]\d{0,3}$/.exec(text)?.[1];
  return group !== undefined && names.find(group, day)?.kind === 'group';
}

/** The name as it is shown; a fault where it may not be given. */
export function newName(clause: Clause, node: NameNode, kind: NameKind): string {
  const { names } = clause.line;
  const there = names.find(node.text, clause.day);
  const free = `${node.text}${/\d$/.test(node.text) ? '-a' : '1'}`;
  if (node.numbered)
    clause.fault('name-is-number', node, 'only tanks may be called by a number', `${kind}-${node.text}`);
  else if (isRefusedName(node.text, kind)) {
    clause.fault('name-is-word', node, `«${node.text}» would be read as a word of the journal, not as a name`, free);
  } else if (kind === 'fish' && isBroodName(names, node.text, clause)) {
    clause.fault(
      'name-is-brood',
      node,
      `«${node.text}» is a brood: a fish out of it is \`from ${node.text}\``,
      `from ${node.text}`,
    );
  } else if (there !== null && there.kind !== kind) {
    const says = `«${there.name}» is ${kindWords(there.kind)} already, and a name has one meaning`;
    clause.fault('name-taken', node, says, free);
  }
  return there?.name ?? node.text;
}
