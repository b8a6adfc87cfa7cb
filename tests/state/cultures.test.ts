import { expect, test } from 'vitest';
import { roomOn, tank } from '../support/events.ts';
import type { Line } from '../support/events.ts';
import type { Subject } from '../../src/journal/subject.ts';

const M1: Subject = { kind: 'culture', culture: 'M1' };
const M2: Subject = { kind: 'culture', culture: 'M2' };
const lines: Line[] = [
  ['2026-01-01', M1, { kind: 'culture declared', culture: 'M1', of: 'microworm' }],
  ['2026-01-01', M1, { kind: 'culture started' }],
  ['2026-01-05', M1, { kind: 'culture harvested' }],
  ['2026-01-14', M1, { kind: 'culture split', to: 'M2' }],
  ['2026-02-05', M1, { kind: 'culture sour' }],
  ['2026-02-06', M1, { kind: 'culture started' }],
  ['2026-02-06', M2, { kind: 'culture harvested' }],
  ['2026-02-07', tank('A1'), { kind: 'hatch set', grams: null, of: 'brine shrimp' }],
];

test('a jar is as old as its last start; a split starts the other', () => {
  const { jars } = roomOn('2026-01-20', lines).cultures;
  expect(jars.get('M1')).toMatchObject({ started: { place: { line: 2 } }, sour: null });
  expect(jars.get('M2')).toMatchObject({ of: 'microworm', starts: [{ from: 'M1' }], started: { place: { line: 4 } } });
});

test('sour lasts until it is started again', () => {
  expect(roomOn('2026-02-05', lines).cultures.jars.get('M1')?.sour).toMatchObject({ place: { line: 5 } });
  expect(roomOn('2026-02-06', lines).cultures.jars.get('M1')).toMatchObject({
    sour: null,
    started: { place: { line: 6 } },
  });
});

test('a hatch is kept, and a jar that nobody declared is left out', () => {
  const room = roomOn('2026-02-08', [
    ...lines,
    ['2026-02-08', { kind: 'culture', culture: 'X' }, { kind: 'culture sour' }],
  ]);
  expect(room.cultures.hatches).toMatchObject([{ where: 'A1', of: 'brine shrimp' }]);
  expect(room.problems).toMatchObject([{ kind: 'unknown-culture', weight: 'stops' }]);
});
