/** Which levels of a loop speak of clogging: not those that were replaced, read with the pump off, or while the sump was low or just topped up. */
import { describe, expect, it } from 'vitest';
import { middle } from '../../src/core/interval.ts';
import { readableLevels } from '../../src/questions/levels.ts';
import { journalOn } from '../support/journal.ts';

const sorted = (...lines: readonly string[]): { kept: number[]; dropped: string[] } => {
  const room = journalOn('2026-04-10', `${lines.join('\n')}\n`);
  const long = room.plumbing.loops.get('Long');
  if (long === undefined) throw new Error('no loop');
  const { kept, dropped } = readableLevels(room, long);
  return {
    kept: kept.map(({ level }) => middle(level)),
    dropped: dropped.map(({ level, why }) => `${String(middle(level.level))}: ${why}`),
  };
};
const CLEAN = '2026-02-01 Long: cleaned 6 of 6 layers; level 20 mm';

describe('a level', () => {
  it('that another of its day replaced is read no more', () => {
    expect(sorted(CLEAN, '2026-02-08 Long: level 26 mm', '2026-02-08 Long: level 28 mm').kept).toEqual([20, 28]);
  });
  it.each([
    ['pump off', 'read with the pump off'],
    ['the pump was stopped for feeding', 'read with the pump off'],
    ['sump low', 'read with the sump low'],
    ['some water had evaporated', 'read with the sump low'],
    ['just topped up', 'read on the day of a top-up'],
  ])('with the remark "%s" was %s', (remark, why) => {
    expect(sorted(CLEAN, `2026-02-08 Long: level 12 mm "${remark}"`)).toEqual({ kept: [20], dropped: [`12: ${why}`] });
  });
  it('with any other remark counts', () => {
    expect(sorted(CLEAN, '2026-02-08 Long: level 26 mm "a bit brown"').kept).toEqual([20, 26]);
  });
});

describe('a top-up', () => {
  const later = ['2026-02-08 Long: level 26 mm', '2026-02-15 Long: level 30 mm', '2026-02-22 Long: level 36 mm'];
  it('of the loop takes the level of its day out', () => {
    expect(sorted(CLEAN, ...later, '2026-02-15 Long: topped up 20 L')).toEqual({
      kept: [20, 26, 36],
      dropped: ['30: read on the day of a top-up'],
    });
  });
  it('of other water takes none out', () => {
    expect(sorted(CLEAN, ...later, '2026-02-15 C1: topped up 5 L').kept).toEqual([20, 26, 30, 36]);
  });
  it('of a keeper who tops up at most readings takes none out, since they compare', () => {
    const often = ['2026-02-08', '2026-02-15', '2026-02-22'].map((on) => `${on} Long: topped up 20 L`);
    expect(sorted(CLEAN, ...later, ...often).kept).toEqual([20, 26, 30, 36]);
    expect(sorted(CLEAN, ...later, ...often.slice(1)).kept).toEqual([20, 26]);
  });
});
