/** A look that measures: lengths as they were told, the later of one moment in place of the earlier. */
import type { Interval } from '../core/interval.ts';
import type { Problem } from '../core/problem.ts';
import type { Place } from '../core/span.ts';
import { rangeWords } from '../core/words.ts';
import type { EventOf } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import type { Body } from './stock.ts';
import { swamUnsaid } from './swamunsaid.ts';
import { resolveFish } from './who.ts';

/** No fish that is kept in such tanks is longer, mm; where the species says how long it grows, half as much again is too long (ours). */
const LONGEST = 1000;
const TOO_LONG = 1.5;

/** A length that no such fish can have: told, and not counted. */
function impossible(draft: Draft, body: Body, event: EventOf<'sized'>): Problem | null {
  const species = body.species === null ? undefined : draft.stock.species.get(body.species);
  const adult = species?.traits.adult ?? null;
  const most = adult === null ? LONGEST : TOO_LONG * adult.high;
  const wrong = event.sizes.values.find(({ low, high }) => high <= 0 || low > most);
  if (wrong === undefined) return null;
  const said = rangeWords(wrong);
  const { of } = event.sizes;
  const word = of === 'bulk' ? 'size' : of === 'sample' ? 'sizes' : of;
  const why =
    wrong.high <= 0
      ? 'a fish has some length'
      : adult === null
        ? 'none is so long'
        : `${body.species ?? 'they'} grow to ${rangeWords(adult)} mm`;
  return {
    kind: 'impossible-length',
    weight: 'stops',
    says: `${said} mm cannot be the length of ${body.name}: ${why}`,
    write: `the length in mm, or with its unit: ${body.name} ${word} ${String(wrong.low > 0 ? wrong.low / 10 : 22)} mm`,
    at: event.place,
    also: wrong.high > 0 && species?.said.adult ? [species.said.adult] : [],
  };
}

/** Longer than this many times the longest parent of that kind that was told of is doubted (ours). */
const DOUBTED = 2;

/** A length far beyond that of every grown fish of its kind in the room: it counts, and is asked about. */
function doubtful(draft: Draft, body: Body, event: EventOf<'sized'>): Problem | null {
  const species = body.species === null ? undefined : draft.stock.species.get(body.species);
  if (species === undefined || species.traits.adult !== null) return null;
  const longest = longestOf(draft, body.species);
  const long = event.sizes.values.find(({ low }) => longest !== null && low > DOUBTED * longest.size.high);
  if (long === undefined || longest === null) return null;
  return {
    kind: 'odd-length',
    weight: 'doubt',
    says: `${rangeWords(long)} mm for ${body.name}: the longest ${species.name} with a length is ${rangeWords(longest.size)} mm, of ${longest.name}`,
    write: 'the length in mm, or with its unit; else how long they grow, in the line of the species: adult 120 mm',
    at: event.place,
    also: [longest.declared],
  };
}

interface Grown {
  readonly name: string;
  readonly size: Interval;
  readonly declared: Place;
}

/** The longest breeder of a species of which a length was told; the first of several. */
function longestOf(draft: Draft, species: string | null): Grown | null {
  let longest: Grown | null = null;
  for (const group of draft.stock.groups.values()) {
    if (group.species !== species) continue;
    for (const { size } of group.members) {
      if (size === null || (longest !== null && size.high <= longest.size.high)) continue;
      longest = { name: group.name, size, declared: group.declared };
    }
  }
  return longest;
}

/** `largest 30 mm`. A later line of the same moment replaces an earlier one of the same fish and kind of length. */
export function sized(draft: Draft, event: EventOf<'sized'>): void {
  const found = resolveFish(draft, event, event.fish);
  if (!found) return;
  const { body } = found;
  const { tank } = found;
  const wrong = impossible(draft, body, event);
  if (wrong !== null) {
    draft.problems.push(wrong);
    return;
  }
  const odd = doubtful(draft, body, event);
  if (odd !== null) draft.problems.push(odd);
  for (const seen of body.sizes) {
    const same = seen.day === event.day && seen.minute === event.minute && seen.tank === tank;
    if (same && seen.sizes.of === event.sizes.of) seen.replaced = true;
  }
  swamUnsaid(draft, body, event);
  const { day, minute, sizes, place } = event;
  body.sizes.push({ day, minute, tank, sizes, place, replaced: false });
  body.lines.push(place);
}
