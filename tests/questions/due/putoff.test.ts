/** What a keeper put off, kept on, was away from, or looked at: what the list leaves out for it, and what it never does. */
import { describe, expect, test } from 'vitest';
import { dayFromIso, isoDay, toDay } from '../../../src/core/day.ts';
import { readJournal } from '../../../src/language/read.ts';
import { due } from '../../../src/questions/due.ts';
import type { DueAnswer } from '../../../src/questions/due.ts';
import { foldRoom } from '../../../src/state/fold.ts';

const SETUP = `2026-02-01 room: units metric; walk A1 A2 C1
2026-02-01 loop Long: sump 240 L; prefilter 6 layers; spills at 80 mm
2026-02-01 tank A1: 100 L; on Long
2026-02-01 tank A2: 100 L; on Long
2026-02-01 tank C1: 54 L; alone; sponge filter
2026-02-01 species krib: Pelvicachromis taeniatus; cave spawner
2026-02-01 pair Rowan: krib; male; female; in A1
2026-02-01 C1: water change 30 % every 7 days
`;

function ask(on: string, more: string): DueAnswer {
  const reading = readJournal('fishroom.txt', SETUP + more, () => ({ ok: false, says: 'no' }));
  expect(reading.problems).toEqual([]);
  const room = foldRoom(reading.events, dayFromIso(on) ?? toDay(0));
  expect(room.problems).toEqual([]);
  return due(room, { days: 0, minutes: null });
}

const shown = (on: string, more: string): string[] => ask(on, more).rows.map(({ id }) => id);
const left = (on: string, more: string): string[] =>
  ask(on, more).putOff.map(({ id, until }) => `${id} ${isoDay(until)}`);

describe('a tank off the loop on an air filter', () => {
  const OFF = '2026-02-18 A2: off the loop, air filter in\n';

  test.each([
    'A2: keep air filter in until 2026-03-02',
    'A2: keep off the loop until 2026-03-02',
    'A2: put off air filter until 2026-03-02',
    'A2: put off air filter out until 2026-03-02',
    'A2: put off the loop until 2026-03-02',
    'A2: put off back on the loop until 2026-03-02',
    'A2: put off "put back on the loop" until 2026-03-02',
  ])('«%s» puts its one row off', (line) => {
    expect(shown('2026-02-22', OFF)).toContain('a2-off-the-loop');
    expect(shown('2026-02-22', `${OFF}2026-02-21 ${line}\n`)).not.toContain('a2-off-the-loop');
    expect(left('2026-02-22', `${OFF}2026-02-21 ${line}\n`)).toEqual(['a2-off-the-loop 2026-03-02']);
    expect(shown('2026-03-02', `${OFF}2026-02-21 ${line}\n`)).toContain('a2-off-the-loop');
  });

  test('«air filter off» undoes as «air filter out» does', () => {
    const off = '2026-02-18 C1: air filter in\n';
    expect(shown('2026-02-22', off)).toContain('c1-air-filter');
    expect(shown('2026-02-22', `${off}2026-02-21 C1: air filter off\n`)).not.toContain('c1-air-filter');
  });

  test('is not put off by words about another tank or another rig', () => {
    for (const line of ['A1: put off air filter until 2026-03-02', 'A2: keep lights off until 2026-03-02']) {
      expect(shown('2026-02-22', `${OFF}2026-02-21 ${line}\n`)).toContain('a2-off-the-loop');
    }
  });
});

describe('«keep lights off until»', () => {
  const DARK = '2026-02-10 C1: lights off\n';

  test('is the same as putting off lights on', () => {
    expect(left('2026-02-19', `${DARK}2026-02-11 C1: put off lights on until 2026-02-20\n`)).toEqual([
      'c1-lights-off 2026-02-20',
    ]);
  });

  test('asks again on its day, and not before', () => {
    const kept = `${DARK}2026-02-11 C1: keep lights off until 2026-02-20\n`;
    expect(shown('2026-02-13', DARK)).toContain('c1-lights-off');
    expect(shown('2026-02-19', kept)).not.toContain('c1-lights-off');
    expect(left('2026-02-19', kept)).toEqual(['c1-lights-off 2026-02-20']);
    expect(shown('2026-02-20', kept)).toContain('c1-lights-off');
  });

  test('leaves everything else of the tank in the list', () => {
    const kept = `${DARK}2026-02-11 C1: keep lights off until 2026-02-20; rocks out\n`;
    expect(shown('2026-02-13', kept)).toEqual(expect.arrayContaining(['c1-water-change', 'c1-rocks-out']));
  });
});

describe('pressing things can be put off for a day at most', () => {
  test.each([
    ['a spill', 'Long: overflowed', 'Long: put off overflowed until 2026-03-02', 'long-overflow'],
    ['a leak', 'A1: leak', 'A1: put off leak until 2026-03-02', 'a1-leak'],
    ['a lost power supply', 'room: power off', 'room: put off power off until 2026-03-02', 'room-power'],
    ['a wound', 'A1: wounded', 'A1: put off dispute until 2026-03-02', 'a1-dispute'],
    ['a wound, said of the pair', 'A1: wounded', 'Rowan: put off dispute until 2026-03-02', 'a1-dispute'],
    ['a stuck heater', 'C1: heater stuck 31 C', 'C1: put off heater stuck until 2026-03-02', 'c1-heater-stuck'],
  ])('%s', (_, clause, line, id) => {
    const told = `2026-02-18 ${clause}\n`;
    expect(shown('2026-02-18', told)).toContain(id);
    expect(left('2026-02-18', `${told}2026-02-18 ${line}\n`)).toEqual([`${id} 2026-02-19`]);
    expect(shown('2026-02-19', `${told}2026-02-18 ${line}\n`)).toContain(id);
  });

  test('what can wait is put off for as long as the line says', () => {
    const line = '2026-02-18 C1: put off water change until 2026-03-02 "tap cloudy"\n';
    expect(left('2026-03-01', line)).toEqual(['c1-water-change 2026-03-02']);
    expect(shown('2026-03-02', line)).toContain('c1-water-change');
  });
});

describe('«away until»', () => {
  const AWAY = '2026-02-10 room: away until 2026-03-02 "feeding twice a day"\n';

  test('silences chores, rigs and silence itself, and counts them', () => {
    const found = ask('2026-02-20', `${AWAY}2026-02-09 C1: lights off\n`);
    expect(found.rows).toEqual([]);
    const waiting = found.waiting.map(({ id }) => id);
    expect(waiting).toEqual(expect.arrayContaining(['c1-water-change', 'c1-lights-off', 'room-silence']));
    expect(new Set(found.waiting.map(({ until }) => isoDay(until)))).toEqual(new Set(['2026-03-02']));
  });

  test.each([
    ['a spill', 'Long: overflowed', 'long-overflow'],
    ['a lost power supply', 'room: power off', 'room-power'],
    ['a wound', 'A1: wounded', 'a1-dispute'],
  ])('never silences %s', (_, clause, id) => {
    expect(shown('2026-02-20', `${AWAY}2026-02-19 ${clause}\n`)).toEqual([id]);
  });

  test('never silences young that are fed daily, as it does a dose of a course', () => {
    const young = '2026-02-12 A1: free-swimming, about 40\n';
    expect(shown('2026-02-15', `${AWAY}${young}`)).toEqual(['a1-rowan-1-feed']);
    const course = '2026-02-14 C1: treat "salt" 2 g/L, every 24 h, 3 doses, wait 14 days\n';
    expect(shown('2026-02-15', `${AWAY}${course}`)).toEqual([]);
  });

  test('ends on its day, or sooner by a later line', () => {
    expect(shown('2026-03-02', AWAY)).toContain('c1-water-change');
    expect(shown('2026-02-20', `${AWAY}2026-02-18 room: away until 2026-02-19\n`)).toContain('c1-water-change');
  });

  test('does not reach back before it was said', () => {
    expect(shown('2026-02-09', AWAY)).toContain('c1-water-change');
  });
});

describe('«all well»', () => {
  const silent = (on: string, more: string): string[] =>
    ask(on, more)
      .rows.filter(({ id }) => id === 'room-silence')
      .map(({ what }) => what);

  test('of a tank ends the silence of that tank alone', () => {
    expect(silent('2026-02-12', '')).toEqual(['look at A1, A2 and C1']);
    expect(silent('2026-02-12', '2026-02-11 A1: all well\n')).toEqual(['look at A2 and C1']);
  });

  test('of the room ends it for every tank, the ones not named that day too', () => {
    expect(silent('2026-02-12', '2026-02-11 room: all well\n')).toEqual([]);
    expect(silent('2026-02-12', '2026-02-11 A1: chasing\n2026-02-11 room: all well\n')).toEqual([]);
    expect(silent('2026-02-18', '2026-02-11 room: all well\n')).toEqual(['look at A1, A2 and C1']);
  });

  test('of a loop ends it for the tanks on it that day', () => {
    expect(silent('2026-02-12', '2026-02-11 Long: all well\n')).toEqual(['look at C1']);
    expect(silent('2026-02-12', '2026-02-04 A2: off the loop\n2026-02-11 Long: all well\n')).toEqual([
      'look at C1 and A2',
    ]);
  });

  test('closes nothing: a dispute, a rig, a fault stay open', () => {
    const open = '2026-02-10 A1: chasing\n2026-02-10 C1: rocks out\n2026-02-10 A2: fault "valve weeping"\n';
    const ids = ['a1-dispute', 'c1-rocks-out', 'a2-fault-valve-weeping'];
    expect(shown('2026-02-12', open)).toEqual(expect.arrayContaining(ids));
    expect(shown('2026-02-12', `${open}2026-02-11 room: all well\n2026-02-11 A1: all well\n`)).toEqual(
      expect.arrayContaining(ids),
    );
  });
});
