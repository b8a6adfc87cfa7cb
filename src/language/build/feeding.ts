/** Builds feeds: what was fed, how much of it, and in the remark to whom and how often. */
import type { DetailNode, NameNode } from '../../../grammar/syntax.ts';
import { FOODS } from '../../../grammar/words.ts';
import type { Measure } from '../../core/quantity.ts';
import type { Clause } from '../clause.ts';
import { fishNamed } from '../fish.ts';
import { isLink } from './prices.ts';
import type { Body, Task } from './table.ts';
import { wordsOf } from './words.ts';

export function fed({ clause }: Task): Body {
  const grams = clause.maybe('g');
  clause.setAside(clause.quantity((node) => node.noun !== null));
  // `a pinch of flake`: how many grams a pinch is nobody weighs.
  const scoop = clause.quantity((node) => node.scoop !== null);
  clause.setAside(scoop);
  setEatersAside(clause);
  if (clause.sense !== 'fed') return fedFirst(clause, grams);
  // `fed` alone: what, nobody says.
  const tells = clause.rest.some((detail) => detail.type !== 'date' && !isLink(detail, 'aside'));
  if (!tells) return { kind: 'fed', food: '', grams };
  if (scoop !== null && clause.rest.length === 0) return { kind: 'fed', food: '', grams };
  nothingFed(clause);
  const first = (wordsAfterOf(clause) ?? clause.needText('microworm')).replace(/\s+(?:and|&|\+)$/iu, '');
  return { kind: 'fed', food: food([first, ...moreFoods(clause)].join(', ')), grams };
}

/** `fed nothing` was no feed. */
function nothingFed(clause: Clause): void {
  const words = clause.written(clause.node);
  if (!/^\S+\s+(?:nothing|no\s+food)$/iu.test(words)) return;
  clause.fault('does-not-belong', clause.node, `«${words}» tells of no feed: a note keeps it`, `note ${words}`);
}

/** `M1: fed oats`; what a culture is of comes out of it, and seldom goes in. */
export function cultureFed({ clause }: Task): Body {
  const grams = clause.maybe('g');
  clause.setAside(clause.quantity());
  const along = clause.linked('with');
  const said = along !== null ? wordsOf(clause, along.value) : (wordsAfterOf(clause) ?? clause.text() ?? '');
  const phrase = clause.phrase();
  if (areFoods(said) && said !== '') {
    const words = clause.written(clause.node);
    const says = `«${words}» may be what was taken from the culture (\`harvested\`) or what it was fed: write which`;
    clause.fault('two-readings', clause.node, says, 'harvested');
  }
  if (clause.sense === 'added' && said === '') clause.missing('what it was', 'oats');
  // `yeast added`
  const added = /^(\S+)\s+added$/iu.exec(phrase)?.[1] ?? said;
  return { kind: 'fed', food: added, grams };
}

/** `flake am, bbs pm`: the foods that follow the first. */
function moreFoods(clause: Clause): string[] {
  const areTold = (detail: DetailNode): detail is DetailNode & { type: 'text' } =>
    detail.type === 'text' && areFoods(clause.written(detail));
  return clause.takeAll(areTold).flatMap((more) => foodsIn(clause.written(more)));
}

/** `Rowan-1 fed bbs`, `bbs to fry twice`: food goes into a tank, so who it is for is a remark. */
function setEatersAside(clause: Clause): void {
  const says = (detail: DetailNode): detail is DetailNode => isLink(detail, 'fedTo') || isLink(detail, 'often');
  for (const said of clause.takeAll(says)) clause.setAside(said);
  const { from } = clause.node.head;
  const isEater = (detail: DetailNode): detail is NameNode =>
    detail.type === 'name' && (detail.from < from || clause.line.names.isFish(detail.text));
  for (const name of clause.takeAll(isEater)) {
    fishNamed(clause, name);
    clause.setAside(name);
  }
  // `no bbs` tells the opposite.
  const eaters = (detail: DetailNode): detail is DetailNode =>
    detail.type === 'sex' ||
    (detail.from < from && detail.type === 'quantity' && detail.unit === null && detail.word?.sense !== 'none');
  for (const said of clause.takeAll(eaters)) clause.setAside(said);
  const to = clause.linked('to');
  if (to?.value.type === 'name') fishNamed(clause, to.value);
  clause.setAside(to?.at ?? null);
}

/** `bbs`, `first bbs`, `bbs and micros`: the food is what the clause begins with, and whatever food follows. */
function fedFirst(clause: Clause, grams: Measure<'g'> | null): Body {
  const { from } = clause.node.head;
  const said = clause.phrase();
  const { length } = /^first\s+/i.exec(said)?.[0] ?? '';
  if (length > 0) clause.setAside({ from, to: from + 'first'.length });
  return { kind: 'fed', food: food([said.slice(length), ...moreFoods(clause)].join(', ')), grams };
}

function foodsIn(text: string): string[] {
  return text
    .split(/\s*(?:,|&|\+|(?<!\p{L})and(?!\p{L}))\s*/iu)
    .map((one) => one.trim())
    .filter((one) => one !== '');
}

function areFoods(text: string): boolean {
  return foodsIn(text).every((one) => FOODS.has(one.toLowerCase()));
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
export function wordsAfterOf(clause: Clause): string | null {
  const of = clause.linked('ofWhat');
  return of === null ? null : wordsOf(clause, of.value);
}
