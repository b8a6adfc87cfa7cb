import { expect, test } from 'vitest';
import { overPromised } from '../../src/checks/over-promised.ts';
import { BROOD, keep, reserve } from '../support/brood.ts';
import { eventsOf, roomOn } from '../support/events.ts';
import type { Line } from '../support/events.ts';

function found(lines: readonly Line[], on = '2026-04-20'): ReturnType<typeof overPromised> {
  const room = roomOn(on, lines);
  return overPromised({ room, events: eventsOf(lines), today: room.on });
}

test('more kept back and reserved than are surely alive: a doubt at the last promise, the others beside it', () => {
  const lines = [...BROOD, keep(20), reserve(12, '2026-05-01', 'Iris')];
  expect(found(lines)).toMatchObject([
    {
      kind: 'over-promised',
      weight: 'doubt',
      at: { line: 12 },
      also: [{ line: 11 }],
      write: 'what was counted since: C1: Rowan-1 counted 32',
    },
  ]);
  expect(found(lines)[0]?.says).toBe('20 Rowan-1 are kept back and 12 reserved, but surely only 30 are alive');
});

test('just enough, or lapsed: none', () => {
  expect(found([...BROOD, keep(18), reserve(12, '2026-05-01')])).toEqual([]);
  expect(found([...BROOD, keep(20), reserve(12, '2026-05-01')], '2026-05-02')).toEqual([]);
});
