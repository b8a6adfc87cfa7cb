/** What written counts mean, and who of a group is lost. */
import { describe, expect, it } from 'vitest';
import { exactly, type Interval } from '../../src/core/interval.ts';
import type { Heads } from '../../src/journal/event.ts';
import type { SeenGroup } from '../../src/state/bodies.ts';
import type { Room } from '../../src/state/draft.ts';
import { headsOf, howMany, isCounted, isWhole, isWritten, onlyTank } from '../../src/state/heads.ts';
import type { Body } from '../../src/state/stock.ts';
import { newBody } from '../../src/state/tally.ts';
import { roomOn, tank, type Line } from '../support/events.ts';
import { about, group, heads, member, setUp, tankLine } from '../support/fishroom.ts';
import { journalOn } from '../support/journal.ts';

const guess = (likely: number): Heads => ({ ...heads(likely), as: 'about' });
const between = (low: number, likely: number | null, high: number): Heads => ({
  ...heads(0),
  total: { low, likely, high },
});
const ends = ({ low, likely, high }: Interval): (number | null)[] => [low, likely, high];

describe('a guess', () => {
  it('may be off by a quarter, of what nobody can count by half or double; whole fish inside', () => {
    expect(ends(headsOf(guess(40), false))).toEqual([30, 40, 50]);
    expect(ends(headsOf(guess(40), true))).toEqual([20, 40, 80]);
    expect(ends(headsOf(guess(7), false))).toEqual([6, 7, 8]);
  });
  it('of a few is off by one, and never none', () => {
    expect([1, 2, 3].map((count) => ends(headsOf(guess(count), false)))).toEqual([
      [1, 1, 2],
      [1, 2, 3],
      [2, 3, 4],
    ]);
  });
  it('without a likely number is what it says, in whole fish', () => {
    expect(ends(headsOf({ ...between(10.5, null, 20.5), as: 'about' }, false))).toEqual([11, null, 20]);
    expect(ends(headsOf(between(10.2, 15.4, 20.8), false))).toEqual([11, 15, 20]);
    expect(ends(headsOf(between(10.2, 10.3, 10.8), false))).toEqual([11, 11, 11]);
  });
  it('is no count, nor is a span', () => {
    expect([heads(40), guess(40), about(40), between(30, 35, 40)].map(isCounted)).toEqual([true, false, false, false]);
  });
});

describe('how many a clause means', () => {
  const body = (parts: readonly (readonly [string, Interval])[]): Body => ({
    ...newBody('Ash', 'krib'),
    parts: new Map(parts),
    total: exactly(9),
  });
  const nine = body([['C1', { low: 5, likely: 6, high: 7 }]]);
  it('by a word is what is there', () => {
    for (const word of ['all', 'rest', 'unsaid'] as const) {
      expect(ends(howMany(nine, 'C1', word))).toEqual([5, 6, 7]);
      expect(ends(howMany(nine, null, word))).toEqual([9, 9, 9]);
      expect(ends(howMany(nine, 'Q1', word))).toEqual([0, 0, 0]);
      expect([isWhole(word), isWritten(word)]).toEqual([true, false]);
    }
  });
  it('by half is half, both ways', () => {
    expect(ends(howMany(nine, 'C1', 'half'))).toEqual([2, 3, 4]);
    expect(ends(howMany(body([['C1', { low: 5, likely: null, high: 9 }]]), 'C1', 'half'))).toEqual([2, null, 5]);
    expect([isWhole('half'), isWritten('half')]).toEqual([false, false]);
  });
  it('by a number is that number', () => {
    expect(ends(howMany(nine, 'C1', heads(3)))).toEqual([3, 3, 3]);
    expect([isWhole(heads(3)), isWritten(heads(3))]).toEqual([false, true]);
  });
  it('has one tank or none to be in', () => {
    expect(onlyTank(nine)).toBe('C1');
    expect(onlyTank(body([]))).toBeNull();
    expect(
      onlyTank(
        body([
          ['C1', exactly(4)],
          ['C2', exactly(5)],
        ]),
      ),
    ).toBeNull();
  });
});

describe('who is lost', () => {
  const rowan = (room: Room): SeenGroup | undefined => room.stock.groups.get('Rowan');
  const fates = (room: Room, name = 'Rowan'): string[] =>
    (room.stock.groups.get(name)?.members ?? []).map(
      (fish) => `${fish.name ?? fish.sex ?? ''} ${fish.gone?.how ?? 'lives'}`,
    );
  const kinds = (room: Room): string[] => room.problems.map(({ kind }) => kind);
  it('are both of a pair by their number, and nobody by a number that cannot be', () => {
    expect(fates(journalOn('2026-03-02', '2026-03-01 A1: Rowan died 2\n'))).toEqual(['male died', 'female died']);
    const many = journalOn('2026-03-02', '2026-03-01 A1: Rowan died 5\n');
    expect(kinds(many)).toEqual(['more-out-than-in']);
    expect(fates(many)).toEqual(['male lives', 'female lives']);
  });
  it('is the one in the tank of the line where they are parted', () => {
    const parted = '2026-03-01 A1: moved the female to C2\n';
    const room = journalOn('2026-03-03', `${parted}2026-03-02 C2: Rowan died 1\n`);
    expect(kinds(room)).toEqual([]);
    expect(fates(room)).toEqual(['male lives', 'female died']);
    const open = journalOn('2026-03-03', `${parted}2026-03-02 Rowan: died 1\n`);
    expect(kinds(open)).toEqual(['which-member']);
    expect(fates(open)).toEqual(['male lives', 'female lives']);
  });
  it('is the one of the sex that is counted', () => {
    const named = { kind: 'group', group: 'Rowan', member: null } as const;
    const female: Line = [
      '2026-03-01',
      tank('A1'),
      { kind: 'lost', fish: named, count: { ...heads(1), females: exactly(1) }, how: 'died' },
    ];
    expect(fates(roomOn('2026-03-02', [...setUp, female]))).toEqual(['male lives', 'female died']);
    const male: Line = [
      '2026-03-01',
      tank('A1'),
      { kind: 'lost', fish: named, count: { ...heads(1), males: exactly(1) }, how: 'died' },
    ];
    expect(fates(roomOn('2026-03-02', [...setUp, male]))).toEqual(['male died', 'female lives']);
  });
  it('is one fish where the line says a male and the group tells none apart', () => {
    const male: Line = [
      '2026-03-01',
      tank('B1'),
      { kind: 'lost', fish: member('male', null, 'Pebble'), count: 'unsaid', how: 'died' },
    ];
    const room = roomOn('2026-03-02', [
      ...setUp,
      tankLine('B1'),
      group('Pebble', 'colony', 'B1', { count: heads(25) }),
      male,
    ]);
    expect(room.stock.groups.get('Pebble')?.gone).toMatchObject([
      { how: 'died', count: { low: 1, likely: 1, high: 1 } },
    ]);
  });
  it('is nobody told apart where others of the group may have been meant', () => {
    const elm = '2026-02-03 group Elm: krib; 12; male Bran; in Q1\n';
    expect(fates(journalOn('2026-03-03', `${elm}2026-03-02 Q1: died 3\n`), 'Elm')).toEqual(['Bran lives']);
    expect(fates(journalOn('2026-03-03', `${elm}2026-03-02 Q1: died 12\n`), 'Elm')).toEqual(['Bran died']);
    expect(fates(journalOn('2026-03-03', `${elm}2026-03-02 Q1: Bran died\n`), 'Elm')).toEqual(['Bran died']);
  });
  it('of half of them must be told', () => {
    const half: Line = [
      '2026-03-01',
      tank('A1'),
      { kind: 'lost', fish: { kind: 'group', group: 'Rowan', member: null }, count: 'half', how: 'died' },
    ];
    const room = roomOn('2026-03-02', [...setUp, half]);
    expect(kinds(room)).toEqual(['which-member']);
    expect(fates(room)).toEqual(['male lives', 'female lives']);
  });
  it('of fish whose tank nobody told is any of them', () => {
    const room = journalOn('2026-03-03', '2026-03-02 Rowan: all died\n');
    expect(rowan(room)?.total).toEqual({ low: 0, likely: 0, high: 0 });
    expect(fates(room)).toEqual(['male died', 'female died']);
  });
});
