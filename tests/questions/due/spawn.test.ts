import { describe, expect, test } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import type { DueItem } from '../../../src/questions/due/item.ts';
import { spawnsDue } from '../../../src/questions/due/spawn.ts';
import type { Stage } from '../../../src/journal/event.ts';
import type { Line } from '../../support/events.ts';
import { roomOn, tank } from '../../support/events.ts';
import { journalOn } from '../../support/journal.ts';
import { groupSet, said, spawn, speciesSet, tankSet } from '../../support/pairs.ts';

const SET = '2026-01-04';
const ROOM: readonly Line[] = [
  tankSet(SET, 'A1'),
  speciesSet(SET, 'krib', 'cave spawner'),
  groupSet(SET, 'Rowan', 'A1'),
  tankSet(SET, 'B1'),
  speciesSet(SET, 'aulo', 'mouthbrooder'),
  groupSet(SET, 'Sedge', 'B1', { kind: 'trio', species: 'aulo', females: ['Fern', 'Lark'] }),
  tankSet(SET, 'C1'),
  speciesSet(SET, 'limia', 'livebearer'),
  groupSet(SET, 'Tarn', 'C1', { kind: 'trio', species: 'limia' }),
];

function rows(on: string, lines: readonly Line[], days = 7): readonly DueItem[] {
  return spawnsDue(roomOn(on, [...ROOM, ...lines]), days);
}

function stage(on: string, place: string, what: Exclude<Stage, 'eggs'>, brood: string | null, who?: string): Line {
  const member = who === undefined ? null : { sex: 'female' as const, name: who };
  return [
    on,
    tank(place),
    { kind: 'stage seen', fish: { kind: 'group', group: null, member }, stage: what, count: null, brood },
  ];
}

const ids = (found: readonly DueItem[]): string[] => found.map(({ id }) => id);

describe('a suspected spawn', () => {
  test('is looked for from that day, and no more once its young would swim', () => {
    const maybe = [spawn('2026-02-10', 'A1', 'Rowan-1', undefined, 'maybe')];
    expect(rows('2026-02-10', maybe)[0]).toMatchObject({
      id: 'a1-look-for-eggs',
      what: 'look for eggs',
      close: 'A1: eggs seen',
    });
    expect(rows('2026-02-16', maybe)[0]?.what).toBe('look for wrigglers');
    expect(rows('2026-03-20', maybe)).toEqual([]);
  });

  test('a female about to spawn is looked at for three days', () => {
    const about = [said('2026-02-10', 'A1', 'about to spawn')];
    expect(ids(rows('2026-02-11', about))).toEqual(['a1-look-for-eggs']);
    expect(rows('2026-02-14', about)).toEqual([]);
  });

  test('of each of two females is looked for by itself, however the other goes on', () => {
    const both = '2026-03-10 A2: Fern maybe spawned\n2026-03-11 A2: Lark about to spawn\n';
    const looks = (on: string, lines: string): string[] =>
      spawnsDue(journalOn(on, lines), 7).map(({ id, what, close }) => `${id}: ${what}; ${close}`);
    expect(looks('2026-03-12', both)).toEqual([
      'a2-look-for-eggs-of-fern: look for eggs of Fern; A2: Fern eggs seen',
      'a2-look-for-eggs-of-lark: look for eggs of Lark; A2: Lark eggs seen',
    ]);
    const fern = ['a2-look-for-eggs: look for eggs; A2: Fern eggs seen'];
    expect(looks('2026-03-12', `${both}2026-03-12 A2: Lark eggs seen\n`)).toEqual(fern);
    expect(looks('2026-03-15', both)).toEqual(['a2-look-for-eggs: look for wrigglers; A2: Fern wrigglers']);
    // A sign that names nobody may be of either: one look is asked for.
    expect(looks('2026-03-12', `${both}2026-03-12 A2: about to spawn\n`)).toEqual([
      'a2-look-for-eggs: look for eggs; A2: eggs seen',
    ]);
    const twice = '2026-03-09 A2: Fern maybe spawned\n2026-03-10 A2: Fern about to spawn\n';
    expect(looks('2026-03-12', twice)).toEqual(fern);
  });

  test('goes on when an earlier brood of the pair swims', () => {
    const lines = '2026-02-28 A1: spawned\n2026-03-11 A1: about to spawn\n2026-03-12 A1: Rowan-1 free-swimming, 30\n';
    expect(ids(spawnsDue(journalOn('2026-03-12', lines), 7))).toEqual(['a1-look-for-eggs']);
  });

  test('eggs that were seen settle it', () => {
    const lines = [said('2026-02-10', 'A1', 'about to spawn'), spawn('2026-02-11', 'A1', 'Rowan-1')];
    expect(rows('2026-02-12', lines)).toEqual([]);
  });
});

describe('young on the way', () => {
  test('a holding female: strip from day 14, release about day 21 (common practice, no source)', () => {
    const holds = [stage('2026-02-01', 'B1', 'holding', 'Sedge-1', 'Fern')];
    expect(rows('2026-02-03', holds)).toEqual([]);
    const [row] = rows('2026-02-10', holds);
    expect(row).toMatchObject({ id: 'b1-release', place: 'B1', close: 'B1: Fern released' });
    expect(row?.why).toContain('or strip 12–16 Feb');
    expect(row?.what).toContain('Fern');
    expect([ids(rows('2026-03-20', holds)), ids(rows('2026-03-25', holds))]).toEqual([['b1-release'], []]);
  });

  test('two that hold: a row of each, where she is, closed by a line that means her', () => {
    const slate = `2026-01-02 species haps: Haplochromis sp; mouthbrooder
2026-01-02 harem Slate: haps; male; females Moth and Wren; in C2
2026-01-31 C2: no eggs
2026-02-01 C2: Moth holding
2026-02-04 C2: Wren holding
2026-02-08 C2: moved Moth to B1
`;
    const told = (more = '') =>
      spawnsDue(journalOn('2026-02-12', slate + more), 7).map(({ id, place, close }) => [id, place, close]);
    const moth = ['b1-release-slate-1', 'B1', 'B1: Moth released'];
    expect(told()).toEqual([moth, ['c2-release-slate-2', 'C2', 'C2: Wren released']]);
    expect(told('2026-02-09 C2: Wren eggs gone\n')).toEqual([['b1-release', 'B1', 'B1: Moth released']]);
  });

  test('a livebearer: the next young a month after the last', () => {
    const born = [stage('2026-02-01', 'C1', 'born', 'Tarn-1')];
    expect(rows('2026-02-10', born)).toEqual([]);
    const [row] = rows('2026-02-20', born);
    expect(row).toMatchObject({ id: 'c1-young-due', close: 'C1: born 12' });
    expect(row?.due.low === null || row?.due.low === undefined ? null : isoDay(row.due.low)).toBe('2026-02-25');
    expect(row?.due.likely === null || row?.due.likely === undefined ? null : isoDay(row.due.likely)).toBe(
      '2026-03-01',
    );
  });
});

describe('a late pair', () => {
  const lost: Line[] = [
    spawn('2026-02-01', 'A1', 'Rowan-1'),
    [
      '2026-02-20',
      { kind: 'brood', brood: 'Rowan-1' },
      { kind: 'eggs gone', fish: { kind: 'brood', brood: 'Rowan-1' } },
    ],
  ];

  test('is news for a week only', () => {
    const late = (on: string): string[] => ids(rows(on, lost)).filter((id) => id === 'a1-late-to-spawn');
    expect(late('2026-03-15')).toEqual([]);
    expect(late('2026-03-16')).toEqual(['a1-late-to-spawn']);
    expect(late('2026-03-22')).toEqual(['a1-late-to-spawn']);
    expect(late('2026-03-23')).toEqual([]);
  });
});
