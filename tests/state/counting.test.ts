/** Counts: what is sure, what is guessed, what contradicts. Nothing is counted twice, nothing vanishes. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import type { Line } from '../support/events.ts';
import { roomOn } from '../support/events.ts';
import {
  about,
  heads,
  laid,
  look,
  lostSome,
  mix,
  move,
  named,
  sale,
  sample,
  setUp,
  sizes,
  speciesOf,
  group,
  tally,
  tankLine,
} from '../support/fishroom.ts';

const brood = (room: Room, name = 'Rowan-1') => {
  const found = room.stock.broods.get(name);
  if (!found) throw new Error(`no ${name}`);
  return found;
};
const part = (room: Room, tank: string, name = 'Rowan-1'): string => {
  const count = brood(room, name).parts.get(tank);
  return count ? `${String(count.low)}–${String(count.high)}` : 'none';
};
const total = (room: Room, name = 'Rowan-1'): string => {
  const count = brood(room, name).total;
  return `${String(count.low)}–${String(count.high)}`;
};
const kinds = (room: Room): string[] => room.problems.map(({ kind }) => kind);
const R1 = { fish: named('Rowan-1') };
/** About 70 swim on 10 February (35 to 140, since nobody could count them yet). */
const swimmers: Line[] = sample.slice(0, -1);

describe('a guess', () => {
  it('is half to double while nobody could count them, and a quarter either way after the first move', () => {
    expect(total(roomOn('2026-02-10', swimmers))).toBe('35–140');
    const later: Line[] = [
      ...swimmers,
      move('2026-03-10', 'all', 'C1', R1),
      tally('2026-03-20', about(60), { in: 'C1' }),
    ];
    expect(total(roomOn('2026-03-20', later))).toBe('45–75');
  });
  it('of two or three is no sure count', () => {
    const room = roomOn('2026-03-20', [
      ...swimmers,
      move('2026-03-10', 'all', 'C1', R1),
      tally('2026-03-20', about(2), { in: 'C1' }),
    ]);
    expect(total(room)).toBe('1–3');
  });
  it('gives way to a sure count inside it, silently', () => {
    const room = roomOn('2026-03-01', [...swimmers, tally('2026-03-01', heads(52), R1)]);
    expect(total(room)).toBe('52–52');
    expect(kinds(room)).toEqual([]);
  });
  it('is corrected by a sure count outside it, with a notice that names both lines', () => {
    const room = roomOn('2026-03-01', [...swimmers, tally('2026-03-01', heads(152), R1)]);
    expect(total(room)).toBe('152–152');
    expect(kinds(room)).toEqual(['guess-corrected']);
    expect(room.problems[0]).toMatchObject({ weight: 'doubt', at: { line: 8 }, also: [{ line: 7 }] });
  });
  it('below which fewer are counted may have been right: fish die unseen', () => {
    const room = roomOn('2026-03-01', [...swimmers, tally('2026-03-01', heads(20), R1)]);
    expect(total(room)).toBe('20–20');
    expect(kinds(room)).toEqual([]);
  });
  it('is not corrected before the day on which it was counted', () => {
    expect(total(roomOn('2026-02-28', [...swimmers, tally('2026-03-01', heads(152), R1)]))).toBe('35–140');
  });
  it('that fewer were moved than guessed leaves the others room', () => {
    const room = roomOn('2026-03-11', [...sample, tally('2026-03-11', heads(20), { in: 'C1' })]);
    expect(part(room, 'C1')).toBe('20–20');
    expect(part(room, 'A1')).toBe('1–120');
  });
});

describe('a sure count', () => {
  const counted: Line[] = [...swimmers, tally('2026-03-01', heads(52), R1)];
  it('falls by what surely went, and is none lower for fish that went unseen', () => {
    const room = roomOn('2026-03-20', [
      ...counted,
      lostSome('2026-03-05', heads(2), 'died', R1),
      tally('2026-03-10', heads(47), R1),
    ]);
    expect(total(room)).toBe('47–47');
    expect(kinds(room)).toEqual([]);
  });
  it('against a sure count is a contradiction that names both lines; the later stands', () => {
    const room = roomOn('2026-03-20', [...counted, tally('2026-03-10', heads(55), R1)]);
    expect(kinds(room)).toEqual(['counts-contradict']);
    expect(room.problems[0]).toMatchObject({ at: { line: 9 }, also: [{ line: 8 }] });
    expect(total(room)).toBe('55–55');
  });
  it('stands against a higher guess', () => {
    const room = roomOn('2026-03-20', [...counted, tally('2026-03-10', about(150), R1)]);
    expect(kinds(room)).toEqual(['guess-above-count']);
    expect(total(room)).toBe('52–52');
  });
  it('is not widened by a guess that holds it', () => {
    expect(total(roomOn('2026-03-20', [...counted, tally('2026-03-10', about(45), R1)]))).toBe('52–52');
  });
  it('of the same day gives way to the one filed later', () => {
    const room = roomOn('2026-03-20', [...counted, tally('2026-03-01', heads(57), R1)]);
    expect(kinds(room)).toEqual([]);
    expect(total(room)).toBe('57–57');
    expect(brood(room).counts).toHaveLength(4);
    expect(brood(room).counts.filter(({ replaced }) => replaced)).toHaveLength(1);
  });
  it.each<[string, Line]>([
    ['a length', sizes('2026-03-01', 'bulk', [22], R1)],
    ['a loss', lostSome('2026-03-01', heads(2), 'died', R1)],
    ['a move', move('2026-03-01', heads(10), 'C1', R1)],
    ['a count elsewhere', tally('2026-03-01', heads(3), { ...R1, in: 'C1' })],
  ])('of the same day gives way to the one filed later after %s too', (what, between) => {
    const lines = [...swimmers, move('2026-02-28', heads(3), 'C1', R1), tally('2026-03-01', heads(52), R1)];
    const room = roomOn('2026-03-20', [...lines, between, tally('2026-03-01', heads(57), R1)]);
    expect(kinds(room)).toEqual([]);
    expect(part(room, 'A1')).toBe('57–57');
    expect(part(room, 'C1')).toBe(what === 'a move' ? '13–13' : '3–3');
  });
  it('that another replaced contradicts nothing any more, and bounds nothing', () => {
    const wrong: Line[] = [...counted, tally('2026-03-10', heads(55), R1)];
    const mended = [...wrong, tally('2026-03-10', heads(50), R1)];
    expect(kinds(roomOn('2026-03-20', wrong))).toEqual(['counts-contradict']);
    expect(kinds(roomOn('2026-03-20', mended))).toEqual([]);
    expect(total(roomOn('2026-03-20', mended))).toBe('50–50');
  });
  it('that replaced another of its day is still bounded by those of earlier days and what went since', () => {
    const lines: Line[] = [
      ...counted,
      tally('2026-03-10', heads(40), R1),
      lostSome('2026-03-10', heads(2), 'died', R1),
    ];
    expect(kinds(roomOn('2026-03-20', [...lines, tally('2026-03-10', heads(50), R1)]))).toEqual([]);
    expect(kinds(roomOn('2026-03-20', [...lines, tally('2026-03-10', heads(51), R1)]))).toEqual(['counts-contradict']);
  });
});

describe('fish that go', () => {
  const counted: Line[] = [...swimmers, tally('2026-03-01', heads(52), R1)];
  it('cannot be more than were surely there: both lines are shown and nothing changes', () => {
    for (const line of [
      move('2026-03-10', heads(60), 'C1', R1),
      lostSome('2026-03-10', heads(60), 'died', R1),
      sale('2026-03-10', heads(60), R1),
    ]) {
      const room = roomOn('2026-03-10', [...counted, line]);
      expect(kinds(room)).toEqual(['more-out-than-in']);
      expect(room.problems[0]).toMatchObject({ weight: 'stops', at: { line: 9 }, also: [{ line: 8 }] });
      expect(total(room)).toBe('52–52');
      expect(part(room, 'A1')).toBe('52–52');
    }
  });
  it('may be more than were guessed: the guess was low', () => {
    const guessed: Line[] = [...swimmers, move('2026-03-10', heads(150), 'C1', { ...R1, stay: true })];
    const room = roomOn('2026-03-10', guessed);
    expect(kinds(room)).toEqual(['guess-corrected']);
    expect(part(room, 'C1')).toBe('150–150');
    expect(brood(room).total.low).toBe(151);
  });
  it('leave at least one where the rest stay', () => {
    const room = roomOn('2026-03-10', [...counted, move('2026-03-10', heads(52), 'C1', { ...R1, stay: true })]);
    expect(kinds(room)).toEqual(['more-out-than-in']);
  });
  it('by halves leave the other half', () => {
    const room = roomOn('2026-03-10', [...counted, move('2026-03-10', 'half', 'C1', R1)]);
    expect([part(room, 'A1'), part(room, 'C1'), total(room)]).toEqual(['26–26', '26–26', '52–52']);
  });
  it('as "a few" are neither none nor exactly three', () => {
    // trap: subtracting "a few" as zero or as exactly three
    const few = { ...heads(3), total: { low: 3, likely: 4, high: 6 }, as: 'guess' as const };
    const room = roomOn('2026-03-10', [...counted, lostSome('2026-03-10', few, 'died', R1)]);
    expect(total(room)).toBe('46–49');
  });
  it('of an unknown number leave none when all went', () => {
    const room = roomOn('2026-02-20', [
      ...setUp,
      laid('2026-02-02'),
      look('2026-02-12', 'free-swimming'),
      lostSome('2026-02-20', 'all', 'eaten', R1),
    ]);
    expect(total(room)).toBe('0–0');
    expect(brood(room).ended).toMatchObject({ how: 'gone' });
  });
});

describe('a brood that was split', () => {
  // trap: counting a brood twice after a split, or losing the leftovers after "all moved"
  const counted: Line[] = [...swimmers, tally('2026-03-01', heads(52), R1)];
  it('is counted once', () => {
    const room = roomOn('2026-03-10', [...counted, move('2026-03-10', heads(40), 'C1', { ...R1, stay: true })]);
    expect([part(room, 'A1'), part(room, 'C1'), total(room)]).toEqual(['12–12', '40–40', '52–52']);
  });
  it('keeps what turns up after all were moved', () => {
    const moved: Line[] = [...counted, move('2026-03-10', 'all', 'C1', R1)];
    expect(part(roomOn('2026-03-10', moved), 'A1')).toBe('none');
    const room = roomOn('2026-03-12', [...moved, tally('2026-03-12', heads(3), R1)]);
    expect(room.problems).toEqual([]);
    expect([part(room, 'A1'), part(room, 'C1'), total(room)]).toEqual(['3–3', '49–49', '52–52']);
  });
  it('in three tanks must be told from which one it goes', () => {
    const three: Line[] = [
      ...counted,
      tankLine('D1'),
      tankLine('E1'),
      move('2026-03-10', heads(10), 'C1', R1),
      move('2026-03-10', heads(10), 'D1', R1),
    ];
    const away = (to: string): Line => [
      '2026-03-11',
      { kind: 'brood', brood: 'Rowan-1' },
      { kind: 'moved', fish: { kind: 'implied' }, count: heads(5), which: 'any', to, with: null, restStay: false },
    ];
    const room = roomOn('2026-03-11', [...three, away('E1')]);
    expect(kinds(room)).toEqual(['which-tank']);
    expect(room.problems[0]?.write).toBe('A1: moved … Rowan-1 to E1');
    expect(total(room)).toBe('52–52');
  });
  it('comes back with a few that turn up after all went', () => {
    const sold: Line[] = [...counted, sale('2026-03-10', 'all', R1)];
    expect(brood(roomOn('2026-03-11', sold)).ended).toMatchObject({ how: 'gone' });
    const room = roomOn('2026-03-12', [
      ...sold,
      tally('2026-03-12', heads(2), R1),
      lostSome('2026-03-12', heads(2), 'culled', R1),
    ]);
    expect(room.problems).toEqual([]);
    expect(total(roomOn('2026-03-12', [...sold, tally('2026-03-12', heads(2), R1)]))).toBe('2–2');
    expect(total(room)).toBe('0–0');
  });
  it('is counted as a whole under its own name', () => {
    const split: Line[] = [
      ...sample,
      [
        '2026-03-20',
        { kind: 'brood', brood: 'Rowan-1' },
        { kind: 'counted', fish: { kind: 'implied' }, heads: heads(70) },
      ],
    ];
    const room = roomOn('2026-03-20', split);
    expect(total(room)).toBe('70–70');
    expect(part(room, 'A1')).toBe('14–36');
  });
});

describe('mixed stocks', () => {
  const two: Line[] = [
    ...setUp,
    tankLine('B1'),
    group('Ash', 'pair', 'B1', {
      members: [
        ['male', null],
        ['female', null],
      ],
    }),
    laid('2026-01-10'),
    laid('2026-01-20', null, { in: 'B1' }),
    look('2026-01-20', 'free-swimming', heads(20)),
    look('2026-01-31', 'free-swimming', heads(30), { in: 'B1' }),
    move('2026-03-01', 'all', 'C1', { fish: named('Rowan-1') }),
    move('2026-03-02', heads(25), 'C1', { in: 'B1', fish: named('Ash-1') }),
    mix('2026-03-03', 'Rowan-1', 'Ash-1', { in: 'C1' }),
  ];
  it('are one body, of one of the two, from then on', () => {
    const room = roomOn('2026-03-03', two);
    expect(room.problems).toEqual([]);
    const both = brood(room, 'Rowan-1 or Ash-1');
    expect(both.oneOf).toEqual(['Rowan-1', 'Ash-1']);
    expect(total(room, 'Rowan-1 or Ash-1')).toBe('45–45');
    expect(brood(room, 'Rowan-1').ended).toMatchObject({ how: 'mixed' });
    expect(total(room, 'Ash-1')).toBe('5–5');
  });
  it('answer to either name where they are, and to their own where they are not', () => {
    const room = roomOn('2026-03-04', [
      ...two,
      lostSome('2026-03-04', heads(2), 'died', { in: 'C1', fish: named('Ash-1') }),
      lostSome('2026-03-04', heads(1), 'died', { in: 'B1', fish: named('Ash-1') }),
    ]);
    expect(total(room, 'Rowan-1 or Ash-1')).toBe('43–43');
    expect(total(room, 'Ash-1')).toBe('4–4');
  });
  it('must share a tank', () => {
    const split = [...two.slice(0, -3), move('2026-03-01', heads(10), 'C1', { fish: named('Rowan-1') })];
    const line: Line = ['2026-03-03', { kind: 'room' }, { kind: 'mixed', a: named('Rowan-1'), b: named('Ash-1') }];
    expect(kinds(roomOn('2026-03-03', [...split, line]))).toEqual(['not-together']);
    const apart = two.slice(0, -2);
    expect(kinds(roomOn('2026-03-03', [...apart, mix('2026-03-03', 'Rowan-1', 'Ash-1', { in: 'C1' })]))).toEqual([
      'not-there',
    ]);
  });
});

describe('a colony', () => {
  const colony: Line[] = [
    tankLine('B1'),
    speciesOf('limia', 'livebearer'),
    group('Pebble', 'colony', 'B1', { species: 'limia', count: about(25) }),
  ];
  it('is one running stock: young seen in it are no brood, and raise it', () => {
    const room = roomOn('2026-02-01', [...colony, look('2026-02-01', 'born', heads(6), { in: 'B1' })]);
    expect([...room.stock.broods.keys()]).toEqual([]);
    expect(room.stock.groups.get('Pebble')?.total).toEqual({ low: 25, likely: 31, high: 37 });
  });
  it('may grow unseen without contradicting an earlier count', () => {
    const room = roomOn('2026-03-01', [
      ...colony,
      tally('2026-02-01', heads(22), { in: 'B1' }),
      tally('2026-03-01', heads(40), { in: 'B1' }),
    ]);
    expect(kinds(room)).toEqual([]);
    expect(room.stock.groups.get('Pebble')?.total.low).toBe(40);
  });
});
