import { describe, expect, it } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { rankScore } from '../../../src/core/stats.ts';
import { pairs } from '../../../src/questions/pairs.ts';
import type { PairNumbers } from '../../../src/questions/pairs/numbers.ts';
import { stays, tankWeeks } from '../../../src/questions/money/stays.ts';
import type { Room } from '../../../src/state/draft.ts';
import { why } from '../../../src/questions/why.ts';
import { journalOn } from '../../support/journal.ts';

function numbers(on: string, lines: string, name = 'Rowan'): PairNumbers {
  const found = pairs(journalOn(on, lines), name).pairs[0]?.numbers;
  if (!found) throw new Error(`no ${name}`);
  return found;
}

/** A dispute from one day to another. */
function dispute(from: string, to: string | null, dark = false, tank = 'A1'): string {
  const began = `${from} ${tank}: chasing${dark ? '; lights off' : ''}\n`;
  return to === null ? began : `${began}${to} ${tank}: made up${dark ? '; lights on' : ''}\n`;
}

describe('how long the disputes of a pair last', () => {
  const lines = `${dispute('2026-02-01', '2026-02-02')}${dispute('2026-03-01', '2026-03-03')}${dispute('2026-04-01', '2026-04-02')}`;
  it('is the day by which half were over', () => {
    const { durations } = numbers('2026-05-01', lines).disputes;
    expect(durations).toMatchObject({ ended: 3, atLeast: 0, median: 2 });
  });
  it('counts an open one as lasting at least so long', () => {
    // 2, 2 and 3 days ended; one of 5 days still open: after day 2 half are on, after day 3 a quarter.
    const { durations } = numbers(
      '2026-05-05',
      `${lines}${dispute('2026-05-01', null)}2026-05-03 A1: pinned\n2026-05-05 A1: chasing\n`,
    ).disputes;
    expect(durations).toMatchObject({ ended: 3, atLeast: 1, median: 2 });
    expect(durations.curve.map(({ day, survival }) => [day, survival])).toEqual([
      [2, 0.5],
      [3, 0.25],
    ]);
  });
  it('takes one that fell silent as over no earlier than its last word', () => {
    const { durations } = numbers(
      '2026-03-01',
      '2026-02-01 A1: chasing\n2026-02-02 A1: pinned\n2026-02-20 A1: made up\n',
    ).disputes;
    expect(durations).toMatchObject({ ended: 0, atLeast: 1, median: null });
  });
});

describe('how often they come', () => {
  it('is a rate per 90 days with exact Poisson limits', () => {
    // 3 in 180 days (1 January to 29 June): 1.5 per 90; 80 % limits of 3 are 1.102 and 6.681 (χ² by R qchisq).
    const lines = `${dispute('2026-02-01', '2026-02-02')}${dispute('2026-03-01', '2026-03-03')}${dispute('2026-04-01', '2026-04-02')}`;
    const { recurrence } = numbers('2026-06-29', lines).disputes;
    expect(recurrence).toMatchObject({ seen: 3, days: 180 });
    expect(recurrence?.per90.likely).toBeCloseTo(1.5, 9);
    expect(recurrence?.per90.low).toBeCloseTo(1.102065 / 2, 4);
    expect(recurrence?.per90.high).toBeCloseTo(6.680783 / 2, 4);
  });
  it('says nothing of a pair that is not watched for two months', () => {
    expect(numbers('2026-02-10', dispute('2026-02-01', '2026-02-02')).disputes.recurrence).toBeNull();
  });
  it('sees the peace between them grow shorter', () => {
    const closing = ['2026-02-01', '2026-04-10', '2026-05-10', '2026-05-25'].map((day) => dispute(day, day)).join('');
    expect(numbers('2026-06-01', closing).disputes.gaps).toEqual({ days: [68, 30, 15], closing: true });
    const steady = ['2026-02-01', '2026-03-01', '2026-04-01', '2026-05-01'].map((day) => dispute(day, day)).join('');
    expect(numbers('2026-06-01', steady).disputes.gaps.closing).toBe(false);
  });
});

describe('whether lights off help in this room', () => {
  const month = (number: number): string => `2026-${String(number).padStart(2, '0')}`;
  const dark = (count: number): string =>
    Array.from({ length: count }, (_, i) => dispute(`${month(i + 2)}-01`, `${month(i + 2)}-02`, true)).join('');
  const lit = (count: number): string =>
    Array.from(
      { length: count },
      (_, i) =>
        [0, 1, 2, 3].map((day) => `${month(i + 2)}-${String(10 + day)} A2: chasing, male on female\n`).join('') +
        `${month(i + 2)}-14 A2: made up\n`,
    ).join('');
  it('is not told from two of a kind', () => {
    const { lightsOff } = numbers('2026-08-01', dark(2) + lit(4)).disputes;
    expect(lightsOff.verdict).toBe('too few');
    expect(lightsOff.says).toContain('too few to tell whether it helps');
  });
  it('is told from enough, over all pairs of the room', () => {
    const { lightsOff } = numbers('2026-08-01', dark(4) + lit(4)).disputes;
    expect(lightsOff).toMatchObject({ verdict: 'shorter', with: { median: 2 }, without: { median: 5 } });
  });
  it('tells no difference where there is none', () => {
    const alike =
      dark(4) + Array.from({ length: 4 }, (_, i) => dispute(`${month(i + 2)}-10`, `${month(i + 2)}-11`)).join('');
    expect(numbers('2026-08-01', alike).disputes.lightsOff.verdict).toBe('no difference to tell');
  });
  it('ranks as the published test does', () => {
    // Mann–Whitney, worked by hand: wins 1 of 9, mean 4.5, variance 9/12 × 7 = 5.25.
    expect(rankScore([1, 2, 4], [3, 5, 6])).toBeCloseTo((1 - 4.5) / Math.sqrt(5.25), 9);
    expect(rankScore([2, 2], [2, 2])).toBeNull();
  });
});

const BROODS = `2026-02-01 A1: spawned brood Rowan-1, about 100 eggs
2026-02-02 A1: Rowan-1 eggs white 30
2026-02-03 A1: Rowan-1 eggs gone
2026-02-20 A1: spawned brood Rowan-2, about 80 eggs
2026-03-01 A1: Rowan-2 free-swimming, about 50
2026-04-05 A1: Rowan-2 counted 40
2026-04-05 A1: moved all Rowan-2 to C1
2026-04-15 A1: spawned brood Rowan-3, about 60 eggs
2026-04-17 A1: Rowan-3 eggs gone
2026-05-01 A1: spawned brood Rowan-4, about 40 eggs
2026-05-03 A1: Rowan-4 eggs gone
2026-06-01 C1: sold 10 Rowan-2 at 4.00 each
`;

describe('what the broods of a pair come to', () => {
  const { broods } = numbers('2026-06-01', BROODS);
  it('splits the days between spawns by whether the brood left early', () => {
    expect(broods.afterEarly).toMatchObject({ count: 2, median: (19 + 16) / 2 });
    expect(broods.afterKept).toMatchObject({ count: 1, median: 54 });
  });
  it('counts failures, and those in a row at the end', () => {
    expect(broods.failures).toEqual({ running: 2, all: 3, of: 4 });
  });
  it('gives the share of white eggs as an interval', () => {
    // 30 of 50 to 200 eggs.
    expect(broods.white).toEqual({ share: { low: 30 / 200, likely: 30 / 100, high: 30 / 50 }, broods: 1 });
  });
  it('sees the clutches shrink', () => {
    expect(broods.clutches).toEqual({ eggs: [100, 80, 60, 40], trend: 'shrinking' });
  });
  it('divides the young raised by the glass they took', () => {
    // 10 sold, 30 left of 40 counted, a few of them lost unseen since.
    expect(broods.raised?.young.high).toBe(40);
    // The pair in A1 for 151 days, alone or with its broods, and Rowan-2 in C1 for 57 days, which it shares with Ash.
    expect(broods.raised?.tankWeeks).toBeCloseTo((151 + 57 / 2) / 7, 6);
  });
  it('puts its numbers into why, for every row', () => {
    const room = journalOn('2026-06-01', BROODS + dispute('2026-03-01', '2026-03-03'));
    const [record] = why(room, ['rowan-record']).rows;
    expect(record?.because.steps.at(-1)).toMatch(/^\d+ young ÷ 25\.6 tank-weeks = 1\.\d\d$/);
    const [quarrels] = why(room, ['rowan-disputes']).rows;
    expect(quarrels?.because.steps).toContain('1 Mar: 3 days');
    expect(why(room, ['rowan-2-survival']).rows[0]?.lines.length).toBeGreaterThan(3);
    expect(why(room, ['rowan-2-likely']).rows[0]?.because.steps.at(-1)).toMatch(/^likely there/);
  });
});

describe('tank-weeks', () => {
  const weeksOf = (room: Room): ReadonlyMap<string, number> =>
    new Map(
      [...tankWeeks(stays(room), null, room.on)].map(([name, tanks]) => [
        name,
        tanks.reduce((sum, { weeks }) => sum + weeks, 0),
      ]),
    );
  it('follow a brood from tank to tank and share a tank in equal parts', () => {
    const room = journalOn('2026-06-01', BROODS);
    const own = stays(room).filter(({ body }) => body === 'Rowan-2');
    expect(own.map(({ tank, from, to }) => [tank, isoDay(from), isoDay(to)])).toEqual([
      ['A1', '2026-02-20', '2026-04-05'],
      ['C1', '2026-04-05', '2026-06-01'],
    ]);
    // 44 days with its parents, 57 with Ash: half of each.
    expect(weeksOf(room).get('Rowan-2')).toBeCloseTo((44 / 2 + 57 / 2) / 7, 9);
  });
  it('never count a tank twice', () => {
    const room = journalOn('2026-06-01', BROODS);
    const all = [...weeksOf(room).values()].reduce((sum, weeks) => sum + weeks, 0);
    // A1, A2, B1 and C1 held fish for 151 days each.
    expect(all).toBeCloseTo((4 * 151) / 7, 6);
  });
});
