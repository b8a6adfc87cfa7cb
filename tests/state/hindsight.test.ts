import { describe, expect, it } from 'vitest';
import { countsAsKnown } from '../../src/state/hindsight.ts';
import { roomOn, type Line } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';
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

describe('what is known now of earlier counts', () => {
  const first = `2026-02-02 A1: spawned
2026-02-12 A1: free-swimming
2026-03-01 A1: moved all Rowan-1 to C2
2026-03-02 C2: Rowan-1 counted about 40
`;
  const known = (text: string, name = 'Rowan-1'): string[] => {
    const { groups, broods } = journalOn('2026-06-01', text).stock;
    const body = broods.get(name) ?? groups.get(name);
    const counts = body ? countsAsKnown(body) : [];
    return counts.map(({ total: { low, likely, high } }) => [low, likely, high].map(String).join('/'));
  };
  it('grows by what went until the next count, and by no more', () => {
    const later = '2026-03-05 C2: died 3\n2026-03-10 C2: counted 45\n2026-03-15 C2: died 2\n';
    expect(known(first + later)).toEqual(['48/48/50', '45/45/45']);
    expect(known(`${first + later}2026-03-20 C2: counted 43\n`)).toEqual(['48/48/50', '45/45/45', '43/43/43']);
  });
  it('grows by what went on the day of the next count before it, not after it', () => {
    expect(known(`${first}2026-03-10 C2: died 1\n2026-03-10 C2: counted 45\n`)).toEqual(['46/46/50', '45/45/45']);
    expect(known(`${first}2026-03-10 C2: died 1; counted 45\n`)).toEqual(['46/46/50', '45/45/45']);
    expect(known(`${first}2026-03-10 C2: counted 45; died 1\n`)).toEqual(['45/45/50', '45/45/45']);
    expect(known(`${first}2026-03-10 C2: counted 45\n2026-03-10 C2: died 1\n`)).toEqual(['45/45/50', '45/45/45']);
  });
  it('does not grow by what went on its own day', () => {
    expect(known(`${first}2026-03-02 C2: died 5\n2026-03-10 C2: counted 30\n`)).toEqual(['30/40/50', '30/30/30']);
  });
  it('is raised above an earlier guess, and is no surer of the likely number than before', () => {
    expect(known(`${first}2026-03-10 C2: counted 60\n`)).toEqual(['60/60/60', '60/60/60']);
    expect(known(`${first.replace('about 40', '30-50')}2026-03-10 C2: counted 35\n`)).toEqual(['35/40/50', '35/35/35']);
  });
  it('leaves out a count that another of the same moment replaced', () => {
    expect(known(`${first}2026-03-10 C2: counted 45\n2026-03-10 C2: counted 44\n`)).toEqual(['44/44/50', '44/44/44']);
  });
  it('of a colony stays what it was: young are born unseen', () => {
    const colony = '2026-03-01 B1: Pebble counted 20\n2026-03-05 B1: died 2\n2026-03-10 B1: counted 30\n';
    expect(known(colony, 'Pebble')).toEqual(['20/20/20', '30/30/30']);
    const stock = '2026-03-01 C1: Ash counted about 8\n2026-03-05 C1: died 2\n2026-03-10 C1: counted 7\n';
    expect(known(stock, 'Ash')[0]?.split('/')[0]).toBe('9');
  });
});
