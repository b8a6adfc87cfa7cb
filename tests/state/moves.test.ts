/** Fish that change tanks, and stocks that are mixed: who went, who stayed, what went along, what is one of the two. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { days } from '../support/fishroom.ts';
import { journalOn } from '../support/journal.ts';
import { ROOM } from '../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const SWIM = '2026-02-02 A1: spawned\n2026-02-10 A1: free-swimming, 52';
const roomOf = (...lines: readonly string[]): Room => journalOn('2026-04-30', `${lines.join('\n')}\n`);
const body = (room: Room, name: string) => {
  const found = room.stock.broods.get(name) ?? room.stock.groups.get(name);
  if (!found) throw new Error(`no ${name}`);
  return found;
};
/** `A1 20–20, C2 32–32`. */
const parts = (room: Room, name: string): string =>
  [...body(room, name).parts].map(([tank, { low, high }]) => `${tank} ${String(low)}–${String(high)}`).join(', ');
/** `male A2, Fern C2`: where those are that can be told apart. */
const members = (room: Room, name: string): string =>
  (room.stock.groups.get(name)?.members ?? [])
    .map((fish) => `${fish.name ?? fish.sex ?? 'one'} ${fish.gone === null ? (fish.tank ?? '?') : fish.gone.how}`)
    .join(', ');
const told = (room: Room): string[] =>
  room.problems.map(({ kind, at, also }) => [kind, ...[at, ...also].map(({ line }) => line - SETUP)].join(' '));
const moves = (room: Room): string[] =>
  room.stock.moves.map(({ body: name, from, to, as, count }) =>
    [name, from, to, as, `${String(count.low)}–${String(count.high)}`].join(' '),
  );

describe('a group', () => {
  it('goes with all its fish, and lives in the other tank from then on', () => {
    for (const line of ['A2: Sedge moved to C2', 'Sedge: moved to C2']) {
      const room = roomOf(`2026-02-10 ${line}`);
      expect([parts(room, 'Sedge'), members(room, 'Sedge')]).toEqual(['C2 3–3', 'male C2, Fern C2, Lark C2']);
      expect([room.stock.groups.get('Sedge')?.home, moves(room)]).toEqual(['C2', ['Sedge A2 C2 all 3–3']]);
    }
  });
  it('of which one goes has its home still; joined again, in the new tank', () => {
    const fern = '2026-02-10 A2: Fern moved to C2';
    const room = roomOf(fern);
    expect([parts(room, 'Sedge'), members(room, 'Sedge')]).toEqual(['A2 2–2, C2 1–1', 'male A2, Fern C2, Lark A2']);
    expect(room.stock.groups.get('Sedge')?.home).toBe('A2');
    const both = roomOf('2026-02-10 A2: moved 2 females to C2');
    expect(members(both, 'Sedge')).toBe('male A2, Fern C2, Lark C2');
    const back = roomOf(fern, '2026-02-12 C2: Fern moved to A2');
    expect([parts(back, 'Sedge'), members(back, 'Sedge')]).toEqual(['A2 3–3', 'male A2, Fern A2, Lark A2']);
  });
  it('of which a number goes must say which, and nothing changes till it does', () => {
    const one = roomOf('2026-02-10 A2: moved 1 to C2');
    expect([told(one), members(one, 'Sedge')]).toEqual([['which-member 1 -5'], 'male A2, Fern A2, Lark A2']);
    expect(told(roomOf('2026-02-10 A2: moved a female to C2'))).toEqual(['which-member 1 -5']);
    expect(parts(one, 'Sedge')).toBe('A2 3–3');
    expect(members(roomOf('2026-02-10 A2: moved the male to C2'), 'Sedge')).toBe('male C2, Fern A2, Lark A2');
  });
  it('in two tanks that all go to one: those of the other', () => {
    const room = roomOf('2026-02-10 C1: Ash moved 4 to C2', '2026-02-11 Ash: moved all to C2');
    expect([parts(room, 'Ash'), told(room)]).toEqual(['C2 12–12', []]);
  });
  it('in two tanks that all go to a third: those of both; a number of them must say from where', () => {
    const apart = '2026-02-10 A1: moved the male to C2';
    const room = roomOf(apart, '2026-02-11 Rowan: moved to C1');
    expect([parts(room, 'Rowan'), members(room, 'Rowan')]).toEqual(['C1 2–2', 'male C1, female C1']);
    expect(moves(room).slice(1)).toEqual(['Rowan A1 C1 all 1–1', 'Rowan C2 C1 all 1–1']);
    expect(room.stock.groups.get('Rowan')?.home).toBe('C1');
    const two = roomOf(apart, '2026-02-11 Rowan: moved 2 to C1');
    expect([told(two), parts(two, 'Rowan')]).toEqual([['which-tank 2 1'], 'A1 1–1, C2 1–1']);
  });
  it('or one of its fish that is where it goes already went nowhere', () => {
    const apart = '2026-02-10 A1: moved the male to C2';
    const room = roomOf(apart, '2026-02-11 Rowan: male moved to C2', '2026-02-12 Sedge: moved to A2');
    expect([told(room), parts(room, 'Rowan')]).toEqual([['moved-nowhere 2 1', 'moved-nowhere 3 -5'], 'A1 1–1, C2 1–1']);
  });
});

describe('a brood', () => {
  it('goes from the one tank where it is, or from the one that is not where it goes', () => {
    const room = roomOf(SWIM, '2026-02-20 A1: Rowan-1 moved 20 to C2', '2026-02-21 Rowan-1: moved 12 to C2');
    expect([parts(room, 'Rowan-1'), told(room)]).toEqual(['A1 20–20, C2 32–32', []]);
  });
  it('of two tanks that goes to a third must say from which', () => {
    const two = '2026-02-20 A1: Rowan-1 moved 20 to C2';
    const room = roomOf(SWIM, two, '2026-02-22 Rowan-1: moved 5 to C1');
    expect([told(room), parts(room, 'Rowan-1')]).toEqual([['which-tank 4 3'], 'A1 32–32, C2 20–20']);
    expect(room.problems[0]?.says).toContain('Rowan-1 is in A1 and C2');
    expect(room.problems[0]?.write).toBe('A1: moved … Rowan-1 to C1');
  });
  it('that is there already, or whose tank is retired or unknown that day, goes nowhere', () => {
    const all = '2026-02-20 Rowan-1: moved all to C2';
    expect(told(roomOf(SWIM, all, '2026-02-21 Rowan-1: moved all to C2'))).toEqual(['moved-nowhere 4 3']);
    const here = roomOf(SWIM, '2026-02-20 A1: moved 20 Rowan-1 to A1');
    expect([told(here), here.problems[0]?.says]).toEqual([['moved-nowhere 3'], 'A1 is where they already are']);
    const retired = roomOf('2026-02-01 C2: retired', SWIM, '2026-02-20 A1: Rowan-1 moved 20 to C2');
    expect([told(retired), parts(retired, 'Rowan-1')]).toEqual([['retired-tank 4 1'], 'A1 52–52']);
  });
  it('of which more would go than there are goes nowhere, and brings no hold along', () => {
    const room = roomOf(SWIM, '2026-02-20 A1: Rowan-1 moved 60 to C2');
    expect([told(room), parts(room, 'Rowan-1'), moves(room)]).toEqual([['more-out-than-in 3 2'], 'A1 52–52', []]);
  });
  it('that was moved as eggs can be counted no better when it swims', () => {
    const eggs = ['2026-02-02 A1: spawned', '2026-02-04 A1: Rowan-1 moved all to C2'];
    const room = roomOf(...eggs, '2026-02-12 C2: Rowan-1 free-swimming, about 70');
    expect([parts(room, 'Rowan-1'), told(room)]).toEqual(['C2 35–140', []]);
  });
  it('leaves one at least where the rest stay, and is moved in the eyes of holds as a number', () => {
    const room = roomOf(
      '2026-02-02 A1: spawned',
      '2026-02-10 A1: free-swimming, about 70',
      '2026-02-20 A1: Rowan-1 moved all to C2, rest stay',
    );
    expect(body(room, 'Rowan-1').parts.get('A1')?.low).toBe(1);
    expect(moves(room)[0]).toMatch(/^Rowan-1 A1 C2 number /);
    expect(moves(roomOf(SWIM, '2026-02-20 A1: Rowan-1 moved half to C2'))).toEqual(['Rowan-1 A1 C2 half 26–26']);
  });
  it('can be counted from its first move on: about 40 is a quarter either way', () => {
    const swim = '2026-02-02 A1: spawned\n2026-02-10 A1: free-swimming, about 200';
    const before = roomOf(swim, '2026-02-20 A1: Rowan-1 counted about 100');
    expect(body(before, 'Rowan-1').total).toMatchObject({ low: 100, high: 200 });
    const after = roomOf(swim, '2026-02-19 A1: Rowan-1 moved all to C2', '2026-02-20 C2: Rowan-1 counted about 100');
    expect(body(after, 'Rowan-1').total).toMatchObject({ low: 75, high: 125 });
  });
});

describe('a female with her cave', () => {
  const two = '2026-02-02 A2: Fern spawned\n2026-02-02 A2: Lark spawned';
  const where = (...lines: readonly string[]): string[] => {
    const room = roomOf(two, ...lines);
    return [...room.stock.broods.keys()].map((name) => [...body(room, name).parts.keys()].join());
  };
  it.each([
    ['takes her eggs along, not those of the other', 'A2: moved Fern to C2 with her cave', ['C2', 'A2']],
    ['or her young, by any word for them', 'A2: moved Lark to C2 with eggs', ['A2', 'C2']],
    ['and nothing with something else', 'A2: moved Fern to C2 with a plant', ['A2', 'A2']],
    ['nor without it', 'A2: moved Fern to C2', ['A2', 'A2']],
    ['nor does a male', 'A2: moved the male to C2 with cave', ['A2', 'A2']],
    ['the whole group takes both', 'A2: Sedge moved to C2 with cave', ['C2', 'C2']],
  ])('%s', (_, line, tanks) => {
    expect(where(`2026-02-04 ${line}`)).toEqual(tanks);
  });
  it('takes no young that swim', () => {
    const swim = '2026-02-14 A2: Sedge-1 free-swimming, 20';
    expect(where(swim, '2026-02-15 A2: moved Fern to C2 with her cave')).toEqual(['A2', 'A2']);
  });
  it('is a move of the brood too, for holds', () => {
    const { moves: all } = roomOf(two, '2026-02-04 A2: moved Fern to C2 with her cave').stock;
    expect(all.map((move) => `${move.body} ${String(move.from)} ${move.to}`)).toEqual(['Sedge A2 C2', 'Sedge-1 A2 C2']);
  });
});

describe('two stocks that are mixed', () => {
  const mixed = `${SWIM}
2026-02-20 A1: Rowan-1 moved 20 to C1
2026-03-01 C1: mixed Rowan-1 and Ash`;
  it('are one stock in that tank; what is elsewhere keeps its name', () => {
    const room = roomOf(mixed, '2026-03-02 C1: Rowan-1 died 2', '2026-03-03 A1: Rowan-1 died 3');
    expect(parts(room, 'Rowan-1 or Ash')).toBe('C1 30–30');
    expect([parts(room, 'Rowan-1'), parts(room, 'Ash'), told(room)]).toEqual(['A1 29–29', '', []]);
    expect(body(room, 'Rowan-1').total).toMatchObject({ low: 29, high: 29 });
    expect(body(room, 'Ash').total).toMatchObject({ low: 0, high: 0 });
    expect([...body(room, 'Rowan-1 or Ash').lines].map(({ line }) => line - SETUP)).toEqual([4, 5]);
  });
  it('of which one went in whole: its name alone means the mix', () => {
    const whole = '2026-02-20 A1: Rowan-1 moved all to C1\n2026-03-01 C1: mixed Rowan-1 and Ash';
    const room = roomOf(SWIM, whole, '2026-03-03 Rowan-1: died 3');
    expect([parts(room, 'Rowan-1 or Ash'), told(room)]).toEqual(['C1 61–61', []]);
    expect(room.stock.broods.get('Rowan-1')?.ended?.how).toBe('mixed');
  });
  it('of two broods: laid from the first to the last day of both, of both mothers, of no pair of the two', () => {
    const lines = `2026-02-02 A2: Fern spawned
2026-02-12 A2: Sedge-1 free-swimming, 30
2026-02-06 A1: spawned
2026-02-16 A1: Rowan-1 free-swimming, 20
2026-03-01 A1: Rowan-1 moved all to A2
2026-03-02 A2: mixed Sedge-1 and Rowan-1`;
    const mix = roomOf(lines).stock.broods.get('Sedge-1 or Rowan-1');
    expect([days(mix?.laid ?? null), mix?.mothers, mix?.group, mix?.species]).toEqual([
      '2026-02-02/2026-02-06',
      ['Fern'],
      null,
      'krib',
    ]);
    const third = `${lines}
2026-03-03 C1: Ash moved all to A2
2026-03-04 A2: mixed Rowan-1 and Ash`;
    expect(roomOf(third).stock.broods.get('Sedge-1 or Rowan-1 or Ash')?.oneOf).toEqual(['Sedge-1', 'Rowan-1', 'Ash']);
  });
  it('of two broods of one pair are of that pair', () => {
    const lines = `2026-02-02 A2: Fern spawned
2026-02-12 A2: Sedge-1 free-swimming, 30
2026-02-13 A2: Lark spawned
2026-02-23 A2: Sedge-2 free-swimming, 20
2026-03-02 A2: mixed Sedge-1 and Sedge-2`;
    expect(roomOf(lines).stock.broods.get('Sedge-1 or Sedge-2')).toMatchObject({
      group: 'Sedge',
      mothers: ['Fern', 'Lark'],
      total: { low: 50, high: 50 },
    });
  });
});
