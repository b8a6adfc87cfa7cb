/** When fish may be sold by the rule of their species: from which day on, how many of them, and in which words. */
import { describe, expect, it } from 'vitest';
import { isoDay, type Day } from '../../src/core/day.ts';
import type { DayWindow } from '../../src/core/interval.ts';
import { saleableFrom, type Saleable } from '../../src/questions/saleable.ts';
import { day } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';
import { ROOM } from '../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const rule = (words: string): string => `2026-01-03 species krib: sale at ${words}\n`;
const LAID = '2026-02-02 A1: spawned\n';
const SWAM = `${LAID}2026-02-12 A1: free-swimming, 30\n`;
const asked = (on: string, lines: string, name = 'Rowan-1', then?: Day): Saleable | null => {
  const room = journalOn(on, lines);
  const body = room.stock.broods.get(name) ?? room.stock.groups.get(name);
  if (body === undefined) throw new Error(`no ${name}`);
  return saleableFrom(room, body, then);
};
const of = (on: string, lines: string, name?: string, then?: Day): Saleable => {
  const found = asked(on, lines, name, then);
  if (found === null) throw new Error('nothing says');
  return found;
};
const span = ({ low, likely, high }: DayWindow): string =>
  [low, likely, high].map((one) => (one === null ? 'open' : isoDay(one).slice(5))).join(' ');
const share = (...of_: Parameters<typeof of>): (number | null)[] => {
  const { low, likely, high } = of(...of_).share;
  return [low, likely, high];
};

describe('a rule of age', () => {
  // Laid on 2 February: 12 weeks old on 27 April, 14 on 11 May.
  it('is met by all of them on one day', () => {
    const found = of('2026-04-20', rule('12 weeks') + SWAM);
    for (const window of [found.first, found.half, found.all, found.window])
      expect(span(window)).toBe('04-27 04-27 04-27');
    expect([found.size, found.rule]).toEqual([null, '12 weeks']);
    expect(found.because.steps).toContain('of age: 2 Feb + 84 days = 27 Apr');
    expect(share('2026-04-26', rule('12 weeks') + SWAM)).toEqual([0, 0, 0]);
    expect(share('2026-04-27', rule('12 weeks') + SWAM)).toEqual([1, 1, 1]);
  });
  it('of a span is met surely when the longest is over', () => {
    const wide = rule('12-14 weeks') + SWAM;
    expect(span(of('2026-04-20', wide).window)).toBe('04-27 05-04 05-11');
    expect(of('2026-04-20', wide).because.steps).toContain('of age: 2 Feb + 84–98 days = 27 Apr – 11 May');
    expect(['04-26', '04-27', '05-03', '05-04', '05-10', '05-11'].map((on) => share(`2026-${on}`, wide))).toEqual([
      [0, 0, 0],
      [0, 0, 1],
      [0, 0, 1],
      [0, 1, 1],
      [0, 1, 1],
      [1, 1, 1],
    ]);
  });
  it('counts from the birth of bought fish, and is not met where nobody knows it', () => {
    // 10 weeks old on 10 April: 12 on the 24th.
    const bought = `${rule('12 weeks')}2026-04-10 group Oak: krib; 9; in C1; age 10 weeks\n`;
    expect(span(of('2026-04-20', bought, 'Oak').window)).toBe('04-24 04-24 04-24');
    expect(asked('2026-04-20', rule('12 weeks'), 'Ash')).toBeNull();
  });
});

describe('a rule of size', () => {
  it('is met by the first, then half, then all of them', () => {
    const found = of('2026-04-20', rule('25 mm') + SWAM);
    expect([found.size, found.rule]).toEqual([25, '25 mm']);
    for (const end of ['low', 'likely', 'high'] as const) {
      expect(found.first[end]).toBeLessThan(found.half[end] ?? 0);
      expect(found.half[end]).toBeLessThan(found.all[end] ?? 0);
    }
    expect(found.window).toEqual({ low: found.first.low, likely: found.half.likely, high: found.all.high });
    expect(found.because.steps.some((step) => step.startsWith('of age'))).toBe(false);
  });
  it('is met today by those that are long enough, about a mean that is known to so much', () => {
    const read = `${rule('25 mm')}${SWAM}2026-05-01 A1: Rowan-1 average 25 mm\n`;
    const [low, likely, high] = share('2026-05-01', read);
    expect(likely).toBeGreaterThan(0.3);
    expect(likely).toBeLessThan(0.7);
    expect(low).toBeLessThan(likely ?? 0);
    expect(high).toBeGreaterThan(likely ?? 1);
    const { steps } = of('2026-05-01', read).because;
    expect(steps.find((step) => step.startsWith('mean length'))).toMatch(/^mean length on 1 May: 2\d–2\d mm$/);
    // Lengths of a brood lie 12 % about their mean.
    const [, mean = '', spreads = ''] =
      /^at the shortest \(25 − (2\d\.\d)\) \/ \(0\.12 × 2\d\.\d\) = (-?\d\.\d) spreads/.exec(
        steps.find((step) => step.startsWith('at the shortest')) ?? '',
      ) ?? [];
    expect(Number(spreads)).toBeCloseTo((25 - Number(mean)) / (0.12 * Number(mean)), 1);
  });
  it('on another day counts what they will be by then', () => {
    const lines = rule('25 mm') + SWAM;
    const now = of('2026-04-30', lines);
    const then = of('2026-04-30', lines, 'Rowan-1', day('2026-06-10'));
    expect(then.share.likely).toBeGreaterThan(now.share.likely ?? 1);
    expect(then.half).toEqual(now.half);
    expect(now.because.steps.at(-1)).toMatch(/^share that can be sold today: /);
    expect(then.because.steps.at(-1)).toMatch(/^share that can be sold on 10 Jun: /);
    expect(then.because.steps.some((step) => step.startsWith('mean length on 10 Jun'))).toBe(true);
  });
  it('of a span means its middle', () => {
    expect(of('2026-04-20', rule('20-30 mm') + SWAM).size).toBe(25);
  });
  it('is not met by fish of unknown age and length, nor before they were seen to swim', () => {
    expect(asked('2026-04-20', rule('25 mm'), 'Ash')).toBeNull();
    expect(share('2026-03-05', rule('25 mm') + LAID)).toEqual([0, 0, 0]);
  });
});

describe('a rule of size or age', () => {
  const either = (size: number, weeks: number): string => rule(`${String(size)} mm or ${String(weeks)} weeks`) + SWAM;
  it('is met by whichever comes first', () => {
    expect(of('2026-04-20', either(25, 4)).rule).toBe('25 mm or 4 weeks');
    expect(span(of('2026-04-20', either(25, 4)).window)).toBe('03-02 03-02 03-02');
    expect(share('2026-03-02', either(25, 4))).toEqual([1, 1, 1]);
    const sized = of('2026-04-20', rule('25 mm') + SWAM);
    expect(of('2026-04-20', either(25, 80))).toMatchObject({
      first: sized.first,
      half: sized.half,
      share: sized.share,
    });
    expect(span(of('2026-04-20', either(300, 12)).window)).toBe('04-27 04-27 04-27');
  });
  it('is met by age alone where the length is not known, and by length where the age is not', () => {
    expect(share('2026-03-02', `${rule('25 mm or 4 weeks')}${LAID}`)).toEqual([1, 1, 1]);
    const grown = `${rule('25 mm or 4 weeks')}2026-04-10 group Oak: krib; 9; size 30 mm; in C1\n`;
    expect(of('2026-04-10', grown, 'Oak').share.likely).toBeGreaterThan(0.8);
  });
});

describe('a rule of size and age', () => {
  const both = (size: number, weeks: number): string => rule(`${String(size)} mm and ${String(weeks)} weeks`) + SWAM;
  it('is met by whichever comes last', () => {
    expect(of('2026-04-20', both(25, 4)).rule).toBe('25 mm and 4 weeks');
    const sized = of('2026-04-20', rule('25 mm') + SWAM);
    expect(of('2026-04-20', both(25, 4))).toMatchObject({ first: sized.first, all: sized.all, share: sized.share });
    expect(span(of('2026-04-20', both(10, 40)).first)).toBe('11-09 11-09 11-09');
    expect(share('2026-06-20', both(10, 40))).toEqual([0, 0, 0]);
  });
  it('is never met by fish that do not grow so long', () => {
    const never = of('2026-04-20', both(300, 4));
    expect([span(never.first), span(never.all)]).toEqual(['open open open', 'open open open']);
    expect(never.share.high).toBeCloseTo(0, 9);
  });
  it('is not met where either is unknown', () => {
    expect(share('2026-03-05', `${rule('35 mm and 4 weeks')}${LAID}`)).toEqual([0, 0, 0]);
    expect(
      asked('2026-04-20', `${rule('25 mm and 4 weeks')}2026-04-10 group Oak: krib; 9; size 30 mm; in C1\n`, 'Oak'),
    ).toBeNull();
  });
});

describe('what the answer rests on', () => {
  it('is the rule that was set, else what is usual for such fish, else nothing', () => {
    const set = of('2026-04-20', rule('12 weeks') + SWAM);
    expect(set.because.source).toBe('the journal: the rule set for the species');
    expect(set.because.lines.map(({ line }) => line - SETUP)).toEqual([1, 2]);
    const usual = of('2026-04-20', SWAM);
    expect([usual.rule, usual.because.source]).toEqual([
      '25 mm',
      'usual for cave spawners (common practice, no source)',
    ]);
    const unknown =
      '2026-01-02 pair Heath: male; female; in C2\n2026-02-02 C2: spawned\n2026-02-12 C2: free-swimming\n';
    expect(asked('2026-04-20', unknown, 'Heath-1')).toBeNull();
  });
  it('is told in weeks where they are whole, else in days', () => {
    expect(of('2026-04-20', rule('10 days') + SWAM).rule).toBe('10 days');
    expect(of('2026-04-20', rule('12-14 weeks') + SWAM).rule).toBe('12–14 weeks');
  });
});
