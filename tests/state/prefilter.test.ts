import { describe, expect, it } from 'vitest';
import { measure } from '../../src/core/quantity.ts';
import { loop, roomOn, type Line } from '../support/events.ts';
import { cleaned, level, SET_UP } from '../support/waters.ts';
import { trueLevels } from '../../src/state/prefilter.ts';

const long = (lines: readonly Line[]) => {
  const room = roomOn('2026-03-01', [...SET_UP, ...lines]);
  const found = room.plumbing.loops.get('Long');
  if (found === undefined) throw new Error('no loop');
  return { loop: found, problems: room.problems };
};

describe('levels', () => {
  it('below the lip is read from the height of the spill', () => {
    const below: Line = ['2026-02-10', loop('Long'), { kind: 'level', level: measure('mm', 22), from: 'lip' }];
    expect(long([below]).loop.levels[0]?.level.likely).toBe(58);
  });

  it('the later-filed untimed level of a day stands, the earlier stays in the history', () => {
    const seen = long([level('2026-02-10', 54), level('2026-02-10', 45)]).loop;
    expect(seen.levels).toHaveLength(2);
    expect(trueLevels(seen).map(({ level: { likely } }) => likely)).toEqual([45]);
  });

  it('before and after a clean of the same day are two levels', () => {
    const seen = long([level('2026-02-10', 70), cleaned('2026-02-10', 6), level('2026-02-10', 20)]).loop;
    expect(trueLevels(seen)).toHaveLength(2);
  });

  it('above the spill is doubted, far above it does not count', () => {
    const over = long([level('2026-02-10', 84)]);
    expect(over.problems.map(({ kind, weight }) => [kind, weight])).toEqual([['level-above-spill', 'doubt']]);
    expect(over.loop.levels).toHaveLength(1);
    const absurd = long([level('2026-02-10', 540)]);
    expect(absurd.problems[0]?.weight).toBe('stops');
    expect(absurd.problems[0]?.also).toHaveLength(1);
    expect(absurd.loop.levels).toHaveLength(0);
  });
});

describe('layers', () => {
  it('cannot be more than there are', () => {
    for (const [layers, of] of [
      [7, 6],
      [8, null],
      [0, 6],
    ] as const) {
      const seen = long([cleaned('2026-02-10', layers, of)]);
      expect(seen.problems.map(({ kind, weight }) => [kind, weight])).toEqual([['impossible-layers', 'stops']]);
      expect(seen.loop.cleans).toEqual([]);
    }
  });

  it('another number of layers than the loop has is doubted', () => {
    expect(long([cleaned('2026-02-10', 2, 4)]).problems.map(({ kind }) => kind)).toEqual(['other-layers']);
  });
});
