/** What came and what went, as a keeper writes it: sure numbers bound, guesses give way, likely numbers stay likely. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { ROOM } from '../support/lines.ts';
import { journalOn } from '../support/journal.ts';

const SETUP = ROOM.split('\n').length - 1;
const roomOf = (lines: string): Room => journalOn('2026-05-30', lines);
const body = (room: Room, name: string) => {
  const found = room.stock.broods.get(name) ?? room.stock.groups.get(name);
  if (!found) throw new Error(`no ${name}`);
  return found;
};
const words = (count: { low: number; likely: number | null; high: number } | undefined): string =>
  count === undefined ? 'none' : `${String(count.low)}, ${String(count.likely)}, ${String(count.high)}`;
const total = (room: Room, name = 'Rowan-1'): string => words(body(room, name).total);
const part = (room: Room, tank: string, name = 'Rowan-1'): string => words(body(room, name).parts.get(tank));
const doubts = (room: Room): string[] =>
  room.problems.map(({ kind, at, also }) =>
    [kind, String(at.line - SETUP), ...also.map(({ line }) => String(line - SETUP))].join(' '),
  );

const SURE = '2026-02-02 A1: spawned\n2026-02-10 A1: free-swimming, 52\n';
const GUESS = '2026-02-02 A1: spawned\n2026-02-10 A1: free-swimming, about 70\n';

describe('fish that came in', () => {
  it('surely counted bound what is counted later', () => {
    expect(doubts(roomOf('2026-03-01 C1: Ash counted 12\n'))).toEqual([]);
    expect(doubts(roomOf('2026-03-01 C1: Ash counted 13\n'))).toEqual(['counts-contradict 1 -3']);
    expect(doubts(roomOf(`${SURE}2026-03-01 A1: Rowan-1 counted 53\n`))).toEqual(['counts-contradict 3 2']);
  });
  it('by a guess bound nothing', () => {
    const about = '2026-02-01 group Elm: krib; about 12; in 12\n';
    expect(doubts(roomOf(`${about}2026-03-01 12: Elm counted 16\n`))).toEqual(['guess-corrected 2 1']);
    expect(doubts(roomOf(`${about}2026-03-01 12: Elm counted 15\n`))).toEqual([]);
  });
  it('of a colony bound nothing: it breeds on', () => {
    const lines = '2026-02-01 colony Moss: limia; 20; in C2\n2026-03-01 C2: Moss counted 60\n';
    expect(doubts(roomOf(lines))).toEqual([]);
    expect(total(roomOf(lines), 'Moss')).toMatch(/^60, /);
  });
});

describe('half of them', () => {
  it('of an odd number leave one more or one fewer', () => {
    const room = roomOf(`${SURE}2026-03-01 A1: Rowan-1 counted 25\n2026-03-02 A1: Rowan-1 moved half to C1\n`);
    expect([part(room, 'A1'), part(room, 'C1'), total(room)]).toEqual(['12, 12, 13', '12, 13, 13', '25, 25, 25']);
  });
});

describe('of a guessed number', () => {
  it('what surely went leaves the rest guessed', () => {
    const room = roomOf(`${GUESS}2026-03-01 A1: Rowan-1 died 5\n`);
    expect([part(room, 'A1'), total(room)]).toEqual(['30, 65, 135', '30, 65, 135']);
  });
  it('more sold than the low end raise that end, and not the high one', () => {
    const room = roomOf(`${GUESS}2026-03-01 A1: Rowan-1 sold 60\n`);
    expect(doubts(room)).toEqual([]);
    expect(total(room)).toBe('0, 10, 80');
  });
  it('more sold than the high end show that the guess was low, beside its line', () => {
    const room = roomOf(`${GUESS}2026-03-01 A1: Rowan-1 sold 150\n`);
    expect(doubts(room)).toEqual(['guess-corrected 3 2']);
    expect(room.problems[0]?.says).toContain('at least 150 Rowan-1 in A1, where no more than 140');
    expect(total(room)).toBe('0, 0, 38');
    expect(doubts(roomOf(`${GUESS}2026-03-01 A1: Rowan-1 sold 140\n`))).toEqual([]);
  });
  it('where the rest stay, at least one is left', () => {
    const room = roomOf(`${GUESS}2026-03-01 A1: Rowan-1 moved 140 to C1, rest stay\n`);
    expect(doubts(room)).toEqual(['guess-corrected 3 2']);
    expect(part(room, 'C1')).toBe('140, 140, 140');
    expect(body(room, 'Rowan-1').parts.get('A1')?.low).toBe(1);
  });
});

describe('a sure number', () => {
  const moved = `${SURE}2026-03-01 A1: Rowan-1 moved 20 to A2\n`;
  it('in each of two tanks is bounded by what went there', () => {
    expect(doubts(roomOf(`${moved}2026-03-05 A2: Rowan-1 counted 21\n`))).toEqual(['counts-contradict 4 3']);
    expect(doubts(roomOf(`${moved}2026-03-05 A1: Rowan-1 counted 33\n`))).toEqual(['counts-contradict 4 2']);
    expect(doubts(roomOf(`${moved}2026-03-02 A1: Rowan-1 moved 5 to A2\n2026-03-05 A2: Rowan-1 counted 25\n`))).toEqual(
      [],
    );
  });
  it('is exceeded by no sale or move, with the line that bounds it; the rest stay with one', () => {
    const sold = roomOf(`${moved}2026-03-05 A2: Rowan-1 sold 21\n`);
    expect(doubts(sold)).toEqual(['more-out-than-in 4 3']);
    expect(sold.problems[0]?.says).toBe('21 of Rowan-1 went, but A2 held no more than 20');
    expect(sold.problems[0]?.write).toContain('A2: Rowan-1 counted 21');
    const stay = roomOf(`${moved}2026-03-05 A2: Rowan-1 moved 20 to C1, rest stay\n`);
    expect(doubts(stay)).toEqual(['more-out-than-in 4 3']);
    expect(stay.problems[0]?.says).toBe('20 of Rowan-1 went and the rest stay, but A2 held no more than 20');
    expect(stay.problems[0]?.write).toContain('A2: Rowan-1 counted 21');
  });
  it('falls by a guess of how many went: by one at least', () => {
    const lost = `${SURE}2026-03-01 A1: Rowan-1 died about 8\n`;
    expect(total(roomOf(lost))).toBe('42, 44, 46');
    expect(doubts(roomOf(`${lost}2026-03-05 A1: Rowan-1 counted 51\n`))).toEqual(['guess-corrected 4 2']);
    expect(doubts(roomOf(`${lost}2026-03-05 A1: Rowan-1 counted 52\n`))).toEqual(['counts-contradict 4 2']);
  });
  it('is bound no more by a tank of which all went, for a few may have been left', () => {
    const all = `${moved}2026-03-05 A2: Rowan-1 moved all to C1\n2026-03-06 A2: Rowan-1 counted 2\n`;
    expect(doubts(roomOf(all))).toEqual([]);
    expect([part(roomOf(all), 'A2'), total(roomOf(all))]).toEqual(['2, 2, 2', '52, 52, 52']);
  });
  it('that shows one tank to hold more leaves the others fewer', () => {
    const guessed = `${SURE}2026-03-01 A1: Rowan-1 moved about 20 to A2\n2026-03-05 A2: Rowan-1 counted 24\n`;
    const room = roomOf(guessed);
    expect(doubts(room)).toEqual([]);
    expect([part(room, 'A1'), part(room, 'A2'), total(room)]).toEqual(['27, 28, 28', '24, 24, 24', '51, 52, 52']);
  });
});

describe('a brood of which none is left', () => {
  it('is gone by the line that took the last, not by one that left some', () => {
    const ended = (lines: string) => {
      const found = roomOf(SURE + lines).stock.broods.get('Rowan-1')?.ended ?? null;
      return found && [found.how, found.place.line - SETUP];
    };
    expect(ended('2026-03-01 A1: Rowan-1 sold 51\n')).toBeNull();
    expect(ended('2026-03-01 A1: Rowan-1 sold 50\n2026-03-02 A1: Rowan-1 died 2\n')).toEqual(['gone', 4]);
    expect(ended('2026-03-01 A1: Rowan-1 moved 20 to A2\n2026-03-02 A1: Rowan-1 sold all\n')).toBeNull();
  });
  it('leaves a pair in its tank alone', () => {
    const room = roomOf(`${SURE}2026-03-01 A1: Rowan-1 sold all\n`);
    expect([...body(room, 'Rowan').parts.keys()]).toEqual(['A1']);
    expect(total(room)).toBe('0, 0, 0');
  });
});
