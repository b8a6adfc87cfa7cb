/** Whatever is written about water, rigs and faults, in whatever order: the fold stands, and what it says of the water holds together. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { isoDay, toDay } from '../../src/core/day.ts';
import { measure } from '../../src/core/quantity.ts';
import type { MeasureKind } from '../../src/journal/event.ts';
import type { Subject } from '../../src/journal/subject.ts';
import { due } from '../../src/questions/due.ts';
import { loops } from '../../src/questions/loops.ts';
import { water } from '../../src/questions/water.ts';
import { loopOf, sharers, tanksOn } from '../../src/state/tanks.ts';
import { day, loop, room, roomOn, tank, type Line } from '../support/events.ts';
import { bareTank, SET_UP, tanksOfLoop } from '../support/waters.ts';

const FROM = day('2026-02-01');
const LAST = 40;
const KINDS: readonly MeasureKind[] = ['off the loop', 'air filter', 'lights off', 'pump off', 'heater off', 'divider'];

const dates = fc.integer({ min: 0, max: LAST }).map((after) => isoDay(toDay(FROM + after)));
const places: fc.Arbitrary<Subject> = fc.constantFrom(
  tank('A1'),
  tank('A2'),
  tank('C1'),
  tank('nowhere'),
  loop('Long'),
  loop('Elsewhere'),
  room,
  tanksOfLoop('Long', ['A1']),
);
const kinds = fc.constantFrom(...KINDS);
const lasting = fc.option(fc.integer({ min: 1, max: 2000 }).map((minutes) => measure('minutes', minutes)));
const amounts = fc.oneof(
  fc.double({ min: 0, max: 1.5, noNaN: true }).map((share) => measure('share', share)),
  fc.double({ min: 0, max: 500, noNaN: true }).map((litres) => measure('L', litres)),
);
const begun = fc.record({
  measure: kinds,
  until: fc.option(fc.integer({ min: 0, max: LAST }).map((after) => toDay(FROM + after))),
  lasts: lasting,
  over: fc.boolean(),
  to: fc.constant(null),
  minute: fc.option(fc.integer({ min: 0, max: 1439 })),
});
const levels = fc.record({
  level: fc.integer({ min: -5, max: 200 }).map((mm) => measure('mm', mm)),
  from: fc.constantFrom('bottom' as const, 'lip' as const),
});
const cleans = fc.record({
  layers: fc.oneof(fc.integer({ min: 0, max: 8 }), fc.constant('all' as const)),
  of: fc.option(fc.integer({ min: 1, max: 8 })),
});
const plain = fc.constantFrom('everything undone', 'power on', 'media cleaned', 'all well');

const line: fc.Arbitrary<Line> = fc.oneof(
  fc.tuple(dates, places, begun).map(([on, about, fact]): Line => [on, about, { kind: 'measure begun', ...fact }]),
  fc
    .tuple(dates, places, kinds)
    .map(([on, about, measured]): Line => [on, about, { kind: 'measure undone', measure: measured }]),
  fc
    .tuple(dates, places, kinds)
    .map(([on, about, measured]): Line => [on, about, { kind: 'measure stays', measure: measured }]),
  fc.tuple(dates, places).map(([on, about]): Line => [on, about, { kind: 'fault', text: 'valve weeping' }]),
  fc.tuple(dates, places).map(([on, about]): Line => [on, about, { kind: 'fixed', text: null }]),
  fc.tuple(dates, places, lasting).map(([on, about, lasts]): Line => [on, about, { kind: 'power off', lasts }]),
  fc.tuple(dates, places, levels).map(([on, about, fact]): Line => [on, about, { kind: 'level', ...fact }]),
  fc.tuple(dates, places, cleans).map(([on, about, fact]): Line => [on, about, { kind: 'layers cleaned', ...fact }]),
  fc.tuple(dates, places, amounts).map(([on, about, amount]): Line => [on, about, { kind: 'water changed', amount }]),
  fc.tuple(dates, places, plain).map(([on, about, fact]): Line => plainLine(on, about, fact)),
);
const lines = fc.array(line, { maxLength: 30 });

function plainLine(
  on: string,
  about: Subject,
  kind: 'everything undone' | 'power on' | 'media cleaned' | 'all well',
): Line {
  switch (kind) {
    case 'everything undone':
      return [on, about, { kind }];
    case 'power on':
      return [on, about, { kind }];
    case 'media cleaned':
      return [on, about, { kind }];
    case 'all well':
      return [on, about, { kind }];
  }
}

it('never throws, and every answer can be given on every day', () => {
  fc.assert(
    fc.property(lines, fc.integer({ min: -5, max: LAST + 30 }), (written, after) => {
      const seen = roomOn(isoDay(toDay(FROM + after)), [...SET_UP, ...written]);
      const rows = due(seen, { days: 7, minutes: null }).rows;
      expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length);
      expect(loops(seen)).toHaveLength(1);
      expect(water(seen, { place: null, target: null })?.length).toBeGreaterThan(0);
    }),
    { numRuns: 150 },
  );
});

it('tanks that share a loop agree about it, and one that is off it shares with none', () => {
  fc.assert(
    fc.property(lines, fc.integer({ min: 0, max: LAST }), (written, after) => {
      const seen = roomOn('2026-03-20', [...SET_UP, ...written]);
      const on = toDay(FROM + after);
      const long = tanksOn(seen, 'Long', on);
      for (const name of ['A1', 'A2', 'B1', 'C1']) {
        const shared = loopOf(seen, name, on) === 'Long';
        expect(long.includes(name)).toBe(shared);
        expect(sharers(seen, name, on)).toEqual(shared ? long : [name]);
      }
    }),
    { numRuns: 150 },
  );
});

it('later lines change nothing of an earlier day', () => {
  fc.assert(
    fc.property(lines, fc.integer({ min: 0, max: LAST }), (written, after) => {
      const on = isoDay(toDay(FROM + after));
      const known = written.filter(([date]) => date <= on);
      const told = roomOn(on, [...SET_UP, ...written]);
      const alone = roomOn(on, [...SET_UP, ...known]);
      const shown = (seen: typeof told): unknown =>
        due(seen, { days: 7, minutes: null }).rows.map(({ id, due: when }) => [id, when]);
      expect(shown(told)).toEqual(shown(alone));
    }),
    { numRuns: 100 },
  );
});

it('a tank set up with a tray in a circle is still answered', () => {
  const one: Line = ['2026-01-05', tank('T1'), { ...bareTank('T1'), inTank: 'T2' }];
  const two: Line = ['2026-01-05', tank('T2'), { ...bareTank('T2'), inTank: 'T1' }];
  expect(sharers(roomOn('2026-02-01', [...SET_UP, one, two]), 'T1')).toContain('T1');
});
