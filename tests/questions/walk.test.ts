import { describe, expect, test } from 'vitest';
import { walk } from '../../src/questions/walk.ts';
import type { WalkTank } from '../../src/questions/walk.ts';
import { plainLook } from '../../src/reports/look.ts';
import { walkPaper, walkText } from '../../src/reports/walk.ts';
import type { Line } from '../support/events.ts';
import { day, room as wholeRoom, roomOn, tank } from '../support/events.ts';
import { journalOn } from '../support/journal.ts';
import { groupSet, movedTo, rigged, sign, spawn, speciesSet, tankSet } from '../support/pairs.ts';

const SET = '2026-02-10';
const ROOM: readonly Line[] = [
  tankSet(SET, 'A1'),
  tankSet(SET, 'A2'),
  tankSet(SET, 'B1'),
  tankSet(SET, 'C1'),
  speciesSet(SET, 'krib', 'cave spawner'),
  groupSet(SET, 'Rowan', 'A1'),
  groupSet(SET, 'Pebble', 'B1', { kind: 'colony', count: 25, species: 'limia' }),
];

function tanks(on: string, lines: readonly Line[]): readonly WalkTank[] {
  return walk(roomOn(on, [...ROOM, ...lines])).tanks;
}

describe('the walk', () => {
  test('goes in walking order as set, then as declared', () => {
    const order: Line = [SET, wholeRoom, { kind: 'walk set', tanks: ['C1', 'B1'] }];
    expect(tanks('2026-02-11', [order]).map((one) => one.tank)).toEqual(['C1', 'B1', 'A1', 'A2']);
  });

  test('leaves sick, held and quarantine tanks for the end', () => {
    const sick: Line = ['2026-02-10', tank('A1'), { kind: 'sick', text: 'velvet', catching: true }];
    const held: Line = ['2026-02-10', tank('A2'), { kind: 'hold begun', text: 'velvet' }];
    const found = tanks('2026-02-11', [sick, held]);
    expect(found.map((one) => [one.tank, one.last])).toEqual([
      ['B1', null],
      ['C1', null],
      ['A1', 'sick'],
      ['A2', 'held'],
    ]);
  });

  test('tells who is in it, what is rigged, and what to look at', () => {
    const lines = [
      sign('2026-02-11', 'A1', 'chasing', 'male on female'),
      rigged('2026-02-11', 'A1', 'lights off'),
      spawn('2026-02-10', 'A1', 'Rowan-1'),
    ];
    const [a1, a2, b1] = tanks('2026-02-11', lines);
    expect(a1?.fish.map(({ name, what, doing }) => [name, what, doing])).toEqual([
      ['Rowan', 'krib pair', 'in a dispute; guarding Rowan-1'],
      ['Rowan-1', 'egg, 1 day', null],
    ]);
    expect(a1?.rigged).toEqual(['lights off since today']);
    expect(a1?.look.map(({ id }) => id)).toContain('a1-dispute');
    expect(a2?.fish).toEqual([]);
    expect(b1?.fish.map(({ name, what, plain }) => [name, what, plain])).toEqual([['Pebble', 'limia colony', false]]);
  });

  test('a male put elsewhere stands where he is', () => {
    const found = tanks('2026-02-12', [movedTo('2026-02-11', 'A1', 'male', 'C1')]);
    const words = found.map((one) => one.fish.map(({ name, what }) => `${name}: ${what}`));
    expect(words).toEqual([['Rowan: krib pair: female'], [], ['Pebble: limia colony'], ['Rowan: krib pair: male']]);
  });

  test('young are guarded where they are: by the female that was moved with them, and not at home', () => {
    const room = journalOn(
      '2026-04-05',
      `2026-04-01 A2: Fern spawned brood Sedge-1
2026-04-02 A2: moved all Sedge-1 to Q1
2026-04-02 A2: moved Fern to Q1
`,
    );
    const doing = walk(room).tanks.flatMap(({ tank: name, fish }) =>
      fish.flatMap((one) => (one.name === 'Sedge' ? [[name, one.doing]] : [])),
    );
    expect(doing).toEqual([
      ['A2', null],
      ['Q1', 'guarding Sedge-1'],
    ]);
  });

  test('on the screen and on paper', () => {
    const answer = walk(roomOn('2026-02-11', [...ROOM, sign('2026-02-11', 'A1', 'chasing', 'male on female')]));
    const look = plainLook(day('2026-02-11'));
    const screen = walkText(answer, look);
    expect(screen.split('\n')[0]).toBe('Wed 11 Feb 2026: 4 tanks, something to do at A1');
    expect(screen).toContain('A1  Rowan, krib pair, in a dispute\n');
    const paper = walkPaper(answer, look);
    expect(paper.split('\n').every((line) => line.length <= 80)).toBe(true);
    // two lines to write on for each of the four tanks, two for the rest
    expect(paper.split('\n').filter((line) => /^ +_{60,}$/.test(line))).toHaveLength(10);
  });
});
