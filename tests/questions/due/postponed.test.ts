/** Which line puts off which row: by the place, by the fish that live there, by any of its names; the latest day counts. */
import { expect, test } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { awayUntil, putOffUntil } from '../../../src/questions/due/postponed.ts';
import { day } from '../../support/events.ts';
import { journalOn } from '../../support/journal.ts';

const YOUNG = `2026-01-02 A1: spawned
2026-01-12 A1: free-swimming, 30
2026-02-01 A1: Rowan-1 moved 20 to C2
`;

function until(
  lines: string,
  place = 'A1',
  more: { also?: readonly string[]; pressing?: boolean } = {},
): string | null {
  const found = putOffUntil(journalOn('2026-02-15', YOUNG + lines), {
    place,
    putOffKey: 'tally',
    putOffAlso: more.also ?? [],
    pressing: more.pressing ?? false,
  });
  return found === null ? null : isoDay(found);
}

test('a line about fish puts off what is to be done where they live, and nowhere else', () => {
  const brood = '2026-02-14 Rowan-1: put off tally until 2026-02-20\n';
  expect(until(brood, 'A1')).toBe('2026-02-20');
  expect(until(brood, 'C2')).toBe('2026-02-20');
  expect(until(brood, 'C1')).toBeNull();
  const pair = '2026-02-14 Rowan: put off tally until 2026-02-20\n';
  expect(until(pair, 'A1')).toBe('2026-02-20');
  expect(until(pair, 'C2')).toBeNull();
});

test('a line about several tanks puts off what is to be done in each of them, one about a loop what is done there', () => {
  const two = '2026-02-14 A1 C2: put off tally until 2026-02-20\n';
  expect(['A1', 'C2', 'C1', 'room', 'Long'].map((place) => until(two, place))).toEqual([
    '2026-02-20',
    '2026-02-20',
    null,
    null,
    null,
  ]);
  const all = '2026-02-14 all tanks: put off tally until 2026-02-20\n';
  expect(['A1', 'C2', 'room', 'Long'].map((place) => until(all, place))).toEqual([
    '2026-02-20',
    '2026-02-20',
    null,
    null,
  ]);
  const loop = '2026-02-14 Long: put off tally until 2026-02-20\n';
  expect(['Long', 'A1', 'room'].map((place) => until(loop, place))).toEqual(['2026-02-20', null, null]);
});

test('of two lines the later day counts, in whichever order they stand', () => {
  const early = 'A1: put off tally until 2026-02-18\n';
  const late = 'A1: put off tally until 2026-02-20\n';
  expect(until(`2026-02-10 ${early}2026-02-14 ${late}`)).toBe('2026-02-20');
  expect(until(`2026-02-10 ${late}2026-02-14 ${early}`)).toBe('2026-02-20');
});

test('any name of the row is its name', () => {
  const other = '2026-02-14 A1: put off headcount until 2026-02-20\n';
  expect(until(other)).toBeNull();
  expect(until(other, 'A1', { also: ['headcount', 'roll call'] })).toBe('2026-02-20');
});

test('what presses is put off till the next day, however far the line goes', () => {
  const line = '2026-02-15 A1: put off tally until 2026-02-16\n';
  expect(until(line, 'A1', { pressing: true })).toBe('2026-02-16');
  expect(until(line.replace('02-16', '02-28'), 'A1', { pressing: true })).toBe('2026-02-16');
  expect(until(line.replace('02-15', '02-14').replace('02-16', '02-28'), 'A1', { pressing: true })).toBeNull();
});

test('away from the day of the line until the day before the one that it names', () => {
  const away = '2026-02-10 room: away until 2026-02-20\n';
  const on = (iso: string) => awayUntil(journalOn(iso, away));
  expect(on('2026-02-09')).toBeNull();
  expect(on('2026-02-10')).toBe(day('2026-02-20'));
  expect(on('2026-02-19')).toBe(day('2026-02-20'));
  expect(on('2026-02-20')).toBeNull();
});
