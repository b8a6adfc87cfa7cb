import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import type { DayWindow } from '../../src/core/interval.ts';
import type { Heads } from '../../src/journal/event.ts';
import { bodiesIn, partIn } from '../../src/state/bodies.ts';
import { ageDays } from '../../src/state/broodlife.ts';
import type { Room } from '../../src/state/draft.ts';
import { room, roomOn, tank, type Line } from '../support/events.ts';

const plain = {
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
const implied = { kind: 'implied' } as const;
const about = (n: number): Heads => ({
  total: { low: n * 0.75, likely: n, high: n * 1.25 },
  males: null,
  females: null,
  young: null,
  as: 'about',
});
const tankLine = (name: string): Line => [
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
const setUp: Line[] = [
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
const sample: Line[] = [
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
function days(window: DayWindow | null | undefined): string | null {
  if (!window) return null;
  return [window.low, window.high].map((day) => (day === null ? '' : isoDay(day))).join('/');
}
const brood = (r: Room, name: string) => {
  const found = r.stock.broods.get(name);
  if (!found) throw new Error(`no ${name} among ${[...r.stock.broods.keys()].join()}`);
  return found;
};

describe('a brood from eggs to its first move', () => {
  it('is 13 days from laying, and swims since between the last look at wrigglers and the first at swimmers', () => {
    const r = roomOn('2026-02-15', sample);
    expect(r.problems).toEqual([]);
    const rowan = brood(r, 'Rowan-1');
    expect(ageDays(rowan, r.on)).toEqual({ low: 13, likely: 13, high: 13 });
    expect(days(rowan.swam)).toBe('2026-02-05/2026-02-10');
  });
  it('knows no swim-up on the day before it was seen', () => {
    expect(brood(roomOn('2026-02-09', sample), 'Rowan-1').swam).toBeNull();
  });
  it('counts nothing twice after a move', () => {
    const r = roomOn('2026-03-10', sample);
    expect(r.problems).toEqual([]);
    const rowan = brood(r, 'Rowan-1');
    expect(partIn(rowan, 'C1')).toEqual({ low: 34, likely: 45, high: 56 });
    expect(partIn(rowan, 'A1')).toEqual({ low: 1, likely: 25, high: 106 });
    expect(rowan.total).toEqual({ low: 35, likely: 70, high: 140 });
    expect(bodiesIn(r, 'A1').map((body) => body.name)).toEqual(['Rowan', 'Rowan-1']);
  });
});
