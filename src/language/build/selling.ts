/** Builds sales and gifts: how many of which fish, to whom, for how much. */
import type { DetailNode, LinkNode, NameNode } from '../../../grammar/syntax.ts';
import { exactly } from '../../core/interval.ts';
import type { Heads } from '../../journal/event.ts';
import type { Clause } from '../clause.ts';
import { Word } from '../../../grammar/tokens.ts';
import { fishOf, groupKind, howMany } from '../fish.ts';
import { AUCTION } from '../line.ts';
import { isEater, isStranger } from '../otherwords.ts';
import { bareMoney, doubtPairs, doubtTimes, eachOf, isLink, priced, soldAt } from './prices.ts';
import type { Body, Task } from './table.ts';
import { wordsOf } from './words.ts';

export function sold({ clause, fish }: Task): Body {
  const at = priced(clause);
  const { price, auction } = soldAt(clause);
  doubtTimes(clause, price, at);
  const bags = bagged(clause);
  if (bags !== null && at !== null && price?.per === 'each') eachOf(clause, at, 'bag', bags.bags * price.amount);
  const each = bareMoney(clause);
  doubtPairs(clause, at, price);
  const to = buyer(clause) ?? buyerAlone(clause);
  const told = bags?.heads ?? howMany(clause);
  const count = clause.sense === 'all' && told === 'unsaid' ? 'all' : told;
  return { kind: 'sold', fish: saidFish(clause, fish), count, price: price ?? each, to, auction, ...which(clause) };
}

export function gaveAway({ clause, fish }: Task): Body {
  const bags = bagged(clause);
  const count = bags?.heads ?? howMany(clause);
  if (/^(?:swapped|traded)/i.test(clause.phrase())) inReturn(clause, count === 'unsaid');
  const to = buyer(clause) ?? buyerAlone(clause);
  clause.flag('away');
  givenAt(clause);
  return { kind: 'gave away', fish: saidFish(clause, fish), count, to, ...which(clause) };
}

/** `gave away 6 Rowan-1 at Autumn`: a lot that was given to the auction brings nothing; where it went is a remark. */
function givenAt(clause: Clause): void {
  const at = priced(clause);
  const [where] = at?.values ?? [];
  if (at === null || where?.type !== 'name') return;
  clause.link('at');
  clause.named(where, AUCTION);
  clause.setAside(at);
}

/** The fish of a clause in which `of`, `from` and `them` may stand before their name. */
export function saidFish(clause: Clause, fish: Task['fish']): Task['fish'] {
  clause.setAside(clause.link('last'));
  while (clause.flag('ofStock') || clause.flag('ofThem') || clause.flag('them'));
  return fishOf(clause, fish);
}

/** `6 largest`: the rest of them is smaller from then on. */
export function which(clause: Clause): { which?: 'largest' | 'smallest' } {
  if (clause.flag('largest')) return { which: 'largest' };
  return clause.flag('smallest') ? { which: 'smallest' } : {};
}

/** `2 bags of 6`: twelve fish. Null where no bag is spoken of. */
function bagged(clause: Clause): { heads: Heads; bags: number } | null {
  const at = clause.rest.findIndex((detail) => isLink(detail, 'bagOf'));
  const before = clause.rest[at - 1];
  const found = clause.linked('bagOf');
  if (found === null) return null;
  const counted = before?.type === 'quantity' && before.unit === null ? before : null;
  if (counted !== null) clause.takeAt(at - 1);
  const bags = counted === null ? 1 : (clause.whole(counted) ?? 1);
  const each = found.value.type === 'quantity' ? clause.whole(found.value) : null;
  if (found.value.type !== 'quantity')
    clause.fault('no-number', found.value, 'after `bag of` comes how many fish it held');
  return {
    heads: { total: exactly(bags * (each ?? 0)), males: null, females: null, young: null, as: 'counted' },
    bags,
  };
}

/** `res 6 Bob`, `gave Sue 6`: a name that is nobody's here may be who they are for, and is asked back. */
export function buyerAlone(clause: Clause): string | null {
  const { names } = clause.line;
  const isNobody = (detail: DetailNode): detail is NameNode =>
    detail.type === 'name' && detail.from >= clause.node.head.to && isSomebody(clause, detail);
  const [one, other] = clause.rest.filter(isNobody);
  const isQuoted = clause.rest.some(({ type }) => type === 'quote');
  if (one === undefined || other !== undefined || isQuoted || names.isName(one.text)) return null;
  // `sold 6 Willow` may be of a stock that is not declared; `gave Willow 6` hardly is.
  const count = clause.node.details.find(({ type }) => type === 'quantity');
  if (clause.node.kind !== 'reserved' && (count === undefined || count.from < one.from)) return null;
  clause.take((detail): detail is NameNode => detail === one);
  const said = clause.written(one);
  const says = `nothing here is called «${said}»: if it is for somebody of that name, \`to\` stands before it`;
  clause.fault('unknown-fish', one, says, `to ${said}`);
  return said;
}

/** `Bob reserved 6`, `Bob took 6`: who stands before it is no fish. */
export function buyerFirst(clause: Clause, verb = clause.phrase()): string | null {
  const isNobody = (detail: DetailNode): detail is NameNode =>
    detail.type === 'name' && detail.to <= clause.node.head.from && isSomebody(clause, detail);
  const one = clause.take(isNobody);
  if (one === null) return null;
  const said = clause.written(one);
  const rest = clause.written({ from: clause.node.head.to, to: clause.node.to }).trim();
  const at = { from: one.from, to: clause.node.to };
  const says = isEater(said)
    ? `«${said}» is no buyer: fish that it took are \`eaten\``
    : `nothing here is called «${said}»: who fish are for stands behind them`;
  clause.fault('unknown-fish', at, says, isEater(said) ? `eaten ${rest}` : `${verb} ${rest} to ${said}`);
  return said;
}

/** No name of this room, with a slip or without, and no word for fish. */
function isSomebody({ line }: Clause, { text }: NameNode): boolean {
  return groupKind(text.toLowerCase()) === null && isStranger(line.names, { image: text, tokenType: Word });
}

/** `to "…"`, or `for "…"`. */
export function buyer(clause: Clause): string | null {
  const named = clause.linked('to') ?? notMoney(clause);
  return named === null ? null : wordsOf(clause, named.value);
}

/** `for Bob`: whoever it is for is no number. */
function notMoney(clause: Clause): ReturnType<Clause['linked']> {
  const at = clause.take(
    (detail): detail is LinkNode =>
      detail.type === 'link' && detail.link === 'for' && detail.values[0]?.type !== 'quantity',
  );
  const value = at?.values[0];
  return at === null || value === undefined ? null : { at, value };
}

/** `swapped 6 for shrimp`: what came for them is no buyer. `swapped male` may be about his mate to be. */
function inReturn(clause: Clause, unsaid: boolean): void {
  const came = notMoney(clause);
  if (came !== null) clause.setAside(came.at);
  const goes = came !== null || clause.rest.some((detail) => isLink(detail, 'to'));
  const sex = clause.rest.find(({ type }) => type === 'sex');
  if (!unsaid || goes || sex?.type !== 'sex' || (sex.sex !== 'male' && sex.sex !== 'female')) return;
  const says = `«${clause.written(clause.node)}» may be a new ${sex.sex}, or one that was given away: write which`;
  clause.fault('two-readings', clause.node, says, `new ${sex.sex}`);
}
