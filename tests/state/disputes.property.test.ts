import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, isoDay } from '../../src/core/day.ts';
import type { Sign } from '../../src/journal/event.ts';
import { pairs } from '../../src/questions/pairs.ts';
import type { Line } from '../support/events.ts';
import { day, roomOn } from '../support/events.ts';
import { died, groupSet, movedTo, rigged, said, sign, spawn, tankSet } from '../support/pairs.ts';

const SET = '2026-01-04';
const SIGNS: readonly Sign[] = [
  'chasing',
  'hiding',
  'pinned',
  'torn fin',
  'not eating',
  'scales missing',
  'wounded',
  'gasping',
];

/** Any line about a pair, on any of forty days. */
const anyLine: fc.Arbitrary<Line> = fc
  .tuple(fc.nat({ max: 39 }), fc.nat({ max: 11 }), fc.constantFrom(...SIGNS))
  .map(([offset, what, bad]): Line => {
    const on = isoDay(addDays(day('2026-01-10'), offset));
    switch (what) {
      case 0:
        return said(on, 'A1', 'made up');
      case 1:
        return said(on, 'A1', 'calmer');
      case 2:
        return movedTo(on, 'A1', 'male', 'B2');
      case 3:
        return said(on, 'B2', 'member back', 'male');
      case 4:
        return spawn(on, 'A1', `Rowan-${String(offset + 1)}`);
      case 5:
        return rigged(on, 'A1', 'divider');
      case 6:
        return died(on, 'A1', 'female');
      default:
        return sign(on, 'A1', bad);
    }
  });

const SET_UP = [tankSet(SET, 'A1'), tankSet(SET, 'B2'), groupSet(SET, 'Rowan', 'A1')];

test('whatever is written: at most one dispute is open, the last; none ends before it began; none overlap', () => {
  fc.assert(
    fc.property(fc.array(anyLine, { maxLength: 40 }), (lines) => {
      const room = roomOn('2026-03-01', [...SET_UP, ...lines]);
      const disputes = room.stock.groups.get('Rowan')?.disputes ?? [];
      expect(disputes.slice(0, -1).every((one) => one.ended !== null)).toBe(true);
      for (const [index, one] of disputes.entries()) {
        expect(one.signs.length).toBeGreaterThan(0);
        expect(one.signs.every((seen) => seen.day >= one.from)).toBe(true);
        if (one.ended) expect(one.ended.day).toBeGreaterThanOrEqual(one.from);
        const before = disputes[index - 1];
        if (before?.ended) expect(one.from).toBeGreaterThanOrEqual(before.ended.day);
      }
    }),
  );
});

test('silence changes no dispute: a later day only lengthens what is open', () => {
  fc.assert(
    fc.property(fc.array(anyLine, { maxLength: 25 }), fc.nat({ max: 200 }), (lines, more) => {
      const at = (iso: string): unknown =>
        pairs(roomOn(iso, [...SET_UP, ...lines]), 'Rowan').pairs[0]?.disputes.map((one) => [
          one.from,
          one.to,
          one.worst,
        ]);
      expect(at(isoDay(addDays(day('2026-03-01'), more)))).toEqual(at('2026-03-01'));
    }),
  );
});

test('no pair is told to be parted on one ordinary look, and no wound is waited on', () => {
  fc.assert(
    fc.property(fc.constantFrom(...SIGNS), (bad) => {
      const room = roomOn('2026-02-14', [...SET_UP, sign('2026-02-14', 'A1', bad)]);
      const step = pairs(room, 'Rowan').pairs[0]?.dispute?.advice.step;
      const parts = bad === 'wounded' || bad === 'gasping' || bad === 'scales missing';
      expect(step === 'separate').toBe(parts);
    }),
  );
});
