/** Eggs of a female without a male: what is expected of them rests on nothing until they hatch. */
import { describe, expect, it } from 'vitest';
import { broods } from '../../src/questions/broods.ts';
import { due } from '../../src/questions/due.ts';
import { kin } from '../../src/questions/kin.ts';
import { pairs } from '../../src/questions/pairs.ts';
import { sale } from '../../src/questions/sale.ts';
import { journalOn } from '../support/journal.ts';

const DOUBT = /no male on record in (A1|C2) when they were laid: the eggs may not be fertile/;
const ALONE = `2026-04-01 A1: male died
2026-04-03 A1: spawned brood Rowan-1, about 60 eggs
`;
const REED = '2026-01-02 species reed: cave spawner; sale at 25 mm\n';
const row = (lines: string, name = 'Rowan-1', on = '2026-04-04') => {
  const found = broods(journalOn(on, lines), name).broods[0];
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};

describe('eggs of a pair whose male is gone', () => {
  it('carry the doubt, and are promised to nobody', () => {
    const { warnings, ready, next } = row(ALONE);
    expect(warnings.map(({ text, weight }) => [text, weight])).toEqual([
      ['Rowan-1: no male on record in A1 when they were laid: the eggs may not be fertile', 'watch'],
    ]);
    expect(ready).toBeNull();
    expect(next?.what).toBe('hatch');
    const lots = sale(journalOn('2026-04-04', ALONE), { ahead: 200, auction: null, projected: true }).lots;
    expect(lots.find(({ stock }) => stock === 'Rowan-1')).toMatchObject({ ready: false });
  });
  it('say so in every row that expects something of them', () => {
    const rows = due(journalOn('2026-04-04', ALONE), { days: 14, minutes: null }).rows.filter(
      ({ why, kind }) => kind === 'stage' && why.includes('Rowan-1'),
    );
    expect(rows.map(({ what }) => what)).toEqual([
      'look for wrigglers',
      'first food ready for Rowan-1',
      'look for swimming young',
    ]);
    for (const { why } of rows) expect(why).toMatch(DOUBT);
  });
  it('are as any others once they were seen to hatch', () => {
    const { warnings, ready } = row(`${ALONE}2026-04-06 A1: wrigglers\n`, 'Rowan-1', '2026-04-07');
    expect(warnings).toEqual([]);
    expect(ready).not.toBeNull();
  });
  it('and nobody expects a next spawn of her', () => {
    expect(pairs(journalOn('2026-04-04', ALONE), 'Rowan').pairs[0]).toMatchObject({ state: 'single', next: null });
  });
});

describe('a male that may have been there', () => {
  const isDoubted = (lines: string): boolean => row(lines).warnings.length > 0;
  it('takes the doubt away', () => {
    const laid = '2026-04-03 A1: Rowan spawned brood Rowan-1, about 60 eggs\n';
    expect(isDoubted(laid)).toBe(false);
    expect(isDoubted(`2026-04-03 A1: Rowan spawned brood Rowan-1\n2026-04-03 A1: male died\n`)).toBe(false);
    expect(isDoubted(`2026-04-01 A1: moved the male to C2\n${laid}`)).toBe(true);
    expect(isDoubted(`2026-04-03 A1: moved the male to C2\n${laid}`)).toBe(false);
    const eggs = '2026-04-03 A1: Rowan eggs seen\n2026-04-03 A1: Rowan spawned brood Rowan-1 0-4 days ago\n';
    expect(isDoubted(`2026-04-01 A1: male died\n${eggs}`)).toBe(false);
  });
  it('is any fish of its kind that shares the tank and is not known to be a female', () => {
    const with_ = (fish: string): boolean =>
      isDoubted(
        `${REED}2026-04-01 A1: male died\n2026-04-02 A1: bought ${fish}\n2026-04-03 A1: Rowan spawned brood Rowan-1\n`,
      );
    expect(with_('2 krib')).toBe(false);
    expect(with_('1 male krib')).toBe(false);
    expect(with_('2 female krib')).toBe(true);
    expect(with_('2 reed')).toBe(true);
  });
});

describe('the sexes of bought fish', () => {
  const BOUGHT = '2026-04-01 C2: bought 1 female krib, 60 mm\n2026-04-03 C2: spawned brood Z1, about 60 eggs\n';
  it('tell of a female alone', () => {
    expect(row(BOUGHT, 'Z1').warnings[0]?.text).toMatch(DOUBT);
    expect(row(BOUGHT.replace('1 female krib', '2 krib'), 'Z1').warnings).toEqual([]);
    expect(row(BOUGHT.replace('1 female krib', '1 male 1 female krib'), 'Z1').warnings).toEqual([]);
  });
  it('stand in `kin` as they were counted, as long as nobody left of which sex is not told', () => {
    const line = (lines: string, name: string) =>
      kin(journalOn('2026-04-20', lines)).lines.find(({ groups }) => groups.includes(name));
    const told = (lines: string) => {
      const found = line(lines, 'krib of 1 Apr');
      return [found?.males, found?.females, found?.unsexed.high];
    };
    expect(told('2026-04-01 C2: bought 1 male krib\n')).toEqual([1, 0, 0]);
    expect(told('2026-04-01 C2: bought 2 males 4 females krib\n')).toEqual([2, 4, 0]);
    expect(told('2026-04-01 C2: bought 2 males 4 females krib\n2026-04-02 C2: died 1\n')).toEqual([0, 0, 5]);
    expect(told('2026-04-01 C2: bought 4 female krib\n2026-04-02 C2: died 1\n')).toEqual([0, 3, 0]);
    expect(told('2026-04-01 C2: bought 6 krib\n')).toEqual([0, 0, 6]);
    expect(told('2026-04-01 C2: bought 6 krib\n2026-04-09 C2: counted 2 males, 4 females\n')).toEqual([2, 4, 0]);
    const ash = line('2026-04-09 Ash: counted 5 males, 7 females\n', 'Ash');
    expect([ash?.males, ash?.females, ash?.unsexed.high]).toEqual([5, 7, 0]);
  });
  it('pair nobody with one of its own sex, nor a single fish with itself', () => {
    const pairings = (lines: string): string[] =>
      kin(journalOn('2026-04-20', lines))
        .pairings.map(({ one, other }) => `${one} × ${other}`)
        .filter((words) => words.includes('Oak') || words.includes('Yew'));
    const two = (oak: string, yew: string): string[] =>
      pairings(`${REED}2026-04-01 group Oak: reed; ${oak}; in C2\n2026-04-01 group Yew: reed; ${yew}; in Q1\n`);
    expect(two('1 male', '1 male')).toEqual([]);
    expect(two('1 male', '1 female')).toEqual(['Oak × Yew']);
    expect(two('1', '1 female')).toEqual(['Oak × Yew']);
  });
});
