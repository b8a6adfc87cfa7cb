import { describe, expect, it } from 'vitest';
import { KeyLists } from '../../../src/files/cache/image/keylists.ts';

describe('key lists of records', () => {
  it('have a number each, the same whenever they come again', () => {
    const lists = new KeyLists();
    const numbers = [['a'], ['a', 'b'], [], ['a'], ['b', 'a'], [], ['a', 'b']].map((keys) => lists.numberOf(keys));
    expect(numbers).toEqual([0, 1, 2, 0, 3, 2, 1]);
    expect(lists.all).toEqual([['a'], ['a', 'b'], [], ['b', 'a']]);
  });

  it('are told apart where their keys run into one another or are names of what every record has', () => {
    const lists = new KeyLists();
    const numbers = [['ab', 'c'], ['a', 'bc'], ['__proto__'], ['constructor'], ['abc']].map((keys) =>
      lists.numberOf(keys),
    );
    expect(new Set(numbers).size).toBe(5);
  });
});
