/** What is suspected of a pair or a female: which line settles it, and which leaves it to be looked for. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import type { Room } from '../../src/state/draft.ts';
import { broodNamed, journalOn } from '../support/journal.ts';

const on = (lines: string): Room => journalOn('2026-03-30', lines);
const suspected = (lines: string, group = 'Rowan'): string[] =>
  on(lines)
    .stock.groups.get(group)
    ?.suspected.map(({ kind, mother, day }) =>
      [mother, kind, isoDay(day)].filter((word) => word !== null).join(' '),
    ) ?? ['nobody'];

const MAYBE = '2026-03-10 A1: maybe spawned\n';
const BOTH = '2026-03-10 A2: Fern maybe spawned\n2026-03-11 A2: Lark about to spawn\n';

describe('what is suspected', () => {
  it.each(['spawned', 'eggs seen', 'no eggs', 'wrigglers'])('is settled by «%s»', (words) => {
    expect(suspected(`${MAYBE}2026-03-12 A1: ${words}\n`)).toEqual([]);
  });
  it('is not settled by young that were laid long before it', () => {
    const older = '2026-02-25 A1: spawned\n';
    for (const line of ['A1: Rowan-1 free-swimming, 30', 'A1: Rowan-1 wrigglers'])
      expect(suspected(`${older}${MAYBE}2026-03-12 ${line}\n`)).toEqual(['maybe 2026-03-10']);
    const near = '2026-03-11 A1: about to spawn\n';
    expect(suspected(`${older}${near}2026-03-12 A1: Rowan-1 free-swimming, 30\n`)).toEqual([
      'about to spawn 2026-03-11',
    ]);
    // Eggs of the day before may be what was suspected; those of two days before are not.
    expect(suspected(`2026-03-09 A1: spawned\n${MAYBE}2026-03-12 A1: Rowan-1 wrigglers\n`)).toEqual([]);
    expect(suspected(`2026-03-08 A1: spawned\n${MAYBE}2026-03-12 A1: Rowan-1 wrigglers\n`)).toHaveLength(1);
  });
  it('of one female is not settled by another, nor by a look at another', () => {
    const fern = 'Fern maybe 2026-03-10';
    const lark = 'Lark about to spawn 2026-03-11';
    expect(suspected(BOTH, 'Sedge')).toEqual([fern, lark]);
    expect(suspected(`${BOTH}2026-03-12 A2: Lark spawned\n`, 'Sedge')).toEqual([fern]);
    expect(suspected(`${BOTH}2026-03-12 A2: Fern eggs seen\n`, 'Sedge')).toEqual([lark]);
    expect(suspected(`${BOTH}2026-03-12 A2: Lark no eggs\n`, 'Sedge')).toEqual([fern, lark]);
    expect(suspected(`${BOTH}2026-03-12 A2: Fern no eggs\n`, 'Sedge')).toEqual([lark]);
    expect(suspected(`${BOTH}2026-03-12 A2: spawned\n`, 'Sedge')).toEqual([]);
    expect(suspected(`${BOTH}2026-03-12 A2: no eggs\n`, 'Sedge')).toEqual([lark]);
  });
  it('is not settled by a look of the day before that is told late', () => {
    expect(suspected(`${MAYBE}2026-03-10 A1: no eggs yesterday\n`)).toEqual(['maybe 2026-03-10']);
    expect(suspected(`${MAYBE}2026-03-11 A1: no eggs yesterday\n`)).toEqual([]);
  });
});

describe('a look without eggs that is told late', () => {
  it('says nothing of eggs that were first seen after it', () => {
    for (const line of ['spawned', 'eggs seen']) {
      const room = on(`2026-03-10 A1: ${line}\n2026-03-10 A1: no eggs yesterday\n`);
      expect([room.problems, broodNamed(room, 'Rowan-1').ended]).toEqual([[], null]);
    }
    const room = on(`${MAYBE}2026-03-10 A1: no eggs yesterday\n`);
    expect(broodNamed(room, 'Rowan suspected 2026-03-10').ended).toBeNull();
  });
  it('ends those that were there before it', () => {
    const room = on('2026-03-10 A1: spawned\n2026-03-12 A1: no eggs yesterday\n');
    expect(room.problems.map(({ kind }) => kind)).toEqual(['eggs-missing']);
    expect(broodNamed(room, 'Rowan-1').ended?.how).toBe('eggs gone');
  });
});

describe('eggs of a female', () => {
  const TWO = '2026-03-10 A2: Fern spawned, 50 eggs\n2026-03-10 A2: Lark spawned, 60 eggs\n';
  const told = (lines: string): string[] =>
    [...on(lines).stock.living.values()]
      .filter(({ ended }) => ended === null)
      .map(({ name, total }) => `${name} ${String(total.low)}`);
  const kinds = (lines: string): string[] => on(lines).problems.map(({ kind }) => kind);

  it('turned white or gone are hers', () => {
    const lines = `${TWO}2026-03-11 A2: Fern eggs white 5\n2026-03-12 A2: Lark eggs gone\n`;
    expect([told(lines), kinds(lines)]).toEqual([['Sedge-1 45'], []]);
    expect(broodNamed(on(lines), 'Sedge-1').white).toMatchObject({ low: 5, high: 5 });
    expect(broodNamed(on(lines), 'Sedge-2').ended?.how).toBe('eggs gone');
    expect(told(`${TWO}2026-03-11 Sedge: Lark eggs white 5\n`)).toEqual(['Sedge-1 50', 'Sedge-2 55']);
  });
  it('are asked for where either may be meant, and nothing changes', () => {
    const lines = `${TWO}2026-03-11 Sedge: eggs white 5\n2026-03-12 Sedge: eggs gone\n`;
    expect([told(lines), kinds(lines)]).toEqual([
      ['Sedge-1 50', 'Sedge-2 60'],
      ['which-fish', 'which-fish'],
    ]);
  });
  it('are none where she has none that are eggs: hatched, only suspected, or in another tank', () => {
    const fern = '2026-03-10 A2: Fern spawned, 50 eggs\n';
    for (const lines of [
      `${fern}2026-03-11 A2: Lark eggs gone\n`,
      `${fern}2026-03-13 A2: Sedge-1 wrigglers\n2026-03-14 A2: Fern eggs gone\n`,
      '2026-03-10 A2: Fern maybe spawned\n2026-03-11 A2: Fern eggs gone\n',
      `${fern}2026-03-10 A2: moved all Sedge-1 to C2\n2026-03-11 A2: Fern eggs gone\n`,
    ])
      expect([lines, ...kinds(lines)]).toEqual([lines, 'no-such-fish']);
    expect(told(`${fern}2026-03-10 A2: moved all Sedge-1 to C2\n2026-03-11 Sedge: eggs gone\n`)).toEqual([]);
  });
});

describe('eggs seen', () => {
  it('where the brood never went are some of it, if the line gives its name', () => {
    const room = on('2026-03-10 A1: spawned brood Rowan-1\n2026-03-12 C2: Rowan eggs seen brood Rowan-1\n');
    expect([...broodNamed(room, 'Rowan-1').parts]).toEqual([
      ['A1', { low: 1, likely: null, high: Infinity }],
      ['C2', { low: 1, likely: null, high: Infinity }],
    ]);
    const counted = '2026-03-10 A1: spawned brood Rowan-1, 50 eggs\n2026-03-12 A1: eggs seen brood Rowan-1\n';
    expect([...broodNamed(on(counted), 'Rowan-1').parts]).toMatchObject([['A1', { low: 50, high: 50 }]]);
  });
  it('are those laid last, where both clutches can be eggs', () => {
    const room = on('2026-03-10 A1: spawned\n2026-03-12 A1: spawned\n2026-03-13 A1: eggs seen, 40 eggs\n');
    expect(broodNamed(room, 'Rowan-2').total).toMatchObject({ low: 40, high: 40 });
    expect(broodNamed(room, 'Rowan-1').total.high).toBe(Infinity);
  });
  it('are others where those that are known have hatched', () => {
    const room = on('2026-03-10 A1: spawned\n2026-03-12 A1: wrigglers\n2026-03-13 A1: eggs seen\n');
    expect([...room.stock.living.keys()]).toEqual(['Rowan-1', 'Rowan-2']);
  });
});

describe('a suspicion', () => {
  it('is dated anew by the line that saw the spawning, and else by what the eggs allow', () => {
    const laid = (line: string): string[] => {
      const { laid, laidKnown } = broodNamed(on(`2026-03-10 A1: maybe spawned\n${line}\n`), 'Rowan-1');
      return [...[laid.low, laid.high].map((day) => (day === null ? '' : isoDay(day))), laidKnown];
    };
    expect(laid('2026-03-12 A1: spawned')).toEqual(['2026-03-12', '2026-03-12', 'seen']);
    expect(laid('2026-03-12 A1: eggs seen')).toEqual(['2026-03-09', '2026-03-10', 'bounded']);
    // Eggs of the 15th were laid on the 10th at the earliest.
    expect(laid('2026-03-15 A1: eggs seen')).toEqual(['2026-03-10', '2026-03-10', 'bounded']);
    expect(laid('2026-03-18 A1: eggs seen')[0]).toBe('2026-03-13');
  });
});
