/** Who a clause is about and how many: names, sexes and numbers of one clause put together. */
import type { ClauseKind } from '../../grammar/phrases.ts';
import { LATER_SEX_WORDS } from '../../grammar/words.ts';
import { GROUP_WORDS } from '../../grammar/reserved.ts';
import type { DateNode, DetailNode, LinkValue, NameNode, Piece, QuantityNode, SexNode } from '../../grammar/syntax.ts';
import { civil } from '../core/day.ts';
import { exactly, plus } from '../core/interval.ts';
import type { Interval } from '../core/interval.ts';
import { dayWords } from '../core/words.ts';
import type { Heads, HowMany } from '../journal/event.ts';
import type { FishRef, GroupKind, Member, Sex } from '../journal/subject.ts';
import type { Clause } from './clause.ts';
import { FISH, FISH_DECLARED, singular } from './line.ts';
import { countOf, figureValue } from './quantities.ts';
import type { Guessed } from './quantities.ts';
import { broodRef } from './refs.ts';

export const IMPLIED: FishRef = { kind: 'implied' };

const isSex = (detail: DetailNode | undefined): detail is SexNode => detail?.type === 'sex';
const isCount = (detail: DetailNode | undefined): detail is QuantityNode =>
  detail?.type === 'quantity' && !detail.ago && detail.unit === null && detail.scoop === null;

/** A number of fish, told apart by sex or age where the clause does; `unsaid` where it gives none. */
export function howMany(clause: Clause): HowMany {
  const counts: { guessed: Guessed; sex: string | null }[] = [];
  // `a pair` is one of each; `the pair` is the one that lives there.
  const pair = clause.take((each): each is SexNode => isSex(each) && each.sex === 'pair' && isOne(clause, each));
  if (pair !== null) counts.push({ guessed: { total: exactly(1), as: 'counted' }, sex: 'pair' });
  for (let at = 0; at < clause.rest.length;) {
    const node = clause.rest[at];
    const next = clause.rest[at + 1];
    if (!isCount(node)) at += 1;
    else if (node.word !== null && isShare(node.word.sense)) {
      if (counts.length > 0) at += 1;
      else {
        clause.takeAt(at);
        return shareOf(node.word.sense);
      }
    } else if (isSex(next) || !counts.some(({ sex }) => sex === null)) {
      const guessed = checkedCount(clause, node);
      clause.takeAt(at);
      if (isSex(next)) clause.takeAt(at);
      counts.push({ guessed, sex: isSex(next) ? next.sex : null });
    } else at += 1;
  }
  return counts.length === 0 ? 'unsaid' : heads(counts);
}

function isOne(clause: Clause, { from, to }: SexNode): boolean {
  return /^an?\s/iu.test(clause.written({ from, to }));
}

function isShare(sense: string): boolean {
  return sense === 'all' || sense === 'rest' || sense === 'half';
}

function shareOf(sense: string): HowMany {
  return sense === 'rest' || sense === 'half' ? sense : 'all';
}

/** A number of fish that the clause cannot do without. */
export function needHeads(clause: Clause, example: string): Heads {
  const count = howMany(clause);
  if (typeof count !== 'string') return count;
  if (count === 'unsaid') clause.missing('a number', example);
  else clause.fault('no-number', clause.node, `\`${clause.phrase()}\` needs a number, not «${count}»`);
  return { total: exactly(0), males: null, females: null, young: null, as: 'counted' };
}

/** A number of fish, where one stands. */
export function maybeHeads(clause: Clause): Heads | null {
  const count = howMany(clause);
  if (count === 'unsaid') return null;
  if (typeof count !== 'string') return count;
  clause.fault('no-number', clause.node, `\`${clause.phrase()}\` takes a number, not «${count}»`);
  return null;
}

function checkedCount(clause: Clause, node: QuantityNode): Guessed {
  const figures = [...node.numbers, ...(node.high === null ? [] : [node.high])];
  const values = figures.map(figureValue);
  if (node.numbers.length > 1 || values.some((value) => !Number.isInteger(value))) {
    clause.fault('no-whole-number', node, `«${clause.written(node)}» is no number of fish`);
  } else if (node.high !== null && (values[1] ?? 0) < (values[0] ?? 0)) {
    const [low, high] = [node.numbers[0], node.high];
    if (low) {
      const says = `«${clause.written(node)}» runs from high to low`;
      clause.fault('high-before-low', { from: low.from, to: high.to }, says, `${high.text}-${low.text}`);
    }
  }
  return countOf(node);
}

/** A pair is a male and a female. */
function both(one: Interval | null, other: Interval | null): Interval | null {
  return one === null || other === null ? (one ?? other) : plus(one, other);
}

function heads(counts: readonly { guessed: Guessed; sex: string | null }[]): Heads {
  const sum = (sex: string | null): Interval | null => {
    const those = counts.filter((count) => count.sex === sex).map(({ guessed }) => guessed.total);
    return those.length === 0 ? null : those.reduce(plus);
  };
  const pairs = sum('pair');
  const [males, females] = [both(sum('male'), pairs), both(sum('female'), pairs)];
  const [young, unsaid] = [sum('young'), sum(null)];
  // Grown fish of which nobody says what they are only count towards the whole.
  const apart = [males, females, young, sum('adult')].filter((part) => part !== null).reduce(plus, exactly(0));
  const all = counts.map(({ guessed }) => guessed.as);
  const as = all.every((each) => each === 'counted') ? 'counted' : all.includes('guess') ? 'guess' : 'about';
  return { total: unsaid ?? apart, males, females, young, as };
}

/**
 * The fish that a clause names, before its phrase or after: `Rowan-1`, `Fern`, `the male`, `Rowan male`.
 * `heading` is what the line's heading says where the clause names none.
 */
export function fishOf(clause: Clause, heading: FishRef): FishRef {
  const name = clause.name();
  const at = clause.rest.findIndex((detail) => isSex(detail));
  const node = clause.rest[at];
  const sex = isSex(node) ? node : null;
  if (sex !== null) clause.takeAt(at);
  if (sex?.sex === 'pair' && name === null && heading.kind === 'group' && heading.member === null) {
    notOfPair(clause, heading.group, sex);
    return heading;
  }
  if (sex?.sex === 'pair' && name === null) return { kind: 'group', group: null, member: null, groupKind: 'pair' };
  // `moved parents to B2`: the grown fish that live there.
  if (sex !== null && name === null && LATER_SEX_WORDS.has(clause.written(sex).toLowerCase()) && sex.sex === 'adult')
    return { kind: 'group', group: null, member: null };
  if (sex?.sex === 'young' && name === null && OF_YOUNG.has(clause.node.kind)) return { kind: 'implied', young: true };
  if (sex?.sex === 'young' || sex?.sex === 'adult') {
    const says = `which ${sex.sex} fish? Name them, or write how many`;
    clause.fault('which-fish', sex, says, `1 ${sex.sex}`);
    return IMPLIED;
  }
  const told = sex === null || sex.sex === 'pair' ? null : sexOf(sex.sex);
  if (name === null) return told === null ? heading : withSex(heading, told);
  return fishNamed(clause, name, told);
}

/** `Ash: sold the pair` of a group of twelve: two of them, or all? */
function notOfPair(clause: Clause, group: string | null, sex: SexNode): void {
  const named = group === null ? null : clause.line.names.find(group, clause.day);
  if (named?.kind !== 'group' || named.groupKind === undefined || named.groupKind === 'pair') return;
  const says = `${named.name} is a ${named.groupKind}, and no pair: two of them are \`1 male 1 female\``;
  clause.fault('which-fish', sex, `«${clause.written(sex)}»: ${says}`, '1 male 1 female');
}

/** Clauses that say of `fry` without a number what they say of a brood by name: of all of them. */
const OF_YOUNG: ReadonlySet<ClauseKind> = new Set<ClauseKind>([
  'size',
  'moved',
  'sold',
  'gave away',
  'kept back',
  'reserved',
  'lost',
]);

/** Clauses whose fish are named after the phrase. */
const NAMES_AFTER: ReadonlySet<ClauseKind> = new Set<ClauseKind>([...OF_YOUNG, 'counted', 'mixed']);

/** Male where the word says so; else female. For words that mean one or the other. */
export function sexOf(text: string): Sex {
  return text === 'male' ? 'male' : 'female';
}

/** `male` in a line about a group is that group's male; else whichever male is meant there. */
function withSex(heading: FishRef, sex: Sex): FishRef {
  const member: Member = { sex, name: null };
  if (heading.kind === 'group') return { ...heading, member };
  return { kind: 'group', group: null, member };
}

export function fishNamed(clause: Clause, node: NameNode | LinkValue, sex: Sex | null = null): FishRef {
  const word = node.type === 'name' ? node.text : clause.written(node).trim();
  const member: Member | null = sex === null ? null : { sex, name: null };
  const kind = groupKind(word.toLowerCase());
  if (kind !== null) return { kind: 'group', group: null, member, groupKind: kind };
  const species = speciesNamed(clause, word);
  const bought = species === null ? null : boughtOn(clause, node);
  if (bought !== null) return { kind: 'group', group: `${species ?? word} of ${bought}`, member };
  if (species !== null && member === null && NAMES_AFTER.has(clause.node.kind) && clause.node.kind !== 'mixed')
    return { kind: 'implied', species };
  if (species !== null) {
    const says = `«${word}» is a species: which fish of it? Leave the name out where only one can be meant`;
    clause.fault('which-fish', node, says, '');
    return IMPLIED;
  }
  // `sold 6 Ash` names a stock that may lack its declaration; `free-swimming 40ish bbs` hardly does.
  const after = node.from >= clause.node.head.to && !NAMES_AFTER.has(clause.node.kind);
  const named = clause.lookUp(node, after ? FISH_DECLARED : FISH);
  if (named !== null) notOfDay(clause, node, named.name);
  if (named?.kind === 'brood') return broodRef(named);
  if (named?.kind === 'fish') {
    return { kind: 'group', group: named.group ?? null, member: { sex: named.sex ?? null, name: named.name } };
  }
  return named === null ? IMPLIED : { kind: 'group', group: named.name, member };
}

/**
 * The day behind a species, `krib of 2 May` or `krib of 2 May 2026`: bought fish bear no other name, so it is no day on
 * which anything happened. In the words of that name (`src/state/buying.ts`); null where none stands there.
 */
function boughtOn(clause: Clause, { to }: Piece): string | null {
  const date = dayOf(clause, to);
  if (date === null) return null;
  clause.takeAt(clause.rest.indexOf(date));
  const day = clause.toDay(date, 'past');
  if (day === null) return null;
  const year = /\d{4}/u.test(date.text) ? ` ${String(civil(day).year)}` : '';
  return `${dayWords(day, day)}${year}`;
}

/** The day that follows behind an `of`, as in `krib of 2 May`. */
function dayOf(clause: Clause, to: number): DateNode | null {
  const date = clause.rest.find(
    (each) => each.type === 'date' && /^\s+of\s+$/iu.test(clause.line.text.slice(to, each.from)),
  );
  return date?.type === 'date' ? date : null;
}

/** `Rowan of 2 May`: the brood of that day, or what happened on it? */
function notOfDay(clause: Clause, { from, to }: Piece, name: string): void {
  const date = dayOf(clause, to);
  if (date === null) return;
  const at = { from, to: date.to };
  const day = clause.written(date);
  const says = `«${clause.written(at)}» may be young of that day, called \`${name}-1\` or the like, or mean \`on ${day}\`: write which`;
  clause.fault('two-readings', at, says);
}

/** `krib`, `kribs`, `guppies`: the species that is meant, or null. */
function speciesNamed(clause: Clause, word: string): string | null {
  const { names } = clause.line;
  const named = names.find(word, clause.day) ?? singular(clause.line, word);
  return named?.kind === 'species' && named.day <= clause.day ? named.name : null;
}

const KINDS: readonly GroupKind[] = ['pair', 'trio', 'harem', 'colony', 'group'];

/** `pair`, `trio` … as a word for the one group of that kind in a tank. */
export function groupKind(word: string): GroupKind | null {
  if (word === 'pr') return 'pair';
  return GROUP_WORDS.has(word) ? (KINDS.find((kind) => kind === word) ?? null) : null;
}
