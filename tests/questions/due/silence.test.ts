/** Tanks of which nothing was said: one row, the longest silent first, and none for a tank that is known to be empty. */
import { describe, expect, it } from 'vitest';
import { silenceDue } from '../../../src/questions/due/silence.ts';
import { watchDue } from '../../../src/questions/due/watch.ts';
import { rowOf, rowsOf } from './rows.ts';

const row = (on: string, lines: string): ReturnType<typeof rowOf> => rowOf(silenceDue, on, lines);
/** Word of every tank of the room on that day but some. */
const wordOn = (on: string, ...but: readonly string[]): string =>
  ['A1', 'A2', 'B1', 'C1', 'C2', 'Q1', 'tank 12']
    .filter((tank) => !but.includes(tank))
    .map((tank) => `${on} ${tank}: all well\n`)
    .join('');

describe('silence', () => {
  it('of one tank is told with that tank, from the eighth day on', () => {
    const lines = `2026-02-08 C1: all well\n${wordOn('2026-02-14', 'C1')}`;
    expect(row('2026-02-15', lines)).toMatchObject({
      id: 'room-silence',
      place: 'C1',
      what: 'look at C1',
      due: '2026-02-15',
      weight: 0,
      why: 'no word of it since 8 Feb',
      close: 'C1: all well',
      key: 'silence',
      pressing: false,
      steps: ['C1: last word 8 Feb'],
      lines: [1],
    });
    expect(rowsOf(silenceDue, '2026-02-14', lines)).toEqual([]);
  });
  it('of several names six, the longest silent first, and counts the rest', () => {
    const lines = `2026-02-02 C1: all well\n${wordOn('2026-02-04', 'C1')}`;
    expect(row('2026-02-15', lines)).toMatchObject({
      place: 'room',
      what: 'look at C1, 12, A1, A2, B1, C2 and 1 more',
      why: 'no word of 7 tanks for a week or more, the longest since 2 Feb',
      close: 'room: all well',
    });
    expect(row('2026-02-15', `${lines}2026-02-14 tank 12: all well\n`).what).toBe('look at C1, A1, A2, B1, C2 and Q1');
  });
  it('counts from the day of its tank where no line spoke of it', () => {
    const found = row('2026-02-15', `${wordOn('2026-02-14')}2026-02-03 tank 9: 20 L; alone\n`);
    expect(found).toMatchObject({ what: 'look at 9', why: 'no word of it since 3 Feb', lines: [8] });
    expect(rowsOf(silenceDue, '2026-02-09', `${wordOn('2026-02-08')}2026-02-03 tank 9: 20 L; alone\n`)).toEqual([]);
  });
  it('is not told of a tank that lost its last fish, that stands for the new water, or is retired', () => {
    const others = wordOn('2026-02-14', 'C2');
    const elm = '2026-01-02 group Elm: krib; 3; in C2\n';
    expect(row('2026-02-15', others + elm).what).toBe('look at C2');
    expect(rowsOf(silenceDue, '2026-02-15', `${others}${elm}2026-01-03 C2: Elm died 3\n`)).toEqual([]);
    expect(rowsOf(silenceDue, '2026-02-15', `${others}2026-02-01 C2: retired\n`)).toEqual([]);
    expect(rowsOf(silenceDue, '2026-02-15', `${wordOn('2026-02-14')}2026-01-01 tank Tap: 20 L; alone\n`)).toEqual([]);
  });
});

describe('a water watch', () => {
  it('asks for a test on the day after the last, with what was tested and till when it goes on', () => {
    const tests = '2026-06-06 C1: test TAN 0, NO2 0, pH 7, 25 C\n2026-06-07 C1: test TAN 1, NO2 0, pH 7, 25 C\n';
    expect(rowOf(watchDue, '2026-06-10', `2026-06-05 C1: rinsed sponge\n${tests}`)).toEqual({
      id: 'c1-water-watch',
      place: 'C1',
      what: 'test ammonia and nitrite',
      due: '2026-06-08',
      weight: 2,
      why: 'its only sponge rinsed on 5 Jun; day 5 of at least 14, 0 of 3 double zeros; half feed, no new fish in',
      close: 'C1: test pH …, TAN …, NO2 …, … C',
      caution: 'what raises pH makes more of it toxic: test again after every change or dose',
      after: null,
      key: 'water watch',
      pressing: true,
      steps: [
        'its only sponge rinsed on 5 Jun',
        '6 Jun: double zero',
        '7 Jun: not clear',
        'day 5 of at least 14, 0 of 3 double zeros, so not over before 19 Jun',
      ],
      lines: [1, 2, 3],
    });
  });
  it('of a fresh air filter says since when, and its own caution', () => {
    const found = rowOf(watchDue, '2026-06-10', '2026-06-08 A2: off the loop, air filter in\n');
    expect(found.why).toMatch(/^off the loop on a fresh air filter since 8 Jun; day 2 of /);
    expect(found.caution).toBe('a fresh air filter is not mature for 2 to 6 weeks: little feed, test ammonia');
  });
  it('of several waters that one line disturbed is one row, as long as they say the same', () => {
    const both = '2026-06-01 A2: off the loop\n2026-06-08 room: power off 8 h\n';
    const told = (lines: string): string[] =>
      rowsOf(watchDue, '2026-06-10', lines).map(({ id, what }) => `${id}: ${what}`);
    const [all, ...others] = told(both);
    expect(others).toEqual([]);
    expect(all).toMatch(/^room-water-watch-8-jun-long: test ammonia and nitrite in .*C1.*$/);
    const apart = told(`${both}2026-06-09 C1: test TAN 0, NO2 0, pH 7, 25 C\n`);
    expect(apart.map((one) => one.split(':')[0])).toContain('c1-water-watch');
  });
});
