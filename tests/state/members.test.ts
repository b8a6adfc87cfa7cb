/** Who is who in a group: which fish its line makes, which one a clause means, what is left when it is gone. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';
import { ROOM } from '../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const roomOf = (...lines: readonly string[]): Room => journalOn('2026-04-30', `${lines.join('\n')}\n`);
/** `male A2, Fern C2, Lark died`. */
const members = (room: Room, name: string): string =>
  (room.stock.groups.get(name)?.members ?? [])
    .map((fish) => `${fish.name ?? fish.sex ?? 'one'} ${fish.gone === null ? (fish.tank ?? '?') : fish.gone.how}`)
    .join(', ');
const total = (room: Room, name: string): number | undefined => room.stock.groups.get(name)?.total.low;
const told = (room: Room): string[] =>
  room.problems.map(({ kind, at, also }) => [kind, ...[at, ...also].map(({ line }) => line - SETUP)].join(' '));

describe('a group is declared with', () => {
  it.each([
    ['pair Oak: krib', 'male C2, female C2', 2],
    ['pair Oak: krib; male; female Ivy', 'male C2, Ivy C2', 2],
    ['trio Oak: krib', 'male C2, female C2, female C2', 3],
    ['trio Oak: krib; females Ivy and Moss', 'Ivy C2, Moss C2, male C2', 3],
    ['trio Oak: krib; male; female Ivy', 'male C2, Ivy C2, female C2', 3],
    ['trio Oak: krib; 2 males, 1 female', 'male C2, male C2, female C2', 3],
    ['harem Oak: krib; 1 male, 3 females', 'male C2, female C2, female C2, female C2', 4],
    ['harem Oak: krib; male; females Ivy and Moss', 'male C2, Ivy C2, Moss C2', 3],
    ['harem Oak: krib; 5', 'male C2', 5],
    ['group Oak: krib; 2 males, 3 females', '', 5],
    ['colony Oak: krib; 2 males, 3 females', '', 5],
  ])('%s', (line, fish, count) => {
    const room = roomOf(`2026-01-02 ${line}; in C2`);
    expect([members(room, 'Oak'), total(room, 'Oak')]).toEqual([fish, count]);
  });
});

describe('a fish meant by its sex', () => {
  it('is the only one of it', () => {
    const room = roomOf('2026-02-10 A1: male died');
    expect([members(room, 'Rowan'), total(room, 'Rowan'), told(room)]).toEqual(['male died, female A1', 1, []]);
  });
  it('of two by name must be named, whoever the line is about; nothing changes till it is', () => {
    for (const line of ['A2: female died', 'Sedge: female died', 'A2: female sold']) {
      const room = roomOf(`2026-02-10 ${line}`);
      expect([told(room), total(room, 'Sedge')]).toEqual([['which-member 1 -5'], 3]);
      expect(room.problems[0]?.says).toBe('Sedge has 2 of them: Fern, Lark');
      expect(room.problems[0]?.write).toBe('the name of the female: Fern …');
    }
  });
  it('is the one in the tank of the line, where the other is elsewhere', () => {
    const away = '2026-02-10 A2: Fern moved to C2';
    expect(members(roomOf(away, '2026-02-11 C2: female died'), 'Sedge')).toBe('male A2, Fern died, Lark A2');
    expect(members(roomOf(away, '2026-02-11 A2: female died'), 'Sedge')).toBe('male A2, Fern C2, Lark died');
    expect(told(roomOf(away, '2026-02-11 Sedge: female died'))).toEqual(['which-member 2 -5']);
  });
  it('is any one of several without names', () => {
    const trio = '2026-01-02 trio Oak: krib; in C2';
    const room = roomOf(trio, '2026-02-10 C2: female died');
    expect([told(room), total(room, 'Oak')]).toEqual([[], 2]);
    expect(room.stock.groups.get('Oak')?.members.filter(({ gone }) => gone === null)).toHaveLength(2);
    const named = '2026-01-02 trio Oak: krib; male; female Ivy; in C2';
    const one = roomOf(named, '2026-02-10 C2: female died');
    expect([told(one), one.problems[0]?.says]).toEqual([
      ['which-member 2 1'],
      'Oak has 2 of them: Ivy, an unnamed female',
    ]);
  });
  it('in a group that keeps none apart is one of its number', () => {
    const room = roomOf('2026-02-10 C1: male died', '2026-02-10 B1: Pebble male died');
    expect([told(room), total(room, 'Ash'), members(room, 'Ash')]).toEqual([[], 11, '']);
  });
});

describe('fish that are gone', () => {
  it('by each word for it', () => {
    const room = roomOf('2026-02-10 A2: Fern eaten', '2026-02-11 A2: Lark culled', '2026-02-12 A2: male sold');
    expect([members(room, 'Sedge'), total(room, 'Sedge')]).toEqual(['male sold, Fern eaten, Lark culled', 0]);
    const gift = roomOf('2026-02-10 A1: gave away female', '2026-02-11 A1: male missing');
    expect([members(gift, 'Rowan'), total(gift, 'Rowan')]).toEqual(['male missing, female gave away', 0]);
    expect(members(roomOf('2026-02-10 A1: sold 2 Rowan at 20.00 each'), 'Rowan')).toBe('male sold, female sold');
  });
  it('of a number must say which, unless it is all', () => {
    const one = roomOf('2026-02-10 A1: Rowan died 1');
    expect([told(one), members(one, 'Rowan'), total(one, 'Rowan')]).toEqual([
      ['which-member 1 -6'],
      'male A1, female A1',
      2,
    ]);
    expect(members(roomOf('2026-02-10 A1: Rowan died 2'), 'Rowan')).toBe('male died, female died');
  });
  it('cannot go again, by name or sex', () => {
    const fern = roomOf('2026-02-10 A2: Fern died', '2026-02-11 Sedge: Fern died');
    expect([told(fern), fern.problems[0]?.says]).toEqual([['unknown-member 2 -5'], 'Fern is no longer one of Sedge']);
    expect(total(fern, 'Sedge')).toBe(2);
    const male = roomOf('2026-02-10 A1: male died', '2026-02-11 A1: male died');
    expect(male.problems[0]?.says).toBe('the male is no longer one of Rowan, and no male of it lives on record');
    expect(male.problems[0]?.write).toBe('first the line that brought one: A1: new male from …');
  });
  it('offer the one that lives, by the name it has', () => {
    const oak = '2026-01-02 trio Oak: krib; male; female Ivy; in C2';
    const [problem] = roomOf(oak, '2026-02-10 C2: Ivy died', '2026-02-11 C2: Ivy spawned').problems;
    expect([problem?.says, problem?.write]).toEqual(['Ivy is no longer one of Oak', 'C2: Oak female spawned']);
  });
  it('in a pair of which the male died, come anew from a group that has one fewer then', () => {
    const room = roomOf('2026-02-10 A1: male died', '2026-02-12 A1: new male from Ash');
    expect([members(room, 'Rowan'), total(room, 'Rowan'), total(room, 'Ash'), told(room)]).toEqual([
      'male died, female A1, male A1',
      2,
      11,
      [],
    ]);
    const two = roomOf('2026-02-12 A1: new male from Ash');
    expect(told(two)).toEqual(['two-mates 1 -6']);
  });
});

describe('fish that come back', () => {
  const out = ['2026-02-11 A2: Fern moved to C2', '2026-02-12 A2: Lark moved to tank 12'];
  it('are those that were away, to the tank of their group', () => {
    const room = roomOf(...out, '2026-02-13 A2: Fern back');
    expect(members(room, 'Sedge')).toBe('male A2, Fern A2, Lark 12');
    const both = roomOf(...out, '2026-02-13 A2: Fern back', '2026-02-14 A2: female back');
    expect([members(both, 'Sedge'), told(both)]).toEqual(['male A2, Fern A2, Lark A2', []]);
    expect([...(both.stock.groups.get('Sedge')?.parts ?? [])].map(([tank, { low }]) => [tank, low])).toEqual([
      ['A2', 3],
    ]);
  });
  it('of two that are away must be named', () => {
    expect(told(roomOf(...out, '2026-02-13 A2: female back'))).toEqual(['which-member 3 -5']);
  });
});
