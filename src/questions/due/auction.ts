/** The work before a coming auction, each thing on its day. */
import { onDay } from '../../core/interval.ts';
import type { Room } from '../../state/draft.ts';
import { openRigs } from '../../state/rigs.ts';
import { usualPlan } from '../plan/usual.ts';
import { fastDays, goingBy, timetable, type DatedAuction, type Going, type Planned } from '../timetable.ts';
import { rowOf } from '../timetable/row.ts';
import { doneWords } from '../timetable/steps.ts';
import type { DueItem, DueSource } from './item.ts';
import type { Sequenced } from './order.ts';

/** Days before an auction from which its plan says what is caught; a day more is kept for fish that are hard to catch. */
const HANDLING_DAYS = 2;

export const auctionDue: DueSource = (room, days) =>
  timetable(room, (auction) => goingSoon(room, auction, days))
    .filter((planned) => planned.done === null && isAskedHere(room, planned))
    .map((planned, index) => item(room, planned, index));

/** What the plan takes, once its catch comes into sight: to plan takes longer than all the rest of the list. */
function goingSoon(room: Room, auction: DatedAuction, days: number): readonly Going[] | null {
  const ahead = auction.on - room.on;
  if (ahead < 0 || ahead > days + fastDays(auction) + HANDLING_DAYS) return null;
  return goingBy(usualPlan(room, auction));
}

/**
 * A last day for dosing that is past asks for nothing; clearances and rocks that are out have rows of their
 * own among treatments and temporary measures.
 */
function isAskedHere(room: Room, { step, day, going }: Planned): boolean {
  if (step === 'last dose') return day >= room.on;
  if (step !== 'rocks back') return step !== 'clearance';
  return !going.some(({ tank }) => openRigs(room, tank).some(({ kind }) => kind === 'rocks out'));
}

function item(room: Room, planned: Planned, sequence: number): DueItem & Sequenced {
  const { id, what, step, day, why, close, caution, because, lines } = rowOf(room, planned);
  return {
    id,
    place: 'room',
    what,
    kind: 'auction',
    due: onDay(day),
    weight: step === 'last dose' ? 0 : 1,
    why,
    close,
    ...(caution === null ? {} : { caution }),
    putOffKey: doneWords(planned.auction.name, step),
    pressing: false,
    minutes: null,
    because,
    lines,
    sequence,
  };
}
