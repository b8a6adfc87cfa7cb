/** Counts as a keeper writes them: of a whole brood in several tanks, of fish thought gone, of one day, guess on guess. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';
import { doubtsTold, partTold, totalTold } from '../support/told.ts';

const HATCHED = `2026-02-02 A1: spawned
2026-02-10 A1: free-swimming, about 70
`;

const roomOf = (lines: string): Room => journalOn('2026-04-30', HATCHED + lines);

describe('a whole brood in two tanks, counted', () => {
  const split = `2026-03-01 A1: Rowan-1 counted 52
2026-03-05 A1: Rowan-1 moved 20 to A2
`;
  it('higher than a sure count allows contradicts it, and stands', () => {
    const room = roomOf(`${split}2026-03-20 Rowan-1: counted 60\n`);
    expect(doubtsTold(room)).toEqual(['counts-contradict 5 3']);
    expect(room.problems[0]?.says).toContain('60 Rowan-1 counted, but no more than 52 can be left');
    expect(totalTold(room)).toBe('60–60');
  });
  it('as many as surely there contradicts nothing, nor do fewer; and bounds what is counted after it', () => {
    expect(doubtsTold(roomOf(`${split}2026-03-20 Rowan-1: counted 52\n`))).toEqual([]);
    const fewer = `${split}2026-03-20 Rowan-1: counted 40\n`;
    expect(doubtsTold(roomOf(fewer))).toEqual([]);
    expect(totalTold(roomOf(fewer))).toBe('40–40');
    expect(doubtsTold(roomOf(`${fewer}2026-03-25 Rowan-1: counted 41\n`))).toEqual(['counts-contradict 6 5']);
  });
  it('by a guess above the sure count leaves that one standing', () => {
    const room = roomOf(`${split}2026-03-20 Rowan-1: counted about 80\n`);
    expect(doubtsTold(room)).toEqual(['guess-above-count 5 3']);
    expect(totalTold(room)).toBe('52–52');
  });
  it('by a guess that holds the sure count says nothing and widens nothing', () => {
    const room = roomOf(`${split}2026-03-20 Rowan-1: counted about 52\n`);
    expect(doubtsTold(room)).toEqual([]);
    expect(totalTold(room)).toBe('52–52');
  });
  it('lets an earlier contradicted count of one tank bound nothing any more', () => {
    const wrong = `${split}2026-03-06 A2: Rowan-1 counted 20\n2026-03-20 Rowan-1: counted 60\n`;
    expect(doubtsTold(roomOf(`${wrong}2026-03-25 A2: Rowan-1 counted 25\n`))).toEqual(['counts-contradict 6 3']);
  });
  it('corrects a guess that was too low, and leaves the tanks room for it', () => {
    const guessed = '2026-03-05 A1: Rowan-1 moved about 30 to A2\n';
    const room = roomOf(`${guessed}2026-03-20 Rowan-1: counted 300\n`);
    expect(doubtsTold(room)).toEqual(['guess-corrected 4 2']);
    expect(totalTold(room)).toBe('300–300');
    expect(partTold(room, 'A2')).toMatch(/–300$/);
    expect(doubtsTold(roomOf(`${guessed}2026-03-20 Rowan-1: counted 140\n`))).toEqual([]);
    expect(doubtsTold(roomOf(`${guessed}2026-03-20 Rowan-1: counted about 300\n`))).toEqual([]);
  });
  it('fewer than were believed in its tanks leaves each of them possibly empty', () => {
    const room = roomOf(`${split}2026-03-20 Rowan-1: counted 10\n`);
    expect([partTold(room, 'A1'), partTold(room, 'A2'), totalTold(room)]).toEqual(['0–10', '0–10', '10–10']);
  });
});

describe('parts of a whole that was surely counted', () => {
  const whole = '2026-03-01 A1: Rowan-1 counted 20\n';
  const all = `${whole}2026-03-05 A1: moved all Rowan-1 to B1\n`;
  const seen = `${all}2026-03-08 B1: Rowan-1 counted 18\n`;
  it('may be what the other parts leave, and no more: every sure count is shown', () => {
    expect(doubtsTold(roomOf(`${seen}2026-03-09 A1: Rowan-1 counted 2\n`))).toEqual([]);
    const more = roomOf(`${seen}2026-03-09 A1: Rowan-1 counted 3\n`);
    expect(doubtsTold(more)).toEqual(['counts-contradict 6 3 5']);
    expect([partTold(more, 'A1'), partTold(more, 'B1'), totalTold(more)]).toEqual(['3–3', '18–18', '21–21']);
    const guess = roomOf(`${whole}2026-03-05 A1: moved about 8 Rowan-1 to B1\n2026-03-08 B1: Rowan-1 counted 10\n`);
    expect(doubtsTold(guess)).toEqual([]);
  });
  it('are no bound where "all" went and nobody counted them since', () => {
    const room = roomOf(`${all}2026-03-09 A1: Rowan-1 counted 3\n`);
    expect([doubtsTold(room), partTold(room, 'A1'), partTold(room, 'B1')]).toEqual([[], '3–3', '17–17']);
  });
  it('take with them what died since, wherever that was', () => {
    const died = `${seen}2026-03-09 B1: Rowan-1 died 2\n`;
    expect(doubtsTold(roomOf(`${died}2026-03-10 A1: Rowan-1 counted 2\n`))).toEqual([]);
    expect(doubtsTold(roomOf(`${died}2026-03-10 A1: Rowan-1 counted 3\n`))).toEqual(['counts-contradict 7 3 5']);
  });
  it('let no more be moved than they leave', () => {
    const room = roomOf(`${seen}2026-03-09 A1: moved 3 Rowan-1 to C1\n`);
    expect(doubtsTold(room)).toEqual(['more-out-than-in 6 3 5']);
    expect(doubtsTold(roomOf(`${seen}2026-03-09 A1: moved 2 Rowan-1 to C1\n`))).toEqual(['guess-corrected 6 5']);
  });
  it('of which half went are not counted by that word', () => {
    const half = `${whole}2026-03-05 A1: moved half Rowan-1 to B1\n2026-03-06 B1: Rowan-1 counted 12\n`;
    expect([doubtsTold(roomOf(half)), partTold(roomOf(half), 'A1')]).toEqual([[], '8–8']);
    expect(doubtsTold(roomOf(`${half}2026-03-07 A1: Rowan-1 counted 9\n`))).toEqual(['counts-contradict 6 3 5']);
    const sold = `${whole}2026-03-05 A1: sold half Rowan-1 at 3.00 each\n`;
    expect(doubtsTold(roomOf(`${sold}2026-03-06 A1: Rowan-1 counted 12\n`))).toEqual([]);
    expect(doubtsTold(roomOf(`${sold}2026-03-06 A1: Rowan-1 counted 20\n`))).toEqual(['counts-contradict 5 3']);
  });
  it('that all were sold may have left a few', () => {
    const sold = `${whole}2026-03-05 A1: moved 8 Rowan-1 to B1\n2026-03-06 B1: sold all Rowan-1 at 3.00 each\n`;
    const room = roomOf(`${sold}2026-03-12 B1: Rowan-1 counted 1\n`);
    expect([doubtsTold(room), partTold(room, 'B1'), partTold(room, 'A1')]).toEqual([[], '1–1', '12–12']);
  });
});

describe('a brood of which all went', () => {
  const sold = `2026-03-01 A1: Rowan-1 counted 52
2026-03-10 A1: Rowan-1 sold all
`;
  const ended = (room: Room): string | null => room.stock.broods.get('Rowan-1')?.ended?.how ?? null;
  it('is a brood again where some are counted, and none where none are', () => {
    expect(ended(roomOf(sold))).toBe('gone');
    const back = roomOf(`${sold}2026-03-12 A1: Rowan-1 counted 2\n`);
    expect([ended(back), totalTold(back)]).toEqual([null, '2–2']);
    expect(ended(roomOf(`${sold}2026-03-12 A1: Rowan-1 counted 0\n`))).toBe('gone');
  });
});

describe('two counts of one day', () => {
  it('at two times both stand, so that the higher later one contradicts', () => {
    const room = roomOf('2026-03-01 09:00 A1: Rowan-1 counted 52\n2026-03-01 15:00 A1: Rowan-1 counted 57\n');
    expect(doubtsTold(room)).toEqual(['counts-contradict 4 3']);
  });
  it('in two tanks both stand', () => {
    const room = roomOf(`2026-03-01 A1: Rowan-1 moved about 20 to A2
2026-03-02 A1: Rowan-1 counted 30
2026-03-02 A2: Rowan-1 counted 22
`);
    expect(room.stock.broods.get('Rowan-1')?.counts.filter(({ replaced }) => replaced)).toEqual([]);
    expect([partTold(room, 'A1'), partTold(room, 'A2'), totalTold(room)]).toEqual(['30–30', '22–22', '52–52']);
  });
  it('take back only the doubt of the one that gave way', () => {
    const first = `2026-03-01 A1: Rowan-1 counted 52
2026-03-02 A1: Rowan-1 counted 60
2026-03-03 A1: Rowan-1 counted 70
`;
    expect(doubtsTold(roomOf(first))).toEqual(['counts-contradict 4 3', 'counts-contradict 5 4']);
    expect(doubtsTold(roomOf(`${first}2026-03-03 A1: Rowan-1 counted 58\n`))).toEqual(['counts-contradict 4 3']);
  });
});

describe('a sure count of one tank', () => {
  const two = `2026-03-01 A1: Rowan-1 counted 52
2026-03-05 A1: Rowan-1 moved 20 to A2
2026-03-06 A2: Rowan-1 counted 20
`;
  it('that was contradicted bounds the other tank no more', () => {
    const room = roomOf(`${two}2026-03-10 A1: Rowan-1 counted 60\n2026-03-12 A2: Rowan-1 counted 25\n`);
    expect(doubtsTold(room)).toEqual(['counts-contradict 6 3']);
    expect(room.problems[0]?.says).toContain('60 Rowan-1 counted in A1');
  });
  it('stands against a higher guess, which names its line', () => {
    expect(doubtsTold(roomOf(`${two}2026-03-10 A2: Rowan-1 counted about 40\n`))).toEqual(['guess-above-count 6 5']);
    expect(doubtsTold(roomOf(`${two}2026-03-10 A2: Rowan-1 counted about 20\n`))).toEqual([]);
  });
  it('does not bound the brood where the rest were moved elsewhere', () => {
    const moved = `2026-03-05 A1: Rowan-1 moved all to C1
2026-03-06 C1: Rowan-1 counted 40
`;
    // Three that were left behind, found after all were moved.
    const room = roomOf(`${moved}2026-03-07 A1: Rowan-1 counted 3\n`);
    expect(doubtsTold(room)).toEqual([]);
    expect([partTold(room, 'A1'), partTold(room, 'C1')]).toEqual(['3–3', '40–40']);
  });
});

describe('a guess after a guess', () => {
  const guessed = (...about: readonly number[]): string => {
    const counts = about.map((n, at) => `2026-03-${String(at + 10)} C1: Rowan-1 counted about ${String(n)}\n`);
    return totalTold(roomOf(`2026-03-01 A1: Rowan-1 moved all to C1\n${counts.join('')}`));
  };
  it('that holds the old likely number: both bound it', () => {
    expect(guessed(80)).toBe('60–100');
    expect(guessed(80, 68)).toBe('60–85');
    expect(guessed(80, 100)).toBe('75–100');
  });
  it('that is lower tells how few are left', () => {
    expect(guessed(80, 60)).toBe('45–75');
    expect(guessed(80, 60, 20)).toBe('15–25');
  });
  it('that is higher never raises the number, unless the old guess was too low', () => {
    expect(guessed(80, 120)).toBe('90–100');
    expect(guessed(80, 132)).toBe('99–100');
    expect(guessed(80, 136)).toBe('102–170');
  });
});
