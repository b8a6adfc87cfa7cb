/** Whose a clause is that names no fish, names one that is elsewhere, or says only what kind of group. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { readJournal } from '../../src/language/read.ts';
import { day, room as theRoom, roomOn, tank, type Line } from '../support/events.ts';
import { group, heads, implied, member, named, pairOf, setUp, tankLine } from '../support/fishroom.ts';
import { NO_FILES, ROOM } from '../support/lines.ts';

const SWIM = '2026-02-02 A1: spawned\n2026-02-12 A1: free-swimming, 40\n';
const BIRCH = '2026-02-03 pair Birch: krib; in C2\n';
const AWAY = '2026-03-09 A1: moved the male to C2\n2026-03-09 A1: moved the female to Q1\n';
const REED = '2026-02-03 trio Reed: krib; in C2\n';

/** The room after some lines, and whose the clauses of the last one are. */
function told(lines: string): { room: Room; whose: string[] } {
  const { events, problems } = readJournal('fishroom.txt', ROOM + lines, NO_FILES);
  expect(problems.filter(({ weight }) => weight === 'stops')).toEqual([]);
  const room = foldRoom(events, day('2026-05-01'));
  const last = Math.max(...events.map(({ place }) => place.line));
  const found = events.filter(({ place }) => place.line === last).map(({ seq }) => room.resolved.get(seq));
  return { room, whose: found.map((one) => (!one ? 'nobody' : one.kind === 'group' ? one.group : one.brood)) };
}
const whose = (lines: string): string[] => told(lines).whose;
const kinds = (room: Room): string[] => room.problems.map(({ kind }) => kind);
const says = (room: Room): string[] => room.problems.map((problem) => problem.says);

describe('fish that were named and moved out in the same line', () => {
  it('are measured, not the parents that stay behind', () => {
    const { room, whose } = told(`${SWIM}2026-03-10 A1: moved all Rowan-1 to C1; largest 12 mm\n`);
    expect(whose).toEqual(['Rowan-1', 'Rowan-1']);
    expect(room.stock.groups.get('Rowan')?.sizes).toEqual([]);
    expect(room.stock.broods.get('Rowan-1')?.sizes).toMatchObject([{ tank: 'C1' }]);
  });
  it('are counted and lose fish where they went', () => {
    const { room } = told(`${SWIM}2026-03-10 A1: moved all Rowan-1 to C2; counted 38; died 2\n`);
    expect(kinds(room)).toEqual([]);
    expect([...(room.stock.broods.get('Rowan-1')?.parts ?? [])]).toEqual([['C2', { low: 36, likely: 36, high: 36 }]]);
  });
  it('are meant where nobody else lives in that tank either', () => {
    const { room, whose } = told(`${SWIM}2026-03-09 A1: moved all Rowan-1 to C2
2026-03-10 C2: moved all Rowan-1 to Q1; largest 12 mm\n`);
    expect(whose).toEqual(['Rowan-1', 'Rowan-1']);
    expect(room.stock.broods.get('Rowan-1')?.sizes).toMatchObject([{ tank: 'Q1' }]);
  });
  it('are no longer meant by the next line, nor by a clause that cannot be about them', () => {
    expect(whose(`${SWIM}2026-03-10 A1: moved all Rowan-1 to C1\n2026-03-10 A1: largest 80 mm\n`)).toEqual(['Rowan']);
    expect(whose(`${SWIM}2026-03-10 A1: moved all Rowan-1 to C1; bonded\n`)).toEqual(['Rowan-1', 'Rowan']);
    const split = `${SWIM}2026-03-10 A1: moved all Rowan-1 to C2; eggs white 3\n`;
    expect(whose(split)).toEqual(['Rowan-1', 'nobody']);
  });
  it('that are grown are never «young»', () => {
    const lines: Line[] = [
      ...setUp,
      ['2026-02-01', tank('A1'), { kind: 'counted', fish: member(null, null, 'Rowan'), heads: heads(2) }],
    ];
    const gone: Line = ['2026-02-02', tank('A1'), moveOf('Rowan', 'C1')];
    const young: Line = [
      '2026-02-02',
      tank('A1'),
      { kind: 'lost', fish: { kind: 'implied', young: true }, count: heads(1), how: 'died' },
    ];
    expect(kinds(roomOn('2026-02-02', [...lines, gone, young]))).toEqual(['no-such-fish']);
  });
});

function moveOf(name: string, to: string) {
  const fish = { kind: 'group', group: name, member: null } as const;
  return { kind: 'moved', fish, count: 'all', which: 'any', to, with: null, restStay: false } as const;
}

describe('a group that is named', () => {
  it('carries into the rest of its line, a group that was only meant does not', () => {
    expect(whose(`${SWIM}2026-03-10 A1: Rowan bonded; largest 80 mm\n`)).toEqual(['Rowan', 'Rowan']);
    expect(whose(`${SWIM}2026-03-10 A1: bonded; largest 12 mm\n`)).toEqual(['Rowan', 'Rowan-1']);
    expect(whose(`${SWIM}2026-03-10 A1: pair bonded; largest 12 mm\n`)).toEqual(['Rowan', 'Rowan-1']);
  });
  it('carries to what only a group can be meant by, while it is there', () => {
    expect(whose(`${BIRCH}${REED}2026-03-10 C2: Birch bonded; resting\n`)).toEqual(['Birch', 'Birch']);
    expect(whose(`${BIRCH}${REED}2026-03-10 C2: Birch moved all to Q1; bonded\n`)).toEqual(['Birch', 'Reed']);
  });
  it('does not exist before its own line', () => {
    const bonded: Line = ['2026-01-01', theRoom, { kind: 'bonded', fish: member(null, null, 'Rowan') }];
    const died: Line = [
      '2026-01-01',
      { kind: 'group', group: 'Rowan', member: null },
      { kind: 'lost', fish: implied, count: heads(1), how: 'died' },
    ];
    expect(kinds(roomOn('2026-02-01', [...setUp, bonded]))).toEqual(['unknown-brood']);
    expect(says(roomOn('2026-02-01', [...setUp, died]))).toEqual(['this line does not say which fish']);
  });
  it('is not what a brood is: only a pair or group can be bonded', () => {
    const { events } = readJournal('fishroom.txt', ROOM + SWIM, NO_FILES);
    const at = { file: 'fishroom.txt', line: 99, from: 0, to: 1 };
    const on = { seq: events.length, day: day('2026-03-10'), minute: null, remark: null, when: null, place: at };
    const bonded = { ...on, subject: tank('A1'), kind: 'bonded', fish: named('Rowan-1') } as const;
    const room = foldRoom([...events, bonded], day('2026-03-10'));
    expect(says(room)).toEqual(['Rowan-1 is a brood: «bonded» is said of a pair or group']);
    expect(room.stock.groups.get('Rowan')?.bond).toBe('unsaid');
  });
});

describe('a group that is only meant', () => {
  it('is the one of the kind that the line says', () => {
    expect(whose(`${BIRCH}${REED}2026-03-10 C2: pair bonded\n`)).toEqual(['Birch']);
    expect(whose(`${BIRCH}${REED}2026-03-10 C2: trio bonded\n`)).toEqual(['Reed']);
  });
  it('must be one: of two nobody is bonded', () => {
    const { room, whose } = told(`${BIRCH}${REED}2026-03-10 C2: bonded\n`);
    expect(whose).toEqual(['nobody']);
    expect(says(room)).toEqual(['C2 holds Birch and Reed: this may be about either']);
    expect(['Birch', 'Reed'].map((name) => room.stock.groups.get(name)?.bond)).toEqual(['unsaid', 'unsaid']);
  });
  it('is the pair, not the stock that merely lives with it', () => {
    expect(whose('2026-02-03 pair Birch: krib; in C1\n2026-03-10 C1: bonded\n')).toEqual(['Birch']);
    expect(whose('2026-03-10 C1: resting\n')).toEqual(['Ash']);
  });
  it('is the one whose tank it is, while all of its fish are away', () => {
    expect(whose(`${AWAY}2026-03-10 A1: resting\n`)).toEqual(['Rowan']);
    const lodger = '2026-02-03 pair Birch: krib; in C2\n2026-03-10 C2: Birch moved all to A1\n';
    expect(whose(`${AWAY}${lodger}2026-03-11 A1: resting\n`)).toEqual(['Birch']);
  });
  it('needs a tank or a name', () => {
    const bonded: Line = ['2026-02-01', theRoom, { kind: 'bonded', fish: implied }];
    const died: Line = ['2026-02-01', theRoom, { kind: 'lost', fish: implied, count: heads(1), how: 'died' }];
    for (const line of [bonded, died])
      expect(says(roomOn('2026-02-01', [...setUp, line]))).toEqual(['this line does not say which fish']);
  });
  it('by a male that is dead is told as one that lives no more', () => {
    const room = told('2026-03-01 A1: male died\n2026-03-02 A1: male back\n').room;
    expect(kinds(room)).toEqual(['unknown-member']);
  });
});

describe('a named fish that is not in the tank of the line', () => {
  const through = `${SWIM}2026-03-01 A1: moved all Rowan-1 to C2\n2026-03-05 C2: moved all Rowan-1 to Q1\n`;
  it('may be one that was left behind where they were before', () => {
    expect(whose(`${through}2026-03-10 A1: Rowan-1 died 1\n`)).toEqual(['Rowan-1']);
    expect(whose(`${through}2026-03-10 C2: Rowan-1 died 1\n`)).toEqual(['Rowan-1']);
    expect(whose(`${AWAY}2026-03-10 A1: Rowan died 1\n`)).toEqual(['Rowan']);
  });
  it('is not one that never was there, whoever else moved through it', () => {
    const { room, whose } = told(`${through}2026-03-06 C1: moved 2 Ash to B1\n2026-03-10 C1: Rowan-1 died 1\n`);
    expect(whose).toEqual(['nobody']);
    expect(says(room)).toEqual(['Rowan-1 is not in C1: they are in Q1']);
    const other = told('2026-03-01 A1: Rowan moved all to C2\n2026-03-10 B1: Rowan died 1\n');
    expect(says(other.room)).toEqual(['Rowan is not in B1: they are in C2']);
  });
  it('and of which none is left is told so', () => {
    const room = told(`${SWIM}2026-03-01 A1: Rowan-1 sold all for 20.00\n2026-03-02 Rowan-1: counted 3\n`).room;
    expect(says(room)).toEqual(['Rowan-1 is not there any more: none of them are left']);
  });
});

describe('said of a group in its heading', () => {
  const pair = { kind: 'group', group: 'Rowan', member: null } as const;
  const swam: Line[] = [
    ...setUp,
    ['2026-02-02', tank('A1'), { kind: 'spawned', fish: implied, as: 'laid', brood: null, eggs: null }],
    [
      '2026-02-12',
      tank('A1'),
      { kind: 'stage seen', fish: implied, stage: 'free-swimming', count: heads(40), brood: null },
    ],
  ];
  const meant = (room: Room, at: number): string | null => {
    const found = room.resolved.get(at);
    return !found ? null : found.kind === 'group' ? found.group : found.brood;
  };
  it('a count is of the group itself, a length of its young', () => {
    const counted: Line = ['2026-02-20', pair, { kind: 'counted', fish: implied, heads: heads(2) }];
    const sizes = { of: 'largest', values: [{ unit: 'mm', low: 12, likely: 12, high: 12 }] } as const;
    const sized: Line = ['2026-02-20', pair, { kind: 'sized', fish: implied, sizes }];
    const room = roomOn('2026-02-20', [...swam, counted, sized]);
    expect(kinds(room)).toEqual([]);
    expect([swam.length, swam.length + 1].map((at) => meant(room, at))).toEqual(['Rowan', 'Rowan-1']);
  });
  it('of one fish of it is about that fish', () => {
    const line: Line = [
      '2026-02-20',
      { kind: 'group', group: 'Rowan', member: { sex: 'female', name: null } },
      { kind: 'lost', fish: implied, count: 'unsaid', how: 'died' },
    ];
    const room = roomOn('2026-02-20', [...setUp, line]);
    expect(room.stock.groups.get('Rowan')?.members.map(({ sex, gone }) => [sex, gone?.how ?? 'lives'])).toEqual([
      ['male', 'lives'],
      ['female', 'died'],
    ]);
    const bonded: Line = ['2026-02-20', pair, { kind: 'resting', fish: implied }];
    expect(roomOn('2026-02-20', [...setUp, bonded]).stock.groups.get('Rowan')?.bond).toBe('resting');
  });
});

describe('«young» that nobody names', () => {
  const die = (where: string): Line => [
    '2026-02-20',
    tank(where),
    { kind: 'lost', fish: { kind: 'implied', young: true }, count: heads(1), how: 'died' },
  ];
  const dead = (room: Room): string[] =>
    [...room.stock.groups.values(), ...room.stock.broods.values()]
      .filter(({ gone }) => gone.length > 0)
      .map(({ name }) => name);
  const lines = [
    ...setUp,
    tankLine('B1'),
    group('Pebble', 'colony', 'B1', { count: heads(25) }),
    pairOf('Birch', 'B1'),
    group('Ash', 'group', 'C1', { count: heads(9) }),
  ];
  it('are of a brood, else of stock in which there may be young, never of a pair', () => {
    const brood = told(`${SWIM}2026-03-10 A1: young died 1\n`);
    expect(brood.whose).toEqual(['Rowan-1']);
    expect(dead(roomOn('2026-02-20', [...lines, die('B1')]))).toEqual(['Pebble']);
    expect(dead(roomOn('2026-02-20', [...lines, die('C1')]))).toEqual(['Ash']);
    expect(kinds(roomOn('2026-02-20', [...lines, die('A1')]))).toEqual(['no-such-fish']);
  });
  it('are of the brood where a colony lives in the same tank', () => {
    expect(
      whose(
        '2026-02-02 pair Birch: krib; in B1\n2026-02-03 B1: Birch spawned\n2026-02-12 B1: Birch-1 free-swimming, 40\n2026-03-10 B1: young died 1\n',
      ),
    ).toEqual(['Birch-1']);
  });
});
