/** What was done to a water of late: changes, and doses with what can be left of each after the changes since. */
import type { Day } from '../core/day.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Place } from '../core/span.ts';
import type { Dose } from '../journal/event.ts';
import { shareOf } from '../state/done.ts';
import type { Room } from '../state/draft.ts';
import { loopOf } from '../state/tanks.ts';
import { since } from '../state/when.ts';
import type { WaterBody } from './waters.ts';

/** Days back that changes and doses are told. */
const LATELY = 28;
/** Salt goes with the water alone: a treatment with it is told of for longer, till so little of it can be left (ours). */
const SALT_LASTS = 365;
const LITTLE_LEFT = 0.1;
/** Common salt, by what keepers and labels call it; other salts by their names are no common salt. */
const SALT = /^(?:(?:aquarium|cooking|kitchen|marine|pond|rock|sea|table) )?salt$|sodium chloride|\bnacl\b/iu;

export type Reached = DeepReadonly<{ where: string; tanks: string[]; day: Day; minute: number | null }>;

export type Given = Reached & {
  readonly product: string;
  readonly dose: DeepReadonly<Dose> | null;
  readonly place: DeepReadonly<Place>;
  /** Of a course of treatment. */
  readonly treated: boolean;
  /** The share of it that can be left at the most; null where no change of that water is known since. */
  readonly left: number | null;
};

/** What was done to this water of late; what was done to a tank while it was off the loop did nothing for the loop. */
export function lately<F extends Reached>(room: Room, body: WaterBody, facts: readonly F[], days = LATELY): F[] {
  const reaches = ({ where, tanks, day, minute }: F): boolean => {
    if (where === body.name || where === 'room') return true;
    if (body.kind === 'loop') return loopOf(room, where, day, minute) === body.name;
    return body.tanks.some((tank) => tanks.includes(tank));
  };
  return since(facts, room.on - days + 1).filter(reaches);
}

/** Doses that went into this water, those of treatments among them, oldest first. */
export function dosesIn(room: Room, body: WaterBody): readonly Given[] {
  const dosed = since(room.water.doses, room.on - LATELY + 1).map((dose) => ({ ...dose, treated: false }));
  const treated = room.health.treatments.flatMap(({ given, where, tanks, product, dose }) =>
    given.map(({ day, place }, index) => {
      return { where, tanks, product, dose: index === 0 ? dose : null, day, minute: null, place, treated: true };
    }),
  );
  return lately(room, body, [...dosed, ...treated].toSorted(byDay), SALT_LASTS)
    .map((one) => ({ ...one, left: leftOf(room, body, one) }))
    .filter(
      ({ day, product, treated: course, left }) =>
        day > room.on - LATELY || (course && SALT.test(product) && (left ?? 1) >= LITTLE_LEFT),
    );
}

function byDay(a: { readonly day: number }, b: { readonly day: number }): number {
  return a.day - b.day;
}

/**
 * The changes since a dose dilute what is left of it: at most the product of what each leaves. A change of the same
 * day may have been before the dose, and one of unknown litres may have been small: neither counts.
 */
function leftOf(room: Room, body: WaterBody, { day }: Reached): number | null {
  const shares = lately(room, body, room.water.changes, room.on - day).flatMap(
    (change) => shareOf(room, change.amount, change.where, body.name, change.day) ?? [],
  );
  return shares.length === 0 ? null : shares.reduce((left, share) => left * (1 - share), 1);
}
