/** Moves that cannot be, in the words that a keeper is told, and what a move of part of a group comes to. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { roomOn } from '../support/events.ts';
import { heads, laid, look, move, named, setUp } from '../support/fishroom.ts';
import { journalOn } from '../support/journal.ts';
import { ROOM } from '../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const roomOf = (...lines: readonly string[]): Room => journalOn('2026-04-30', `${lines.join('\n')}\n`);
const SWIM = ['2026-02-02 A1: spawned', '2026-02-10 A1: free-swimming, 52'];
/** `kind: says; write` of the one thing that is wrong. */
const told = (room: Room): string => {
  const [problem] = room.problems;
  if (problem === undefined || room.problems.length > 1) throw new Error(`${String(room.problems.length)} problems`);
  return `${problem.kind}: ${problem.says}; ${problem.write}`;
};
const also = (room: Room): number[] => room.problems.flatMap((one) => one.also.map(({ line }) => line - SETUP));
const parts = (room: Room, name: string): string =>
  [...((room.stock.groups.get(name) ?? room.stock.broods.get(name))?.parts ?? [])]
    .map(([tank, { low, high }]) => `${tank} ${String(low)}–${String(high)}`)
    .join(', ');
const lines = (room: Room, name: string): number[] =>
  (room.stock.groups.get(name) ?? room.stock.broods.get(name))?.lines.map(({ line }) => line - SETUP) ?? [];
const moves = (room: Room): string[] =>
  room.stock.moves.map(({ body, from, to, as, count }) =>
    [body, from, to, as, `${String(count.low)}–${String(count.high)}`].join(' '),
  );

describe('a tank that fish cannot go to', () => {
  it('is retired: in use again, or another', () => {
    const room = roomOf('2026-02-01 C2: retired', ...SWIM, '2026-02-20 A1: Rowan-1 moved 20 to C2');
    expect(told(room)).toBe('retired-tank: C2 is retired; a tank in use, or declare it again: tank C2: …');
    expect(
      parts(
        roomOf(
          '2026-02-01 C2: retired',
          '2026-02-03 tank C2: 54 L; alone',
          ...SWIM,
          '2026-02-20 A1: Rowan-1 moved 20 to C2',
        ),
        'Rowan-1',
      ),
    ).toBe('A1 32–32, C2 20–20');
  });
  it('is the one where they are', () => {
    expect(told(roomOf(...SWIM, '2026-02-20 A1: moved 20 Rowan-1 to A1'))).toBe(
      'moved-nowhere: A1 is where they already are; the tank that they went to',
    );
  });
  it('is none that is known that day', () => {
    const room = roomOn('2026-02-28', [
      ...setUp,
      laid('2026-01-05'),
      look('2026-01-15', 'free-swimming', heads(40)),
      move('2026-02-01', heads(20), 'D9', { fish: named('Rowan-1') }),
    ]);
    expect(told(room)).toBe(
      'unknown-tank: there is no tank D9 on that day; the tank that they went to, or first: tank D9: …',
    );
    expect([parts(room, 'Rowan-1'), room.stock.moves]).toEqual(['A1 40–40', []]);
  });
  it('is the one where all of them, or the one that is named, went before', () => {
    const all = '2026-02-20 Rowan-1: moved all to C2';
    const brood = roomOf(...SWIM, all, '2026-02-21 Rowan-1: moved 5 to C2');
    expect(told(brood)).toBe('moved-nowhere: Rowan-1 is all in C2 already; the tank that they went to');
    const apart = '2026-02-10 A2: Fern moved to C2';
    const fern = roomOf(apart, '2026-02-11 Sedge: Fern moved to C2');
    expect([told(fern), also(fern)]).toEqual(['moved-nowhere: Fern is in C2 already; the tank that they went to', [1]]);
    const ash = roomOf('2026-02-11 Ash: moved to C1');
    expect(told(ash)).toBe('moved-nowhere: Ash is all in C1 already; the tank that they went to');
    const pair = roomOf('2026-02-11 Rowan: moved to A1');
    expect(told(pair)).toBe('moved-nowhere: Rowan is all in A1 already; the tank that they went to');
    expect([lines(fern, 'Sedge'), lines(ash, 'Ash'), moves(ash)]).toEqual([[-5, 1], [-3], []]);
  });
});

describe('fish of two tanks', () => {
  const apart = '2026-02-10 A1: moved the male to C2';
  it('that all go, and some of them stay, must say from where', () => {
    const rest = roomOf(apart, '2026-02-11 Rowan: moved all to C1, rest stay');
    expect(told(rest)).toBe(
      'which-tank: Rowan is in A1 and C2: this does not say from where they went; A1: moved … Rowan to C1',
    );
    expect([parts(rest, 'Rowan'), also(rest), lines(rest, 'Rowan')]).toEqual(['A1 1–1, C2 1–1', [1], [-6, 1]]);
  });
  it('of which half go must say it too', () => {
    const ash = '2026-02-10 C1: Ash moved 4 to C2';
    expect(told(roomOf(ash, '2026-02-11 Ash: moved half to A2'))).toMatch(/^which-tank: Ash is in C1 and C2: /);
    const there = roomOf(ash, '2026-02-11 Ash: moved half to C2');
    expect([parts(there, 'Ash'), moves(there).at(-1)]).toEqual(['C1 4–4, C2 8–8', 'Ash C1 C2 half 4–4']);
  });
  it('go from the tank that the line names, and from no other', () => {
    const ash = '2026-02-10 C1: Ash moved 4 to C2';
    const room = roomOf(ash, '2026-02-11 C1: Ash moved all to A2');
    expect([parts(room, 'Ash'), room.stock.groups.get('Ash')?.home]).toEqual(['C2 4–4, A2 8–8', 'C1']);
    const pair = roomOf(apart, '2026-02-11 C2: Rowan moved to C1');
    expect(parts(pair, 'Rowan')).toBe('A1 1–1, C1 1–1');
  });
  it('one of which goes to the other is followed by its name', () => {
    const room = roomOf(apart, '2026-02-11 Rowan: female moved to C2');
    expect([parts(room, 'Rowan'), moves(room)]).toEqual([
      'C2 2–2',
      ['Rowan A1 C2 number 1–1', 'Rowan A1 C2 number 1–1'],
    ]);
  });
});

describe('fish that are brought together', () => {
  const apart = '2026-02-10 A1: moved the male to C2';
  it('by a line about all of them go to the one that is there already', () => {
    const room = roomOf(apart, '2026-02-11 Rowan: moved to C2');
    expect([parts(room, 'Rowan'), room.problems, moves(room)[1]]).toEqual(['C2 2–2', [], 'Rowan A1 C2 all 1–1']);
    expect(room.stock.groups.get('Rowan')?.members.map(({ tank }) => tank)).toEqual(['C2', 'C2']);
  });
  it('from two tanks into the third leave those be that are there', () => {
    const three = ['2026-02-10 C1: Ash moved 4 to C2', '2026-02-10 C1: Ash moved 3 to A2'];
    const room = roomOf(...three, '2026-02-11 Ash: moved all to C2');
    expect([parts(room, 'Ash'), moves(room).slice(2)]).toEqual([
      'C2 12–12',
      ['Ash C1 C2 all 5–5', 'Ash A2 C2 all 3–3'],
    ]);
  });
  it('one after the other live there from then on: a new mate joins them there', () => {
    const both = [apart, '2026-02-11 A1: moved the female to C2'];
    expect(roomOf(...both).stock.groups.get('Rowan')?.home).toBe('C2');
    const anew = roomOf(...both, '2026-02-12 C2: male died', '2026-02-13 C2: new male from Ash');
    expect(parts(anew, 'Rowan')).toBe('C2 2–2');
  });
  it('even one fish alone, where it is all of its group, lives where it was moved', () => {
    const oak = roomOf('2026-02-01 group Oak: krib; 1; in C1', '2026-02-10 Oak: moved to C2');
    expect([oak.stock.groups.get('Oak')?.home, parts(oak, 'Oak')]).toEqual(['C2', 'C2 1–1']);
  });
  it('are not where one is alone: it comes back to its own tank', () => {
    const alone = ['2026-02-09 A1: male died', '2026-02-10 A1: moved the female to C2'];
    expect(roomOf(...alone).stock.groups.get('Rowan')?.home).toBe('A1');
    expect(parts(roomOf(...alone, '2026-02-20 C2: female back'), 'Rowan')).toBe('A1 1–1');
  });
});

describe('some of a group', () => {
  it('that can be told apart upset it by going, so that a spawn may be late', () => {
    const upset = (line: string): string => roomOf(line).stock.groups.get('Sedge')?.upset?.how ?? 'quiet';
    expect(upset('2026-02-10 A2: Fern moved to C2')).toBe('moved');
    expect(upset('2026-02-10 C1: Ash moved 4 to C2')).toBe('quiet');
    expect(roomOf('2026-02-10 C1: Ash moved 4 to C2').stock.groups.get('Ash')?.upset ?? null).toBeNull();
  });
  it('that cannot be told apart go by number, the rest stay at home', () => {
    const room = roomOf('2026-02-10 C1: Ash moved 4 to C2', '2026-02-11 C1: Ash moved all to A2, rest stay');
    const ash = room.stock.groups.get('Ash');
    expect(ash?.home).toBe('C1');
    expect(ash?.parts.get('C1')?.low).toBe(1);
    expect(moves(room).map((one) => one.split(' ').slice(0, 4).join(' '))).toEqual([
      'Ash C1 C2 number',
      'Ash C1 A2 number',
    ]);
    expect(lines(room, 'Ash')).toEqual([-3, 1, 2]);
  });
  it('more than there are go nowhere', () => {
    const room = roomOf('2026-02-10 C1: Ash moved 14 to C2');
    expect(room.problems.map(({ kind }) => kind)).toEqual(['more-out-than-in']);
    expect([parts(room, 'Ash'), moves(room), lines(room, 'Ash')]).toEqual(['C1 12–12', [], [-3]]);
  });
  it('of two females asks for the name, with the line as it would be read', () => {
    expect(told(roomOf('2026-02-10 A2: moved 1 to C2'))).toBe(
      'which-member: 1 of Sedge moved, and this does not say which; which of them: moved Fern to C2',
    );
    expect(told(roomOf('2026-02-10 A2: moved half to C2'))).toMatch(/^which-member: half of Sedge moved, /);
  });
});

describe('a group that was told without its tank', () => {
  it('is asked for it, and not taken for gone', () => {
    const elm = '2026-02-01 group Elm: krib; 6';
    expect(told(roomOf(elm, '2026-02-02 Elm: moved 2 to C2'))).toBe(
      'not-there: no line says in which tank Elm is; first: group Elm: in A1',
    );
    expect(told(roomOf(elm, '2026-02-02 C2: Elm counted 6'))).toBe(
      'not-there: no line says in which tank Elm is; first: group Elm: in C2',
    );
    const gone = roomOf(
      '2026-02-01 group Elm: krib; 6; in C2',
      '2026-02-02 Elm: sold all for 20.00',
      '2026-02-03 Elm: died 1',
    );
    expect(told(gone)).toMatch(/^not-there: Elm is not there any more: none of them are left; /);
  });
  it('and put there by it: as many as were told, not as many again', () => {
    const placed = roomOf(
      '2026-02-01 group Elm: krib; 6',
      '2026-02-02 group Elm: in C2',
      '2026-02-03 C2: Elm moved 2 to C1',
    );
    expect([parts(placed, 'Elm'), placed.stock.groups.get('Elm')?.total.high, placed.problems]).toEqual([
      'C2 4–4, C1 2–2',
      6,
      [],
    ]);
    const pair = roomOf('2026-02-01 pair Elm: krib; male; female', '2026-02-02 pair Elm: in C2');
    expect([parts(pair, 'Elm'), pair.stock.groups.get('Elm')?.members.map(({ tank }) => tank)]).toEqual([
      'C2 2–2',
      ['C2', 'C2'],
    ]);
  });
});
