/** The end of a quarantine: who is looked over, and that nobody is let out who is sick or held. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { due } from '../../../src/questions/due.ts';
import type { DueItem } from '../../../src/questions/due/item.ts';
import { quarantineDue } from '../../../src/questions/due/quarantine.ts';
import { sale } from '../../../src/questions/sale.ts';
import { journalOn } from '../../support/journal.ts';

const IN = '2026-03-01 Q1: bought 6 krib at 4.00 each from "a friend"\n2026-03-01 Q1: quarantine 28 days\n';
const only = (on: string, lines: string): DueItem => {
  const [row, ...others] = quarantineDue(journalOn(on, IN + lines), 7);
  if (row === undefined || others.length > 0) throw new Error(`${String(others.length)} rows besides`);
  return row;
};

describe('a quarantine that can end', () => {
  it('asks to look over the fish, on the day on which it is over', () => {
    const row = only('2026-03-20', '');
    expect(row).toMatchObject({ id: 'q1-quarantine', place: 'Q1', close: 'Q1: quarantine over', weight: 1 });
    expect(row.what).toMatch(/^look over .*, then end the quarantine$/);
    expect([row.due.low, row.due.high].map((day) => day && isoDay(day))).toEqual(['2026-03-29', '2026-03-29']);
    expect(row.why).toBe('in since 1 Mar');
    expect(row.caution).toBeUndefined();
  });
  it('looks over every fish where there are several stocks, and tells of a regulated species', () => {
    const two = only('2026-03-20', '2026-03-01 Q1: bought 3 limia at 2.00 each from "a friend"\n');
    expect(two.what).toBe('look over every fish, then end the quarantine');
    expect(only('2026-03-20', '2026-01-03 species krib: regulated\n').caution).toContain('local law');
    const limia = '2026-03-01 Q1: bought 3 limia at 2.00 each from "a friend"\n';
    expect(only('2026-03-20', `2026-01-03 species limia: regulated\n${limia}`).caution).toContain('local law');
  });
});

describe('a quarantine that its fish left', () => {
  const rows = (on: string, lines: string): string[] => quarantineDue(journalOn(on, IN + lines), 7).map(({ id }) => id);
  it('is over with them once its days are, and asks nobody to look at an empty tank', () => {
    expect(rows('2026-04-10', '2026-04-02 Q1: moved all to C2\n')).toEqual([]);
    expect(rows('2026-04-10', '2026-04-02 Q1: moved 5 to C2\n')).toEqual(['q1-quarantine']);
    expect(rows('2026-03-20', '2026-03-10 Q1: moved all to C2\n')).toEqual(['q1-quarantine']);
  });
  it('begins anew with fish that come later', () => {
    const later = '2026-04-02 Q1: moved all to C2\n2026-04-20 Q1: bought 4 krib at 4.00 each from "a friend"\n';
    expect(rows('2026-04-25', later)).toEqual(['q1-quarantine']);
    const [row] = quarantineDue(journalOn('2026-04-25', IN + later), 7);
    expect(row?.due.high && isoDay(row.due.high)).toBe('2026-05-18');
  });
});

describe('the sale of fish whose quarantine no line ended', () => {
  const cautions = (on: string, lines = ''): readonly string[] | undefined =>
    sale(journalOn(on, `2026-01-03 species krib: sale at 30 mm\n${IN}2026-03-01 Q1: size 40 mm\n${lines}`), {
      ahead: 0,
      auction: null,
      projected: false,
    }).lots.find(({ tank }) => tank === 'Q1')?.cautions;
  it('asks to look them over first', () => {
    expect(cautions('2026-03-28')).toEqual([]);
    expect(cautions('2026-03-30')).toEqual([
      'quarantine to 29 Mar, not ended by a line: look over every fish before any go',
    ]);
    expect(cautions('2026-03-30', '2026-03-30 Q1: quarantine over\n')).toEqual([]);
  });
});

describe('where a sickness or a hold is open', () => {
  const trouble = (line: string): DueItem => only('2026-04-10', `${line}\n`);
  it('says to keep them in, and offers no line that lets them out', () => {
    for (const line of [
      '2026-04-08 Q1: sick "white spot"',
      '2026-04-08 Q1: sick "white spot", catching',
      '2026-04-08 Q1: hold "velvet"',
    ]) {
      const row = trouble(line);
      expect(row.what).toBe('quarantine over, but the tank is sick or held: keep them in');
      expect(row.close).toMatch(/^Q1: put off quarantine until 2026-/);
    }
  });
  it('puts it off until they are clear, or for a week where nobody said whether it is catching', () => {
    expect(trouble('2026-04-08 Q1: sick "white spot"').close).toBe('Q1: put off quarantine until 2026-04-17');
    // 28 days without a sign.
    for (const line of ['2026-04-08 Q1: sick "white spot", catching', '2026-04-08 Q1: hold "velvet"'])
      expect(trouble(line).close).toBe('Q1: put off quarantine until 2026-05-06');
  });
  it('puts it off until the last of several is clear, and by a week where all of them are', () => {
    const hold = '2026-04-02 Q1: hold "velvet"\n';
    expect(trouble(`${hold}2026-04-08 Q1: sick "white spot", catching`).close).toBe(
      'Q1: put off quarantine until 2026-05-06',
    );
    expect(trouble(`2026-04-02 Q1: sick "white spot", catching\n2026-04-08 Q1: hold "velvet"`).close).toBe(
      'Q1: put off quarantine until 2026-05-06',
    );
    // Clear on 31 March, and no line has ended it.
    expect(trouble('2026-03-03 Q1: hold "velvet"').close).toBe('Q1: put off quarantine until 2026-04-17');
  });
  it('is gone from the list by that line', () => {
    const sick = '2026-04-08 Q1: sick "white spot"\n';
    const ids = (lines: string): string[] =>
      due(journalOn('2026-04-11', IN + sick + lines), { days: 0, minutes: null }).rows.map(({ id }) => id);
    expect(ids('')).toContain('q1-quarantine');
    expect(ids('2026-04-10 Q1: put off quarantine until 2026-04-17\n')).not.toContain('q1-quarantine');
  });
});
