/** The next dose of a course: what it must allow for, whom else it treats, and until when its fish are not clear. */
import { describe, expect, it } from 'vitest';
import { treatmentDue } from '../../../src/questions/due/treatment.ts';
import { rowsOf, type Told } from './rows.ts';

const both = (on: string, lines: string): readonly Told[] => rowsOf(treatmentDue, on, lines);
const dose = (on: string, lines: string): Told => {
  const [row] = both(on, lines).filter(({ id }) => id.includes('-dose-'));
  if (row === undefined) throw new Error('no dose');
  return row;
};
const changed = (lines: string): string => dose('2026-03-03', lines).why.replace(/^.*water changed since: /, '');

const SALT = '2026-03-02 C1: treat "salt", 2 g/L every 2 days, 3 doses\n';

describe('the next dose', () => {
  it('is told with its number, its days and its line, and what it rests on', () => {
    expect(dose('2026-03-03', `${SALT}2026-03-03 C1: water change 10 L\n`)).toMatchObject({
      id: 'c1-dose-salt',
      place: 'C1',
      what: 'dose 2 of salt, by your label',
      due: '2026-03-04',
      weight: 2,
      why: 'dose 1 of 3 was on 2 Mar; water changed since: 10 L on 3 Mar',
      close: 'C1: treat "salt"',
      after: null,
      key: 'salt',
      lines: [1, 2],
    });
    const open = '2026-03-02 C1: treat "salt" every 1-2 days\n';
    expect(dose('2026-03-03', open)).toMatchObject({
      due: '2026-03-03..2026-03-03..2026-03-04',
      why: 'dose 1 was on 2 Mar; water changed since: none',
    });
  });

  it('allows for what was changed since the last one, and not for the change before it', () => {
    const change = 'C1: water change 50 %';
    expect(changed(`2026-03-02 ${change}\n${SALT}`)).toBe('none');
    expect(changed(`2026-03-02 ${change}; treat "salt" every 2 days\n`)).toBe('none');
    expect(changed(`${SALT}2026-03-02 ${change}\n`)).toBe('50 % on 2 Mar');
    expect(changed('2026-03-02 C1: treat "salt" every 2 days; water change 50 %\n')).toBe('50 % on 2 Mar');
    expect(changed(`2026-03-01 ${change}\n${SALT}2026-03-03 ${change}\n`)).toBe('50 % on 3 Mar');
    expect(changed(`${SALT}2026-03-03 C2: water change 50 %\n`)).toBe('none');
    const second = '2026-03-03 C1: dosed 108 g salt\n';
    expect(changed(`${SALT}2026-03-03 ${change}\n${second}`)).toBe('none');
  });

  it('counts the changes of all that water, each with its place', () => {
    const loop = '2026-03-02 A1: treat "salt" every 2 days\n';
    const change = '2026-03-03 A2: water change 20 %\n2026-03-03 Long: water change 100 L\n';
    expect(changed(loop + change)).toBe('20 % in A2 on 3 Mar and 100 L in Long on 3 Mar');
  });

  it('cautions of those that are treated with it, of fumes, and of what would follow where it raises pH', () => {
    const caution = (words: string): string => dose('2026-03-03', `2026-03-02 ${words} every 2 days\n`).caution ?? '';
    const label = 'by the label or your veterinarian, for the water that was changed; treated fish are not for eating';
    expect(caution('C1: treat "salt"')).toBe(label);
    expect(caution('A1: treat "salt"')).toBe(
      `shares water and filter with 2 tanks: valve off, or all are treated; ${label}`,
    );
    expect(caution('C1: treat "Formalin 37"')).toBe(`open a window, gloves, more air: it takes oxygen; ${label}`);
    expect(dose('2026-03-03', '2026-03-02 C1: treat "baking soda" every 2 days\n').after).toContain('TAN');
  });
});

describe('what is treated', () => {
  const clear = (on: string, lines: string): string[] =>
    both(on, lines).map(({ id, due, why, key }) => [id, due, why, key ?? 'not put off'].join('; '));
  it('is clear a fortnight after the last dose, or after the wait of its line, and told on that day still', () => {
    const once = '2026-03-02 C1: treat "salt"\n';
    const row =
      'c1-treatment-salt; 2026-03-16; 14 days after the last dose on 2 Mar; not for sale before, never for eating; not put off';
    expect(clear('2026-03-03', once)).toEqual([row]);
    expect(clear('2026-03-16', once)).toEqual([row]);
    expect(clear('2026-03-17', once)).toEqual([]);
    expect(clear('2026-03-03', '2026-03-02 C1: treat "salt", wait 5 days\n')[0]).toContain('2026-03-07; 5 days after');
  });
  it('waits for the doses that are still to come', () => {
    expect(clear('2026-03-03', SALT)[1]).toBe(
      'c1-treatment-salt; 2026-03-20; 14 days after the last dose; not for sale before, never for eating; not put off',
    );
  });
});

describe('the day on which they are clear', () => {
  const course = '2026-03-02 C1: treat "salt", 2 g/L, 1 dose, wait 10 days\n';
  const ids = (on: string, lines: string): string[] => both(on, lines).map(({ id }) => id);

  it('is told until they were looked at, as the row says', () => {
    const [row] = both('2026-03-12', course);
    expect(row).toMatchObject({ id: 'c1-treatment-salt', close: 'C1: all well' });
    expect(ids('2026-03-12', `${course}2026-03-11 C1: all well\n`)).toEqual(['c1-treatment-salt']);
    expect(ids('2026-03-12', `${course}2026-03-12 C1: all well\n`)).toEqual([]);
    expect(ids('2026-03-12', `${course}2026-03-12 room: all well\n`)).toEqual([]);
  });
});
