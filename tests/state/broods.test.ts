import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import type { DayWindow } from '../../src/core/interval.ts';
import { bodiesIn, partIn } from '../../src/state/bodies.ts';
import { since } from '../../src/state/broodlife.ts';
import type { Room } from '../../src/state/draft.ts';
import { roomOn } from '../support/events.ts';
import { sample } from '../support/fishroom.ts';

function days(window: DayWindow | null | undefined): string | null {
  if (!window) return null;
  return [window.low, window.high].map((day) => (day === null ? '' : isoDay(day))).join('/');
}
const brood = (r: Room, name: string) => {
  const found = r.stock.broods.get(name);
  if (!found) throw new Error(`no ${name} among ${[...r.stock.broods.keys()].join()}`);
  return found;
};

describe('a brood from eggs to its first move', () => {
  it('is 13 days from laying, and swims since between the last look at wrigglers and the first at swimmers', () => {
    const r = roomOn('2026-02-15', sample);
    expect(r.problems).toEqual([]);
    const rowan = brood(r, 'Rowan-1');
    expect(since(rowan.laid, r.on)).toEqual({ low: 13, likely: 13, high: 13 });
    expect(days(rowan.swam)).toBe('2026-02-05/2026-02-10');
  });
  it('knows no swim-up on the day before it was seen', () => {
    expect(brood(roomOn('2026-02-09', sample), 'Rowan-1').swam).toBeNull();
  });
  it('counts nothing twice after a move', () => {
    const r = roomOn('2026-03-10', sample);
    expect(r.problems).toEqual([]);
    const rowan = brood(r, 'Rowan-1');
    expect(partIn(rowan, 'C1')).toEqual({ low: 34, likely: 45, high: 56 });
    expect(partIn(rowan, 'A1')).toEqual({ low: 1, likely: 25, high: 106 });
    expect(rowan.total).toEqual({ low: 35, likely: 70, high: 140 });
    expect(bodiesIn(r, 'A1').map((body) => body.name)).toEqual(['Rowan', 'Rowan-1']);
  });
});
