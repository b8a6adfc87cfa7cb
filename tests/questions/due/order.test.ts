/** Where all else is alike: what ends first, then the steps of a day in their order, then by name. */
import { expect, test } from 'vitest';
import { sortDue } from '../../../src/questions/due/order.ts';
import { day } from '../../support/events.ts';

const ORDER = { walk: ['A1', 'A2', 'B1'], last: new Set(['A2']) };

interface Row {
  readonly id: string;
  readonly place?: string;
  readonly weight?: 0 | 1 | 2 | 3;
  readonly from?: string;
  readonly to?: string | null;
  readonly sequence?: number;
  readonly ahead?: boolean;
}

function sorted(...rows: readonly Row[]): string[] {
  const full = rows.map(
    ({ id, place = 'A1', weight = 1, from = '2026-02-10', to = from, sequence, ahead = false }) => ({
      id,
      place,
      weight,
      due: { low: day(from), likely: null, high: to === null ? null : day(to) },
      state: ahead ? ('ahead' as const) : ('today' as const),
      what: '',
      kind: 'chore' as const,
      why: '',
      close: '',
      putOffKey: null,
      pressing: false,
      minutes: null,
      because: { rule: '', source: '', steps: [], lines: [] },
      lines: [],
      ...(sequence === undefined ? {} : { sequence }),
    }),
  );
  const ids = sortDue(full, ORDER).map(({ id }) => id);
  expect(sortDue(full.toReversed(), ORDER).map(({ id }) => id)).toEqual(ids);
  return ids;
}

test('in one tank what ends first comes first, what never ends last', () => {
  expect(sorted({ id: 'a', to: null }, { id: 'b', to: '2026-02-20' }, { id: 'c', to: '2026-02-12' })).toEqual([
    'c',
    'b',
    'a',
  ]);
});

test('steps of one day keep their order, rows without one come before them, and names decide the rest', () => {
  expect(sorted({ id: 'a', sequence: 2 }, { id: 'b', sequence: 1 }, { id: 'd' }, { id: 'c' })).toEqual([
    'c',
    'd',
    'b',
    'a',
  ]);
});

test('what is ahead goes by its day, then held tanks last, then the walk, then heavier first, then the steps', () => {
  const ahead = { ahead: true, from: '2026-02-16' };
  expect(
    sorted(
      { id: 'a', ...ahead, from: '2026-02-17', weight: 3 },
      { id: 'b', ...ahead, place: 'A2', weight: 2 },
      { id: 'c', ...ahead, place: 'B1', weight: 2 },
      { id: 'd', ...ahead, weight: 0 },
      { id: 'e', ...ahead, weight: 2, sequence: 1 },
      { id: 'f', ...ahead, weight: 2 },
      { id: 'g', to: '2026-02-28' },
    ),
  ).toEqual(['g', 'f', 'e', 'd', 'c', 'b', 'a']);
});
