/** A step before an auction in words: what to do, where, why, and the line that says that it is done. */
import type { Because } from '../../core/because.ts';
import { linesOf, type LineRef } from '../../core/span.ts';
import type { Day } from '../../core/day.ts';
import { dayWords, listWords, plural } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import { openRigs } from '../../state/rigs.ts';
import { USUAL_WAIT_DAYS } from '../holds/courses.ts';
import { rowId } from '../id.ts';
import type { SalePlan } from '../plan/plan.ts';
import { isLeftover } from '../sale/leftover.ts';
import { fastDays, goingBy, isHard, saidDone, timetableOf, type Going, type Planned } from '../timetable.ts';
import { CHECK_DAYS, doneWords, RULES, SOURCES, YOUNG_FAST_DAYS, YOUNG_MM, type Step } from './steps.ts';

export interface TimetableRow {
  readonly id: string;
  readonly auction: string;
  /** The auction's day. */
  readonly on: Day;
  readonly step: Step;
  readonly day: Day;
  readonly what: string;
  readonly why: string;
  readonly close: string;
  readonly caution: string | null;
  readonly done: boolean;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

/** Transport, said once an answer. */
const TRANSPORT_CAUTION =
  'count the hours from bagging to unpacking, 24 unless told; air, not oxygen, unless you have it; spiny or quarrelsome fish alone; permits are local law; never release fish, plants or water';

/** Every step for what a plan takes along; none where it is for no auction. */
export function timetableRows(room: Room, plan: SalePlan): readonly TimetableRow[] {
  const auction = plan.auction === null ? undefined : room.sale.auctions.get(plan.auction);
  const on = auction?.on ?? null;
  if (auction === undefined || on === null) return [];
  return timetableOf(room, { ...auction, on }, goingBy(plan)).map((planned) => rowOf(room, planned));
}

export function rowOf(room: Room, planned: Planned): TimetableRow {
  const { auction, step, day, going, courses, done } = planned;
  const lines = linesOf([
    auction.place,
    ...going.flatMap((one) => one.lines),
    ...courses.flatMap((course) => course.lines),
  ]);
  return {
    id: rowId(auction.name, step),
    auction: auction.name,
    on: auction.on,
    step,
    day,
    what: whatOf(planned),
    why: `${auction.name} ${auction.on < room.on ? 'was' : 'is'} on ${dayWords(auction.on, room.on)}; ${whyOf(room, planned)}`,
    close: closeOf(room, planned),
    caution: step === 'bag' || step === 'load' ? TRANSPORT_CAUTION : null,
    done: done !== null,
    because: {
      rule: RULES[step],
      source: SOURCES[step],
      steps: [
        `${auction.name}: ${dayWords(auction.on, room.on)}, so ${dayWords(day, room.on)} for this, ${plural(Math.abs(auction.on - day), 'day')} ${day > auction.on ? 'after' : 'before'}`,
        ...hardOf(room, planned).map((kind) => `${kind}: hard to catch by its species line, so a day more`),
        ...courses.map((course) => courseWords(room, course)),
        ...going.map(
          ({ stock, tank, count }) => `${stock} in ${tank}: ${String(count)} ${count === 1 ? 'goes' : 'go'}`,
        ),
        ...unsure(planned),
      ],
      lines,
    },
    lines,
  };
}

/**
 * Rocks that a line of their tanks takes out go back by one as well: a task that is done leaves them out. Once their day
 * is over and no line took any out, a line of the tanks would put nothing back.
 */
function closeOf(room: Room, { auction, step, going, day }: Planned): string {
  if (step === 'rocks out') return `${listWords(tanksOf(going))}: rocks out`;
  const isOut = going.some(({ tank }) => openRigs(room, tank).some(({ kind }) => kind === 'rocks out'));
  const asTask = (day < room.on && !isOut) || saidDone(room, auction, 'rocks out') !== null;
  if (step === 'rocks back' && going.length > 0 && !asTask) return `${listWords(tanksOf(going))}: rocks in`;
  return `room: did "${doneWords(auction.name, step)}"`;
}

function whatOf({ step, auction, going, courses }: Planned): string {
  const tanks = listWords(tanksOf(going));
  switch (step) {
    case 'last dose':
      return `last day to dose fish that go to ${auction.name}`;
    case 'clearance':
      return `clear of treatment, see whether they go: ${listWords(tanksInCourse(courses))}`;
    case 'check':
      return 'check counts and promises, choose the lots';
    case 'rocks out':
      return `rocks out for the catch: ${tanks}`;
    case 'catch':
      return `catch what goes: ${tanks}`;
    case 'rocks back':
      return `rocks back in: ${tanks}`;
    case 'fast':
      return `no more food for what goes: ${tanks}`;
    case 'fast young':
      return `no more food for the young that go: ${tanks}`;
    case 'bag':
      return `bag and label: ${listWords(going.map(({ stock, count }) => `${String(count)} ${stock}`))}`;
    case 'load':
      return 'load the boxes';
    case 'settle':
      return `write down what ${auction.name} brought: tankside settle ${auction.name}`;
  }
}

function whyOf(room: Room, planned: Planned): string {
  const { step, going, auction, courses } = planned;
  const fish = going.reduce((sum, { count }) => sum + count, 0);
  const hard = hardOf(room, planned);
  switch (step) {
    case 'last dose':
      return `clearance takes ${String(USUAL_WAIT_DAYS)} days`;
    case 'clearance':
      return listWords(courses.map((course) => courseWords(room, course)));
    case 'check':
      return checkWords(room, planned);
    case 'rocks out':
      return 'out no longer than the catch takes';
    case 'catch': {
      const why = hard.length === 0 ? '' : `, a day more since ${listWords(hard)} ${are(hard)} hard to catch`;
      return `the day before the fast${why}; ${plural(fish, 'fish', 'fish')} to catch`;
    }
    case 'rocks back':
      return 'what stays needs its hides';
    case 'fast':
      return `${plural(going[0]?.fastDays ?? fastDays(auction), 'day')} without food foul less water`;
    case 'fast young':
      return `under ${String(YOUNG_MM)} mm ${plural(going[0]?.fastDays ?? YOUNG_FAST_DAYS, 'day')} without food is enough`;
    case 'bag':
    case 'load':
      return `${plural(fish, 'fish', 'fish')}${auction.bagOf === null ? '' : `, bags of ${String(auction.bagOf)}`}`;
    case 'settle':
      return 'unsold fish have been out: which tank, and quarantine';
  }
}

function are(items: readonly string[]): string {
  return items.length === 1 ? 'is' : 'are';
}

function checkWords(room: Room, { answer, auction, day }: Planned): string {
  const ready = answer.lots.filter((lot) => lot.ready && !isLeftover(lot, answer));
  const fish = ready.reduce((sum, { free }) => sum + free, 0);
  const counting = [...new Set(answer.count.filter(({ unknown }) => !unknown).map(({ tank }) => tank))];
  const go = fish === 0 ? 'nothing can go yet' : `${String(fish)} fish in ${plural(ready.length, 'lot')} can go`;
  const more = counting.length === 0 ? '' : `; counting ${listWords(counting)} may free more`;
  const old = ready.filter((lot) => lot.stale).map(({ stock, tank }) => `${stock} in ${tank}`);
  const again = old.length === 0 ? '' : `; count ${listWords(old)} again: some die unseen`;
  const wait = plural(answer.lots.filter((lot) => !lot.ready).length, 'lot');
  return `${go}, ${wait} cannot${more}${again}${timeWords(room, auction.on, day)}`;
}

/** How long there is to mend what stands in the way: less than planned once the day for it is past. */
function timeWords(room: Room, auction: Day, day: Day): string {
  if (room.on <= day) return `; ${String(CHECK_DAYS)} days leave time to mend it`;
  const left = auction - room.on;
  return left < 0
    ? ''
    : `; ${left === 0 ? 'no day is' : left === 1 ? '1 day is' : `${String(left)} days are`} left to mend it`;
}

function courseWords(room: Room, { treatment, clear }: Planned['courses'][number]): string {
  return `${listWords(treatment.tanks)} clear of ${treatment.product} from ${dayWords(clear, room.on)}`;
}

function tanksInCourse(courses: Planned['courses']): readonly string[] {
  return [...new Set(courses.flatMap(({ treatment }) => treatment.tanks))];
}

function tanksOf(going: readonly Going[]): readonly string[] {
  return [...new Set(going.map(({ tank }) => tank))];
}

/** Species that are hard to catch, where the step is a day earlier for them. */
function hardOf(room: Room, { step, going }: Planned): string[] {
  if (step !== 'catch' && step !== 'rocks out') return [];
  return [...new Set(going.flatMap(({ species }) => (species !== null && isHard(room, species) ? [species] : [])))];
}

function unsure({ answer }: Planned): string[] {
  return answer.lots
    .filter(({ ready }) => !ready)
    .map(({ stock, tank, blockers }) => `${stock} in ${tank} cannot: ${blockers.map(({ why }) => why).join('; ')}`);
}
