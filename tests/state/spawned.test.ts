/** Spawnings: whose brood it is, in which tank, and when a line tells more of one that is there already. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { days } from '../support/fishroom.ts';
import { broodNamed as brood, journalOn } from '../support/journal.ts';
import { ROOM } from '../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const roomOf = (...lines: readonly string[]): Room => journalOn('2026-04-30', `${lines.join('\n')}\n`);
/** `Sedge-1 of Fern in C2: 1, 3`: each brood with its mothers, tanks and lines. */
const broods = (room: Room): string[] =>
  [...room.stock.broods.values()].map(({ name, mothers, parts, lines }) => {
    const where = [...parts.keys()].join(' ');
    return `${name} of ${mothers.join(' ')} in ${where}: ${lines.map(({ line }) => line - SETUP).join(', ')}`;
  });
const told = (room: Room): string[] =>
  room.problems.map(({ kind, at, also }) => [kind, ...[at, ...also].map(({ line }) => line - SETUP)].join(' '));
const laid = (room: Room, name: string): string | null => days(brood(room, name).laid);

describe('the mother', () => {
  it('is the female that the line names, else one of those that live', () => {
    expect(broods(roomOf('2026-02-02 A2: Fern spawned'))).toEqual(['Sedge-1 of Fern in A2: 1']);
    expect(broods(roomOf('2026-02-02 A2: spawned'))).toEqual(['Sedge-1 of Fern Lark in A2: 1']);
    expect(broods(roomOf('2026-02-01 A2: Fern died', '2026-02-02 A2: spawned'))).toEqual(['Sedge-1 of Lark in A2: 2']);
    expect(broods(roomOf('2026-02-02 A1: spawned'))).toEqual(['Rowan-1 of  in A1: 1']);
  });
  it('tells two broods of one tank apart, and a stage of one from that of the other', () => {
    const two = ['2026-02-02 A2: Fern spawned', '2026-02-03 A2: Lark eggs seen'];
    expect(broods(roomOf(...two))).toEqual(['Sedge-1 of Fern in A2: 1', 'Sedge-2 of Lark in A2: 2']);
    expect(told(roomOf(...two))).toEqual([]);
    const swim = roomOf(...two, '2026-02-12 A2: Lark free-swimming, 20');
    expect([brood(swim, 'Sedge-1').swam, days(brood(swim, 'Sedge-2').swam)?.slice(-10)]).toEqual([null, '2026-02-12']);
    expect(brood(swim, 'Sedge-2').total.low).toBe(20);
    expect(told(roomOf(...two, '2026-02-06 A2: wrigglers'))).toEqual(['which-fish 3 1 2']);
  });
  it('that is not named may be the one whose eggs are there', () => {
    expect(broods(roomOf('2026-02-02 A2: Fern spawned', '2026-02-03 A2: eggs seen'))).toEqual([
      'Sedge-1 of Fern in A2: 1, 2',
    ]);
    expect(broods(roomOf('2026-02-02 A2: spawned', '2026-02-03 A2: Fern eggs seen'))).toEqual([
      'Sedge-1 of Fern Lark in A2: 1, 2',
    ]);
  });
});

describe('the tank', () => {
  const moved = '2026-02-01 A2: Fern moved to C2';
  it('is the one of the line, else where its mother is, else where the group is', () => {
    expect(broods(roomOf(moved, '2026-02-02 Sedge: Fern spawned'))).toEqual(['Sedge-1 of Fern in C2: 2']);
    expect(broods(roomOf(moved, '2026-02-02 Sedge: Lark spawned'))).toEqual(['Sedge-1 of Lark in A2: 2']);
    expect(broods(roomOf('2026-02-02 Rowan: spawned'))).toEqual(['Rowan-1 of  in A1: 1']);
  });
  it('tells the broods of one group apart', () => {
    const two = [moved, '2026-02-02 C2: Fern spawned', '2026-02-02 A2: Lark spawned'];
    const room = roomOf(...two, '2026-02-06 C2: wrigglers', '2026-02-13 A2: free-swimming, 20');
    expect([broods(room), told(room)]).toEqual([['Sedge-1 of Fern in C2: 2, 4', 'Sedge-2 of Lark in A2: 3, 5'], []]);
    expect([brood(room, 'Sedge-1').total.high, brood(room, 'Sedge-2').total.high]).toEqual([Infinity, 20]);
  });
  it('of eggs that went along with the cave is the new one; without it they were left', () => {
    const spawn = '2026-02-02 A1: spawned';
    const along = roomOf(spawn, '2026-02-04 A1: Rowan moved to C2 with cave', '2026-02-06 C2: wrigglers');
    expect(broods(along)).toEqual(['Rowan-1 of  in C2: 1, 2, 3']);
    const left = roomOf(spawn, '2026-02-04 A1: Rowan moved to C2', '2026-02-05 A1: wrigglers');
    expect(broods(left)).toEqual(['Rowan-1 of  in A1: 1, 3']);
  });
});

describe('more about a brood that is there', () => {
  it('a day that was seen beats days that were worked out, in either order', () => {
    const room = roomOf('2026-02-03 A1: eggs seen', '2026-02-04 A1: spawned 2 days ago');
    expect([broods(room), laid(room, 'Rowan-1')]).toEqual([['Rowan-1 of  in A1: 1, 2'], '2026-02-02/2026-02-02']);
    expect(brood(room, 'Rowan-1').laidKnown).toBe('seen');
    const seen = roomOf('2026-02-02 A1: spawned', '2026-02-03 A1: eggs seen');
    expect([laid(seen, 'Rowan-1'), brood(seen, 'Rowan-1').laidKnown]).toEqual(['2026-02-02/2026-02-02', 'seen']);
  });
  it('what was suspected is dated by the line that saw it, and is one egg at least', () => {
    const room = roomOf('2026-02-02 A1: maybe spawned', '2026-02-04 A1: spawned, about 80 eggs');
    expect([broods(room), laid(room, 'Rowan-1')]).toEqual([['Rowan-1 of  in A1: 1, 2'], '2026-02-04/2026-02-04']);
    expect(brood(room, 'Rowan-1').eggs).toEqual({ low: 40, likely: 80, high: 160 });
    const bare = brood(roomOf('2026-02-02 A1: maybe spawned', '2026-02-03 A1: eggs seen'), 'Rowan-1');
    expect([bare.total.low, bare.parts.get('A1')?.low, bare.suspected]).toEqual([1, 1, false]);
  });
  it('what was suspected too long before is another one, and keeps no number', () => {
    const room = roomOf('2026-02-02 A1: maybe spawned', '2026-02-08 A1: spawned');
    expect(broods(room)).toEqual(['Rowan suspected 2026-02-02 of  in A1: 1', 'Rowan-1 of  in A1: 2']);
    expect(told(room)).toEqual([]);
    const twice = ['2026-02-02 A1: maybe spawned', '2026-02-20 A1: maybe spawned', '2026-02-21 A1: eggs seen'];
    expect(broods(roomOf(...twice))).toEqual(['Rowan suspected 2026-02-02 of  in A1: 1', 'Rowan-1 of  in A1: 2, 3']);
  });
  it('a count of its eggs narrows a guess, and a later one that day replaces it', () => {
    const guess = '2026-02-02 A1: spawned, about 80 eggs';
    expect(brood(roomOf(guess, '2026-02-02 A1: spawned, 64 eggs'), 'Rowan-1').total).toMatchObject({
      low: 64,
      high: 64,
    });
    const more = roomOf(guess, '2026-02-03 A1: eggs seen, 200 eggs');
    expect(told(more)).toEqual(['guess-corrected 2 1']);
    expect(brood(more, 'Rowan-1').eggs).toMatchObject({ low: 200, high: 200 });
    const plain = brood(roomOf(guess, '2026-02-03 A1: eggs seen'), 'Rowan-1');
    expect(plain.eggs).toMatchObject({ low: 40, high: 160 });
  });
  it('a spawn while the first swim is another brood', () => {
    const room = roomOf('2026-02-02 A1: spawned', '2026-02-11 A1: spawned', '2026-02-11 A1: free-swimming, 30');
    expect(broods(room)).toEqual(['Rowan-1 of  in A1: 1, 3', 'Rowan-2 of  in A1: 2']);
    expect(told(room)).toEqual([]);
  });
});

describe('a spawn', () => {
  const chased = '2026-02-02 A1: chasing, male on female';
  const ended = (...lines: readonly string[]) =>
    roomOf(chased, ...lines)
      .stock.groups.get('Rowan')
      ?.disputes.map((dispute) => dispute.ended?.how ?? null);
  it('ends the dispute of its pair; one that is only suspected does not', () => {
    expect(ended('2026-02-03 A1: spawned')).toEqual(['spawned']);
    expect(ended('2026-02-03 A1: eggs seen')).toEqual(['spawned']);
    expect(ended('2026-02-03 A1: maybe spawned')).toEqual([null]);
  });
  it('settles that one was near', () => {
    const near = '2026-02-02 A1: about to spawn';
    const waits = (...lines: readonly string[]) =>
      roomOf(near, ...lines)
        .stock.groups.get('Rowan')
        ?.suspected.map(({ kind }) => kind);
    expect(waits('2026-02-03 A1: spawned')).toEqual([]);
    expect(waits('2026-02-03 A1: maybe spawned')).toEqual(['about to spawn', 'maybe']);
  });
  it('of a colony is a brood only by a name', () => {
    const egg =
      '2026-01-02 species krib: Pelvicachromis taeniatus; cave spawner\n2026-01-02 colony Elm: krib; 12; in C2';
    expect(broods(roomOf(egg, '2026-02-02 C2: Elm spawned'))).toEqual([]);
    expect(broods(roomOf(egg, '2026-02-02 C2: Elm spawned brood E1'))).toEqual(['E1 of  in C2: 3']);
  });
  it('finds a mouthbrooder holding, and no other', () => {
    const mouth = `2026-01-02 species haps: Haplochromis sp; mouthbrooder
2026-01-02 trio Slate: haps; male; females Moth and Wren; in C2`;
    const holding = (...lines: readonly string[]) => roomOf(mouth, ...lines).stock.groups.get('Slate')?.holding;
    expect(holding('2026-02-02 C2: Moth spawned')).toMatchObject({ mother: 'Moth' });
    expect(holding('2026-02-02 C2: spawned')).toMatchObject({ mother: null });
    expect(holding('2026-02-02 C2: Moth maybe spawned')).toBeNull();
    expect(holding('2026-02-02 C2: Moth spawned', '2026-02-24 C2: released, 12')).toBeNull();
    expect(roomOf('2026-02-02 A2: Fern spawned').stock.groups.get('Sedge')?.holding).toBeNull();
  });
});
