/** The work before a coming auction, each thing on its day. */
import { onDay } from '../../core/interval.ts';
import { linesOf } from '../../core/span.ts';
import { dayWords, listWords, plural } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import { USUAL_WAIT_DAYS } from '../holds/courses.ts';
import { rowId } from '../id.ts';
import { doneWords, timetable, USUAL_FAST_DAYS, type Planned, type Step } from '../sale/timetable.ts';
import type { DueItem, DueSource } from './item.ts';

export const auctionDue: DueSource = (room) =>
  timetable(room)
    .filter(({ done, step, day }) => done === null && !(step === 'last dose' && day < room.on))
    .map((planned) => item(room, planned));

/** Transport, said once an answer. */
const TRANSPORT_CAUTION =
  'count the hours from bagging to unpacking, 24 unless told; air, not oxygen, unless you have it; spiny or quarrelsome fish alone; permits are local law; never release fish, plants or water';

function item(room: Room, planned: Planned): DueItem {
  const { auction, on, step, day, lots } = planned;
  const tanks = [...new Set(lots.map(({ tank }) => tank))];
  const lines = linesOf([auction.place, ...lots.flatMap((lot) => lot.lines)]);
  return {
    id: rowId(auction.name, step),
    place: 'room',
    what: whatOf(planned, tanks),
    kind: 'auction',
    due: onDay(day),
    weight: step === 'last dose' ? 0 : 1,
    why: `${auction.name} is on ${dayWords(on, room.on)}; ${whyOf(planned)}`,
    close: `room: did "${doneWords(auction.name, step)}"`,
    ...(step === 'bag' || step === 'load' ? { caution: TRANSPORT_CAUTION } : {}),
    putOffKey: doneWords(auction.name, step),
    pressing: false,
    minutes: null,
    because: {
      rule: RULES[step],
      source: SOURCES[step],
      steps: [
        `${auction.name}: ${dayWords(on, room.on)}, so ${dayWords(day, room.on)} for this, ${plural(on - day, 'day')} before`,
        ...lots.map((lot) => `${lot.stock} in ${lot.tank}: ${String(lot.free)} can go`),
        ...unsure(planned),
      ],
      lines,
    },
    lines,
  };
}

function whatOf({ step, auction, lots }: Planned, tanks: readonly string[]): string {
  switch (step) {
    case 'last dose':
      return `last day to dose fish that go to ${auction.name}`;
    case 'check':
      return 'check counts and promises, settle the lots';
    case 'catch':
      return `rocks out, catch what goes: ${listWords(tanks)}`;
    case 'fast':
      return `no more food for what goes: ${listWords(tanks)}`;
    case 'bag':
      return `bag and label: ${listWords(lots.map(({ stock, free }) => `${String(free)} ${stock}`))}`;
    case 'load':
      return 'load the boxes';
  }
}

function whyOf(planned: Planned): string {
  const { step, lots, answer, auction } = planned;
  const fish = lots.reduce((sum, { free }) => sum + free, 0);
  switch (step) {
    case 'last dose':
      return `clearance takes ${String(USUAL_WAIT_DAYS)} days`;
    case 'check': {
      const wait = answer.lots.length - lots.length;
      const counting = [...new Set(answer.count.filter(({ sure }) => sure > 1).map(({ tank }) => tank))];
      const go = fish === 0 ? 'nothing can go yet' : `${String(fish)} fish in ${plural(lots.length, 'lot')} can go`;
      const more = counting.length === 0 ? '' : `; counting ${listWords(counting)} may free more`;
      return `${go}, ${plural(wait, 'lot')} cannot${more}`;
    }
    case 'catch':
      return `the day before the fast; ${String(fish)} fish can go`;
    case 'fast':
      return `${plural(Math.ceil(auction.fast?.high ?? USUAL_FAST_DAYS), 'day')} without food foul less water`;
    case 'bag':
    case 'load':
      return `${plural(lots.length, 'lot')}${auction.bagOf === null ? '' : `, bags of ${String(auction.bagOf)}`}`;
  }
}

function unsure({ answer }: Planned): string[] {
  return answer.lots
    .filter(({ ready }) => !ready)
    .map(({ stock, tank, blockers }) => `${stock} in ${tank} cannot: ${blockers.map(({ why }) => why).join('; ')}`);
}

const RULES: Readonly<Record<Step, string>> = {
  'last dose': 'treated fish go nowhere until their clearance, so the last dose is that long before the auction',
  check: 'a week before, count what is unsure and settle reservations, so that no fish is promised twice',
  catch: 'caught on the day before the fast, a day earlier where a species is hard to catch',
  fast: 'fish are bagged with empty guts',
  bag: 'bags last their hours from the moment of bagging',
  load: 'boxes are loaded last',
};

const SOURCES: Readonly<Record<Step, string>> = {
  'last dose': 'ours: 14 days from the last dose, unless a treatment says otherwise',
  check: 'ours',
  catch: 'common practice, no source',
  fast: 'the auction line, else 48 hours: common practice, no source',
  bag: 'common practice, no source',
  load: 'common practice, no source',
};
