/** Eggs as a keeper writes of them: found, white, gone, only suspected; whose they are, and when they can have been laid. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { days } from '../support/fishroom.ts';
import { journalOn } from '../support/journal.ts';
import { ROOM } from '../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const roomOf = (...lines: readonly string[]): Room => journalOn('2026-04-30', `${lines.join('\n')}\n`);
const brood = (room: Room, name = 'Rowan-1') => {
  const found = room.stock.broods.get(name);
  if (!found) throw new Error(`no ${name} among ${[...room.stock.broods.keys()].join(', ')}`);
  return found;
};
const names = (room: Room): string[] => [...room.stock.broods.keys()];
const laid = (room: Room, name = 'Rowan-1'): string | null => days(brood(room, name).laid);
const total = (room: Room, name = 'Rowan-1'): string => {
  const { low, high } = brood(room, name).total;
  return `${String(low)}–${String(high)}`;
};
/** Kind of each problem, its line and those beside it, counted from the first line here. */
const told = (room: Room): string[] =>
  room.problems.map(({ kind, at, also }) => [kind, ...[at, ...also].map(({ line }) => line - SETUP)].join(' '));
const eggsOf = (room: Room, group: string) => room.stock.groups.get(group)?.suspected.map(({ kind }) => kind);

describe('eggs that went white', () => {
  const spawn = '2026-02-02 A1: spawned, about 80 eggs';
  it('are taken off the clutch, and add up', () => {
    const room = roomOf(spawn, '2026-02-03 A1: eggs white 30', '2026-02-04 A1: eggs white 10');
    expect([total(room), brood(room).white]).toEqual(['0–120', { low: 40, likely: 40, high: 40 }]);
    expect(brood(room).gone.map(({ how }) => how)).toEqual(['died', 'died']);
    expect(told(room)).toEqual([]);
  });
  it('more than were laid are left out, with the line of the spawning', () => {
    const room = roomOf('2026-02-02 A1: spawned, 80 eggs', '2026-02-03 A1: eggs white 90');
    expect(told(room)).toEqual(['more-out-than-in 2 1']);
    expect([total(room), brood(room).white]).toEqual(['80–80', null]);
  });
});

describe('eggs gone', () => {
  it('end the brood on that day', () => {
    const room = roomOf('2026-02-02 A1: spawned, about 80 eggs', '2026-02-04 A1: eggs gone');
    expect(brood(room).ended).toMatchObject({ how: 'eggs gone', place: { line: SETUP + 2 } });
    expect([total(room), brood(room).parts.size]).toEqual(['0–0', 0]);
  });
  it('of one female leave the eggs of the other', () => {
    const two = ['2026-02-02 A2: Fern spawned', '2026-02-02 A2: Lark spawned'];
    const room = roomOf(...two, '2026-02-04 A2: Sedge-2 eggs gone');
    expect([brood(room, 'Sedge-1').ended, brood(room, 'Sedge-2').ended?.how]).toEqual([null, 'eggs gone']);
  });
  it('are not said of young that hatched: nothing changes', () => {
    const room = roomOf('2026-02-02 A1: spawned', '2026-02-06 A1: wrigglers', '2026-02-07 A1: eggs gone');
    expect(told(room)).toEqual(['no-such-fish 3']);
    expect(brood(room).ended).toBeNull();
  });
});

describe('a look that finds no eggs', () => {
  it('ends eggs too young to have hatched, with a doubt beside the line that saw them', () => {
    const room = roomOf('2026-02-02 A1: spawned', '2026-02-03 A1: no eggs');
    expect(told(room)).toEqual(['eggs-missing 2 1']);
    expect(brood(room).ended?.how).toBe('eggs gone');
    expect(room.problems[0]?.write).toBe('what became of them: A1: Rowan-1 eggs gone');
  });
  it('doubts eggs that can have hatched, and leaves them', () => {
    const room = roomOf('2026-02-02 A1: spawned', '2026-02-03 A1: eggs seen', '2026-02-09 A1: no eggs');
    expect(told(room)).toEqual(['eggs-missing 3 2']);
    expect(brood(room).ended).toBeNull();
    expect(room.problems[0]?.write).toContain('A1: Rowan-1 wrigglers');
  });
  it('says nothing of young that hatched or swim', () => {
    const swim = ['2026-02-02 A1: spawned', '2026-02-10 A1: free-swimming, 50'];
    const room = roomOf(...swim, '2026-02-11 A1: no eggs');
    expect([told(room), total(room)]).toEqual([[], '50–50']);
    expect(told(roomOf('2026-02-02 A1: spawned', '2026-02-06 A1: wrigglers', '2026-02-07 A1: no eggs'))).toEqual([]);
  });
  it('with one female says nothing of the eggs of the other', () => {
    const fern = '2026-02-02 A2: Fern spawned';
    expect(told(roomOf(fern, '2026-02-03 A2: Lark no eggs'))).toEqual([]);
    expect(told(roomOf(fern, '2026-02-03 A2: Fern no eggs'))).toEqual(['eggs-missing 2 1']);
    expect(told(roomOf(fern, '2026-02-03 A2: no eggs'))).toEqual(['eggs-missing 2 1']);
    const room = roomOf(fern, '2026-02-02 A2: Lark spawned', '2026-02-03 A2: Lark no eggs');
    expect([brood(room, 'Sedge-1').ended, brood(room, 'Sedge-2').ended?.how]).toEqual([null, 'eggs gone']);
  });
  it('settles what was suspected, and not that a spawn is near', () => {
    const lines = ['2026-02-02 A1: maybe spawned', '2026-02-03 A1: about to spawn'];
    expect(eggsOf(roomOf(...lines), 'Rowan')).toEqual(['maybe', 'about to spawn']);
    const room = roomOf(...lines, '2026-02-04 A1: no eggs');
    expect(eggsOf(room, 'Rowan')).toEqual(['about to spawn']);
    expect(brood(room, 'Rowan suspected 2026-02-02').ended?.how).toBe('eggs gone');
    expect(told(room)).toEqual([]);
  });
});

describe('laid', () => {
  it('on days that are stated, no earlier than the last look without eggs', () => {
    expect(laid(roomOf('2026-02-10 A1: spawned 2-4 days ago'))).toBe('2026-02-06/2026-02-08');
    const none = '2026-02-07 A1: no eggs';
    expect(laid(roomOf(none, '2026-02-10 A1: spawned 2-4 days ago'))).toBe('2026-02-07/2026-02-08');
    expect(laid(roomOf('2026-02-04 A1: no eggs', '2026-02-10 A1: spawned 2-4 days ago'))).toBe('2026-02-06/2026-02-08');
  });
  it('by a day: since the last look without eggs, else within the week before', () => {
    expect(laid(roomOf('2026-02-10 A1: spawned by 2026-02-08'))).toBe('2026-02-01/2026-02-08');
    const none = '2026-02-04 A1: no eggs';
    expect(laid(roomOf(none, '2026-02-10 A1: spawned by 2026-02-08'))).toBe('2026-02-04/2026-02-08');
    expect(laid(roomOf('2026-02-10 A1: eggs seen by 2026-02-08'))).toBe('2026-02-03/2026-02-08');
  });
  it('most likely in the middle of stated days', () => {
    const { laid: window } = brood(roomOf('2026-02-10 A1: spawned 2-6 days ago'));
    expect([window.low, window.likely, window.high].map((on) => (on ?? 0) - (window.low ?? 0))).toEqual([0, 2, 4]);
  });
  it('where it is only suspected: that day or the one before, or the days that are stated', () => {
    const suspected = 'Rowan suspected 2026-02-10';
    const maybe = '2026-02-10 A1: maybe spawned';
    expect(laid(roomOf(maybe), suspected)).toBe('2026-02-09/2026-02-10');
    expect(laid(roomOf(`${maybe} 2-4 days ago`), suspected)).toBe('2026-02-06/2026-02-08');
    expect(laid(roomOf('2026-02-10 A1: no eggs', maybe), suspected)).toBe('2026-02-10/2026-02-10');
    expect(laid(roomOf('2026-02-08 A1: no eggs', maybe), suspected)).toBe('2026-02-09/2026-02-10');
    expect(total(roomOf(maybe), suspected)).toBe('0–Infinity');
  });
  it.each([
    ['spawned', 'seen'],
    ['eggs seen', 'bounded'],
    ['wrigglers', 'cast back'],
    ['free-swimming', 'cast back'],
  ])('%s: how it is known', (clause, known) => {
    expect(brood(roomOf(`2026-02-10 A1: ${clause}`)).laidKnown).toBe(known);
  });
});

describe('what was suspected and is seen later', () => {
  it('is the brood that the line names, with both lines, among the broods of its pair', () => {
    const room = roomOf('2026-02-10 A1: maybe spawned', '2026-02-11 A1: eggs seen brood R7');
    expect([names(room), room.stock.groups.get('Rowan')?.broods]).toEqual([['R7'], ['R7']]);
    expect(brood(room, 'R7').lines.map(({ line }) => line - SETUP)).toEqual([1, 2]);
    expect([brood(room, 'R7').laidKnown, laid(room, 'R7')]).toEqual(['bounded', '2026-02-09/2026-02-10']);
  });
  it('takes the next number, and leaves the earlier broods of the pair', () => {
    const first = ['2026-01-10 A1: spawned', '2026-01-25 A1: free-swimming, 40'];
    const room = roomOf(...first, '2026-02-10 A1: maybe spawned', '2026-02-11 A1: eggs seen');
    expect([names(room), room.stock.groups.get('Rowan')?.broods]).toEqual([
      ['Rowan-1', 'Rowan-2'],
      ['Rowan-1', 'Rowan-2'],
    ]);
    expect(total(room)).toBe('40–40');
  });
  it('is of the female that the lines name', () => {
    const two = ['2026-02-02 A2: Fern maybe spawned', '2026-02-02 A2: Lark maybe spawned'];
    const room = roomOf(...two, '2026-02-04 A2: Lark no eggs', '2026-02-05 A2: Fern wrigglers');
    expect(brood(room, 'Sedge-1')).toMatchObject({ mothers: ['Fern'], suspected: false, ended: null });
    expect([...room.stock.broods.values()].find(({ mothers }) => mothers.includes('Lark'))?.ended?.how).toBe(
      'eggs gone',
    );
  });
});

describe('words of a pair about its spawn and fry', () => {
  it('that one is near are kept with the female that they name', () => {
    const room = roomOf('2026-02-02 A1: about to spawn', '2026-02-03 A2: Fern about to spawn');
    expect(room.stock.groups.get('Rowan')?.suspected).toMatchObject([{ kind: 'about to spawn', mother: null }]);
    expect(room.stock.groups.get('Sedge')?.suspected).toMatchObject([{ kind: 'about to spawn', mother: 'Fern' }]);
    expect(names(room)).toEqual([]);
  });
  it('that parents chase their fry are kept with the day', () => {
    const swim = ['2026-02-02 A1: spawned', '2026-02-10 A1: free-swimming, 50'];
    const room = roomOf(...swim, '2026-02-20 A1: parents chase fry');
    expect([...room.stock.chasedFry].map(([group, { place }]) => [group, place.line - SETUP])).toEqual([['Rowan', 3]]);
    expect(total(room)).toBe('50–50');
  });
});
