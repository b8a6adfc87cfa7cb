/** Clauses of a declaring line for fish: `pair Rowan: krib; male 80 mm; female 60 mm; in A1; from "a friend" at 30.00`. */
import type { ClauseKind } from '../../../grammar/phrases.ts';
import type { DetailNode, LinkValue, NameNode, Piece } from '../../../grammar/syntax.ts';
import { plus } from '../../core/interval.ts';
import type { Heads } from '../../journal/event.ts';
import type { Sex } from '../../journal/subject.ts';
import type { Clause } from '../clause.ts';
import { howMany } from '../fish.ts';
import { SPECIES, TANK } from '../line.ts';
import { newName } from '../naming.ts';
import { figureValue } from '../quantities.ts';
import type { GroupDraft } from './declaring.ts';
import { lengthsOf } from './fish.ts';
import { tankName } from './places.ts';
import { priceOf } from './prices.ts';

export const GROUP_PARTS: Readonly<Partial<Record<ClauseKind, (clause: Clause, draft: GroupDraft) => void>>> = {
  'group of': groupOf,
  member,
  'lives in': (clause, draft) => {
    const name = tankName(clause);
    if (name === null) clause.missing('a tank', 'A1');
    else draft.tank = clause.named(name, TANK);
  },
  'comes from': comesFrom,
  cost: (clause, draft) => {
    const node = clause.quantity();
    const amount = clause.money(node);
    if (node === null) clause.missing('an amount', '30.00');
    const each = clause.flag('each') || (clause.sense === 'at' && draft.groupKind !== 'pair');
    if (amount !== null) draft.price = { amount, per: each ? 'each' : 'all' };
  },
  age: (clause, draft) => (draft.age = clause.need('days', '8 weeks')),
  size: (clause, draft) => (draft.size = lengthsOf(clause)),
  line: (clause, draft) => (draft.line = clause.needText('"Moss river"')),
};

/** `krib`, `12`, `about 25`, `4 males, 8 females`, in any order. */
function groupOf(clause: Clause, draft: GroupDraft): void {
  while (clause.flag('and'));
  const count = howMany(clause);
  if (typeof count !== 'string') draft.heads = withEarlier(draft.heads, count);
  else if (count !== 'unsaid') clause.fault('no-number', clause.node, `«${count}» is no number of fish to begin with`);
  const inTank = clause.linked('in');
  if (inTank !== null) draft.tank = clause.named(inTank.value, TANK);
  const name = clause.name();
  if (name !== null) draft.species = clause.named(name, SPECIES);
}

/**
 * `one male; one female` in two clauses are as many as in one, and of `12; 5 females` five are. A number said again
 * replaces the earlier one.
 */
function withEarlier(earlier: Heads | null, now: Heads): Heads {
  if (earlier === null || earlier.young !== null || now.young !== null) return now;
  const sexes = ({ males, females }: Heads): number => Number(males !== null) + Number(females !== null);
  const [some, all] = sexes(earlier) === 0 ? [now, earlier] : [earlier, now];
  const males = earlier.males ?? now.males;
  const females = earlier.females ?? now.females;
  const as = earlier.as === now.as ? now.as : 'guess';
  if (sexes(some) === 1 && sexes(all) === 0 && all.total.low >= some.total.high) return { ...all, males, females, as };
  const apart = sexes(some) === 1 && sexes(all) === 1 && males !== null && females !== null;
  return apart ? { ...now, total: plus(earlier.total, now.total), males, females, as } : now;
}

/** `male 80 mm`, `male Oak 80 mm`, `females Fern and Lark`, and `3 females` where they have no names. */
function member(clause: Clause, draft: GroupDraft): void {
  const sex: Sex | null = clause.sense === 'male' || clause.sense === 'female' ? clause.sense : null;
  const from = clause.linked('from');
  if (from !== null) cameOf(clause, draft, from.value);
  const names: NameNode[] = clause.names();
  const before = clause.node.before[0];
  const number = before?.type === 'quantity' ? clause.take((each): each is typeof before => each === before) : null;
  const length = clause.quantity((each) => (each.unit === null ? each.word === null : clause.measuresIn(each, 'mm')));
  const size = length === null ? null : clause.toMeasure(length, 'mm');
  if (length?.unit === null && size !== null && size.high < LEAST_MM) countOrLength(clause, length);
  const counted = number?.numbers[0] === undefined ? null : figureValue(number.numbers[0]);
  const many = counted ?? 1;
  const unnamed = { member: { sex, name: null }, size };
  const named = names.map((node) => ({ member: { sex, name: newName(clause, node, 'fish') }, size }));
  if (named.length > 0) draft.members = [...draft.members, ...named];
  else draft.members = [...draft.members, ...Array.from({ length: Math.min(many, 1000) }, () => unnamed)];
}

/** No grown fish is so short: a bare number behind `females` is more likely how many. */
const LEAST_MM = 10;

function countOrLength(clause: Clause, length: Piece): void {
  const { head } = clause.node;
  const [who, number] = [clause.written(head), clause.written(length)];
  const says = `«${who} ${number}» may be how many or how long: write ${number} ${who}, or ${number} mm`;
  clause.fault('count-or-length', { from: head.from, to: length.to }, says, `${number} ${who}`);
}

/** From another stock of this room by name, or from somebody, in words. */
function comesFrom(clause: Clause, draft: GroupDraft): void {
  const each = clause.flag('each');
  const price = priceOf(clause);
  if (price !== null && each) draft.price = { ...price, per: 'each' };
  else if (price !== null) draft.price = draft.groupKind === 'pair' ? { ...price, per: 'all' } : price;
  const quoted =
    clause.rest.some(({ type }) => type === 'quote') &&
    !clause.rest.some(({ type }) => type === 'text' || type === 'name');
  const named = clause.names();
  const bare =
    named.length > 0 ? null : clause.take((each): each is DetailNode & { type: 'text' } => each.type === 'text');
  const at = named[0] ?? bare;
  if (quoted || at === null) draft.from = clause.needText('"a friend"');
  else from(clause, draft, { from: at.from, to: (named.at(-1) ?? at).to });
}

/** `male from Ivy-1`: what one fish of them came from; words of somebody would be said of all of them. */
function cameOf(clause: Clause, draft: GroupDraft, value: LinkValue): void {
  const { names } = clause.line;
  const text = clause.written(value).trim();
  const stock = names.find(text, clause.day);
  if (value.type !== 'quote' && (stock?.kind === 'group' || stock?.kind === 'brood')) addParents(draft, [stock.name]);
  else {
    const says = `of one fish only a group or brood of this room is kept as where it came from; «${text}» is none`;
    clause.fault('wrong-kind', value, says);
  }
}

/** Splits `Ivy-1, Teasel-1`, `Ivy-1 and Teasel-1`, `Ivy-1 x Teasel-1`. */
const BETWEEN = /\s*(?:,|&|\+)\s*|\s+(?:and|x|×)\s+/iu;

/** Stocks of this room, or somebody in words; a tank is neither. */
function from(clause: Clause, draft: GroupDraft, at: Piece): void {
  const text = clause.written(at).trim();
  const words = text.split(BETWEEN);
  const found = words.map((word) => clause.line.names.find(word, clause.day));
  const stocks = found.filter((each) => each?.kind === 'group' || each?.kind === 'brood');
  const tank = found.find((each) => each?.kind === 'tank');
  if (stocks.length === words.length)
    addParents(
      draft,
      stocks.map((stock) => stock?.name ?? ''),
    );
  else if (tank || stocks.length > 0) {
    const says = tank
      ? `«${tank.name}» is a tank: write the group or brood that they came from, or words in quotes`
      : `of «${text}» only a part is stock of this room: write a line for each, or words in quotes`;
    clause.fault('wrong-kind', at, says, `"${text}"`);
  } else draft.from = text;
}

/** Where some came from was said before: they come of both. */
function addParents(draft: GroupDraft, names: readonly string[]): void {
  draft.parentsFrom = [...new Set([...draft.parentsFrom, ...names])];
}
