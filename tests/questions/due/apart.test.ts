/** A tank that was taken off its loop is not asked back while what is in it would go round with the water, nor before it is mended. */
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { measuresDue } from '../../../src/questions/due/measures.ts';
import { journalOn } from '../../support/journal.ts';

/** `02-03 put back on the loop`, and why. */
const asked = (on: string, ...lines: readonly string[]): { what: string[]; why: string } => {
  const rows = measuresDue(journalOn(on, `${lines.join('\n')}\n`));
  return {
    what: rows.map(({ what, due }) => `${due.low === null ? 'open' : isoDay(due.low).slice(5)} ${what}`),
    why: rows.map(({ why }) => why).join(' | '),
  };
};
const OFF = '2026-02-01 B1: off the loop, air filter in';
const BACK = 'put back on the loop, then take the air filter out';

describe('a tank off its loop', () => {
  test('is asked back after two days where nothing is in it', () => {
    expect(asked('2026-02-02', OFF).what).toEqual([`02-03 ${BACK}`]);
  });

  test('stays off while a course of treatment is in it', () => {
    const treat = '2026-02-01 B1: treat "copper" 1 mL/L, wait 21 days';
    const row = asked('2026-02-02', OFF, treat);
    expect(row.what).toEqual([`02-22 ${BACK}`]);
    expect(row.why).toContain('keep it off while copper is in it, or all on the loop are treated: clear 22 Feb');
    expect(asked('2026-02-22', OFF, treat).what).toEqual([`02-03 ${BACK}`]);
    // Dosed while it was on the loop, all of it is treated.
    expect(asked('2026-02-02', treat.replace('02-01', '01-31'), OFF).what).toEqual([`02-03 ${BACK}`]);
  });

  test('stays off while it is sick or held, and no longer than that', () => {
    const hold = '2026-02-01 B1: hold "velvet"';
    expect(asked('2026-02-02', OFF, hold).what).toEqual([`03-01 ${BACK}`]);
    expect(asked('2026-02-02', OFF, hold).why).toContain('keep it off while it may carry velvet: not before 1 Mar');
    expect(asked('2026-02-06', OFF, hold, '2026-02-06 B1: hold over').what).toEqual([`02-03 ${BACK}`]);
    expect(asked('2026-02-06', OFF, '2026-02-01 B1: sick "white spot"').what).toEqual([`02-07 ${BACK}`]);
    expect(asked('2026-02-06', OFF, '2026-02-01 B1: sick "bent spine", not catching').what).toEqual([`02-03 ${BACK}`]);
    expect(asked('2026-02-02', OFF, '2026-02-01 Long: hold "velvet"').what).toEqual([`02-03 ${BACK}`]);
  });
});

describe('what was rigged for a fault of the same place', () => {
  test('waits until that is mended', () => {
    const dead = '2026-02-01 Long: pump off; fault "pump dead"';
    expect(asked('2026-02-01', dead).what).toEqual(['02-01 once mended, pump on again']);
    expect(asked('2026-02-01', dead).why).toContain('not before it is mended: pump dead');
    expect(asked('2026-02-02', dead, '2026-02-02 Long: fixed "new pump"').what).toEqual(['02-01 pump on again']);
    expect(asked('2026-02-20', '2026-02-01 Long: fault "lid cracked"', '2026-02-20 Long: pump off').what).toEqual([
      '02-20 pump on again',
    ]);
  });
});

test('a tank off its loop with fish and no air of its own is said to stand still', () => {
  const still = 'no air filter on record there: nothing moves its water';
  const off = '2026-02-01 B1: off the loop';
  expect(asked('2026-02-02', off).why).toContain(still);
  expect(asked('2026-02-02', OFF).why).not.toContain(still);
  expect(asked('2026-02-02', OFF, '2026-02-02 B1: air filter stays').why).not.toContain(still);
  expect(asked('2026-02-02', '2026-01-02 tank B1: sponge filter', off).why).not.toContain(still);
  expect(asked('2026-02-02', off, '2026-02-01 Pebble: moved all to C2').why).not.toContain(still);
});

test('a tank stays off its loop while the loop is held, sick or treated, where it went off in time', () => {
  const early = '2026-01-05 B1: off the loop, air filter in';
  const held = asked('2026-02-02', early, '2026-02-01 A1: hold "velvet"');
  expect(held.what).toEqual([`03-01 ${BACK}`]);
  expect(held.why).toContain('keep it off while Long may carry velvet: not before 1 Mar');
  // Gone off within the two weeks before the first sign it may carry the same.
  expect(asked('2026-02-02', OFF, '2026-02-01 A1: hold "velvet"').what).toEqual([`02-03 ${BACK}`]);
  expect(asked('2026-02-02', early, '2026-02-01 A1: sick "white spot"').what).toEqual([`02-03 ${BACK}`]);
  expect(asked('2026-02-02', early, '2026-02-01 A1: sick "bent spine", not catching').what).toEqual([`01-07 ${BACK}`]);
  const treat = '2026-02-01 Long: treat "copper" 1 mL/L, wait 21 days';
  const dosed = asked('2026-02-02', early, treat);
  expect(dosed.what).toEqual([`02-22 ${BACK}`]);
  expect(dosed.why).toContain('keep it off while copper is in Long, or it is treated as well: clear 22 Feb');
  expect(asked('2026-02-22', early, treat).what).toEqual([`01-07 ${BACK}`]);
  expect(asked('2026-02-02', early, treat.replace('Long:', 'C1:')).what).toEqual([`01-07 ${BACK}`]);
});

test('an air filter stays in while the pump of its loop or the power is off', () => {
  const air = '2026-02-01 B1: air filter in';
  const out = (on: string, ...lines: readonly string[]): string[] =>
    asked(on, air, ...lines).what.filter((row) => row.endsWith('take the air filter out'));
  const row = asked('2026-02-05', air, '2026-02-01 Long: pump off');
  expect(row.what).toContain('02-06 once water runs again, take the air filter out');
  expect(row.why).toContain('leave it in while the pump of Long is off: nothing else moves the water');
  expect(out('2026-02-05', '2026-02-01 Long: pump off', '2026-02-04 Long: pump on')).toEqual([
    '02-03 take the air filter out',
  ]);
  expect(out('2026-02-05', '2026-02-05 room: power off')).toEqual([
    '02-06 once water runs again, take the air filter out',
  ]);
  expect(out('2026-02-05', '2026-02-05 08:00 room: power off', '2026-02-05 09:00 room: power on')).toEqual([
    '02-03 take the air filter out',
  ]);
});

describe('of several reasons', () => {
  const hold = '2026-02-01 B1: hold "velvet"';
  const treat = (wait: number): string => `2026-02-01 B1: treat "copper" 1 mL/L, wait ${String(wait)} days`;

  test('the one that lasts longest is told, whichever stands first', () => {
    expect(asked('2026-02-02', OFF, hold, treat(40)).what).toEqual([`03-13 ${BACK}`]);
    expect(asked('2026-02-02', OFF, hold, treat(40)).why).toContain('while copper is in it');
    expect(asked('2026-02-02', OFF, hold, treat(21)).what).toEqual([`03-01 ${BACK}`]);
    expect(asked('2026-02-02', OFF, hold, treat(21)).why).toContain('while it may carry velvet');
  });

  test('of two that last as long the medicine is told', () => {
    expect(asked('2026-02-02', OFF, hold, treat(28)).why).toContain('while copper is in it');
  });

  test('what is in the loop counts as long as it is in one of its tanks', () => {
    const early = '2026-01-05 B1: off the loop, air filter in';
    const less = '2026-02-02 A2: off the loop, air filter in';
    const back = (...lines: readonly string[]): string | undefined => asked('2026-02-03', early, ...lines).what[0];
    expect(back('2026-02-01 Long: treat "copper" 1 mL/L, wait 21 days', less)).toBe(`02-22 ${BACK}`);
    expect(back('2026-02-01 A1: hold "velvet"', less)).toBe(`03-01 ${BACK}`);
  });
});

describe('a reason speaks for its own measure alone', () => {
  test('a hold keeps no lights off', () => {
    const lights = '2026-02-01 B1: lights off';
    expect(asked('2026-02-02', lights, '2026-02-01 B1: hold "velvet"')).toEqual(asked('2026-02-02', lights));
    expect(asked('2026-02-02', lights, '2026-02-02 room: power off')).toEqual(asked('2026-02-02', lights));
  });

  test('an air filter waits for the pump of its loop and the power, for nothing else', () => {
    const air = '2026-02-01 B1: air filter in';
    const out = (line: string): string[] =>
      asked('2026-02-05', air, line).what.filter((row) => row.endsWith('take the air filter out'));
    for (const line of [
      '2026-02-01 Long: heater off',
      '2026-02-01 Long: fault "lid cracked"',
      '2026-02-01 B1: pump off',
      '2026-02-01 C1: pump off',
    ])
      expect(out(line)).toEqual(['02-03 take the air filter out']);
    const alone = asked('2026-02-05', '2026-02-01 C1: air filter in', '2026-02-01 Long: pump off').what;
    expect(alone).toContain('02-03 take the air filter out');
  });
});
