/** Stages: whose they are, and what they say of the days of laying, hatching and swimming. */
import { describe, expect, it } from 'vitest';
import { since } from '../../src/state/broodlife.ts';
import type { Room } from '../../src/state/draft.ts';
import { day, roomOn, type Line } from '../support/events.ts';
import {
  about,
  days,
  group,
  heads,
  laid,
  look,
  named,
  noEggs,
  pairOf,
  setUp,
  speciesOf,
  tally,
  tankLine,
} from '../support/fishroom.ts';

const brood = (room: Room, name = 'Rowan-1') => {
  const found = room.stock.broods.get(name);
  if (!found) throw new Error(`no ${name} among ${[...room.stock.broods.keys()].join(', ')}`);
  return found;
};
const kinds = (room: Room): string[] => room.problems.map(({ kind }) => kind);
const names = (room: Room): string[] => [...room.stock.broods.keys()];
const window = (low: string, high: string) => ({ low: day(low), likely: null, high: day(high) });

describe('eggs', () => {
  it('found were laid since the last look that found none', () => {
    // trap: treating first-seen eggs as laid that day
    const room = roomOn('2026-02-10', [...setUp, noEggs('2026-02-09'), laid('2026-02-10', null, { as: 'seen' })]);
    expect(days(brood(room).laid)).toBe('2026-02-09/2026-02-10');
  });
  it('found after a long time were laid no longer ago than eggs last', () => {
    const room = roomOn('2026-02-10', [...setUp, noEggs('2026-01-20'), laid('2026-02-10', null, { as: 'seen' })]);
    expect(days(brood(room).laid)).toBe('2026-02-05/2026-02-10');
  });
  it('seen laid have their day, and stated days their window', () => {
    expect(days(brood(roomOn('2026-02-10', [...setUp, laid('2026-02-10')])).laid)).toBe('2026-02-10/2026-02-10');
    const ago = laid('2026-02-10', null, { when: window('2026-02-06', '2026-02-08') });
    expect(days(brood(roomOn('2026-02-10', [...setUp, ago])).laid)).toBe('2026-02-06/2026-02-08');
  });
  it('suspected are a brood only once something is seen, and end with "no eggs"', () => {
    const maybe: Line[] = [...setUp, laid('2026-02-10', null, { as: 'maybe' })];
    const suspected = 'Rowan suspected 2026-02-10';
    expect(brood(roomOn('2026-02-10', maybe), suspected).suspected).toBe(true);
    const seen = roomOn('2026-02-14', [...maybe, look('2026-02-14', 'wrigglers')]);
    expect(names(seen)).toEqual(['Rowan-1']);
    expect(brood(seen)).toMatchObject({ suspected: false, lines: [{ line: 5 }, { line: 6 }] });
    expect(brood(roomOn('2026-02-11', [...maybe, noEggs('2026-02-11')]), suspected).ended).toMatchObject({
      how: 'eggs gone',
    });
  });
  it('that came to nothing take no number', () => {
    const lines: Line[] = [
      ...setUp,
      laid('2026-02-10', null, { as: 'maybe' }),
      noEggs('2026-02-12'),
      laid('2026-03-01'),
    ];
    expect(names(roomOn('2026-03-01', lines))).toEqual(['Rowan suspected 2026-02-10', 'Rowan-1']);
    const named = [...setUp, laid('2026-02-10', null, { as: 'maybe', brood: 'Rowan-4' })];
    expect(names(roomOn('2026-03-01', named))).toEqual(['Rowan-4']);
  });
  it('that a look did not find, before they can have hatched, are gone', () => {
    const room = roomOn('2026-02-11', [...setUp, laid('2026-02-10'), noEggs('2026-02-11')]);
    expect(brood(room).ended).toMatchObject({ how: 'eggs gone' });
    expect(kinds(room)).toEqual(['eggs-missing']);
    const late = roomOn('2026-02-15', [...setUp, laid('2026-02-10'), noEggs('2026-02-15')]);
    expect(brood(late).ended).toBeNull();
    expect(kinds(late)).toEqual(['eggs-missing']);
  });
  it('that are seen again are the same', () => {
    const room = roomOn('2026-02-11', [
      ...setUp,
      laid('2026-02-10', about(80)),
      laid('2026-02-11', null, { as: 'seen' }),
    ]);
    expect(names(room)).toEqual(['Rowan-1']);
    expect(days(brood(room).laid)).toBe('2026-02-10/2026-02-10');
  });
  it('laid again while the first should still be eggs are two spawns, or one told twice', () => {
    const room = roomOn('2026-02-12', [...setUp, laid('2026-02-10'), laid('2026-02-12')]);
    expect(names(room)).toEqual(['Rowan-1', 'Rowan-2']);
    expect(kinds(room)).toEqual(['two-spawns']);
    expect(room.problems[0]).toMatchObject({ weight: 'doubt', at: { line: 6 }, also: [{ line: 5 }] });
  });
});

describe('a stage', () => {
  it('that no brood can be at begins one, cast back', () => {
    const room = roomOn('2026-02-20', [...setUp, look('2026-02-20', 'free-swimming', about(40))]);
    const { laid: born, swam } = brood(room);
    // Cave spawners swim 6.5 to 12 days after laying at 26 °C (common practice, no source).
    expect(born.high).toBeLessThanOrEqual(day('2026-02-15'));
    expect(born.low).toBeLessThan(born.high ?? 0);
    expect(swam?.high).toBe(day('2026-02-20'));
    expect(room.problems).toEqual([]);
  });
  it('goes to the brood that can be at it, not to one that is past it', () => {
    const lines: Line[] = [
      ...setUp,
      laid('2026-01-20'),
      look('2026-01-30', 'free-swimming', about(40)),
      laid('2026-02-20'),
      look('2026-02-24', 'wrigglers'),
      look('2026-03-03', 'free-swimming', about(60)),
    ];
    const room = roomOn('2026-03-03', lines);
    expect(room.problems).toEqual([]);
    expect(brood(room, 'Rowan-2').swam?.high).toBe(day('2026-03-03'));
    expect(brood(room, 'Rowan-1').swam?.high).toBe(day('2026-01-30'));
  });
  it('that its only brood cannot be at is another spawn, or a misreading, and both lines are named', () => {
    const room = roomOn('2026-03-10', [...setUp, laid('2026-02-10'), look('2026-03-10', 'wrigglers')]);
    expect(names(room)).toEqual(['Rowan-1', 'Rowan-2']);
    expect(kinds(room)).toEqual(['stages-contradict']);
    expect(room.problems[0]).toMatchObject({ at: { line: 6 }, also: [{ line: 5 }] });
  });
  it('of a named brood that cannot be at it is doubted', () => {
    const room = roomOn('2026-02-11', [
      ...setUp,
      laid('2026-02-10'),
      look('2026-02-11', 'free-swimming', null, { fish: named('Rowan-1') }),
    ]);
    expect(kinds(room)).toEqual(['stages-contradict']);
  });
  it('that two broods can be at lists both', () => {
    const two: Line[] = [
      ...setUp,
      pairOf('Ash', 'A1'),
      laid('2026-02-10', null, { fish: { kind: 'group', group: 'Rowan', member: null } }),
      laid('2026-02-11', null, { fish: { kind: 'group', group: 'Ash', member: null } }),
    ];
    const room = roomOn('2026-02-14', [...two, look('2026-02-14', 'wrigglers')]);
    expect(kinds(room)).toEqual(['which-fish']);
    expect(room.problems[0]?.write).toBe('A1: Rowan-1 wrigglers');
  });
  it('bounds swimming between the last look before and the first look at it', () => {
    const lines: Line[] = [
      ...setUp,
      laid('2026-02-02'),
      look('2026-02-05', 'wrigglers'),
      look('2026-02-10', 'free-swimming'),
    ];
    expect(days(brood(roomOn('2026-02-10', lines)).swam)).toBe('2026-02-05/2026-02-10');
    expect(days(brood(roomOn('2026-02-10', lines)).hatched)).toBe('2026-02-03/2026-02-05');
  });
  it('of young seen out of a shell counts at least those', () => {
    const lines: Line[] = [
      ...setUp,
      speciesOf('shelly', 'shell spawner'),
      tankLine('B1'),
      pairOf('Dune', 'B1', 'shelly'),
      look('2026-03-01', 'fry seen', heads(5), { in: 'B1' }),
      tally('2026-03-20', heads(9), { in: 'B1' }),
    ];
    const room = roomOn('2026-03-20', lines);
    expect(room.problems).toEqual([]);
    expect(brood(room, 'Dune-1').total.low).toBe(9);
  });
  it('as dated in its line, counts for that day', () => {
    const yesterday = look('2026-02-10', 'free-swimming', null, { when: window('2026-02-09', '2026-02-09') });
    expect(days(brood(roomOn('2026-02-10', [...setUp, laid('2026-02-01'), yesterday])).swam)).toBe(
      '2026-02-09/2026-02-09',
    );
  });
  it('without a count leaves only the most that were guessed', () => {
    const lines: Line[] = [...setUp, laid('2026-02-02', about(90)), look('2026-02-05', 'wrigglers')];
    expect(brood(roomOn('2026-02-05', lines)).total).toEqual({ low: 1, likely: null, high: 180 });
  });
});

describe('age', () => {
  // trap: age from hatching in one place, from spawning or release elsewhere
  it('counts from laying, whatever was seen since', () => {
    const room = roomOn('2026-03-01', [
      ...setUp,
      laid('2026-02-01'),
      look('2026-02-05', 'hatched'),
      look('2026-02-11', 'free-swimming'),
    ]);
    expect(since(brood(room).laid, room.on)).toEqual({ low: 28, likely: 28, high: 28 });
  });
  it('of mouthbrooders counts from laying, and release is told apart', () => {
    const mouth: Line[] = [
      ...setUp,
      speciesOf('haps', 'mouthbrooder'),
      tankLine('B1'),
      group('Slate', 'trio', 'B1', {
        species: 'haps',
        members: [
          ['male', null],
          ['female', 'Fern'],
          ['female', 'Lark'],
        ],
      }),
    ];
    const lines: Line[] = [
      ...mouth,
      look('2026-02-01', 'holding', null, {
        in: 'B1',
        fish: { kind: 'group', group: 'Slate', member: { sex: null, name: 'Fern' } },
      }),
      look('2026-02-20', 'released', heads(18), { in: 'B1' }),
    ];
    const room = roomOn('2026-03-01', lines);
    expect(room.problems).toEqual([]);
    const young = brood(room, 'Slate-1');
    expect(young.mothers).toEqual(['Fern']);
    expect(young.total.low).toBe(18);
    expect(young.released).toMatchObject({ low: day('2026-02-01'), high: day('2026-02-20') });
    const age = since(young.laid, room.on);
    expect(age.low).toBeGreaterThanOrEqual(28);
    expect(age.low).toBeLessThan(age.high);
    expect(room.stock.groups.get('Slate')?.holding).toBeNull();
  });
  it('of a mouthbrooder seen to spawn finds her holding', () => {
    const lines: Line[] = [
      ...setUp,
      speciesOf('haps', 'mouthbrooder'),
      tankLine('B1'),
      pairOf('Slate', 'B1', 'haps'),
      laid('2026-02-01', null, { in: 'B1' }),
    ];
    expect(roomOn('2026-02-02', lines).stock.groups.get('Slate')?.holding).toMatchObject({ day: day('2026-02-01') });
  });
  it('of livebearers counts from birth', () => {
    const lines: Line[] = [
      ...setUp,
      speciesOf('limia', 'livebearer'),
      tankLine('B1'),
      group('Fen', 'trio', 'B1', {
        species: 'limia',
        members: [
          ['male', null],
          ['female', null],
          ['female', null],
        ],
      }),
      look('2026-02-01', 'born', heads(18), { in: 'B1' }),
    ];
    const room = roomOn('2026-02-15', lines);
    expect(since(brood(room, 'Fen-1').laid, room.on)).toEqual({ low: 14, likely: 14, high: 14 });
    expect(days(brood(room, 'Fen-1').swam)).toBe('2026-02-01/2026-02-01');
  });
  it('of young first seen out of a shell is cast back and wide', () => {
    const lines: Line[] = [
      ...setUp,
      speciesOf('shelly', 'shell spawner'),
      tankLine('B1'),
      pairOf('Dune', 'B1', 'shelly'),
      look('2026-03-01', 'fry seen', heads(6), { in: 'B1' }),
    ];
    const room = roomOn('2026-03-01', lines);
    const age = since(brood(room, 'Dune-1').laid, room.on);
    expect(age.low).toBeGreaterThanOrEqual(5);
    expect(age.high - age.low).toBeGreaterThan(14);
  });
});

describe('names', () => {
  it('are numbered in order of date, skipping every one that is written anywhere', () => {
    const lines: Line[] = [
      ...setUp,
      laid('2026-02-01'),
      laid('2026-04-01'),
      laid('2026-06-01', null, { brood: 'Rowan-2' }),
    ];
    expect(names(roomOn('2026-06-01', lines))).toEqual(['Rowan-1', 'Rowan-3', 'Rowan-2']);
    // A name is text, not knowledge: the number does not change when the later line comes into view.
    expect(names(roomOn('2026-04-01', lines))).toEqual(['Rowan-1', 'Rowan-3']);
  });
  it('written twice are one brood on days that overlap, else an error with a free number', () => {
    const again = laid('2026-02-01', about(60), { brood: 'R7' });
    expect(names(roomOn('2026-02-01', [...setUp, laid('2026-02-01', null, { brood: 'R7' }), again]))).toEqual(['R7']);
    const room = roomOn('2026-05-01', [
      ...setUp,
      laid('2026-02-01', null, { brood: 'R7' }),
      laid('2026-05-01', null, { brood: 'R7' }),
    ]);
    expect(kinds(room)).toEqual(['brood-name-taken']);
    expect(room.problems[0]).toMatchObject({
      weight: 'stops',
      write: 'a free one: brood Rowan-1',
      also: [{ line: 5 }],
    });
  });
  it('in two tanks are one brood with two parts', () => {
    const lines: Line[] = [
      ...setUp,
      laid('2026-02-01', null, { brood: 'R7' }),
      look('2026-02-12', 'free-swimming', about(20), { in: 'C1', brood: 'R7' }),
    ];
    const room = roomOn('2026-02-12', lines);
    expect(room.problems).toEqual([]);
    expect([...brood(room, 'R7').parts.keys()]).toEqual(['A1', 'C1']);
  });
  it('make a brood of young seen in a colony', () => {
    const lines: Line[] = [
      tankLine('B1'),
      speciesOf('shelly', 'shell spawner'),
      group('Pebble', 'colony', 'B1', { species: 'shelly', count: heads(12) }),
      look('2026-02-12', 'fry seen', heads(6), { in: 'B1', brood: 'P1' }),
    ];
    expect(names(roomOn('2026-02-12', lines))).toEqual(['P1']);
  });
});
