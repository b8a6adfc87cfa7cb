/** Jars of live food. Times of microworms: common practice, no source (first harvest 3 d, restart 2 weeks, sour by 5). */
import { describe, expect, test } from 'vitest';
import { isoDay, toDay } from '../../src/core/day.ts';
import { cultures, liveFood, type CulturesAnswer } from '../../src/questions/cultures.ts';
import { culturesText } from '../../src/reports/cultures.ts';
import { plainLook } from '../../src/reports/look.ts';
import { BROOD } from '../support/brood.ts';
import { cultureDue } from '../../src/questions/due/culture.ts';
import { foodClock } from '../../src/science/foods.ts';
import type { Subject } from '../../src/journal/subject.ts';
import { day, roomOn, tank } from '../support/events.ts';
import type { Line } from '../support/events.ts';

const jar = (name: string): Subject => ({ kind: 'culture', culture: name });
const declared = (name: string, of = 'microworm'): Line => [
  '2026-01-01',
  jar(name),
  { kind: 'culture declared', culture: name, of },
];
const started = (on: string, name: string): Line => [on, jar(name), { kind: 'culture started' }];
const sour = (on: string, name: string): Line => [on, jar(name), { kind: 'culture sour' }];

test('usual times of microworms', () => {
  expect(foodClock('Microworm')).toEqual({ first: 3, restart: 14, sour: 35 });
  expect(foodClock('mosquito larvae')).toBeNull();
});

test('a food of which nothing lives says how to begin again, and no line is wider than the screen', () => {
  const gone = roomOn('2026-03-20', [declared('M1'), declared('M2'), started('2026-01-01', 'M1')]);
  const said = culturesText(cultures(gone), plainLook(gone.on));
  expect(said).toContain('\nmicroworm: no jar is alive: start one anew\njot  M1: started\n');
  const hungry = roomOn('2026-01-06', [...BROOD, declared('M1')]);
  const text = culturesText(cultures(hungry), plainLook(hungry.on));
  expect(text).toContain('nothing for them yet');
  for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
});

describe('jars', () => {
  const lines = [declared('M1'), declared('M2'), started('2026-01-01', 'M1'), started('2026-01-12', 'M2')];

  test('a jar is young, live, old or sour', () => {
    const states = (on: string): string[] => cultures(roomOn(on, lines)).foods[0]?.jars.map(({ state }) => state) ?? [];
    expect(states('2026-01-03')).toEqual(['young', 'not started']);
    expect(states('2026-01-13')).toEqual(['live', 'young']);
    expect(states('2026-02-05')).toEqual(['old', 'live']);
  });

  test('the next one is due two weeks after the youngest', () => {
    const [row] = cultureDue(roomOn('2026-01-20', lines), 7);
    expect(row).toMatchObject({ due: { low: day('2026-01-26') }, place: 'M2', weight: 0, close: 'M2: split to M1' });
  });

  test('one jar alone is too few: the next as soon as it can be harvested, into the sour one', () => {
    const [row] = cultureDue(roomOn('2026-01-20', [...lines, sour('2026-01-14', 'M1')]), 7);
    expect(row).toMatchObject({ due: { low: day('2026-01-15') }, weight: 1, close: 'M2: split to M1' });
    expect(row?.why).toContain('M1 went sour');
  });

  test('none alive: start anew, until it is plainly given up', () => {
    const all = [...lines, sour('2026-01-14', 'M1'), sour('2026-01-20', 'M2')];
    expect(cultureDue(roomOn('2026-01-21', all), 7)).toMatchObject([
      { due: { low: day('2026-01-20') }, close: 'M2: started' },
    ]);
    expect(cultureDue(roomOn('2026-06-21', all), 7)).toEqual([]);
  });

  test("the keeper's own chore stands instead", () => {
    const chore: Line = [
      '2026-01-02',
      jar('M1'),
      {
        kind: 'chore set',
        action: { kind: 'restart', text: null },
        every: { unit: 'days', low: 10, likely: 10, high: 10 },
        monthly: null,
        levelAbove: null,
        amount: null,
        takes: null,
      },
    ];
    expect(cultureDue(roomOn('2026-01-20', [...lines, chore]), 7)).toEqual([]);
  });

  test('a slow food does in one jar, a strange one is only listed', () => {
    const slow = [declared('V1', 'vinegar eel'), started('2026-01-01', 'V1')];
    expect(cultureDue(roomOn('2026-02-20', slow), 7)).toMatchObject([{ due: { low: day('2026-05-01') } }]);
    const strange = [declared('X1', 'mosquito larvae'), started('2026-01-01', 'X1')];
    expect(cultureDue(roomOn('2026-02-20', strange), 7)).toEqual([]);
    expect(cultures(roomOn('2026-02-20', strange)).foods).toMatchObject([
      { of: 'mosquito larvae', live: 1, restart: null },
    ]);
  });
});

test('what can be fed: jars past their first harvest, hatches a day to a day and a half old', () => {
  const hatch: Line = ['2026-01-05', tank('A1'), { kind: 'hatch set', grams: null, of: 'brine shrimp' }];
  const lines = [declared('M1'), started('2026-01-04', 'M1'), hatch];
  const names = (on: string): (string | number)[] => {
    const { jars, hatches } = liveFood(roomOn(on, lines));
    return [...jars.map(({ name }) => name), hatches.length];
  };
  expect(names('2026-01-05')).toEqual([0]);
  expect(names('2026-01-06')).toEqual([1]);
  expect(names('2026-01-07')).toEqual(['M1', 1]);
  expect(names('2026-02-08')).toEqual([0]);
});

describe('young that will swim', () => {
  const eggs = BROOD.slice(0, 7);
  const need = (on: string, more: readonly Line[] = []): CulturesAnswer['needs'] =>
    cultures(roomOn(on, [...eggs, ...more])).needs;

  test('need a hatch a day or two before the first day on which they may swim', () => {
    const [row] = need('2026-01-04');
    expect(row).toMatchObject({ brood: 'Rowan-1', tanks: ['A1'], covered: null, foods: ['brine shrimp', 'microworm'] });
    const first = row?.swims.low ?? day('2026-01-01');
    expect(first).toBeGreaterThan(day('2026-01-05'));
    expect(row?.setHatch).toMatchObject({ low: first - 2, high: first - 1 });
    expect(need('2026-01-13', [BROOD[7] ?? eggs[0] ?? declared('M1')])).toEqual([]);
  });

  test('a live jar of what they eat will do, a hatch set in time too, an old one not', () => {
    const [row] = need('2026-01-06');
    const hatch = (on: number): Line => [
      isoDay(toDay(on)),
      tank('A1'),
      { kind: 'hatch set', grams: null, of: 'brine shrimp' },
    ];
    const first = Math.max(row?.swims.low ?? 0, day('2026-01-06'));
    const later = isoDay(toDay(first));
    expect(need(later, [hatch(first - 1)])[0]?.covered).toMatch(/^brine shrimp set/);
    expect(need(later, [hatch(first - 4)])[0]?.covered).toBeNull();
    expect(need(later, [declared('M1'), started('2026-01-01', 'M1')])[0]?.covered).toBe('microworm in M1');
  });

  test('four days before, it is the first thing said', () => {
    const room = roomOn('2026-01-05', eggs);
    expect(culturesText(cultures(room), plainLook(room.on))).toMatch(
      /^Mon 5 Jan 2026: Rowan-1 in A1 swims .*nothing for them yet/s,
    );
  });
});

test('a harvest proves a jar alive, whatever its age', () => {
  const harvest = (on: string): Line => [on, jar('M1'), { kind: 'culture harvested' }];
  const lines = [declared('M1'), started('2026-01-01', 'M1'), harvest('2026-03-01')];
  const state = (on: string): string | undefined => cultures(roomOn(on, lines)).foods[0]?.jars[0]?.state;
  expect(state('2026-03-05')).toBe('live');
  expect(state('2026-03-12')).toBe('old');
});
