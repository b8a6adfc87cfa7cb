/** What stands rigged up: when it is asked back, how it weighs, what it costs to leave it, and its one closing line. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import type { DueItem } from '../../../src/questions/due/item.ts';
import { measuresDue } from '../../../src/questions/due/measures.ts';
import { journalOn } from '../../support/journal.ts';
import { ROOM } from '../../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const rows = (on: string, lines: string): readonly DueItem[] => measuresDue(journalOn(on, lines));
const one = (on: string, line: string): DueItem => {
  const [row, ...others] = rows(on, `${line}\n`);
  if (row === undefined || others.length > 0) throw new Error(`${String(others.length)} rows besides`);
  return row;
};
const asked = (on: string, line: string): string => {
  const { low, high } = one(on, line).due;
  return [...new Set([low, high])].map((day) => (day === null ? 'open' : isoDay(day).slice(5))).join('–');
};

describe('a measure is asked back', () => {
  it('after the patience of its kind', () => {
    const due = (measure: string): string => asked('2026-02-01', `2026-02-01 C1: ${measure}`);
    expect(['heater off', 'air filter in', 'divider in', 'heat to 30 C', 'breeder net in'].map(due)).toEqual([
      '02-02',
      '02-03',
      '02-08',
      '02-11',
      '02-22',
    ]);
    expect(asked('2026-02-01', '2026-02-01 Long: pump off')).toBe('02-01');
    expect(asked('2026-02-01', '2026-02-01 A1: off the loop')).toBe('02-03');
  });
  it('on the day that its line says, or when its hours are over', () => {
    const until = '2026-02-01 C1: heater off until 2026-02-10';
    expect(asked('2026-02-05', until)).toBe('02-10');
    expect(one('2026-02-05', until).because).toMatchObject({ source: 'the journal' });
    expect(one('2026-02-05', until).because.steps).toContain('its line says until 10 Feb');
    expect(rows('2026-02-11', `${until}\n`)).toEqual([]);
    const hours = '2026-02-01 22:00 Long: pump off for 3 h';
    expect(asked('2026-02-01', hours)).toBe('02-02');
    expect(one('2026-02-01', hours).because.steps).toContain('its line says for 3 h');
    expect(one('2026-02-01', hours).because.source).toBe('the journal');
    expect(rows('2026-02-03', `${hours}\n`)).toEqual([]);
    const days = '2026-02-28 A1: lights off for 2 days';
    expect(asked('2026-03-02', days)).toBe('03-02');
    expect(one('2026-03-02', days).because.steps).toContain('its line says for 2 days');
    expect(rows('2026-03-03', `${days}\n`)).toEqual([]);
  });
  it('for the reason that is told', () => {
    const steps = (line: string) => one('2026-02-01', `2026-02-01 ${line}`).because.steps;
    expect(steps('Long: pump off')).toContain('usual patience: an hour');
    expect(steps('C1: heater off')).toContain('usual patience: 1 day');
    expect(steps('C1: divider in')).toContain('usual patience: 7 days');
    expect(one('2026-02-01', '2026-02-01 C1: divider in').because.source).toBe('patience of each kind: ours');
  });
});

describe('a measure weighs', () => {
  const weight = (on: string, line: string): number[] => {
    const { weight: heavy, pressing } = one(on, line);
    return [heavy, pressing ? 1 : 0];
  };
  it('as life at risk from the day after, where a pump is off', () => {
    const pump = '2026-02-01 Long: pump off';
    expect(weight('2026-02-01', pump)).toEqual([2, 1]);
    expect(weight('2026-02-02', pump)).toEqual([3, 1]);
  });
  it('more once its patience is past, where a heater is off', () => {
    const heater = '2026-02-01 C1: heater off';
    expect(weight('2026-02-02', heater)).toEqual([1, 1]);
    expect(weight('2026-02-03', heater)).toEqual([2, 1]);
  });
  it('more a week after that, off the loop or warmed; else as any chore', () => {
    expect([10, 11].map((day) => weight(`2026-02-${String(day)}`, '2026-02-01 A1: off the loop'))).toEqual([
      [1, 0],
      [2, 0],
    ]);
    expect([18, 19].map((day) => weight(`2026-02-${String(day)}`, '2026-02-01 C1: heat to 30 C'))).toEqual([
      [1, 0],
      [2, 0],
    ]);
    expect(weight('2026-03-20', '2026-02-01 C1: divider in')).toEqual([1, 0]);
    expect(weight('2026-03-20', '2026-02-01 C1: air filter in')).toEqual([1, 0]);
  });
});

describe('what it costs to leave it', () => {
  const why = (on: string, line: string): string => one(on, line).why;
  it('is told with the days that it stands', () => {
    expect(why('2026-02-01', '2026-02-01 C1: heater off')).toBe('heater off since 1 Feb');
    expect(why('2026-02-04', '2026-02-01 C1: heater off')).toBe('heater off since 1 Feb (3 days)');
    expect(why('2026-02-01', '2026-02-01 A1: rocks out')).toContain('; nowhere to hide');
    expect(why('2026-02-01', '2026-02-01 Long: pump off')).toContain('; the filter starves of oxygen after some hours');
  });
  it('is that an air filter is not mature, for six weeks', () => {
    expect(why('2026-03-14', '2026-02-01 C1: air filter in')).toContain('not mature yet');
    expect(why('2026-03-15', '2026-02-01 C1: air filter in')).not.toContain('mature');
  });
  it('is what a tank off its loop misses: all of it, or the changes since that day', () => {
    const off = '2026-02-01 A1: off the loop';
    expect(why('2026-02-03', off)).toContain('gets no change, heat or dose of Long');
    const changes =
      '2026-01-31 Long: water change 20 %\n2026-02-01 Long: water change 20 %\n2026-02-02 A1: water change 20 %';
    expect(why('2026-02-03', `${changes.split('\n')[0] ?? ''}\n${off}`)).toContain('gets no change');
    const row = one('2026-02-03', `${off}\n${changes}\n2026-02-02 C1: water change 20 %`);
    expect(row.why).toContain('missed 1 water change of Long');
    expect(row.lines.map(({ line }) => line - SETUP)).toEqual([1, 3]);
  });
  it('has its caution, where hands go in or the water is warm', () => {
    const caution = (line: string) => one('2026-02-01', `2026-02-01 ${line}`).caution ?? 'none';
    for (const line of ['Long: pump off', 'C1: heater off']) expect(caution(line)).toContain('cut the power');
    expect(caution('C1: heat to 30 C')).toContain('less oxygen');
    expect(caution('C1: air filter in')).toContain('not mature');
    // Six weeks on it is as mature as any.
    expect(one('2026-03-15', '2026-02-01 C1: air filter in').caution).toBeUndefined();
    for (const line of ['A1: rocks out', 'A1: lights off', 'C1: divider in', 'C1: breeder net in'])
      expect(caution(line)).toBe('none');
  });
});

describe('off the loop on an air filter', () => {
  it('warns of the fresh filter while it is, and weighs by the fish that are there', () => {
    const rigged = (on: string, tank: string): [number, boolean] => {
      const row = one(on, `2026-01-02 tank A3: 60 L; on Long\n2026-02-02 ${tank}: off the loop; air filter in`);
      return [row.weight, row.caution !== undefined];
    };
    expect([rigged('2026-02-05', 'A1'), rigged('2026-02-20', 'A1'), rigged('2026-04-01', 'A1')]).toEqual([
      [1, true],
      [2, true],
      [2, false],
    ]);
    expect(rigged('2026-02-20', 'A3')).toEqual([1, true]);
  });

  it('is one row, whichever came first, and names the day of each', () => {
    const row = one('2026-02-05', '2026-02-03 A1: air filter in\n2026-02-02 A1: off the loop');
    expect(row).toMatchObject({
      id: 'a1-off-the-loop',
      what: 'put back on the loop, then take the air filter out',
      close: 'A1: back on the loop, air filter out',
    });
    expect(row.why).toMatch(/^off the loop on an air filter since 2 Feb, that since 3 Feb; gets no change/);
    expect(row.why).toMatch(/not mature yet, do not count on it$/);
    expect(row.lines.map(({ line }) => line - SETUP)).toEqual([2, 1]);
    expect(row.because.lines).toEqual(row.lines);
    expect(row.because.steps).toContain('off the loop since 2 Feb (3 days)');
    expect(row.because.steps).toContain('air filter since 3 Feb (2 days)');
    expect(one('2026-02-05', '2026-02-02 A1: off the loop, air filter in').why).toMatch(/since 2 Feb; gets no/);
  });
  it('waits for what is broken there, and for nothing that is mended or elsewhere', () => {
    const off = '2026-02-02 A1: off the loop, air filter in';
    expect(one('2026-02-05', `${off}\n2026-02-02 A1: fault "valve weeping"`).why).toContain(
      'once mended: valve weeping',
    );
    const fixed = `${off}\n2026-02-02 A1: fault "valve weeping"\n2026-02-04 A1: fixed\n2026-02-03 A2: fault "glass chipped"`;
    expect(one('2026-02-05', fixed).why).not.toContain('mended');
  });
  it('is two rows where the air filter stands in another tank', () => {
    const two = rows('2026-02-05', '2026-02-02 A1: off the loop\n2026-02-02 A2: air filter in\n');
    expect(two.map(({ close }) => close)).toEqual(['A1: back on the loop', 'A2: air filter out']);
    expect(rows('2026-02-05', '2026-02-02 C1: divider in, air filter in\n').map(({ close }) => close)).toEqual([
      'C1: divider out',
      'C1: air filter out',
    ]);
  });
});

describe('while a pair disputes', () => {
  const chasing = '2026-02-02 A1: chasing, male on female\n';
  it('what calms it is not asked back before tomorrow, in its own tank', () => {
    const calm = `${chasing}2026-02-02 A1: lights off`;
    expect(asked('2026-02-03', calm)).toBe('02-04');
    expect(asked('2026-02-06', calm)).toBe('02-07');
    expect(one('2026-02-06', calm).why).toContain('leave it so while the dispute is open');
    expect(asked('2026-02-06', `${chasing}2026-02-02 C2: lights off`)).toBe('02-04');
    expect(asked('2026-02-06', `${chasing}2026-02-06 A1: made up\n2026-02-02 A1: lights off`)).toBe('02-04');
  });
  it('a divider is not asked back before its week is over', () => {
    expect(asked('2026-02-03', `${chasing}2026-02-02 A1: divider in`)).toBe('02-09');
  });
  it('nor where the other of two pairs in that tank disputes', () => {
    const fir = '2026-02-01 pair Fir: krib; male; female; in A1\n2026-02-02 A1: Fir chasing\n';
    expect(asked('2026-02-06', `${fir}2026-02-02 A1: lights off`)).toBe('02-07');
  });
  it('other things are', () => {
    const row = one('2026-02-06', `${chasing}2026-02-02 A1: rocks out`);
    expect([row.why.includes('leave it so'), row.due.high]).toEqual([
      false,
      one('2026-02-06', '2026-02-02 A1: rocks out').due.high,
    ]);
  });
});
