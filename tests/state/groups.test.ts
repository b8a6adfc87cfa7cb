import { describe, expect, test } from 'vitest';
import { exactly } from '../../src/core/interval.ts';
import type { Room } from '../../src/state/draft.ts';
import type { SeenGroup } from '../../src/state/bodies.ts';
import type { Line } from '../support/events.ts';
import { roomOn, tank } from '../support/events.ts';
import { died, groupSet, movedTo, said, spawn, tankSet } from '../support/pairs.ts';

const SET = '2026-01-04';
const TANKS = ['A1', 'B2', 'C1'].map((name) => tankSet(SET, name));

function group(room: Room, name = 'Rowan'): SeenGroup {
  const found = room.stock.groups.get(name);
  if (!found) throw new Error(`${name} is missing`);
  return found;
}

/** Its fish as `male A1`, `Fern B2`, `female gone`. */
function fish(room: Room, name = 'Rowan'): string[] {
  return group(room, name).members.map(
    (one) => `${one.name ?? one.sex ?? 'one'} ${one.gone === null ? (one.tank ?? 'nowhere') : 'gone'}`,
  );
}

function parts(room: Room, name = 'Rowan'): Record<string, number> {
  return Object.fromEntries([...group(room, name).parts].map(([where, count]) => [where, count.low]));
}

describe('a group as declared', () => {
  test('a pair without a word about its fish is a male and a female', () => {
    const room = roomOn('2026-02-01', [...TANKS, groupSet(SET, 'Rowan', 'A1')]);
    expect(fish(room)).toEqual(['male A1', 'female A1']);
    expect(group(room).total).toEqual(exactly(2));
    expect(group(room).bond).toBe('unsaid');
  });

  test('a trio has its named females and a male', () => {
    const line = groupSet(SET, 'Sedge', 'A1', { kind: 'trio', females: ['Fern', 'Lark'] });
    const room = roomOn('2026-02-01', [...TANKS, line]);
    expect(fish(room, 'Sedge').sort()).toEqual(['Fern A1', 'Lark A1', 'male A1']);
    expect(group(room, 'Sedge').total).toEqual(exactly(3));
  });

  test('a harem of no stated number has three fish or more', () => {
    const room = roomOn('2026-02-01', [...TANKS, groupSet(SET, 'Rowan', 'A1', { kind: 'harem' })]);
    expect(group(room).total).toMatchObject({ low: 3, high: Infinity });
  });

  test('declared again: amends, and moves house where it says another tank', () => {
    const lines = [groupSet(SET, 'Rowan', 'A1'), groupSet('2026-01-20', 'Rowan', 'B2', { species: 'limia' })];
    const room = roomOn('2026-02-01', [...TANKS, ...lines]);
    expect(fish(room)).toEqual(['male B2', 'female B2']);
    expect(parts(room)).toEqual({ B2: 2 });
    expect(group(room)).toMatchObject({ home: 'B2', species: 'limia', total: exactly(2) });
  });

  test('a name given later is given to the fish that had none', () => {
    const lines = [
      groupSet(SET, 'Sedge', 'A1', { kind: 'trio' }),
      groupSet('2026-01-20', 'Sedge', 'A1', { kind: 'trio', females: ['Fern', 'Lark'] }),
    ];
    const room = roomOn('2026-02-01', [...TANKS, ...lines]);
    expect(fish(room, 'Sedge').sort()).toEqual(['Fern A1', 'Lark A1', 'male A1']);
  });

  test('made of fish of a brood, it takes them out of that brood: none appears from nowhere', () => {
    const counted: Line = [
      '2026-02-20',
      tank('A1'),
      {
        kind: 'counted',
        fish: { kind: 'brood', brood: 'Rowan-1' },
        heads: { total: exactly(20), males: null, females: null, young: null, as: 'counted' },
      },
    ];
    const made = groupSet('2026-06-01', 'Moss', 'B2', { from: ['Rowan-1'] });
    const room = roomOn('2026-06-02', [
      ...TANKS,
      groupSet(SET, 'Rowan', 'A1'),
      spawn('2026-01-10', 'A1', 'Rowan-1'),
      counted,
      made,
    ]);
    expect(group(room, 'Moss').total).toEqual(exactly(2));
    expect(room.stock.broods.get('Rowan-1')?.total).toEqual(exactly(18));
    expect(room.stock.broods.get('Rowan-1')?.gone.map(({ how }) => how)).toEqual(['joined']);
  });
});

describe('the bond', () => {
  test.each(['bonded', 'split up', 'resting'] as const)('«%s» is what it is from then on', (word) => {
    const room = roomOn('2026-02-01', [...TANKS, groupSet(SET, 'Rowan', 'A1'), said('2026-01-20', 'A1', word)]);
    expect(group(room).bond).toBe(word);
    expect(group(room).bondSince?.place.line).toBe(5);
  });
});

describe('members come and go', () => {
  const away = [...TANKS, groupSet(SET, 'Rowan', 'A1'), movedTo('2026-01-20', 'A1', 'male', 'B2')];

  test('the male that was moved out comes back to his own tank', () => {
    const out = roomOn('2026-01-25', away);
    expect(fish(out)).toEqual(['male B2', 'female A1']);
    expect(parts(out)).toEqual({ A1: 1, B2: 1 });
    for (const where of ['A1', 'B2']) {
      const back = roomOn('2026-02-01', [...away, said('2026-02-01', where, 'member back', 'male')]);
      expect(back.problems).toEqual([]);
      expect(fish(back)).toEqual(['male A1', 'female A1']);
      expect(parts(back)).toEqual({ A1: 2 });
    }
  });

  test('a dead male is gone, and the next comes from a group that has him', () => {
    const lines: Line[] = [
      ...TANKS,
      groupSet(SET, 'Rowan', 'A1'),
      groupSet(SET, 'Ash', 'C1', { kind: 'group', count: 12 }),
      died('2026-01-20', 'A1', 'male'),
      said('2026-01-10', 'A1', 'bonded'),
    ];
    const dead = roomOn('2026-01-25', lines);
    expect(fish(dead)).toEqual(['male gone', 'female A1']);
    expect(parts(dead)).toEqual({ A1: 1 });
    const mate: Line = [
      '2026-02-01',
      tank('A1'),
      { kind: 'new mate', fish: { kind: 'implied' }, sex: 'male', from: 'Ash', name: null },
    ];
    const room = roomOn('2026-02-02', [...lines, mate]);
    expect(room.problems).toEqual([]);
    expect(fish(room)).toEqual(['male gone', 'female A1', 'male A1']);
    expect(parts(room)).toEqual({ A1: 2 });
    expect(parts(room, 'Ash')).toEqual({ C1: 11 });
    expect(group(room).bond).toBe('unsaid');
    expect(group(room).upset?.how).toBe('new mate');
  });

  test('a second male in a pair is a doubt', () => {
    const mate: Line = [
      '2026-02-01',
      tank('A1'),
      { kind: 'new mate', fish: { kind: 'implied' }, sex: 'male', from: null, name: null },
    ];
    const room = roomOn('2026-02-02', [...TANKS, groupSet(SET, 'Rowan', 'A1'), mate]);
    expect(room.problems.map(({ kind, weight }) => [kind, weight])).toEqual([['two-mates', 'doubt']]);
  });
});
