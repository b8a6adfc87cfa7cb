/** What nobody spoke of for so long that it is over: eggs are guarded no more, mouths hold no more. */
import { describe, expect, it } from 'vitest';
import { pairs } from '../../src/questions/pairs.ts';
import { walk } from '../../src/questions/walk.ts';
import type { Room } from '../../src/state/draft.ts';
import { isHolding } from '../../src/state/withoutword.ts';
import { day } from '../support/events.ts';
import { journalRoom } from '../support/journal.ts';

const ROOM = `2026-01-01 tank A1: 54 L; alone
2026-01-01 tank B1: 200 L; alone
2026-01-01 species krib: cave spawner
2026-01-01 species peacock: mouthbrooder
2026-01-01 pair Rowan: krib; male; female; in A1
2026-01-01 pair Iris: peacock; male; female; in B1
`;
const EGGS = '2026-02-01 A1: spawned, about 80 eggs\n';
const HELD = '2026-02-01 B1: holding\n';
const after = (on: string, lines: string): Room => journalRoom(on, ROOM + lines);
const pair = (on: string, lines: string, name: string) =>
  pairs(after(on, lines)).pairs.find((row) => row.name === name);

describe('eggs', () => {
  // The list asks for them until 9 March, three weeks after the last day on which they may have swum.
  it('are guarded while the list asks for them, and no longer', () => {
    expect(pair('2026-03-09', EGGS, 'Rowan')).toMatchObject({ doing: 'guarding Rowan-1' });
    expect(pair('2026-03-10', EGGS, 'Rowan')).toMatchObject({ doing: null, spawning: { waits: null } });
    expect(pair('2026-04-01', EGGS, 'Rowan')?.spawning.lateDays).toBe(17);
    const told = walk(after('2026-04-01', EGGS)).tanks[0]?.fish[0];
    expect(told).toMatchObject({ name: 'Rowan', doing: null });
  });
});

describe('a mouth', () => {
  const room = after('2026-06-01', HELD);
  const iris = room.stock.groups.get('Iris');
  const holds = (on: string): boolean | undefined => iris && isHolding(room, iris, day(on));
  it('is full until its young must be out, and three weeks more', () => {
    expect([holds('2026-02-01'), holds('2026-03-01'), holds('2026-05-01')]).toEqual([true, true, false]);
    expect(pair('2026-03-01', HELD, 'Iris')).toMatchObject({ doing: 'holding', spawning: { waits: 'holding' } });
    expect(pair('2026-06-01', HELD, 'Iris')?.doing).toBeNull();
    expect(pair('2026-06-01', HELD, 'Iris')?.spawning.lateDays).toBeGreaterThan(0);
  });
  it('makes of chasing a daily thing while it is full, and of nothing later', () => {
    const open = (on: string): boolean => pair(on, `${HELD}${on} B1: chasing\n`, 'Iris')?.dispute !== null;
    expect([open('2026-02-20'), open('2026-05-20')]).toEqual([false, true]);
  });
});
