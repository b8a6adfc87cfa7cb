/** Builds facts of health, stock in and out, money, feed and cultures. */
import type { DetailNode, NameNode, QuantityNode } from '../../../grammar/syntax.ts';
import { exactly } from '../../core/interval.ts';
import { measure } from '../../core/quantity.ts';
import type { Measure } from '../../core/quantity.ts';
import type { HowMany } from '../../journal/event.ts';
import type { Clause } from '../clause.ts';
import { howMany } from '../fish.ts';
import { CULTURE, SPECIES } from '../line.ts';
import { movedHere } from '../otherway.ts';
import { newName } from '../naming.ts';
import { doseOf, lasting, linkedMeasure, untilDay, deadline } from './amounts.ts';
import { howOften } from './chores.ts';
import { cultureFed, fed, food, wordsAfterOf } from './feeding.ts';
import { noneTold } from './none.ts';
import { bareMoney, doubtPairs, isLink, priced, priceOf } from './prices.ts';
import { buyer, buyerAlone, buyerFirst, gaveAway, saidFish, sold, which } from './selling.ts';
import { shared } from './sharing.ts';
import type { Body, Builds, Task } from './table.ts';
import { wordsOf } from './words.ts';

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
  | 'culture fed'
  | 'culture started'
  | 'culture harvested'
  | 'culture split'
  | 'culture sour'
  | 'hatch'
  | 'two readings'
> = {
  sick: ({ clause }) => {
    noneTold(clause, 'tells of nobody that is sick');
    if (clause.sense === 'named') {
      // `velvet?`, `white spot on 2`, `1 bent spine`
      const more = clause.takeAll((each): each is DetailNode => each.type === 'quantity' || isHowMany(clause, each));
      for (const said of more) clause.setAside(said);
      return { kind: 'sick', text: clause.phrase().toLowerCase(), catching: null };
    }
    const catching = clause.flag('catching') ? true : clause.flag('notCatching') ? false : null;
    return { kind: 'sick', text: sickWith(clause), catching };
  },
  catching: ({ clause }) => ({ kind: 'catching', catching: clause.sense === 'yes' }),
  treat: ({ clause }) => treated(clause),
  hold: ({ clause }) => hold(clause),
  quarantine: ({ clause }) => quarantine(clause),
  shared,
  bought,
  'kept back': ({ clause, fish }) => {
    const count = howMany(clause);
    return { kind: 'kept back', fish: saidFish(clause, fish), count, ...which(clause) };
  },
  reserved: (task) => reserved(task),
  wanted: ({ clause }) => wanted(clause),
  sold: (task) => sold(task),
  'gave away': (task) => gaveAway(task),
  spent: ({ clause }) => {
    const amount = money(clause);
    const what = clause.linked('onWhat');
    return { kind: 'spent', amount, text: what === null ? clause.text() : wordsOf(clause, what.value) };
  },
  fed,
  'culture fed': cultureFed,
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
    return { kind: 'hatch set', grams, of: food(wordsAfterOf(clause) ?? clause.text() ?? 'brine shrimp') };
  },
  'two readings': () => null,
};

/** What they are sick with; `sick`, `female sick`, `2 sick` do not say. */
function sickWith(clause: Clause): string | null {
  const who = clause.takeAll(
    (each): each is DetailNode =>
      each.type === 'quantity' || each.type === 'sex' || (each.type === 'name' && clause.line.names.isFish(each.text)),
  );
  const { head } = clause.node;
  for (const side of [who.filter(({ from }) => from < head.from), who.filter(({ from }) => from >= head.from)]) {
    const [first, last] = [side[0], side.at(-1)];
    if (first !== undefined && last !== undefined) clause.setAside({ from: first.from, to: last.to });
  }
  const said = clause.rest.find(({ type }) => type === 'text' || type === 'quote');
  const text = clause.text();
  if (text === null || text === '') return null;
  const isWho = said?.type === 'text' && /^(?:fish|one|(?:the\s+)?(?:fe)?males?|m|f|fry)$/iu.test(text);
  if (!isWho) return text;
  clause.setAside(said);
  return null;
}

function treated(clause: Clause): Body {
  const words = clause.written(clause.node);
  if (/^\S+\s+(?:done|finished|over|ended|complete|stopped)$/iu.test(words)) {
    const says = `«${words}» names nothing that they are treated with: a note keeps it`;
    clause.fault('does-not-belong', clause.node, says, `note ${words}`);
  }
  const { every } = howOften(clause);
  const course = courseOf(clause, every);
  const wait = linkedMeasure(clause, 'wait', 'days');
  const dose = doseOf(clause);
  const counted = clause.quantity((node) => node.unit === null && node.noun !== null);
  const doses = counted === null ? course : clause.whole(counted);
  const along = clause.linked('with');
  const product = along === null ? clause.needText('"salt"') : wordsOf(clause, along.value);
  return { kind: 'treated', product, dose, every, doses, wait };
}

/** `daily for 3 days` are three doses; `for 10 days` alone does not say how many. */
function courseOf(clause: Clause, every: Measure<'days'> | null): number | null {
  const at = clause.rest.find((detail) => isLink(detail, 'for')) ?? null;
  const days = at === null ? null : linkedMeasure(clause, 'for', 'days');
  if (at === null || days === null) return null;
  const doses = every === null ? NaN : days.low / every.low;
  const isSure = days.low === days.high && every?.low === every?.high && Number.isInteger(doses);
  if (!isSure) clause.setAside(at);
  return isSure ? doses : null;
}

/** Only `hold` with a reason holds; a number after it means fish kept back or promised. */
function hold(clause: Clause): Body {
  if (clause.sense === 'over') return { kind: 'hold over' };
  const text = clause.text();
  if (text === null) clause.missing('what it is for', '"white spot"');
  else if (/^\d/.test(text)) {
    const at = { from: clause.node.head.from, to: clause.node.to };
    const says = `«${clause.written(at)}» may be fish kept back, fish reserved, or a tank on hold`;
    // For somebody it is promised to them.
    const others = /\s(?:for|to)\s+(?!(?:me|us|myself)$)\S/iu.test(text);
    clause.fault('two-readings', clause.node.head, says, others ? 'reserved' : 'kept back');
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

function bought(task: Task): Body {
  const { clause } = task;
  const at = priced(clause);
  const price = priceOf(clause);
  const as = clause.linked('as')?.value ?? null;
  const from = clause.linked('from')?.value ?? null;
  const size = clause.maybe('mm');
  clause.setAside(clause.link('free'));
  clause.setAside(clause.link('sort'));
  const each = bareMoney(clause);
  doubtPairs(clause, at, price);
  const count = sexBehind(clause, boughtHeads(clause));
  while (clause.flag('ofThem'));
  const name = clause.name();
  if (from?.type === 'name' && clause.line.names.find(from.text, clause.day)?.kind === 'tank')
    fromTank(task, from, name);
  else if (name === null) clause.missing('which species', 'krib');
  const species = name === null ? '' : clause.named(name, SPECIES);
  const group = as?.type === 'name' ? newName(clause, as, 'group') : null;
  const whom = from === null ? null : wordsOf(clause, from);
  return { kind: 'bought', count, species, price: price ?? each, from: whom, group, ...(size !== null && { size }) };
}

/** `on 2`, `?`: how many of them, or whether. Other words may be a clause that lacks its `;`. */
function isHowMany(clause: Clause, each: DetailNode): boolean {
  const words = each.type === 'text' ? clause.written(each) : '';
  return /^(?:\?+|\d+|(?:on|in)\s+(?:about\s+)?[\p{L}\d~-]+(?:\s+(?:fry|fish|of them))?)$/iu.test(words);
}

/** `6`, and one where a sex or `a pair of` stands alone; a trio is three. */
function boughtHeads(clause: Clause): HowMany {
  const trio = clause.flag('trioOf');
  const count = howMany(clause);
  const one = { total: exactly(1), males: null, females: null, young: null, as: 'counted' } as const;
  if (trio && count === 'unsaid') return { ...one, total: exactly(3) };
  const at = clause.rest.findIndex(({ type }) => type === 'sex');
  const sex = clause.rest[at];
  if (count !== 'unsaid' || sex?.type !== 'sex' || (sex.sex !== 'male' && sex.sex !== 'female' && sex.sex !== 'pair'))
    return count;
  clause.takeAt(at);
  if (sex.sex === 'pair') return { ...one, total: exactly(2), males: exactly(1), females: exactly(1) };
  return sex.sex === 'male' ? { ...one, males: exactly(1) } : { ...one, females: exactly(1) };
}

/** `2 krib f`, `6 krib juvs`: what they are said to be behind their species. */
function sexBehind(clause: Clause, count: HowMany): HowMany {
  if (typeof count === 'string' || count.males !== null || count.females !== null || count.young !== null) return count;
  const at = clause.rest.findIndex(({ type }, index) => type === 'sex' && clause.rest[index - 1]?.type === 'name');
  const sex = clause.rest[at];
  if (sex?.type !== 'sex' || (sex.sex !== 'male' && sex.sex !== 'female' && sex.sex !== 'young')) return count;
  clause.takeAt(at);
  if (sex.sex === 'young') return { ...count, young: count.total };
  return sex.sex === 'male' ? { ...count, males: count.total } : { ...count, females: count.total };
}

/** `C2: got 12 from C1`: fish of this room are moved, and where they come from stands before the colon. */
function fromTank({ clause, subject }: Task, from: NameNode, species: NameNode | null): void {
  const words = (start: number, end: number): string => clause.line.text.slice(start, end);
  const { to } = clause.node.head;
  // Of which species they are goes without saying in their tank.
  const told =
    species === null || species.from < to || species.to > from.from
      ? words(to, from.from)
      : `${words(to, species.from).trimEnd()} ${words(species.to, from.from)}`;
  const said = told.replace(/\s*from\s*$/iu, '');
  clause.line.faults.push(movedHere(clause.line, from, subject.kind === 'tank' ? subject.tank : null, said.trim()));
}

function reserved({ clause, fish }: Task): Body {
  forWhat(clause);
  const to = buyer(clause) ?? buyerFirst(clause) ?? buyerAlone(clause);
  const until = untilDay(clause);
  const deposit = clause.linked('deposit')?.value ?? null;
  const count = howMany(clause);
  const money = clause.money(deposit);
  return { kind: 'reserved', fish: saidFish(clause, fish), count, until, to, deposit: money, ...which(clause) };
}

/** `reserved 6 for 30`: thirty days, or what they are to cost? A price is written when they are sold. */
function forWhat(clause: Clause): void {
  const at = clause.rest.find((detail) => isLink(detail, 'for'));
  const value = at?.values[0];
  if (at === undefined || value?.type !== 'quantity' || value.unit !== null || value.noun !== null) return;
  const said = clause.written(at);
  const says = `«${said}» may be days (\`${said} days\`) or a price, which is written when they are sold: write which`;
  clause.fault('two-readings', at, says, `"${said}"`);
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

function money(clause: Clause): number {
  const node: QuantityNode | null = clause.quantity((each) => each.unit === null && each.noun === null);
  if (node === null) clause.missing('an amount', '24.00');
  return clause.money(node) ?? 0;
}
