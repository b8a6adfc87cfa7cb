/** Why a hold, a sickness, a course of treatment or a quarantine is told: its reckoning in words; and ways by trays and by loops left for a time. */
import { describe, expect, it } from 'vitest';
import { holds, holdsWhy } from '../../../src/questions/holds.ts';
import { journalOn } from '../../support/journal.ts';
import { ROOM } from '../../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const room = (...lines: readonly string[]) => journalOn('2026-04-10', `${lines.join('\n')}\n`);
/** The first row, a hold before a course, with its lines; those of the room's own set-up left out. */
const why = (...lines: readonly string[]) => {
  const [row] = holdsWhy(room(...lines));
  if (row === undefined) throw new Error('nothing is told');
  const { rule, source, steps } = row.because;
  const own = row.lines.map(({ line }) => line - SETUP).filter((line) => line > 0);
  return { title: row.title, rule, source, steps, lines: own };
};
/** The tanks that the one hold reaches. */
const reached = (...lines: readonly string[]): string[] =>
  holds(room(...lines))
    .holds.flatMap(({ tanks }) => tanks.map(({ tank }) => tank))
    .toSorted();

describe('a hold', () => {
  it('tells from when it is followed, how it came to each tank, which was off the loop in time, and when it is clear', () => {
    const lines = [
      '2026-03-01 A2: off the loop',
      '2026-03-20 C1: moved 2 Ash to A1',
      '2026-04-01 C1: hold "velvet"',
      '2026-04-02 C1: treat salt 2 g/L',
    ];
    const told = why(...lines);
    expect([told.title, told.steps]).toEqual([
      'C1 hold: velvet',
      [
        'first sign 1 Apr, so it is followed from 18 Mar',
        'A1: from 20 Mar, Ash came from C1',
        'B1: from 20 Mar, Ash came from C1 and shares the water of Long with A1',
        'C1: named in the line',
        'A2: not reached, off Long in time',
        'last sign 1 Apr, last dose 2 Apr',
        'clear on 30 Apr: 2 Apr and 28 days',
      ],
    ]);
    expect(told.lines.toSorted()).toEqual([1, 2, 3, 4]);
    expect(told.source).toContain('common practice, no source');
  });
  it('without a dose runs from its last sign; with doses to come it says till when', () => {
    expect(why('2026-04-01 C1: hold "velvet"').steps.slice(-2)).toEqual([
      'last sign 1 Apr, last dose none',
      'clear on 29 Apr: 1 Apr and 28 days',
    ]);
    const course = ['2026-04-01 C1: hold "velvet"', '2026-04-09 C1: treat salt 2 g/L, every 2 days, 3 doses'];
    expect(why(...course).steps.slice(-2)).toEqual([
      'last sign 1 Apr, last dose 9 Apr, doses still to come till 13 Apr',
      'clear on 11 May: 13 Apr and 28 days',
    ]);
  });
  it('reaches a tray by the water of its tank, and from there the loop', () => {
    expect(reached('2026-03-01 tray T1: in A1', '2026-04-01 A1: hold "velvet"')).toEqual(['A1', 'A2', 'B1', 'T1']);
    expect(reached('2026-03-01 tray T1: in A1', '2026-04-01 T1: hold "velvet"')).toEqual(['A1', 'A2', 'B1', 'T1']);
    const tray = why('2026-03-01 tray T1: in C2', '2026-04-01 C2: hold "velvet"');
    expect(tray.steps).toContain('T1: from 18 Mar, shares the water of C2');
    expect(tray.lines).toContain(1);
  });
  it('reaches a tank that was off its loop for a time from the day behind it', () => {
    const off = ['2026-03-10 A2: off the loop until 2026-03-25', '2026-04-01 A1: hold "velvet"'];
    expect(reached(...off)).toEqual(['A1', 'A2', 'B1']);
    expect(why(...off).steps).toContain('A2: from 26 Mar, shares the water of Long with A1');
    const long = ['2026-03-10 A2: off the loop', '2026-04-01 A1: hold "velvet"'];
    expect(reached(...long)).toEqual(['A1', 'B1']);
    expect(reached(...long, '2026-04-05 A2: back on the loop')).toEqual(['A1', 'A2', 'B1']);
  });
  it('reaches no tank that was retired before it can have come', () => {
    expect(
      reached('2026-03-10 B1: Pebble moved to C2', '2026-03-11 B1: retired', '2026-04-01 A1: hold "velvet"'),
    ).toEqual(['A1', 'A2']);
  });
});

describe('a sickness', () => {
  it('asks whether it is catching, and names the tanks of its water', () => {
    const asked = why('2026-04-01 A1: sick "white spot"');
    expect([asked.title, asked.steps]).toEqual([
      'A1 sick: white spot',
      ['white spot, seen 1 Apr: nobody said yet whether it is catching', 'on the same water that day: A2 and B1'],
    ]);
    expect(holds(room('2026-04-01 A1: sick "white spot"')).sick[0]?.close).toBe('A1: catching');
  });
  it('that is catching says so, by the line that answered; the line offered is a hold', () => {
    const answered = why('2026-04-01 C1: sick "white spot"', '2026-04-03 C1: catching');
    expect([answered.steps, answered.lines]).toEqual([
      ['white spot, seen 1 Apr: catching', 'no other tank shared its water that day'],
      [1, 2],
    ]);
    expect(holds(room('2026-04-01 C1: sick "white spot", catching')).sick[0]?.close).toBe('C1: hold "white spot"');
  });
});

describe('a course of treatment', () => {
  it('tells the doses written and still to come, and the days of waiting that its line gives', () => {
    const told = why(
      '2026-04-07 C1: treat salt 2 g/L, every 2 days, 3 doses, wait 20 days',
      '2026-04-09 C1: dosed 5 g salt',
    );
    expect(told).toMatchObject({
      title: 'C1 treatment: salt',
      source: 'the journal',
      steps: [
        '2 doses written of 3, the last on 9 Apr',
        '1 still to come, the last not before 11 Apr',
        'clear on 1 May: 20 days after the last dose',
      ],
      lines: [1, 2],
    });
  });
  it('without them goes by the usual days, and names every tank on the treated water', () => {
    expect(why('2026-04-07 A1: treat salt 2 g/L')).toMatchObject({
      source: '14 days is ours: write wait … days to change it',
      steps: [
        '1 dose written, the last on 7 Apr',
        'clear on 21 Apr: 14 days after the last dose',
        'treated with it: A1, A2 and B1',
      ],
    });
  });
  it('all of whose doses were given has none to come', () => {
    const { steps } = why('2026-04-07 C1: treat salt 2 g/L, every 2 days, 2 doses', '2026-04-09 C1: dosed 5 g salt');
    expect(steps).toEqual(['2 doses written of 2, the last on 9 Apr', 'clear on 23 Apr: 14 days after the last dose']);
  });
});

describe('a quarantine', () => {
  it('tells its days, and what they rest on', () => {
    expect(why('2026-03-20 Q1: bought 6 krib at 4.00 each as Elm')).toMatchObject({
      title: 'Q1 quarantine',
      source: 'three to four weeks: common practice, no source',
      steps: ['from 20 Mar to 17 Apr, 28 days'],
      lines: [1],
    });
    expect(why('2026-04-01 C2: quarantine 10 days')).toMatchObject({
      source: 'the journal',
      steps: ['from 1 Apr to 11 Apr, 10 days'],
    });
  });
  it('that fish came into says so', () => {
    expect(why('2026-04-01 C2: quarantine 28 days', '2026-04-05 C1: moved 2 Ash to C2')).toMatchObject({
      steps: ['fish came in on 5 Apr, after the line that gives the days', 'from 5 Apr to 3 May, 28 days'],
      lines: [1, 2],
    });
  });
});
