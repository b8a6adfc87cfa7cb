/** How a prefilter stands: which levels speak, when it spills, when that is near, and what a part of a clean buys. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { measure } from '../../src/core/quantity.ts';
import {
  cleanInterval,
  lastsOf,
  levelWords,
  mmWords,
  prefilterOf,
  type Prefilter,
} from '../../src/questions/prefilter.ts';
import { day, loop, roomOn, type Line } from '../support/events.ts';
import { begin, cleaned, level, SET_UP, undo } from '../support/waters.ts';

/** The same room, where nobody set the height at which the loop spills. */
const NO_LIP = SET_UP.map((line): Line => {
  const [on, about, fact] = line;
  return fact.kind === 'loop declared' ? [on, about, { ...fact, spillsAt: null }] : line;
});
const longOn = (on: string, lines: readonly Line[], setUp = SET_UP) => {
  const room = roomOn(on, [...setUp, ...lines]);
  const found = room.plumbing.loops.get('Long');
  if (found === undefined) throw new Error('no loop');
  return { room, loop: found };
};
const stands = (on: string, lines: readonly Line[], setUp = SET_UP): Prefilter => {
  const { room, loop: long } = longOn(on, lines, setUp);
  return prefilterOf(room, long);
};
const words = (on: string, lines: readonly Line[], setUp = SET_UP): string => {
  const { room, loop: long } = longOn(on, lines, setUp);
  return levelWords(long, prefilterOf(room, long), room.on);
};
const spill = ({ spill: window }: Prefilter): string =>
  window === null
    ? 'none'
    : [window.low, window.high].map((one) => (one === null ? 'open' : isoDay(one).slice(5))).join(' to ');
const FULL = cleaned('2026-01-11', 6);
const CLEAR = level('2026-01-11', 20);
describe('the levels that speak', () => {
  it('are those since the last clean, of whatever thoroughness', () => {
    const seen = stands('2026-02-20', [
      level('2026-01-10', 70),
      FULL,
      CLEAR,
      level('2026-02-01', 40),
      cleaned('2026-02-05', 2),
      level('2026-02-06', 30),
    ]);
    expect(seen.since.map(({ level: { likely } }) => likely)).toEqual([30]);
    expect(seen.level?.level.likely).toBe(30);
    expect([seen.lastClean?.day, seen.lastFull?.day]).toEqual([day('2026-02-05'), day('2026-01-11')]);
    expect(seen.places).toHaveLength(2);
  });
  it('are all where nothing was cleaned yet, and none where nothing was read', () => {
    expect(stands('2026-02-20', [CLEAR, level('2026-02-01', 40)]).since).toHaveLength(2);
    const none = stands('2026-02-20', []);
    expect([none.level, none.since, none.steps, none.places, none.near]).toEqual([null, [], [], [], false]);
    expect(words('2026-02-20', [FULL])).toBe('no level since the clean');
  });
  it('are not those read with the pump off: these are told as left out', () => {
    const off = [
      begin('2026-02-01', loop('Long'), 'pump off'),
      level('2026-02-01', 5),
      undo('2026-02-02', loop('Long'), 'pump off'),
    ];
    const seen = stands('2026-02-20', [FULL, CLEAR, ...off, level('2026-02-03', 40)]);
    expect(seen.since).toHaveLength(2);
    expect(seen.steps.at(-1)).toBe('left out: 5 mm on 1 Feb, read with the pump off');
    expect(stands('2026-02-20', [FULL, CLEAR, ...off, cleaned('2026-02-04', 6)]).steps).toEqual([]);
  });
});

describe('why there is no forecast', () => {
  const why = (...lines: Line[]): string | null => stands('2026-02-20', [FULL, ...lines]).whyNot;
  it('is that nobody set the height, read too little, or that it falls or stands', () => {
    expect(stands('2026-02-20', [FULL, CLEAR, level('2026-02-01', 40)], NO_LIP).whyNot).toContain(
      'the height at which it spills is not set',
    );
    expect(why(CLEAR)).toContain('fewer than two levels');
    expect(why(CLEAR, level('2026-02-01', 40), level('2026-02-03', 36))).toContain('the level fell');
    expect(why(CLEAR, level('2026-02-01', 20))).toContain('the level does not rise');
    expect(why(CLEAR, level('2026-02-01', 40))).toBeNull();
  });
  it('is a fall of 4 mm, and no less: that is how well an eye reads', () => {
    const fell = (to: number) =>
      stands('2026-02-20', [FULL, CLEAR, level('2026-02-01', 40), level('2026-02-03', to)]).flowFell;
    expect(fell(37)).toBeNull();
    expect([fell(36)?.from.level.likely, fell(36)?.to.level.likely]).toEqual([40, 36]);
  });
});

describe('the forecast', () => {
  it('rests on what was read since the flow last fell', () => {
    const fell = [level('2026-01-12', 20), level('2026-01-20', 50), level('2026-01-22', 30)];
    const seen = stands('2026-02-03', [FULL, ...fell, level('2026-01-28', 36), level('2026-02-03', 42)]);
    // From 30 on 22 Jan 1 mm a day: 38 days from 42 to 80.
    expect([seen.whyNot, spill(seen), seen.since.length]).toEqual([null, '03-13 to 03-13', 5]);
    // Two levels since the fall are read to 2 mm, however many stood before it.
    const two = stands('2026-01-28', [FULL, ...fell, level('2026-01-28', 36)]);
    expect(spill(two)).toBe('03-11 to 03-15');
  });
  it('is an early guess while the spill is further off than twice the time read, and names no days then', () => {
    // 1 mm a day; two levels, read to 2 mm: the spill is 2 days either side.
    const early = [FULL, level('2026-01-12', 20), level('2026-01-16', 24)];
    expect([stands('2026-01-17', early).early, spill(stands('2026-01-17', early))]).toEqual([true, '03-11 to 03-15']);
    expect(words('2026-01-17', early)).toBe('level 24 mm on 16 Jan, spills at 80 mm');
    const later = [FULL, level('2026-01-12', 20), level('2026-02-01', 40)];
    expect(stands('2026-02-02', later).early).toBe(false);
    expect(words('2026-02-02', later)).toBe('level 40 mm on 1 Feb, spills at 80 mm about 11–15 Mar');
    expect(words('2026-02-02', later, NO_LIP)).toBe('level 40 mm on 1 Feb');
  });
  it('tells its levels, each of its lines and when they reach the lip', () => {
    const two = stands('2026-02-02', [FULL, level('2026-01-12', 20), level('2026-02-01', 40)]).steps;
    expect(two).toEqual([
      'levels since the clean: 20 mm on 12 Jan, 40 mm on 1 Feb',
      'line through all: median slope 1.00 mm a day, at 80 mm on 13 Mar',
      expect.stringContaining('reaches 80 mm between 11 Mar and 15 Mar'),
    ]);
    const three = [FULL, level('2026-01-12', 20), level('2026-01-22', 30), level('2026-02-01', 40)];
    expect(stands('2026-02-02', three).steps.map((step) => step.split(':')[0])).toEqual([
      'levels since the clean',
      'line through all',
      'through the last two',
      expect.stringContaining('reaches 80 mm'),
    ]);
    const four = stands('2026-02-12', [...three, level('2026-02-11', 40)]).steps;
    expect(four.slice(2, 4)).toEqual([
      expect.stringMatching(/^through the last three: median slope/),
      'through the last two: median slope 0.00 mm a day, never at 80 mm',
    ]);
  });
});

describe('a spill is near', () => {
  it('a week before the earliest day of it', () => {
    // 1 mm a day from 20 on 12 Jan to 40 on 1 Feb: 11 Mar at the earliest.
    const lines = [FULL, level('2026-01-12', 20), level('2026-02-01', 40)];
    expect(['2026-03-03', '2026-03-04'].map((on) => stands(on, lines).near)).toEqual([false, true]);
  });
  it('with a quarter of the freeboard left that a full clean gave: 15 of 60 mm', () => {
    const near = (mm: number, ...more: Line[]): boolean =>
      stands('2026-02-10', [FULL, CLEAR, ...more, level('2026-02-10', mm)]).near;
    expect([near(64), near(65)]).toEqual([false, true]);
    const part = cleaned('2026-02-09', 2);
    expect([near(64, part), near(65, part)]).toEqual([false, true]);
  });
  it('with a quarter of half the height left where the first level was read long after the clean, and stood high', () => {
    const near = (on: string, mm: number): boolean => stands('2026-01-21', [FULL, level(on, mm)]).near;
    expect([near('2026-01-20', 69), near('2026-01-20', 70)]).toEqual([false, true]);
    // Read the day after, 70 mm is what a clean leaves: a quarter of 10 mm.
    expect([near('2026-01-12', 70), near('2026-01-13', 70)]).toEqual([false, true]);
    const low = [FULL, level('2026-01-20', 28)];
    const then = (mm: number): boolean => stands('2026-02-20', [...low, level('2026-02-20', mm)]).near;
    expect([then(66), then(67)]).toEqual([false, true]);
  });
  it('with a quarter of the height left where no level tells what a clean gave: 20 of 80 mm', () => {
    const near = (mm: number): boolean => stands('2026-02-10', [level('2026-02-10', mm)]).near;
    expect([near(59), near(60)]).toEqual([false, true]);
    expect(stands('2026-02-10', [level('2026-02-10', 79)], NO_LIP).near).toBe(false);
  });
});

describe('what a part of a clean buys', () => {
  const PART = cleaned('2026-02-01', 2);
  const lasts = (...lines: Line[]): { share: number; step: string } => lastsIn(SET_UP, lines);
  const lastsIn = (setUp: readonly Line[], lines: readonly Line[]): { share: number; step: string } => {
    const { loop: long } = longOn('2026-03-20', lines, setUp);
    const clean = long.cleans.find((one) => one.day === day('2026-02-01'));
    if (clean === undefined) throw new Error('no clean');
    return lastsOf(long, clean);
  };
  it('is the freeboard that it gave, of that after a full clean', () => {
    expect(lasts(FULL, CLEAR, PART, level('2026-02-02', 50))).toEqual({
      share: 0.5,
      step: 'freeboard 30 mm of 60 mm after a full clean: 0.50',
    });
    expect(lasts(FULL, CLEAR, PART, level('2026-02-01', 10)).share).toBe(1);
    expect(lasts(FULL, CLEAR, PART, level('2026-02-01', 84)).share).toBe(0);
  });
  it('is half, and half of the share of the layers, where levels do not tell', () => {
    const usual = { share: 0.5 + 1 / 6, step: "½ + ½ × 2/6 = 0.67 of a full clean's interval" };
    expect(lasts(FULL, CLEAR, PART, level('2026-02-03', 50))).toEqual(usual);
    expect(lasts(FULL, CLEAR, PART, cleaned('2026-02-02', 6), level('2026-02-02', 50))).toEqual(usual);
    expect(lasts(FULL, PART, level('2026-02-02', 50))).toEqual(usual);
    expect(lasts(PART, level('2026-02-02', 50), cleaned('2026-02-20', 6), level('2026-02-20', 20))).toEqual(usual);
    expect(lasts(FULL, level('2026-01-11', 80), PART, level('2026-02-02', 50))).toEqual(usual);
    expect(lastsIn(NO_LIP, [FULL, CLEAR, PART, level('2026-02-02', 50)])).toEqual(usual);
  });
  it('is all of it where all layers were cleaned, or no number was written', () => {
    expect(lasts(FULL, CLEAR, cleaned('2026-02-01', 6), level('2026-02-02', 50)).share).toBe(1);
  });
  it('is held against the full clean before it', () => {
    const earlier = [cleaned('2026-01-06', 6), level('2026-01-06', 40)];
    expect(
      lasts(...earlier, FULL, CLEAR, PART, level('2026-02-02', 50), cleaned('2026-03-01', 6), level('2026-03-01', 30))
        .share,
    ).toBe(0.5);
  });
});

describe('how far apart full cleans are', () => {
  const every = (...days: string[]) =>
    cleanInterval(
      longOn(
        '2027-12-31',
        days.map((on) => cleaned(on, 6)),
      ).loop,
    );
  it('is usual under three intervals', () => {
    expect(every('2026-02-01', '2026-03-01', '2026-03-31')).toMatchObject({ days: { low: 42, high: 42 }, own: false });
    expect(every('2026-02-01', '2026-02-01', '2026-03-01', '2026-03-31').own).toBe(false);
  });
  it('is the room’s own from three on: the last eight', () => {
    // 28, 30 and 31 days
    expect(every('2026-02-01', '2026-03-01', '2026-03-31', '2026-05-01')).toMatchObject({
      days: { low: 28, likely: 30, high: 31 },
      own: true,
      step: 'full cleans here came every 28–31 days (3 intervals, median 30); usual for a prefilter: about 42 days',
    });
    // 59 days, then eight times 10
    const tens = ['04-01', '04-11', '04-21', '05-01', '05-11', '05-21', '05-31', '06-10', '06-20'];
    expect(every('2026-02-01', ...tens.map((on) => `2026-${on}`)).days).toMatchObject({
      low: 10,
      likely: 10,
      high: 10,
    });
  });
  it('counts no part of one', () => {
    const lines = ['2026-02-01', '2026-03-01', '2026-03-31', '2026-05-01'].map((on) => cleaned(on, 6));
    const { loop: long } = longOn('2027-12-31', [...lines, cleaned('2026-02-10', 2), cleaned('2026-04-10', 3)]);
    expect(cleanInterval(long).days.likely).toBe(30);
  });
});

it('lengths are told in whole millimetres', () => {
  expect([mmWords(measure('mm', 54)), mmWords(measure('mm', 54.4)), mmWords(measure('mm', 54.6))]).toEqual([
    '54 mm',
    '54 mm',
    '55 mm',
  ]);
});
