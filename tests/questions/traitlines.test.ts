/** What rests on a trait of a species points at the line that says it, which may be filed long after that of the name. */
import { describe, expect, it } from 'vitest';
import { awards } from '../../src/questions/awards.ts';
import { readingsDue } from '../../src/questions/due/readings.ts';
import { saleableFrom } from '../../src/questions/saleable.ts';
import { bodyNamed } from '../../src/state/bodies.ts';
import type { Room } from '../../src/state/draft.ts';
import { journalRoom } from '../support/journal.ts';

const TEXT = `2026-01-01 room: units metric; award "club award": 6 young at 60 days from hatched
2026-01-01 tank A1: 100 x 40 x 40 cm; alone
2026-01-01 species krib: cave spawner
2026-01-01 pair Rowan: krib; male; female; in A1
2026-01-02 species krib: adult 9 cm
2026-01-03 species krib: water 24-27 C, pH 6-7
2026-01-04 species krib: sale at 40 mm
2026-01-05 species krib: Pelvicachromis taeniatus
2026-01-06 species krib: price 6.00
2026-02-02 A1: spawned, about 90 eggs
2026-02-05 A1: hatched
2026-02-10 A1: free-swimming, about 70
2026-02-20 A1: test 20 C, pH 8
2026-02-21 A1: Rowan largest 300 mm
`;
const ADULT = 5;
const WATER = 6;
const SALE = 7;
const LATIN = 8;
const room = (more = ''): Room => journalRoom('2026-02-22', TEXT + more);

describe('the line that says it', () => {
  it('is told of a length that cannot be', () => {
    const [problem] = room().problems.filter(({ kind }) => kind === 'impossible-length');
    expect(problem?.also.map(({ line }) => line)).toEqual([ADULT]);
  });
  it('is told of water that they are not kept in, for each of its readings', () => {
    const rows = readingsDue(room()).filter(({ why }) => why.includes('kept at'));
    expect(rows.map(({ why, lines }) => [why.slice(0, 4), lines.map(({ line }) => line)])).toEqual([
      ['20 C', [13, WATER]],
      ['pH 8', [13, WATER]],
    ]);
  });
  it('is told of when they are for sale', () => {
    const brood = bodyNamed(room(), 'Rowan-1');
    if (brood === null) throw new Error('no brood');
    const lines = saleableFrom(room(), brood)?.because.lines.map(({ line }) => line);
    expect([lines?.includes(SALE), lines?.includes(3)]).toEqual([true, false]);
  });
  it('is evidence of what they are', () => {
    const evidence = awards(room()).rows[0]?.evidence.find(({ kind }) => kind === 'species');
    expect([evidence?.says, evidence?.lines.map(({ line }) => line)]).toEqual([
      'Pelvicachromis taeniatus (krib)',
      [LATIN],
    ]);
  });
  it('is the later of two that say the same trait', () => {
    const [problem] = room('2026-02-21 species krib: adult 8 cm\n').problems.filter(
      ({ kind }) => kind === 'impossible-length',
    );
    expect(problem?.also.map(({ line }) => line)).toEqual([15]);
  });
});
