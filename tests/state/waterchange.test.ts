/** Changes of water that cannot be, in tanks and on a loop; and readings filed late. */
import { describe, expect, it } from 'vitest';
import { day, loop, roomOn, tank } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';
import { SET_UP, change } from '../support/waters.ts';

const on = (...lines: readonly string[]) => journalOn('2026-04-10', `${lines.join('\n')}\n`);
const told = (line: string): string[] =>
  on(line).problems.map(
    ({ kind, weight, says, also }) => `${kind}, ${weight}: ${says} (${also.map((at) => at.line).join()})`,
  );

describe('a change of a share', () => {
  const changed = (where: 'C1' | 'Long', percent: number) => {
    const room = roomOn('2026-03-10', [
      ...SET_UP,
      change('2026-03-10', where === 'C1' ? tank('C1') : loop('Long'), percent),
    ]);
    return [room.water.changes.length, ...room.problems.map(({ kind, weight, says }) => `${kind}, ${weight}: ${says}`)];
  };
  it('of all the water can be, of more or of none not', () => {
    const more = (where: string): string =>
      `impossible-change, stops: no more than 100 % of the water of ${where} can be changed at once`;
    expect(changed('C1', 100)).toEqual([1]);
    expect(changed('C1', 101)).toEqual([0, more('C1')]);
    expect(changed('Long', 100)).toEqual([1]);
    expect(changed('Long', 101)).toEqual([0, more('Long')]);
    expect(changed('C1', 0)[0]).toBe(0);
    expect(changed('C1', 1)).toEqual([1]);
  });
});

describe('a change in litres', () => {
  it('of a tank is at most what it holds', () => {
    expect(told('2026-03-10 C1: water change 55 L')).toEqual(['impossible-change, stops: C1 holds 54 L at most (6)']);
    expect(on('2026-03-10 C1: water change 55 L').problems[0]?.write).toBe('2026-03-10 C1: water change 30 %');
    // 46.5 L: told as 47, which is no more than it holds.
    const odd = (litres: number): number =>
      on('2026-03-01 tank D1: 50 x 30 x 31 cm; alone', `2026-03-10 D1: water change ${String(litres)} L`).problems
        .length;
    expect([odd(47), odd(48)]).toEqual([0, 1]);
  });
  it('of a loop is doubted above what the sump and the tanks on it hold, and counts all the same', () => {
    // Sump 240 L; tanks of 160, 160 and 84 L, 10 to 20 % of it rock, sand and air (common practice): 563 to 604 L.
    const doubt = 'impossible-change, doubt: Long held 563–604 L of water that day, sump and tanks on it together (2)';
    expect(told('2026-03-10 Long: water change 604 L')).toEqual([]);
    expect(told('2026-03-10 Long: water change 605 L')).toEqual([doubt]);
    expect(on('2026-03-10 Long: water change 610 L').water.changes).toHaveLength(1);
    expect(told('2026-03-10 Long: water change 590-610 L')).toEqual([]);
  });
  it('of a loop counts the tanks that were on it that day', () => {
    const off = on('2026-03-09 A1: off the loop', '2026-03-10 Long: water change 500 L');
    expect(off.problems.map(({ kind, weight }) => [kind, weight])).toEqual([['impossible-change', 'doubt']]);
    expect(told('2026-03-10 Long: water change 500 L')).toEqual([]);
  });
  it('is kept with its amount, its day and the tanks whose water it was', () => {
    const { changes } = on('2026-03-10 C1: water change 20 L', '2026-03-12 Long: water change 30 %').water;
    expect(
      changes.map(({ amount, where, tanks, day: when }) => [amount.unit, amount.likely, where, tanks, when]),
    ).toEqual([
      ['L', 20, 'C1', ['C1'], day('2026-03-10')],
      ['share', 0.3, 'Long', ['A1', 'A2', 'B1'], day('2026-03-12')],
    ]);
  });
});

describe('a reading of the day before', () => {
  const ph = (...lines: readonly string[]): string[] =>
    on(...lines).water.readings.map(({ day: when, reading, superseded }) =>
      [when - day('2026-03-10'), superseded ? 'replaced' : String(reading.ph?.likely ?? null)].join(' '),
    );
  it('leaves that of the day standing, and replaces one of its own', () => {
    expect(ph('2026-03-11 C1: test pH 7.2', '2026-03-11 C1: test pH 7.1 yesterday')).toEqual(['0 7.1', '1 7.2']);
    expect(
      ph('2026-03-10 C1: test pH 7', '2026-03-11 C1: test pH 7.2', '2026-03-11 C1: test pH 7.1 yesterday'),
    ).toEqual(['0 replaced', '0 7.1', '1 7.2']);
  });
});

describe('what is done to several waters, one behind the other', () => {
  it('is kept with the tanks of each', () => {
    const lines = ['2026-03-10 C1: dosed 5 g salt', '2026-03-11 C2: dosed 5 g salt', '2026-03-12 A1: dosed 5 g salt'];
    const tanks = (...more: readonly string[]): string[] =>
      on(...lines, ...more).water.doses.map(({ tanks: those }) => those.join(' '));
    expect(tanks()).toEqual(['C1', 'C2', 'A1 A2 B1']);
    expect(tanks('2026-03-13 A1: off the loop', '2026-03-14 A2: dosed 5 g salt').at(-1)).toBe('A2 B1');
    // As many tanks, and other ones.
    const other = ['2026-03-13 B1: off the loop', '2026-03-14 A1: dosed 5 g salt', '2026-03-15 B1: back on the loop'];
    expect(tanks(...other, '2026-03-16 A2: off the loop', '2026-03-17 A1: dosed 5 g salt').slice(3)).toEqual([
      'A1 A2',
      'A1 B1',
    ]);
  });
});
