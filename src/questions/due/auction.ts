/** The work before a coming auction, each thing on its day. */
import { onDay } from '../../core/interval.ts';
import type { Room } from '../../state/draft.ts';
import { openRigs } from '../../state/rigs.ts';
import { timetable, type Planned } from '../timetable.ts';
import { rowOf } from '../timetable/row.ts';
import { doneWords } from '../timetable/steps.ts';
import type { DueItem, DueSource } from './item.ts';
import type { Sequenced } from './order.ts';

export const auctionDue: DueSource = (room) =>
  timetable(room)
    .filter((planned) => planned.done === null && isAskedHere(room, planned))
    .map((planned, index) => item(room, planned, index));

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
