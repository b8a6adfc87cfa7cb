import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/core/day.ts';
import { windowWords } from '../../src/core/words.ts';
import type { LoopRow } from '../../src/questions/loops.ts';
import { loops, within } from '../../src/questions/loops.ts';
import { loopsJson, loopsText } from '../../src/reports/loops.ts';
import { plainLook } from '../../src/reports/look.ts';
import { day, roomOn, tank, type Line } from '../support/events.ts';
import { begin, cleaned, level, SET_UP, setUpOn } from '../support/waters.ts';

const only = (on: string, lines: readonly Line[]) => {
  const [row] = loops(roomOn(on, [...SET_UP, ...lines]));
  if (row === undefined) throw new Error('no loop');
  return row;
};
const EARLIER = setUpOn('2025-07-01');
const LEVELS = [
  cleaned('2026-01-11', 6),
  level('2026-01-11', 20),
  level('2026-01-25', 28),
  level('2026-02-04', 42),
  level('2026-02-10', 54),
];

describe('loops', () => {
  it('draws the level on by three robust lines: earliest to middle', () => {
    const { spill, level: last } = only('2026-02-15', LEVELS);
    // last two 2 mm a day: 54 to 80 takes 13 days; last three 1.625 mm a day from 28 at 25 Jan's line
    expect(spill?.low).toBe(day('2026-02-23'));
    expect(spill?.high).toBe(day('2026-02-26'));
    expect(last?.mm.likely).toBe(54);
  });

  it('60, 52, 38, 26 mm below the lip at days 0, 14, 24, 30 spill about day 43 to 46', () => {
    // Worked by hand for the same rule: whole run 52, last three 46, last pair 43.
    const below = (on: string, mm: number): Line => level(on, 80 - mm);
    const lines = [cleaned('2026-01-01', 6), below('2026-01-01', 60), below('2026-01-15', 52), below('2026-01-25', 38)];
    const { spill } = only('2026-02-01', [...lines, below('2026-01-31', 26)]);
    expect([spill?.low, spill?.high].map((one) => (one ?? 0) - day('2026-01-01'))).toEqual([43, 46]);
  });

  it('says that there is no forecast under two levels, and after a fall', () => {
    expect(only('2026-02-15', [cleaned('2026-01-11', 6), level('2026-01-25', 28)]).whyNoSpill).toContain(
      'fewer than two',
    );
    expect(only('2026-02-15', [...LEVELS, level('2026-02-12', 40)]).whyNoSpill).toContain('fell');
    expect(only('2026-02-15', [...LEVELS, level('2026-02-12', 40)]).notes).toEqual(['flow fell: check pump or drain']);
  });

  it('knows no level and no spill from before the last clean', () => {
    const row = only('2026-02-15', [...LEVELS, cleaned('2026-02-12', 2)]);
    expect(row.level).toBeNull();
    expect(row.spill).toBeNull();
    expect(row.cleaned).toEqual({ on: day('2026-02-12'), layers: 2, of: 6 });
    expect(row.lastFull).toEqual({ on: day('2026-01-11'), layers: 6, of: 6 });
  });

  it('leaves out what was not known yet on the day asked about', () => {
    expect(only('2026-02-05', LEVELS).level?.mm.likely).toBe(42);
    expect(only('2026-02-03', LEVELS).level?.mm.likely).toBe(28);
  });

  it('lists who is on it and who is valved off since when', () => {
    const row = only('2026-02-19', [begin('2026-02-18', tank('A2'), 'off the loop')]);
    expect(row.tanks).toEqual(['A1', 'B1']);
    expect(row.off).toEqual([{ tank: 'A2', since: day('2026-02-18') }]);
  });

  it('the room’s own intervals between full cleans beat the usual, and both are shown', () => {
    const full = ['2025-08-01', '2025-09-05', '2025-10-12', '2025-11-15'].map((on) => cleaned(on, 6));
    const row = loops(roomOn('2025-11-20', [...EARLIER, ...full]))[0];
    // 35, 37 and 34 days: median 35
    expect(row?.nextClean).toEqual({ low: day('2025-12-19'), likely: day('2025-12-20'), high: day('2025-12-22') });
    expect(row?.because.steps.join(' ')).toContain('every 34–37 days');
    expect(row?.because.steps.join(' ')).toContain('about 42 days');
    const young = loops(roomOn('2025-09-20', [...EARLIER, ...full]))[0];
    expect(young?.nextClean?.likely).toBe(day('2025-10-17'));
  });

  it('keeps an early guess inside its own eight-in-ten window: lines through first levels run on past it', () => {
    const row = only('2026-01-25', [cleaned('2026-01-11', 6), level('2026-01-11', 20), level('2026-01-25', 28)]);
    // 8 mm in 14 days: in a line the 52 mm to 80 take 91 days, till the end of April.
    const window = row.outlook?.spill;
    expect(row.early).toBe(true);
    expect(window?.high).toBeLessThan(day('2026-04-01'));
    expect(row.spill).toEqual({ low: window?.likely, likely: window?.high, high: window?.high });
    expect(row.because.steps.join(' ')).toContain('kept inside');
    expect(loopsText([row], plainLook(day('2026-01-25')))).not.toContain('Apr');
  });

  it('cuts a guess to the days that it shares with the window, else to the half that lies nearer', () => {
    const window = { low: day('2026-02-01'), likely: day('2026-02-11'), high: day('2026-02-20') };
    const of = (low: string, likely: string, high: string) => ({ low: day(low), likely: day(likely), high: day(high) });
    expect(within(of('2026-02-15', '2026-02-25', '2026-03-05'), window)).toEqual(
      of('2026-02-15', '2026-02-20', '2026-02-20'),
    );
    expect(within(of('2026-01-20', '2026-01-28', '2026-02-09'), window)).toEqual(
      of('2026-02-01', '2026-02-01', '2026-02-09'),
    );
    expect(within(of('2026-04-01', '2026-04-05', '2026-04-09'), window)).toEqual(
      of('2026-02-11', '2026-02-20', '2026-02-20'),
    );
    expect(within(of('2026-01-01', '2026-01-05', '2026-01-09'), window)).toEqual(
      of('2026-02-01', '2026-02-01', '2026-02-11'),
    );
    expect(within(null, window)).toBeNull();
  });

  it('of two windows names one to go by: the wider where a line runs on past it, else the earlier', () => {
    const row = only('2026-02-15', LEVELS);
    const { outlook } = row;
    if (outlook === null) throw new Error('no outlook');
    expect(outlook.spill.high).toBeLessThan(day('2026-02-23'));
    const text = (spill: LoopRow['spill']): string => loopsText([{ ...row, spill }], plainLook(day('2026-02-15'), 140));
    const odds = windowWords(outlook.spill, day('2026-02-15'));
    expect(text(row.spill)).toContain(`${odds}, 8 times in 10`);
    expect(text(row.spill)).toMatch(/by its levels; at this pace 23–26 Feb, but clogging quickens/);
    expect(text(row.spill)).not.toContain('8 in 10 spill');
    const moved = (by: number): LoopRow['spill'] => {
      const at = addDays(outlook.spill.low ?? day('2026-02-15'), by);
      return { low: at, likely: at, high: addDays(at, 2) };
    };
    expect(text(moved(-2))).toContain(`8 in 10 spill ${odds} by its levels; go by the earlier days above`);
    expect(text(moved(1))).toContain(`8 in 10 spill ${odds} by its levels; go by these, the earlier`);
    expect(text(moved(0))).not.toContain('go by');
  });

  it('is told as JSON with the documented keys', () => {
    const json = JSON.stringify(loopsJson([only('2026-02-15', LEVELS)]));
    expect(JSON.parse(json)).toMatchObject({
      loops: [
        {
          id: 'long',
          name: 'Long',
          tanks: ['A1', 'A2', 'B1'],
          level: 54,
          levelOn: '2026-02-10',
          spill: { low: '2026-02-23', high: '2026-02-26' },
          cleaned: { on: '2026-01-11', layers: 6, of: 6 },
          nextClean: { low: '2026-02-16', high: '2026-02-19' },
        },
      ],
    });
  });

  it('fits 80 columns', () => {
    const text = loopsText(
      [only('2026-02-15', [...LEVELS, begin('2026-02-12', tank('A2'), 'off the loop')])],
      plainLook(day('2026-02-15')),
    );
    expect(text.split('\n').every((line) => line.length <= 80)).toBe(true);
    expect(text.startsWith('Sun 15 Feb 2026: ')).toBe(true);
    expect(text).toMatch(/23–26\s/);
    expect(text).toContain('off it: A2 since 12 Feb');
  });
});
