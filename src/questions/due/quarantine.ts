/** Quarantines that can end. */
import { addDays, isoDay, type Day } from '../../core/day.ts';
import { onDay } from '../../core/interval.ts';
import { dayWords } from '../../core/words.ts';
import { bodiesIn } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { walkOrder } from '../../state/tanks.ts';
import { quarantineRow } from '../holds/otherrows.ts';
import { inQuarantine, type Kept } from '../holds/quarantines.ts';
import { heldBy } from '../holds/reach.ts';
import { sickIn } from '../holds/sickness.ts';
import type { DueItem, DueSource } from './item.ts';
import { LOOK_AGAIN } from './postponed.ts';

export const quarantineDue: DueSource = (room) =>
  walkOrder(room).flatMap((tank) => {
    const kept = inQuarantine(room, tank);
    return kept === null ? [] : [item(room, kept)];
  });

function item(room: Room, kept: Kept): DueItem {
  const { tank, since, until } = kept;
  const { id, close, because, lines } = quarantineRow(room, kept);
  const here = bodiesIn(room, tank);
  const who = here.length === 1 ? (here[0]?.name ?? 'them') : 'every fish';
  const clear = troubledUntil(room, tank);
  const regulated = here.some(
    (body) => body.species !== null && room.stock.species.get(body.species)?.traits.regulated === true,
  );
  return {
    id,
    place: tank,
    what:
      clear === null
        ? `look over ${who}, then end the quarantine`
        : 'quarantine over, but the tank is sick or held: keep them in',
    kind: 'quarantine',
    due: onDay(until),
    weight: 1,
    why: `${kept.anew ? 'the last came in on' : 'in since'} ${dayWords(since, room.on)}${kept.usual ? ', four weeks are usual' : ''}`,
    close: clear === null ? close : `${tank}: put off quarantine until ${isoDay(clear)}`,
    ...(regulated ? { caution: 'a regulated species: keeping, moving and selling it is a matter of local law' } : {}),
    putOffKey: 'quarantine',
    pressing: false,
    minutes: null,
    because,
    lines,
  };
}

/** The day until which sickness or a hold keeps them in, or null where neither does. */
function troubledUntil(room: Room, tank: string): Day | null {
  const held = heldBy(room, tank);
  const sick = sickIn(room, tank);
  if (held === null && sick === null) return null;
  const days = [held?.hold.clear ?? null, sick?.until ?? null].filter((day) => day !== null && day > room.on);
  return days.reduce<Day>((last, day) => (day !== null && day > last ? day : last), addDays(room.on, LOOK_AGAIN));
}
