/** Lines that lack a sign, a word or a value, and words that are near another: what is read of them, and what is asked back. */
import { describe, expect, test } from 'vitest';
import { eventsOf, problemsIn } from '../support/lines.ts';

const DAY = '2026-03-10 ';
const facts = (line: string): unknown => eventsOf(`${DAY}${line}\n`).map(({ place: _, seq: __, ...says }) => says);
const problems = (line: string): ReturnType<typeof problemsIn> => problemsIn(`${DAY}${line}`);
const offered = (line: string): string | undefined => problems(line)[0]?.write.replace(DAY, '');

describe('is read as meant', () => {
  test.each([
    // A loss, and how it was found
    ['C1: 1 jumped, dead', 'C1: 1 dead "jumped"'],
    ['C1: 1 jumped and dead', 'C1: 1 dead "jumped"'],
    ['C1: 2 missing, 1 dead', 'C1: missing 2; died 1'],
    ['C1: 1 jumped out', 'C1: missing 1'],
    ['A1: f found dead behind the filter', 'A1: female died "behind the filter"'],
    // What a hold is for
    ['C1: hold, velvet', 'C1: hold "velvet"'],
    ['C1: no sale - white spot', 'C1: hold "white spot"'],
    ['C1: released from hold', 'C1: hold over'],
    ['C1: hold velvet, wc 30%', 'C1: hold "velvet"; wc 30%'],
    // `+` between blanks is an `and`
    ['C1: wc 30% + sponge rinsed', 'C1: wc 30%; rinsed sponge'],
    ['C1: flake + bbs', 'C1: flake and bbs'],
    ['A2: 2 m + 4 f dead', 'A2: 2 m, 4 f dead'],
    // Numbers in words
    ['C1: counted thirty-eight', 'C1: counted 38'],
    ['C1: moved fifteen to C2', 'C1: moved 15 to C2'],
    ['C1: moved everything to C2', 'C1: moved all to C2'],
    ['C1: 1.5 in', 'C1: size 1.5 in'],
    // Eggs that may be there
    ['A1: eggs?', 'A1: maybe spawned'],
    ['A1: maybe eggs', 'A1: maybe spawned'],
    ['A1: spawned this am', 'A1: spawned'],
    ['A1: eggs laid', 'A1: spawned'],
    // What is rigged up
    ['A1: put the divider back in', 'A1: divider in'],
    ['A1: took the divider out', 'A1: divider out'],
    ['A1: isolated from the loop', 'A1: off the loop'],
    ['A1: fry trap in', 'A1: breeder net in'],
    ['A1: light back on', 'A1: lights on'],
    // Water and filters
    ['C1: 30% pwc', 'C1: wc 30%'],
    ['C1: squeezed the sponge', 'C1: rinsed sponge'],
    ['Long: 1 layer rinsed', 'Long: cleaned 1 layers'],
    ['Long: prefilter sponges rinsed', 'Long: cleaned all layers'],
    ['room: bbs hatch on', 'room: hatch brine shrimp'],
    ['C1: 20 mm now', 'C1: size 20 mm "now"'],
    ['A1: all quiet', 'A1: calmer'],
    // Words that trail off
    ['C1: all well…', 'C1: all well'],
  ])('%s', (line, meant) => {
    expect(facts(line)).toEqual(facts(meant));
  });
});

describe('is asked back, with a line that would be read', () => {
  test.each([
    // Two clauses without the sign between them
    ['C1: 2 dead wc 30%', 'C1: 2 dead; wc 30%'],
    ['C1: wc 30% 2 dead', 'C1: wc 30%; 2 dead'],
    ['C1: 2 dead 1 missing', 'C1: 2 dead; 1 missing'],
    ['C1: wc 30% + 2 dead', 'C1: wc 30%; 2 dead'],
    ['C1: heater broke, 19 C', 'C1: heater broke; 19 C'],
    ['C1: moved 10 to C2 wc 30%', 'C1: moved 10 to C2; wc 30%'],
    ['A1: chasing lights off', 'A1: chasing; lights off'],
    ['C1: topped up 5 l fed', 'C1: topped up 5 l; fed'],
    ['C1: culled 1 bent spine', 'C1: note culled 1 bent spine'],
    ['C1: 2 dead from bloat', 'C1: 2 dead "from bloat"'],
    ['A2: fault valve leaking and pump off', 'A2: fault valve leaking; pump off'],
    ['C1: hold velvet wc 30%', 'C1: hold velvet; wc 30%'],
    ['C1: fixed valve and lights on', 'C1: fixed valve; lights on'],
    // Times and days
    ['room: power cut 14:00-18:30', 'room: power cut 270 min "14:00-18:30"'],
    ['room: power cut 2-4pm', 'room: power cut 120 min "2-4pm"'],
    ['room: power cut 22:00-01:30', 'room: power cut 210 min "22:00-01:30"'],
    ['room: power cut 2-4', 'room: note power cut 2-4'],
    ['room: away 12-19 march', '2026-03-12 room: away until 2026-03-19'],
    ['room: away 10-19 march', 'room: away until 2026-03-19'],
    ['room: away from 5 dec to 12 dec', '2026-12-05 room: away until 2026-12-12'],
    ['room: away for a week', 'room: away for 1 week'],
    ['C1: wc 30% every sunday', 'C1: wc 30% every week "sunday"'],
    ['C1: every sunday trim plants', 'C1: "trim plants" every week "sunday"'],
    ['C1: feed twice a day', 'C1: "feed twice" every day'],
    // Fish
    ['C1: 12 krib, about 20 mm', 'C1: counted 12 krib; krib size about 20 mm'],
    ['C1: 12 fry', 'C1: counted 12 fry'],
    ['A1: 3 wrigglers dead', 'A1: 3 young dead'],
    ['C1: lost 1, jumped', 'C1: missing 1, jumped'],
    ['A1: back in C2', 'A1: note back in C2'],
    ['A2: 2 holding', 'A2: note 2 holding'],
    ['C1: moved 10 C2', 'C1: moved 10 to C2'],
    ['C1: ten biggest moved to C2', 'C1: moved ten biggest to C2'],
    ['A2: moved Fern and Lark to Q1', 'A2: moved Fern to Q1; moved Lark to Q1'],
    ['A1: female in Q1', 'A1: moved female to Q1'],
    ['A1: he killed her', 'A1: female died "killed by the male"'],
    ['A1: f has split fins', 'A1: f split fins'],
    ['C1: 2x dead', 'C1: 2 dead'],
    ['Q1: 6 krib arrived, 1 dead', 'Q1: received 6 krib, 1 dead'],
    ['C2: 10 in from C1', 'C1: moved 10 to C2'],
    ['C1: I counted 43', 'C1: counted 43'],
    ['C1: twenty five dead', 'C1: twenty-five dead'],
    // Trade
    ['C1: reserved 6 for Sam, paid 10', 'C1: reserved 6 for Sam, deposit 10'],
    ['C1: sold 6 to Sam; paid 40', 'C1: sold 6 to Sam for 40'],
    ['C1: sold 2x6 at 30', 'C1: sold 2 bags of 6 for 60.00'],
    ['C1: hold 6 for Sam', 'C1: reserved 6 for Sam'],
    ['C1: 8 for me', 'C1: kept back 8'],
    ['C1: sold 6 at the Autumn auction for 35', 'C1: sold 6 at Autumn for 35'],
    ['room: food 12.50', 'room: spent 12.50 "food"'],
    ['C1: sold 6 of 10', 'C1: sold 6 "of 10"'],
    ['C1: sold 6 to Sam, 4 to Joe', 'C1: sold 6 to Sam; sold 4 to Joe'],
    ['C1: sold 6 to Sam and 4 to Joe', 'C1: sold 6 to Sam; sold 4 to Joe'],
    ['C1: the rest went to C2', 'C1: the rest to C2'],
    ['C1: min 15 max 25', 'C1: smallest 15; largest 25'],
    // Several numbers of which one would be lost
    ['C1: wc 30% x2', 'C1: wc 30%; wc 30%'],
    ['C1: topped up 5 L x 2', 'C1: note topped up 5 L x 2'],
    ['C1: largest 2.5cm, smallest 1.2', 'C1: largest 2.5cm, smallest 1.2 cm'],
    // Things
    ['Long: drain blocked', 'Long: fault "drain blocked"'],
    ['Long: overflow blocked', 'Long: fault "overflow blocked"'],
    ['A1: heater is fixed', 'A1: fixed "heater"'],
    ['Long: pump dead, swapped', 'Long: pump dead; note swapped'],
    ['Long: 2/6 sponges', 'Long: cleaned 2 of 6 layers'],
    ['Long: 40mm', 'Long: level 40mm'],
    ['C1: carbon out', 'C1: note carbon out'],
    ['species ram: egg layer', 'note species ram: egg layer'],
    ['species ram: mouth breeder', 'species ram: mouthbrooder'],
    // Headings
    ['A1-B1: all well', 'A1 to B1: all well'],
    ['all: all well', 'all tanks: all well'],
    ['Rowan 1: counted 43', 'Rowan-1: counted 43'],
    ['rowan1: counted 43', 'Rowan-1: counted 43'],
  ])('«%s»', (line, write) => {
    const [first] = problems(line);
    expect(first?.write.replace(DAY, '')).toBe(write);
    expect(problemsIn(first?.write ?? '')).toEqual([]);
  });
});

describe('what is denied, asked or not sure is told as nothing that happened', () => {
  test.each([
    'A1: no white spot',
    'A1: none sick',
    'A1: white spot cleared',
    'A1: no wrigglers',
    'A1: no fry seen',
    'A1: no spawning',
    'A1: will spawn soon',
    'A1: about to spawn?',
    'A1: eggs infertile',
    'C1: 1 dead?',
    'C1: maybe 1 dead',
    'C1: sick fish dead',
    'C1: wc 0%',
    'C1: wc 130%',
    'C1: topped up 30%',
    'Long: not cleaned',
    'Long: cleaned 0',
    'A1: fs?',
    'A1: wrigglers?',
    'C1: treat done',
    'C1: fed nothing',
    'C1: wc late',
    'C1: wc half done',
  ])('%s', (line) => {
    expect(problems(line)).not.toEqual([]);
    expect(offered(line)).toBe(line.replace(': ', ': note '));
  });

  test('a number that fell is the last of the two', () => {
    expect(offered('Long: level 40 to 25')).toBe('Long: level 25 "from 40"');
  });
});

describe('a declaration', () => {
  test.each([
    ['pair Oak: krib in C2', 'pair Oak: krib; in C2'],
    ['species ram: sells at 25 mm', 'species ram: sale at 25 mm'],
  ])('%s', (line, meant) => {
    expect(facts(line)).toEqual(facts(meant));
  });

  test('takes no number for a part of a Latin name', () => {
    expect(offered('species ram: grows to 80 mm')).toBe('note species ram: grows to 80 mm');
    expect(problems('species ram: Mikrogeophagus sp. L260')).toEqual([]);
  });
});

describe('a word that is near another stands for itself', () => {
  test.each([
    ['C1: no air', 'C1: note no air'],
    ['A1: most fry gone', 'A1: note most fry gone'],
    ['A1: rest pair', 'A1: note rest pair'],
    ['A2: Fern dead, beaten', 'A2: Fern dead "beaten"'],
    ['A2: Fern on eggs', 'A2: Fern eggs seen'],
    ['room: bbs ready', 'room: note bbs ready'],
    ['A1: chasing less', 'A1: calmer "chasing less"'],
  ])('%s', (line, write) => {
    expect(offered(line)).toBe(write);
  });
});

describe('an ellipsis that stands by itself is no value', () => {
  test.each([
    ['C1: water change …', 'C1: water change'],
    ['C1: fed …', 'C1: fed'],
    ['C1: all well …', 'C1: all well'],
    ['C1: counted …', 'C1: note counted …'],
    ['C1: photo "…"', 'C1: note photo "…"'],
    ['C1: test pH …, TAN …', 'C1: note test pH …, TAN …'],
  ])('%s', (line, write) => {
    expect(problems(line)[0]).toMatchObject({ kind: 'something-missing', write: DAY + write });
  });

  test('in a note it is text, and to whom fish went may be left open', () => {
    expect(problems('C1: note ask about … tomorrow')).toEqual([]);
    expect(problems('C1: sold 4 Rowan-1 to "…"')).toEqual([]);
  });
});

test('a dash alone tells nothing', () => {
  expect(problems('C1: -')[0]).toMatchObject({ kind: 'nothing-said' });
});
