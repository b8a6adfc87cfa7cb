/** Several sicknesses, holds, quarantines and courses at once: which of them a line answers, goes on with or ends. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';
import { ROOM } from '../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const roomOf = (...lines: readonly string[]): Room => journalOn('2026-04-30', `${lines.join('\n')}\n`);
const line = (place: { line: number } | null | undefined): string => (place ? String(place.line - SETUP) : '-');
/** `velvet by 3`, or `velvet open`. */
const ended = (text: string, over: { place: { line: number } } | null): string =>
  over === null ? `${text} open` : `${text} over by ${line(over.place)}`;
const holds = (...lines: readonly string[]): string[] =>
  roomOf(...lines).health.holds.map(({ text, over, tanks }) => `${tanks.join(' ')}: ${ended(text, over)}`);
const sick = (...lines: readonly string[]): string[] =>
  roomOf(...lines).health.sick.map(
    ({ text, catching, over }) =>
      `${ended(text, over)}, ${catching === null ? 'asked' : catching ? 'catching' : 'not'}`,
  );
const kinds = (...lines: readonly string[]): string[] =>
  roomOf(...lines).problems.map(({ kind, weight }) => `${kind}, ${weight}`);

describe('an answer', () => {
  const two = ['2026-03-01 A1: sick "white spot", not catching', '2026-03-05 A1: sick "bloat"'];
  it('is to the sickness that was not answered yet', () => {
    expect(sick(...two, '2026-03-06 A1: catching')).toEqual(['white spot open, not', 'bloat open, catching']);
  });
  it('where all were answered, corrects the last', () => {
    expect(sick(...two, '2026-03-06 A1: not catching', '2026-03-07 A1: catching')).toEqual([
      'white spot open, not',
      'bloat open, catching',
    ]);
  });
  it('is to none that is over, or of another tank', () => {
    const over = [
      '2026-03-01 C1: sick "white spot", catching',
      '2026-03-02 C1: hold "white spot"',
      '2026-03-30 C1: hold over',
    ];
    expect(kinds(...over, '2026-03-31 C1: not catching')).toEqual(['nothing-sick, stops']);
    expect(kinds('2026-03-01 C1: sick "white spot"', '2026-03-02 C2: catching')).toEqual(['nothing-sick, stops']);
  });
});

describe('the end of a hold', () => {
  const two = ['2026-03-01 C1: hold "velvet"', '2026-03-02 C2: hold "white spot"'];
  it('is that of its own tank, and of no other', () => {
    expect(holds(...two, '2026-03-30 C1: hold over')).toEqual(['C1: velvet over by 3', 'C2: white spot open']);
    expect(holds(...two, '2026-03-30 C1: hold over', '2026-03-31 C1: hold over')).toEqual([
      'C1: velvet over by 3',
      'C2: white spot open',
    ]);
  });
  it('for the whole room is that of all', () => {
    expect(holds(...two, '2026-03-30 room: hold over')).toEqual(['C1: velvet over by 3', 'C2: white spot over by 3']);
  });
  it('of one of its tanks alone lets that tank go, and the hold stays', () => {
    const room = roomOf('2026-03-01 Long: hold "velvet"', '2026-03-30 A1: hold over');
    expect(room.health.holds.map(({ text, over }) => ended(text, over))).toEqual(['velvet open']);
    expect(room.health.released.map(({ tanks }) => tanks)).toEqual([['A1']]);
  });
  it('ends the sickness of its tanks, and no sickness elsewhere', () => {
    const ill = ['2026-03-01 C1: sick "velvet", catching', '2026-03-01 C2: sick "bloat"'];
    expect(sick(...ill, '2026-03-01 C1: hold "velvet"', '2026-03-30 C1: hold over')).toEqual([
      'velvet over by 4, catching',
      'bloat open, asked',
    ]);
  });
  it('of one tank leaves a sickness open that others have as well', () => {
    const ill = [
      '2026-03-01 Long: sick "velvet", catching',
      '2026-03-01 A1: hold "velvet"',
      '2026-03-30 A1: hold over',
    ];
    expect(sick(...ill)).toEqual(['velvet open, catching']);
    expect(sick(...ill.slice(0, 1), '2026-03-01 Long: hold "velvet"', '2026-03-30 Long: hold over')).toEqual([
      'velvet over by 3, catching',
    ]);
  });
  it('that nobody began is doubted', () => {
    expect(kinds('2026-03-30 C1: hold over')).toEqual(['nothing-to-end, doubt']);
    expect(kinds(...two, '2026-03-30 room: hold over', '2026-03-31 C1: hold over')).toEqual(['nothing-to-end, doubt']);
  });
});

describe('a hold that is written again', () => {
  const velvet = '2026-03-01 C1: hold "velvet"';
  const again = (...lines: readonly string[]): string[] =>
    roomOf(...lines).health.holds.map(
      (hold) => `${hold.tanks.join(' ')}: ${hold.again.map(({ place }) => line(place)).join()}`,
    );
  it('for the same tank and reason is a new sign of it, in whatever case', () => {
    expect(again(velvet, '2026-03-10 C1: hold "Velvet"')).toEqual(['C1: 2']);
    expect(again('2026-03-01 Long: hold "velvet"', '2026-03-10 A1: hold "velvet"')).toEqual(['A1 A2 B1: 2']);
  });
  it.each([
    ['for another reason', '2026-03-10 C1: hold "white spot"', 'C1'],
    ['for another tank', '2026-03-10 C2: hold "velvet"', 'C2'],
    ['for more tanks', '2026-03-10 Long: hold "velvet"', 'A1 A2 B1'],
  ])('%s is another', (_, second, tanks) => {
    expect(again(velvet, second)).toEqual(['C1: ', `${tanks}: `]);
  });
  it('for a tank and others of its water is another too', () => {
    expect(again('2026-03-01 A1: hold "velvet"', '2026-03-10 Long: hold "velvet"')).toEqual(['A1: ', 'A1 A2 B1: ']);
  });
  it('once it was over begins anew', () => {
    expect(holds(velvet, '2026-03-20 C1: hold over', '2026-03-25 C1: hold "velvet"')).toEqual([
      'C1: velvet over by 2',
      'C1: velvet open',
    ]);
  });
  it('for several tanks in one line is one hold of all of them', () => {
    expect(holds('2026-03-01 C1 and C2: hold "velvet"')).toEqual(['C1 C2: velvet open']);
  });
});

describe('the end of a quarantine', () => {
  const ends = (...lines: readonly string[]): string[] =>
    roomOf(...lines).health.quarantines.map(({ tanks, ended: end }) => `${tanks.join(' ')} ${line(end?.place)}`);
  const two = ['2026-03-01 C1: quarantine 28 days', '2026-03-02 C2: quarantine 28 days'];
  it('is that of its own tank', () => {
    expect(ends(...two, '2026-03-30 C1: quarantine over')).toEqual(['C1 3', 'C2 -']);
    expect(kinds(...two, '2026-03-30 C1: quarantine over')).toEqual([]);
  });
  it('stands where it was ended twice: the second ends nothing', () => {
    expect(ends(...two, '2026-03-30 C1: quarantine over', '2026-03-31 C1: quarantine over').slice(0, 2)).toEqual([
      'C1 3',
      'C2 -',
    ]);
    expect(kinds(...two, '2026-03-30 C1: quarantine over', '2026-03-31 C1: quarantine over')).toEqual([
      'nothing-to-end, doubt',
    ]);
  });
  it('needs no line that began it in a quarantine tank alone', () => {
    expect(kinds('2026-03-30 Q1: quarantine over')).toEqual([]);
    expect(kinds('2026-03-30 C1: quarantine over')).toEqual(['nothing-to-end, doubt']);
  });
});

describe('a course', () => {
  const courses = (...lines: readonly string[]): string[] =>
    roomOf(...lines).health.treatments.map(({ product, given, doses, every, wait }) =>
      [product, given.length, 'of', doses ?? '?', 'every', every?.likely ?? '?', 'wait', wait?.likely ?? '?'].join(' '),
    );
  it('takes from later lines what the first did not say, and keeps what it did', () => {
    expect(
      courses(
        '2026-03-01 C1: treat salt 2 g/L',
        '2026-03-03 C1: treat salt 2 g/L, every 2 days, 3 doses, wait 20 days',
      ),
    ).toEqual(['salt 2 of 3 every 2 wait 20']);
    expect(
      courses(
        '2026-03-01 C1: treat salt 2 g/L, every 2 days, 4 doses, wait 10 days',
        '2026-03-03 C1: treat salt 2 g/L, every 3 days, 3 doses, wait 20 days',
      ),
    ).toEqual(['salt 2 of 4 every 2 wait 10']);
  });
  it('goes on for ten days after its last dose, or twice the days between two', () => {
    const first = '2026-03-01 C1: treat salt 2 g/L';
    expect(courses(first, '2026-03-11 C1: treat salt 2 g/L')).toHaveLength(1);
    expect(courses(first, '2026-03-12 C1: treat salt 2 g/L')).toHaveLength(2);
    expect(courses(first, '2026-03-10 C1: treat salt 2 g/L', '2026-03-19 C1: treat salt 2 g/L')).toHaveLength(1);
    const weekly = '2026-03-01 C1: treat salt 2 g/L, every 7 days';
    expect(courses(weekly, '2026-03-15 C1: treat salt 2 g/L')).toHaveLength(1);
    expect(courses(weekly, '2026-03-16 C1: treat salt 2 g/L')).toHaveLength(2);
  });
  it('of which all doses were given is over: the next dose begins another', () => {
    const full = ['2026-03-01 C1: treat salt 2 g/L, 2 doses', '2026-03-02 C1: treat salt 2 g/L'];
    expect(courses(...full)).toHaveLength(1);
    expect(courses(...full, '2026-03-03 C1: treat salt 2 g/L')).toHaveLength(2);
  });
  it('by one line for several tanks of one water is one dose of it', () => {
    expect(courses('2026-03-01 A1 and A2: treat salt 2 g/L')).toEqual(['salt 1 of ? every ? wait ?']);
  });
});
