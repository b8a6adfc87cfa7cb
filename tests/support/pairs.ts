/** Lines about pairs, short enough to read in a test. */
import { exactly } from '../../src/core/interval.ts';
import { measure } from '../../src/core/quantity.ts';
import type { Sign, SpeciesTraits } from '../../src/journal/event.ts';
import type { FishRef, GroupKind, Member, Sex } from '../../src/journal/subject.ts';
import type { Guild } from '../../src/core/guild.ts';
import type { Line } from './events.ts';
import { tank } from './events.ts';

const IMPLIED: FishRef = { kind: 'implied' };

export function member(name: string): Member {
  if (name === 'male' || name === 'female') return { sex: name, name: null };
  return { sex: null, name };
}

function fishOf(name: string | undefined): FishRef {
  return name === undefined ? IMPLIED : { kind: 'group', group: null, member: member(name) };
}

export function tankSet(on: string, name: string): Line {
  return [
    on,
    tank(name),
    {
      kind: 'tank declared',
      tank: name,
      size: null,
      nominal: measure('L', 100),
      live: null,
      plumbing: 'alone',
      filter: null,
      quarantine: null,
      inTank: null,
      heated: null,
      hides: null,
    },
  ];
}

const NO_TRAITS: SpeciesTraits = {
  latin: null,
  guild: null,
  saleAt: null,
  price: null,
  siblingSafe: null,
  hardToCatch: null,
  spiny: null,
  adult: null,
  temperature: null,
  ph: null,
  gh: null,
  regulated: null,
};

export function speciesSet(on: string, species: string, guild: Guild): Line {
  const traits = { ...NO_TRAITS, guild };
  return [on, { kind: 'species', species }, { kind: 'species declared', species, traits }];
}

interface GroupWords {
  readonly kind?: GroupKind;
  readonly species?: string;
  readonly males?: readonly (string | null)[];
  readonly females?: readonly (string | null)[];
  readonly count?: number;
  readonly from?: readonly string[];
}

/** `pair Rowan: krib; male; female; in A1`, or another kind with its fish named. */
export function groupSet(on: string, name: string, home: string, words: GroupWords = {}): Line {
  const told = (sex: Sex, names: readonly (string | null)[] = []): { member: Member; size: null }[] =>
    names.map((own) => ({ member: { sex, name: own }, size: null }));
  const count = words.count === undefined ? null : exactly(words.count);
  return [
    on,
    { kind: 'group', group: name, member: null },
    {
      kind: 'group declared',
      group: name,
      groupKind: words.kind ?? 'pair',
      species: words.species ?? 'krib',
      heads: count === null ? null : { total: count, males: null, females: null, young: null, as: 'counted' },
      members: [...told('male', words.males), ...told('female', words.females)],
      tank: home,
      age: null,
      size: null,
      line: null,
      from: null,
      price: null,
      parentsFrom: words.from ?? [],
    },
  ];
}

/** `A1: chasing, male on female`; `A1: Fern hiding` where a fish is named. */
export function sign(
  on: string,
  place: string,
  what: Sign,
  by?: 'male on female' | 'female on male',
  who?: string,
): Line {
  const [male, female] = [
    { sex: 'male', name: null },
    { sex: 'female', name: null },
  ] as const;
  const [doer, sufferer] = by === undefined ? [null, null] : by === 'male on female' ? [male, female] : [female, male];
  return [on, tank(place), { kind: 'dispute sign', fish: fishOf(who), sign: what, doer, sufferer }];
}

type Word =
  'made up' | 'calmer' | 'shimmying' | 'bonded' | 'split up' | 'resting' | 'member back' | 'about to spawn' | 'no eggs';

export function said(on: string, place: string, kind: Word, who?: string): Line {
  const fish = fishOf(who);
  const about = tank(place);
  switch (kind) {
    case 'made up':
      return [on, about, { kind, fish }];
    case 'calmer':
      return [on, about, { kind, fish }];
    case 'shimmying':
      return [on, about, { kind, fish }];
    case 'bonded':
      return [on, about, { kind, fish }];
    case 'split up':
      return [on, about, { kind, fish }];
    case 'resting':
      return [on, about, { kind, fish }];
    case 'member back':
      return [on, about, { kind, fish }];
    case 'about to spawn':
      return [on, about, { kind, fish }];
    case 'no eggs':
      return [on, about, { kind, fish }];
  }
}

export function movedTo(on: string, place: string, who: string, to: string): Line {
  const one = { total: exactly(1), males: null, females: null, young: null, as: 'counted' as const };
  return [
    on,
    tank(place),
    { kind: 'moved', fish: fishOf(who), count: one, which: 'any', to, with: null, restStay: false },
  ];
}

export function died(on: string, place: string, who: string): Line {
  const one = { total: exactly(1), males: null, females: null, young: null, as: 'counted' as const };
  return [on, tank(place), { kind: 'lost', fish: fishOf(who), count: one, how: 'died' }];
}

export function spawn(on: string, place: string, brood: string, who?: string, as: 'laid' | 'maybe' = 'laid'): Line {
  return [on, tank(place), { kind: 'spawned', fish: fishOf(who), as, brood, eggs: null }];
}

export function rigged(on: string, place: string, what: 'lights off' | 'divider', over = false): Line {
  if (over) return [on, tank(place), { kind: 'measure undone', measure: what }];
  return [on, tank(place), { kind: 'measure begun', measure: what, until: null, lasts: null, over: false, to: null }];
}
