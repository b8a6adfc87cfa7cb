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

describe('fish bought to a group that is there', () => {
  it('in another tank raise that tank and the whole, and nothing in the first', () => {
    const room = roomOf('2026-03-01 C2: bought 4 krib as Ash\n');
    expect([part(room, 'C1', 'Ash'), part(room, 'C2', 'Ash')]).toEqual(['12, 12, 12', '4, 4, 4']);
    expect(total(room, 'Ash')).toBe('16, 16, 16');
  });
  it('in another tank bound what is counted in each, and in both', () => {
    const bought = '2026-03-01 C2: bought 4 krib as Ash\n';
    expect(doubts(roomOf(`${bought}2026-03-02 C2: Ash counted 4\n2026-03-02 C1: Ash counted 12\n`))).toEqual([]);
    expect(doubts(roomOf(`${bought}2026-03-02 C2: Ash counted 5\n`))).toEqual(['counts-contradict 2 1']);
    expect(doubts(roomOf(`${bought}2026-03-02 C1: Ash counted 13\n`))).toEqual(['counts-contradict 2 -3']);
    expect(doubts(roomOf(`${bought}2026-03-02 Ash: counted 16\n`))).toEqual([]);
    expect(doubts(roomOf(`${bought}2026-03-02 Ash: counted 17\n`))).toEqual(['counts-contradict 2 1']);
  });
  it('in the same tank are bounded with those that were there', () => {
    const bought = '2026-03-01 C1: bought 4 krib as Ash\n';
    expect(doubts(roomOf(`${bought}2026-03-02 C1: Ash counted 16\n`))).toEqual([]);
    expect(doubts(roomOf(`${bought}2026-03-02 C1: Ash counted 17\n`))).toEqual(['counts-contradict 2 1']);
  });
  it('by a guess, or to a guessed number, bound the whole no more', () => {
    const guessed = '2026-03-01 C2: bought about 4 krib as Ash\n';
    expect(doubts(roomOf(`${guessed}2026-03-02 C2: Ash counted 6\n`))).toEqual(['guess-corrected 2 -3']);
    expect(total(roomOf(`${guessed}2026-03-02 C2: Ash counted 6\n`), 'Ash')).toBe('18, 18, 18');
    const elm = '2026-02-01 group Elm: krib; about 12; in 12\n2026-03-01 12: bought 4 krib as Elm\n';
    expect(doubts(roomOf(`${elm}2026-03-02 12: Elm counted 19\n`))).toEqual([]);
    expect(doubts(roomOf(`${elm}2026-03-02 12: Elm counted 22\n`))).toEqual(['guess-corrected 3 1']);
  });
  it('where none were left, are all there are', () => {
    for (const went of ['C1: Ash sold all', 'C1: Ash died 12']) {
      const room = roomOf(`2026-03-01 ${went}\n2026-03-02 C1: bought 4 krib as Ash\n2026-03-03 C1: Ash counted 5\n`);
      expect(doubts(room)).toEqual(['counts-contradict 3 2']);
    }
  });
});

describe('fish of two tanks that go by a line which names no tank', () => {
  const two = `${SURE}2026-03-01 A1: Rowan-1 moved 20 to A2\n`;
  it('may have been of either tank: each may hold fewer, none holds more', () => {
    const room = roomOf(`${two}2026-03-02 Rowan-1: died 3\n`);
    expect([part(room, 'A1'), part(room, 'A2'), total(room)]).toEqual(['29, 32, 32', '17, 20, 20', '49, 49, 49']);
    expect(doubts(roomOf(`${two}2026-03-02 Rowan-1: died 3\n2026-03-03 A2: Rowan-1 counted 20\n`))).toEqual([]);
    expect(part(roomOf(`${two}2026-03-02 Rowan-1: died 3\n2026-03-03 A2: Rowan-1 counted 20\n`), 'A1')).toBe(
      '29, 29, 29',
    );
  });
  it('more than a tank holds leave it possibly empty, and no more than all of them gone', () => {
    const room = roomOf(`${two}2026-03-02 Rowan-1: sold 25\n`);
    expect([part(room, 'A1'), part(room, 'A2'), total(room)]).toEqual(['7, 27, 27', '0, 20, 20', '27, 27, 27']);
    expect(total(roomOf(`${two}2026-03-02 Rowan-1: sold 52\n`))).toBe('0, 0, 0');
  });
  it('cannot be more than were surely counted in both', () => {
    const room = roomOf(`${two}2026-03-02 Rowan-1: sold 53\n`);
    expect(doubts(room)).toEqual(['more-out-than-in 4 2']);
    expect(room.problems[0]?.says).toBe('53 of Rowan-1 went, but there were no more than 52');
    expect(total(room)).toBe('52, 52, 52');
    const again = roomOf(`${two}2026-03-02 Rowan-1: sold 40\n2026-03-03 Rowan-1: sold 13\n`);
    expect(doubts(again)).toEqual(['more-out-than-in 5 2']);
    expect(total(again)).toBe('12, 12, 12');
  });
  it('more than were guessed show that the guess was low', () => {
    const guessed = `${GUESS}2026-03-01 A1: Rowan-1 moved about 20 to A2\n`;
    expect(doubts(roomOf(`${guessed}2026-03-02 Rowan-1: sold 140\n`))).toEqual([]);
    const room = roomOf(`${guessed}2026-03-02 Rowan-1: sold 141\n`);
    expect(doubts(room)).toEqual(['guess-corrected 4 2']);
    expect(room.problems[0]?.says).toContain('at least 141 Rowan-1, where no more than 140 were guessed');
    expect(total(room)).toBe('0, 0, 36');
  });
  it('all of them, or half', () => {
    const all = roomOf(`${two}2026-03-02 Rowan-1: sold all\n`);
    expect([part(all, 'A1'), part(all, 'A2'), total(all)]).toEqual(['none', 'none', '0, 0, 0']);
    expect(body(all, 'Rowan-1')).toMatchObject({ ended: { how: 'gone' } });
    const half = roomOf(`${two}2026-03-02 Rowan-1: died half\n`);
    expect([part(half, 'A1'), part(half, 'A2'), total(half)]).toEqual(['6, 26, 26', '0, 20, 20', '26, 26, 26']);
  });
});

describe('fish moved by a guess', () => {
  it('out of a tank that nothing sure bounds bound nothing where they went', () => {
    const moved = `${GUESS}2026-03-01 A1: Rowan-1 moved about 20 to A2\n`;
    const room = roomOf(`${moved}2026-03-05 A2: Rowan-1 counted 160\n`);
    expect(doubts(room)).toEqual(['guess-corrected 4 2']);
    expect(part(room, 'A2')).toBe('160, 160, 160');
  });
  it('out of a tank of sure numbers are no more than were there', () => {
    const moved = `${SURE}2026-03-01 A1: Rowan-1 moved about 20 to A2\n`;
    expect(doubts(roomOf(`${moved}2026-03-05 A2: Rowan-1 counted 52\n`))).toEqual(['guess-corrected 4 3']);
    expect(doubts(roomOf(`${moved}2026-03-05 A2: Rowan-1 counted 53\n`))).toEqual(['counts-contradict 4 3']);
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
