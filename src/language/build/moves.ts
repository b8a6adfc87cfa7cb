/** Builds moves: how many of which fish went where, and what went along. */
import type { DetailNode, LinkNode, QuantityNode } from '../../../grammar/syntax.ts';
import type { FishRef, Subject } from '../../journal/subject.ts';
import type { Clause } from '../clause.ts';
import { fishOf, howMany } from '../fish.ts';
import { TANK } from '../line.ts';
import type { Body, BodyOf, Task } from './table.ts';

/** `moved 40 Rowan-1 to C1, 15 to C2` is two moves: every `to` ends one. */
export function moved({ clause, fish, subject }: Task): Body | readonly Body[] {
  const restStay = clause.flag('restStay');
  const targets = clause.rest.filter((detail) => isTo(detail)).length;
  const moves: BodyOf<'moved'>[] = [];
  let who: FishRef = fish;
  for (let index = 0; index < Math.max(1, targets); index += 1) {
    const one = oneMove(clause, who, subject, index + 1 < targets);
    who = one.fish;
    moves.push({ ...one, restStay: restStay && index === Math.max(1, targets) - 1 });
  }
  return moves;
}

function isTo(detail: DetailNode): detail is LinkNode {
  return detail.type === 'link' && detail.link === 'to';
}

function oneMove(clause: Clause, heading: FishRef, subject: Subject, more: boolean): BodyOf<'moved'> {
  // `put 20 fry in B2`
  const to = clause.linked('to') ?? clause.linked('in');
  if (to === null) clause.missing('a tank', 'to C1');
  const target = to === null ? '' : clause.named(to.value, TANK);
  // `A2: Fern back to A2`: she comes, and nobody goes.
  if (to !== null && subject.kind === 'tank' && target === subject.tank && /^back\b/i.test(clause.written(to.at)))
    clause.fault('place-in-heading', to.at, `back to ${target} is said by \`back\` alone`, 'back');
  const limit = more ? (to?.at.from ?? Infinity) : Infinity;
  const count = more ? countBefore(clause, limit) : howMany(clause);
  const which = clause.flag('largest') ? 'largest' : clause.flag('smallest') ? 'smallest' : 'any';
  const from = clause.linked('from');
  const here = from === null ? null : clause.line.names.find(clause.written(from.value), clause.day)?.name;
  const isHere = subject.kind === 'tank' && here === subject.tank;
  if (from !== null && !isHere)
    clause.fault('place-in-heading', from.at, 'where they are moved from stands before the colon', '');
  const along = clause.linked('with');
  return {
    kind: 'moved',
    fish: fishOf(clause, heading),
    count,
    which,
    to: target,
    with: along === null ? null : clause.written(along.value).trim(),
    restStay: false,
  };
}

/** The number that stands before a place in the line. */
function countBefore(clause: Clause, limit: number): ReturnType<typeof howMany> {
  const later = clause.takeAll((detail): detail is QuantityNode => detail.type === 'quantity' && detail.from > limit);
  const count = howMany(clause);
  clause.putBack(later);
  return count;
}
