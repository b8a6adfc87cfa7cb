/** Builds facts of health, stock in and out, money, feed and cultures. */
import type { DetailNode, LinkValue, Piece, QuantityNode } from '../../../grammar/syntax.ts';
import type { LinkName } from '../../../grammar/phrases.ts';
import { FOODS } from '../../../grammar/words.ts';
import { measure } from '../../core/quantity.ts';
import type { Measure, Price } from '../../core/quantity.ts';
import type { Clause } from '../clause.ts';
import { fishOf, howMany } from '../fish.ts';
import { AUCTION, CULTURE, SPECIES } from '../line.ts';
import { newName } from '../naming.ts';
import { doseOf, lasting, linkedMeasure, untilDay, deadline } from './amounts.ts';
import { howOften } from './chores.ts';
import { shared } from './sharing.ts';
import type { Body, Builds, Task } from './table.ts';

export const TRADE_BUILDS: Builds<
  | 'sick'
  | 'catching'
  | 'treat'
  | 'hold'
  | 'quarantine'
  | 'shared'
  | 'bought'
  | 'kept back'
  | 'reserved'
  | 'wanted'
  | 'sold'
  | 'gave away'
  | 'spent'
  | 'fed'
  | 'culture started'
  | 'culture harvested'
  | 'culture split'
  | 'culture sour'
  | 'hatch'
  | 'two readings'
> = {
  sick: ({ clause }) => {
    if (clause.sense === 'named') return { kind: 'sick', text: clause.phrase().toLowerCase(), catching: null };
    const catching = clause.flag('catching') ? true : clause.flag('notCatching') ? false : null;
    return { kind: 'sick', text: clause.needText('"white spot"'), catching };
  },
  catching: ({ clause }) => ({ kind: 'catching', catching: clause.sense === 'yes' }),
  treat: ({ clause }) => treated(clause),
  hold: ({ clause }) => hold(clause),
  quarantine: ({ clause }) => quarantine(clause),
  shared,
  bought: ({ clause }) => bought(clause),
  'kept back': ({ clause, fish }) => {
    const count = howMany(clause);
    return { kind: 'kept back', fish: fishOf(clause, fish), count, ...which(clause) };
  },
  reserved: (task) => reserved(task),
  wanted: ({ clause }) => wanted(clause),
  sold: (task) => sold(task),
  'gave away': ({ clause, fish }) => {
    const count = howMany(clause);
    const to = buyer(clause);
    clause.flag('away');
    return { kind: 'gave away', fish: fishOf(clause, fish), count, to, ...which(clause) };
  },
  spent: ({ clause }) => {
    const amount = money(clause);
    const what = clause.linked('onWhat');
    return { kind: 'spent', amount, text: what === null ? clause.text() : wordsOf(clause, what.value) };
  },
  fed: ({ clause }) => {
    const grams = clause.maybe('g');
    clause.setAside(clause.quantity((node) => node.noun !== null));
    clause.setAside(clause.link('fedTo'));
    if (clause.sense !== 'fed') return fedFirst(clause, grams);
    // `fed` alone: what, nobody says.
    const tells = clause.rest.some((detail) => detail.type !== 'date' && !isLink(detail, 'aside'));
    if (!tells) return { kind: 'fed', food: '', grams };
    return { kind: 'fed', food: food(whatOf(clause) ?? clause.needText('microworm')), grams };
  },
  'culture started': ({ clause }) => {
    const from = clause.linked('from')?.value;
    return { kind: 'culture started', ...(from === undefined ? {} : { from: wordsOf(clause, from) }) };
  },
  'culture harvested': () => ({ kind: 'culture harvested' }),
  'culture split': ({ clause }) => {
    const to = clause.linked('to')?.value ?? clause.name();
    if (to === null) clause.missing('the new culture', 'to M2');
    return { kind: 'culture split', to: to === null ? '' : clause.named(to, CULTURE) };
  },
  'culture sour': () => ({ kind: 'culture sour' }),
  hatch: ({ clause }) => {
    const grams = clause.maybe('g');
    return { kind: 'hatch set', grams, of: food(whatOf(clause) ?? clause.text() ?? 'brine shrimp') };
  },
  'two readings': () => null,
};

function isLink(detail: DetailNode, link: LinkName): boolean {
  return detail.type === 'link' && detail.link === link;
}

/** `bbs`, `first bbs`: the food is what the clause begins with. */
function fedFirst(clause: Clause, grams: Measure<'g'> | null): Body {
  const { from } = clause.node.head;
  const said = clause.phrase();
  const { length } = /^first\s+/i.exec(said)?.[0] ?? '';
  if (length > 0) clause.setAside({ from, to: from + 'first'.length });
  return { kind: 'fed', food: food(said.slice(length)), grams };
}

/** `6 largest`: the rest of them is smaller from then on. */
function which(clause: Clause): { which?: 'largest' | 'smallest' } {
  if (clause.flag('largest')) return { which: 'largest' };
  return clause.flag('smallest') ? { which: 'smallest' } : {};
}

function treated(clause: Clause): Body {
  const { every } = howOften(clause);
  const wait = linkedMeasure(clause, 'wait', 'days');
  const dose = doseOf(clause);
  const counted = clause.quantity((node) => node.unit === null && node.noun !== null);
  const doses = counted === null ? null : clause.whole(counted);
  const along = clause.linked('with');
  const product = along === null ? clause.needText('"salt"') : wordsOf(clause, along.value);
  return { kind: 'treated', product, dose, every, doses, wait };
}

/** Only `hold` with a reason holds; a number after it means fish kept back or promised. */
function hold(clause: Clause): Body {
  if (clause.sense === 'over') return { kind: 'hold over' };
  const text = clause.text();
  if (text === null) clause.missing('what it is for', '"white spot"');
  else if (/^\d/.test(text)) {
    const at = { from: clause.node.head.from, to: clause.node.to };
    const says = `«${clause.written(at)}» may be fish kept back, fish reserved, or a tank on hold`;
    clause.fault('two-readings', clause.node.head, says, 'kept back');
  }
  return { kind: 'hold begun', text: text ?? '' };
}

function quarantine(clause: Clause): Body {
  if (clause.sense === 'over') return { kind: 'quarantine over' };
  const lasts = lasting(clause, 'days');
  if (lasts !== null) return { kind: 'quarantine begun', lasts };
  const until = untilDay(clause);
  if (until === null) {
    if (clause.line.faults.length === 0) clause.missing('how long', '28 days');
    return { kind: 'quarantine over' };
  }
  return { kind: 'quarantine begun', lasts: measure('days', Math.max(0, until - clause.day)) };
}

function bought(clause: Clause): Body {
  const price = priceOf(clause);
  const as = clause.linked('as')?.value ?? null;
  const from = clause.linked('from')?.value ?? null;
  const size = clause.maybe('mm');
  const count = howMany(clause);
  const name = clause.name();
  if (name === null) clause.missing('which species', 'krib');
  const species = name === null ? '' : clause.named(name, SPECIES);
  const group = as?.type === 'name' ? newName(clause, as, 'group') : null;
  const whom = from === null ? null : wordsOf(clause, from);
  return { kind: 'bought', count, species, price, from: whom, group, ...(size !== null && { size }) };
}

function reserved({ clause, fish }: Task): Body {
  const until = untilDay(clause);
  const to = buyer(clause);
  const deposit = clause.linked('deposit')?.value ?? null;
  const count = howMany(clause);
  const money = clause.money(deposit);
  return { kind: 'reserved', fish: fishOf(clause, fish), count, until, to, deposit: money, ...which(clause) };
}

function wanted(clause: Clause): Body {
  const size = linkedMeasure(clause, 'at', 'mm') ?? clause.maybe('mm');
  const by = deadline(clause);
  const to = buyer(clause) ?? fromWhom(clause);
  const count = howMany(clause);
  const name = clause.name();
  if (name === null) clause.missing('which species', 'krib');
  return { kind: 'wanted', count, species: name === null ? '' : clause.named(name, SPECIES), size, by, to };
}

function fromWhom(clause: Clause): string | null {
  const from = clause.linked('from')?.value;
  return from === undefined ? null : wordsOf(clause, from);
}

function sold({ clause, fish }: Task): Body {
  const pairs = clause.rest.findIndex((detail) => detail.type === 'sex' && detail.sex === 'pair');
  const priced = clause.rest.find((detail) => isLink(detail, 'at'));
  const { price, auction } = soldAt(clause);
  bareMoney(clause);
  if (priced !== undefined && pairs >= 0 && price?.per === 'each')
    eachPair(clause, priced, clause.rest[pairs - 1], price.amount);
  const to = buyer(clause);
  const count = howMany(clause);
  return { kind: 'sold', fish: fishOf(clause, fish), count, price, to, auction, ...which(clause) };
}

/** `sold 2 pairs at 15`, `sold the pair at 15`: fifteen a fish, or a pair? */
function eachPair(clause: Clause, at: Piece, count: DetailNode | undefined, amount: number): void {
  const pairs = count?.type === 'quantity' ? (clause.whole(count) ?? 1) : 1;
  const tail = /^[\s]*(?:each|a pair)(?![\p{L}])/u.exec(clause.line.text.slice(at.to))?.[0].length ?? 0;
  const place = { from: at.from, to: at.to + tail };
  const says = `«${clause.written(place)}» may be the price of each fish or of each pair: write what all of them came to`;
  clause.fault('two-readings', place, says, `for ${(pairs * amount).toFixed(2)}`);
}

/** `sold 6, 30`: thirty each, or for all? */
function bareMoney(clause: Clause): void {
  const numbers = clause.rest.filter((detail) => detail.type === 'quantity' && detail.unit === null && !detail.ago);
  const bare = numbers.find(
    (detail, index) => index > 0 && clause.rest[clause.rest.indexOf(detail) + 1]?.type !== 'sex',
  );
  if (bare === undefined) return;
  const signed = /[€£$¥]\s*$/.exec(clause.line.text.slice(0, bare.from))?.[0].length ?? 0;
  const at = { from: bare.from - signed, to: bare.to };
  const amount = clause.written(at);
  const says = `«${amount}» may be the price of each (\`at ${amount}\`) or of all (\`for ${amount}\`): write which`;
  clause.fault('two-readings', at, says, `for ${amount}`);
  clause.takeAt(clause.rest.indexOf(bare));
}

/** `at 4.00` is each, `for 30.00` the total, `at Autumn` the auction. */
function soldAt(clause: Clause): { price: Price | null; auction: string | null } {
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

/** `to "…"`, or `for "…"`. */
function buyer(clause: Clause): string | null {
  const named = clause.linked('to') ?? clause.linked('for');
  return named === null ? null : wordsOf(clause, named.value);
}

/** Foods by the names that are kept: `bbs, micros` are brine shrimp and microworm. */
export function food(text: string): string {
  const kept = (one: string): string => FOODS.get(one.toLowerCase()) ?? one;
  return text
    .split(/,\s*/)
    .filter((one) => one !== '')
    .map(kept)
    .join(', ');
}

/** `2 g of pellets`. */
function whatOf(clause: Clause): string | null {
  const of = clause.linked('ofWhat');
  return of === null ? null : wordsOf(clause, of.value);
}

/** Words of the keeper, without their quotes. */
export function wordsOf(clause: Clause, value: LinkValue): string {
  const text = clause.written(value).trim();
  return value.type === 'quote' ? text.slice(1, -1).trim() : text;
}

function money(clause: Clause): number {
  const node: QuantityNode | null = clause.quantity((each) => each.unit === null && each.noun === null);
  if (node === null) clause.missing('an amount', '24.00');
  return clause.money(node) ?? 0;
}
