/**
 * Results of an auction as lines for the journal: one of fish sold for each stock and tank, what became of
 * those that nobody bought, and that the auction is settled. Or everything that does not add up: then no line.
 */
import type { Day } from '../core/day.ts';
import { addDays, isoDay } from '../core/day.ts';
import { NONE } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { listWords, plural, tankInLine } from '../core/words.ts';
import type { Room } from '../state/draft.ts';
import type { Auction } from '../state/sale.ts';
import { auctionOf } from './money/income.ts';
import { byStock, lotWords, skippedLots, type Parcel } from './settle/parcels.ts';
import type { Result, Wrong } from './settle/result.ts';
import { doneBefore, fishWrong, settleWords } from './settle/wrong.ts';
import { loopOf, tanksOn } from '../state/tanks.ts';

export interface Settlement {
  /** Whole lines, with the lines of the sheet that each rests on. */
  readonly lines: readonly { readonly text: string; readonly from: readonly number[] }[];
  readonly home: Home;
}

/** Fish that came back, by the tank that they are in now, and what to mind about that. */
export interface Home {
  readonly back: readonly { readonly tank: string; readonly fish: number; readonly until: Day | null }[];
  readonly cautions: readonly string[];
}

export type Settled =
  { readonly ok: true; readonly settlement: Settlement } | { readonly ok: false; readonly wrong: readonly Wrong[] };

export interface SettleOptions {
  readonly auction: DeepReadonly<Auction>;
  /** The auction's day. */
  readonly on: Day;
  /** Days of quarantine for fish that have been out; 0 for none. */
  readonly quarantine: number;
}

/** Rows that make sense, and what was wrong with the others. */
export interface Handed {
  readonly results: readonly Result[];
  readonly wrong: readonly Wrong[];
}

/** `then`: the room on the auction's day; `now`: as it stands with everything that was filed since. */
export function settle(then: Room, now: Room, handed: Handed, options: SettleOptions): Settled {
  const { results } = handed;
  const { auction, on } = options;
  const done = doneBefore(now, auction, on);
  if (done.length > 0) return { ok: false, wrong: done };
  const parcels = byStock(then, results);
  const told = parcels.flatMap((parcel) => soldBefore(now, auction, parcel));
  const wrong = told.length > 0 ? told : fishWrong(then, auction, on, handed);
  if (wrong.length > 0) return { ok: false, wrong };
  return {
    ok: true,
    settlement: {
      lines: linesOf(parcels, options),
      home: { back: backIn(parcels, options), cautions: [...untold(results), ...cautionsOf(then, parcels, options)] },
    },
  };
}

/** Fish of that stock and tank that a line has sold there already. */
function soldBefore(now: Room, auction: DeepReadonly<Auction>, { tank, names, results }: Parcel): Wrong[] {
  const sale = now.sale.sales.find(
    (one) => !one.gift && one.tank === tank && names.includes(one.stock) && auctionOf(now, one)?.name === auction.name,
  );
  if (sale === undefined) return [];
  return [
    {
      line: results[0]?.line ?? null,
      says: `${sale.stock} out of ${tank} are sold at ${auction.name} already, in line ${String(sale.place.line)} of ${sale.place.file}`,
      write: 'the sheet without these rows, or take that line back with mistake',
    },
  ];
}

function linesOf(parcels: readonly Parcel[], options: SettleOptions): Settlement['lines'] {
  const { auction, on, quarantine } = options;
  const date = isoDay(on);
  const line = (text: string, of: readonly Result[]): Settlement['lines'][number] => ({
    text: `${date} ${text}`,
    from: of.map((one) => one.line),
  });
  const stays = new Map<string, Result[]>();
  for (const { results } of parcels) {
    for (const one of results) {
      if (one.unsold?.how === 'back') stays.set(one.unsold.tank, [...(stays.get(one.unsold.tank) ?? []), one]);
    }
  }
  return [
    ...parcels.flatMap((parcel) => soldLine(parcel, auction.name).map(([text, of]) => line(text, of))),
    ...parcels.flatMap((parcel) => unsoldLines(parcel, auction.name).map(([text, of]) => line(text, of))),
    ...(quarantine === 0
      ? []
      : [...stays].map(([tank, of]) => line(`${tank}: quarantine ${String(quarantine)} days`, of))),
    doneLine(auction.name, on),
  ];
}

/** The line that says that the auction is settled, and keeps it from being settled twice. */
export function doneLine(auction: string, on: Day): Settlement['lines'][number] {
  return { text: `${isoDay(on)} room: did "${settleWords(auction)}"`, from: [] };
}

type Told = [string, readonly Result[]];

function soldLine({ tank, name, results }: Parcel, auction: string): Told[] {
  const sold = results.filter(({ fetched }) => fetched !== null);
  if (sold.length === 0) return [];
  const money = sold.reduce((sum, { fetched }) => sum + (fetched ?? 0), 0);
  const remark = fetchedWords(sold);
  const words = `${tank}: sold ${String(heads(sold))} ${name} for ${money.toFixed(2)} at ${auction}`;
  return [[remark === '' ? words : `${words} "${remark}"`, sold]];
}

/** `lots 4-6 at 15.50, 16.50 and 17.50`: what each fetched, which the sum no longer tells. */
function fetchedWords(sold: readonly Result[]): string {
  const lots = lotWords(sold, '-');
  const sums = [...new Set(sold.map(({ fetched }) => (fetched ?? 0).toFixed(2)))];
  if (lots === '' || sold.length === 1) return lots;
  if (sums.length === 1) return `${lots} at ${sums[0] ?? ''} each`;
  return `${lots} at ${listWords(sold.map(({ fetched }) => (fetched ?? 0).toFixed(2)))}`;
}

function unsoldLines({ tank, name, results }: Parcel, auction: string): Told[] {
  const groups = new Map<string, Result[]>();
  for (const one of results) {
    const { unsold } = one;
    if (unsold === null || unsold.how === 'stayed') continue;
    const where = unsold.how === 'back' ? `to ${tankInLine(unsold.tank)}` : unsold.how;
    if (where !== `to ${tankInLine(tank)}`) groups.set(where, [...(groups.get(where) ?? []), one]);
  }
  return [...groups].map(([where, of]): Told => {
    const verb = where.startsWith('to ') ? 'moved' : where;
    const after = where.startsWith('to ') ? ` ${where}` : '';
    const lots = lotWords(of, '-');
    const remark = `${verb === 'moved' ? 'unsold ' : ''}at ${auction}${lots === '' ? '' : `, ${lots}`}`;
    return [`${tank}: ${verb} ${String(heads(of))} ${name}${after} "${remark}"`, of];
  });
}

function heads(results: readonly Result[]): number {
  return results.reduce((sum, { fish }) => sum + fish, 0);
}

function backIn(parcels: readonly Parcel[], { on, quarantine }: SettleOptions): Home['back'] {
  const byTank = new Map<string, number>();
  for (const { unsold, fish } of parcels.flatMap(({ results }) => results)) {
    if (unsold?.how === 'back') byTank.set(unsold.tank, (byTank.get(unsold.tank) ?? 0) + fish);
  }
  const until = quarantine === 0 ? null : addDays(on, quarantine);
  return [...byTank].map(([tank, fish]) => ({ tank, fish, until }));
}

/** A row that was forgotten is told: its fish count as never gone. */
function untold(results: readonly Result[]): string[] {
  const skipped = skippedLots(results);
  return skipped === '' ? [] : [`the sheet tells nothing of ${skipped}: jot what became of their fish, if they went`];
}

/** Quarantine is only worth its name in water and a tank of its own. */
function cautionsOf(then: Room, parcels: readonly Parcel[], { on, auction }: SettleOptions): string[] {
  return backIn(parcels, { on, auction, quarantine: 0 }).flatMap(({ tank }) => {
    const loop = loopOf(then, tank, on);
    const others = loop === null ? [] : tanksOn(then, loop, on).filter((one) => one !== tank);
    if (loop !== null && others.length > 0)
      return [`${tank} shares its water with ${plural(others.length, 'tank')} on ${loop}: what came home reaches them`];
    const here = [...then.stock.groups.values(), ...then.stock.broods.values()].filter(
      (body) => (body.parts.get(tank) ?? NONE).high > 0,
    );
    return here.length === 0
      ? []
      : [`${tank} holds ${listWords(here.map(({ name }) => name))}: they are in quarantine with what came home`];
  });
}
