import { describe, expect, it } from 'vitest';
import type { Problem } from '../../src/core/problem.ts';
import { lineToWrite } from '../../src/reports/mended.ts';

const LINE = '2026-02-01 07:40 A1: all well; chasing, male on female';
const problem: Problem = {
  kind: 'which-fish',
  weight: 'stops',
  says: 'A1 holds Alder and Rowan',
  write: 'A1: Alder chasing …',
  at: { file: 'fishroom.txt', line: 9, from: 31, to: 54 },
  also: [],
};

describe('the line to write instead', () => {
  it('has the missing name before its clause', () => {
    expect(lineToWrite(problem, LINE)).toBe('2026-02-01 07:40 A1: all well; Alder chasing, male on female');
  });

  it('has the date of the line where the heading is the same', () => {
    const write = 'A1: bought 6 krib';
    expect(lineToWrite({ ...problem, kind: 'no-count', write }, LINE)).toBe('2026-02-01 A1: bought 6 krib');
  });

  it('has the words put in that are missing, or in place of one, whatever its form', () => {
    const missing = { ...problem, mend: { words: 'some', instead: null } };
    expect(lineToWrite(missing, LINE)).toBe('2026-02-01 07:40 A1: all well; some chasing, male on female');
    const line = '2026-02-01 A1: 2 guppies dead; guppy food low';
    const at = { ...problem.at, from: 15, to: 29 };
    const which = { ...problem, at, mend: { words: 'Elm', instead: 'guppy' } };
    expect(lineToWrite(which, line)).toBe('2026-02-01 A1: 2 Elm dead; guppy food low');
    const other = { ...which, mend: { words: 'Elm', instead: 'krib' } };
    expect(lineToWrite(other, line)).toBe('2026-02-01 A1: Alder 2 guppies dead; guppy food low');
  });

  it('stays as it is where it is advice, another place, whole already, or unfinished', () => {
    for (const write of ['the right tank', 'C1: all well', '2026-02-02 A1: all well', 'A1: moved … to C1']) {
      expect(lineToWrite({ ...problem, kind: 'not-there', write }, LINE)).toBe(write);
    }
    expect(lineToWrite(problem, null)).toBe(problem.write);
    expect(lineToWrite(problem, 'also read "2025.txt"')).toBe(problem.write);
  });
});
