/** Which lines count as doing a chore, in which water, and how much of it. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { doneSinceWhole } from '../../src/state/done.ts';
import { journalOn } from '../support/journal.ts';

/** `02-10`, or `02-10 15 %` of a part, for the first chore that was set. */
const done = (chore: string, ...lines: readonly string[]): string[] => {
  const text = [`2026-02-01 ${chore}`, ...lines.map((line) => `2026-${line}`)].join('\n');
  const room = journalOn('2026-03-20', `${text}\n`);
  const [standing] = room.chores.standing;
  if (standing === undefined) throw new Error(`no chore: ${chore}`);
  return doneSinceWhole(room, standing).map(({ day, told, part }) =>
    [isoDay(day).slice(5), told === '' ? '' : ` ${told}`, told === '' && part < 1 ? ' in part' : ''].join(''),
  );
};

describe('a water change', () => {
  const chore = 'C1: water change 30 % every 7 days';
  it('counts in its own tank, from four fifths of what was asked as the whole', () => {
    expect(done(chore, '02-10 C1: water change 24 %')).toEqual(['02-10']);
    expect(done(chore, '02-10 C1: water change 15 %')).toEqual(['02-10 15 %']);
    expect(done(chore, '02-10 C2: water change 30 %')).toEqual([]);
  });
  it('counts from the last day on which all of it was done, parts since then beside it', () => {
    const lines = ['02-05 C1: water change 10 %', '02-10 C1: water change 30 %', '02-12 C1: water change 10 %'];
    expect(done(chore, ...lines)).toEqual(['02-10', '02-12 10 %']);
    expect(done(chore, ...lines, '02-14 C1: water change 30 %')).toEqual(['02-14']);
    expect(done(chore, ...lines.toSpliced(1, 1))).toEqual(['02-05 10 %', '02-12 10 %']);
  });
  it('of two on one day counts what stays of the old water', () => {
    // 1 − 0.9 × 0.9
    expect(done(chore, '02-10 C1: water change 10 %', '02-10 C1: water change 10 %')).toEqual(['02-10 19 %']);
    expect(done(chore, '02-10 C1: water change 15 %', '02-10 C1: water change 15 %')).toEqual(['02-10']);
  });
  it('in litres counts by the live water of the tank', () => {
    // 54 L by its measures are some 46 L of water: a third of what was asked
    expect(done(chore, '02-10 C1: water change 5 L')).toEqual(['02-10 11 %']);
    expect(done(chore, '02-10 C1: water change 13 L')).toEqual(['02-10']);
    expect(done('C1: water change 20 L every 7 days', '02-10 C1: water change 22 %')).toEqual(['02-10 22 %']);
  });
  it('where nobody knows the litres, or how much was asked, counts as the whole', () => {
    expect(done('C1: water change every 7 days', '02-10 C1: water change 5 %')).toEqual(['02-10']);
    const bare = 'tank Z1: alone\n2026-02-01 Z1: water change 30 % every 7 days';
    expect(done(bare, '02-10 Z1: water change 5 L')).toEqual(['02-10']);
    expect(done(bare, '02-10 Z1: water change 5 %')).toEqual(['02-10 5 %']);
  });
  it('of a range counts its middle, and of one that is open no more than twice the least', () => {
    expect(done(chore, '02-10 C1: water change 10-20 %')).toEqual(['02-10 15 %']);
    expect(done(chore, '02-10 C1: water change 10+ %')).toEqual(['02-10 15 %']);
  });
  it('of all the room is that share of each water', () => {
    expect(done(chore, '02-10 room: water change 20 %')).toEqual(['02-10 20 %']);
    expect(done('Long: water change 30 % every 7 days', '02-10 room: water change 20 %')).toEqual(['02-10 20 %']);
  });
});

describe('a water change of a loop', () => {
  const long = 'Long: water change 30 % every 7 days';
  it('is one of each tank that is on it that day', () => {
    const tank = 'A1: water change 30 % every 7 days';
    expect(done(tank, '02-10 Long: water change 20 %')).toEqual(['02-10 20 %']);
    expect(done(tank, '02-05 A1: off the loop', '02-10 Long: water change 20 %')).toEqual([]);
  });
  it('is as little of it as the litres of one tank are', () => {
    // half of 136 L, in the 583 L of loop and sump
    expect(done(long, '02-10 A1: water change 50 %')).toEqual(['02-10 12 %']);
    expect(done(long, '02-10 A1: water change 68 L')).toEqual(['02-10 12 %']);
    expect(done(long, '02-10 C1: water change 50 %')).toEqual([]);
    expect(done(long, '02-05 A1: off the loop', '02-10 A1: water change 50 %')).toEqual([]);
  });
  it('in litres counts by all its water', () => {
    expect(done(long, '02-10 Long: water change 58 L')).toEqual(['02-10 10 %']);
    expect(done('A1: water change 30 % every 7 days', '02-10 Long: water change 58 L')).toEqual(['02-10 10 %']);
  });
});

describe('a prefilter', () => {
  const chore = 'Long: clean prefilter every 6 weeks';
  it('is cleaned from the last full clean on, with its parts since', () => {
    const lines = [
      '02-02 Long: cleaned 2 of 6 layers',
      '02-05 Long: cleaned 6 of 6 layers',
      '02-20 Long: cleaned 3 layers',
    ];
    expect(done(chore, ...lines)).toEqual(['02-05', '02-20 3 of 6 layers']);
    expect(done(chore, lines[0] ?? '')).toEqual(['02-02 2 of 6 layers']);
    expect(done(chore, ...lines, '02-25 Long: cleaned all layers')).toEqual(['02-25']);
  });
  it('is cleaned in its own loop', () => {
    expect(done(chore)).toEqual([]);
    expect(done(chore, '02-02 loop Low: sump 90 L; prefilter 2 layers', '02-10 Low: cleaned 2 layers')).toEqual([]);
  });
});

describe('any other chore', () => {
  it.each([
    ['Long: clean media every month', '02-10 Long: cleaned media', '02-10 Long: rinsed sponge'],
    ['C1: rinse sponge every month', '02-10 C1: rinsed sponge', '02-10 C1: cleaned media'],
    ['C1: rinse sponge every month', '02-10 C1: rinsed sponge', '02-10 C2: rinsed sponge'],
    ['C1: top up every 3 days', '02-10 C1: topped up 2 L', '02-10 C2: topped up 2 L'],
    ['C1: test every 7 days', '02-10 C1: test pH 7', '02-10 C2: test pH 7'],
    ['A1: test every 7 days', '02-10 Long: test pH 7', '02-10 C1: test pH 7'],
    ['Long: test every 7 days', '02-10 A1: test pH 7', '02-10 C1: test pH 7'],
    ['C1: feed every 2 days', '02-10 C1: fed flake', '02-10 C2: fed flake'],
    ['M1: harvest every 3 days', '02-10 M1: harvested', '02-10 M2: harvested'],
    ['M1: restart every month', '02-10 M1: started', '02-10 M2: started'],
    ['room: "press the button" every month', '02-10 room: did "press the button"', '02-10 room: did "push the button"'],
    ['C1: "scrape glass" every month', '02-10 C1: did "scrape glass"', '02-10 C2: did "scrape glass"'],
  ])('%s is done by its own line in its own place', (chore, by, not) => {
    expect(done(chore, by)).toEqual(['02-10']);
    expect(done(chore, not)).toEqual([]);
  });
  it('counts by the last line of it', () => {
    const chore = 'C1: rinse sponge every month';
    expect(done(chore, '02-10 C1: rinsed sponge', '02-20 C1: rinsed sponge')).toEqual(['02-20']);
    expect(done('M1: harvest every 3 days', '02-10 M1: harvested', '02-12 M1: harvested')).toEqual(['02-12']);
  });
});
