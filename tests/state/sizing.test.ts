/** Lengths: which cannot be, which are doubted, and which stands where two were told of one moment. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';

// Rowan, a pair of krib in A1: male 80 mm, female 60 mm. Ash, 12 of them in C1. Pebble, limia in B1.
const after = (lines: string): Room => journalOn('2026-05-01', lines);
const kinds = (lines: string): string[] => after(lines).problems.map(({ kind }) => kind);
const told = (lines: string): string[] => after(lines).problems.map(({ says }) => says);
const kept = (lines: string, name = 'Ash'): string[] => {
  const { groups, broods } = after(lines).stock;
  return (
    (groups.get(name) ?? broods.get(name))?.sizes.map(
      ({ sizes, tank, replaced }) =>
        `${sizes.of} ${sizes.values.map(({ low, high }) => `${String(low)}-${String(high)}`).join(' ')} ${tank ?? 'somewhere'}${replaced ? ' replaced' : ''}`,
    ) ?? []
  );
};

describe('a length that cannot be', () => {
  const adult = '2026-01-02 species krib: adult 80-100 mm\n';
  it('is more than half as much again as they grow to: not counted', () => {
    expect(kept(`${adult}2026-03-01 C1: largest 150 mm\n`)).toEqual(['largest 150-150 C1']);
    expect(kept(`${adult}2026-03-01 C1: largest 151 mm\n`)).toEqual([]);
    expect(told(`${adult}2026-03-01 C1: largest 151 mm\n`)).toEqual([
      '151 mm cannot be the length of Ash: krib grow to 80–100 mm',
    ]);
    expect(after(`${adult}2026-03-01 C1: largest 151 mm\n`).problems[0]).toMatchObject({
      kind: 'impossible-length',
      weight: 'stops',
      write: 'the length in mm, or with its unit: Ash largest 15.1 mm',
      also: [{ file: 'fishroom.txt' }],
    });
  });
  it('is more than a metre where nobody said how long they grow', () => {
    expect(kinds('2026-03-01 C1: largest 1001 mm\n')).toEqual(['impossible-length']);
    expect(kinds('2026-03-01 C1: largest 1000 mm\n')).not.toContain('impossible-length');
    expect(told('2026-03-01 C1: largest 1001 mm\n')).toEqual(['1001 mm cannot be the length of Ash: none is so long']);
  });
  it('is none at all', () => {
    expect(told('2026-03-01 C1: size 0 mm\n')).toEqual(['0 mm cannot be the length of Ash: a fish has some length']);
    expect(after('2026-03-01 C1: size 0 mm\n').problems[0]).toMatchObject({
      write: 'the length in mm, or with its unit: Ash size 22 mm',
      also: [],
    });
  });
  it('of one fish of a sample is enough, and the line says which', () => {
    expect(told(`${adult}2026-03-01 C1: sizes 30 32 300 mm\n`)).toEqual([
      '300 mm cannot be the length of Ash: krib grow to 80–100 mm',
    ]);
    expect(after(`${adult}2026-03-01 C1: sizes 30 32 300 mm\n`).problems[0]?.write).toContain('Ash sizes 30 mm');
    expect(kept(`${adult}2026-03-01 C1: sizes 30 32 300 mm\n`)).toEqual([]);
  });
});

describe('a length that is doubted', () => {
  it('is more than twice that of the longest parent of its kind, and counts', () => {
    expect(kinds('2026-03-01 C1: largest 160 mm\n')).toEqual([]);
    expect(kinds('2026-03-01 C1: largest 161 mm\n')).toEqual(['odd-length']);
    expect(kept('2026-03-01 C1: largest 161 mm\n')).toEqual(['largest 161-161 C1']);
    expect(told('2026-03-01 C1: largest 161 mm\n')).toEqual([
      '161 mm for Ash: the longest krib with a length is 80 mm, of Rowan',
    ]);
  });
  it('goes by the longest of several groups of that kind, and by no other kind', () => {
    const birch = '2026-02-01 pair Birch: krib; male 90 mm; female; in C2\n';
    expect(kinds(`${birch}2026-03-01 C1: largest 170 mm\n`)).toEqual([]);
    expect(told(`${birch}2026-03-01 C1: largest 190 mm\n`)[0]).toContain('90 mm, of Birch');
    const same = '2026-02-01 pair Birch: krib; male 80 mm; female; in C2\n';
    expect(told(`${same}2026-03-01 C1: largest 190 mm\n`)[0]).toContain('80 mm, of Rowan');
    expect(kinds('2026-03-01 B1: largest 300 mm\n')).toEqual([]);
  });
  it('is none where the species says how long they grow', () => {
    const adult = '2026-01-02 species krib: adult 150 mm\n';
    expect(kinds(`${adult}2026-03-01 C1: largest 200 mm\n`)).toEqual([]);
  });
});

describe('two lengths of one moment', () => {
  const first = '2026-03-01 C1: largest 30 mm\n';
  it('of one kind: the later stands', () => {
    expect(kept(`${first}2026-03-01 C1: largest 32 mm\n`)).toEqual(['largest 30-30 C1 replaced', 'largest 32-32 C1']);
  });
  it('of two kinds, two days, two times or two tanks both stand', () => {
    expect(kept(`${first}2026-03-01 C1: smallest 20 mm\n`)).toEqual(['largest 30-30 C1', 'smallest 20-20 C1']);
    expect(kept(`${first}2026-03-02 C1: largest 32 mm\n`)).toEqual(['largest 30-30 C1', 'largest 32-32 C1']);
    expect(kept('2026-03-01 08:00 C1: largest 30 mm\n2026-03-01 18:00 C1: largest 32 mm\n')).toEqual([
      'largest 30-30 C1',
      'largest 32-32 C1',
    ]);
    const two = '2026-02-28 C1: moved 6 Ash to C2, rest stay\n';
    expect(kept(`${two}${first}2026-03-01 C2: largest 32 mm\n`)).toEqual(['largest 30-30 C1', 'largest 32-32 C2']);
  });
  it('of no fish is of none', () => {
    expect(kinds('2026-03-01 Q1: largest 32 mm\n')).toEqual(['no-such-fish']);
  });
});
