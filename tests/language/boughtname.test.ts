/** Bought fish are called after their species and the day, `krib of 2 May`: read wherever a clause names fish. */
import { describe, expect, it } from 'vitest';
import { printEntry } from '../../src/language/print.ts';
import { eventsOf } from '../support/lines.ts';
import { journalOn } from '../support/journal.ts';

const BOUGHT =
  '2026-02-08 C2: bought 12 krib at 2.00 each from "a dealer"\n2026-03-08 C2: bought 9 krib at 3.00 each from "a dealer"\n';

/** What stands in C2 at the end, and the stock that is kept back. */
const after = (line: string): object => {
  const room = journalOn('2026-04-30', BOUGHT + line);
  const here = [...room.stock.groups.values()].map(({ name, parts }) => [name, parts.get('C2')?.low ?? 0] as const);
  return Object.fromEntries(here.filter(([name]) => name.startsWith('krib of')));
};

describe('krib of 2 May', () => {
  it('is one stock of several, behind the phrase and before it', () => {
    for (const line of [
      '2026-04-25 C2: sold 5 krib of 8 Mar for 20.00\n',
      '2026-04-25 C2: died 5 krib of 8 Mar\n',
      '2026-04-25 C2: krib of 8 Mar died 5\n',
      '2026-04-25 C2: krib of 8 Mar counted 4\n',
      '2026-04-25 C2: moved 5 krib of 8 Mar to C1\n',
      '2026-04-25 C2: krib of 8 Mar moved 5 to C1, rest stay\n',
    ])
      expect([line, after(line)]).toEqual([line, { 'krib of 8 Feb': 12, 'krib of 8 Mar': 4 }]);
  });

  it('dates nothing: what happened is of the day of the line, or of the day that the line tells besides', () => {
    const [sold] = eventsOf(`${BOUGHT}2026-04-25 C2: sold 5 krib of 8 Mar for 20.00\n`).filter(
      ({ kind }) => kind === 'sold',
    );
    expect(sold).toMatchObject({ when: null, fish: { kind: 'group', group: 'krib of 8 Mar' } });
    const [lost] = eventsOf(`${BOUGHT}2026-04-25 C2: died 1 krib of 8 Mar yesterday\n`).filter(
      ({ kind }) => kind === 'lost',
    );
    expect(lost).toMatchObject({ when: { low: lost?.day ? lost.day - 1 : null }, fish: { group: 'krib of 8 Mar' } });
  });

  it('is printed as it is called', () => {
    const line = '2026-04-25 C2: sold 6 krib of 8 Feb for 20.01 at Autumn "lot 8"';
    expect(printEntry(eventsOf(`${BOUGHT}${line}\n`).filter(({ kind }) => kind === 'sold'))).toBe(line);
  });

  it('of a day on which none was bought is left out and told', () => {
    const { problems } = journalOn('2026-04-30', `${BOUGHT}2026-04-25 C2: sold 5 krib of 9 Mar for 20.00\n`);
    expect(problems.map(({ says, write }) => [says, write])).toEqual([
      ['there is no krib of 9 Mar on that day', 'the line they came with, on its own day: Q1: bought … krib'],
    ]);
  });
});
