/** Builds a water change: done, or to be done again and again, and what is asked back where it may be neither. */
import { measure } from '../../core/quantity.ts';
import type { Clause } from '../clause.ts';
import { waterAmount } from './amounts.ts';
import { chore, isStanding } from './chores.ts';
import type { Body } from './table.ts';

export function waterChange(clause: Clause): Body {
  const every = isStanding(clause);
  clause.flag('water');
  clause.setAside(clause.link('newWater'));
  const none = noChange(clause);
  if (every) return chore(clause, { kind: 'water change', text: null });
  twice(clause);
  const amount = waterAmount(clause);
  if (amount === null && !none && /^change$/i.test(clause.phrase())) toChange(clause);
  return { kind: 'water changed', amount: amount ?? measure('share', 0, null, 1) };
}

/** `30 % x2`: two changes thin the water more than either of them. */
function twice(clause: Clause): void {
  const node = clause.quantity((each) => each.numbers.length === 2);
  if (node === null) return;
  const written = clause.written(node);
  const amount = /^2\s*[x×*]\s*(\S.*)$/iu.exec(written)?.[1] ?? /^(\S.*?)\s*[x×*]\s*2$/iu.exec(written)?.[1];
  const words = clause.written(clause.node);
  const one = amount === undefined ? null : words.replace(written, amount);
  const says = `«${written}» are several changes: each of them is a clause`;
  clause.fault('two-readings', clause.node, says, one === null ? null : `${one}; ${one}`);
}

/** `no change`, `no wc`: nothing was seen, or nothing was done. */
function noChange(clause: Clause): boolean {
  const none = clause.quantity((each) => each.word !== null && /^no$/i.test(clause.written(each)));
  if (none === null) return false;
  const words = clause.written(clause.node);
  clause.fault('does-not-belong', clause.node, `«${words}» tells of no water: a note keeps it`, `note ${words}`);
  return true;
}

/** `change`, `change "filter"`: to be done, or done? With an amount it is water that was changed. */
function toChange(clause: Clause): void {
  const words = clause.written(clause.node);
  const task = `to do "${words.replaceAll('"', '')}"`;
  const says = `«${words}» may be a task (\`${task}\`) or water that was changed (\`changed water\`): write which`;
  clause.fault('two-readings', clause.node, says, task);
}
