import { describe, expect, it } from 'vitest';
import { addDays, dayFromIso } from '../../src/core/day.ts';
import type { Day } from '../../src/core/day.ts';
import { between, exactly } from '../../src/core/interval.ts';
import { measure } from '../../src/core/quantity.ts';
import type { EventBase, Heads } from '../../src/journal/event.ts';
import { CANONICAL } from '../../src/language/print/words.ts';
import { printClause, printEntry } from '../../src/language/print.ts';

const DAY = day('2026-02-14');

function day(iso: string): Day {
  const found = dayFromIso(iso);
  if (found === null) throw new Error(iso);
  return found;
}

function base(from = 0): EventBase {
  const place = { file: 'fishroom.txt', line: 1, from, to: from + 5 };
  return { seq: 0, day: DAY, minute: null, subject: { kind: 'tank', tank: 'A1' }, place, remark: null, when: null };
}

function heads(total: Heads['total'], as: Heads['as']): Heads {
  return { total, males: null, females: null, young: null, as };
}

const implied = { kind: 'implied' } as const;

describe('a line printed from its events', () => {
  it('joins the clauses of a line under one heading', () => {
    const line = printEntry([
      {
        ...base(15),
        kind: 'dispute sign',
        fish: implied,
        sign: 'chasing',
        doer: { sex: 'male', name: null },
        sufferer: { sex: 'female', name: null },
      },
      { ...base(40), kind: 'measure begun', measure: 'lights off', until: null, lasts: null, over: false, to: null },
    ]);
    expect(line).toBe('2026-02-14 A1: chasing, male on female; lights off');
  });

  it('writes a clause of several subjects once', () => {
    const other = { ...base(), subject: { kind: 'tank', tank: 'A2' } } as const;
    expect(
      printEntry([
        { ...base(), kind: 'all well' },
        { ...other, kind: 'all well' },
      ]),
    ).toBe('2026-02-14 A1 A2: all well');
  });

  it('keeps the time of day', () => {
    expect(printEntry([{ ...base(), minute: 460, kind: 'overflowed' }])).toBe('2026-02-14 07:40 A1: overflowed');
  });
});

describe('a guess stays a guess', () => {
  it.each([
    [heads(exactly(43), 'counted'), 'counted 43'],
    [heads(between(30, 50, 40), 'about'), 'counted about 40'],
    [heads(between(30, 50), 'guess'), 'counted 30-50'],
    [heads(between(40, Infinity, null), 'guess'), 'counted 40+'],
    [heads(between(50, Infinity, null), 'guess'), 'counted loads'],
    [heads(between(1, Infinity, null), 'guess'), 'counted some'],
    [heads(between(0, Infinity, null), 'guess'), 'counted ?'],
    [heads(between(3, 6), 'guess'), 'counted a few'],
  ])('%#', (count, text) => {
    expect(printClause({ ...base(), kind: 'counted', fish: implied, heads: count })).toBe(text);
  });

  it('says when it happened as seen from the line', () => {
    const when = { low: addDays(DAY, -4), likely: null, high: addDays(DAY, -2) };
    const eggs = heads(between(60, 100, 80), 'about');
    expect(
      printClause({
        ...base(),
        kind: 'spawned',
        fish: implied,
        as: 'laid',
        brood: 'Rowan-3',
        eggs,
        when,
        remark: 'left',
      }),
    ).toBe('spawned brood Rowan-3 2-4 days ago, about 80 eggs "left"');
  });
});

describe('units', () => {
  it('turns back into the keeper’s units without the noise of fractions', () => {
    const event = { ...base(), kind: 'topped up', litres: measure('L', 5 * 3.785411784) } as const;
    expect(printClause(event, { ...CANONICAL, units: 'US' })).toBe('topped up 5 gal');
  });
});
