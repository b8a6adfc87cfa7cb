/** A sign that is said of a pair, told where only young are: what it is called there, with a line that is read. */
import { describe, expect, it } from 'vitest';
import { lineToWrite } from '../../src/reports/mended.ts';
import { journalOn } from '../support/journal.ts';

const YOUNG = `2026-02-01 A1: spawned brood Rowan-1
2026-02-10 A1: free-swimming, 40
2026-02-20 A1: moved 20 Rowan-1 to C2
`;

function told(line: string): readonly string[] {
  const written = `2026-03-01 ${line}`;
  const { problems } = journalOn('2026-03-02', `${YOUNG}${written}\n`);
  return problems.flatMap((problem) => [problem.says, lineToWrite(problem, written)]);
}

describe('of young', () => {
  it.each([
    ['C2: gasping', 'C2: sick "gasping"'],
    ['C2: Rowan-1 gasping', 'C2: Rowan-1 sick "gasping"'],
    ['C2: Rowan-1 died 3; gasping', 'C2: Rowan-1 died 3; sick "gasping"'],
    ['C2: torn fin', 'C2: sick "torn fin"'],
  ])('%s is asked back as a sickness', (line, write) => {
    const [says, offer] = told(line);
    expect(says).toContain('Rowan-1 are young');
    expect(says?.includes('test the water and give air first')).toBe(line.includes('gasping'));
    expect(offer).toBe(`2026-03-01 ${write}`);
    expect(told(write)).toEqual([]);
  });

  it('a quarrel is none, and where a pair lives the sign is of the pair', () => {
    expect(told('C2: chasing')[0]).toBe('C2 holds no fish that this can be about');
    expect(told('A1: gasping')).toEqual([]);
    // A trio with young is no pair, and what is said of a pair is not said of the young.
    const [says] = journalOn('2026-03-02', '2026-02-25 A2: Fern spawned\n2026-03-01 A2: pair hiding\n').problems;
    expect(says?.says).toBe('A2 holds no fish that this can be about');
  });
});
