/** What goes along with a female that changes tanks: young in her mouth, and no others. */
import { describe, expect, it } from 'vitest';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';

const SLATE = `2026-01-02 species haps: Haplochromis sp; mouthbrooder
2026-01-02 harem Slate: haps; male; females Moth and Wren; in C2`;
const roomOf = (...lines: readonly string[]): Room => journalOn('2026-04-30', `${[SLATE, ...lines].join('\n')}\n`);
/** `Slate-1 C1 1+`, of those that are left. */
const broods = (room: Room): string[] =>
  [...room.stock.broods.values()].map(({ name, parts, ended }) =>
    ended === null
      ? `${name} ${[...parts].map(([tank, { low, high }]) => `${tank} ${String(low)}${high > low ? '+' : ''}`).join(', ')}`
      : `${name} ${ended.how}`,
  );
const HOLDS = '2026-02-02 C2: Moth holding';

describe('young in the mouth of a female', () => {
  it('go where she goes, and are let go or stripped there as the same brood', () => {
    expect(broods(roomOf(HOLDS, '2026-02-08 C2: moved Moth to C1'))).toEqual(['Slate-1 C1 1+']);
    for (const out of ['Moth stripped 31', 'stripped 31', 'released, 31']) {
      const room = roomOf(HOLDS, '2026-02-08 C2: moved Moth to C1', `2026-02-18 C1: ${out}`);
      expect([out, broods(room), room.problems]).toEqual([out, ['Slate-1 C1 31'], []]);
    }
  });
  it('go back with her, and once they are out stay where they are', () => {
    const away = [HOLDS, '2026-02-08 C2: moved Moth to C1'];
    expect(broods(roomOf(...away, '2026-02-10 C1: Moth back'))).toEqual(['Slate-1 C2 1+']);
    expect(broods(roomOf(...away, '2026-02-10 C1: moved Moth to C2'))).toEqual(['Slate-1 C2 1+']);
    const out = [...away, '2026-02-18 C1: stripped 31'];
    expect(broods(roomOf(...out, '2026-02-19 C1: moved Moth to C2'))).toEqual(['Slate-1 C1 31']);
    expect(broods(roomOf(...out, '2026-02-19 C1: Moth back'))).toEqual(['Slate-1 C1 31']);
    const counted = [...away, '2026-02-18 C1: Slate-1 counted 31'];
    expect(broods(roomOf(...counted, '2026-02-19 C1: moved Moth to C2'))).toEqual(['Slate-1 C1 31']);
  });
  it('stay where another goes, or the male', () => {
    expect(broods(roomOf(HOLDS, '2026-02-08 C2: moved Wren to C1'))).toEqual(['Slate-1 C2 1+']);
    expect(broods(roomOf(HOLDS, '2026-02-08 C2: moved the male to C1'))).toEqual(['Slate-1 C2 1+']);
  });
  it('of two that hold, each goes with her own', () => {
    const both = [HOLDS, '2026-02-05 C2: Wren holding', '2026-02-08 C2: moved Wren to C1'];
    expect(broods(roomOf(...both))).toEqual(['Slate-1 C2 1+', 'Slate-2 C1 1+']);
  });
  it('of nobody named go with the first that is moved, one mouthful to each', () => {
    const ones = ['2026-02-02 C2: holding', '2026-02-03 C2: Wren holding', '2026-02-08 C2: moved Moth to C1'];
    expect(broods(roomOf(ones[0] ?? '', ones[2] ?? ''))).toEqual(['Slate-1 C1 1+']);
  });
  it('go along where the whole group goes', () => {
    expect(broods(roomOf(HOLDS, '2026-02-08 C2: Slate moved to C1'))).toEqual(['Slate-1 C1 1+']);
    expect(broods(roomOf(HOLDS, '2026-02-08 harem Slate: in C1'))).toEqual(['Slate-1 C1 1+']);
  });
});

describe('eggs that are gone', () => {
  it('of a female or pair that is named are those of her brood', () => {
    const both = [HOLDS, '2026-02-05 C2: Wren holding'];
    expect(broods(roomOf(...both, '2026-02-08 C2: Wren eggs gone'))).toEqual(['Slate-1 C2 1+', 'Slate-2 eggs gone']);
    expect(broods(roomOf('2026-02-02 A1: spawned', '2026-02-03 A1: Rowan eggs gone'))).toEqual(['Rowan-1 eggs gone']);
    const white = roomOf('2026-02-02 A1: spawned, 80 eggs', '2026-02-03 A1: Rowan eggs white 30');
    expect([broods(white), white.stock.groups.get('Rowan')?.total.low]).toEqual([['Rowan-1 A1 50'], 2]);
  });
  it('of several, or of none, are asked for', () => {
    const told = (...lines: readonly string[]) => roomOf(...lines).problems.map(({ kind }) => kind);
    expect(told(HOLDS, '2026-02-05 C2: Wren holding', '2026-02-08 C2: Slate eggs gone')).toEqual(['which-fish']);
    expect(told('2026-02-03 A1: Rowan eggs gone')).toEqual(['no-such-fish']);
    expect(told(HOLDS, '2026-02-08 C2: Wren eggs gone')).toEqual(['no-such-fish']);
  });
});

describe('one of several females without names', () => {
  const reed = '2026-01-02 harem Reed: haps; 1 male, 3 females; in B1';
  it('moves by number, and what she holds with her', () => {
    const room = roomOf(reed, '2026-02-02 B1: Reed holding', '2026-02-08 B1: moved 1 female Reed to C1');
    expect([room.problems, broods(room)]).toEqual([[], ['Reed-1 C1 1+']]);
    const tanks = room.stock.groups.get('Reed')?.members.map(({ sex, tank }) => `${sex ?? ''} ${tank ?? ''}`);
    expect(tanks).toEqual(['male B1', 'female C1', 'female B1', 'female B1']);
  });
  it('leaves the others holding: what is out or gone is one mouthful', () => {
    const holding = (...lines: readonly string[]) =>
      roomOf(HOLDS, '2026-02-05 C2: Wren holding', ...lines).stock.groups.get('Slate')?.holding ?? null;
    expect(holding('2026-02-08 C2: Wren eggs gone')).toMatchObject({ mother: 'Moth' });
    expect(holding('2026-02-20 C2: Moth released, 12')).toMatchObject({ mother: 'Wren' });
    expect(holding('2026-02-20 C2: Moth released, 12', '2026-02-25 C2: Wren released, 9')).toBeNull();
  });
});
