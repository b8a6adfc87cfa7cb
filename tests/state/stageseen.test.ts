/** Stages as a keeper writes them: of colonies, mouths, shells and births, by tank and by name; what is counted of them. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { days } from '../support/fishroom.ts';
import { broodNamed as brood, journalOn } from '../support/journal.ts';
import { ROOM } from '../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const roomOf = (...lines: readonly string[]): Room => journalOn('2026-05-30', `${lines.join('\n')}\n`);
/** `Rowan-1 A1 30–60: 1, 2`: each brood with its tanks, its number and its lines. */
const broods = (room: Room): string[] =>
  [...room.stock.broods.values()].map(({ name, parts, total, lines }) => {
    const count = total.low === total.high ? String(total.low) : `${String(total.low)}–${String(total.high)}`;
    return `${name} ${[...parts.keys()].join(' ')} ${count}: ${lines.map(({ line }) => line - SETUP).join(', ')}`;
  });
const told = (room: Room): string[] =>
  room.problems.map(({ kind, at, also }) => [kind, ...[at, ...also].map(({ line }) => line - SETUP)].join(' '));
const SPAWN = '2026-02-02 A1: spawned';

describe('young of a colony', () => {
  const pebble = (...lines: readonly string[]): string => {
    const room = roomOf(...lines);
    if (told(room).length > 0) throw new Error(told(room).join());
    const group = room.stock.groups.get('Pebble');
    const parts = [...(group?.parts ?? [])].map(([tank, { low, high }]) => `${tank} ${String(low)}–${String(high)}`);
    return `${broods(room).join()} ${parts.join()}`.trim();
  };
  it('that were born are added to it and are no brood; births add up', () => {
    expect(pebble('2026-02-20 B1: all well')).toBe('B1 19–31');
    expect(pebble('2026-02-20 B1: born 18')).toBe('B1 37–49');
    expect(pebble('2026-02-20 Pebble: born 18')).toBe('B1 37–49');
    expect(pebble('2026-02-20 B1: born 18', '2026-02-22 B1: born 10')).toBe('B1 47–59');
  });
  it('that were seen may have been counted before, or may be new', () => {
    expect(pebble('2026-02-20 B1: fry seen 10')).toBe('B1 19–41');
    expect(pebble('2026-02-20 B1: fry seen')).toBe('B1 19–31');
  });
  it('are a brood by a name, beside which the others are the colony’s still', () => {
    const named = '2026-02-05 B1: Pebble free-swimming brood P1, 5';
    expect(broods(roomOf(named))).toEqual(['P1 B1 5: 1']);
    expect(pebble(named, '2026-02-20 B1: born 10')).toBe('P1 B1 5: 1 B1 29–41');
  });
  it('that shares its tank with a pair must be told apart', () => {
    const room = roomOf('2026-01-02 pair Oak: limia; male; female; in B1', '2026-02-20 B1: Pebble born 18');
    expect([told(room), room.stock.groups.get('Pebble')?.total.low]).toEqual([[], 37]);
    const oak = roomOf('2026-01-02 pair Oak: limia; male; female; in B1', '2026-02-20 B1: Oak born 18');
    expect(broods(oak)).toEqual(['Oak-1 B1 18: 2']);
  });
});

describe('mouths', () => {
  const slate = `2026-01-02 species haps: Haplochromis sp; mouthbrooder
2026-01-02 trio Slate: haps; male; females Moth and Wren; in C2`;
  const holding = (...lines: readonly string[]) => roomOf(slate, ...lines).stock.groups.get('Slate')?.holding ?? null;
  it('begin a brood of the female that holds, and let its young go', () => {
    const room = roomOf(slate, '2026-02-02 C2: Moth holding', '2026-02-20 C2: Moth released, 12');
    expect(broods(room)).toEqual(['Slate-1 C2 12: 3, 4']);
    expect(brood(room, 'Slate-1')).toMatchObject({ mothers: ['Moth'] });
    expect(days(brood(room, 'Slate-1').released)).toBe('2026-02-02/2026-02-20');
    expect(broods(roomOf(slate, '2026-02-02 C2: Moth holding', '2026-02-14 C2: stripped 31'))).toEqual([
      'Slate-1 C2 31: 3, 4',
    ]);
  });
  it('hold from that line till the young are out', () => {
    expect(holding('2026-02-02 C2: Moth holding')).toMatchObject({ mother: 'Moth' });
    expect(holding('2026-02-02 C2: Moth holding', '2026-02-20 C2: released')).toBeNull();
    expect(holding('2026-02-02 C2: Moth holding', '2026-02-14 C2: stripped 31')).toBeNull();
    expect(holding('2026-02-02 C2: Moth holding', '2026-02-10 C2: holding')).toMatchObject({ mother: 'Moth' });
  });
  it('are of fish that hold: a pair of cave spawners has none', () => {
    for (const stage of ['holding', 'released', 'stripped', 'born 12']) {
      const room = roomOf(`2026-02-02 A1: ${stage}`);
      expect([told(room), broods(room)]).toEqual([['no-such-fish 1'], []]);
    }
  });
});

describe('births', () => {
  const fen = `2026-01-02 species guppy: Poecilia sp; livebearer
2026-01-02 trio Fen: guppy; male; females Ivy and Moss; in C2`;
  it('of two females are two broods, and of the next month another', () => {
    const room = roomOf(fen, '2026-02-02 C2: Ivy born 18', '2026-02-04 C2: Moss born 5', '2026-03-04 C2: born 20');
    expect([broods(room), told(room)]).toEqual([['Fen-1 C2 18: 3', 'Fen-2 C2 5: 4', 'Fen-3 C2 20: 5'], []]);
    expect(days(brood(room, 'Fen-1').laid)).toBe('2026-02-02/2026-02-02');
  });
  it('and young that swim are theirs; eggs and wrigglers are not', () => {
    expect(broods(roomOf(fen, '2026-02-10 C2: free-swimming, 12'))).toEqual(['Fen-1 C2 12: 3']);
    expect(broods(roomOf(fen, '2026-02-10 C2: fry seen 12'))).toEqual(['Fen-1 C2 12–Infinity: 3']);
    expect(told(roomOf(fen, '2026-02-10 C2: wrigglers'))).toEqual(['no-such-fish 3']);
    expect(told(roomOf(fen, '2026-02-10 C2: spawned'))).toEqual(['no-such-fish 3']);
  });
});

describe('young seen out of a shell', () => {
  const dune = `2026-01-02 species shelly: Neolamprologus sp; shell spawner
2026-01-02 pair Dune: shelly; male; female; in C2`;
  it('are at least so many; more are seen of the same, and fewer are no fewer', () => {
    expect(broods(roomOf(dune, '2026-02-10 C2: fry seen 6'))).toEqual(['Dune-1 C2 6–Infinity: 3']);
    expect(broods(roomOf(dune, '2026-02-10 C2: fry seen 6', '2026-02-12 C2: fry seen 10'))).toEqual([
      'Dune-1 C2 10–Infinity: 3, 4',
    ]);
    const counted = ['2026-02-10 C2: fry seen 6', '2026-02-12 C2: fry seen 10', '2026-02-20 C2: Dune-1 counted 9'];
    expect([broods(roomOf(dune, ...counted)), told(roomOf(dune, ...counted))]).toEqual([['Dune-1 C2 9: 3, 4, 5'], []]);
  });
  it('a few of many that were counted make the many no less likely', () => {
    const likely = (...lines: readonly string[]): number | null =>
      brood(roomOf(SPAWN, '2026-02-12 A1: free-swimming, about 50', ...lines), 'Rowan-1').total.likely;
    expect([likely(), likely('2026-02-20 A1: fry seen 6')]).toEqual([50, 50]);
    expect(likely('2026-02-20 A1: fry seen 60')).toBe(60);
  });
  it('long after the last are another brood', () => {
    expect(broods(roomOf(dune, '2026-02-10 C2: fry seen 6', '2026-03-30 C2: fry seen 10'))).toEqual([
      'Dune-1 C2 6–Infinity: 3',
      'Dune-2 C2 10–Infinity: 4',
    ]);
  });
});

describe('a stage', () => {
  it('said of a pair is of its brood, or begins one where the pair lives', () => {
    expect(broods(roomOf(SPAWN, '2026-02-12 Rowan: free-swimming, 30'))).toEqual(['Rowan-1 A1 30: 1, 2']);
    expect(broods(roomOf('2026-02-12 Rowan: free-swimming, 30'))).toEqual(['Rowan-1 A1 30: 1']);
  });
  it('seen before is of the same brood, and tells nothing anew', () => {
    const room = roomOf(SPAWN, '2026-02-06 A1: wrigglers', '2026-02-07 A1: wrigglers', '2026-02-08 A1: hatched');
    expect([broods(room), told(room)]).toEqual([['Rowan-1 A1 1–Infinity: 1, 2, 3, 4'], []]);
    expect(days(brood(room, 'Rowan-1').hatched)).toBe('2026-02-03/2026-02-06');
  });
  it('too early for its brood, or too late, begins another; too early with a doubt', () => {
    const early = roomOf(SPAWN, '2026-02-03 A1: wrigglers');
    expect([broods(early), told(early)]).toEqual([
      ['Rowan-1 A1 1–Infinity: 1', 'Rowan-2 A1 1–Infinity: 2'],
      ['stages-contradict 2 1'],
    ]);
    const late = roomOf(SPAWN, '2026-05-02 A1: wrigglers');
    expect([broods(late).length, told(late)]).toEqual([2, []]);
    const swim = roomOf(SPAWN, '2026-02-10 A1: free-swimming, about 70', '2026-02-13 A1: wrigglers');
    expect([broods(swim)[1], told(swim)]).toEqual(['Rowan-2 A1 1–Infinity: 3', []]);
  });
  it('with a name is of that brood, in another tank too', () => {
    const named = '2026-02-02 A1: spawned brood R7';
    const room = roomOf(named, '2026-02-12 C2: free-swimming brood R7, 20');
    expect([broods(room), told(room)]).toEqual([['R7 A1 C2 21–Infinity: 1, 2'], []]);
    expect(broods(roomOf('2026-02-02 A1: maybe spawned', '2026-02-12 A1: free-swimming brood R8'))).toEqual([
      'R8 A1 1–Infinity: 1, 2',
    ]);
  });
  it('with a name that a brood has which is gone is refused, with a free one', () => {
    const gone = roomOf(
      '2026-02-02 A1: spawned brood R7',
      '2026-02-04 A1: R7 eggs gone',
      '2026-04-12 A1: wrigglers brood R7',
    );
    expect(told(gone)).toEqual(['brood-name-taken 3 1']);
    expect(gone.problems[0]?.write).toBe('a free one: brood Rowan-1');
  });
});

describe('how many', () => {
  it('that were laid bound those that hatch; unseen losses leave one at least', () => {
    const eggs = '2026-02-02 A1: spawned, 80 eggs';
    expect(broods(roomOf(eggs, '2026-02-06 A1: wrigglers'))).toEqual(['Rowan-1 A1 1–80: 1, 2']);
    expect(broods(roomOf(eggs, '2026-02-06 A1: wrigglers, 60', '2026-02-12 A1: free-swimming'))).toEqual([
      'Rowan-1 A1 1–60: 1, 2, 3',
    ]);
    expect(told(roomOf(eggs, '2026-02-12 A1: free-swimming, 90'))).toEqual(['counts-contradict 2 1']);
    expect(told(roomOf(eggs, '2026-02-12 A1: free-swimming, 80'))).toEqual([]);
  });
  it('by a guess of the same stage bound each other', () => {
    const swim = [SPAWN, '2026-02-10 A1: free-swimming, about 70', '2026-02-12 A1: free-swimming, about 40'];
    expect(broods(roomOf(...swim))).toEqual(['Rowan-1 A1 35–80: 1, 2, 3']);
  });
});

describe('days that lie between two stages at the least', () => {
  // Laid on 2 February by SPAWN.
  const windows = (...lines: string[]): (string | null)[] => {
    const { hatched, swam } = brood(roomOf(SPAWN, ...lines), 'Rowan-1');
    return [hatched && days(hatched), swam && days(swam)];
  };
  it('are one from laying to hatching and one more to swimming', () => {
    expect(windows('2026-02-12 A1: free-swimming')).toEqual(['2026-02-03/2026-02-12', '2026-02-04/2026-02-12']);
  });
  it('count from the last look at eggs, and from wrigglers none', () => {
    const eggs = '2026-02-04 A1: about 40 eggs seen';
    expect(windows(eggs, '2026-02-12 A1: free-swimming')).toEqual(['2026-02-04/2026-02-12', '2026-02-05/2026-02-12']);
    const young = '2026-02-06 A1: wrigglers';
    expect(windows(young, '2026-02-12 A1: free-swimming')[1]).toBe('2026-02-06/2026-02-12');
  });
  it('yield to a day that was written down', () => {
    expect(windows('2026-02-06 A1: hatched yesterday')[0]).toBe('2026-02-05/2026-02-05');
  });
});
