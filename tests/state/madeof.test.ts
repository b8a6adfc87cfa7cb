/** A group that is made of fish of this room: how many each stock gives, and out of which tank. */
import { expect, it } from 'vitest';
import { journalOn } from '../support/journal.ts';

const TWO = `2026-01-02 group Oak: krib; 1; in C1
2026-01-02 group Elm: krib; 4; in C1
2026-02-02 A1: spawned
2026-02-10 A1: free-swimming, 50
2026-03-01 A1: Rowan-1 moved 20 to C1
`;

const left = (line: string): object => {
  const { stock, problems } = journalOn('2026-06-30', `${TWO}2026-06-01 ${line}\n`);
  const inC1 = (name: string) => (stock.broods.get(name) ?? stock.groups.get(name))?.parts.get('C1') ?? null;
  const rowan = stock.broods.get('Rowan-1')?.parts;
  return {
    oak: inC1('Oak'),
    elm: inC1('Elm')?.low,
    rowan: [rowan?.get('A1')?.low, rowan?.get('C1')?.low],
    told: problems.map(({ kind }) => kind),
  };
};

it('a pair of two stocks takes one of each', () => {
  expect(left('pair Yew: krib; male; female; in C1; from Oak and Elm')).toEqual({
    oak: null,
    elm: 3,
    rowan: [30, 20],
    told: [],
  });
});

it('more fish than stocks: at least one of each, and no more than leaves one for the other', () => {
  const { stock } = journalOn('2026-06-30', `${TWO}2026-06-01 group Yew: krib; 4; in C2; from Elm and Rowan-1\n`);
  expect(stock.groups.get('Elm')?.total).toMatchObject({ low: 1, high: 3 });
  expect(stock.broods.get('Rowan-1')?.total).toMatchObject({ low: 47, high: 49 });
});

it('of a stock in two tanks those that were in the tank of the new group', () => {
  expect(left('pair Yew: krib; male; female; in C1; from Rowan-1')).toMatchObject({ rowan: [30, 18], told: [] });
});
