/** A semicolon before words that only carry a clause on parts nothing: they can be of no other clause. */
import { expect, test } from 'vitest';
import { eventsOf, problemsIn } from '../support/lines.ts';

const DAY = '2026-03-10 ';

const facts = (line: string): unknown =>
  eventsOf(`${DAY}${line}\n`).map((event) => ({ ...event, place: null, seq: null }));

test.each([
  ['C1: moved 5 Ash to C2; rest stay', 'C1: moved 5 Ash to C2, rest stay'],
  ['C1: moved 5 Ash to C2; the rest stay; lights off', 'C1: moved 5 Ash to C2, rest stay; lights off'],
  ['C1: 5 Ash to C2; rest stay', 'C1: moved 5 Ash to C2, rest stay'],
  ['A2: moved Fern to C2; with her cave', 'A2: moved Fern to C2 with her cave'],
  ['C1: treat "salt" 2 g/L; every 24 h; wait 14 days', 'C1: treat "salt" 2 g/L, every 24 h, wait 14 days'],
])('«%s» is read as «%s»', (said, meant) => {
  expect(facts(said)).toEqual(facts(meant));
});

test.each([
  ['C1: moved 5 Ash to C2; lights off; rest stay', 'C1: moved 5 Ash to C2, rest stay; lights off'],
  ['C1: moved 5 Ash to C2, largest 12 mm, rest stay', 'C1: moved 5 Ash to C2, rest stay; largest 12 mm'],
  ['C1: moved 5 Ash to C2; dosed 3 g salt; rest stay', 'C1: moved 5 Ash to C2, rest stay; dosed 3 g salt'],
  ['C1: moved 5 Ash to C2; to do new stone; rest stayed here', 'C1: moved 5 Ash to C2, rest stay; to do new stone'],
])('of what is left after a move the line may tell later: «%s»', (said, meant) => {
  expect(facts(said)).toEqual(facts(meant));
});

test('without a move nothing stays', () => {
  expect(problemsIn(`${DAY}C1: water change 30 %; rest stay`)).toMatchObject([
    { kind: 'something-missing', write: `${DAY}C1: water change 30 %; note rest stay` },
  ]);
  expect(problemsIn(`${DAY}C1: moved 5 Ash to C2; treat "salt"; lights off; every 24 h`)[0]?.kind).toBe(
    'unknown-clause',
  );
});

test('what opens a clause is one, however it would go on', () => {
  expect(eventsOf(`${DAY}A1: chasing; male on female\n`)).toHaveLength(1);
  expect(eventsOf(`${DAY}C1: test pH 7.4; KH 6\n`).length).toBeGreaterThan(0);
});
