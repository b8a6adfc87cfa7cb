/** A group that was called by the wrong species: the line that says so corrects its young too, and nobody else's. */
import { describe, expect, it } from 'vitest';
import { broodNamed, journalOn } from '../support/journal.ts';

const YOUNG = `2026-01-02 species limia: sale at 20 mm
2026-01-10 A1: Rowan spawned, 50 eggs
2026-01-13 A1: hatched
2026-01-20 A1: free-swimming, 40
2026-02-20 A1: Rowan-1 moved 20 to C2, rest stay
2026-02-21 A2: Sedge spawned brood Sedge-1, about 50 eggs
2026-02-24 A2: hatched
2026-03-03 A2: free-swimming, 30
2026-04-10 A2: moved 20 Sedge-1 to C2, rest stay
`;
const of = (lines: string, name = 'Rowan-1'): string | null => {
  const room = journalOn('2026-06-01', YOUNG + lines);
  return name.includes(' or ')
    ? ([...room.stock.broods.values()].find(({ oneOf }) => oneOf.join(' or ') === name)?.species ?? null)
    : broodNamed(room, name).species;
};

describe('a wrong name corrected', () => {
  it('is the young’s as well, of that group alone', () => {
    expect(of('')).toBe('krib');
    expect(of('2026-05-01 pair Rowan: limia\n')).toBe('limia');
    expect(of('2026-05-01 pair Rowan: limia\n', 'Sedge-1')).toBe('krib');
  });

  it('is that of a mix of them while all of it are of one kind', () => {
    const mix = '2026-04-11 C2: mixed Rowan-1 and Sedge-1\n';
    const both = 'Rowan-1 or Sedge-1';
    expect(of(mix, both)).toBe('krib');
    expect(of(`${mix}2026-05-01 pair Rowan: limia\n`, both)).toBeNull();
    expect(of(`${mix}2026-05-01 pair Rowan: limia\n2026-05-02 trio Sedge: limia\n`, both)).toBe('limia');
  });

  it('is none where the line tells of other fish under that name', () => {
    expect(of('2026-05-01 pair Rowan: limia; male; female; in A1; from "a friend"\n')).toBe('krib');
  });
});
