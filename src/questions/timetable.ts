/**
 * What to do on which day before an auction, counted back from it: the last dose, clearances, the check of
 * promises and counts, rocks out, the catch, rocks back, the fast, the bags, the load.
 */
import { addDays, type Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import { lineOf, type LineRef } from '../core/span.ts';
import type { Room } from '../state/draft.ts';
import type { Auction } from '../state/sale.ts';
import { walkOrder } from '../state/tanks.ts';
import { runningCourses, USUAL_WAIT_DAYS, type Course } from './holds/courses.ts';
import type { SalePlan } from './plan/plan.ts';
import { sale, type SaleAnswer } from './sale.ts';
import type { Blocker } from './sale/blockers.ts';
import { isLeftover } from './sale/leftover.ts';
import { rocksOf } from './timetable/rocks.ts';
import {
  CHECK_DAYS,
  doneWords,
  HARD_DAYS,
  SETTLE_DAYS,
  USUAL_FAST_DAYS,
  WINDOW_DAYS,
  YOUNG_FAST_DAYS,
  YOUNG_MM,
  type Step,
} from './timetable/steps.ts';

export type DatedAuction = DeepReadonly<Auction> & { readonly on: Day };

/** Fish that go: a lot of the answer for that day, or of the plan. */
export interface Going {
  readonly stock: string;
  readonly tank: string;
  readonly species: string | null;
  readonly count: number;
  /** Days without food before they are bagged: young fish take less. */
  readonly fastDays: number;
  readonly lines: readonly LineRef[];
}

export interface Planned {
  readonly auction: DatedAuction;
  readonly step: Step;
  readonly day: Day;
  /** What goes, as far as this step is about it: young fish alone for their fast. */
  readonly going: readonly Going[];
  /** Everything, what cannot go with each thing in its way. */
  readonly answer: SaleAnswer;
  /** Courses that end in time, for the clearance alone. */
  readonly courses: readonly Course[];
  /** The line that says that it is done. */
  readonly done: LineRef | null;
}

/** Every step before every auction inside its window, soonest first; of one that was just held, the settling alone, of one that is settled nothing. */
export function timetable(
  room: Room,
  plannedFor: (auction: DatedAuction) => readonly Going[] | null = () => null,
): readonly Planned[] {
  return [...room.sale.auctions.values()]
    .flatMap((auction) => (auction.on === null ? [] : [{ ...auction, on: auction.on }]))
    .filter(({ on }) => on - room.on <= WINDOW_DAYS && room.on - on <= SETTLE_DAYS)
    .toSorted((a, b) => a.on - b.on)
    .flatMap((auction) => {
      const steps = timetableOf(room, auction, plannedFor(auction));
      const settled = steps.some(({ step, done }) => step === 'settle' && done !== null);
      return settled ? [] : steps.filter(({ step }) => auction.on >= room.on || step === 'settle');
    });
}

/**
 * Every step before one auction, by day. What goes is all that will be ready unless a plan says less; where
 * nothing will be, only the steps that may change that.
 */
export function timetableOf(room: Room, auction: DatedAuction, planned: readonly Going[] | null = null): Planned[] {
  const answer = sale(room, { ahead: 0, auction, projected: false });
  const walk = walkOrder(room);
  const going = (planned ?? goingOf(auction, answer)).toSorted((a, b) => walk.indexOf(a.tank) - walk.indexOf(b.tank));
  const courses = clearingCourses(room, auction.on, answer);
  const plan = (step: Step, daysBefore: number, some: readonly Going[] = going): Planned => ({
    auction,
    step,
    day: addDays(auction.on, -daysBefore),
    going: some,
    answer,
    courses: step === 'clearance' ? courses : [],
    done: doneLine(room, auction, step, some),
  });
  const cleared = courses.reduce<Day | null>((last, { clear }) => (last !== null && last > clear ? last : clear), null);
  const before = [
    plan('last dose', USUAL_WAIT_DAYS),
    ...(cleared === null ? [] : [plan('clearance', auction.on - cleared)]),
    plan('check', CHECK_DAYS),
  ];
  const after = going.length === 0 && auction.on >= room.on ? [] : [plan('settle', -1)];
  return [...before, ...(going.length === 0 ? [] : handling(room, auction, going, plan)), ...after].toSorted(
    (a, b) => a.day - b.day,
  );
}

/** Rocks, catch, fast, bags and load. The fast of young fish is shorter. */
function handling(
  room: Room,
  auction: DatedAuction,
  going: readonly Going[],
  plan: (step: Step, daysBefore: number, some?: readonly Going[]) => Planned,
): Planned[] {
  const fast = Math.max(...going.map((one) => one.fastDays));
  const young = going.filter((one) => one.fastDays < fast);
  const grown = going.filter((one) => one.fastDays === fast);
  const caught = fastDays(auction) + 1 + (going.some((one) => isHard(room, one.species)) ? HARD_DAYS : 0);
  return [
    plan('rocks out', caught),
    plan('catch', caught),
    plan('rocks back', caught),
    plan('fast', fast, grown),
    ...(young.length === 0 ? [] : [plan('fast young', Math.max(...young.map((one) => one.fastDays)), young)]),
    plan('bag', 0),
    plan('load', 0),
  ];
}

/** Days without food of grown fish. */
export function fastDays(auction: Pick<DeepReadonly<Auction>, 'fast'>): number {
  return Math.ceil(auction.fast?.high ?? USUAL_FAST_DAYS);
}

/** Days without food of fish of a size, mm: young fish are fasted for a day at most. */
export function fastOf(auction: Pick<DeepReadonly<Auction>, 'fast'>, size: Measure<'mm'> | null): number {
  const young = size !== null && (size.likely ?? size.high) < YOUNG_MM;
  return young ? Math.min(YOUNG_FAST_DAYS, fastDays(auction)) : fastDays(auction);
}

/** True where the journal calls that kind of fish hard to catch. */
export function isHard(room: Room, species: string | null): boolean {
  return species !== null && room.stock.species.get(species)?.traits.hardToCatch === true;
}

function goingOf(auction: DatedAuction, answer: SaleAnswer): Going[] {
  return answer.lots
    .filter((lot) => lot.ready && !isLeftover(lot, answer))
    .map(({ stock, tank, species, free, size, lines }) => {
      return { stock, tank, species, count: free, fastDays: fastOf(auction, size), lines };
    });
}

/** What goes by a plan. */
export function goingBy({ lots }: Pick<SalePlan, 'lots'>): Going[] {
  return lots.map(({ name, tank, species, count, fastDays: days, lines }) => {
    return { stock: name, tank, species, count, fastDays: days, lines };
  });
}

/** Courses that run now, are clear by the auction, and then let fish go that no hold, sickness or quarantine keeps. */
function clearingCourses(room: Room, on: Day, { lots }: SaleAnswer): readonly Course[] {
  const open = new Set(lots.filter(({ blockers }) => !blockers.some(isOfWater)).map(({ tank }) => tank));
  return runningCourses(room, room.on).filter(
    ({ clear, treatment }) => clear <= on && treatment.tanks.some((tank) => open.has(tank)),
  );
}

function isOfWater({ kind }: Blocker): boolean {
  return kind === 'hold' || kind === 'sick' || kind === 'quarantine';
}

/** The line that says in so many words that a step was done. */
export function saidDone(room: Room, auction: DatedAuction, step: Step): LineRef | null {
  const words = doneWords(auction.name, step).toLowerCase();
  const line = room.chores.did.find(
    ({ action, day }) =>
      action.kind === 'own' && day >= auction.day && (action.text ?? '').trim().toLowerCase() === words,
  );
  return line === undefined ? null : lineOf(line.place);
}

function doneLine(room: Room, auction: DatedAuction, step: Step, going: readonly Going[]): LineRef | null {
  const said = saidDone(room, auction, step);
  if (said !== null) return said;
  if (step === 'settle') return soldLine(room, auction);
  if (step !== 'rocks out' && step !== 'rocks back') return null;
  const rocks = rocksOf(room, auction, going);
  return step === 'rocks out' ? rocks.out : rocks.back;
}

/** A sale written for that auction: whoever writes such lines by hand has settled it. */
function soldLine(room: Room, { name, on }: DatedAuction): LineRef | null {
  const sold = room.sale.sales.find((one) => one.auction === name || (one.day === on && /auction/i.test(one.to ?? '')));
  return sold === undefined ? null : lineOf(sold.place);
}
