/** Tanks of which nothing was said for a week: one row for all of them, ended by `all well`. */
import type { Day } from '../../core/day.ts';
import { onDay } from '../../core/interval.ts';
import { linesOf, type Place } from '../../core/span.ts';
import { dayWords, listWords, plural } from '../../core/words.ts';
import type { Room } from '../../state/draft.ts';
import { isKnownEmpty } from '../../state/places.ts';
import { isNewWater, liveTanks } from '../../state/tanks.ts';
import type { DueItem } from './item.ts';

/** Days without a word after which a tank is asked for (ours: a setting). */
export const SILENT_DAYS = 7;
/** Tanks that the row names; more are counted. */
const NAMED = 6;

interface Silent {
  readonly tank: string;
  readonly since: Day;
  readonly place: Place;
}

/** Tanks with no word for a week, longest silent first. A tank known to have lost its last fish is not asked for. */
function silentTanks(room: Room): Silent[] {
  return liveTanks(room)
    .filter(({ name }) => !isNewWater(name) && !isKnownEmpty(room, name))
    .map((tank): Silent => {
      const last = room.looks.last.get(tank.name);
      return { tank: tank.name, since: last?.day ?? tank.since, place: last?.place ?? tank.declared };
    })
    .filter(({ since }) => room.on - since >= SILENT_DAYS)
    .sort((a, b) => a.since - b.since);
}

export function silenceDue(room: Room): readonly DueItem[] {
  const silent = silentTanks(room);
  const [longest] = silent;
  if (longest === undefined) return [];
  const only = silent.length === 1;
  const names = silent.map(({ tank }) => tank);
  const told = names.length > NAMED ? [...names.slice(0, NAMED), `${names.length - NAMED} more`] : names;
  const lines = linesOf(silent.map(({ place }) => place));
  return [
    {
      id: 'room-silence',
      place: only ? longest.tank : 'room',
      what: `look at ${listWords(told)}`,
      kind: 'silence',
      // Never late: silence is no news, and no alarm that grows.
      due: onDay(room.on),
      weight: 0,
      why: only
        ? `no word of it since ${dayWords(longest.since, room.on)}`
        : `no word of ${plural(silent.length, 'tank')} for a week or more, the longest since ${dayWords(longest.since, room.on)}`,
      close: only ? `${longest.tank}: all well` : 'room: all well',
      putOffKey: 'silence',
      pressing: false,
      minutes: null,
      because: {
        rule: `a tank is asked for when no line spoke of it for ${SILENT_DAYS} days`,
        source: 'rule of ours',
        steps: silent.map(({ tank, since }) => `${tank}: last word ${dayWords(since, room.on)}`),
        lines,
      },
      lines,
    },
  ];
}
