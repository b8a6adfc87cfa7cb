/** "All", "the rest" and "half" of young of which none are left say nothing: the line means others, and is asked back. */
import { describe, expect, it } from 'vitest';
import { journalOn } from '../support/journal.ts';

const YOUNG = `2026-02-01 A1: spawned brood Rowan-1
2026-02-03 A1: eggs gone
2026-02-20 A1: spawned brood Rowan-2
2026-03-03 A1: free-swimming, 40
`;
const told = (line: string): { says: string; write: string }[] =>
  journalOn('2026-04-10', `${YOUNG}2026-04-01 A1: ${line}\n`)
    .problems.filter(({ weight }) => weight === 'stops')
    .map(({ says, write }) => ({ says, write }));

describe('young of which none are left', () => {
  it.each(['moved all Rowan-1 to C2', 'Rowan-1 moved to C2', 'kept back all Rowan-1', 'moved half Rowan-1 to C2'])(
    'are not «%s», and the young that are there are named',
    (line) => {
      expect(told(line)).toEqual([
        {
          says: 'Rowan-1 is not in A1: none of them are left',
          write: 'the name of the fish that are there: Rowan-2',
        },
      ]);
    },
  );
  it('come back with a number that somebody saw', () => {
    expect(told('moved 12 Rowan-1 to C2')).toEqual([]);
    expect(told('Rowan-1 counted 12')).toEqual([]);
  });
  it('are none of those that live in another tank: a few may have been left behind', () => {
    expect(told('moved all Rowan-2 to C2')).toEqual([]);
    expect(told('moved all Rowan-2 to C2; moved all Rowan-2 to C2')).toEqual([]);
  });
});
