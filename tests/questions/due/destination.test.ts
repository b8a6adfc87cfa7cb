/** Where fish that have to leave are sent: never into sickness, nor with it to others, and only to a tank to live in. */
import { describe, expect, it } from 'vitest';
import { wouldEat } from '../../../src/questions/danger.ts';
import { moveLine } from '../../../src/questions/due/destination.ts';
import type { Room } from '../../../src/state/draft.ts';
import { broodNamed, journalOn } from '../../support/journal.ts';

const YOUNG = `2026-04-01 A1: spawned brood Rowan-1
2026-04-12 A1: free-swimming, 40
2026-05-20 C1: size 15 mm
`;
const after = (lines: string): Room => journalOn('2026-05-21', YOUNG + lines);
const line = (lines: string, from?: string): { close: string; where: string } => {
  const room = after(lines);
  return moveLine(room, broodNamed(room, 'Rowan-1'), from);
};
/** The tank that the line sends them to. */
const to = (lines: string): string => line(lines, 'A1').close.replace('A1: moved all Rowan-1 to ', '');
/** Tanks with fish of about the young's length. */
const full = (...tanks: readonly string[]): string =>
  tanks.map((tank) => `2026-05-20 ${tank}: bought 6 krib at 4.00 each from "a friend", 15 mm\n`).join('');

// Of the room's tanks 12 and C2 are free, Q1 is for quarantine, C1 holds a group to grow on, the others breeders.
describe('a tank that is free', () => {
  it('is the first on the walk that is a tank to live in', () => {
    expect(to('')).toBe('tank 12');
    expect(to(full('tank 12'))).toBe('C2');
    expect(to('2026-01-02 room: walk C2 12 A1 A2 B1 C1 Q1\n')).toBe('C2');
  });
  it('is no tray, no quarantine tank and not the one that stands for the new water', () => {
    const none = full('tank 12', 'C2', 'C1');
    for (const set of ['tank Tap: 20 L; alone', 'tray T1: in C2', 'tank Q2: 40 L; alone; quarantine'])
      expect(line(`2026-01-02 ${set}\n${none}`, 'A1')).toMatchObject({
        close: 'A1: moved all Rowan-1 to tank 12',
        where: 'no tank is free, but 12 has only young and grow-outs',
      });
  });
  it('is not on a filter that is watched, unless theirs is as well', () => {
    expect(to('2026-05-18 tank 12: media cleaned\n')).toBe('C2');
    expect(to('2026-05-18 tank 12: media cleaned\n2026-05-18 Long: media cleaned\n')).toBe('tank 12');
    expect(to('2026-05-18 Long: media cleaned\n')).toBe('tank 12');
  });
});

describe('sickness and holds', () => {
  it('keep fish out', () => {
    for (const why of ['hold "velvet"', 'sick "white spot", catching', 'sick "white spot"', 'quarantine 28 days'])
      expect([why, to(`2026-05-20 tank 12: ${why}\n`)]).toEqual([why, 'C2']);
  });
  it('keep fish out of a tank that shares that water', () => {
    const free =
      '2026-01-02 tank A3: 60 L; on Long\n2026-01-03 room: walk A3 C2 12\n2026-05-01 A1: moved 10 Rowan-1 to C1\n';
    const sick = `${free}2026-05-20 B1: sick "white spot"\n`;
    expect(line(free, 'C1').where).toBe('A3 is free');
    expect(line(sick, 'C1').where).toBe('C2 is free');
    expect(line(sick, 'A1').where).toBe('A3 is free');
  });
  it('let fish go where no others live, or into what their own tank is in', () => {
    expect(to('2026-05-20 A1: hold "velvet"\n')).toBe('tank 12');
    expect(to('2026-05-20 A1: hold "velvet"\n2026-05-20 tank 12: hold "velvet"\n')).toBe('tank 12');
    const alone = '2026-05-01 A1: off the loop\n2026-05-20 A1: hold "velvet"\n';
    expect(to(`${alone}2026-05-01 tank B3: 60 L; on Long\n${full('tank 12')}`)).toBe('C2');
  });
  it('let none out to fish that are well', () => {
    const none = full('tank 12', 'C2');
    expect(to(none)).toBe('tank 12');
    expect(line(`${none}2026-05-20 A1: hold "velvet"\n`, 'A1')).toMatchObject({
      close: 'A1: moved all Rowan-1 to …',
      where: 'no tank is free',
    });
    expect(to(`${none}2026-05-20 A1: hold "velvet"\n2026-05-20 C1: hold "velvet"\n`)).toBe('C1');
  });
});

describe('where no tank is free', () => {
  const none = full('tank 12', 'C2');
  it('they go to others that grow on, never to breeders nor into a tray', () => {
    expect(to(`${none}2026-05-20 tank 12: hold "velvet"\n`)).toBe('C1');
    const few = `${none}2026-05-20 tank 12: hold "velvet"\n2026-05-20 C1: hold "velvet"\n`;
    expect(to(few)).toBe('C2');
    const last = `${few}2026-05-20 C2: hold "velvet"\n2026-01-02 tray T1: in B1\n`;
    expect(line(last, 'A1')).toMatchObject({ close: 'A1: moved all Rowan-1 to …', where: 'no tank is free' });
  });
  it('nor to younger ones that they would eat, nor to older ones that would eat them', () => {
    const held = `${full('tank 12', 'C1')}2026-05-20 tank 12: hold "velvet"\n2026-05-20 C1: hold "velvet"\n`;
    const other = (laid: string, swam: string, last = ''): string =>
      `2026-${laid} A2: Fern spawned\n2026-${swam} A2: free-swimming, 30\n2026-05-19 A2: moved all Sedge-1 to C2\n${last}${held}`;
    // As old as these; of some days; read to be three times as long.
    expect(to(other('04-01', '04-12'))).toBe('C2');
    expect(line(other('05-09', '05-18'), 'A1').where).toBe('no tank is free');
    expect(to(other('02-01', '02-11', '2026-05-20 C2: Sedge-1 average 50 mm\n'))).toBe('…');
    // About twice as long they would not eat these, but would have to be watched from the first day.
    const longer = other('02-01', '02-11', '2026-05-20 C2: Sedge-1 average 18 mm\n');
    const room = after(longer);
    expect(wouldEat(room, broodNamed(room, 'Sedge-1'), 'C2', broodNamed(room, 'Rowan-1'))).toBe(false);
    expect(to(longer)).toBe('…');
    const eggs = `2026-05-19 A2: Fern spawned\n2026-05-20 A2: moved all Sedge-1 to C2\n${held}`;
    expect(to(eggs)).toBe('…');
  });
  it('nor to fish of a group that are much longer, and eggs to none at all', () => {
    const grown = full('tank 12', 'C2').replaceAll('15 mm', '60 mm');
    expect(to(`${grown}2026-05-20 C1: size 60 mm\n`)).toBe('…');
    const eggs = '2026-05-10 A2: Fern spawned\n2026-05-11 A2: moved all Sedge-1 to C2\n';
    const room = after(`${eggs}2026-05-20 tank 12: bought 6 krib, 15 mm\n`);
    expect(moveLine(room, broodNamed(room, 'Sedge-1'), 'C2').close).toBe('C2: moved all Sedge-1 to …');
  });
  it('nor to a tank where one pair lives among the young', () => {
    const pair = '2026-04-21 pair Yew: krib; male; female; in 12\n';
    expect(to(`${none}${pair}`)).toBe('C1');
  });
  it('they go where some of them are, unless that is held', () => {
    const some = '2026-05-01 A1: moved 10 Rowan-1 to C2\n';
    expect(to(`${some}${full('tank 12')}`)).toBe('C2');
    expect(to(`${some}${full('tank 12')}2026-05-20 C2: sick "white spot", catching\n`)).toBe('tank 12');
  });
});

describe('where some of them are raised already', () => {
  const some = '2026-05-01 A1: moved 10 Rowan-1 to C2\n';
  it('they go before any other tank is taken', () => {
    expect(line(some, 'A1')).toMatchObject({
      close: 'A1: moved all Rowan-1 to C2',
      where: 'C2 has some of them already',
    });
  });
  it('they do not go where a pair lives with them, or where it is sick', () => {
    const pair = '2026-05-02 pair Yew: krib; male; female; in C2\n';
    expect(to(`${some}${pair}`)).toBe('tank 12');
    expect(to(`${some}2026-05-20 C2: sick "white spot"\n`)).toBe('tank 12');
  });
  it('they do not go to younger ones that share it', () => {
    const other =
      '2026-05-09 A2: Fern spawned\n2026-05-18 A2: free-swimming, 30\n2026-05-19 A2: moved all Sedge-1 to C2\n';
    expect(to(`${some}${other}`)).toBe('tank 12');
  });
});

describe('how many go', () => {
  it('is all of that tank, and never a number that nobody counted', () => {
    expect(line('').close).toBe('A1: moved all Rowan-1 to tank 12');
    const guess = YOUNG.replace('free-swimming, 40', 'free-swimming, 1-200');
    const room = journalOn('2026-05-21', guess);
    const brood = room.stock.broods.get('Rowan-1');
    expect(brood && moveLine(room, brood).close).toBe('A1: moved all Rowan-1 to tank 12');
    expect(line('2026-05-01 A1: moved 10 Rowan-1 to C2\n', 'C2').close).toBe('C2: moved all Rowan-1 to tank 12');
  });
});
