/** What a mix of two stocks is: whose, how old, of which kind, how many; and what is left of each where it was in other tanks too. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import type { Room } from '../../src/state/draft.ts';
import { days } from '../support/fishroom.ts';
import { broodNamed as brood, journalOn } from '../support/journal.ts';
import { ROOM } from '../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const roomOf = (...lines: readonly string[]): Room => journalOn('2026-04-30', `${lines.join('\n')}\n`);
/** `A1 20–20, C2 32–32; 52–52 in all`. */
const counts = (room: Room, name: string): string => {
  const body = room.stock.groups.get(name) ?? brood(room, name);
  const span = ({ low, high }: { low: number; high: number }): string => `${String(low)}–${String(high)}`;
  const parts = [...body.parts].map(([tank, count]) => `${tank} ${span(count)}`).join(', ');
  return `${parts}; ${span(body.total)} in all`;
};
const told = (room: Room): string[] => room.problems.map(({ kind }) => kind);
const linesOf = (room: Room, name: string): number[] =>
  (room.stock.groups.get(name) ?? brood(room, name)).lines.map(({ line }) => line - SETUP);

const SWIM = ['2026-02-02 A1: spawned', '2026-02-10 A1: free-swimming, 52'];
const MOVED = [...SWIM, '2026-02-20 A1: Rowan-1 moved 20 to C1'];
const MIXED = [...MOVED, '2026-03-01 C1: mixed Rowan-1 and Ash'];

describe('a mix of a brood and a group', () => {
  it('is of no pair, and of an age that nobody can tell where that of the group is not known', () => {
    const mix = brood(roomOf(...MIXED), 'Rowan-1 or Ash');
    expect([mix.group, mix.species, mix.mothers, days(mix.laid), mix.laid.likely]).toEqual([
      null,
      'krib',
      [],
      '/',
      null,
    ]);
    expect([mix.natal, mix.suspected, mix.ended, mix.looks, mix.quiet, mix.price]).toEqual([
      'C1',
      false,
      null,
      [],
      [],
      null,
    ]);
  });
  it('is as old as the older or the younger of them, most likely between', () => {
    // Bought on 20 February, 8 weeks old: born on 26 December. The brood was laid on 2 February.
    const oak = '2026-02-20 group Oak: krib; 9; in C2; age 8 weeks';
    const room = roomOf(oak, ...SWIM, '2026-02-21 A1: Rowan-1 moved 20 to C2', '2026-03-01 C2: mixed Rowan-1 and Oak');
    const { laid, swam, laidKnown } = brood(room, 'Rowan-1 or Oak');
    expect([days(laid), laidKnown]).toEqual(['2025-12-26/2026-02-02', 'bounded']);
    expect(laid.likely === null ? null : isoDay(laid.likely).slice(0, 7)).toBe('2026-01');
    expect(days(swam)?.slice(-10)).toBe('2026-02-10');
  });
  it('has no likely day of laying where one end is open', () => {
    const oak = '2026-02-20 group Oak: krib; 9; in C2; age over 8 weeks';
    const mix = brood(
      roomOf(oak, ...SWIM, '2026-02-21 A1: Rowan-1 moved 20 to C2', '2026-03-01 C2: mixed Rowan-1 and Oak'),
      'Rowan-1 or Oak',
    );
    expect([days(mix.laid), mix.laid.likely]).toEqual(['/2026-02-02', null]);
  });
  it('of two kinds is of neither', () => {
    const oak = '2026-02-20 group Oak: limia; 9; in C1';
    expect(brood(roomOf(oak, '2026-03-01 C1: mixed Oak and Ash'), 'Oak or Ash').species).toBeNull();
  });
});

describe('a mix of two broods', () => {
  const eggs = [
    '2026-02-02 A1: spawned',
    '2026-02-03 A2: Fern spawned',
    '2026-02-05 A1: moved all Rowan-1 to C2',
    '2026-02-05 A2: moved all Sedge-1 to C2',
    '2026-02-06 C2: mixed Rowan-1 and Sedge-1',
  ];
  const NAME = 'Rowan-1 or Sedge-1';
  it('of which none was seen to swim does not swim yet', () => {
    expect([brood(roomOf(...eggs), NAME).swam, brood(roomOf(...eggs), NAME).hatched]).toEqual([null, null]);
    const wrigglers = brood(roomOf(...eggs, '2026-02-08 C2: wrigglers'), NAME);
    expect([wrigglers.swam, days(wrigglers.hatched)?.slice(-10)]).toEqual([null, '2026-02-08']);
    const swim = roomOf(...eggs, '2026-02-12 C2: free-swimming, 60');
    expect([days(brood(swim, NAME).swam)?.slice(-10), counts(swim, NAME)]).toEqual([
      '2026-02-12',
      'C2 60–60; 60–60 in all',
    ]);
  });
  it('of which one was seen to swim does', () => {
    const one = [...MOVED.slice(0, 2), '2026-02-12 A2: Fern spawned', '2026-02-14 A1: Rowan-1 moved 20 to A2'];
    const mix = brood(roomOf(...one, '2026-02-15 A2: mixed Rowan-1 and Sedge-1'), NAME);
    expect([days(mix.swam)?.slice(-10), days(mix.laid)]).toEqual(['2026-02-10', '2026-02-02/2026-02-12']);
  });
  it('was moved: a guess of how many is a quarter either way', () => {
    const mixed = roomOf(...eggs, '2026-02-12 C2: free-swimming, about 60', '2026-03-20 C2: counted about 40');
    expect(counts(mixed, NAME)).toBe('C2 30–50; 30–50 in all');
  });
});

describe('a mix of two groups', () => {
  it('is as old as either, where both ages are known', () => {
    // 8 and 4 weeks old on 20 February: born on 26 December and on 23 January.
    const two = [
      '2026-02-20 group Oak: krib; 9; in C2; age 8 weeks',
      '2026-02-20 group Elm: krib; 7; in C2; age 4 weeks',
    ];
    const mix = brood(roomOf(...two, '2026-03-01 C2: mixed Oak and Elm'), 'Oak or Elm');
    expect([days(mix.laid), mix.laid.likely === null ? null : isoDay(mix.laid.likely)]).toEqual([
      '2025-12-26/2026-01-23',
      '2026-01-09',
    ]);
    expect(mix.total).toMatchObject({ low: 16, high: 16 });
    // Fish that were bought swim, though nobody saw them begin.
    expect(mix.swam).not.toBeNull();
  });
});

describe('what the mix is at most', () => {
  const two = [
    ...SWIM,
    '2026-02-02 A2: Fern spawned',
    '2026-02-10 A2: free-swimming, 30',
    '2026-03-01 A1: Rowan-1 moved 20 to C2',
    '2026-03-01 A2: Sedge-1 moved 10 to C2',
    '2026-03-02 C2: mixed Rowan-1 and Sedge-1',
  ];
  it('holds for all the tanks that it is in later', () => {
    const split = [...two, '2026-03-03 C2: Rowan-1 moved about 12 to Q1', '2026-03-04 Q1: counted 14'];
    expect(told(roomOf(...split, '2026-03-05 C2: Rowan-1 counted 16'))).toEqual([]);
    expect(told(roomOf(...split, '2026-03-05 C2: Rowan-1 counted 19'))).toEqual(['counts-contradict']);
  });
  it('is not known where one of them is a colony, which breeds unseen', () => {
    const pond = ['2026-03-01 group Oak: limia; 9; in B1', '2026-03-02 B1: mixed Pebble and Oak'];
    expect(told(roomOf(...pond, '2026-03-10 B1: Oak counted 70'))).not.toContain('counts-contradict');
  });
});

describe('what is in the mix', () => {
  it('is all that both had in that tank, and no longer theirs', () => {
    const room = roomOf(...MIXED);
    expect(counts(room, 'Rowan-1 or Ash')).toBe('C1 32–32; 32–32 in all');
    expect([counts(room, 'Rowan-1'), counts(room, 'Ash')]).toEqual(['A1 32–32; 32–32 in all', '; 0–0 in all']);
    expect([linesOf(room, 'Rowan-1'), linesOf(room, 'Ash'), linesOf(room, 'Rowan-1 or Ash')]).toEqual([
      [1, 2, 3, 4],
      [-3, 4],
      [4],
    ]);
    expect([brood(room, 'Rowan-1').ended, told(room)]).toEqual([null, []]);
  });
  it('leaves what one of them has in two other tanks', () => {
    const three = [...MOVED, '2026-02-20 A1: Rowan-1 moved 10 to C2', '2026-03-01 C1: mixed Rowan-1 and Ash'];
    const room = roomOf(...three);
    expect(counts(room, 'Rowan-1')).toBe('A1 22–22, C2 10–10; 32–32 in all');
    expect(counts(room, 'Rowan-1 or Ash')).toBe('C1 32–32; 32–32 in all');
    // Those can be counted, sold and moved as before.
    const on = roomOf(
      ...three,
      '2026-03-02 A1: Rowan-1 sold 22 at 2.00 each',
      '2026-03-03 C2: Rowan-1 moved all to A2',
    );
    expect([counts(on, 'Rowan-1'), told(on)]).toEqual(['A2 10–10; 10–10 in all', []]);
  });
  it('is a guess where one of them was, and so is what stays behind', () => {
    const guess = [
      '2026-02-02 A1: spawned',
      '2026-02-10 A1: free-swimming, 60',
      '2026-02-20 A1: Rowan-1 moved about 20 to C1',
      '2026-03-01 C1: mixed Rowan-1 and Ash',
    ];
    const room = roomOf(...guess);
    expect(counts(room, 'Rowan-1 or Ash')).toBe('C1 27–37; 27–37 in all');
    expect(counts(room, 'Rowan-1')).toBe('A1 35–45; 35–45 in all');
    const counted = roomOf(...guess, '2026-03-02 A1: Rowan-1 counted 38', '2026-03-02 C1: counted 34');
    expect([counts(counted, 'Rowan-1'), counts(counted, 'Rowan-1 or Ash'), told(counted)]).toEqual([
      'A1 38–38; 38–38 in all',
      'C1 34–34; 34–34 in all',
      [],
    ]);
  });
  it('is found in the tank that both are in, where the line names none', () => {
    for (const line of ['room: mixed Rowan-1 and Ash', 'room: mixed Ash and Rowan-1']) {
      const room = roomOf(...MOVED, `2026-03-01 ${line}`);
      const name = line.endsWith('Ash') ? 'Rowan-1 or Ash' : 'Ash or Rowan-1';
      expect([counts(room, name), counts(room, 'Rowan-1')]).toEqual([
        'C1 32–32; 32–32 in all',
        'A1 32–32; 32–32 in all',
      ]);
    }
  });
});

describe('stocks that cannot be mixed', () => {
  it('are in two tanks: nothing changes, and the move between is asked for', () => {
    const room = roomOf(...SWIM, '2026-03-01 Rowan-1: mixed Rowan-1 and Ash');
    expect(room.problems.map(({ kind, says, write }) => [kind, says, write])).toEqual([
      [
        'not-together',
        'Rowan-1 and Ash are not in one tank',
        'the move that brought them together, before it: C1: moved all Ash to A1',
      ],
    ]);
    expect([counts(room, 'Rowan-1'), counts(room, 'Ash')]).toEqual([
      'A1 52–52; 52–52 in all',
      'C1 12–12; 12–12 in all',
    ]);
    expect([...room.stock.broods.keys()]).toEqual(['Rowan-1']);
  });
  it('are not both there', () => {
    for (const names of ['Rowan-1 and Ash', 'Ash and Rowan-1']) {
      const room = roomOf(...SWIM, `2026-03-01 C1: mixed ${names}`);
      expect(told(room)).toEqual(['not-there']);
      expect([counts(room, 'Rowan-1'), counts(room, 'Ash')]).toEqual([
        'A1 52–52; 52–52 in all',
        'C1 12–12; 12–12 in all',
      ]);
    }
  });
  it('are one already', () => {
    const whole = [...SWIM, '2026-02-20 A1: Rowan-1 moved all to C1', '2026-03-01 C1: mixed Rowan-1 and Ash'];
    const room = roomOf(...whole, '2026-03-02 C1: mixed Rowan-1 and Ash');
    expect(room.problems.map(({ kind, says }) => [kind, says])).toEqual([
      ['not-together', 'Rowan-1 or Ash is one stock already'],
    ]);
    expect(counts(room, 'Rowan-1 or Ash')).toBe('C1 64–64; 64–64 in all');
  });
});
