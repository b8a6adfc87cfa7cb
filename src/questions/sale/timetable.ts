/**
 * What to do on which day before an auction, counted back from it: the last dose, the check of
 * promises and counts, the catch, the fast, the bags, the load.
 */
import { addDays, type Day } from '../../core/day.ts';
import type { DeepReadonly } from '../../core/readonly.ts';
import type { LineRef } from '../../core/span.ts';
import { lineOf } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import type { Auction } from '../../state/sale.ts';
import { USUAL_WAIT_DAYS } from '../holds/courses.ts';
import { sale, type Lot, type SaleAnswer } from '../sale.ts';

export type Step = 'last dose' | 'check' | 'catch' | 'fast' | 'bag' | 'load';

export interface Planned {
  readonly auction: DeepReadonly<Auction>;
  readonly on: Day;
  readonly step: Step;
  readonly day: Day;
  readonly lots: readonly Lot[];
  readonly answer: SaleAnswer;
  /** The line that says that it is done. */
  readonly done: LineRef | null;
}

/** Days before an auction from which its work is shown. */
export const WINDOW_DAYS = 28;
/** Days before it on which promises and counts are checked (ours). */
const CHECK_DAYS = 7;
/** Days without food before they are bagged, where the auction's line says nothing: 48 h, common practice, no source. */
export const USUAL_FAST_DAYS = 2;

/** The coming auctions inside their window, soonest first. Auctions that are over ask for nothing. */
export function comingAuctions(room: Room): readonly (DeepReadonly<Auction> & { readonly on: Day })[] {
  return [...room.sale.auctions.values()]
    .flatMap((auction) => (auction.on === null ? [] : [{ ...auction, on: auction.on }]))
    .filter(({ on }) => on >= room.on && on - room.on <= WINDOW_DAYS)
    .toSorted((a, b) => a.on - b.on);
}

/** Every step before every coming auction. Where nothing will be ready, only the steps that may change that. */
export function timetable(room: Room): readonly Planned[] {
  return comingAuctions(room).flatMap((auction) => {
    const answer = sale(room, { ahead: 0, auction, projected: false });
    const lots = answer.lots.filter(({ ready }) => ready);
    const plan = (step: Step, day: Day): Planned => ({
      auction,
      on: auction.on,
      step,
      day,
      lots,
      answer,
      done: doneLine(room, auction, step),
    });
    const fast = Math.ceil(auction.fast?.high ?? USUAL_FAST_DAYS);
    const before = [
      plan('last dose', addDays(auction.on, -USUAL_WAIT_DAYS)),
      plan('check', addDays(auction.on, -CHECK_DAYS)),
    ];
    if (lots.length === 0) return before;
    const hard = lots.some((lot) => isHard(room, lot.species)) ? 1 : 0;
    return [
      ...before,
      plan('catch', addDays(auction.on, -fast - 1 - hard)),
      plan('fast', addDays(auction.on, -fast)),
      plan('bag', auction.on),
      plan('load', auction.on),
    ];
  });
}

/** The words that say that a step is done: `room: did "bag for Autumn"`. */
export function doneWords(auction: string, step: Step): string {
  return `${step} for ${auction}`;
}

function isHard(room: Room, species: string | null): boolean {
  return species !== null && room.stock.species.get(species)?.traits.hardToCatch === true;
}

function doneLine(room: Room, auction: DeepReadonly<Auction>, step: Step): LineRef | null {
  const words = doneWords(auction.name, step).toLowerCase();
  const line = room.chores.did.find(
    ({ action, day }) =>
      action.kind === 'own' && day >= auction.day && (action.text ?? '').trim().toLowerCase() === words,
  );
  return line === undefined ? null : lineOf(line.place);
}
