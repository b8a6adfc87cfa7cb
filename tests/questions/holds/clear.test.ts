/** Which signs, doses, moves and sales a hold takes in, and which it leaves alone; and the longest of two holds. */
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { holds, type HoldRow } from '../../../src/questions/holds.ts';
import { heldBy, heldTanks } from '../../../src/questions/holds/reach.ts';
import { journalOn } from '../../support/journal.ts';

function rowOf(lines: string, on = '2026-04-10'): HoldRow {
  const [row, ...more] = holds(journalOn(on, lines)).holds;
  if (row === undefined || more.length > 0) throw new Error(`${String(more.length)} more holds`);
  return row;
}
const HOLD = '2026-03-20 C1: hold "velvet"\n';

describe('the first sign', () => {
  const first = (lines: string): string => isoDay(rowOf(lines + HOLD).firstSign);
  test('is the line of the hold, where no sickness was written before it', () => {
    expect(first('')).toBe('2026-03-20');
    expect(first('2026-03-25 C1: sick "white spot"\n')).toBe('2026-03-20');
  });
  test('is the first sickness of its tanks within 28 days before it', () => {
    expect(first('2026-02-20 C1: sick "white spot"\n2026-03-10 C1: sick "white spot"\n')).toBe('2026-02-20');
    expect(first('2026-02-19 C1: sick "white spot"\n')).toBe('2026-03-20');
  });
  test('is no sickness of another tank, nor one that is not catching', () => {
    expect(first('2026-03-10 C2: sick "white spot"\n')).toBe('2026-03-20');
    expect(first('2026-03-10 C1: sick "torn fin"\n2026-03-10 C1: not catching\n')).toBe('2026-03-20');
  });
});

describe('the last sign', () => {
  const last = (lines: string): string => isoDay(rowOf(HOLD + lines).lastSign);
  test('is the last sickness in the reach, or the hold written again', () => {
    expect(last('2026-03-25 C1: sick "white spot"\n2026-03-28 C2: sick "white spot"\n')).toBe('2026-03-25');
    expect(last('2026-03-30 C1: hold "velvet"\n')).toBe('2026-03-30');
    expect(last('2026-03-22 C1: Ash moved 2 to C2\n2026-03-28 C2: sick "white spot"\n')).toBe('2026-03-28');
  });
  test('is none of a tank before the fish came to it', () => {
    expect(last('2026-03-21 C2: sick "white spot"\n2026-03-22 C1: Ash moved 2 to C2\n')).toBe('2026-03-20');
    expect(last('2026-03-22 C2: sick "white spot"\n2026-03-22 C1: Ash moved 2 to C2\n')).toBe('2026-03-22');
  });
});

describe('doses', () => {
  const dosed = (lines: string): (string | null)[] => {
    const { lastDose, dosesTo, clear } = rowOf(HOLD + lines);
    return [lastDose, dosesTo, clear].map((day) => (day === null ? null : isoDay(day)));
  };
  test('in the reach put off the day on which it is clear, others do not', () => {
    expect(dosed('')).toEqual([null, null, '2026-04-17']);
    expect(dosed('2026-03-24 C1: treated salt 10 g\n')).toEqual(['2026-03-24', null, '2026-04-21']);
    expect(dosed('2026-03-24 C2: treated salt 10 g\n')).toEqual([null, null, '2026-04-17']);
    expect(dosed('2026-03-24 C1: treated salt 10 g\n2026-03-28 C1: treated formalin 2 mL\n')[0]).toBe('2026-03-28');
  });
  test('long before the first sign belong to something else', () => {
    const [dose, , clear] = dosed('2026-02-20 C1: treated salt 10 g\n');
    expect([dose, clear]).toEqual([null, '2026-04-17']);
    expect(dosed('2026-03-05 C1: treated salt 10 g\n')[0]).toBeNull();
    expect(dosed('2026-03-06 C1: treated salt 10 g\n')[0]).toBe('2026-03-06');
  });
  test('in water that is held in part count too', () => {
    const row = rowOf('2026-03-20 A1: hold "velvet"\n2026-03-21 B1: hold over\n2026-03-24 A1: treated salt 10 g\n');
    expect([row.tanks.map(({ tank }) => tank), isoDay(row.clear)]).toEqual([['A1', 'A2'], '2026-04-21']);
  });
  test('of two courses: the last one given, and the later end of those to come', () => {
    const salt = '2026-04-09 C1: treat salt 2 g/L, every 2 days, 3 doses\n';
    const formalin = '2026-04-08 C1: treat formalin 2 mL, every 5 days, 4 doses\n';
    expect(dosed(salt)).toEqual(['2026-04-09', '2026-04-13', '2026-05-11']);
    expect(dosed(formalin)).toEqual(['2026-04-08', '2026-04-23', '2026-05-21']);
    expect(dosed(salt + formalin)).toEqual(['2026-04-09', '2026-04-23', '2026-05-21']);
    expect(dosed(formalin + salt)).toEqual(['2026-04-09', '2026-04-23', '2026-05-21']);
    const later = formalin.replace('04-08', '04-10');
    expect(dosed(salt + later)).toEqual(['2026-04-10', '2026-04-25', '2026-05-23']);
    const one = '2026-03-25 C1: treat formalin 2 mL\n';
    const two = '2026-03-22 C1: treat salt 2 g/L\n2026-03-30 C1: treat salt 2 g/L\n';
    expect(dosed(two + one)).toEqual(['2026-03-30', null, '2026-04-27']);
  });
  test('given to the end put nothing off beyond the last of them', () => {
    const two = '2026-03-24 C1: treat salt 2 g/L, every 2 days, 2 doses\n2026-03-26 C1: treat salt 2 g/L\n';
    expect(dosed(two)).toEqual(['2026-03-26', null, '2026-04-23']);
  });
  test('of a tank that fish came from, where it is in the reach', () => {
    expect(dosed('2026-03-22 C1: Ash moved 2 to C2\n2026-03-24 C2: treated salt 10 g\n')[2]).toBe('2026-04-21');
  });
});

describe('fish that left', () => {
  const gone = (lines: string): string[] => {
    const { moved, sold } = rowOf(HOLD + lines);
    return [
      ...moved.map(({ fish, from, to, on }) => `${fish} ${String(from)} to ${String(to)} ${isoDay(on)}`),
      ...sold.map(({ fish, from, on }) => `${fish} sold from ${String(from)} ${isoDay(on)}`),
    ];
  };
  test('the sick tank since the look-back are told, with where they went', () => {
    expect(gone('2026-03-06 C1: Ash moved 2 to C2\n2026-03-08 C1: Ash sold 3\n')).toEqual([
      'Ash C1 to C2 2026-03-06',
      'Ash sold from C1 2026-03-08',
    ]);
    expect(gone('2026-03-05 C1: Ash moved 2 to C2\n2026-03-05 C1: Ash sold 3\n')).toEqual([]);
  });
  test('by a sale that names no tank, where they lived in one that is reached', () => {
    const split = '2026-03-06 C1: Ash moved 4 to C2\n2026-03-08 Ash: sold 3\n';
    expect(gone(split)).toEqual(['Ash C1 to C2 2026-03-06', 'Ash sold from null 2026-03-08']);
    const brought = '2026-03-21 C1: Ash moved all to tank 12\n2026-03-25 Ash: sold 3\n';
    expect(gone(brought)).toEqual(['Ash C1 to 12 2026-03-21', 'Ash sold from 12 2026-03-25']);
    const all = '2026-03-21 C1: Ash moved 4 to tank 12\n2026-03-25 Ash: sold all\n';
    expect(gone(all)).toEqual(['Ash C1 to 12 2026-03-21', 'Ash sold from null 2026-03-25']);
    const brood = `2026-02-02 A1: spawned
2026-02-10 A1: free-swimming, 52
2026-03-01 A1: Rowan-1 moved 20 to C1
2026-03-25 Rowan-1: sold 3
`;
    expect(gone(brood)).toEqual(['Rowan-1 sold from null 2026-03-25']);
  });
  test('by a sale that names no tank, long before or of a stock that never lived there, are not', () => {
    expect(gone('2026-03-01 C1: Ash moved 4 to C2\n2026-03-05 Ash: sold 3\n')).toEqual([]);
    expect(gone('2026-02-21 C1: Ash moved all to tank 12\n2026-03-25 Ash: sold 3\n')).toEqual([]);
    expect(gone('2026-03-01 B1: Pebble moved 5 to C2\n2026-03-08 Pebble: sold 3\n')).toEqual([]);
  });
  test('other tanks are not', () => {
    expect(gone('2026-03-22 A1: Rowan moved to A2\n2026-03-23 B1: Pebble sold 4\n')).toEqual([]);
  });
});

describe('tanks that a line lets go, or that were valved off', () => {
  const LOOP = '2026-03-20 A1: hold "velvet"\n';
  const tanks = (lines: string): string[] => rowOf(lines).tanks.map(({ tank }) => tank);
  test('a `hold over` before the hold lets nothing go', () => {
    const earlier = '2026-03-10 B1: hold "flukes"\n2026-03-12 B1: hold over\n';
    expect(tanks(earlier + LOOP)).toEqual(['A1', 'A2', 'B1']);
    const other = holds(journalOn('2026-04-10', `2026-03-10 A2: hold "flukes"\n2026-03-12 B1: hold over\n${LOOP}`));
    expect(other.holds.map((hold) => hold.tanks.map(({ tank }) => tank))).toEqual([
      ['A1', 'A2'],
      ['A1', 'A2', 'B1'],
    ]);
    expect(tanks(`${LOOP}2026-03-20 B1: hold over\n`)).toEqual(['A1', 'A2']);
  });
  test('a tank is clean from the day before the look-back on, or a minute before it', () => {
    const off = (when: string): [string[], string[]] => {
      const { tanks: reached, clean } = rowOf(`${when} A2: off the loop\n${LOOP}`);
      return [reached.map(({ tank }) => tank), clean.map(({ tank, says }) => `${tank} ${says}`)];
    };
    const cleared = [['A1', 'B1'], ['A2 off Long since 5 Mar, before it can have come']];
    expect(off('2026-03-05')).toEqual(cleared);
    expect(off('2026-03-05 23:59')).toEqual(cleared);
    expect(off('2026-03-06 00:00')).toEqual([['A1', 'A2', 'B1'], []]);
    expect(off('2026-03-06')).toEqual([['A1', 'A2', 'B1'], []]);
  });
  test('none is called clean of a loop that the trouble never reached', () => {
    expect(rowOf(`2026-03-01 A2: off the loop\n${HOLD}`).clean).toEqual([]);
  });
  test('a tank that was valved off in time and got fish since is held', () => {
    const fish = '2026-03-01 A2: off the loop\n2026-03-25 B1: Pebble moved 3 to A2\n';
    const { tanks: reached, clean } = rowOf(LOOP + fish);
    expect([reached.map(({ tank }) => tank), clean]).toEqual([['A1', 'A2', 'B1'], []]);
  });
});

describe('a tank in two holds', () => {
  const two = `${HOLD}2026-03-25 C1: Ash moved 2 to C2
2026-03-30 C2: hold "flukes"
`;
  test('is held by the longer one, whichever stands first', () => {
    const room = journalOn('2026-04-10', two);
    expect(heldBy(room, 'C2')?.hold.hold.text).toBe('flukes');
    expect(isoDay(heldTanks(room).get('C2') ?? room.on)).toBe('2026-04-27');
    const turned = journalOn('2026-04-10', `${two}2026-04-05 C1: hold "velvet"\n`);
    expect(heldBy(turned, 'C2')?.hold.hold.text).toBe('velvet');
    expect(isoDay(heldTanks(turned).get('C2') ?? room.on)).toBe('2026-05-03');
    expect(heldBy(room, '12')).toBeNull();
    expect(heldTanks(room).has('12')).toBe(false);
  });
});
