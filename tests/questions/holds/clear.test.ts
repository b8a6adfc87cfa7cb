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
  test('other tanks are not', () => {
    expect(gone('2026-03-22 A1: Rowan moved to A2\n2026-03-23 B1: Pebble sold 4\n')).toEqual([]);
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
