/** Open faults: each row ends by its own line and by no other, and none of another fault with it. */
import { describe, expect, it } from 'vitest';
import { faultsDue } from '../../../src/questions/due/faults.ts';
import { rowOf, rowsOf } from './rows.ts';

const ids = (lines: string, on = '2026-02-20'): readonly string[] => rowsOf(faultsDue, on, lines).map(({ id }) => id);

describe('a fault', () => {
  it('is told with its day, its time of day and the line that ends it', () => {
    expect(rowOf(faultsDue, '2026-02-20', '2026-02-10 09:05 C1: fault "valve weeping"\n')).toEqual({
      id: 'c1-fault-valve-weeping',
      place: 'C1',
      what: 'mend: valve weeping',
      due: '2026-02-10',
      weight: 2,
      why: 'open since 10 Feb at 09:05',
      close: 'C1: fixed',
      caution: null,
      after: null,
      key: 'valve weeping',
      pressing: false,
      steps: ['«valve weeping» on 10 Feb at 09:05'],
      lines: [1],
    });
    expect(rowOf(faultsDue, '2026-02-20', '2026-02-10 C1: fault "valve weeping"\n').why).toBe('open since 10 Feb');
  });

  it.each([
    ['A1: leak', 'leak: find it, stop it, dry the floor', 'wet floor'],
    ['Long: overflowed', 'overflowed: stop it, clean the prefilter, see to the media', 'wet floor'],
    [
      'room: power off',
      'power is off: air on batteries, heaters and pumps checked when it is back',
      'never runs indoors',
    ],
    ['C1: heater stuck 31 C', 'heater stuck at 31 C: pull its plug, cool slowly', 'cut its power'],
  ])('that costs lives presses, with its caution: «%s»', (clause, what, caution) => {
    const row = rowOf(faultsDue, '2026-02-20', `2026-02-10 ${clause}\n`);
    expect(row).toMatchObject({ what, weight: 3, pressing: true, why: 'open since 10 Feb' });
    expect(row.caution).toContain(caution);
  });

  it('of a heater tells how many tanks it warms; a leak does not', () => {
    expect(rowOf(faultsDue, '2026-02-20', '2026-02-10 A1: heater stuck\n').why).toBe(
      'open since 10 Feb; 3 tanks share that water',
    );
    expect(rowOf(faultsDue, '2026-02-20', '2026-02-10 A1: leak\n').why).toBe('open since 10 Feb');
  });

  it('that is mended, or of a tank that is retired, is gone', () => {
    expect(ids('2026-02-10 C2: fault "lid cracked"\n2026-02-11 C2: fixed\n')).toEqual([]);
    expect(ids('2026-02-10 C2: fault "lid cracked"\n2026-02-11 C2: retired\n')).toEqual([]);
    expect(ids('2026-02-10 C2: fault "lid cracked"\n', '2026-02-09')).toEqual([]);
  });
});

const SEVERAL = `2026-02-10 room: power off
2026-02-10 room: leak "pipe in the wall"
2026-02-11 A1: fault "valve weeping"
2026-02-11 C1: fault "lid cracked"
2026-02-12 A1: leak
2026-02-12 A1: leak "at the elbow"
2026-02-12 A2: leak "at the elbow"
`;

describe('several faults', () => {
  it('are named by their words: a leak keeps its name when another one is stopped', () => {
    const all = [
      'room-power',
      'room-leak-pipe-in-the-wall',
      'a1-fault-valve-weeping',
      'c1-fault-lid-cracked',
      'a1-leak',
      'a1-leak-at-the-elbow',
      'a2-leak-at-the-elbow',
    ];
    expect(ids(SEVERAL)).toEqual(all);
    expect(ids(`${SEVERAL}2026-02-20 A1: fixed "leak"\n`)).toEqual(all.filter((id) => id !== 'a1-leak'));
    const elbow = rowsOf(faultsDue, '2026-02-20', SEVERAL).find(({ id }) => id === 'a1-leak-at-the-elbow');
    expect(elbow?.what).toBe('leak: find it, stop it, dry the floor (at the elbow)');
  });

  it('are ended one by one, each by the line of its row: a leak mended does not bring the power back', () => {
    const rows = rowsOf(faultsDue, '2026-02-20', SEVERAL);
    for (const { id, close } of rows) {
      const left = ids(`${SEVERAL}2026-02-20 ${close}\n`);
      expect([close, left]).toEqual([close, rows.map((row) => row.id).filter((one) => one !== id)]);
    }
    expect(rows.map(({ close }) => close)).toContain('C1: fixed');
  });
});
