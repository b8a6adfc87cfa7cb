/** What fish went for: the price of each, of all, or at an auction; and prices that may be either. */
import type { DetailNode, LinkNode, Piece, QuantityNode } from '../../../grammar/syntax.ts';
import type { LinkName } from '../../../grammar/phrases.ts';
import type { Price } from '../../core/quantity.ts';
import type { Clause } from '../clause.ts';
import { AUCTION } from '../line.ts';
import { fault } from '../faults.ts';
import { figureValue } from '../quantities.ts';

/** `at 4.00` is each, `for 30.00` the total, `at Autumn` the auction. */
export function soldAt(clause: Clause): { price: Price | null; auction: string | null } {
  let price: Price | null = null;
  let auction: string | null = null;
  for (let at = clause.linked('at'); at !== null; at = clause.linked('at')) {
    if (at.value.type === 'name') auction = clause.named(at.value, AUCTION);
    else price = { amount: clause.money(at.value) ?? 0, per: 'each' };
  }
  return { price: withTotal(clause, price), auction };
}

/** The price of a clause in the room’s currency: `at` is each, `for` all; null where it names none. */
export function priceOf(clause: Clause): Price | null {
  const at = clause.linked('at');
  return withTotal(clause, at === null ? null : { amount: clause.money(at.value) ?? 0, per: 'each' });
}

function withTotal(clause: Clause, each: Price | null): Price | null {
  const total = clause.linked('for');
  const perFish = clause.flag('each');
  if (total === null) return each;
  if (each !== null)
    clause.fault('two-prices', total.at, '`at` is the price of each, `for` that of all: one of them will do', '');
  return { amount: clause.money(total.value) ?? 0, per: perFish ? 'each' : 'all' };
}

/** The word of a price for each, before it is taken: `at 15`. */
export function priced(clause: Clause): LinkNode | null {
  return clause.rest.find((detail): detail is LinkNode => isLink(detail, 'at')) ?? null;
}

export function isLink(detail: DetailNode, link: LinkName): detail is LinkNode {
  return detail.type === 'link' && detail.link === link;
}

/** `2 pairs at 15`, `the pair at 15`: fifteen a fish, or a pair? Asked before the count is taken. */
export function doubtPairs(clause: Clause, at: LinkNode | null, price: Price | null): void {
  const pairs = clause.rest.findIndex((detail) => detail.type === 'sex' && detail.sex === 'pair');
  if (at === null || pairs < 0 || price?.per !== 'each') return;
  const count = clause.rest[pairs - 1];
  eachOf(clause, at, 'pair', (count?.type === 'quantity' ? (clause.whole(count) ?? 1) : 1) * price.amount);
}

/** A price that may be that of each fish, or of each pair or bag of them. */
export function eachOf(clause: Clause, at: Piece, what: 'pair' | 'bag', total: number): void {
  const tail = new RegExp(`^\\s*(?:each|ea|a ${what})(?!\\p{L})`, 'u').exec(clause.line.text.slice(at.to))?.[0] ?? '';
  const place = { from: at.from, to: at.to + tail.length };
  const says = `«${clause.written(place)}» may be the price of each fish or of each ${what}: write what all of them came to`;
  clause.fault('two-readings', place, says, `for ${total.toFixed(2)}`);
}

/** `sold 6, 30`: thirty each, or for all? `sold 6, 5 each` says it. */
export function bareMoney(clause: Clause): Price | null {
  const numbers = clause.rest.filter(
    (detail): detail is QuantityNode =>
      detail.type === 'quantity' && detail.unit === null && detail.word === null && detail.fuzz === null && !detail.ago,
  );
  // `a pair of krib, 15`: the first number is money where the fish were counted without one.
  const alone = clause.rest.find(({ type }, at) => type === 'sex' && clause.rest[at - 1]?.type !== 'quantity');
  const bare = numbers.find(
    (detail, index) =>
      (index > 0 || (alone !== undefined && detail.from > alone.from)) &&
      clause.rest[clause.rest.indexOf(detail) + 1]?.type !== 'sex',
  );
  if (bare === undefined) return null;
  const tail = clause.line.text.slice(bare.to);
  if (anotherSale(clause, bare, tail) || ofSoMany(clause, bare)) return null;
  if (EACH.test(tail)) {
    clause.takeAt(clause.rest.indexOf(bare));
    return { amount: clause.money(bare) ?? 0, per: 'each' };
  }
  const signed = /[€£$¥]\s*$/.exec(clause.line.text.slice(0, bare.from))?.[0].length ?? 0;
  const at = { from: bare.from - signed, to: bare.to };
  const amount = clause.written(at);
  const says = `«${amount}» may be the price of each (\`at ${amount}\`) or of all (\`for ${amount}\`): write which`;
  clause.fault('two-readings', at, says, `for ${amount}`);
  clause.takeAt(clause.rest.indexOf(bare));
  return null;
}

/** `sold 6 to Bob, 4 to Jo`: the second number is fish as well. */
function anotherSale(clause: Clause, bare: QuantityNode, tail: string): boolean {
  if (!/^\s+(?:to|for)\s+(?![\d£€$])/iu.test(tail)) return false;
  const before = clause.line.text.slice(0, bare.from);
  const from = before.replace(/\s*(?:,|&|\sand)?\s*$/iu, '').length;
  const at = { from: Math.max(from, clause.node.head.to), to: clause.node.to };
  const says = `«${clause.written({ from: bare.from, to: clause.node.to })}» went to somebody else: a clause of its own`;
  // `sold 20 + 5 to Bob`: all of them may be his.
  const edit = /\+\s*$/u.test(before) ? null : { from: at.from, to: bare.from, text: `; ${clause.phrase()} ` };
  clause.line.faults.push({ ...fault('unknown-clause', at, says), edit });
  return true;
}

/** `sold 6 of 10`: of how many, and no money. */
function ofSoMany(clause: Clause, bare: QuantityNode): boolean {
  const of = /(?:\sout)?\sof\s*$/iu.exec(clause.line.text.slice(0, bare.from));
  if (of === null) return false;
  const at = { from: of.index + 1, to: bare.to };
  const says = `«${clause.written(at)}» is how many there were: a count of its own, or the remark`;
  clause.fault('does-not-belong', at, says, `"${clause.written(at)}"`);
  clause.takeAt(clause.rest.indexOf(bare));
  return true;
}

const EACH = /^\s*(?:€|euros?|eur)?\s*(?:each|ea|apiece|a piece|per fish)(?!\p{L})/iu;

/** `sold 6 x 4`: six at four each, or six bags of four? */
export function doubtTimes(clause: Clause, price: Price | null, at: LinkNode | null): void {
  const times = clause.quantity((node) => node.numbers.length === 2 && node.unit === null);
  const [one, other] = times?.numbers.map(figureValue) ?? [];
  if (times === null || one === undefined || other === undefined) return;
  const [many, each] = times.numbers.map(({ text }) => text);
  const said = clause.written(times);
  if (price !== null) {
    // Where a price stands behind it the second number is none.
    const inBags = `\`${many ?? ''} bags of ${each ?? ''}\``;
    clause.fault(
      'two-readings',
      times,
      `«${said}» with a price is said as ${inBags}`,
      `${many ?? ''} bags of ${each ?? ''}`,
    );
    if (at !== null && price.per === 'each') eachOf(clause, at, 'bag', one * price.amount);
    return;
  }
  const says = `«${said}» may be ${many ?? ''} fish at ${each ?? ''} each, or ${String(one * other)} fish in bags: write which`;
  clause.fault('two-readings', times, says, `${many ?? ''} at ${each ?? ''} each`);
}
