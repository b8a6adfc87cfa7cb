/** Rule 1 in the line of an auction: lots and boxes open a clause after a comma as they do after a semicolon. */
import { expect, it } from 'vitest';
import { factsOf, readLines } from '../../support/lines.ts';

const facts = (clauses: string): readonly object[] => factsOf(clauses, 'auction Elmfair');

it.each([
  'on 2026-09-05, 20 lots',
  'on 2026-09-05, 20 lots, bags of 6, seller gets 70 %, fast 2 days',
  'bags of 6, 20 lots, 3 lots per species, 2 boxes of 20 L',
])('%s', (clauses) => {
  expect(facts(clauses)).toEqual(facts(clauses.replaceAll(',', ';')));
});

it('another number after a comma is no clause', () => {
  const { problems } = readLines('2026-03-10 auction Elmfair: on 2026-09-05, 20 lofts');
  expect(problems.map(({ weight }) => weight)).toContain('stops');
});
