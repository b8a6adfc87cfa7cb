/** Rows of chores and tasks as a whole: what to do, how much of it, with which caution, and the line that closes it. */
import { describe, expect, it } from 'vitest';
import { choresDue } from '../../../src/questions/due/chores.ts';
import { rowOf, rowsOf, type Told } from './rows.ts';

const one = (lines: string, on = '2026-03-20'): Told => rowOf(choresDue, on, lines, 0);
const ids = (lines: string, on = '2026-03-20', days = 0): string[] =>
  rowsOf(choresDue, on, lines, days).map(({ id }) => id);
const change = (much: string, where = 'C1'): string => `2026-01-04 ${where}: water change ${much} every 7 days\n`;

describe('a water change', () => {
  it('is told in litres of the live water, with the caution of the tap and what would follow', () => {
    const row = one(change('30 %'));
    expect(row).toMatchObject({
      id: 'c1-water-change',
      place: 'C1',
      what: 'water change 30 % (about 14 L)',
      due: '2026-01-11',
      weight: 1,
      why: 'not yet done, set 4 Jan',
      close: 'C1: water change 30 %',
      key: 'water change',
      pressing: false,
      lines: [1],
    });
    expect(row.caution).toMatch(/^tap water: no chlorine or chloramine, same temperature; .* by mouth$/);
    expect(row.after).toContain('TAN unknown: test first');
    expect(row.steps).toEqual([
      'not done since it was set on 4 Jan',
      'every 7 days: 4 Jan + 7 days = due 11 Jan',
      row.after,
    ]);
    expect(one(change('20 L')).what).toBe('water change 20 L');
    expect(one(change(''))).toMatchObject({ what: 'water change', close: 'C1: water change' });
  });
  it.each([
    // So that no step reaches half of the water: 1 − (1 − share)^(1 / days).
    ['49 %', null],
    ['20 L', null],
    ['25 L', ': 33 % on each of 2 days'],
    ['50 %', ': 30 % on each of 2 days'],
    ['60 %', ': 37 % on each of 2 days'],
    ['75 %', ': 38 % on each of 3 days'],
    ['100 %', ''],
  ])('of half of it or more is parted into days: %s', (much, steps) => {
    const { caution } = one(change(much));
    const large = 'heater off before a large change, on again when covered; large changes in daily steps';
    if (steps === null) expect(caution).not.toContain('large');
    else expect(caution?.endsWith(`; ${large}${steps}`)).toBe(true);
  });
  it('of a loop names the tanks that it does not reach', () => {
    const loop = change('30 %', 'Long');
    expect(one(loop).why).toBe('not yet done, set 4 Jan');
    expect(one(`${loop}2026-03-18 A2: off the loop\n`).why).toBe(
      'not yet done, set 4 Jan; A2 off the loop: change it apart',
    );
    const two = `${loop}2026-03-18 A2: off the loop\n2026-03-18 B1: off the loop\n2026-03-18 C1: air filter in\n`;
    expect(one(two).why).toBe('not yet done, set 4 Jan; A2, B1 off the loop: change them apart');
    expect(one(`${loop}2026-03-10 A2: off the loop\n2026-03-18 A2: back on the loop\n`).why).not.toContain(
      'off the loop',
    );
  });
});

describe('a chore', () => {
  it.each([
    ['C1: rinse sponge every 7 days', 'C1: rinsed sponge', null],
    ['Long: clean media every 8 weeks', 'Long: cleaned media', 'cut the power before hands go in'],
    ['A1: top up every 3 days', 'A1: topped up', 'tap water: no chlorine'],
    ['A1: test every 7 days', 'A1: test pH …, TAN …, NO2 …, NO3 …', null],
    ['C2: feed every 1 days', 'C2: fed microworm', null],
    ['M1: harvest every 3 days', 'M1: harvested', null],
    ['M1: restart every 3 weeks', 'M1: started', null],
    ['C1: "polish glass" every 7 days', 'C1: did "polish glass"', null],
  ])('is closed by its own line, with its caution: «%s»', (set, close, caution) => {
    const row = one(`2026-01-04 ${set}\n`);
    expect([row.close, row.after]).toEqual([close, null]);
    if (caution === null) expect(row.caution).toBeNull();
    else expect(row.caution).toContain(caution);
  });
  it('in words that name what raises pH tells what would follow', () => {
    expect(one('2026-01-04 C1: "baking soda, a spoon" every 7 days\n').after).toContain('TAN unknown: test first');
  });
  it('comes into sight so many days ahead, and rests with a tank that is retired or where it was stopped', () => {
    expect([ids(change('30 %'), '2026-01-08', 2), ids(change('30 %'), '2026-01-08', 3)]).toEqual([
      [],
      ['c1-water-change'],
    ]);
    expect(ids(`${change('30 %', 'C2')}2026-01-10 C2: retired\n`)).toEqual([]);
    expect(ids(`${change('30 %')}2026-02-10 C1: stop water change\n`)).toEqual([]);
  });
  it('harvests nothing of a jar that is too young or sour', () => {
    const jar = '2026-01-04 M1: harvest every 3 days\n2026-03-10 M1: started\n';
    // Microworm gives from the third day on (common practice, no source: `science/foods`).
    expect([ids(jar, '2026-03-12'), ids(jar, '2026-03-13')]).toEqual([[], ['m1-harvest']]);
    expect(ids(`${jar}2026-03-14 M1: sour\n`)).toEqual([]);
    expect(ids('2026-01-04 C2: feed every 1 days\n2026-03-20 M1: started\n')).toEqual(['c2-feed']);
  });
});

describe('a task', () => {
  it('is told with its day, or since when it is open', () => {
    expect(one('2026-03-01 A1: to do "new lid" by 2026-03-15\n')).toMatchObject({
      id: 'a1-new-lid',
      place: 'A1',
      what: 'new lid',
      due: '2026-03-15',
      weight: 1,
      why: 'to do since 1 Mar, by 15 Mar',
      close: 'A1: did "new lid"',
      after: null,
      key: 'new lid',
      pressing: false,
      steps: ['set on 1 Mar, by 15 Mar'],
      lines: [1],
    });
    const soda = one('2026-03-01 room: to do "dose baking soda"\n');
    expect(soda).toMatchObject({ due: '2026-03-01....2026-03-20', weight: 0, why: 'to do since 1 Mar, no date set' });
    expect(soda.after).toContain('TAN unknown: test first');
    expect(soda.steps).toEqual(['set on 1 Mar, no date set', soda.after]);
  });
  it('is gone once it was done, or its tank retired', () => {
    const set = '2026-03-01 C2: to do "new lid"\n';
    expect(ids(`${set}2026-03-02 C2: did "New lid"\n`)).toEqual([]);
    expect(ids(`${set}2026-03-02 C2: retired\n`)).toEqual([]);
  });
});
