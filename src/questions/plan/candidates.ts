/**
 * Stock that may go: what is ready on the day with nothing in its way, and bonded pairs that the keeper
 * offers by name. With how they would travel: their weight, alone or together, how long they fast.
 */
import type { Measure } from '../../core/quantity.ts';
import { linesOf, type LineRef } from '../../core/span.ts';
import type { Guild } from '../../core/guild.ts';
import { plural } from '../../core/words.ts';
import { LOAD_TEMPERATURE } from '../../science/transport.ts';
import { weightOf } from '../../science/weight.ts';
import { bodyNamed, isBrood, partIn, speciesOf, type SeenBody, type SeenGroup } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { guildOf } from '../../state/stageclock.ts';
import { temperatureAt } from '../../state/temperature.ts';
import { adultSize } from '../growing.ts';
import type { Lot, SaleAnswer } from '../sale.ts';
import { blockersOf, type When } from '../sale/blockers.ts';
import { fastOf } from '../timetable.ts';
import { expectedPrice, type Expected } from './price.ts';
import type { PlanLeft } from './plan.ts';
import { rowId } from '../id.ts';

export interface Candidate {
  readonly body: SeenBody;
  readonly name: string;
  readonly species: string | null;
  readonly tank: string;
  /** Fish that can surely be promised out of this tank. */
  readonly free: number;
  readonly size: Measure<'mm'> | null;
  readonly sizeRead: boolean;
  readonly bondedPair: boolean;
  /** Grams of one fish, a large one. */
  readonly grams: number;
  /** mm that the weight was worked out from, and whether that is of grown fish for want of a length. */
  readonly length: number;
  readonly alone: string | null;
  readonly celsius: number;
  readonly fastDays: number;
  readonly expected: Expected;
  readonly cautions: readonly string[];
  readonly lines: readonly LineRef[];
}

/** Fish at least so much of their full length fight in a bag, if their kind does (ours). */
const GROWN_SHARE = 0.7;
/** Kinds that hold a ground of their own and quarrel over it (common practice, no source). */
const QUARRELSOME: readonly Guild[] = [
  'substrate spawner',
  'cave spawner',
  'shell spawner',
  'rock spawner',
  'mouthbrooder',
];

export function candidatesOf(room: Room, answer: SaleAnswer): readonly Candidate[] {
  return answer.lots.flatMap((lot) => {
    const body = lot.ready ? bodyNamed(room, lot.name) : null;
    return body === null ? [] : [candidate(room, body, lot, answer)];
  });
}

function candidate(room: Room, body: SeenBody, lot: Lot, answer: SaleAnswer): Candidate {
  const full = adultSize(room, body);
  const length = lot.size?.high ?? full;
  const spiny = speciesOf(room, body)?.traits.spiny === true;
  const grown = (lot.size?.likely ?? length) >= GROWN_SHARE * full;
  return {
    body,
    name: lot.stock,
    species: lot.species,
    tank: lot.tank,
    free: lot.free,
    size: lot.size,
    sizeRead: lot.sizeRead,
    bondedPair: false,
    grams: weightOf(length / 10),
    length,
    alone: spiny ? 'spiny' : grown && quarrels(room, body) ? 'grown fish of a quarrelsome kind' : null,
    celsius: warmth(room, lot.tank),
    fastDays: fasting(room, answer, lot.size),
    expected: expectedPrice(room, lot),
    cautions: lot.cautions,
    lines: lot.lines,
  };
}

function quarrels(room: Room, body: SeenBody): boolean {
  const guild = guildOf(room, body.species);
  return guild !== null && QUARRELSOME.includes(guild);
}

function warmth(room: Room, tank: string): number {
  return temperatureAt(room, tank)?.value.high ?? LOAD_TEMPERATURE;
}

function fasting(room: Room, { auction }: SaleAnswer, size: Measure<'mm'> | null): number {
  return fastOf((auction === null ? null : room.sale.auctions.get(auction.name)) ?? { fast: null }, size);
}

export interface Offered {
  readonly pairs: readonly Candidate[];
  readonly refused: readonly PlanLeft[];
}

/** Pairs that the keeper offers: as a bonded pair only where the journal says so, and nothing is wrong with their water. */
export function offeredPairs(room: Room, names: readonly string[], answer: SaleAnswer, when: When): Offered {
  const pairs: Candidate[] = [];
  const refused: PlanLeft[] = [];
  for (const name of names) {
    const group = [...room.stock.groups.values()].find((one) => one.name.toLowerCase() === name.toLowerCase());
    if (group === undefined) continue;
    const tank = [...group.parts].find(([, count]) => count.low >= 2)?.[0] ?? null;
    const why = tank === null ? ['the two are not surely together in one tank'] : wrongWith(room, group, tank, when);
    if (tank !== null && why.length === 0) pairs.push(pairOf(room, group, tank, answer));
    else refused.push(refusal(answer.auction?.name ?? 'sale', group, tank, why));
  }
  return { pairs, refused };
}

function wrongWith(room: Room, group: SeenGroup, tank: string, when: When): readonly string[] {
  const water = blockersOf(room, group, tank, null, when).filter(
    ({ kind }) =>
      kind === 'hold' || kind === 'sick' || kind === 'treatment' || kind === 'quarantine' || kind === 'species',
  );
  const open = group.disputes.some((dispute) => dispute.ended === null);
  return [
    ...(group.kind === 'pair' ? [] : [`a ${group.kind} is no pair`]),
    ...(group.bonded !== null && group.bond !== 'split up' ? [] : ['the journal does not say that they are bonded']),
    ...(partIn(group, tank).high > 2 ? [`${plural(partIn(group, tank).high, 'fish', 'fish')}, not two`] : []),
    ...(open ? ['a dispute is open'] : []),
    ...water.map(({ why }) => why),
  ];
}

function pairOf(room: Room, group: SeenGroup, tank: string, answer: SaleAnswer): Candidate {
  const lengths = group.members.flatMap(({ size }) => (size === null ? [] : [size.high]));
  const length = lengths.length > 0 ? Math.max(...lengths) : adultSize(room, group);
  const price = speciesOf(room, group)?.traits.price ?? null;
  const each = price?.per === 'each' ? price.amount : null;
  return {
    body: group,
    name: group.name,
    species: group.species,
    tank,
    free: 2,
    size: lengths.length > 0 ? { unit: 'mm', low: Math.min(...lengths), likely: null, high: length } : null,
    sizeRead: lengths.length > 0,
    bondedPair: true,
    grams: weightOf(length / 10),
    length,
    alone: 'a pair may quarrel in a bag',
    celsius: warmth(room, tank),
    fastDays: fasting(room, answer, null),
    expected: {
      likely: each,
      least: null,
      from: each === null ? 'no price is written' : 'the price of the species; a bonded pair may bring more',
      lines: [],
    },
    cautions: [],
    lines: linesOf([group.declared, ...(group.bonded === null ? [] : [group.bonded.place])]),
  };
}

function refusal(plan: string, group: SeenGroup, tank: string | null, why: readonly string[]): PlanLeft {
  return {
    id: rowId(plan, group.name, tank ?? '', 'stays'),
    stock: group.name,
    name: group.name,
    species: group.species,
    tank: tank ?? group.home ?? 'unknown',
    free: 0,
    why,
    lines: linesOf([group.declared]),
  };
}

/** Line, parents: what a label may say of where they come from. Of a mix every group that they may come of. */
export function originOf(
  room: Room,
  body: SeenBody,
): { readonly line: string | null; readonly parents: readonly string[] } {
  if (!isBrood(body)) return { line: body.line, parents: body.kind === 'colony' ? [body.name] : body.parentsFrom };
  const mixed = body.oneOf.map((name) => room.stock.broods.get(name)?.group ?? null);
  const parents = mixed.length > 0 ? mixed : [body.group];
  return { line: null, parents: [...new Set(parents.filter((group) => group !== null))] };
}
