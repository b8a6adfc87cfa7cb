/** Which tanks a heading means, and who may live in a tank. */
import { describe, expect, it } from 'vitest';
import { bodiesIn, speciesOf, tanksOf } from '../../src/state/bodies.ts';
import type { Room } from '../../src/state/draft.ts';
import { fishIn, placesOf } from '../../src/state/places.ts';
import { loop, room as theRoom, roomOn, tank } from '../support/events.ts';
import { group, laid, setUp } from '../support/fishroom.ts';
import { journalOn } from '../support/journal.ts';

const SWIM = '2026-02-02 A1: spawned\n2026-02-12 A1: free-swimming, 40\n2026-02-20 A1: Rowan-1 counted 40\n';
const after = (lines: string): Room => journalOn('2026-04-01', SWIM + lines);
const rowan = { kind: 'group', group: 'Rowan', member: null } as const;
const brood = { kind: 'brood', brood: 'Rowan-1' } as const;

describe('a heading', () => {
  it('is its room, its loop or its tank', () => {
    const room = after('');
    expect([theRoom, loop('Long'), tank('A1')].map((subject) => placesOf(room, subject))).toEqual([
      ['room'],
      ['Long'],
      ['A1'],
    ]);
  });
  it('is the tanks in which those fish live', () => {
    const room = after('2026-03-01 A1: moved 15 Rowan-1 to C2, rest stay\n2026-03-01 A1: moved the male to Q1\n');
    expect(placesOf(room, brood)).toEqual(['A1', 'C2']);
    expect(placesOf(room, rowan)).toEqual(['A1', 'Q1']);
  });
  it('is their home where none of them are left, and nowhere for fish that nobody knows', () => {
    const room = after('2026-03-01 A1: Rowan died 2\n2026-03-02 A1: Rowan-1 sold all for 60.00\n');
    expect(placesOf(room, rowan)).toEqual(['A1']);
    expect(placesOf(room, brood)).toEqual([]);
    expect(placesOf(room, { ...rowan, group: 'Yew' })).toEqual([]);
    expect(placesOf(room, { ...brood, brood: 'Yew-1' })).toEqual([]);
    expect(placesOf(room, { kind: 'species', species: 'krib' })).toEqual([]);
  });
});

describe('who may live in a tank', () => {
  it('are groups and broods of which some are left there', () => {
    expect(fishIn(after(''), 'A1')).toEqual(['Rowan', 'Rowan-1']);
    const moved = after('2026-03-01 A1: moved all Rowan-1 to C1\n');
    expect([fishIn(moved, 'A1'), fishIn(moved, 'C1'), fishIn(moved, 'C2')]).toEqual([
      ['Rowan'],
      ['Ash', 'Rowan-1'],
      [],
    ]);
    expect(fishIn(after('2026-03-01 A1: Rowan-1 sold all for 60.00\n'), 'A1')).toEqual(['Rowan']);
  });
  it('are no broods that are only suspected, or whose eggs are gone', () => {
    const maybe = roomOn('2026-02-12', [...setUp, laid('2026-02-10', null, { as: 'maybe' })]);
    expect(maybe.stock.broods.size).toBe(1);
    expect(bodiesIn(maybe, 'A1').map(({ name }) => name)).toEqual(['Rowan']);
    const gone = journalOn('2026-02-12', '2026-02-10 A1: spawned\n2026-02-11 A1: eggs gone\n');
    expect(bodiesIn(gone, 'A1').map(({ name }) => name)).toEqual(['Rowan']);
  });
  it('have the species that was declared, or none', () => {
    const room = roomOn('2026-02-12', [...setUp, group('Elm', 'group', 'C1', { species: 'yew' })]);
    const elm = room.stock.groups.get('Elm');
    const pair = room.stock.groups.get('Rowan');
    expect([elm, pair].map((body) => body && speciesOf(room, body)?.name)).toEqual([undefined, 'krib']);
    expect(elm && speciesOf(room, { ...elm, species: null })).toBeNull();
  });
  it('are in no tank in which there can be none of them', () => {
    const pair = after('').stock.groups.get('Rowan');
    const none = { low: 0, likely: 0, high: 0 };
    expect(pair && tanksOf({ ...pair, parts: new Map([...pair.parts, ['C2', none]]) })).toEqual(['A1']);
  });
});
