/** Builds the signs of a dispute: who chases whom, as far as the line says. */
import type { DetailNode, NameNode, VersusNode, WordNode } from '../../../grammar/syntax.ts';
import type { Sign } from '../../journal/event.ts';
import type { FishRef, Member, Sex } from '../../journal/subject.ts';
import type { Clause } from '../clause.ts';
import { fishOf, sexOf } from '../fish.ts';
import { FISH } from '../line.ts';
import type { Body, Task } from './table.ts';

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

/** The named fish before `chasing` does it, before any other sign suffers it; `X on Y` says both. */
export function sign({ clause, fish }: Task): Body {
  const versus = clause.versus();
  const sense = SIGNS.find((each) => each === clause.sense) ?? 'chasing';
  if (versus !== null) return signBetween(clause, fish, sense, versus);
  const sufferer = within(clause) ?? (clause.node.before.length > 0 ? afterPhrase(clause) : null);
  const named = fishOf(clause, fish);
  const told = named.kind === 'group' ? (named.member?.sex ?? null) : null;
  const doer = sufferer === null ? null : (told ?? (within(clause) === null ? null : other(sufferer)));
  const alone = sense === 'chasing' && clause.node.before.length === 0 && named !== fish;
  if (!alone) return { kind: 'dispute sign', fish: named, sign: sense, doer, sufferer };
  // `chasing female`: the fish after the phrase is the one that is chased.
  const chased = named.kind === 'group' ? (named.member?.sex ?? null) : null;
  return { kind: 'dispute sign', fish, sign: sense, doer: null, sufferer: chased };
}

function other(sex: Sex): Sex {
  return sex === 'male' ? 'female' : 'male';
}

/** `beating her up` */
function within(clause: Clause): Sex | null {
  const word = /\b(?:her|him)\b/i.exec(clause.sense === 'chasing' ? clause.phrase() : '')?.[0].toLowerCase();
  return word === undefined ? null : word === 'her' ? 'female' : 'male';
}

/** `male chasing female`: who stands after the phrase, where someone stood before it. */
function afterPhrase(clause: Clause): Sex | null {
  const after = clause.node.head.to;
  const node = clause.take(
    (detail): detail is NameNode | (DetailNode & { type: 'sex' }) =>
      (detail.type === 'sex' || detail.type === 'name') && detail.from >= after,
  );
  if (node === null) return null;
  if (node.type === 'sex') return sexOf(node.sex);
  const named = clause.lookUp(node, FISH);
  return named?.sex ?? null;
}

function signBetween(clause: Clause, heading: FishRef, sense: Sign, { doer, sufferer }: VersusNode): Body {
  const named = fishOf(clause, heading);
  const [one, other] = [sideOf(clause, doer), sideOf(clause, sufferer)];
  const own = named === heading ? (one.fish ?? other.fish ?? heading) : named;
  return { kind: 'dispute sign', fish: own, sign: sense, doer: one.sex, sufferer: other.sex };
}

/** One side of `X on Y`: a sex, or a fish by name. */
function sideOf(clause: Clause, word: WordNode): { sex: Sex | null; fish: FishRef | null } {
  if (word.sense === 'male' || word.sense === 'female') return { sex: word.sense, fish: null };
  const node: NameNode = { type: 'name', text: word.text, numbered: false, from: word.from, to: word.to };
  const named = clause.lookUp(node, FISH);
  if (named?.kind !== 'fish') return { sex: null, fish: null };
  const member: Member = { sex: named.sex ?? null, name: named.name };
  return { sex: member.sex, fish: { kind: 'group', group: named.group ?? null, member } };
}
