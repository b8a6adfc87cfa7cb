/** What is written every week and no clause is made of: what is read of it, and which line is offered for the rest. */
import { describe, expect, test } from 'vitest';
import { eventsOf, problemsIn } from '../support/lines.ts';
import { journalOn } from '../support/journal.ts';

const DAY = '2026-03-10 ';
const facts = (line: string): unknown => eventsOf(`${DAY}${line}\n`).map(({ place: _, seq: __, ...says }) => says);
const offered = (line: string): string | undefined => problemsIn(`${DAY}${line}`)[0]?.write.replace(DAY, '');

describe('is read as meant', () => {
  test.each([
    ['C1: wc a third of the water', 'C1: wc 33.33 %'],
    ['C1: changed half of the water', 'C1: wc 50 %'],
    ['C1: changed 30% of the water', 'C1: wc 30 %'],
    ['A1: male back in A1', 'A1: male back'],
    ['Rowan: male back in A1', 'Rowan: moved the male to A1'],
    ['C2: male is back in A1', 'C2: moved the male to A1'],
    ['C1: sold a pair for 20', 'C1: sold 1 male 1 female for 20'],
    ['C1: a pair died', 'C1: 1 male 1 female died'],
    ['A1: sold the pair', 'A1 pair: sold'],
    ['C1: doing well', 'C1: all well'],
    ['C1: eating well', 'C1: all well'],
    ['C1: biggest is 20mm', 'C1: largest 20 mm'],
    ['A1: all rocks out', 'A1: rocks out'],
    ['A2: valved off loop', 'A2: off the loop'],
    ['M1: new culture started', 'M1: started'],
    ['A1: eggs all gone', 'A1: eggs gone'],
    ['Long: overflowed a bit', 'Long: overflowed "a bit"'],
    ['C1: sold 6 to a friend', 'C1: sold 6 to "a friend"'],
    // Eggs behind a feed are food
    ['C1: fed shrimp and eggs', 'C1: fed "shrimp and eggs"'],
    ['C1: fed eggs and wc 30 %', 'C1: fed eggs; wc 30 %'],
  ])('%s', (line, meant) => {
    expect(facts(line)).toEqual(facts(meant));
  });

  test('an article is one where a row is called A', () => {
    const lines = `2026-03-09 row A: A1 A2\n${DAY}C1: sold 6 to a friend\n`;
    expect(eventsOf(lines).at(-1)).toMatchObject({ kind: 'sold', to: 'a friend' });
  });
});

describe('is asked back, with a line that would be read', () => {
  test.each([
    ['C1: wc 30% and rinsed sponge yesterday', 'C1: wc 30% yesterday; rinsed sponge yesterday'],
    ['C1: wc 30 % & rinse sponge every 2 weeks', 'C1: wc 30 % every 2 weeks; rinse sponge every 2 weeks'],
    ['C1: lights off and heater off until friday', 'C1: lights off until friday; heater off until friday'],
    ['Long: change filter every 4 weeks', 'Long: "change filter" every 4 weeks'],
    ['C1: clean glass weekly', 'C1: "clean glass" weekly'],
    ['C1: clean glass and vac sand every week', 'C1: "clean glass and vac sand" every week'],
    ['C1: all but 2 to C2', 'C1: moved all to C2, rest stay; counted 2'],
    ['C1: moved all except 2 Ash to C2', 'C1: moved all Ash to C2, rest stay; counted 2'],
    ['C1: all but two moved to C2', 'C1: moved all to C2, rest stay; counted two'],
    ['A1: put the male back', 'A1: male back'],
    ['A1: put female back in A1', 'A1: female back in A1'],
    ['C1: shop took 20 at 1.50', 'C1: sold 20 at 1.50 to shop'],
    ['C1: the shop took 20 at 1.50', 'C1: sold 20 at 1.50 to "the shop"'],
    ['C1: heron took 2', 'C1: eaten 2'],
    ['Q1: 6 krib from Sue', 'Q1: bought 6 krib from Sue'],
    ['Q1: about 6 kribs from a friend', 'Q1: bought about 6 kribs from a friend'],
    ['C1: 12 krib', 'C1: counted 12 krib'],
    ['A1: f ok', 'A1: note f ok'],
    ['A1: both look fine', 'A1: note both look fine'],
    // Put otherwise it is read
    ['C1: wc30%', 'C1: wc 30%'],
    ['C1: gh 6 kh3', 'C1: gh 6 kh 3'],
    ['C1: 25 degrees', 'C1: temp 25'],
    ['C1: temp was 24.5', 'C1: temp 24.5'],
    ['C1: heat 28', 'C1: heat to 28'],
    ['C1: weekly wc 30%', 'C1: wc 30% weekly'],
    ['A1: they spawned', 'A1: spawned'],
    ['A1: female got torn fin', 'A1: female torn fin'],
    ['A1: found male dead', 'A1: male dead'],
    ['C1: a dead one', 'C1: 1 dead'],
    ['A1: female not eating day 3', 'A1: female not eating "day 3"'],
    ['C1: largest 20mm smallest 12mm', 'C1: largest 20mm; smallest 12mm'],
    ['C1: sold half a dozen', 'C1: sold 6'],
    ['C1: keeping 8', 'C1: kept back 8'],
    ['Q1: 6 new krib', 'Q1: bought 6 krib'],
    ['Q1: new fish, 6 krib', 'Q1: bought 6 krib'],
    ['room: bought food 12', 'room: spent 12 "food"'],
    ['A1: heater not heating', 'A1: fault "heater not heating"'],
    ['A1: heater is not heating', 'A1: fault "heater is not heating"'],
    ['A1: filter is noisy', 'A1: fault "filter is noisy"'],
    ['A1: the pump is back on', 'A1: pump on'],
    ['A1: lights are off', 'A1: lights off'],
    ['C1: counted half a dozen', 'C1: counted 6'],
    ['C1: wc 30 % and clean glass every week', 'C1: wc 30 % every week; "clean glass" every week'],
    ['C1: wc 30 % every 7 days and clean glass weekly', 'C1: wc 30 % every 7 days; "clean glass" weekly'],
    ['A1: clean glass', 'A1: to do "clean glass"'],
    ['A1: cleaned glass', 'A1: did "cleaned glass"'],
    ['C1: PH 7.4, KH4, GH8', 'C1: PH 7.4, KH 4, GH 8'],
    ['A1: chasing stopped', 'A1: calmer "chasing stopped"'],
    ['A1: no fighting today', 'A1: calmer "no fighting today"'],
    ['C1: Ash: 2 dead', 'C1: Ash 2 dead'],
    ['C1: filter rinsed', 'C1: rinsed sponge'],
    ['C1: both sponges rinsed', 'C1: rinsed sponge'],
    ['A1: both eating', 'A1: note both eating'],
    ['Ash: sold the pair', 'Ash: sold 1 male 1 female'],
    ['Pebble: both died', 'Pebble: 1 male 1 female died'],
  ])('%s', (line, write) => {
    expect(offered(line)).toBe(write);
  });

  test.each([
    'C1: 6 Ash from Sue',
    'C1: Rowan took 3',
    'C1: clean glass every week and wc 30%',
    'C1: 30 nonsense',
    'C1: 12',
    'Long: cleaned half the layers',
    // Nothing is offered that did not happen
    'A1: filter is clean',
    'A1: spawned day 2',
    'A1: replaced the male',
    'A1: cleaned out the dead',
    'A1: the cat took 2',
    'A1: mum had 40 fry',
    'C1: got fry 20',
    'C1: got new fish 6',
  ])('and other words are no such thing: %s', (line) => {
    expect(offered(line)).toContain(': note ');
  });

  test('a brood without its hyphen', () => {
    const young = '2026-03-02 A1: spawned brood Rowan-1\n';
    for (const words of ['Rowan 1 counted 30', 'rowan1 counted 30'])
      expect(problemsIn(`${young}${DAY}A1: ${words}`)[0]?.write).toBe(`${DAY}A1: Rowan-1 counted 30`);
  });

  test('mothers are none of the young that are born', () => {
    expect(facts('B1: 2 females gave birth')).toMatchObject([{ stage: 'born', count: null, remark: '2 females' }]);
  });

  test('what may be said of one fish says both readings', () => {
    expect(problemsIn(`${DAY}A1: f ok`)[0]?.says).toContain('`all well "f ok"`');
    expect(problemsIn(`${DAY}C1: 12 krib`)[0]?.says).toContain('`counted 12 krib` or `bought 12 krib`');
  });

  test('a pair that is sold where a pair and young live', () => {
    const young =
      '2026-03-02 A1: spawned brood Rowan-1\n2026-03-05 A1: wrigglers\n2026-03-10 A1: free-swimming, about 60\n';
    const found = journalOn('2026-08-01', `${young}2026-07-01 A1: sold a pair for 20.00\n`);
    expect(found.problems.map(({ kind }) => kind)).toEqual(['which-fish']);
    expect(journalOn('2026-08-01', `${young}2026-07-01 A1: sold the pair for 20.00\n`).problems).toEqual([]);
  });
});
