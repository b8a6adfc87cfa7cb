/** A quarantine of so many days by its line begins anew with the last fish that come in (common practice, no source). */
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { quarantineDue } from '../../../src/questions/due/quarantine.ts';
import { holds } from '../../../src/questions/holds.ts';
import { journalOn } from '../../support/journal.ts';
import { ROOM } from '../../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;

/** `C2 03-20 to 04-17 by 1 3`: the lines counted from the first of these. */
const kept = (on: string, ...lines: readonly string[]): string[] =>
  holds(journalOn(on, `${lines.join('\n')}\n`)).quarantines.map(({ place, since, until, lines: by }) => {
    const days = [since, until].map((day) => isoDay(day).slice(5)).join(' to ');
    return `${place} ${days} by ${by.map(({ line }) => line - SETUP).join(' ')}`;
  });

describe('a quarantine counted in days', () => {
  const bought = '2026-03-01 C2: bought 6 krib at 4.00 each; quarantine 28 days';

  test('counts from its line while nobody else comes in', () => {
    expect(kept('2026-03-20', bought)).toEqual(['C2 03-01 to 03-29 by 1']);
    expect(kept('2026-03-20', bought, '2026-03-10 C1: bought 4 krib at 4.00 each')).toEqual(['C2 03-01 to 03-29 by 1']);
  });

  test.each([
    ['bought', '2026-03-20 C2: bought 4 krib at 4.00 each'],
    ['moved there', '2026-03-20 C1: moved 4 Ash to C2'],
  ])('counts anew from fish %s later', (_, line) => {
    expect(kept('2026-03-19', bought, line)).toEqual(['C2 03-01 to 03-29 by 1']);
    expect(kept('2026-03-20', bought, line)).toEqual(['C2 03-20 to 04-17 by 1 2']);
    // Nobody ended it: fish that come in after its last day are in quarantine as well.
    expect(kept('2026-04-20', bought, line.replace('03-20', '04-10'))).toEqual(['C2 04-10 to 05-08 by 1 2']);
  });

  test('counts as the last line says that came with the last fish', () => {
    const later = '2026-03-20 C2: bought 4 krib at 4.00 each; quarantine 14 days';
    expect(kept('2026-03-22', bought, later)).toEqual(['C2 03-20 to 04-03 by 2']);
    expect(kept('2026-03-22', bought, later, '2026-03-21 C1: moved 2 Ash to C2')).toEqual(['C2 03-21 to 04-04 by 2 3']);
  });

  test('does not count anew for fish from a tank of the same quarantine or water, nor once it is over', () => {
    const both = '2026-03-01 C1 C2: quarantine 28 days';
    expect(kept('2026-03-25', both, '2026-03-20 C1: moved 4 Ash to C2')).toEqual([
      'C1 03-01 to 03-29 by 1',
      'C2 03-01 to 03-29 by 1',
    ]);
    const over = [bought, '2026-03-29 C2: quarantine over', '2026-04-02 C1: moved 4 Ash to C2'];
    expect(kept('2026-04-03', ...over)).toEqual([]);
  });

  test('tells in its row when the last came in', () => {
    const room = journalOn('2026-04-17', `${bought}\n2026-03-20 C1: moved 4 Ash to C2\n`);
    expect(quarantineDue(room, 7).map(({ why, due }) => [why, due.low && isoDay(due.low)])).toEqual([
      ['the last came in on 20 Mar', '2026-04-17'],
    ]);
  });
});
