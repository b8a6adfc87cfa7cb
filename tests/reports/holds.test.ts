/** The first line of holds: what cannot wait, then what is held. */
import { describe, expect, test } from 'vitest';
import { holds } from '../../src/questions/holds.ts';
import { holdsText } from '../../src/reports/holds.ts';
import { plainLook } from '../../src/reports/look.ts';
import { journalOn } from '../support/journal.ts';

function said(on: string, ...lines: readonly string[]): { first: string; all: string } {
  const room = journalOn(on, `${lines.join('\n')}\n`);
  const [first = '', ...more] = holdsText(holds(room), plainLook(room.on)).split('\n\n');
  const flat = (text: string): string => text.replace(/\s+/gu, ' ').trim();
  return { first: flat(first).replace(/^.*? 2026: /u, ''), all: flat(more.join(' ')) };
}

describe('the first line', () => {
  const course = '2026-03-10 C1: treat "salt" 2 g/L, every 24 h, 3 doses';

  test('says that a dose is late, as the list of what is due does', () => {
    expect(said('2026-03-11', course).first).toBe('nothing on hold; 1 treatment running');
    const late = said('2026-03-13', course);
    expect(late.first).toBe('C1: dose 2 of salt late 2 days; nothing on hold; 1 treatment running');
    expect(late.all).toContain('salt, dose 1 of 3, next 11 Mar (late 2 days)');
    expect(said('2026-03-13', course, '2026-03-12 C1: treat "salt"').first).toBe(
      'nothing on hold; 1 treatment running',
    );
  });

  test('calls no dose late that was put off or waits till the keeper is back, as the list of what is due does', () => {
    const off = said('2026-03-13', course, '2026-03-11 C1: put off salt until 2026-03-15');
    expect(off.first).toBe('nothing on hold; 1 treatment running');
    expect(off.all).toContain('salt, dose 1 of 3, next 11 Mar (put off until');
    const away = said('2026-03-13', course, '2026-03-11 room: away until 2026-03-20');
    expect(away.first).toBe('nothing on hold; 1 treatment running');
    expect(away.all).toContain('next 11 Mar (you are away');
    expect(said('2026-03-15', course, '2026-03-11 C1: put off salt until 2026-03-15').first).toContain('late 4 days');
  });

  test('a dose that was given ends what put it off', () => {
    const given = ['2026-03-11 C1: put off salt until 2026-03-20', '2026-03-12 C1: treat "salt"'];
    expect(said('2026-03-15', course, ...given).first).toContain('C1: dose 3 of salt late 2 days');
  });

  test('says it before what is held', () => {
    expect(said('2026-03-13', course, '2026-03-12 C2: hold "velvet"').first).toMatch(
      /^C1: dose 2 of salt late 2 days; 1 tank on hold, clear on 9 Apr/u,
    );
  });

  test('is none where the line gives no days between doses', () => {
    expect(said('2026-03-15', '2026-03-10 C1: treat "salt" 2 g/L, 3 doses').first).toBe(
      'nothing on hold; 1 treatment running',
    );
  });

  test('says which quarantine is over', () => {
    const lines = ['2026-03-01 C2: quarantine 10 days', '2026-03-05 C1: quarantine 28 days'];
    expect(said('2026-03-10', ...lines).first).toBe('nothing on hold; 2 tanks in quarantine');
    expect(said('2026-03-11', ...lines).first).toBe('nothing on hold; 2 tanks in quarantine, over in C2');
  });
});

test('tanks that were reached on one day in one way stand in one row', () => {
  const { all } = said('2026-03-05', '2026-03-02 A1: hold "velvet"');
  expect(all).toMatch(/A2, B1 \S+ \S+ shares the water of Long with A1/u);
  expect(all.match(/shares the water/gu)).toHaveLength(1);
});
