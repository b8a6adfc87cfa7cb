/** Whatever is looked at, in whatever order: windows only narrow, and no later day shows on an earlier one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { day, eventsOf, roomOn, type Line } from '../support/events.ts';
import { laid, look, named, setUp } from '../support/fishroom.ts';

const brood = (room: Room) => {
  const found = room.stock.broods.get('Rowan-1');
  if (!found) throw new Error(`no Rowan-1 among ${[...room.stock.broods.keys()].join(', ')}`);
  return found;
};
const window = (low: string, high: string) => ({ low: day(low), likely: null, high: day(high) });

describe('whatever the looks', () => {
  const stages = ['hatched', 'wrigglers', 'free-swimming'] as const;
  const looks = fc.array(fc.record({ on: fc.integer({ min: 3, max: 27 }), stage: fc.constantFrom(...stages) }), {
    maxLength: 6,
  });
  const linesOf = (list: readonly { on: number; stage: (typeof stages)[number] }[]): Line[] =>
    list.map(({ on, stage }) =>
      look(`2026-02-${String(on).padStart(2, '0')}`, stage, null, { fish: named('Rowan-1') }),
    );
  const begin: Line[] = [...setUp, laid('2026-02-02', null, { when: window('2026-01-30', '2026-02-02') })];
  const width = (found: { low: number | null; high: number | null } | null): number =>
    found ? (found.high ?? Infinity) - (found.low ?? -Infinity) : Infinity;

  it('a further one never widens a window, and no window is inverted', () => {
    fc.assert(
      fc.property(looks, fc.record({ on: fc.constant(28), stage: fc.constantFrom(...stages) }), (list, last) => {
        const before = brood(roomOn('2026-02-28', [...begin, ...linesOf(list)]));
        const after = brood(roomOn('2026-02-28', [...begin, ...linesOf([...list, last])]));
        for (const of of ['laid', 'hatched', 'swam'] as const) {
          expect(width(after[of])).toBeLessThanOrEqual(width(before[of]));
          expect(width(after[of])).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });
  it('the order of the lines in the file changes nothing', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 5, max: 20 }), { minLength: 2, maxLength: 5 }),
        fc.integer(),
        (on, seed) => {
          const lines = linesOf(on.map((one) => ({ on: one, stage: one < 9 ? 'wrigglers' : 'free-swimming' })));
          const shuffled = lines
            .map((line, at) => ({ line, key: Math.sin(seed + at) }))
            .sort((a, b) => a.key - b.key)
            .map(({ line }) => line);
          const shown = (all: readonly Line[]) => {
            const { laid: born, swam, hatched, total } = brood(roomOn('2026-02-28', [...begin, ...all]));
            return { born, swam, hatched, total };
          };
          expect(shown(shuffled)).toEqual(shown(lines));
        },
      ),
    );
  });
  it('nothing from a later day shows on an earlier one', () => {
    fc.assert(
      fc.property(looks, fc.integer({ min: 3, max: 27 }), (list, on) => {
        const then = `2026-02-${String(on).padStart(2, '0')}`;
        const events = eventsOf([...begin, ...linesOf(list)]);
        const all = foldRoom(events, day(then));
        const known = foldRoom(
          events.filter((event) => event.day <= day(then)),
          day(then),
        );
        expect(all.stock).toEqual(known.stock);
      }),
    );
  });
});
