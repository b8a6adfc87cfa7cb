/** Doubts as a keeper meets them: what is doubted, where exactly the doubt begins and ends, and what it says. */
import { describe, expect, it } from 'vitest';
import type { Check } from '../../src/checks/check.ts';
import { datedAhead } from '../../src/checks/dated-ahead.ts';
import { forgottenUndo } from '../../src/checks/forgotten-undo.ts';
import { lostBroods } from '../../src/checks/lost-broods.ts';
import { overPromised } from '../../src/checks/over-promised.ts';
import { oddReadings } from '../../src/checks/readings.ts';
import { shrinking } from '../../src/checks/shrinking.ts';
import { twice } from '../../src/checks/twice.ts';
import type { Problem } from '../../src/core/problem.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { day } from '../support/events.ts';
import { readLines, ROOM } from '../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;

function found(check: Check, lines: string, on = '2026-06-30', file?: (line: number) => string): readonly Problem[] {
  const read = readLines(lines);
  expect(read.problems).toEqual([]);
  const events = read.events.map((event) =>
    file ? { ...event, place: { ...event.place, file: file(event.place.line) } } : event,
  );
  return check({ room: foldRoom(events, day(on)), events, today: day(on) });
}
/** The line of each doubt and those beside it, counted from the first after the room's. */
const places = (problems: readonly Problem[]): number[][] =>
  problems.map(({ at, also }) => [at, ...also].map(({ line }) => line - SETUP));

describe('the same twice on a day', () => {
  it('in one line is meant', () => {
    expect(found(twice, '2026-03-01 C1: died 1; died 1\n')).toEqual([]);
  });
  it('three times is doubted twice, each beside the first', () => {
    expect(places(found(twice, '2026-03-01 C1: died 1\n'.repeat(3)))).toEqual([
      [2, 1],
      [3, 1],
    ]);
  });
  it('in two files is doubted, on whichever lines', () => {
    const same = found(twice, '2026-03-01 C1: died 1\n'.repeat(2), '2026-06-30', (line) =>
      line === SETUP + 2 ? 'old.txt' : 'fishroom.txt',
    );
    expect(same).toMatchObject([{ at: { file: 'old.txt' }, also: [{ file: 'fishroom.txt' }] }]);
  });
});

describe('a line dated ahead', () => {
  it('is doubted from the second day after today, once for all its clauses', () => {
    const lines = '2026-07-01 A1: all well\n2026-07-02 A1: all well; died 1 male\n2026-08-01 A1: all well\n';
    const ahead = found(datedAhead, lines);
    expect(places(ahead)).toEqual([[2], [3]]);
    expect(ahead[0]?.says).toBe('this line is dated 2 days after today, and counts for nothing until then');
    expect(ahead[0]?.write).toBe('the day on which it happened, 2026-06-30 or before');
  });
  it('is doubted in a journal that begins today, and in none that lies ahead as a whole', () => {
    const events = (lines: string): ReturnType<typeof readLines>['events'] =>
      readLines(lines).events.filter(({ place }) => place.line > SETUP);
    const lines = '2026-06-30 A1: all well\n2026-08-01 A1: all well\n';
    const doubts = (on: string): readonly Problem[] =>
      datedAhead({ room: foldRoom(events(lines), day(on)), events: events(lines), today: day(on) });
    expect(places(doubts('2026-06-30'))).toEqual([[2]]);
    expect(doubts('2026-06-28')).toEqual([]);
  });
});

describe('a forgotten undo', () => {
  it('is doubted from the 29th day; what may be for good may be said to stay', () => {
    const open = '2026-06-01 A1: air filter in; lights off\n';
    expect(found(forgottenUndo, open, '2026-06-29')).toEqual([]);
    const [filter, lights] = found(forgottenUndo, open, '2026-06-30').map(({ write }) => write);
    expect(filter).toBe('2026-06-30 A1: air filter out   (or, if it is to stay: air filter stays)');
    expect(lights).toBe('2026-06-30 A1: lights on');
  });
});

describe('a brood without a word', () => {
  it('of which the spawning was only suspected is closed by a look', () => {
    const [one, ...more] = found(lostBroods, '2026-02-02 A1: maybe spawned\n2026-02-20 A2: spawned\n', '2026-03-20');
    expect(more).toEqual([]);
    expect(one).toMatchObject({
      says: 'nothing came of the spawn that was suspected here',
      write: 'on the day of the next look: A1: no eggs',
    });
  });
  it('is asked where it hatched, on its last line', () => {
    const lines = '2026-02-02 A1: spawned\n2026-02-05 A1: wrigglers\n';
    const [one] = found(lostBroods, lines, '2026-06-01');
    expect(one?.says).toMatch(/^Rowan-1 should have swum by 2026-02-\d\d, and there is no word of it since$/);
    expect(one?.write).toContain('A1: Rowan-1 eggs gone');
    expect(places(one ? [one] : [])).toEqual([[2]]);
  });
});

describe('lengths that fall', () => {
  const fell = (lines: string): number[][] =>
    places(found(shrinking, `2026-02-02 A1: spawned\n2026-02-10 A1: free-swimming, 60\n${lines}`));
  it('by 3 mm and 15 in a hundred are an eye that erred, by more a slip', () => {
    const from = '2026-04-11 A1: Rowan-1 average 20 mm\n';
    expect(fell(`${from}2026-04-20 A1: Rowan-1 average 14 mm\n`)).toEqual([]);
    expect(fell(`${from}2026-04-20 A1: Rowan-1 average 13.9 mm\n`)).toEqual([[4, 3]]);
  });
  it('are judged against the last of the same kind in the same tank', () => {
    const from = '2026-04-11 A1: Rowan-1 largest 30 mm\n2026-04-12 A1: Rowan-1 average 20 mm\n';
    expect(fell(`${from}2026-04-20 A1: Rowan-1 average 18 mm\n`)).toEqual([]);
    expect(fell(`${from}2026-04-13 A1: Rowan-1 average 25 mm\n2026-04-20 A1: Rowan-1 average 14 mm\n`)).toEqual([
      [6, 5],
    ]);
    expect(fell(`${from}2026-04-20 A1: Rowan-1 largest 20 mm\n`)).toEqual([[5, 3]]);
  });
  it('in another tank are other fish, and those of another stock that moved explain nothing', () => {
    const split = '2026-04-01 A1: Rowan-1 moved 20 to C2\n2026-04-11 A1: Rowan-1 average 28 mm\n';
    expect(fell(`${split}2026-04-20 C2: Rowan-1 average 14 mm\n`)).toEqual([]);
    expect(fell(`${split}2026-04-15 C1: Ash moved 2 to Q1\n2026-04-20 A1: Rowan-1 average 14 mm\n`)).toEqual([[6, 4]]);
  });
  it('of a sample are judged by their mean, and told one by one', () => {
    const young = '2026-02-02 A1: spawned\n2026-02-10 A1: free-swimming, 60\n2026-04-11 A1: Rowan-1 sample 20, 22 mm\n';
    expect(found(shrinking, `${young}2026-04-20 A1: Rowan-1 sample 13, 18 mm\n`)).toEqual([]);
    const [one] = found(shrinking, `${young}2026-04-20 A1: Rowan-1 sample 13, 15 mm\n`);
    expect(one?.says).toBe('Rowan-1: sample 13, 15 mm, after 20, 22 mm before: fish do not shrink');
  });
  it('where a line of the same day replaced the wrong one are none', () => {
    const mended = '2026-04-11 A1: Rowan-1 average 40 mm\n2026-04-11 A1: Rowan-1 average 20 mm\n';
    expect(fell(`${mended}2026-04-20 A1: Rowan-1 average 20 mm\n`)).toEqual([]);
  });
  it('are explained by fish sold or moved between the two days, not before, after, or by some missing', () => {
    const twoDays = (on: string, clause: string): number[][] =>
      fell(
        ['2026-04-11 A1: Rowan-1 average 28 mm', '2026-04-20 A1: Rowan-1 average 14 mm', `${on} A1: Rowan-1 ${clause}`]
          .toSorted()
          .map((line) => `${line}\n`)
          .join(''),
      );
    for (const on of ['2026-04-11', '2026-04-15', '2026-04-20']) {
      expect(twoDays(on, 'sold 20')).toEqual([]);
      expect(twoDays(on, 'moved 20 to A2')).toEqual([]);
      expect(twoDays(on, 'missing 20')).toHaveLength(1);
    }
    for (const on of ['2026-04-10', '2026-04-21']) {
      expect(twoDays(on, 'sold 20')).toHaveLength(1);
      expect(twoDays(on, 'moved 20 to A2')).toHaveLength(1);
    }
  });
});

describe('a reading that no fish room has', () => {
  it.each([
    ['pH 3', 'pH 2.9'],
    ['pH 11', 'pH 11.1'],
    ['KH 60 dKH', 'KH 61 dKH'],
    ['GH 100 dGH', 'GH 101 dGH'],
    ['nitrate 300 as N', 'nitrate 301 as N'],
  ])('is not %s, but %s', (right, wrong) => {
    expect(found(oddReadings, `2026-03-01 A1: ${right}\n`)).toEqual([]);
    expect(found(oddReadings, `2026-03-01 A1: ${wrong}\n`)).toHaveLength(1);
  });
  it('each of a line is doubted for itself', () => {
    expect(found(oddReadings, '2026-03-01 A1: pH 12, KH 80 dKH\n').map(({ says }) => says)).toEqual([
      'a pH of 12 is none that a fish room has',
      'a KH of 80 dH is none that a fish room has',
    ]);
  });
});

describe('promises beyond what is surely alive', () => {
  const brood = '2026-01-02 A1: spawned\n2026-01-12 A1: free-swimming, 30\n';
  it('are doubted at the last of them, and only where something is reserved', () => {
    const all = `${brood}2026-04-01 A1: kept back 20 Rowan-1\n2026-04-02 A1: reserved 6 Rowan-1 till 2026-08-01\n`;
    expect(found(overPromised, all)).toEqual([]);
    const more = `${all}2026-04-03 A1: reserved 5 Rowan-1 till 2026-08-01\n`;
    expect(places(found(overPromised, more))).toEqual([[5, 3, 4]]);
    expect(found(overPromised, `${brood}2026-04-01 A1: kept back 40 Rowan-1\n`)).toEqual([]);
  });
});
