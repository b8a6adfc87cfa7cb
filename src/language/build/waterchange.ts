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
  const amount = waterAmount(clause);
  if (amount === null && !none && /^change$/i.test(clause.phrase())) toChange(clause);
  return { kind: 'water changed', amount: amount ?? measure('share', 0, null, 1) };
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
