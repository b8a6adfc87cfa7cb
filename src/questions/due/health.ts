/** Sickness that waits for an answer, catching sickness without a hold, and holds that can end. */
import { onDay } from '../../core/interval.ts';
import { dayWords, listWords, plural } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import { holdRow } from '../holds.ts';
import { sickRow } from '../holds/otherrows.ts';
import { openHolds, type HoldReach } from '../holds/reach.ts';
import { openSick, type OpenSick } from '../holds/sickness.ts';
import type { DueItem, DueSource } from './item.ts';

/** Sick fish, for the keeper's own sake. One wording, so that an answer prints it once. */
const SICK_CAUTION =
  'sick and held tanks last, with their own net; gloves over broken skin, and tell the doctor; what it is, a veterinarian says';

export const healthDue: DueSource = (room) => [
  ...askedOf(openSick(room)).map((open) => sickItem(room, open)),
  ...lastClear(openHolds(room)).map((hold) => holdItem(room, hold)),
];

/** One hold is enough for all that is catching in the same place: the row of the last of them asks for it. */
function askedOf(sick: readonly OpenSick[]): readonly OpenSick[] {
  const unheld = sick.filter(({ sick: { catching }, held }) => catching !== null && !held);
  return sick.filter((open) => {
    if (open.sick.catching === null) return true;
    return !open.held && unheld.findLast((one) => one.sick.where === open.sick.where) === open;
  });
}

/** One line ends every hold of a place: it is asked for once, when the last of them is clear. */
function lastClear(holds: readonly HoldReach[]): readonly HoldReach[] {
  const last = new Map<string, HoldReach>();
  for (const one of holds)
    if (one.clear > (last.get(one.hold.where)?.clear ?? -Infinity)) last.set(one.hold.where, one);
  return holds.filter((one) => last.get(one.hold.where) === one);
}

function sickItem(room: Room, open: OpenSick): DueItem {
  const { sick, beside } = open;
  const { id, close, because, lines } = sickRow(room, open);
  const seen = `${sick.text}, seen ${dayWords(sick.day, room.on)}`;
  const near = beside.length === 0 ? '' : `; ${plural(beside.length, 'tank')} on the same water`;
  return {
    id,
    place: sick.where,
    what: sick.catching === null ? 'say whether it is catching' : 'put it on hold',
    kind: 'health',
    due: onDay(sick.day),
    weight: 2,
    why:
      sick.catching === null
        ? // The other answer is a line of its own: two of them in one could not be jotted as they stand.
          `${seen}: not for sale until you say${near}; or jot ${sick.where}: not catching`
        : `${seen}: catching, and no hold is written${near}`,
    close,
    caution: SICK_CAUTION,
    putOffKey: null,
    pressing: false,
    minutes: null,
    because,
    lines,
  };
}

function holdItem(room: Room, hold: HoldReach): DueItem {
  const { id, place, text, clear, close, because, lines } = holdRow(room, hold);
  const tanks = hold.tanks.map(({ tank }) => tank);
  return {
    id,
    place,
    what: `look over every fish in ${tanks.length > 4 ? plural(tanks.length, 'tank') : listWords(tanks)}, then end the hold`,
    kind: 'health',
    due: onDay(clear),
    weight: 1,
    why: `${text}: no sign since ${dayWords(hold.lastSign.day, room.on)}; a new one starts the 28 days again`,
    close,
    caution: SICK_CAUTION,
    putOffKey: 'hold',
    pressing: false,
    minutes: null,
    because,
    lines,
  };
}
