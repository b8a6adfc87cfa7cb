/** Results put together by the stock and the tank that they came out of: one line of the journal each. */
import { listWords } from '../../core/words.ts';
import { bodyNamed, type SeenBody } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { stockName } from '../../state/promised.ts';
import type { Result } from './result.ts';

export interface Parcel {
  readonly body: SeenBody;
  readonly tank: string;
  /** As a line of the journal calls them. */
  readonly name: string;
  /** Every name under which sales of them may be filed. */
  readonly names: readonly string[];
  readonly results: readonly Result[];
}

/** In the order of the sheet; rows of an unknown stock or tank are left to whoever says what is wrong. */
export function byStock(room: Room, results: readonly Result[]): readonly Parcel[] {
  const parcels = new Map<string, Parcel>();
  for (const one of results) {
    const body = stockCalled(room, one.stock);
    const tank = tankCalled(room, one.tank);
    if (body === null || tank === null) continue;
    const key = JSON.stringify([body.name, tank]);
    const known = parcels.get(key);
    const parts = 'oneOf' in body ? body.oneOf : [];
    parcels.set(key, {
      body,
      tank,
      name: parts[0] ?? body.name,
      names: [body.name, ...parts],
      results: [...(known?.results ?? []), withNames(room, one)],
    });
  }
  return [...parcels.values()];
}

/** The stock of that name, or the mix that is called so (`Rowan-1 or Ash-2`), whatever the letters' case. */
export function stockCalled(room: Room, name: string): SeenBody | null {
  const exact = bodyNamed(room, name);
  if (exact !== null) return exact;
  const wanted = name.toLowerCase();
  const all: SeenBody[] = [...room.stock.groups.values(), ...room.stock.broods.values()];
  return all.find((body) => [body.name, stockName(body)].some((one) => one.toLowerCase() === wanted)) ?? null;
}

/** The tank of that name, whatever the letters’ case; null where there is none. */
export function tankCalled(room: Room, name: string): string | null {
  if (room.plumbing.tanks.has(name)) return name;
  return [...room.plumbing.tanks.keys()].find((one) => one.toLowerCase() === name.toLowerCase()) ?? null;
}

function withNames(room: Room, one: Result): Result {
  if (one.unsold?.how !== 'back') return one;
  return { ...one, unsold: { how: 'back', tank: tankCalled(room, one.unsold.tank) ?? one.unsold.tank } };
}

/** `lot 4`, `lots 1–3 and 7`; empty where the sheet numbers none. A plain hyphen where it goes into a line of the journal. */
export function lotWords(results: readonly Result[], dash = '–'): string {
  const lots = results.flatMap(({ lot }) => (lot === null ? [] : [lot]));
  const runs = lots.reduce<string[][]>((all, lot) => {
    const last = all.at(-1);
    if (last !== undefined && Number(last.at(-1)) + 1 === Number(lot)) last.push(lot);
    else all.push([lot]);
    return all;
  }, []);
  const words = runs.flatMap((run) => (run.length < 3 ? run : [`${run[0] ?? ''}${dash}${run.at(-1) ?? ''}`]));
  return words.length === 0 ? '' : `${lots.length === 1 ? 'lot' : 'lots'} ${listWords(words)}`;
}

/** No auction takes so many lots from one seller; a number above is no count of them. */
const MOST_LOTS = 1000;

/** Lots before the last one of the sheet that no row tells of: `lots 2 and 5`; empty where none is missing. */
export function skippedLots(results: readonly Result[]): string {
  const told = new Set(
    results.map(({ lot }) => Number(lot ?? Number.NaN)).filter((lot) => lot >= 1 && lot <= MOST_LOTS),
  );
  const missing = Array.from({ length: Math.max(0, ...told) }, (_, before) => before + 1).filter(
    (lot) => !told.has(lot),
  );
  return missing.length === 0 ? '' : `${missing.length === 1 ? 'lot' : 'lots'} ${listWords(missing.map(String))}`;
}
