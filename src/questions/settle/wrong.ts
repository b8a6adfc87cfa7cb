/** What does not add up in the results of an auction: fish that are not there, lots told twice, tanks that nobody knows. */
import type { Day } from '../../core/day.ts';
import { isoDay } from '../../core/day.ts';
import { NONE } from '../../core/interval.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import { nearest } from '../../core/suggest.ts';
import { countWords, dayWords, listWords, plural } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import { stockName } from '../../state/promised.ts';
import type { Auction } from '../../state/sale.ts';
import { byStock, lotWords, stockCalled, tankCalled, type Parcel } from './parcels.ts';
import type { Result, Wrong } from './result.ts';

/** The words of the line that says that an auction's results are in the journal. */
export function settleWords(auction: string): string {
  return `settle for ${auction}`;
}

/** An auction that was settled: a second time would take its fish twice. */
export function doneBefore(now: Room, auction: DeepReadonly<Auction>, on: Day): Wrong[] {
  const words = settleWords(auction.name).toLowerCase();
  const line = now.chores.did.find(
    ({ action, day }) => action.kind === 'own' && day >= on && (action.text ?? '').trim().toLowerCase() === words,
  );
  if (line === undefined) return [];
  return [
    {
      line: null,
      says: `${auction.name} is settled already, in line ${String(line.place.line)} of ${line.place.file}`,
      write: `a lot that was forgotten: tankside jot "A1: sold 6 … for 12.00 at ${auction.name}"`,
    },
  ];
}

/** Everything that is wrong with the rows, those that could not be read among them, in the order of the sheet. */
export function fishWrong(
  room: Room,
  auction: DeepReadonly<Auction>,
  on: Day,
  { results, wrong }: { readonly results: readonly Result[]; readonly wrong: readonly Wrong[] },
): Wrong[] {
  if (results.length + wrong.length === 0) return [{ line: null, says: 'no result stands in it', write: null }];
  const rows = results.flatMap((one) => [
    ...twice(results, one),
    ...noSuchLot(auction, one),
    ...unknown(room, on, one),
    ...backTo(room, one),
  ]);
  const many = byStock(room, results).flatMap((parcel) => tooMany(room, auction.name, on, parcel));
  return [...wrong, ...rows, ...notSaid(room, results), ...many].toSorted((a, b) => (a.line ?? 0) - (b.line ?? 0));
}

/** Lots are numbered from 1, and a seller brings no more than the auction takes. */
function noSuchLot({ name, lots }: DeepReadonly<Auction>, { line, lot }: Result): Wrong[] {
  if (lot === null || (/^[1-9]\d{0,3}$/.test(lot) && (lots === null || Number(lot) <= lots))) return [];
  const range = lots === null ? 'from 1' : `1 to ${String(lots)}`;
  const says = `there is no lot ${lot} at ${name}`;
  return [{ line, says, write: `the number on its label, ${range}, or nothing under «lot»` }];
}

function twice(results: readonly Result[], one: Result): Wrong[] {
  const first = results.find(({ lot }) => lot !== null && lot === one.lot);
  if (first === undefined || first === one) return [];
  return [
    {
      line: one.line,
      says: `lot ${one.lot ?? ''} is told twice: line ${String(first.line)} has it already`,
      write: 'one row a lot; a part that went another way in a row with nothing under «lot»',
    },
  ];
}

function unknown(room: Room, on: Day, { line, lot, stock, tank }: Result): Wrong[] {
  const body = stockCalled(room, stock);
  const named = lot === null ? 'this lot' : `lot ${lot}`;
  const when = dayWords(on, room.on);
  if (body === null) {
    const all = [...room.stock.groups.keys(), ...room.stock.broods.keys()];
    const [near] = nearest(stock, all);
    const says = `${named}: there is no stock called «${stock}» on ${when}`;
    return [{ line, says, write: near ?? 'the name of a stock in the journal' }];
  }
  const known = tankCalled(room, tank);
  const tanks = [...body.parts].filter(([, count]) => count.high > 0).map(([one]) => one);
  if (known !== null && tanks.includes(known)) return [];
  const where = tanks.length === 0 ? 'none of them are left' : `they are in ${listWords(tanks)}`;
  const says = `${named}: there is no ${stockName(body)} in ${known ?? `«${tank}»`} on ${when}: ${where}`;
  return [{ line, says, write: tanks[0] ?? null }];
}

/** Neither sold nor back: the keeper has to say. All of them in one question. */
function notSaid(room: Room, results: readonly Result[]): Wrong[] {
  const open = results.filter(({ fetched, unsold }) => fetched === null && unsold === null);
  const [first] = open;
  if (first === undefined) return [];
  const tank = [...room.plumbing.tanks.values()].find(({ quarantine, retired }) => quarantine && retired === null);
  const named = lotWords(open) || listWords(open.map(({ fish, stock }) => `${String(fish)} ${stock}`));
  return [
    {
      line: first.line,
      says: `${named} ${open.length === 1 ? 'was' : 'were'} not sold: back to which tank?`,
      write: `under «back to» ${tank?.name ?? 'the tank'}, or: stayed, given, died`,
    },
  ];
}

function backTo(room: Room, { line, unsold }: Result): Wrong[] {
  if (unsold?.how !== 'back') return [];
  const known = tankCalled(room, unsold.tank);
  const tank = known === null ? undefined : room.plumbing.tanks.get(known);
  if (tank !== undefined && tank.retired === null) return [];
  const [near] = nearest(unsold.tank, [...room.plumbing.tanks.keys()]);
  const says = tank === undefined ? `there is no tank called «${unsold.tank}»` : `${tank.name} is retired`;
  return [{ line, says, write: `under «back to» ${near ?? 'a tank'}, or: stayed, given, died` }];
}

/** More out of a tank than can be there. More than is believed may be true, but then it is counted first. */
function tooMany(room: Room, auction: string, on: Day, { body, tank, results }: Parcel): Wrong[] {
  const there = body.parts.get(tank) ?? NONE;
  if (there.high <= 0) return [];
  const out = results.filter(({ unsold }) => unsold?.how !== 'stayed');
  const fish = out.reduce((sum, one) => sum + one.fish, 0);
  const most = Math.floor(there.high);
  let sum = 0;
  const over = out.find((one) => (sum += one.fish) > most);
  if (over === undefined) return [];
  const name = stockName(body);
  return [
    {
      line: over.line,
      says: `${plural(fish, 'fish', 'fish')} of ${name} out of ${tank} to ${auction}, but only ${countWords(there)} are there on ${dayWords(on, room.on)}`,
      write: `the right numbers; or, if so many were there, count first: ${isoDay(on)} ${tank}: ${body.name} counted ${String(fish)}`,
    },
  ];
}
