/** Slips that the breaking of rules brought to light: each with the smallest journal that showed it. */
import { expect, test } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { holds } from '../../src/questions/holds.ts';
import { stays } from '../../src/questions/money/stays.ts';
import { sale } from '../../src/questions/sale.ts';
import { days } from '../support/fishroom.ts';
import { journalOn } from '../support/journal.ts';

const on = (day: string, ...lines: readonly string[]) => journalOn(day, `${lines.join('\n')}\n`);
const held = (...lines: readonly string[]): string[] =>
  holds(on('2026-04-10', ...lines)).holds.flatMap(({ tanks }) => tanks.map(({ tank }) => tank));

test('a count and a move in one line, the count corrected later that day: the fish moved are still there', () => {
  const room = on(
    '2026-04-10',
    '2026-02-02 A1: spawned',
    '2026-02-10 A1: free-swimming, about 70',
    '2026-03-01 A1: Rowan-1 counted 52; Rowan-1 moved 10 to C2',
    '2026-03-01 A1: Rowan-1 counted 45',
  );
  const brood = room.stock.broods.get('Rowan-1');
  expect([brood?.parts.get('A1')?.low, brood?.parts.get('C2')?.low, brood?.total.low]).toEqual([45, 10, 55]);
});

test('a look at one female that finds no eggs does not date those of another', () => {
  const laid = (who: string) =>
    days(
      on('2026-02-10', `2026-02-09 A2: ${who} no eggs`, '2026-02-10 A2: Fern eggs seen').stock.broods.get('Sedge-1')
        ?.laid ?? null,
    );
  expect([laid('Lark'), laid('Fern')]).toEqual(['2026-02-05/2026-02-10', '2026-02-09/2026-02-10']);
});

test('a stage of one female named is no doubt about the brood of another', () => {
  const told = (line: string) => on('2026-02-10', '2026-02-02 A2: Fern spawned', line).problems.map(({ kind }) => kind);
  expect(told('2026-02-05 A2: Lark wrigglers')).toEqual([]);
  expect(told('2026-02-03 A2: Fern wrigglers')).toEqual(['stages-contradict']);
});

test('one female that moves leaves her group where it was', () => {
  const sedge = stays(on('2026-04-10', '2026-02-10 A2: Fern moved to C2')).filter(({ body }) => body === 'Sedge');
  expect(sedge.map(({ tank, from, to }) => `${tank} ${isoDay(from)} ${isoDay(to)}`)).toEqual([
    'A2 2026-01-01 2026-04-10',
    'C2 2026-02-10 2026-04-10',
  ]);
});

test('fish that come on the day on which a quarantine ended, after it, are in quarantine', () => {
  const room = on(
    '2026-04-10',
    '2026-03-20 Q1: bought 6 krib at 4.00 each as Elm',
    '2026-04-05 Q1: quarantine over; Elm moved all to C2',
    '2026-04-05 Q1: bought 4 krib as Oak',
  );
  expect(holds(room).quarantines.map(({ place, since }) => [place, isoDay(since)])).toEqual([['Q1', '2026-04-05']]);
});

test('a mix of fish of which nobody wrote line or source is not for sale, nor is one with such fish in it', () => {
  const why = (more: string) =>
    sale(
      on(
        '2026-06-01',
        '2026-01-02 species krib: sale at 35 mm or 16 weeks',
        `2026-03-01 group Elm: krib; 12; in C2; age 16 weeks${more}`,
        '2026-03-01 group Oak: krib; 6; in C2; age 16 weeks; line "Moss river"',
        '2026-03-01 C2: mixed Oak and Elm',
      ),
      { ahead: 0, auction: null, projected: false },
    )
      .lots.filter(({ tank }) => tank === 'C2')
      .flatMap(({ blockers }) => blockers.map(({ kind }) => kind));
  expect(why('')).toEqual(['line']);
  expect(why('; from "a friend"')).toEqual([]);
});

test('a tank that a line let go is held again by what comes to it since', () => {
  const fish = ['2026-03-20 C1: hold "velvet"', '2026-03-21 C1: Ash moved 4 to C2', '2026-04-01 C2: hold over'];
  expect(held(...fish)).toEqual(['C1']);
  expect(held(...fish, '2026-04-02 C1: Ash moved 4 to C2')).toEqual(['C1', 'C2']);
  expect(held(...fish, '2026-04-02 C1: sick "velvet", catching')).toEqual(['C1']);
  const water = ['2026-03-20 A1: hold "velvet"', '2026-04-01 A2: off the loop', '2026-04-02 A2: hold over'];
  expect(held(...water)).toEqual(['A1', 'B1']);
  expect(held(...water, '2026-04-05 A2: back on the loop')).toEqual(['A1', 'A2', 'B1']);
});

test('a tank that a line let go on shared water is held again by a new sign', () => {
  const water = ['2026-03-20 A1: hold "velvet"', '2026-04-02 B1: hold over'];
  expect(held(...water)).toEqual(['A1', 'A2']);
  expect(held(...water, '2026-04-05 A1: hold "velvet"')).toEqual(['A1', 'A2', 'B1']);
  expect(held(...water, '2026-04-05 A2: sick "velvet", catching')).toEqual(['A1', 'A2', 'B1']);
});

test('more moved out of a tank than were guessed there raises the guess, never above what was surely counted', () => {
  const room = on(
    '2026-04-10',
    '2026-02-02 A1: spawned',
    '2026-02-10 A1: free-swimming, 200 young',
    '2026-03-01 A1: Rowan-1 moved 3 to C2',
    '2026-03-02 C2: Rowan-1 counted about 1',
    '2026-03-03 C2: moved about 4 Rowan-1 to A1',
  );
  const brood = room.stock.broods.get('Rowan-1');
  expect(room.problems.map(({ kind }) => kind)).toEqual(['guess-corrected']);
  expect([brood?.total.high, brood?.parts.get('A1')?.high]).toEqual([200, 200]);
});
