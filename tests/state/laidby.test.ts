/** When a brood can have been laid: by what its line says, and by looks that found no eggs; and what a suspicion is called. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import type { Brood } from '../../src/state/stock.ts';
import type { DeepReadonly } from '../../src/core/readonly.ts';
import { journalOn } from '../support/journal.ts';

const broods = (...lines: readonly string[]): DeepReadonly<Brood>[] => [
  ...journalOn('2026-04-30', `${lines.join('\n')}\n`).stock.broods.values(),
];
/** `02-06 02-07 02-08` of the last of them: laid at the earliest, most likely, at the latest. */
const laid = (...lines: readonly string[]): string => {
  const brood = broods(...lines).at(-1);
  if (brood === undefined) throw new Error('no brood');
  const { low, likely, high } = brood.laid;
  return [low, likely, high].map((day) => (day === null ? 'open' : isoDay(day).slice(5))).join(' ');
};

describe('eggs of a female', () => {
  const seen = '2026-02-05 A2: Lark eggs seen';
  it('were laid after the last look that found none of hers, or none at all', () => {
    expect(laid('2026-02-04 A2: Lark no eggs', seen)).toBe('02-04 02-04 02-05');
    expect(laid('2026-02-04 A2: no eggs', seen)).toBe('02-04 02-04 02-05');
  });
  it('may be older than a look at another', () => {
    expect(laid('2026-02-04 A2: Fern no eggs', seen)).toBe(laid(seen));
  });
  it('that is not named may be older than a look at one of them', () => {
    const either = '2026-02-05 A2: eggs seen';
    expect(laid('2026-02-04 A2: Fern no eggs', either)).toBe(laid(either));
    expect(laid('2026-02-04 A2: no eggs', either)).toBe('02-04 02-04 02-05');
    // Fern died: only Lark can have laid them.
    expect(laid('2026-02-03 A2: Fern died', '2026-02-04 A2: Lark no eggs', either)).toBe('02-04 02-04 02-05');
  });
});

describe('a spawn of some days ago', () => {
  it('was laid between those days, most likely in the middle', () => {
    expect(laid('2026-02-10 A1: spawned 2-4 days ago')).toBe('02-06 02-07 02-08');
    expect(laid('2026-02-10 A1: maybe spawned 2-4 days ago')).toBe('02-06 02-07 02-08');
  });
  it('and after the last look that found none', () => {
    expect(laid('2026-02-07 A1: no eggs', '2026-02-10 A1: spawned 2-5 days ago')).toBe('02-07 02-07 02-08');
    expect(laid('2026-02-06 A1: no eggs', '2026-02-10 A1: spawned by 2026-02-09')).toBe('02-06 02-08 02-09');
  });
  it('told only by its last day, within the week before', () => {
    expect(laid('2026-02-10 A1: spawned by 2026-02-09')).toBe('02-02 02-06 02-09');
  });
});

describe('a suspicion', () => {
  it('is of that day or the one before, unless a look found none in between', () => {
    expect(laid('2026-02-10 A1: maybe spawned')).toBe('02-09 02-10 02-10');
    expect(laid('2026-02-08 A1: no eggs', '2026-02-10 A1: maybe spawned')).toBe('02-09 02-10 02-10');
    expect(laid('2026-02-10 A1: no eggs', '2026-02-10 A1: maybe spawned')).toBe('02-10 02-10 02-10');
  });
  it('that a line named keeps its name when eggs are seen; another gets the next number', () => {
    const named = broods('2026-02-10 A1: maybe spawned brood Rowan-4', '2026-02-11 A1: eggs seen');
    expect(named.map(({ name, suspected }) => [name, suspected])).toEqual([['Rowan-4', false]]);
    const plain = broods('2026-02-10 A1: maybe spawned', '2026-02-11 A1: eggs seen');
    expect(plain.map(({ name, suspected }) => [name, suspected])).toEqual([['Rowan-1', false]]);
  });
  it('of two on one day has a name of its own', () => {
    const two = broods('2026-02-10 A2: Fern maybe spawned', '2026-02-10 A2: Lark maybe spawned');
    expect(new Set(two.map(({ name }) => name)).size).toBe(two.length);
  });
});

it('a birth is of a day between looks, not cast back', () => {
  expect(broods('2026-02-10 B1: born 18 brood P1').map(({ laidKnown }) => laidKnown)).toEqual(['bounded']);
  expect(broods('2026-02-10 A1: wrigglers').map(({ laidKnown }) => laidKnown)).toEqual(['cast back']);
  expect(broods('2026-02-10 A1: spawned').map(({ laidKnown }) => laidKnown)).toEqual(['seen']);
});
