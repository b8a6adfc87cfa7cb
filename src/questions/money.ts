/**
 * Money and glass: what each brood, pair and species brought in after the auction's part, what was spent
 * on it, how many were raised, and what each tank-week earned. Never a buyer's name.
 */
import type { Because } from '../core/because.ts';
import type { Day } from '../core/day.ts';
import { NONE, plus, times, type Interval } from '../core/interval.ts';
import { linesOf, type LineRef, type Place } from '../core/span.ts';
import { countWords, dayWords, sumWords } from '../core/words.ts';
import { beginningOf, isBrood, type SeenBody } from '../state/bodies.ts';
import type { Room } from '../state/draft.ts';
import { stockName } from '../state/promised.ts';
import { rowId } from './id.ts';
import { incomes, spendings, type Income, type Spent } from './money/income.ts';
import { stays, tankWeeks, type TankWeeks } from './money/stays.ts';
import type { WhyRow } from './whyrow.ts';
import { leftAlive } from './counts/ledger.ts';

export interface MoneyRow {
  readonly id: string;
  readonly of: 'species' | 'pair' | 'brood';
  readonly name: string;
  readonly species: string | null;
  /** The group of a brood; null for anything else, and for a mix of several groups. */
  readonly pair: string | null;
  /** After the auction's part. */
  readonly income: Interval;
  /** Sales without a price: the income is at least what stands there. */
  readonly unpriced: number;
  readonly spent: number;
  readonly sold: Interval;
  readonly tankWeeks: number;
  /** Income for each week of one whole tank; null where it had no tank for a day. */
  readonly perTankWeek: Interval | null;
  /** Young alive, and sold, given away or grown into groups of their own in the days asked about; null before they swim, and for a colony. */
  readonly raised: Interval | null;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

export interface General {
  readonly place: string;
  /** As the line says; null where it does not. */
  readonly text: string | null;
  readonly amount: number;
  readonly lines: readonly LineRef[];
}

export interface MoneyAnswer {
  readonly since: Day | null;
  readonly currency: string | null;
  readonly name: string | null;
  readonly total: {
    readonly income: Interval;
    readonly spent: number;
    readonly tankWeeks: number;
    readonly unpriced: number;
  };
  /** Spending that no stock's line names, by the place of its line and what it was for. */
  readonly general: readonly General[];
  readonly species: readonly MoneyRow[];
  readonly pairs: readonly MoneyRow[];
  readonly broods: readonly MoneyRow[];
}

/** All of a room since a day, or from its first line; null where a name is asked for that nothing has. */
export function money(room: Room, since: Day | null = null, name: string | null = null): MoneyAnswer | null {
  const ledger = ledgerOf(room, since);
  const species = [...new Set(ledger.bodies.flatMap(({ species: one }) => one ?? []))];
  const all = {
    species: rank(species.map((one) => row(room, ledger, 'species', one, (body) => body.species === one))),
    pairs: rank([...room.stock.groups.keys()].map((group) => pairRow(room, ledger, group))),
    broods: rank(ledger.bodies.filter(isBrood).map((brood) => broodRow(room, ledger, brood))),
  };
  const kept = name === null ? all : only(room, all, name);
  if (kept === null) return null;
  const general = name === null ? generalOf(room, ledger) : [];
  return {
    since,
    currency: room.settings.currency,
    name,
    total: {
      income: sum(ledger.incomes.map(({ net }) => net ?? NONE)),
      spent: ledger.spent.reduce((all_, { amount }) => all_ + amount, 0),
      tankWeeks: [...ledger.weeks.values()].flat().reduce((weeks, one) => weeks + one.weeks, 0),
      unpriced: ledger.incomes.filter(({ net }) => net === null).length,
    },
    general,
    ...kept,
  };
}

export function moneyWhy(room: Room): readonly WhyRow[] {
  const found = money(room);
  if (found === null) return [];
  return [...found.species, ...found.pairs, ...found.broods].map(({ id, name, because, lines }) => ({
    id,
    title: `${name} money`,
    because,
    lines,
  }));
}

/** Names that `money` takes, for a name that is none. */
export function moneyNames(room: Room): readonly string[] {
  return [...room.stock.species.keys(), ...room.stock.groups.keys(), ...room.stock.broods.keys()];
}

interface Ledger {
  readonly since: Day | null;
  readonly bodies: readonly SeenBody[];
  readonly incomes: readonly Income[];
  readonly spent: readonly Spent[];
  readonly weeks: ReadonlyMap<string, readonly TankWeeks[]>;
}

function ledgerOf(room: Room, since: Day | null): Ledger {
  return {
    since,
    bodies: [...room.stock.groups.values(), ...[...room.stock.broods.values()].filter(({ suspected }) => !suspected)],
    incomes: incomes(room, since),
    spent: spendings(room, since),
    weeks: tankWeeks(stays(room), since, room.on),
  };
}

function pairRow(room: Room, ledger: Ledger, group: string): MoneyRow {
  return row(room, ledger, 'pair', group, (body) => body.name === group || (isBrood(body) && body.group === group));
}

function broodRow(room: Room, ledger: Ledger, brood: SeenBody): MoneyRow {
  return row(room, ledger, 'brood', stockName(brood), (body) => body === brood);
}

function row(
  room: Room,
  ledger: Ledger,
  of: MoneyRow['of'],
  name: string,
  belongs: (body: SeenBody) => boolean,
): MoneyRow {
  const bodies = ledger.bodies.filter(belongs);
  const names = new Set([...bodies.map((body) => body.name), name]);
  const sales = ledger.incomes.filter(({ stock }) => names.has(stock));
  const spent = ledger.spent.filter((one) => names.has(one.for));
  const weeks = merged(bodies.flatMap((body) => ledger.weeks.get(body.name) ?? []));
  const total = weeks.reduce((all, one) => all + one.weeks, 0);
  const income = sum(sales.map(({ net }) => net ?? NONE));
  const figures = {
    income,
    unpriced: sales.filter(({ net }) => net === null).length,
    spent: spent.reduce((all, { amount }) => all + amount, 0),
    sold: sum(sales.map(({ count }) => count)),
    tankWeeks: total,
    perTankWeek: total > 0 ? times(income, 1 / total) : null,
    raised: raisedOf(bodies, ledger.since),
  };
  const [first] = bodies;
  const brood = of === 'brood' && first && isBrood(first) ? first : null;
  const places = [...sales.map(({ place }) => place), ...spent.map(({ place }) => place)];
  return {
    id: rowId(name, 'money'),
    of,
    name,
    species: of === 'species' ? name : (first?.species ?? null),
    pair: brood?.group ?? null,
    ...figures,
    ...reason(room, ledger, figures, { sales, spent, weeks }, places.length > 0 ? places : bodies.flatMap(beginningOf)),
  };
}

type Figures = Pick<MoneyRow, 'income' | 'spent' | 'tankWeeks' | 'perTankWeek' | 'raised'>;

function reason(
  room: Room,
  { since }: Ledger,
  { income, spent, tankWeeks: total, perTankWeek, raised }: Figures,
  parts: { sales: readonly Income[]; spent: readonly Spent[]; weeks: readonly TankWeeks[] },
  places: readonly Place[],
): Pick<MoneyRow, 'because' | 'lines'> {
  const lines = linesOf(places);
  const shown = tenthsThatAddUp(parts.weeks.map(({ weeks }) => weeks));
  const tanks = parts.weeks.map(({ tank }, index) => `${(shown[index] ?? 0).toFixed(1)} in ${tank}`);
  return {
    because: {
      rule: 'income is what was written for the fish less the part that the auction keeps; a week in a tank that several stocks share counts for each by an equal part',
      source: 'the journal',
      steps: [
        ...(since === null ? [] : [`since ${dayWords(since, room.on)}`]),
        ...parts.sales.map(({ says }) => says),
        ...parts.spent.map(({ says, amount }) => `${says}: ${amount.toFixed(2)} spent`),
        `tank-weeks: ${tanks.length === 0 ? 'none' : tanks.join(' + ')}${tanks.length > 1 ? ` = ${total.toFixed(1)}` : ''}`,
        ...(perTankWeek === null
          ? []
          : [`${sumWords(income)} / ${total.toFixed(1)} = ${sumWords(perTankWeek)} a tank-week`]),
        ...(spent === 0 ? [] : [`${spent.toFixed(2)} spent is not taken off`]),
        ...(raised === null
          ? []
          : [
              `raised: ${countWords(raised)}, those alive, and sold, given away or grown into groups${since === null ? '' : ' since then'}`,
            ]),
      ],
      lines,
    },
    lines,
  };
}

/** Numbers to a tenth whose sum is their sum to a tenth: those cut off most are rounded up first, so that a reader can add them. */
function tenthsThatAddUp(values: readonly number[]): readonly number[] {
  const tenths = values.map((value) => Math.floor(value * 10 + 1e-9));
  const whole = Math.round(values.reduce((all, value) => all + value, 0) * 10 + 1e-9);
  const missing = whole - tenths.reduce((all, value) => all + value, 0);
  const cut = values.map((value, index) => ({ index, by: value * 10 - (tenths[index] ?? 0) }));
  const raised = new Set(
    cut
      .toSorted((a, b) => b.by - a.by)
      .slice(0, missing)
      .map(({ index }) => index),
  );
  return tenths.map((value, index) => (value + (raised.has(index) ? 1 : 0)) / 10);
}

function merged(weeks: readonly TankWeeks[]): readonly TankWeeks[] {
  const byTank = new Map<string, number>();
  for (const one of weeks) byTank.set(one.tank, (byTank.get(one.tank) ?? 0) + one.weeks);
  return [...byTank].map(([tank, total]) => ({ tank, weeks: total }));
}

/** Young that lived: those that are here, and those that left alive, in the days asked about. Of a brood that went into a mix, at least so many. */
function raisedOf(bodies: readonly SeenBody[], since: Day | null): Interval | null {
  const broods = bodies.filter(isBrood).filter((one) => one.swam !== null || one.released !== null || one.moved);
  if (broods.length === 0) return null;
  return sum(
    broods.map(({ total, gone, ended }) => {
      const left = gone.filter((one) => leftAlive(one) && (since === null || one.day >= since));
      const alive = sum([total, ...left.map(({ count }) => count)]);
      return ended?.how === 'mixed' ? { low: alive.low, likely: null, high: Infinity } : alive;
    }),
  );
}

/** The most earning first; what had neither glass nor income in these days is left out. */
function rank(rows: readonly MoneyRow[]): readonly MoneyRow[] {
  const worth = ({ perTankWeek }: MoneyRow): number => perTankWeek?.likely ?? perTankWeek?.low ?? -1;
  return rows
    .filter(
      ({ tankWeeks: weeks, income, unpriced, spent }) => weeks > 0 || income.high > 0 || unpriced > 0 || spent > 0,
    )
    .toSorted((a, b) => worth(b) - worth(a));
}

type Rows = Pick<MoneyAnswer, 'species' | 'pairs' | 'broods'>;

/** The rows of a species, of a pair with its broods, or of a brood with its pair. */
function only(room: Room, { species, pairs, broods }: Rows, asked: string): Rows | null {
  const name = moneyNames(room).find((one) => one.toLowerCase() === asked.toLowerCase());
  const same = ({ name: own }: MoneyRow): boolean => own.toLowerCase() === (name ?? asked).toLowerCase();
  if (name === undefined && !broods.some(same)) return null;
  if (name !== undefined && room.stock.species.has(name)) {
    const of = (one: MoneyRow): boolean => one.species === name;
    return { species: species.filter(same), pairs: pairs.filter(of), broods: broods.filter(of) };
  }
  const mine = broods.filter((one) => same(one) || one.pair === name);
  return { species: [], pairs: pairs.filter(same), broods: mine };
}

function generalOf(room: Room, { spent, bodies }: Ledger): readonly General[] {
  const named = new Set([...bodies.map(({ name }) => name), ...room.stock.species.keys()]);
  const alike = new Map<string, Spent[]>();
  for (const one of spent.filter((each) => !named.has(each.for))) {
    const key = JSON.stringify([one.for, one.text?.toLowerCase() ?? null]);
    alike.set(key, [...(alike.get(key) ?? []), one]);
  }
  return [...alike.values()].flatMap((all): General[] => {
    const [first] = all;
    if (first === undefined) return [];
    const amount = all.reduce((total, one) => total + one.amount, 0);
    return [{ place: first.for, text: first.text, amount, lines: linesOf(all.map((one) => one.place)) }];
  });
}

function sum(all: readonly Interval[]): Interval {
  return all.reduce<Interval>((total, one) => plus(total, one), NONE);
}
