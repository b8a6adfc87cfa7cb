/** What goes along with a female that changes tanks: eggs or wrigglers in her cave, young in her mouth. */
import type { EventBase, EventOf } from '../journal/event.ts';
import { reached } from './broodlife.ts';
import type { Draft } from './draft.ts';
import { noteMoved } from './moved.ts';
import { guildOf } from './stageclock.ts';
import type { Brood, Fish, Group } from './stock.ts';
import { moveFish } from './tally.ts';

const NEST = /cave|pot|slate|shell|leaf|egg|clutch|young|fry|brood|wriggler|stone|cone/iu;

/** Where fish of a group went, and with what. */
interface Way {
  readonly from: string | null;
  readonly to: string;
  readonly with: EventOf<'moved'>['with'];
}

/** Moves the broods that these fish of a group take along. */
export function takeAlong(draft: Draft, event: EventBase, group: Group, fish: readonly Fish[], way: Way): void {
  const { from, to } = way;
  const females = fish.filter((one) => one.sex !== 'male');
  if (from === null || females.length === 0) return;
  const here = group.broods
    .map((name) => draft.stock.living.get(name))
    .filter((brood) => brood !== undefined)
    .filter((brood) => brood.parts.has(from) && brood.ended === null && !reached(brood, 'swam'));
  const nest = way.with !== null && NEST.test(way.with);
  const going = nest ? here.filter((brood) => mayBeHers(brood, females)) : inMouth(draft, group, here, females);
  for (const brood of going) {
    const out = moveFish(draft, event, brood, from, to, 'all');
    if (out === null) continue;
    brood.lines.push(event.place);
    const { day, minute, place } = event;
    noteMoved(draft, {
      day,
      minute,
      body: brood.name,
      from,
      to,
      count: out,
      as: 'all',
      which: 'any',
      with: way.with,
      place,
    });
  }
}

function mayBeHers(brood: Brood, females: readonly Fish[]): boolean {
  return brood.mothers.length === 0 || females.some((one) => one.name === null || brood.mothers.includes(one.name));
}

/**
 * One mouthful to each female: first those that are surely hers, then the oldest that may be. Young that were
 * counted are out, whatever else was written.
 */
function inMouth(draft: Draft, group: Group, here: readonly Brood[], females: readonly Fish[]): readonly Brood[] {
  const mouth = guildOf(draft, group.species) === 'mouthbrooder';
  const held = here.filter(
    (brood) =>
      !brood.suspected &&
      (mouth || brood.looks.some(({ stage }) => stage === 'holding')) &&
      !brood.counts.some(({ sure }) => sure) &&
      mayBeHers(brood, females),
  );
  const sure = held.filter(({ mothers }) => mothers.length === 1);
  const others = held.filter((brood) => !sure.includes(brood));
  return [...sure, ...others].slice(0, Math.max(females.length, sure.length));
}
