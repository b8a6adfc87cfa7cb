/** Builds facts about fish: bond, disputes, spawning, broods, counts, sizes, moves, losses. */
import type { DetailNode, LinkNode, NameNode, QuantityNode, VersusNode, WordNode } from '../../../grammar/syntax.ts';
import type { Measure } from '../../core/quantity.ts';
import type { LengthOf, Sign, Sizes, Stage } from '../../journal/event.ts';
import type { FishRef, Member, Sex } from '../../journal/subject.ts';
import type { Clause } from '../clause.ts';
import { fishNamed, fishOf, howMany, IMPLIED, maybeHeads, needHeads } from '../fish.ts';
import { nameKey } from '../names.ts';
import { newName } from '../naming.ts';
import { FISH, TANK } from '../line.ts';
import type { Body, BodyOf, Builds, Task } from './table.ts';

/** Clauses that say one thing of some fish and nothing more. */
function about(kind: PlainKind): (task: Task) => Body {
  return ({ clause, fish }) => ({ kind, fish: fishOf(clause, fish) });
}

type PlainKind =
  | 'bonded'
  | 'calmer'
  | 'shimmying'
  | 'made up'
  | 'split up'
  | 'resting'
  | 'member back'
  | 'parents chase fry'
  | 'about to spawn'
  | 'no eggs'
  | 'eggs gone';

export const FISH_BUILDS: Builds<
  | 'bonded'
  | 'sign'
  | 'on each other'
  | 'calmer'
  | 'shimmying'
  | 'made up'
  | 'split up'
  | 'resting'
  | 'back'
  | 'new mate'
  | 'parents chase fry'
  | 'about to spawn'
  | 'no eggs'
  | 'spawned'
  | 'eggs white'
  | 'eggs gone'
  | 'stage'
  | 'counted'
  | 'size'
  | 'moved'
  | 'mixed'
  | 'lost'
> = {
  bonded: about('bonded'),
  sign,
  // `male on female` alone names the doer of that line's dispute, else it means chasing; the line settles it.
  'on each other': sign,
  calmer: about('calmer'),
  shimmying: about('shimmying'),
  'made up': about('made up'),
  'split up': about('split up'),
  resting: about('resting'),
  back,
  'new mate': newMate,
  'parents chase fry': about('parents chase fry'),
  'about to spawn': about('about to spawn'),
  'no eggs': about('no eggs'),
  spawned,
  'eggs white': ({ clause, fish }) => {
    const count = howMany(clause);
    return { kind: 'eggs white', fish: fishOf(clause, fish), count };
  },
  'eggs gone': about('eggs gone'),
  stage: stageSeen,
  counted: ({ clause, fish }) => {
    const heads = needHeads(clause, '43');
    return { kind: 'counted', fish: fishOf(clause, fish), heads };
  },
  size,
  moved,
  mixed,
  lost: ({ clause, fish }) => {
    const count = howMany(clause);
    return {
      kind: 'lost',
      fish: fishOf(clause, fish),
      count,
      how: LOSSES.find((how) => how === clause.sense) ?? 'died',
    };
  },
};

const LOSSES = ['died', 'missing', 'eaten', 'culled'] as const;

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
function sign({ clause, fish }: Task): Body {
  const versus = clause.versus();
  const sense = SIGNS.find((each) => each === clause.sense) ?? 'chasing';
  if (versus !== null) return signBetween(clause, fish, sense, versus);
  const sufferer = clause.node.before.length > 0 ? afterPhrase(clause) : null;
  const named = fishOf(clause, fish);
  const doer = sufferer !== null && named.kind === 'group' ? (named.member?.sex ?? null) : null;
  const alone = sense === 'chasing' && clause.node.before.length === 0 && named !== fish;
  if (!alone) return { kind: 'dispute sign', fish: named, sign: sense, doer, sufferer };
  // `chasing female`: the fish after the phrase is the one that is chased.
  const chased = named.kind === 'group' ? (named.member?.sex ?? null) : null;
  return { kind: 'dispute sign', fish, sign: sense, doer: null, sufferer: chased };
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

function sexOf(text: string): Sex {
  return text === 'male' ? 'male' : 'female';
}

function back({ clause, fish }: Task): Body {
  const who = fishOf(clause, fish);
  if (who.kind === 'implied') clause.fault('which-fish', clause.node.head, 'who is back?', 'male back');
  return { kind: 'member back', fish: who };
}

function newMate({ clause, fish }: Task): Body {
  const before = clause.node.before.length > 0 ? fishOf(clause, fish) : fish;
  const as = clause.linked('as')?.value ?? null;
  const name = as?.type === 'name' ? as : clause.name();
  const from = clause.linked('from')?.value ?? null;
  const own = name === null ? null : newName(clause, name, 'fish');
  return {
    kind: 'new mate',
    fish: before,
    sex: sexOf(clause.sense),
    from: from === null ? null : sourceOf(clause, from),
    name: own,
  };
}

/** A group or brood by name, or whatever the words say. */
function sourceOf(clause: Clause, value: LinkNode['values'][number]): string {
  const text = value.type === 'quote' ? clause.written(value).slice(1, -1).trim() : clause.written(value).trim();
  return clause.line.names.find(text, clause.day)?.name ?? text;
}

function broodName(clause: Clause): string | null {
  const brood = clause.linked('brood')?.value;
  return brood?.type === 'name' ? newName(clause, brood, 'brood') : null;
}

function spawned({ clause, fish }: Task): Body {
  const brood = broodName(clause);
  const eggs = maybeHeads(clause);
  const as = (['laid', 'seen', 'maybe'] as const).find((each) => each === clause.sense) ?? 'laid';
  return { kind: 'spawned', fish: fishOf(clause, fish), as, brood, eggs };
}

const STAGES: readonly Exclude<Stage, 'eggs'>[] = [
  'hatched',
  'wrigglers',
  'free-swimming',
  'fry seen',
  'born',
  'holding',
  'released',
  'stripped',
];

function stageSeen({ clause, fish }: Task): Body {
  const brood = broodName(clause);
  const stage = STAGES.find((each) => each === clause.sense) ?? 'hatched';
  const count = youngOnly(maybeHeads(clause));
  return { kind: 'stage seen', fish: fishOf(clause, fish), stage, count, brood };
}

/** `about 60 fry` at a stage: that they are young goes without saying. */
function youngOnly(heads: ReturnType<typeof maybeHeads>): ReturnType<typeof maybeHeads> {
  return heads?.males === null && heads.females === null ? { ...heads, young: null } : heads;
}

function size({ clause, fish }: Task): Body {
  const sizes = lengthsOf(clause);
  return { kind: 'sized', fish: fishOf(clause, fish), sizes };
}

/** The lengths that a clause gives, and which fish they are of. */
export function lengthsOf(clause: Clause): Sizes {
  const of =
    (['largest', 'smallest', 'average', 'bulk', 'sample'] as const).find((each) => each === clause.sense) ?? 'bulk';
  const nodes: QuantityNode[] = [];
  for (let node = clause.quantity(); node !== null; node = clause.quantity()) nodes.push(node);
  while (clause.flag('and'));
  const unit = nodes.map((node) => node.unit).find((each) => each !== null) ?? null;
  const values = nodes.map((node) => clause.toMeasure({ ...node, unit: node.unit ?? unit }, 'mm'));
  if (nodes.length === 0) clause.missing('a length', of === 'sample' ? '18 19 20 mm' : '25 mm');
  if (nodes.length > 1 && of !== 'sample' && of !== 'bulk') {
    clause.fault('one-length', clause.node, `\`${clause.phrase()}\` takes one length; several are \`sizes\``);
  }
  return { of: lengthOf(of, nodes), values: values.filter((each): each is Measure<'mm'> => each !== null) };
}

/** Several lengths are a sample, however they are called. */
function lengthOf(of: LengthOf, nodes: readonly QuantityNode[]): LengthOf {
  return of === 'bulk' && nodes.length > 1 ? 'sample' : of;
}

/** `moved 40 Rowan-1 to C1, 15 to C2` is two moves: every `to` ends one. */
function moved({ clause, fish }: Task): Body | readonly Body[] {
  const restStay = clause.flag('restStay');
  const targets = clause.rest.filter((detail) => isTo(detail)).length;
  const moves: BodyOf<'moved'>[] = [];
  let who: FishRef = fish;
  for (let index = 0; index < Math.max(1, targets); index += 1) {
    const one = oneMove(clause, who, index + 1 < targets);
    who = one.fish;
    moves.push({ ...one, restStay: restStay && index === Math.max(1, targets) - 1 });
  }
  return moves;
}

function isTo(detail: DetailNode): detail is LinkNode {
  return detail.type === 'link' && detail.link === 'to';
}

function oneMove(clause: Clause, heading: FishRef, more: boolean): BodyOf<'moved'> {
  const to = clause.linked('to');
  if (to === null) clause.missing('a tank', 'to C1');
  const limit = more ? (to?.at.from ?? Infinity) : Infinity;
  const count = more ? countBefore(clause, limit) : howMany(clause);
  const which = clause.flag('largest') ? 'largest' : clause.flag('smallest') ? 'smallest' : 'any';
  const from = clause.linked('from');
  if (from !== null) clause.fault('place-in-heading', from.at, 'where they are moved from stands before the colon', '');
  const along = clause.linked('with');
  return {
    kind: 'moved',
    fish: fishOf(clause, heading),
    count,
    which,
    to: to === null ? '' : clause.named(to.value, TANK),
    with: along === null ? null : clause.written(along.value).trim(),
    restStay: false,
  };
}

/** The number that stands before a place in the line. */
function countBefore(clause: Clause, limit: number): ReturnType<typeof howMany> {
  const later = clause.takeAll((detail): detail is QuantityNode => detail.type === 'quantity' && detail.from > limit);
  const count = howMany(clause);
  clause.putBack(later);
  return count;
}

function mixed({ clause }: Task): Body {
  const names = clause.names();
  const along = clause.linked('with')?.value;
  const refs = [...names, ...(along === undefined ? [] : [along])].map((node) => fishNamed(clause, node));
  const [a, b] = refs;
  if (refs.length !== 2 || a === undefined || b === undefined) {
    const example = names[0] === undefined ? 'Rowan-1 and Ash-2' : 'and Ash-2';
    clause.missing('the two stocks that were mixed', example);
    return { kind: 'mixed', a: IMPLIED, b: IMPLIED };
  }
  if (nameKey(JSON.stringify(a)) === nameKey(JSON.stringify(b))) {
    clause.fault('mixed-with-itself', clause.node, 'a stock cannot be mixed with itself');
  }
  return { kind: 'mixed', a, b };
}
