import { describe, expect, it } from 'vitest';
import { countsAsKnown } from '../../src/state/hindsight.ts';
import { roomOn, type Line } from '../support/events.ts';
import { about, heads, laid, look, lostSome, move, named, sale, setUp, tally } from '../support/fishroom.ts';

const R1 = { fish: named('Rowan-1') };
const lines: Line[] = [
  ...setUp,
  laid('2026-02-02'),
  look('2026-02-12', 'free-swimming'),
  move('2026-03-01', 'all', 'C1', R1),
  tally('2026-03-02', about(40), { in: 'C1' }),
  lostSome('2026-03-10', heads(3), 'died', { in: 'C1' }),
  sale('2026-03-20', heads(6), { in: 'C1' }),
  tally('2026-04-01', heads(43), { in: 'C1' }),
];
const lows = (on: string) => {
  const brood = roomOn(on, lines).stock.broods.get('Rowan-1');
  return brood ? countsAsKnown(brood).map(({ total }) => total.low) : [];
};

describe('a later count', () => {
  // trap: survival above 100 % because the first count was a glance
  it('raises an earlier guess by what it counts and what went since', () => {
    expect(lows('2026-04-01')).toEqual([52, 43]);
  });
  it('shows on no day before it', () => {
    expect(lows('2026-03-31')).toEqual([30]);
  });
});
