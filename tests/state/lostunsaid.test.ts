/** Losses of which the line does not say how many: nobody dies by a reading that was only likely. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';

const SETUP = `2026-03-01 tank C1: 54 L; alone
2026-03-01 tank C2: 54 L; alone
2026-03-01 species krib: cave spawner
2026-03-01 species guppy: livebearer
2026-03-01 group Elm: krib; 12; in C1
2026-03-01 pair Oak: krib; in C2
2026-03-02 C2: spawned brood Oak-1
2026-03-05 C2: wrigglers
2026-03-10 C2: free-swimming, about 60
`;
const room = (lines: string): Room => journalOn('2026-06-01', SETUP + lines);
const says = (lines: string): (readonly [string, string])[] =>
  room(lines).problems.map(({ kind, says: said }) => [kind, said] as const);
const left = (lines: string, name: string): number | undefined =>
  (room(lines).stock.groups.get(name) ?? room(lines).stock.broods.get(name))?.total.high;

describe('a loss of fish by their name, without a number', () => {
  it.each([
    ['Elm: died', 'Elm', 12],
    ['C1: Elm dead', 'Elm', 12],
    ['C1: Elm jumped', 'Elm', 12],
    ['Elm: eaten', 'Elm', 12],
    ['Oak: died', 'Oak', 2],
    ['C2: Oak missing', 'Oak', 2],
    ['Oak-1: died', 'Oak-1', 120],
    ['C2: culled Oak-1', 'Oak-1', 120],
  ])('is asked back, and costs none of several: %s', (line, name, high) => {
    expect(says(`2026-03-20 ${line}\n`).map(([kind]) => kind)).toEqual(['something-missing']);
    expect(left(`2026-03-20 ${line}\n`, name)).toBe(high);
  });
  it('is asked with the lines that would be read', () => {
    expect(says('2026-03-20 Elm: died\n')[0]?.[1]).toBe(
      'how many? This may be one of them (`1 Elm died`) or all (`all Elm died`): write which',
    );
    expect(says('2026-03-20 Oak: died\n')[0]?.[1]).toContain('(`Oak male died`, `Oak female died`)');
    expect(left('2026-03-20 Elm: 1 Elm died\n', 'Elm')).toBe(11);
    expect(left('2026-03-20 Elm: all Elm died\n', 'Elm')).toBe(0);
    expect(left('2026-03-20 C2: Oak male died\n', 'Oak')).toBe(1);
  });
  it('means the fish where it surely is one', () => {
    expect(left('2026-03-20 Elm: sold 11\n2026-03-21 Elm: died\n', 'Elm')).toBe(0);
    expect(left('2026-03-20 C2: moved the male to C1\n2026-03-21 C2: Oak died\n', 'Oak')).toBe(1);
    expect(room('2026-03-20 C2: moved the male to C1\n2026-03-21 C2: Oak died\n').problems).toEqual([]);
  });
  it('means both where both are told, and a brood that was eaten is over', () => {
    for (const line of ['C2: both died', 'C2: the pair died', 'Oak: both fish died'])
      expect(left(`2026-03-20 ${line}\n`, 'Oak')).toBe(0);
    expect(left('2026-03-20 Oak-1: eaten\n', 'Oak-1')).toBe(0);
  });
});

describe('a number of young', () => {
  it('is never taken out of their parents', () => {
    const early = SETUP.split('\n').slice(0, 7).join('\n');
    const found = journalOn('2026-06-01', `${early}\n2026-03-03 C2: 2 fry dead\n`);
    expect(found.problems.map(({ kind, mend }) => [kind, mend?.words])).toEqual([['no-such-fish', 'hatched;']]);
    expect(found.stock.groups.get('Oak')?.total.high).toBe(2);
    const none = journalOn(
      '2026-06-01',
      `${early.split('\n').slice(0, 6).join('\n')}\n2026-03-03 C2: counted 12 fry\n`,
    );
    expect(none.problems.map(({ kind, mend }) => [kind, mend?.words])).toEqual([['no-such-fish', 'fry seen;']]);
    expect(none.stock.groups.get('Oak')?.total).toEqual({ low: 2, likely: 2, high: 2 });
  });
  it('under the name of their parents is of them, sold only once they swim', () => {
    const found = room('2026-03-20 Oak: 3 fry dead\n2026-03-21 Oak: sold 4 fry\n2026-03-22 C2: Oak 2 fry dead\n');
    expect(found.problems).toEqual([]);
    expect(found.stock.broods.get('Oak-1')?.gone.map(({ count }) => count.high)).toEqual([3, 4, 2]);
    const soon = journalOn('2026-06-01', `${SETUP.split('\n').slice(0, 8).join('\n')}\n2026-03-06 Oak: sold 4 fry\n`);
    expect(soon.problems.map(({ says: said, mend }) => [said, mend?.words])).toEqual([
      ['Oak-1 are wrigglers on record: were they `free-swimming`?', 'free-swimming;'],
    ]);
  });
});

describe('a number of a species of which a pair and young are there', () => {
  it.each(['2 krib dead', 'sold 2 kribs', 'moved 2 krib to C1'])('is asked back, the young offered: %s', (words) => {
    const [problem] = room(`2026-03-20 C2: ${words}\n`).problems;
    expect(problem?.kind).toBe('which-fish');
    expect(problem?.says).toContain('Oak and Oak-1: this may be about either; write which for «krib»');
    expect(problem?.mend).toEqual({ words: 'Oak-1', instead: 'krib' });
  });
});

describe('the first move of a group that no line put in a tank', () => {
  const NEW = '2026-03-11 pair Yew: guppy\n2026-03-11 group Fir: guppy; 9\n';
  it.each([
    ['Yew: moved to C1', 'Yew', 'C1', [[null, 'C1']]],
    ['Yew: moved both to C1', 'Yew', 'C1', [[null, 'C1']]],
    ['C2: moved Yew to C1', 'Yew', 'C1', [['C2', 'C1']]],
    ['Fir: moved 9 to C1', 'Fir', 'C1', [[null, 'C1']]],
  ])('puts it there: %s', (line, name, tank, ways) => {
    const found = room(`${NEW}2026-03-12 ${line}\n`);
    expect(found.problems).toEqual([]);
    const group = found.stock.groups.get(name);
    expect(group?.home).toBe(tank);
    expect([...(group?.parts ?? [])].map(([at, { high }]) => [at, high])).toEqual([[tank, name === 'Yew' ? 2 : 9]]);
    expect(found.stock.moves.map(({ from, to }) => [from, to])).toEqual(ways);
  });
  it.each(['Yew: moved the male to C1', 'Fir: moved 3 to C1', 'Fir: moved to C1, rest stay'])(
    'is asked back where only some of it went: %s',
    (line) => {
      expect(room(`${NEW}2026-03-12 ${line}\n`).problems.map(({ kind }) => kind)).toEqual(['not-there']);
    },
  );
  it('leaves the tank on record as it is where it had one', () => {
    const found = room(`${NEW}2026-03-12 Fir: moved to C1\n2026-03-13 C1: moved 4 Fir to C2\n`);
    expect(found.stock.groups.get('Fir')?.home).toBe('C1');
  });
});
