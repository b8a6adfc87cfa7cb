/** Builds facts about fish: bond, disputes, spawning, broods, counts, sizes, moves, losses. */
import type { DetailNode, LinkNode, NameNode, QuantityNode } from '../../../grammar/syntax.ts';
import type { Measure } from '../../core/quantity.ts';
import type { Heads, LengthOf, Sizes, Stage } from '../../journal/event.ts';
import type { Clause } from '../clause.ts';
import { fishNamed, fishOf, howMany, IMPLIED, maybeHeads, needHeads, sexOf } from '../fish.ts';
import { TANK } from '../line.ts';
import { nameKey } from '../names.ts';
import { newName } from '../naming.ts';
import { lost } from './losses.ts';
import { moved } from './moves.ts';
import { askedOnly, noneTold } from './none.ts';
import { sign } from './quarrels.ts';
import type { Body, Builds, Task } from './table.ts';
import { where } from './where.ts';
import { figureValue } from '../quantities.ts';

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
    fungusOnEggs(clause);
    const count = clause.sense === 'all' ? 'all' : howMany(clause);
    return { kind: 'eggs white', fish: fishOf(clause, fish), count };
  },
  'eggs gone': about('eggs gone'),
  stage: stageSeen,
  counted: ({ clause, fish }) => {
    const heads = ofYoung(clause, needHeads(clause, '43'));
    while (clause.flag('inAll'));
    return { kind: 'counted', fish: fishOf(clause, fish), heads };
  },
  size,
  moved,
  mixed,
  lost,
};

/** `fungus on 20 eggs` is told of eggs; `fungus on 2` may be two fish, `fungus on filter` is neither. */
function fungusOnEggs(clause: Clause): void {
  if (!/\bon$/i.test(clause.phrase()) || clause.rest.some((each) => each.type === 'quantity' && each.noun !== null))
    return;
  const says = '«fungus on» may be told of eggs (`eggs white 20`) or of fish (`sick "fungus"`): write which';
  clause.fault('two-readings', clause.node, says, `note ${clause.written(clause.node)}`);
}

/** `fry counted 43` counts young. */
function ofYoung(clause: Clause, heads: Heads): Heads {
  const { males, females, young, total } = heads;
  if (males !== null || females !== null || young !== null) return heads;
  const said = clause.rest.findIndex((detail) => detail.type === 'sex' && detail.sex === 'young');
  if (said < 0) return heads;
  clause.takeAt(said);
  return { ...heads, young: total };
}

/** `male back`; `male back in C2`: of another tank than that of the line it is a move. */
function back({ clause, fish, subject }: Task): Body {
  const { head } = clause.node;
  const behind = clause.take((each): each is NameNode => each.type === 'name' && each.from >= head.to);
  const place = behind ?? clause.linked('in')?.value ?? clause.linked('to')?.value ?? null;
  const to = place === null ? null : clause.named(place, TANK);
  const who = fishOf(clause, fish);
  if (who.kind === 'implied')
    clause.fault('which-fish', clause.node.head, 'who is back? As in `male back`, or by name');
  if (to === null || (subject.kind === 'tank' && subject.tank === to)) return { kind: 'member back', fish: who };
  return { kind: 'moved', fish: who, count: 'unsaid', which: 'any', to, with: null, restStay: false };
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
  noneTold(clause, 'says that none was laid: `no eggs`');
  setParentsAside(clause);
  clause.setAside(where(clause));
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
  setParentsAside(clause);
  if (stage === 'holding') manyHold(clause);
  // Of a stage that nobody is at no brood begins.
  noneTold(clause, 'says that none was seen');
  askedOnly(clause);
  const count = youngOnly(maybeHeads(clause));
  // `fry fs`: whatever is at a stage is young.
  clause.take((detail): detail is DetailNode => detail.type === 'sex' && detail.sex === 'young');
  const who = fishOf(clause, fish);
  if (who.kind === 'group' && who.member !== null && /^(?:all\s+)?swimming$/iu.test(clause.phrase())) {
    const says = '`swimming` is said of young: of a grown fish a note keeps it';
    clause.fault('does-not-belong', clause.node, says, `note ${clause.written(clause.node)}`);
  }
  return { kind: 'stage seen', fish: who, stage, count, brood };
}

/** `2 females holding` counts those that hold, not what they hold: it is kept as a remark. */
function setParentsAside(clause: Clause): void {
  const at = clause.rest.findIndex(({ type }, index) => type === 'quantity' && isGrown(clause.rest[index + 1]));
  const [count, sex] = clause.rest.slice(at, at + 2);
  if (at < 0 || count === undefined || sex === undefined) return;
  clause.takeAt(at);
  clause.takeAt(at);
  clause.setAside({ from: count.from, to: sex.to });
}

/** `2 holding` counts those that hold; `holding 30` what they hold. */
function manyHold(clause: Clause): void {
  const many = clause.rest.find(({ type, from }) => type === 'quantity' && from < clause.node.head.from);
  if (many === undefined) return;
  const says = `«${clause.written(many)}» does not say who holds: a line of each by name, or \`female holding\``;
  clause.fault('which-fish', clause.node, says, `note ${clause.written(clause.node)}`);
}

function isGrown(detail: DetailNode | undefined): boolean {
  return detail?.type === 'sex' && (detail.sex === 'male' || detail.sex === 'female');
}

/** `about 60 fry` at a stage: that they are young goes without saying. */
function youngOnly(heads: ReturnType<typeof maybeHeads>): ReturnType<typeof maybeHeads> {
  return heads?.males === null && heads.females === null ? { ...heads, young: null } : heads;
}

function size({ clause, fish }: Task): Body {
  const sizes = lengthsOf(clause);
  clause.flag('totalLength');
  const standard = clause.link('standardLength');
  if (standard !== null) clause.fault('does-not-belong', standard, STANDARD);
  return { kind: 'sized', fish: fishOf(clause, fish), sizes };
}

const STANDARD = 'lengths here are total lengths, to the end of the tail: a standard length is shorter';

/** The lengths that a clause gives, and which fish they are of. */
export function lengthsOf(clause: Clause): Sizes {
  const of =
    (['largest', 'smallest', 'average', 'bulk', 'sample'] as const).find((each) => each === clause.sense) ?? 'bulk';
  const nodes: QuantityNode[] = [];
  for (let node = clause.quantity(); node !== null; node = clause.quantity()) nodes.push(node);
  while (clause.flag('and'));
  const unit = nodes.map((node) => node.unit).find((each) => each !== null) ?? null;
  if (unit === null) doubtUnit(clause, nodes);
  const values = nodes.map((node) => clause.toMeasure({ ...node, unit: node.unit ?? unit }, 'mm'));
  if (nodes.length === 0) clause.missing('a length', of === 'sample' ? '18 19 20 mm' : '25 mm');
  if (nodes.length > 1 && of !== 'sample' && of !== 'bulk') {
    clause.fault('one-length', clause.node, `\`${clause.phrase()}\` takes one length; several are \`sizes\``);
  }
  return { of: lengthOf(of, nodes), values: values.filter((each): each is Measure<'mm'> => each !== null) };
}

/** `largest 2.5 cm, smallest 1.2`: so short in millimetres is no fish that is measured beside one in centimetres. */
function doubtUnit(clause: Clause, nodes: readonly QuantityNode[]): void {
  const [, other] = /\d\s*(cm|in(?:ch(?:es)?)?)(?!\p{L})/iu.exec(clause.line.text) ?? [];
  const short = nodes.find(({ numbers }) => numbers.some((figure) => figureValue(figure) < SHORTEST));
  if (other === undefined || short === undefined) return;
  const said = clause.written(short);
  clause.fault('which-unit', short, `«${said}» may be mm or ${other}`, `${said} ${other}`);
}

/** Millimetres under which nobody measures fish beside others in centimetres (ours). */
const SHORTEST = 5;

/** Several lengths are a sample, however they are called. */
function lengthOf(of: LengthOf, nodes: readonly QuantityNode[]): LengthOf {
  return of === 'bulk' && nodes.length > 1 ? 'sample' : of;
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
