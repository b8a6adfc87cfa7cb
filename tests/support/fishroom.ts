/** A small room for tests of the fish: two kinds of tank, a pair of cave spawners, and lines by hand. */
import type { Heads } from '../../src/journal/event.ts';
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
const counted = (n: number): Heads => ({
  total: { low: n, likely: n, high: n },
  males: null,
  females: null,
  young: null,
  as: 'counted',
});
export const heads = counted;
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
