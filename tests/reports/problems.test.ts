import stringWidth from 'string-width';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Problem } from '../../src/core/problem.ts';
import { plainLook } from '../../src/reports/look.ts';
import type { Look } from '../../src/reports/look.ts';
import { excerpt, problemReport, problemsReport } from '../../src/reports/problems.ts';
import { verdict } from '../../src/reports/check.ts';
import { toDay } from '../../src/core/day.ts';
import { loadWidths } from '../../src/reports/width.ts';

beforeAll(loadWidths);

const LOOK = plainLook(toDay(20_498));
const LINE = '2026-02-14 A1: chasign, male on female; lights off';

const problem: Problem = {
  kind: 'unknown-clause',
  weight: 'stops',
  says: 'no clause begins with «chasign»',
  write: '2026-02-14 A1: chasing, male on female; lights off',
  at: { file: 'fishroom.txt', line: 12, from: 15, to: 22 },
  also: [],
};

function lines(text: Readonly<Record<number, string>>): (file: string, line: number) => string | null {
  return (_file, line) => text[line] ?? null;
}

describe('one problem', () => {
  it('says where, shows the line with the wrong words marked, what is wrong, what to write', () => {
    expect(problemReport(problem, lines({ 12: LINE }), LOOK)).toBe(
      [
        'fishroom.txt, line 12, left out',
        '   2026-02-14 A1: «chasign», male on female; lights off',
        '   no clause begins with «chasign»',
        '   write: 2026-02-14 A1: chasing, male on female; lights off',
        '',
      ].join('\n'),
    );
  });

  it('shows the lines that belong to it', () => {
    const also = [{ file: '2025.txt', line: 3, from: 0, to: 10 }];
    const text = problemReport(
      { ...problem, weight: 'doubt', also },
      lines({ 12: LINE, 3: '2025-12-01 A1: counted 4' }),
      LOOK,
    );
    expect(text).toContain('fishroom.txt, line 12, look again\n');
    expect(text).toContain('   see 2025.txt, line 3:\n   «2025-12-01» A1: counted 4\n');
  });

  it('marks by the paint alone where the paint can be seen', () => {
    const paint = { ...LOOK.paint, wrong: (text: string) => `<${text}>` };
    const look: Look = { ...LOOK, paint };
    expect(excerpt(LINE, problem.at, look)).toBe('   2026-02-14 A1: <chasign>, male on female; lights off');
  });

  it('never lets the line act on the terminal', () => {
    const line = 'A1: note \u001b[2J \u202eevil\tend';
    const text = excerpt(line, { ...problem.at, from: 4, to: 8 }, LOOK);
    expect(text).toBe('   A1: «note» ?[2J ?evil end');
  });

  it('keeps to the width around the wrong words of a very long line', () => {
    const long = `2026-02-14 A1: ${'note '.repeat(40)}chasign ${'更多'.repeat(60)}`;
    const at = { ...problem.at, from: long.indexOf('chasign'), to: long.indexOf('chasign') + 7 };
    const text = excerpt(long, at, LOOK);
    expect(text).toContain('«chasign»');
    expect(stringWidth(text)).toBeLessThanOrEqual(80);
    expect(text.startsWith('   …')).toBe(true);
    expect(text.endsWith('…')).toBe(true);
  });

  it('marks nothing where the place lies beyond the line', () => {
    expect(excerpt('short', { ...problem.at, from: 90, to: 95 }, LOOK)).toBe('   short«»');
  });
});

describe('several problems', () => {
  const other: Problem = { ...problem, at: { ...problem.at, line: 3 } };
  const doubt: Problem = { ...problem, weight: 'doubt', at: { ...problem.at, line: 5 } };

  it('stand in the order of their lines', () => {
    const text = problemsReport([problem, other], lines({}), LOOK);
    expect(text.indexOf('line 3')).toBeLessThan(text.indexOf('line 12'));
  });

  it('have a verdict', () => {
    expect(verdict({ problems: [], contradictions: 0 })).toBe('every line is read, and nothing contradicts');
    expect(verdict({ problems: [doubt, doubt], contradictions: 1 })).toBe('1 contradiction and 1 to look at again');
    expect(verdict({ problems: [problem, problem, doubt], contradictions: 0 })).toBe(
      '1 line left out and 1 to look at again',
    );
  });
});
