/** Jars to start anew: from which, into which, when, and where a food died out altogether. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { cultures } from '../../../src/questions/cultures.ts';
import { cultureDue } from '../../../src/questions/due/culture.ts';
import { journalOn } from '../../support/journal.ts';
import { rowOf, rowsOf } from './rows.ts';

const told = (on: string, lines: string): string[] =>
  rowsOf(cultureDue, on, lines).map(({ place, what, due, weight, close }) =>
    [`${place}: ${what}`, due, String(weight), close].join('; '),
  );
const START = 'start the next jar of microworm from it';

// Microworm gives from day 3, is split from day 14 and sours by day 35 (common practice, no source: `science/foods`).
describe('the next jar', () => {
  it('is started from the youngest, into one that went sour or was never started', () => {
    expect(
      rowOf(cultureDue, '2026-03-20', '2026-02-20 M1: started\n2026-02-25 M1: sour\n2026-03-01 M2: started\n'),
    ).toEqual({
      id: 'microworm-start',
      place: 'M2',
      what: START,
      due: '2026-03-04',
      weight: 1,
      why: 'the youngest is 19 days old, 1 jar alive where two are wanted; M1 went sour',
      close: 'M2: split to M1',
      caution: null,
      after: null,
      key: 'restart',
      pressing: false,
      steps: [
        'live: M2, 19 days old',
        'first harvest after 3 days, the next jar after 14 days, sour by 35 days',
        'the next is due 4 Mar',
      ],
      lines: [1, 2, 3],
    });
    expect(told('2026-03-20', '2026-03-10 M1: started\n')).toEqual([`M1: ${START}; 2026-03-13; 1; M1: split to M2`]);
  });
  it('of two that live is due after its days, from the younger into the older', () => {
    const two = '2026-03-01 M1: started\n2026-03-08 M2: started\n';
    expect(told('2026-03-20', two)).toEqual([`M2: ${START}; 2026-03-22; 0; M2: split to M1`]);
    const three = `2026-01-01 culture M3: microworm\n2026-03-01 M3: started\n2026-03-05 M1: started\n2026-03-08 M2: started\n`;
    expect(told('2026-03-20', three)).toEqual([`M2: ${START}; 2026-03-22; 0; M2: split to M3`]);
  });
  it('of one that takes months, or is the only one there is, waits for its day', () => {
    const vinegar = '2026-01-01 culture V1: vinegar eels\n2026-02-01 V1: started\n';
    expect(told('2026-03-20', vinegar)).toEqual([
      'V1: start the next jar of vinegar eel from it; 2026-06-01; 0; culture V2: vinegar eel; started',
    ]);
    const two = `2026-01-01 culture V2: vinegar eels\n${vinegar}`;
    expect(told('2026-03-20', two)[0]).toContain('; 2026-06-01; 0; V1: split to V2');
    const grindal = '2026-01-01 culture G1: grindal worms\n2026-03-10 G1: started\n';
    expect(told('2026-03-20', grindal)[0]).toContain('; 0; culture G2: grindal worm; started');
  });
  it('is no later than since a younger jar had its days, or since one is left of two; `cultures` tells the same day', () => {
    const both = '2026-01-01 M1: started\n2026-01-08 M2: started\n2026-02-05 M1: harvested\n';
    const due = (on: string, lines: string): string | undefined => told(on, lines)[0]?.split('; ')[1];
    // M2 had its 14 days on 22 January, and is likely sour since 12 February.
    expect(due('2026-02-14', both)).toBe('2026-01-22');
    // Gone on the 12th: till then there were two, and the younger was not yet 14 days old.
    const sour = '2026-01-01 M1: started\n2026-01-08 M2: started\n2026-01-12 M2: sour\n';
    expect(due('2026-01-13', sour)).toBe('2026-01-12');
    for (const [on, lines] of [
      ['2026-02-14', both],
      ['2026-01-13', sour],
    ] as const) {
      const food = cultures(journalOn(on, lines)).foods.find(({ of }) => of === 'microworm');
      expect(food?.restart === null || food === undefined ? null : isoDay(food.restart)).toBe(due(on, lines));
    }
  });
  it('of a single jar gets a name of its own, so that the one that still gives is not forgotten', () => {
    const one = (name: string, more = ''): string | undefined =>
      told('2026-03-20', `2026-01-01 culture ${name}: grindal worms\n2026-03-10 ${name}: started\n${more}`)[0]?.split(
        '; 0; ',
      )[1];
    expect(one('Worms')).toBe('culture Worms2: grindal worm; started');
    expect(one('G1', '2026-01-02 tank G2: 60 L; alone\n2026-01-02 tank g3: 60 L; alone\n')).toBe(
      'culture G4: grindal worm; started',
    );
    // As offered, it makes two jars, of which the older one still counts.
    const lines =
      '2026-01-01 culture G1: grindal worms\n2026-03-10 G1: started\n2026-03-20 culture G2: grindal worm; started\n';
    const { foods } = cultures(journalOn('2026-03-20', lines));
    expect(foods.find(({ of }) => of === 'grindal worm')?.jars.map(({ name, ageDays }) => [name, ageDays])).toEqual([
      ['G1', 10],
      ['G2', 0],
    ]);
    expect(told('2026-03-20', lines)[0]).toContain('; G2: split to G1');
  });
  it('is the keeper’s own business where a chore of theirs says when, until it is stopped', () => {
    const lines = '2026-03-10 M1: started\n2026-03-10 M1: restart every 2 weeks\n';
    expect(told('2026-03-20', lines)).toEqual([]);
    expect(told('2026-03-20', `${lines}2026-03-15 M1: stop restart\n`)).toHaveLength(1);
    expect(told('2026-03-20', '2026-03-10 M1: started\n2026-03-10 M1: harvest every 2 days\n')).toHaveLength(1);
  });
});

describe('a food that died out', () => {
  const lines = '2026-02-20 M1: started\n2026-02-25 M1: sour\n2026-02-01 M2: started\n2026-03-18 M2: sour\n';
  it('is started anew in the jar that ended last, from the day of its end', () => {
    expect(told('2026-03-20', lines)).toEqual([
      'M2: start microworm anew: no jar is alive; 2026-03-18; 1; M2: started',
    ]);
    const other = lines.replace('02-25 M1: sour', '03-19 M1: sour');
    expect(told('2026-03-20', other)).toEqual([
      'M1: start microworm anew: no jar is alive; 2026-03-19; 1; M1: started',
    ]);
  });
  it('by its age is told as likely sour', () => {
    expect(rowOf(cultureDue, '2026-03-20', '2026-02-05 M1: started\n').why).toBe('M1 is likely sour by its age');
  });
  it('was given up where nobody started it again, and never kept where no jar was started', () => {
    // Harvested past its days it lived ten days more.
    expect(told('2026-02-20', '2026-01-01 M1: started\n2026-02-05 M1: harvested\n')).toEqual([
      'M1: start microworm anew: no jar is alive; 2026-02-16; 1; M1: started',
    ]);
    expect(told('2026-08-20', lines)).toEqual([]);
    expect(told('2026-03-20', '')).toEqual([]);
  });
});
