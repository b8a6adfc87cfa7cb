/** Builds the signs of a dispute: who chases whom, as far as the line says. */
import type { DetailNode, NameNode, VersusNode, WordNode } from '../../../grammar/syntax.ts';
import type { Sign } from '../../journal/event.ts';
import type { FishRef, Member, Sex } from '../../journal/subject.ts';
import type { Clause } from '../clause.ts';
import { fishOf, sexOf } from '../fish.ts';
import { FISH } from '../line.ts';
import type { Body, Task } from './table.ts';
import { where } from './where.ts';

const SIGNS: readonly Sign[] = [
  'chasing',
  'hiding',
  'pinned',
  'torn fin',
  'not eating',
  'scales missing',
  'wounded',
  'gasping',
];

const PASSIVE = /\bchased$/i;

/** The named fish before `chasing` does it, before any other sign suffers it; `X on Y` says both. */
export function sign({ clause, fish }: Task): Body {
  const versus = clause.versus();
  clause.setAside(where(clause));
  const sense = SIGNS.find((each) => each === clause.sense) ?? 'chasing';
  if (versus !== null) return signBetween(clause, fish, sense, versus);
  const told = within(clause);
  const after = told === null && clause.node.before.length > 0 ? afterPhrase(clause) : null;
  const named = fishOf(clause, fish);
  // `female being chased`: she suffers it.
  if (PASSIVE.test(clause.phrase()) && memberOf(named) !== null) return signOf(fish, sense, NOBODY, sideBefore(named));
  if (told !== null) {
    const doer = memberOf(named) ?? { sex: other(told), name: null };
    return { kind: 'dispute sign', fish: named, sign: sense, doer, sufferer: { sex: told, name: null } };
  }
  if (after !== null && sense !== 'chasing' && named.kind === 'group' && named.member === null) {
    // `Sedge torn fin Lark`: of whose group a fish is that suffers it.
    const own = after.fish ?? { ...named, member: after.member };
    return { kind: 'dispute sign', fish: own, sign: sense, doer: null, sufferer: null };
  }
  if (after !== null) return signOf(named, sense, sideBefore(named), after);
  const chases = sense === 'chasing' && clause.node.before.length === 0 && named !== fish;
  if (!chases) return { kind: 'dispute sign', fish: named, sign: sense, doer: null, sufferer: null };
  // `chasing female`: the fish after the phrase is the one that is chased.
  const chased = memberOf(named);
  const isFound = chased === null || chased.name !== null;
  return signOf(fish, sense, NOBODY, { member: chased, fish: isFound ? named : null });
}

function memberOf(fish: FishRef): Member | null {
  return fish.kind === 'group' ? fish.member : null;
}

function sideBefore(fish: FishRef): Side {
  const member = memberOf(fish);
  return { member, fish: member === null || member.name === null ? null : fish };
}

function other(sex: Sex): Sex {
  return sex === 'male' ? 'female' : 'male';
}

/** `beating her up` */
function within(clause: Clause): Sex | null {
  const word = /\b(?:her|him)\b/i.exec(clause.sense === 'chasing' ? clause.phrase() : '')?.[0].toLowerCase();
  return word === undefined ? null : word === 'her' ? 'female' : 'male';
}

/** One side of a quarrel: a sex, or a fish by name. */
interface Side {
  readonly member: Member | null;
  /** Where it has a name, the fish that it is. */
  readonly fish: FishRef | null;
}

const NOBODY: Side = { member: null, fish: null };

/** `male chasing female`: who stands after the phrase, where someone stood before it. */
function afterPhrase(clause: Clause): Side | null {
  const after = clause.node.head.to;
  const node = clause.take(
    (detail): detail is NameNode | (DetailNode & { type: 'sex' }) =>
      (detail.type === 'sex' || detail.type === 'name') && detail.from >= after,
  );
  // `Rowan hiding both`: the two of them, and no side of a quarrel.
  if (node === null || (node.type === 'sex' && node.sex !== 'male' && node.sex !== 'female')) return null;
  return node.type === 'sex' ? { member: { sex: sexOf(node.sex), name: null }, fish: null } : namedSide(clause, node);
}

function signBetween(clause: Clause, heading: FishRef, sense: Sign, { doer, sufferer }: VersusNode): Body {
  return signOf(fishOf(clause, heading), sense, sideOf(clause, doer), sideOf(clause, sufferer));
}

/** A sign with both its sides, about a fish that has a name: one before the phrase that is no side, else a side. */
function signOf(before: FishRef, sign: Sign, one: Side, two: Side): Body {
  const name = memberOf(before)?.name ?? null;
  const isThird = name !== null && name !== one.member?.name && name !== two.member?.name;
  const own = isThird ? before : (one.fish ?? two.fish ?? before);
  return { kind: 'dispute sign', fish: own, sign, doer: one.member, sufferer: two.member };
}

/** One side of `X on Y`. */
function sideOf(clause: Clause, word: WordNode): Side {
  if (word.sense === 'male' || word.sense === 'female') return { member: { sex: word.sense, name: null }, fish: null };
  return namedSide(clause, { type: 'name', text: word.text, numbered: false, from: word.from, to: word.to });
}

function namedSide(clause: Clause, node: NameNode): Side {
  const named = clause.lookUp(node, FISH);
  if (named === null) return NOBODY;
  if (named.kind !== 'fish') {
    const says = `«${named.name}» is no single fish: write the fish's own name, or its sex`;
    clause.fault('which-fish', node, says, 'female');
    return NOBODY;
  }
  const member: Member = { sex: named.sex ?? null, name: named.name };
  return { member, fish: { kind: 'group', group: named.group ?? null, member } };
}
