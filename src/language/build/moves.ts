/** Builds moves: how many of which fish went where, and what went along. */
import type { DetailNode, LinkNode, NameNode, QuantityNode } from '../../../grammar/syntax.ts';
import type { FishRef, Subject } from '../../journal/subject.ts';
import type { Clause } from '../clause.ts';
import { howMany } from '../fish.ts';
import { TANK } from '../line.ts';
import { movedHere } from '../otherway.ts';
import { buyerFirst, saidFish } from './selling.ts';
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
  if (/^took$/iu.test(clause.phrase()) && buyerFirst(clause, 'sold') !== null) {
    clause.takeAll((detail): detail is DetailNode => detail.type !== 'quote');
    return NOWHERE;
  }
  // `put 20 fry in B2`
  const to = clause.linked('to') ?? clause.linked('in');
  if (to === null && cameHere(clause, subject)) return NOWHERE;
  if (to === null && !tankAlone(clause)) clause.missing('a tank', 'to C1');
  const target = to === null ? '' : clause.named(to.value, TANK);
  // `A2: Fern back to A2`: she comes, and nobody goes.
  if (to !== null && subject.kind === 'tank' && target === subject.tank && /^back\b/i.test(clause.written(to.at)))
    clause.fault('place-in-heading', to.at, `back to ${target} is said by \`back\` alone`, 'back');
  const limit = more ? (to?.at.from ?? Infinity) : Infinity;
  const counted = more ? countBefore(clause, limit) : howMany(clause);
  // `moved 2 m and 4 f`, `moved 20 eggs`
  while (clause.flag('and'));
  const clutch = clause.flag('clutch');
  const count = clutch && typeof counted !== 'string' ? { ...counted, young: counted.total } : counted;
  const young = (clutch && typeof count === 'string') || clause.sense === 'young';
  const which = clause.flag('largest') ? 'largest' : clause.flag('smallest') ? 'smallest' : 'any';
  const from = clause.linked('from');
  const here = from === null ? null : clause.line.names.find(clause.written(from.value), clause.day)?.name;
  const isHere = subject.kind === 'tank' && here === subject.tank;
  if (from !== null && !isHere) {
    const said = clause.line.text.slice(clause.node.head.to, Math.min(from.at.from, to?.at.from ?? Infinity)).trim();
    clause.line.faults.push(movedHere(clause.line, from.value, target === '' ? null : target, said));
  }
  const along = clause.linked('with');
  const fish = saidFish(clause, heading);
  return {
    kind: 'moved',
    // `moved eggs to C2`
    fish: young && fish.kind === 'implied' ? { kind: 'implied', young: true } : fish,
    count,
    which,
    to: target,
    with: along === null ? null : clause.written(along.value).trim(),
    restStay: false,
  };
}

/** `moved 10 C2`: the tank stands there, and its `to` is missing. */
function tankAlone(clause: Clause): boolean {
  const { names } = clause.line;
  const tank = clause.take(
    (detail): detail is NameNode =>
      detail.type === 'name' &&
      detail.from > clause.node.head.to &&
      names.find(detail.text, clause.day)?.kind === 'tank',
  );
  if (tank === null) return false;
  clause.fault('wrong-kind', tank, `«${tank.text}» is a tank: \`to\` stands before it`, `to ${tank.text}`);
  return true;
}

/** The number that stands before a place in the line. */
function countBefore(clause: Clause, limit: number): ReturnType<typeof howMany> {
  const later = clause.takeAll((detail): detail is QuantityNode => detail.type === 'quantity' && detail.from > limit);
  const count = howMany(clause);
  clause.putBack(later);
  return count;
}

const NOWHERE: BodyOf<'moved'> = {
  kind: 'moved',
  fish: { kind: 'implied' },
  count: 'unsaid',
  which: 'any',
  to: '',
  with: null,
  restStay: false,
};

/** `C2: moved 12 from C1`: told where they came to; true where that was said. */
function cameHere(clause: Clause, subject: Subject): boolean {
  const from = clause.rest.find((detail) => detail.type === 'link' && detail.link === 'from');
  const value = from?.type === 'link' ? from.values[0] : undefined;
  const here = subject.kind === 'tank' ? subject.tank : null;
  if (from === undefined || value?.type !== 'name' || clause.line.names.find(value.text, clause.day)?.kind !== 'tank')
    return false;
  if (clause.line.names.find(value.text, clause.day)?.name === here) return false;
  const said = clause.line.text.slice(clause.node.head.to, from.from).trim();
  clause.takeAll((detail): detail is DetailNode => detail.type !== 'quote');
  clause.line.faults.push(movedHere(clause.line, value, here, said));
  return true;
}
