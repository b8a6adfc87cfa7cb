/** A room with one brood that can be sold: laid 1 January 2026, so 16 weeks old on 23 April; 30 counted in C1. */
import { exactly, type Interval } from '../../src/core/interval.ts';
import { measure } from '../../src/core/quantity.ts';
import type { Heads, SpeciesTraits } from '../../src/journal/event.ts';
import { day, tank } from './events.ts';
import type { Line } from './events.ts';
import { broodRef, groupRef, loopLine, tankLine } from './setup.ts';

const TRAITS: SpeciesTraits = {
  latin: null,
  guild: 'cave spawner',
  saleAt: { size: measure('mm', 35), age: measure('days', 112), both: false },
  price: { amount: 6, per: 'each' },
  siblingSafe: null,
  hardToCatch: null,
  spiny: null,
  adult: null,
  temperature: null,
  ph: null,
  gh: null,
  regulated: null,
};

export function heads(total: number | Interval): Heads {
  const sure = typeof total === 'number';
  return {
    total: sure ? exactly(total) : total,
    males: null,
    females: null,
    young: null,
    as: sure ? 'counted' : 'guess',
  };
}

/** Loop Long with A1 and A2, C1 alone, and the species. */
export const SETTINGS: readonly Line[] = [
  loopLine('2026-01-01', 'Long'),
  tankLine('2026-01-01', 'A1', 'Long'),
  tankLine('2026-01-01', 'A2', 'Long'),
  tankLine('2026-01-01', 'C1'),
  ['2026-01-01', { kind: 'species', species: 'krib' }, { kind: 'species declared', species: 'krib', traits: TRAITS }],
];

export const PAIR: Line = [
  '2026-01-01',
  { kind: 'group', group: 'Rowan', member: null },
  {
    kind: 'group declared',
    group: 'Rowan',
    groupKind: 'pair',
    species: 'krib',
    heads: null,
    members: [],
    tank: 'A1',
    age: null,
    size: null,
    line: null,
    from: null,
    price: null,
    parentsFrom: [],
  },
];

/** Ten lines. */
export const BROOD: readonly Line[] = [
  ...SETTINGS,
  PAIR,
  ['2026-01-01', tank('A1'), { kind: 'spawned', fish: groupRef('Rowan'), as: 'laid', brood: 'Rowan-1', eggs: null }],
  [
    '2026-01-12',
    tank('A1'),
    { kind: 'stage seen', fish: broodRef('Rowan-1'), stage: 'free-swimming', count: null, brood: null },
  ],
  moved('2026-02-10', 'A1', 'C1', 'all'),
  counted('2026-02-11', 30),
];

export function moved(on: string, from: string, to: string, count: number | 'all'): Line {
  return [
    on,
    tank(from),
    {
      kind: 'moved',
      fish: broodRef('Rowan-1'),
      count: count === 'all' ? 'all' : heads(count),
      which: 'any',
      to,
      with: null,
      restStay: false,
    },
  ];
}

export function counted(on: string, count: number | Interval, where = 'C1'): Line {
  return [on, tank(where), { kind: 'counted', fish: broodRef('Rowan-1'), heads: heads(count) }];
}

export function keep(count: number, on = '2026-04-01'): Line {
  return [on, tank('C1'), { kind: 'kept back', fish: broodRef('Rowan-1'), count: heads(count) }];
}

export function reserve(count: number, until: string | null, to: string | null = null, on = '2026-04-02'): Line {
  const fish = broodRef('Rowan-1');
  const last = until === null ? null : day(until);
  return [on, tank('C1'), { kind: 'reserved', fish, count: heads(count), until: last, to, deposit: null }];
}

export function sell(on: string, count: number, to: string | null = null, from = 'C1'): Line {
  const fish = broodRef('Rowan-1');
  return [on, tank(from), { kind: 'sold', fish, count: heads(count), price: null, to, auction: null }];
}
