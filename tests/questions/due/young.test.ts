/** Older young and younger: when they must be parted, and when that alarm would be false. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import { dangers } from '../../../src/questions/danger.ts';
import { moveLine } from '../../../src/questions/due/destination.ts';
import { youngDue } from '../../../src/questions/due/young.ts';
import type { Room } from '../../../src/state/draft.ts';
import { journalOn } from '../../support/journal.ts';
import { roomOn, tank, type Line } from '../../support/events.ts';
import {
  about,
  group,
  heads,
  implied,
  laid,
  look,
  lostSome,
  named,
  setUp,
  sizes,
  speciesOf,
  tankLine,
} from '../../support/fishroom.ts';

const R1 = { fish: named('Rowan-1') };
const first: Line[] = [...setUp, laid('2026-01-10'), look('2026-01-20', 'free-swimming', heads(40))];
const rows = (room: Room, days = 7) =>
  youngDue(room, days).map((row) => `${row.what} by ${row.due.high === null ? '' : isoDay(row.due.high)}`);

describe('older young with the next spawn', () => {
  const second: Line[] = [...first, laid('2026-02-20')];
  it('leave two days before the first day on which it may swim', () => {
    // Cave spawners swim 5.5 days after laying at the earliest where nobody measured (common practice, no source).
    expect(rows(roomOn('2026-02-20', second))).toEqual(['Rowan-1 out by 23 Feb by 2026-02-23']);
    const [row] = youngDue(roomOn('2026-02-20', second), 7);
    expect(row).toMatchObject({ id: 'a1-rowan-1-leave', place: 'A1', close: 'A1: moved all Rowan-1 to C1' });
    expect(row?.why).toContain('C1 is free');
    expect(row?.lines).toEqual([
      { file: 'fishroom.txt', line: 7 },
      { file: 'fishroom.txt', line: 6 },
    ]);
  });
  it.each([
    [1, '1 older one would eat them'],
    [2, '2 older ones would eat them'],
  ])('are counted: %i', (count, words) => {
    const few: Line[] = [
      ...setUp,
      laid('2026-01-10'),
      look('2026-01-20', 'free-swimming', heads(count)),
      laid('2026-02-20'),
    ];
    expect(youngDue(roomOn('2026-02-20', few), 7)[0]?.why).toContain(words);
  });
  it('leave at once where the parents chase them', () => {
    const chased: Line[] = [...second, ['2026-02-20', tank('A1'), { kind: 'parents chase fry', fish: implied }]];
    expect(rows(roomOn('2026-02-20', chased))).toEqual(['Rowan-1 out by 20 Feb by 2026-02-20']);
  });
  it('are told when the pair is about to spawn', () => {
    const soon: Line[] = [...first, ['2026-02-20', tank('A1'), { kind: 'about to spawn', fish: implied }]];
    expect(rows(roomOn('2026-02-20', soon))).toHaveLength(1);
    expect(rows(roomOn('2026-02-28', soon))).toEqual([]);
  });
  it('are endangering it once it swims', () => {
    const swum: Line[] = [...second, look('2026-03-02', 'free-swimming', about(50))];
    const [danger] = dangers(roomOn('2026-03-02', swum));
    expect(danger).toMatchObject({ tank: 'A1', weight: 'danger' });
    expect(danger?.because.steps.at(-1)).toContain('not both were measured');
    expect(rows(roomOn('2026-03-02', swum))).toEqual(['take Rowan-1 away from Rowan-2 by 2026-03-02']);
  });
  it('are no danger once they have left', () => {
    const left: Line[] = [
      ...second,
      look('2026-03-02', 'free-swimming', about(50)),
      lostSome('2026-03-02', 'all', 'culled', R1),
    ];
    expect(dangers(roomOn('2026-03-02', left))).toEqual([]);
  });
  it('are no danger as a few left-overs of a centimetre', () => {
    const few: Line[] = [
      ...setUp,
      laid('2026-01-25'),
      look('2026-02-04', 'free-swimming', heads(3)),
      laid('2026-02-10'),
      look('2026-02-20', 'free-swimming', about(50)),
    ];
    expect(dangers(roomOn('2026-02-20', few))).toEqual([]);
  });
});

describe('lengths that were read', () => {
  const two: Line[] = [...first, laid('2026-02-20'), look('2026-03-02', 'free-swimming', heads(50))];
  const read = (older: number, younger: number): Line[] => [
    ...two,
    sizes('2026-04-01', 'average', [older], R1),
    sizes('2026-04-01', 'average', [younger], { fish: named('Rowan-2') }),
  ];
  it('decide: longer than 2.4 times is danger, less than 1.8 times is none', () => {
    expect(dangers(roomOn('2026-04-01', read(30, 9)))[0]?.weight).toBe('danger');
    expect(dangers(roomOn('2026-04-01', read(13, 12)))).toEqual([]);
  });
});

describe('no alarm', () => {
  // trap: a predation alarm in a sibling-safe colony; none in a pair's tank because the young have the same parents
  const helpers = speciesOf('krib', 'cave spawner', { siblingSafe: true });
  const two: Line[] = [...first, laid('2026-02-20'), look('2026-03-02', 'free-swimming', heads(50))];
  it('where such fish leave their sisters and brothers alone', () => {
    const safe: Line[] = [...two, helpers];
    expect(dangers(roomOn('2026-03-02', safe))).toEqual([]);
    expect(rows(roomOn('2026-02-20', safe))).toEqual([]);
  });
  it('in a colony, whose young are no brood', () => {
    const colony: Line[] = [
      tankLine('B1'),
      speciesOf('shelly', 'shell spawner'),
      group('Pebble', 'colony', 'B1', { species: 'shelly', count: heads(12) }),
      look('2026-02-12', 'fry seen', heads(6), { in: 'B1' }),
      look('2026-03-12', 'fry seen', heads(9), { in: 'B1' }),
    ];
    expect(dangers(roomOn('2026-03-12', colony))).toEqual([]);
    expect(rows(roomOn('2026-03-12', colony))).toEqual([]);
  });
  it('but one among young of the same parents', () => {
    const [danger] = dangers(roomOn('2026-03-02', two));
    expect([danger?.older.group, danger?.younger.group]).toEqual(['Rowan', 'Rowan']);
  });
});

describe('where young could go', () => {
  it('is a tank without fish that is not held', () => {
    const to = (lines: string): string => {
      const room = journalOn('2026-05-21', `2026-04-10 A1: spawned brood Rowan-1\n${lines}`);
      const brood = room.stock.broods.get('Rowan-1');
      return brood ? moveLine(room, brood).where : 'no brood';
    };
    expect(to('')).toBe('12 is free');
    expect(to('2026-05-20 tank 12: hold "velvet"\n')).toBe('C2 is free');
  });
});
