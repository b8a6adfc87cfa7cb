/** An overflow of a loop that was seen is a level at the lip: the forecast ends there, and what comes after it learns from it. */
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { due } from '../../src/questions/due.ts';
import { loops } from '../../src/questions/loops.ts';
import { journalOn } from '../support/journal.ts';

const RISING = [
  '2026-01-11 Long: cleaned 6 of 6 layers; level 20 mm',
  '2026-01-25 Long: level 28 mm',
  '2026-02-04 Long: level 42 mm',
];

function loopOn(on: string, ...lines: readonly string[]) {
  const [row] = loops(journalOn(on, `${lines.join('\n')}\n`));
  if (row === undefined) throw new Error('no loop');
  const { level, spill, notes, outlook, bought } = row;
  return {
    level: level === null ? null : `${String(level.mm.likely)} on ${isoDay(level.on)}`,
    spill: [spill?.low ?? null, spill?.high ?? null].map((day) => (day === null ? 'open' : isoDay(day))).join(' '),
    notes,
    outlook,
    bought,
  };
}

/** What is asked of the loop. */
const asked = (on: string, ...lines: readonly string[]): string[] =>
  due(journalOn(on, `${lines.join('\n')}\n`), { days: 7, minutes: null })
    .rows.filter(({ place }) => place === 'Long')
    .map(({ what, why }) => `${what}: ${why}`);

describe('an overflow that was seen', () => {
  test('is the day of the spill, whatever the levels before would say', () => {
    const before = loopOn('2026-02-10', ...RISING);
    expect(before.spill.slice(0, 10)).toBe('2026-03-03');
    const after = loopOn('2026-02-10', ...RISING, '2026-02-08 Long: overflowed');
    expect(after).toMatchObject({
      level: '80 on 2026-02-08',
      spill: '2026-02-08 2026-02-08',
      notes: ['overflowed, not cleaned since'],
      outlook: null,
    });
  });

  test('asks for the clean once: by its own row while it runs, by the level once that is over', () => {
    const over = [...RISING, '2026-02-08 Long: overflowed'];
    expect(asked('2026-02-10', ...over)).toEqual([
      'overflowed: stop it, clean the prefilter, see to the media: open since 8 Feb',
    ]);
    expect(asked('2026-02-10', ...over, '2026-02-08 Long: fixed')).toEqual([
      'clean the prefilter, it spilled: overflowed on 8 Feb, not cleaned since',
    ]);
    expect(asked('2026-02-10', ...over, '2026-02-08 Long: fixed; cleaned 6 of 6 layers')).toEqual([]);
  });

  test('is over the mark of a chore that goes by the level', () => {
    const chore = '2026-01-02 Long: clean prefilter every 6 weeks or level above 65 mm';
    const over = [chore, ...RISING, '2026-02-08 Long: overflowed; fixed'];
    expect(asked('2026-02-10', ...over)).toEqual([
      'clean the prefilter, all 6 layers: above your mark of 65 mm; last full clean 11 Jan, every 6 weeks; overflowed on 8 Feb, not cleaned since',
    ]);
  });

  test('is none of the prefilter where a lower level was read after it with nothing cleaned', () => {
    const over = [...RISING, '2026-02-08 Long: overflowed; fixed'];
    expect(loopOn('2026-02-10', ...over, '2026-02-08 Long: level 79 mm').level).toBe('79 on 2026-02-08');
    expect(loopOn('2026-02-10', ...over, '2026-02-09 Long: level 44 mm')).toMatchObject({
      level: '44 on 2026-02-09',
      notes: [],
    });
    const cleaned = [...over, '2026-02-09 Long: cleaned 6 of 6 layers; level 20 mm'];
    expect(loopOn('2026-02-10', ...cleaned).level).toBe('20 on 2026-02-09');
  });

  test('is none where its remark tells of another cause', () => {
    expect(loopOn('2026-02-10', ...RISING, '2026-02-08 Long: overflowed "a sock over the drain"').level).toBe(
      '42 on 2026-02-04',
    );
    expect(loopOn('2026-02-10', ...RISING, '2026-02-08 Long: overflowed "sponges clogged"').level).toBe(
      '80 on 2026-02-08',
    );
  });

  test.each([
    ['with the pump off', '2026-02-07 Long: pump off'],
    ['with the power off', '2026-02-07 room: power off'],
  ])('%s is no spill of the prefilter', (_, line) => {
    expect(loopOn('2026-02-10', ...RISING, line, '2026-02-08 Long: overflowed').level).toBe('42 on 2026-02-04');
  });

  test('of a tank says nothing of its loop', () => {
    expect(loopOn('2026-02-10', ...RISING, '2026-02-08 A1: overflowed').level).toBe('42 on 2026-02-04');
  });

  test('tells a partial clean what it bought from that day on', () => {
    const over = [...RISING, '2026-02-08 Long: overflowed', '2026-02-08 Long: cleaned 2 of 6 layers; fixed'];
    const { outlook, bought } = loopOn('2026-02-10', ...over);
    const at = journalOn('2026-02-08', '').on;
    expect(bought?.days.low).toBe((outlook?.spill.low ?? 0) - at);
    expect(bought?.days.high).toBe((outlook?.spill.high ?? 0) - at);
  });
});

test('cleans that ended in an overflow teach how long one lasts', () => {
  const cleans = ['2026-02-01', '2026-03-13', '2026-04-22', '2026-06-01'];
  const lines = cleans.flatMap((clean, index) => [
    ...(index === 0 ? [] : [`${clean} Long: overflowed; fixed`]),
    `${clean} Long: cleaned 6 of 6 layers`,
  ]);
  const { outlook } = loopOn('2026-06-10', ...lines);
  // 40 days from each clean to its overflow
  expect(outlook?.cycles).toBe(3);
  expect(outlook?.own?.likely).toBe(40);
});
