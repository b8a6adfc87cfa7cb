import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { nearest, slips } from '../../src/core/suggest.ts';

describe('slips between two words', () => {
  it.each([
    ['opne', 'open', 1],
    ['chasign', 'chasing', 1],
    ['chasin', 'chasing', 1],
    ['hasing', 'chasing', 1],
    ['chusing', 'chasing', 1],
    ['', 'abc', 3],
    ['ca', 'abc', 3],
    ['kitten', 'sitting', 3],
  ])('%s to %s is %i', (a, b, cost) => {
    expect(slips(a, b)).toBe(cost);
  });

  it('counts a letter outside the basic plane once', () => {
    expect(slips('𝒜1', 'B1')).toBe(1);
  });

  const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c', 'ä', '𝒜'), maxLength: 8 });

  test('is the same both ways', () => {
    fc.assert(fc.property(word, word, (a, b) => slips(a, b) === slips(b, a)));
  });

  test('is none for equal words and for no others', () => {
    fc.assert(fc.property(word, word, (a, b) => (slips(a, b) === 0) === (a === b)));
    fc.assert(fc.property(word, (a) => slips(a, a) === 0));
  });

  test('is never more than the longer word, nor less than the difference in length', () => {
    fc.assert(
      fc.property(word, word, (a, b) => {
        const cost = slips(a, b);
        const [m, n] = [[...a].length, [...b].length];
        return cost <= Math.max(m, n) && cost >= Math.abs(m - n);
      }),
    );
  });

  test('a swap of two different neighbours is one slip', () => {
    fc.assert(
      fc.property(word, fc.nat(8), (a, at) => {
        const letters = [...a];
        const [x, y] = [letters[at], letters[at + 1]];
        fc.pre(x !== undefined && y !== undefined && x !== y);
        const swapped = [...letters.slice(0, at), y, x, ...letters.slice(at + 2)].join('');
        return slips(a, swapped) === 1;
      }),
    );
  });
});

describe('nearest names', () => {
  it('offers the nearest first, then by name', () => {
    expect(nearest('Rowan', ['Rowam', 'Rowen', 'Rown', 'Sedge'])).toEqual(['Rowam', 'Rowen', 'Rown']);
  });

  it('does not mind case', () => {
    expect(nearest('rowan', ['Rowan', 'Rowen'])).toEqual(['Rowan', 'Rowen']);
  });

  it('offers at most as many as asked', () => {
    expect(nearest('Rowan', ['Rowam', 'Rowen', 'Rown'], 1)).toEqual(['Rowam']);
  });

  it('offers no word three slips away', () => {
    expect(nearest('chasing', ['hiding', 'shimmying'])).toEqual([]);
  });

  it('does not find every one-letter or two-letter name near', () => {
    expect(nearest('A', ['B', 'C'])).toEqual([]);
    expect(nearest('A1', ['B2', 'C7'])).toEqual([]);
    expect(nearest('A11', ['A12', 'B1'])).toEqual(['A12']);
  });

  it('names each candidate once', () => {
    expect(nearest('spwned', ['spawned', 'spawned'])).toEqual(['spawned']);
  });
});
