/** What was done to a water of late: changes, and doses with what can be left of each after the changes since. */
import type { Day } from '../core/day.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Place } from '../core/span.ts';
import type { Dose } from '../journal/event.ts';
import { shareOf } from '../state/done.ts';
import type { Room } from '../state/draft.ts';
import { holderOf, loopOf } from '../state/tanks.ts';
import { liveVolume, loopVolume } from '../state/volume.ts';
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
  /** The day on which the tank that it was given to, off the loop then, came back with it; null for all else. */
  readonly backOn: Day | null;
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
  return lately(room, body, dosesOf(room), SALT_LASTS)
    .map((one) => ({ ...one, left: leftOf(room, body, one.day), backOn: null }))
    .filter((one) => isTold(room, one));
}

/**
 * Doses that went into a tank while it was off the loop, once it shares the loop's water again: of what was left
 * in it then as much as its litres are of the loop's, less the changes of the loop since.
 */
export function dosesBack(room: Room, body: WaterBody): readonly Given[] {
  if (body.kind !== 'loop') return [];
  return since(dosesOf(room), room.on - SALT_LASTS + 1)
    .flatMap((one): Given[] => {
      const tank = holderOf(room, one.where);
      const backOn = backOnLoop(room, body.name, tank, one);
      return backOn === null ? [] : [{ ...one, backOn, left: leftBack(room, body, { tank, from: one.day, backOn }) }];
    })
    .filter((one) => isTold(room, one));
}

/** Salt of a course is told of till little of it can be left, all else for some weeks. */
function isTold(room: Room, { day, product, treated, left }: Given): boolean {
  return day > room.on - LATELY || (treated && SALT.test(product) && (left ?? 1) >= LITTLE_LEFT);
}

type Dosed = Omit<Given, 'left' | 'backOn'>;

/** Every dose, those of treatments among them, oldest first. */
function dosesOf(room: Room): readonly Dosed[] {
  const dosed = since(room.water.doses, room.on - LATELY + 1).map((dose) => ({ ...dose, treated: false }));
  const treated = room.health.treatments.flatMap(({ given, where, tanks, product }) =>
    given.map(({ day, dose, place }) => ({ where, tanks, product, dose, day, minute: null, place, treated: true })),
  );
  return [...dosed, ...treated].toSorted(byDay);
}

function byDay(a: { readonly day: number }, b: { readonly day: number }): number {
  return a.day - b.day;
}

/** The first day on which a tank that did not share the loop's water at a dose shares it again. */
function backOnLoop(room: Room, loop: string, tank: string, { day, minute }: Dosed): Day | null {
  const plumbed = room.plumbing.tanks.get(tank)?.plumbed;
  if (plumbed === undefined || loopOf(room, tank, day, minute) === loop) return null;
  return (
    plumbed
      .flatMap((one) => (one.until === null ? [one.day] : [one.day, one.until.day]))
      .filter((one) => one >= day && one <= room.on)
      .toSorted((a, b) => a - b)
      .find((one) => loopOf(room, tank, one) === loop) ?? null
  );
}

function leftBack(
  room: Room,
  body: WaterBody,
  { tank, from, backOn }: { readonly tank: string; readonly from: Day; readonly backOn: Day },
): number | null {
  const own = liveVolume(room, tank).litres;
  const whole = loopVolume(room, body.name, backOn);
  if (own === null || whole === null) return null;
  // At most: as if this tank held most, and all others least.
  const mixed = own.high / (own.high + Math.max(0, whole.low - own.low));
  const alone = leftOf(room, { name: tank, kind: 'tank', tanks: [tank] }, from, backOn);
  return mixed * (alone ?? 1) * (leftOf(room, body, backOn) ?? 1);
}

/**
 * The changes since a day dilute what was there then: at most the product of what each leaves. A change of the same
 * day may have been before, and one of unknown litres may have been small: neither counts.
 */
function leftOf(room: Room, body: WaterBody, from: Day, to: Day = room.on): number | null {
  const shares = lately(room, body, room.water.changes, room.on - from)
    .filter((change) => change.day <= to)
    .flatMap((change) => shareOf(room, change.amount, change.where, body.name, change.day) ?? []);
  return shares.length === 0 ? null : shares.reduce((left, share) => left * (1 - share), 1);
}
