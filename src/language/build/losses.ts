/** Builds losses: how many of which fish died, went missing, were eaten or culled, and what is asked back of them. */
import type { DetailNode, NameNode } from '../../../grammar/syntax.ts';
import { exactly } from '../../core/interval.ts';
import type { HowMany } from '../../journal/event.ts';
import type { FishRef } from '../../journal/subject.ts';
import type { Clause } from '../clause.ts';
import { fault } from '../faults.ts';
import { howMany } from '../fish.ts';
import { saidFish } from './selling.ts';
import type { Body, Task } from './table.ts';

const LOSSES = ['died', 'missing', 'eaten', 'culled'] as const;

export function lost({ clause, fish }: Task): Body {
  if (/^ate$/iu.test(clause.phrase())) setEaterAside(clause);
  const asked = clause.rest.find((detail) => detail.type === 'quantity' && detail.word?.sense === '?');
  perhapsOne(clause);
  const count = lostHeads(clause);
  clause.setAside(clause.link('jumped'));
  const how = howLost(clause);
  for (const size of ['largest', 'smallest'] as const) clause.setAside(clause.link(size));
  runts(clause, count === 'unsaid');
  // `both died`, `the pair died`: no other fish can be meant, and none of the two is left out.
  const both = clause.rest.some((detail) => detail.type === 'sex' && detail.sex === 'pair');
  const who = saidFish(clause, fish);
  if (count === 'unsaid' && isNobody(who)) {
    // `eaten` alone is said of a brood, as `eggs gone` is.
    if (/^eaten$/i.test(clause.phrase()) && !isOfSpecies(who))
      return { kind: 'lost', fish: YOUNG, count: 'all', how: 'eaten' };
    if (!putDown(clause)) unsaid(clause);
  }
  if (asked !== undefined && who.kind === 'group' && who.member !== null) inDoubt(clause, asked);
  if (count === 'unsaid' && who.kind === 'implied' && who.young) allOrSome(clause);
  return {
    kind: 'lost',
    fish: who,
    count: both && count === 'unsaid' ? 'all' : count,
    how,
  };
}

/** `1 jumped, dead`: it was found, and how it came to that is kept as a remark. */
function howLost(clause: Clause): (typeof LOSSES)[number] {
  const how = LOSSES.find((each) => each === clause.sense) ?? 'died';
  if (how !== 'missing') return how;
  if (clause.link('foundDead') === null) return how;
  clause.setAside(clause.node.head);
  return 'died';
}

/** `put down sand` kills nobody: of fish it is said how many, or which. */
function putDown(clause: Clause): boolean {
  if (!/^put down$/i.test(clause.phrase())) return false;
  const says = '«put down» is said of fish by their name or number, as in `put down 2`';
  clause.fault('something-missing', clause.node, says, `note ${clause.written(clause.node)}`);
  return true;
}

const YOUNG: FishRef = { kind: 'implied', young: true };

function isOfSpecies(who: FishRef): boolean {
  return who.kind === 'implied' && who.species !== undefined;
}

/** No name stands there, nor a word for young. */
function isNobody(who: FishRef): boolean {
  return who.kind === 'implied' && who.young !== true;
}

/** `found dead`, `jumped`: one of them, or all that are there? */
function unsaid(clause: Clause): void {
  const { head, from, to } = clause.node;
  if (clause.line.faults.some((wrong) => wrong.from >= from && wrong.to <= to)) return;
  const said = clause.written(head);
  const how = LOSSES.find((each) => each === clause.sense) ?? 'died';
  const says = `how many? «${said}» may be one of them (\`1 ${how}\`) or all (\`all ${how}\`): write which`;
  const wrong = fault('something-missing', head, says);
  clause.line.faults.push({ ...wrong, edit: { from, to: from, text: 'some ' } });
}

/** `parents ate 6 fry`: who stands before `ate` is the eater, and lives. */
function setEaterAside(clause: Clause): void {
  const { from } = clause.node.head;
  const eater = (detail: DetailNode): detail is DetailNode =>
    detail.from < from && (detail.type === 'sex' || detail.type === 'name');
  for (const said of clause.takeAll(eater)) clause.setAside(said);
}

/** `another dead` is one. */
function lostHeads(clause: Clause): HowMany {
  const count = howMany(clause);
  const one = count === 'unsaid' && /^another\b/iu.test(clause.phrase());
  return one ? { total: exactly(1), males: null, females: null, young: null, as: 'counted' } : count;
}

const RUNTS = /^runts?$/iu;

/** `culled 5 runts`: the small ones. Of `culled the runts` nobody knows how many they were. */
function runts(clause: Clause, unsaid: boolean): void {
  const said =
    clause.link('runts') ?? clause.take((each): each is NameNode => each.type === 'name' && RUNTS.test(each.text));
  clause.setAside(said);
  if (said === null || !unsaid) return;
  const words = clause.written(said);
  clause.fault(
    'something-missing',
    said,
    `how many? As in \`${clause.phrase()} 5 runts\``,
    `some ${words.replace(/^the\s+/iu, '')}`,
  );
}

/** `maybe 1 dead`: of more it is about how many, of one whether. */
function perhapsOne(clause: Clause): void {
  const one = clause.rest.find(
    (each) =>
      each.type === 'quantity' &&
      each.fuzz === 'about' &&
      each.numbers.length === 1 &&
      /\s(?:1|one)$/iu.test(clause.written(each)),
  );
  if (one === undefined || !/^(?:maybe|perhaps|possibly|probably)\s/iu.test(clause.written(one))) return;
  const words = clause.written(clause.node);
  clause.fault('does-not-belong', clause.node, `«${words}» is not sure: a loss is written once it is`, `note ${words}`);
}

/** `male dead?`: of a pair's fish a loss that is not sure would end what is looked for of the pair. */
function inDoubt(clause: Clause, asked: DetailNode): void {
  const says = `«${clause.written(asked)}» is no number of one fish: its loss is written once it is sure`;
  const remark = clause.line.text.slice(clause.node.from, clause.node.to);
  clause.fault('does-not-belong', clause.node, says, `note ${remark}`);
}

/** `fry eaten` */
function allOrSome(clause: Clause): void {
  const { node } = clause;
  const words = clause.written(node);
  const fry = /(?<!\p{L})(?:the\s+)?(?:fry|young|babies|juvies|juvs?|juveniles?)(?!\p{L})/iu;
  const [all, some] = ['all', 'some'].map((many) =>
    words.replace(fry, (said) => `${many} ${said.replace(/^the\s+/iu, '')}`),
  );
  clause.fault(
    'two-readings',
    node,
    `«${words}» may be \`${all ?? ''}\` or \`${some ?? ''}\`: write which`,
    some ?? null,
  );
}
