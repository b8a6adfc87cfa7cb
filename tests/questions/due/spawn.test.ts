import { describe, expect, test } from 'vitest';
import { isoDay } from '../../../src/core/day.ts';
import type { DueItem } from '../../../src/questions/due/item.ts';
import { spawnsDue } from '../../../src/questions/due/spawn.ts';
import type { Stage } from '../../../src/journal/event.ts';
import type { Line } from '../../support/events.ts';
import { roomOn, tank } from '../../support/events.ts';
import { journalOn } from '../../support/journal.ts';
import { groupSet, said, spawn, speciesSet, tankSet } from '../../support/pairs.ts';
import { rowOf, rowsOf, type Told } from './rows.ts';

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
    const fern = ['a2-look-for-eggs-of-fern: look for eggs; A2: Fern eggs seen'];
    expect(looks('2026-03-12', `${both}2026-03-12 A2: Lark eggs seen\n`)).toEqual(fern);
    expect(looks('2026-03-15', both)).toEqual(['a2-look-for-eggs-of-fern: look for wrigglers; A2: Fern wrigglers']);
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
    expect(row).toMatchObject({ id: 'b1-release-sedge-1', place: 'B1', close: 'B1: Fern released' });
    expect(row?.why).toContain('or strip 12–16 Feb');
    expect(row?.what).toContain('Fern');
    expect(ids(rows('2026-03-20', holds))).toEqual(['b1-release-sedge-1']);
    // Nobody asks any more whether she holds; that no spawn was seen since is news for a week.
    expect(ids(rows('2026-03-25', holds))).toEqual(['b1-late-to-spawn']);
    expect(ids(rows('2026-03-30', holds))).toEqual([]);
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
    expect(told('2026-02-09 C2: Wren eggs gone\n')).toEqual([moth]);
  });

  test('a livebearer: the next young a month after the last', () => {
    const born = [stage('2026-02-01', 'C1', 'born', 'Tarn-1')];
    expect(rows('2026-02-10', born)).toEqual([]);
    const [row] = rows('2026-02-20', born);
    expect(row).toMatchObject({ id: 'c1-young-due', close: 'C1: born' });
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

describe('a row of a spawning, as a whole', () => {
  const told = (on: string, lines: string): readonly Told[] => rowsOf(spawnsDue, on, lines);
  const MOUTHS = `2026-01-01 species mb: Pseudocrenilabrus nicholsi; mouthbrooder
2026-01-01 tank N1: 200 L; alone
2026-01-01 harem Iris: mb; male; females Bee and Cat; in N1
`;

  test('that was suspected says since when, and till when it is looked for', () => {
    expect(rowOf(spawnsDue, '2026-03-10', '2026-03-10 A1: maybe spawned\n')).toMatchObject({
      due: '2026-03-10..2026-03-10..2026-03-25',
      weight: 1,
      why: 'Rowan: a spawn was suspected today, nothing seen since',
      key: 'spawn',
      pressing: false,
      steps: ['a spawn was suspected: 10 Mar', 'looked for until 25 Mar'],
      lines: [1],
    });
    expect(rowOf(spawnsDue, '2026-03-12', '2026-03-10 A1: about to spawn\n')).toMatchObject({
      due: '2026-03-10..2026-03-10..2026-03-13',
      why: 'Rowan: about to spawn on 10 Mar, nothing seen since',
    });
    // In cooler water they take longer.
    const cool = '2026-03-01 A1: test 24 C\n2026-03-10 A1: maybe spawned\n';
    expect(rowOf(spawnsDue, '2026-03-14', cool).due).toBe('2026-03-10..2026-03-10..2026-03-28');
  });

  test('asks what such fish would show: a full mouth, or young', () => {
    const ask = (lines: string): string => {
      const { what, close } = rowOf(spawnsDue, '2026-03-12', lines);
      return `${what}; ${close}`;
    };
    expect(ask(`${MOUTHS}2026-03-10 N1: Bee maybe spawned\n`)).toBe('look whether Bee is holding; N1: Bee holding');
    expect(ask(`${MOUTHS}2026-03-10 N1: maybe spawned\n`)).toBe('look whether she is holding; N1: holding');
    const fan = '2026-01-01 group Fan: limia; male; 2 females; in tank 12\n2026-03-10 12: Fan maybe spawned\n';
    expect(ask(fan)).toBe('look for young; Fan: born 12');
    expect(told('2026-03-14', fan)).toEqual([]);
  });

  test('of a female that holds: no sooner than she was last seen holding', () => {
    const row = rowOf(spawnsDue, '2026-03-20', `${MOUTHS}2026-03-01 N1: Bee holding\n2026-03-18 N1: Bee holding\n`);
    expect(row).toMatchObject({
      due: '2026-03-14..2026-03-21..2026-03-30',
      why: 'Iris: holding since the 1st; release 18–30 Mar, or strip 14–18 Mar',
      close: 'N1: Bee released',
      steps: [
        'laid 17 Feb – 1 Mar',
        'release after 15–29 days: 18–30 Mar',
        'strip after 14–18 days from the likely laying: 14–18 Mar',
      ],
      lines: [4],
    });
    expect(told('2026-05-10', `${MOUTHS}2026-03-01 N1: Bee holding\n`)).toEqual([]);
  });

  test('of two that hold: where each is, by her name where it tells her from the other', () => {
    const both = `${MOUTHS}2026-03-01 N1: Bee holding\n2026-03-04 N1: Cat holding\n`;
    const brief = (lines: string): string[] => told('2026-03-20', lines).map(({ id, close }) => `${id}; ${close}`);
    expect(brief(both)).toEqual(['n1-release-iris-1; N1: Bee released', 'n1-release-iris-2; N1: Cat released']);
    expect(brief(`${both}2026-03-05 N1: moved Cat to C2\n`)).toEqual([
      'n1-release-iris-1; N1: Bee released',
      'c2-release-iris-2; C2: Cat released',
    ]);
    expect(brief(`${both}2026-03-19 N1: Bee released 20\n`)).toEqual(['n1-release-iris-2; N1: Cat released']);
  });

  test('of a colony: a mouth that is full, until the young are out', () => {
    const colony = MOUTHS.replace('harem Iris: mb; male; females Bee and Cat', 'colony Iris: mb; 12');
    for (const line of ['N1: Iris holding', 'N1: Iris spawned']) {
      const lines = `${colony}2026-03-06 ${line}\n`;
      expect(rowOf(spawnsDue, '2026-03-20', lines)).toMatchObject({
        id: 'n1-release',
        close: 'N1: released',
        why: 'Iris: holding since the 6th; release 21 Mar – 4 Apr, or strip 20–24 Mar',
      });
      for (const out of ['released 20', 'stripped 20'])
        expect(told('2026-03-22', `${lines}2026-03-21 N1: Iris ${out}\n`)).toEqual([]);
    }
  });

  test('that is late rests on the last, and waits after a look without eggs', () => {
    const taken = ['01-17', '02-14', '03-10']
      .map((on) => `2026-${on} A1: spawned\n2026-${on} 23:00 A1: eggs gone\n`)
      .join('');
    expect(rowOf(spawnsDue, '2026-04-10', taken)).toMatchObject({
      id: 'a1-late-to-spawn',
      due: '2026-04-10',
      weight: 0,
      why: 'Rowan: none seen since 10 Mar; 14–28 days are usual, 3 days over',
      close: 'A1: no eggs',
      lines: [5],
    });
    expect(told('2026-04-10', `${taken}2026-04-08 A1: no eggs\n`)).toEqual([]);
    expect(told('2026-04-10', `${taken}2026-04-07 A1: no eggs\n`)).toHaveLength(1);
    expect([told('2026-04-07', taken), told('2026-04-15', taken)]).toEqual([[], []]);
    expect(told('2026-04-10', `${taken}2026-04-01 A1: Rowan died 2\n`)).toEqual([]);
  });
});
