/** Live foods: jars by generation, brine shrimp hatches, and what was fed. */
import type { Homes } from './home.ts';
import type { Day } from '../core/day.ts';
import type { Measure } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';
import type { EventBase } from '../journal/event.ts';
import type { Draft } from './draft.ts';
import { placesOf } from './places.ts';
import { whereOf } from './where.ts';

export interface Cultures {
  jars: Map<string, Jar>;
  hatches: { where: string; grams: Measure<'g'> | null; of: string; day: Day; minute: number | null; place: Place }[];
  /** A line about fish that live in several tanks gives one for each tank. */
  feeds: { where: string; food: string; grams: Measure<'g'> | null; day: Day; place: Place }[];
}

export interface Jar {
  name: string;
  of: string;
  declared: Place;
  day: Day;
  /** The generation in the jar now: its last `started`, or the split that filled it. Null until then. */
  started: { day: Day; place: Place } | null;
  /** Harvests of every generation, oldest first. */
  harvests: { day: Day; place: Place }[];
  /** Set from `sour` until it is started again. */
  sour: { day: Day; place: Place } | null;
  /** Every time that it was started, oldest first. */
  starts: { day: Day; from: string | null; place: Place }[];
}

export const CULTURES_HOMES: Homes<
  'culture declared' | 'culture started' | 'culture harvested' | 'culture split' | 'culture sour' | 'hatch set' | 'fed'
> = {
  'culture declared': (draft, event) => {
    const known = draft.cultures.jars.get(event.culture);
    if (known) known.of = event.of;
    else draft.cultures.jars.set(event.culture, newJar(event.culture, event.of, event));
  },
  'culture started': (draft, event) => {
    const jar = jarOf(draft, event);
    if (jar) start(jar, event.from ?? null, event);
  },
  'culture harvested': (draft, event) => {
    jarOf(draft, event)?.harvests.push({ day: event.day, place: event.place });
  },
  'culture split': (draft, event) => {
    const from = jarOf(draft, event);
    if (!from) return;
    const to = draft.cultures.jars.get(event.to) ?? newJar(event.to, from.of, event);
    draft.cultures.jars.set(to.name, to);
    start(to, from.name, event);
  },
  'culture sour': (draft, event) => {
    const jar = jarOf(draft, event);
    if (jar) jar.sour = { day: event.day, place: event.place };
  },
  'hatch set': (draft, event) => {
    const { day, minute, place, grams, of } = event;
    draft.cultures.hatches.push({ where: whereOf(event.subject), grams, of, day, minute, place });
  },
  fed: (draft, event) => {
    const { day, place, food } = event;
    const tanks = placesOf(draft, event.subject);
    const grams = event.grams && tanks.length > 1 ? shareOf(event.grams, tanks.length) : event.grams;
    for (const where of tanks) draft.cultures.feeds.push({ where, food, grams, day, place });
  },
};

/** What fish in several tanks were fed goes to each in equal parts, for nobody says more. */
function shareOf({ low, likely, high }: Measure<'g'>, parts: number): Measure<'g'> {
  return { unit: 'g', low: low / parts, likely: likely === null ? null : likely / parts, high: high / parts };
}

function newJar(name: string, of: string, event: EventBase): Jar {
  return {
    name,
    of,
    declared: event.place,
    day: event.day,
    started: null,
    harvests: [],
    sour: null,
    starts: [],
  };
}

function start(jar: Jar, from: string | null, event: EventBase): void {
  jar.started = { day: event.day, place: event.place };
  jar.sour = null;
  jar.starts.push({ day: event.day, from, place: event.place });
}

function jarOf(draft: Draft, event: EventBase): Jar | null {
  const jar = draft.cultures.jars.get(whereOf(event.subject));
  if (jar) return jar;
  draft.problems.push({
    kind: 'unknown-culture',
    weight: 'stops',
    says: `no culture is called ${whereOf(event.subject)} by that day`,
    write: `culture ${whereOf(event.subject)}: microworm`,
    at: event.place,
    also: [],
  });
  return null;
}
