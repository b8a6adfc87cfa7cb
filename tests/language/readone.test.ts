import { describe, expect, test } from 'vitest';
import { readOne } from '../../src/language/readone.ts';
import type { ReadOne } from '../../src/language/readone.ts';
import { eventsOf, readLines } from '../support/lines.ts';

const journal = readLines('2026-03-10 21:00 A1: moved 20 Rowan-1 to C1\n2026-03-10 A1: chasing; chasing\n');

function one(line: string): ReadOne {
  return readOne(line, journal, 'fishroom.txt', 99);
}

describe('one more line', () => {
  test('comes to what it would in the journal', () => {
    const line = '2026-03-11 A1: Rowan-1 counted 43 "in the blue net"; lights off';
    const told = (events: readonly object[]): unknown => events.map((event) => ({ ...event, seq: 0, place: null }));
    expect(told(one(line).events)).toEqual(told(eventsOf(line)));
    expect(one(line).events.map(({ place }) => place.line)).toEqual([99, 99]);
  });

  test('takes the time of the last timed line of its date', () => {
    expect(one('2026-03-10 A1: pinned').minute).toBe(1260);
    expect(one('2026-03-10 08:00 A1: pinned').minute).toBe(480);
    expect(one('2026-03-11 A1: pinned').minute).toBeNull();
  });

  test('may declare what it uses, and leaves the journal alone', () => {
    expect(one('2026-03-11 tank E1: 54 L; alone; lights off').problems).toEqual([]);
    expect(one('2026-03-11 E1: lights off').problems).toMatchObject([{ kind: 'unknown-name' }]);
  });

  test('takes back one clause, or says why not', () => {
    const taken = one('2026-03-10 A1: mistake moved 20 Rowan-1 to C1');
    expect(taken).toMatchObject({ events: [], problems: [], takenBack: [{ kind: 'moved', to: 'C1' }] });
    const [none] = one('2026-03-10 A1: mistake moved 21 Rowan-1 to C1').problems;
    expect([none?.kind, none?.also.length]).toEqual(['mistake-of-none', 1]);
    const several = one('2026-03-10 A1: mistake chasing');
    expect(several.takenBack).toEqual([]);
    expect(several.problems[0]?.also).toHaveLength(2);
  });

  test('without a date says so', () => {
    expect(one('A1: chasing')).toMatchObject({ day: null, events: [], problems: [{ kind: 'no-date' }] });
  });
});
