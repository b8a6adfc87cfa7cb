/** A small room for tests of the fish: two tanks, a pair of cave spawners, and lines by hand. */
import { isoDay } from '../../src/core/day.ts';
import type { Guild } from '../../src/core/guild.ts';
import type { DayWindow } from '../../src/core/interval.ts';
import type { Heads, HowMany, LengthOf, SpeciesTraits, Stage } from '../../src/journal/event.ts';
import type { FishRef, GroupKind, Sex, Subject } from '../../src/journal/subject.ts';
import { room, tank, type Line } from './events.ts';

export const plain = {
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
export const implied = { kind: 'implied' } as const;
export const about = (n: number): Heads => ({
  total: { low: n * 0.75, likely: n, high: n * 1.25 },
  males: null,
  females: null,
  young: null,
  as: 'about',
});
export const tankLine = (name: string): Line => [
  '2026-01-04',
  tank(name),
  {
    kind: 'tank declared',
    tank: name,
    size: null,
    nominal: null,
    live: null,
    plumbing: 'alone',
    filter: null,
    quarantine: null,
    inTank: null,
    heated: null,
    hides: null,
  },
];
export const setUp: Line[] = [
  tankLine('A1'),
  tankLine('C1'),
  ['2026-01-04', room, { kind: 'species declared', species: 'krib', traits: { ...plain, guild: 'cave spawner' } }],
  [
    '2026-01-04',
    room,
    {
      kind: 'group declared',
      group: 'Rowan',
      groupKind: 'pair',
      species: 'krib',
      heads: null,
      members: [
        { member: { sex: 'male', name: null }, size: null },
        { member: { sex: 'female', name: null }, size: null },
      ],
      tank: 'A1',
      age: null,
      size: null,
      line: null,
      from: null,
      price: null,
      parentsFrom: [],
    },
  ],
];
export const sample: Line[] = [
  ...setUp,
  ['2026-02-02', tank('A1'), { kind: 'spawned', fish: implied, as: 'laid', brood: null, eggs: about(90) }],
  ['2026-02-05', tank('A1'), { kind: 'stage seen', fish: implied, stage: 'wrigglers', count: null, brood: null }],
  [
    '2026-02-10',
    tank('A1'),
    { kind: 'stage seen', fish: implied, stage: 'free-swimming', count: about(70), brood: null },
  ],
  [
    '2026-03-10',
    tank('A1'),
    {
      kind: 'moved',
      fish: { kind: 'brood', brood: 'Rowan-1' },
      count: about(45),
      which: 'any',
      to: 'C1',
      with: null,
      restStay: true,
    },
  ],
];

const mm = (value: number) => ({ unit: 'mm', low: value, likely: value, high: value }) as const;
export const heads = (n: number): Heads => ({
  total: { low: n, likely: n, high: n },
  males: null,
  females: null,
  young: null,
  as: 'counted',
});
export const named = (brood: string) => ({ kind: 'brood', brood }) as const;

/** `species …: sale at 35 mm or 16 weeks`. */
export const soldAt = (species: string, size: number, weeks: number, both = false): Line => [
  '2026-01-05',
  room,
  {
    kind: 'species declared',
    species,
    traits: {
      ...plain,
      saleAt: { size: mm(size), age: { unit: 'days', low: weeks * 7, likely: weeks * 7, high: weeks * 7 }, both },
    },
  },
];
/** `largest 12 mm`. */
export const largest = (on: string, where: string, size: number): Line => [
  on,
  tank(where),
  { kind: 'sized', fish: implied, sizes: { of: 'largest', values: [mm(size)] } },
];

/** A group of fish in a tank: `pair`, `trio`, `harem`, `colony`, `group`. */
export const group = (
  name: string,
  groupKind: GroupKind,
  where: string,
  more: { species?: string; count?: Heads; members?: readonly (readonly [Sex, string | null])[]; on?: string } = {},
): Line => [
  more.on ?? '2026-01-04',
  room,
  {
    kind: 'group declared',
    group: name,
    groupKind,
    species: more.species ?? 'krib',
    heads: more.count ?? null,
    members: (more.members ?? []).map(([sex, own]) => ({ member: { sex, name: own }, size: null })),
    tank: where,
    age: null,
    size: null,
    line: null,
    from: null,
    price: null,
    parentsFrom: [],
  },
];
export const pairOf = (name: string, where: string, species = 'krib'): Line =>
  group(name, 'pair', where, {
    species,
    members: [
      ['male', null],
      ['female', null],
    ],
  });
export const speciesOf = (species: string, guild: Guild, more: Partial<SpeciesTraits> = {}): Line => [
  '2026-01-04',
  room,
  { kind: 'species declared', species, traits: { ...plain, guild, ...more } },
];
type Fish = FishRef;
type Place = { in?: string; fish?: Fish; when?: DayWindow | null };
const at = (place: Place): Subject => tank(place.in ?? 'A1');
export const laid = (
  on: string,
  eggs: Heads | null = null,
  more: Place & { brood?: string; as?: 'laid' | 'seen' | 'maybe' } = {},
): Line => [
  on,
  at(more),
  {
    kind: 'spawned',
    fish: more.fish ?? implied,
    as: more.as ?? 'laid',
    brood: more.brood ?? null,
    eggs,
    when: more.when ?? null,
  },
];
export const look = (
  on: string,
  stage: Exclude<Stage, 'eggs'>,
  count: Heads | null = null,
  more: Place & { brood?: string } = {},
): Line => [
  on,
  at(more),
  { kind: 'stage seen', fish: more.fish ?? implied, stage, count, brood: more.brood ?? null, when: more.when ?? null },
];
export const noEggs = (on: string, more: Place = {}): Line => [
  on,
  at(more),
  { kind: 'no eggs', fish: more.fish ?? implied },
];
export const tally = (on: string, count: Heads, more: Place = {}): Line => [
  on,
  at(more),
  { kind: 'counted', fish: more.fish ?? implied, heads: count },
];
export const lostSome = (
  on: string,
  count: HowMany,
  how: 'died' | 'missing' | 'eaten' | 'culled',
  more: Place = {},
): Line => [on, at(more), { kind: 'lost', fish: more.fish ?? implied, count, how }];
export const move = (
  on: string,
  count: HowMany,
  to: string,
  more: Place & { stay?: boolean; which?: 'largest' | 'smallest' | 'any'; with?: string } = {},
): Line => [
  on,
  at(more),
  {
    kind: 'moved',
    fish: more.fish ?? implied,
    count,
    which: more.which ?? 'any',
    to,
    with: more.with ?? null,
    restStay: more.stay ?? false,
  },
];
export const sizes = (on: string, of: LengthOf, values: readonly number[], more: Place = {}): Line => [
  on,
  at(more),
  { kind: 'sized', fish: more.fish ?? implied, sizes: { of, values: values.map(mm) } },
];
export const sale = (on: string, count: HowMany, more: Place = {}): Line => [
  on,
  at(more),
  { kind: 'sold', fish: more.fish ?? implied, count, price: null, to: null, auction: null },
];
export const mix = (on: string, a: string, b: string, more: Place = {}): Line => [
  on,
  at(more),
  { kind: 'mixed', a: named(a), b: named(b) },
];
export const member = (sex: Sex | null, own: string | null = null, of: string | null = null): Fish => ({
  kind: 'group',
  group: of,
  member: { sex, name: own },
});
/** First and last day of a window as ISO dates. */
export const days = (window: DayWindow | null | undefined): string | null =>
  window ? [window.low, window.high].map((one) => (one === null ? '' : isoDay(one))).join('/') : null;
