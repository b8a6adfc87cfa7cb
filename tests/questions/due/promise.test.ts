/** Fish that were promised and may not leave their water: nobody is told to hand them over. */
import { describe, expect, test } from 'vitest';
import { due } from '../../../src/questions/due.ts';
import { promiseDue } from '../../../src/questions/due/promise.ts';
import { journalOn } from '../../support/journal.ts';

const BROOD = `2026-01-10 A1: spawned
2026-01-20 A1: free-swimming, 60
2026-03-01 A1: Rowan-1 moved 40 to C2
2026-05-01 C2: reserved 6 Rowan-1 until 2026-06-05
`;
const told = (lines: string, on = '2026-06-04') =>
  promiseDue(journalOn(on, BROOD + lines), 7).map(({ what, why, close }) => ({ what, why, close }));

describe('a promise of fish that may not leave', () => {
  test('on hold: who waits is told, and until when', () => {
    expect(told('2026-06-01 C2: hold "velvet"\n')).toEqual([
      {
        what: 'hand over no Rowan-1 yet: tell who waits for 6',
        why: 'on hold: velvet, until 29 Jun; reserved until 5 Jun; after that they are free again',
        close: 'C2: put off promise until 2026-06-29',
      },
    ]);
  });
  test('sick, treated or in quarantine as well', () => {
    const first = (line: string) => told(line)[0]?.why.split(';')[0];
    expect(first('2026-06-01 C2: sick "white spot", catching\n')).toMatch(/^sick: white spot, catching/);
    expect(first('2026-06-01 C2: treat "salt" 2 g/L, every 24 h, 3 doses, wait 14 days\n')).toMatch(/^treated: salt/);
    expect(first('2026-06-01 C2: quarantine 28 days\n')).toMatch(/^in quarantine since 1 Jun/);
  });
  test('is put off by its line, and asked for as before where the water is clear', () => {
    const hold = '2026-06-01 C2: hold "velvet"\n';
    expect(told(`${hold}2026-06-02 C2: hold over\n`)[0]?.what).toBe('hand over 6 Rowan-1, or let them go');
    const rows = (more: string) =>
      due(journalOn('2026-06-04', BROOD + hold + more), { days: 7, minutes: null }).rows.filter(
        ({ kind }) => kind === 'promise',
      );
    expect([rows('').length, rows('2026-06-03 C2: put off promise until 2026-06-29\n')]).toEqual([1, []]);
    expect(told('')[0]?.what).toBe('hand over 6 Rowan-1, or let them go');
    expect(told(hold, '2026-06-06')[0]?.what).toBe('6 Rowan-1: fetched after all?');
  });
});
