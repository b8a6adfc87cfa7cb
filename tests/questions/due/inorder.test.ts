/** What a line did already is not asked for again: a change told after its test, warmth that is meant, a chore done early, a task said twice. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { due } from '../../../src/questions/due.ts';
import { loopsDue } from '../../../src/questions/due/loops.ts';
import { readingsDue } from '../../../src/questions/due/readings.ts';
import { day } from '../../support/events.ts';
import { journalOn } from '../../support/journal.ts';

const ROOM = [
  '2026-01-01 loop North: sump 240 L; prefilter 6 layers; spills at 80 mm',
  '2026-01-01 tank N1: 100 L; on North',
  '2026-01-01 tank N2: 100 L; on North',
  '2026-01-01 tank S1: 54 L; alone; sponge filter',
  '2026-01-01 species krib: Pelvicachromis taeniatus; cave spawner; water 24-27 C',
  '2026-01-01 group Oak: krib; 6; in S1',
];
const room = (on: string, lines: readonly string[]) => journalOn(on, [...ROOM, ...lines].join('\n'));
const asked = (on: string, lines: readonly string[]): readonly string[] =>
  readingsDue(room(on, lines)).map(({ what }) => what);

describe('a change of one day with its test', () => {
  it('counts where it is told after it, in one line or two', () => {
    expect(asked('2026-02-01', ['2026-02-01 S1: test NO2 0.5; water change 50 %'])).toEqual(['test NO2 again']);
    expect(asked('2026-02-02', ['2026-02-01 S1: test NO2 0.5', '2026-02-01 S1: water change 50 %'])).toEqual([
      'test NO2 again',
    ]);
    expect(asked('2026-02-01', ['2026-02-01 S1: test NO2 0.5', '2026-02-01 09:00 S1: wc 50 %'])).toEqual([
      'test NO2 again',
    ]);
  });

  it('does not count where it came before', () => {
    const change = 'change water, then test again';
    expect(asked('2026-02-01', ['2026-02-01 S1: water change 50 %; test NO2 0.5'])).toEqual([change]);
    expect(asked('2026-02-01', ['2026-02-01 09:00 S1: test NO2 0.5', '2026-02-01 08:00 S1: wc 50 %'])).toEqual([
      change,
    ]);
    expect(asked('2026-02-02', ['2026-02-02 S1: test NO2 0.5', '2026-02-01 S1: wc 50 %'])).toEqual([change]);
  });
});

describe('a tank that is heated on purpose', () => {
  const heated = '2026-02-01 S1: heat to 30 C';
  it('is not to be cooled while it is no warmer than that', () => {
    expect(asked('2026-02-02', [heated, '2026-02-02 S1: test 30.5 C'])).toEqual([]);
    expect(asked('2026-02-02', ['2026-02-02 S1: test 30.5 C'])).toEqual(['cool it slowly and read again']);
  });
  it('is where it gets warmer, is cold, or is heated no more', () => {
    expect(asked('2026-02-02', [heated, '2026-02-02 S1: test 33 C'])).toEqual(['cool it slowly and read again']);
    expect(asked('2026-02-02', [heated, '2026-02-02 S1: test 20 C'])).toEqual(['warm it slowly and read again']);
    expect(asked('2026-02-05', [heated, '2026-02-04 S1: heat normal', '2026-02-05 S1: test 30 C'])).toEqual([
      'cool it slowly and read again',
    ]);
  });
});

describe('what was put off', () => {
  const lines = [
    '2026-02-01 S1: water change 30 % every 2 days',
    '2026-02-03 S1: put off water change until 2026-02-12',
  ];
  const shown = (on: string, more: readonly string[]): readonly string[] =>
    due(room(on, [...lines, ...more]), { days: 0, minutes: null }).rows.flatMap(({ id }) =>
      id === 's1-water-change' ? [id] : [],
    );

  it('waits till then, unless it was done meanwhile', () => {
    expect(shown('2026-02-07', [])).toEqual([]);
    expect(shown('2026-02-07', ['2026-02-05 S1: water change 30 %'])).toEqual(['s1-water-change']);
    expect(shown('2026-02-07', ['2026-02-02 S1: water change 30 %'])).toEqual([]);
    expect(
      shown('2026-02-07', ['2026-02-05 S1: water change 30 %', '2026-02-06 S1: put off water change until 2026-02-12']),
    ).toEqual([]);
  });
});

describe('the clean before a spill', () => {
  it('is asked for no later than the window that its row tells', () => {
    const lines = [
      '2026-01-05 North: cleaned 6 of 6 layers; level 20 mm',
      '2026-01-20 North: level 35 mm',
      '2026-01-27 North: level 28 mm',
      '2026-02-02 North: level 32 mm',
      '2026-02-06 North: level 58 mm',
    ];
    const [row] = loopsDue(room('2026-02-06', lines));
    expect(row?.why).toMatch(/spills at 80 mm about 9–14 Feb$/);
    const [unread] = loopsDue(room('2026-04-20', lines.slice(0, 1)));
    expect(unread?.why).toBe(
      'last full clean 5 Jan, about every 6 weeks is usual; level 20 mm on 5 Jan, spills at 80 mm',
    );
    expect(row?.due.high === null || row === undefined ? null : isoDay(row.due.high)).toBe('2026-02-08');
  });
});

describe('a task said twice', () => {
  const shown = (on: string, lines: readonly string[]): readonly string[] =>
    due(room(on, lines), { days: 30, minutes: null }).rows.flatMap(({ kind, why }) => (kind === 'task' ? [why] : []));
  const twice = ['2026-02-01 N1: to do "air stone" by 2026-02-10', '2026-02-03 N1: to do "Air stone" by 2026-02-20'];

  it('is one, with its later deadline, and done once', () => {
    expect(shown('2026-02-05', twice)).toEqual(['to do since 1 Feb, by 20 Feb']);
    expect(shown('2026-02-05', [...twice, '2026-02-04 N1: did "air stone"'])).toEqual([]);
    expect(shown('2026-02-05', [...twice.slice(0, 1), '2026-02-04 N1: to do "air stone"'])).toEqual([
      'to do since 1 Feb, by 10 Feb',
    ]);
  });
});

describe('a jar to harvest every so often', () => {
  const shown = (on: string, lines: readonly string[]): readonly string[] =>
    due(room(on, ['2026-02-01 culture M1: microworm', '2026-02-01 M1: started; harvest every 3 days', ...lines]), {
      days: 0,
      minutes: null,
    }).rows.flatMap(({ what }) => (what === 'harvest' ? [what] : []));

  it('is asked for, but not while it is sour or just started anew', () => {
    const sour = ['2026-02-05 M1: harvested', '2026-02-09 M1: sour'];
    expect(shown('2026-02-08', sour)).toEqual(['harvest']);
    expect(shown('2026-02-10', sour)).toEqual([]);
    expect(shown('2026-02-11', [...sour, '2026-02-10 M1: started'])).toEqual([]);
    expect(shown('2026-02-14', [...sour, '2026-02-10 M1: started'])).toEqual(['harvest']);
  });

  it('counts from its new start, not from before it', () => {
    // Microworm gives from the third day on (common practice, no source: `science/foods`).
    const anew = [
      '2026-02-05 M1: harvested',
      '2026-02-20 M1: started',
      '2026-02-03 M1: put off harvest until 2026-03-30',
    ];
    const row = (on: string, lines: readonly string[]): { due: unknown; why: string } | undefined =>
      due(room(on, ['2026-02-01 culture M1: microworm', '2026-02-01 M1: started; harvest every 3 days', ...lines]), {
        days: 7,
        minutes: null,
      }).rows.find(({ what }) => what === 'harvest');
    expect(row('2026-02-21', anew)).toMatchObject({
      due: { low: day('2026-02-23'), high: day('2026-02-23') },
      state: 'ahead',
      why: 'started 20 Feb, every 3 days',
    });
    const next = [...anew, '2026-02-24 M1: harvested'];
    expect(row('2026-02-25', next)).toMatchObject({
      due: { high: day('2026-02-27') },
      why: 'last 24 Feb, every 3 days',
    });
  });
});
