/**
 * Species, groups, broods, and where their fish are: the types. Counts are intervals; a fish enters by
 * birth, purchase or merge only. What fills them: `stockhomes.ts` and `broods.ts`; readers: `bodies.ts`.
 */
import type { Day } from '../core/day.ts';
import type { DayWindow, Interval } from '../core/interval.ts';
import type { Measure, Price } from '../core/quantity.ts';
import type { Place } from '../core/span.ts';
import type { Sizes, SpeciesTraits, Stage } from '../journal/event.ts';
import type { GroupKind, Sex } from '../journal/subject.ts';
import type { Dispute } from './quarrel.ts';
import type { Sexes } from './sexes.ts';

export interface Stock {
  species: Map<string, Species>;
  groups: Map<string, Group>;
  broods: Map<string, Brood>;
  /** Those broods of which some may be left: all others are history, and a long journal has many. */
  living: Map<string, Brood>;
  /** The brood that a clause began, by the key of the clause: the last, where it began several. */
  begunAt: Map<string, Brood>;
  /** Every move of fish, oldest first, for holds and history. */
  moves: Move[];
  /** Days on which the largest or the smallest of a body were moved, by body. */
  picked: Map<string, Day[]>;
  /** Tanks of which a line told that fish came, went or died there. */
  stocked: Set<string>;
  /** Brood names written anywhere in the journal: unwritten names never take one of these. */
  takenNames: Set<string>;
  /** Groups whose fish were last seen chasing their own young. */
  chasedFry: Map<string, { day: Day; place: Place }>;
  /** The fish that the line being folded named: they carry into its later clauses. */
  named: Named | null;
}

export interface Species {
  name: string;
  traits: SpeciesTraits;
  day: Day;
  place: Place;
  /** The line that says each of the traits, which may be a later one than that of the name; null where none does. */
  said: TraitLines;
}

export type TraitLines = { readonly [K in keyof SpeciesTraits]: Place | null };

/** Which fish a clause named outright, and in which line. */
export interface Named {
  file: string;
  line: number;
  body: string;
}

/** The most fish that sure facts allow, and the line that says so. */
export interface Ceiling {
  count: number;
  place: Place;
}

/** What became of fish that are no longer there. */
export interface Gone {
  /** `joined`: alive, now of another group. */
  how: 'died' | 'missing' | 'eaten' | 'culled' | 'sold' | 'gave away' | 'joined';
  count: Interval;
  /** All that were there: then the number is only what was believed. */
  whole: boolean;
  day: Day;
  tank: string | null;
  place: Place;
}

/** A length as it was written; a later line of the same moment, tank and fish replaces it. */
export interface SizeSeen {
  day: Day;
  minute: number | null;
  tank: string | null;
  sizes: Sizes;
  place: Place;
  replaced: boolean;
}

/** A count as it was written. */
export interface CountSeen {
  day: Day;
  minute: number | null;
  tank: string | null;
  count: Interval;
  sure: boolean;
  place: Place;
  /** A later count of the same moment stands in its place; this one is history. */
  replaced: boolean;
  /** All of them together once this count was taken in. */
  total: Interval;
}

/** How many there are: by tank, together, and the ceilings that sure facts set. */
export interface Tally {
  /** Fish by tank: only tanks that may still hold some. */
  parts: Map<string, Interval>;
  /** All of them, an interval of its own: never the sum of its parts, each tightens the other. */
  total: Interval;
  /** By tank; a tank without one is bounded by guesses alone. */
  ceilings: Map<string, Ceiling>;
  /** For all of them together. */
  ceiling: Ceiling | null;
}

/** What every body of fish has: the grown fish of a group, or a brood. */
export interface Body extends Tally {
  name: string;
  species: string | null;
  /** What became of the others. */
  gone: Gone[];
  sizes: SizeSeen[];
  counts: CountSeen[];
  /** Every line about them, oldest first. */
  lines: Place[];
}

export interface Group extends Body {
  kind: GroupKind;
  day: Day;
  declared: Place;
  home: string | null;
  members: Fish[];
  /** Where nobody tells them apart: how many of each sex lines counted last; null where they leave any open. */
  sexes: Sexes | null;
  line: string | null;
  from: string | null;
  parentsFrom: string[];
  born: DayWindow | null;
  bond: 'bonded' | 'split up' | 'resting' | 'unsaid';
  bondSince: { day: Day; place: Place } | null;
  /** Said to be bonded, and not split up or re-paired since: what is left when a rest is over. */
  bonded: { day: Day; place: Place } | null;
  /** Last time that its fish were moved, or a mate came new or back: spawning waits after that. */
  upset: { day: Day; how: 'moved' | 'new mate' | 'member back'; place: Place } | null;
  /** The last day on which a move parted male and female; null where none did. */
  partedOn: Day | null;
  /** When male and female came together after the group was declared, oldest first. */
  together: { day: Day; how: 'new mate' | 'back'; place: Place }[];
  /** Oldest first; the last may be open. */
  disputes: Dispute[];
  /** Broods by name, oldest first. */
  broods: string[];
  /** Spawning that was looked for or suspected, and not yet settled. */
  suspected: { day: Day; kind: 'about to spawn' | 'maybe'; mother: string | null; place: Place }[];
  /** Last `no eggs`, for windows. */
  noEggs: { day: Day; mother: string | null; place: Place } | null;
  holding: { day: Day; mother: string | null; place: Place } | null;
}

/** One grown fish of a group that can be told apart. */
export interface Fish {
  sex: Sex | null;
  name: string | null;
  size: Measure<'mm'> | null;
  tank: string | null;
  gone: { how: string; day: Day; place: Place } | null;
  /** Set for one that came later as a new mate: when, and of which group or brood it was. */
  joined?: { day: Day; from: string | null; place: Place };
}

export interface Brood extends Body {
  /** The group that spawned it; null for a brood given without one. */
  group: string | null;
  /** The female, where the line says which; several names where it may be any of them. */
  mothers: string[];
  /** Set where stocks were mixed: from then on "one of these". */
  oneOf: string[];
  suspected: boolean;
  laid: DayWindow;
  hatched: DayWindow | null;
  swam: DayWindow | null;
  released: DayWindow | null;
  looks: { day: Day; stage: Stage; count: Interval | null; when: DayWindow | null; place: Place }[];
  /** Seen laid, or found within a stated window; else worked back from what was seen. */
  laidKnown: 'seen' | 'bounded' | 'cast back';
  /** No male on record can have been there when they were laid: until they hatch nobody knows that they are fertile. */
  unmated: boolean;
  /** Days in its window of laying on which somebody wrote of its tank and of no eggs: they move the likely day alone. */
  quiet: Day[];
  /** Their first tank, where the parents are. */
  natal: string | null;
  /** Tanks that some of them were moved out of, each with the last day. */
  left: Map<string, Day>;
  /** Eggs as laid, where anybody guessed. */
  eggs: Interval | null;
  /** Of those, how many went white. */
  white: Interval | null;
  /** First net: from then on a keeper could count them. */
  moved: boolean;
  ended: { how: 'gone' | 'mixed' | 'eggs gone'; day: Day; place: Place } | null;
  price: Price | null;
}

/** A move of fish from one tank to another, for holds and history. */
export interface Move {
  day: Day;
  minute: number | null;
  body: string;
  from: string | null;
  to: string;
  count: Interval;
  /** A number that the line writes, or a word for what was there. */
  as: 'number' | 'half' | 'all';
  /** `largest`: from then on neither part has the sizes of the whole. */
  which: 'largest' | 'smallest' | 'any';
  with: string | null;
  place: Place;
}
