/** Which fish a clause without a name is about. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { foldRoom } from '../../src/state/fold.ts';
import { day, eventsOf, roomOn, tank, type Line } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';
import {
  about,
  group,
  heads,
  implied,
  laid,
  largest,
  look,
  lostSome,
  member,
  move,
  named,
  sample,
  setUp,
  sizes,
  tally,
  tankLine,
} from '../support/fishroom.ts';

const kinds = (room: Room): string[] => room.problems.map(({ kind }) => kind);
const meant = (room: Room, lines: readonly Line[]): string | null => {
  const found = room.resolved.get(lines.length - 1);
  return found === undefined ? null : found.kind === 'group' ? found.group : found.brood;
};
/** Lines of which the last `together` are clauses of one line. */
function oneLine(on: string, lines: readonly Line[], together: number): Room {
  const events = eventsOf(lines);
  const first = events.length - together;
  const place = events[first]?.place;
  return foldRoom(
    events.map((event, at) => (at > first && place ? { ...event, place } : event)),
    day(on),
  );
}
const swimmers = sample.slice(0, -1);

describe('a clause without a name', () => {
  it('means the only fish in the tank', () => {
    const lines = [...setUp, lostSome('2026-02-01', 'all', 'died')];
    expect(meant(roomOn('2026-02-01', lines), lines)).toBe('Rowan');
  });
  it('that says died 1 among adults and young must say which', () => {
    const room = roomOn('2026-02-20', [...swimmers, lostSome('2026-02-20', heads(1), 'died')]);
    expect(kinds(room)).toEqual(['which-fish']);
    expect(room.problems[0]?.says).toContain('Rowan and Rowan-1');
    expect(room.problems[0]?.write).toContain('A1: Rowan-1');
    expect(room.stock.broods.get('Rowan-1')?.total.high).toBe(140);
  });
  it('means the pair where the young are eggs still, which do not die but go white', () => {
    const lines = [...setUp, laid('2026-02-02'), lostSome('2026-02-03', heads(2), 'died')];
    expect(meant(roomOn('2026-02-03', lines), lines)).toBe('Rowan');
  });
  it('means the young where the pair has not so many', () => {
    for (const line of [
      tally('2026-02-20', heads(43)),
      move('2026-02-20', heads(20), 'C1'),
      lostSome('2026-02-20', heads(5), 'died'),
    ]) {
      const lines = [...swimmers, line];
      const room = roomOn('2026-02-20', lines);
      expect(room.problems).toEqual([]);
      expect(meant(room, lines)).toBe('Rowan-1');
    }
  });
  it('means the young or the grown by the sex or age that it tells', () => {
    const young = { ...heads(1), young: heads(1).total };
    const males = { ...heads(1), males: heads(1).total };
    const one = [...swimmers, lostSome('2026-02-20', young, 'died')];
    expect(meant(roomOn('2026-02-20', one), one)).toBe('Rowan-1');
    const other = [...swimmers, lostSome('2026-02-20', males, 'died')];
    const room = roomOn('2026-02-20', other);
    expect(room.problems).toEqual([]);
    expect(room.stock.groups.get('Rowan')?.members.find(({ sex }) => sex === 'male')?.gone).toMatchObject({
      how: 'died',
    });
  });
  it('means the only candidate even where the number is too high: the count then contradicts', () => {
    const lines = [
      ...swimmers,
      move('2026-02-20', 'all', 'C1', { fish: named('Rowan-1') }),
      tally('2026-02-21', heads(30), { in: 'C1' }),
      tally('2026-02-25', heads(44), { in: 'C1' }),
    ];
    expect(kinds(roomOn('2026-02-25', lines))).toEqual(['counts-contradict']);
  });
  it('means young by a length', () => {
    const lines = [...swimmers, largest('2026-02-20', 'A1', 6)];
    expect(meant(roomOn('2026-02-20', lines), lines)).toBe('Rowan-1');
  });
  it('lists two broods that it may mean, and counts for neither', () => {
    const lines = [
      ...swimmers,
      laid('2026-03-05'),
      look('2026-03-16', 'free-swimming', about(50)),
      sizes('2026-03-20', 'average', [9]),
    ];
    const room = roomOn('2026-03-20', lines);
    expect(kinds(room)).toEqual(['which-fish']);
    expect(room.problems[0]?.says).toContain('Rowan-1 and Rowan-2');
  });
  it('that finds nobody says so', () => {
    const room = roomOn('2026-02-01', [...setUp, tally('2026-02-01', heads(3), { in: 'C1' })]);
    expect(kinds(room)).toEqual(['no-such-fish']);
  });
  it('means the young when it is said of their pair and only young can be meant', () => {
    const line: Line = [
      '2026-02-20',
      { kind: 'group', group: 'Rowan', member: null },
      { kind: 'kept back', fish: implied, count: heads(4) },
    ];
    const lines = [...swimmers, line];
    expect(meant(roomOn('2026-02-20', lines), lines)).toBe('Rowan-1');
  });
});

describe('a name', () => {
  it('carries into the later clauses of its line', () => {
    const lines = [
      ...swimmers,
      laid('2026-03-05'),
      look('2026-03-16', 'free-swimming', about(50)),
      move('2026-03-20', heads(20), 'C1', { fish: named('Rowan-1') }),
      sizes('2026-03-20', 'largest', [14]),
    ];
    expect(kinds(roomOn('2026-03-20', lines))).toEqual(['which-fish']);
    const room = oneLine('2026-03-20', lines, 2);
    expect(room.problems).toEqual([]);
    expect(meant(room, lines)).toBe('Rowan-1');
    expect(room.stock.broods.get('Rowan-1')?.sizes[0]?.tank).toBe('A1');
  });
  it('does not carry into a clause that it does not fit', () => {
    const bonded: Line = ['2026-02-20', tank('A1'), { kind: 'bonded', fish: implied }];
    const lines = [...swimmers, move('2026-02-20', heads(20), 'C1', { fish: named('Rowan-1') }), bonded];
    expect(meant(oneLine('2026-02-20', lines, 2), lines)).toBe('Rowan');
  });
  it('must be where the line says, and the problem says where they are', () => {
    const room = roomOn('2026-02-20', [
      ...swimmers,
      tally('2026-02-20', heads(40), { in: 'C1', fish: named('Rowan-1') }),
    ]);
    expect(kinds(room)).toEqual(['not-there']);
    expect(room.problems[0]?.says).toBe('Rowan-1 is not in C1: they are in A1');
  });
  it('that nothing has is told', () => {
    expect(
      kinds(roomOn('2026-02-20', [...swimmers, tally('2026-02-20', heads(40), { fish: named('Rowan-7') })])),
    ).toEqual(['unknown-brood']);
  });
});

describe('fish of a group', () => {
  const trio: Line[] = [
    ...setUp.slice(0, 3),
    tankLine('A2'),
    group('Sedge', 'trio', 'A2', {
      members: [
        ['male', null],
        ['female', 'Fern'],
        ['female', 'Lark'],
      ],
    }),
  ];
  it('that move must be named where several are of one sex', () => {
    const room = roomOn('2026-02-01', [
      ...trio,
      move('2026-02-01', 'unsaid', 'C1', { in: 'A2', fish: member('female') }),
    ]);
    expect(kinds(room)).toEqual(['which-member']);
    const fern = roomOn('2026-02-01', [
      ...trio,
      move('2026-02-01', 'unsaid', 'C1', { in: 'A2', fish: member('female', 'Fern', 'Sedge') }),
    ]);
    expect(fern.problems).toEqual([]);
    expect(fern.stock.groups.get('Sedge')?.parts.get('C1')).toEqual({ low: 1, likely: 1, high: 1 });
    expect(fern.stock.groups.get('Sedge')?.members.find(({ name }) => name === 'Fern')?.tank).toBe('C1');
  });
  it('that moves with her cave takes her eggs along, and nobody else their own', () => {
    const lines: Line[] = [
      ...trio,
      laid('2026-02-01', null, { in: 'A2', fish: member(null, 'Fern', 'Sedge') }),
      laid('2026-02-02', null, { in: 'A2', fish: member(null, 'Lark', 'Sedge') }),
      move('2026-02-03', 'unsaid', 'C1', { in: 'A2', fish: member('female', 'Fern', 'Sedge'), with: 'her cave' }),
    ];
    const room = roomOn('2026-02-03', lines);
    expect(room.problems).toEqual([]);
    expect([...(room.stock.broods.get('Sedge-1')?.parts.keys() ?? [])]).toEqual(['C1']);
    expect([...(room.stock.broods.get('Sedge-2')?.parts.keys() ?? [])]).toEqual(['A2']);
    expect(room.stock.broods.get('Sedge-1')?.mothers).toEqual(['Fern']);
  });
  it('that died do not spawn', () => {
    const fern = { in: 'A2', fish: member(null, 'Fern', 'Sedge') };
    const room = roomOn('2026-02-03', [
      ...trio,
      lostSome('2026-02-01', 'unsaid', 'died', fern),
      laid('2026-02-03', null, fern),
    ]);
    expect(kinds(room)).toEqual(['unknown-member']);
    expect(room.stock.broods.size).toBe(0);
  });
  it('of a pair that are lost must say which', () => {
    expect(kinds(roomOn('2026-02-01', [...setUp, lostSome('2026-02-01', heads(1), 'died')]))).toEqual(['which-member']);
    const room = roomOn('2026-02-01', [...setUp, lostSome('2026-02-01', 'unsaid', 'died', { fish: member('male') })]);
    expect(room.problems).toEqual([]);
    expect(room.stock.groups.get('Rowan')?.total).toEqual({ low: 1, likely: 1, high: 1 });
    expect(room.stock.groups.get('Rowan')?.members.find(({ sex }) => sex === 'male')?.gone).toMatchObject({
      how: 'died',
    });
  });
});

describe('a move', () => {
  it('to a tank that is unknown, retired or the same is no move', () => {
    const retired: Line[] = [...swimmers, ['2026-02-15', tank('C1'), { kind: 'tank retired', tank: 'C1' }]];
    const at = (to: string): string[] => kinds(roomOn('2026-02-20', [...retired, move('2026-02-20', heads(10), to)]));
    expect(at('Z9')).toEqual(['unknown-tank']);
    expect(at('C1')).toEqual(['retired-tank']);
    expect(at('A1')).toEqual(['moved-nowhere']);
  });
});

describe('fish told by their species', () => {
  const FIR = '2026-02-01 group Fir: limia; 5; in C1\n';
  const told = (line: string): unknown => {
    const room = journalOn('2026-03-01', `${FIR}${line}\n`);
    const total = (name: string): number | undefined => room.stock.groups.get(name)?.total.high;
    return [total('Ash'), total('Fir'), ...kinds(room)];
  };
  it('are those of it, where others live beside them', () => {
    expect(told('2026-02-10 C1: 2 dead')).toEqual([12, 5, 'which-fish']);
    expect(told('2026-02-10 C1: 2 krib dead')).toEqual([10, 5]);
    expect(told('2026-02-10 C1: sold 2 limias for 5')).toEqual([12, 3]);
    expect(told('2026-02-10 C1: counted 11 krib; 1 limia died')).toEqual([11, 4]);
  });
  it('are none where no such fish live', () => {
    expect(told('2026-02-10 A1: 1 limia dead')).toEqual([12, 5, 'no-such-fish']);
  });
  it('carry into the rest of the line no other fish', () => {
    expect(told('2026-02-10 C1: Ash counted 12; 1 limia died')).toEqual([12, 4]);
  });
});
