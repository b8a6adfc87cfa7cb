/** Disputes as a keeper writes of them: on which day, who on whom, and which fish leaving ends one. */
import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import type { Room } from '../../src/state/draft.ts';
import { journalOn } from '../support/journal.ts';

const roomOf = (...lines: readonly string[]): Room => journalOn('2026-04-30', `${lines.join('\n')}\n`);
const disputes = (room: Room, group: string) => {
  const found = room.stock.groups.get(group);
  if (!found) throw new Error(`no ${group}`);
  return found.disputes;
};
type Side = { readonly sex: string | null; readonly name: string | null } | null;
const side = (fish: Side): string => (fish === null ? '?' : (fish.name ?? fish.sex ?? 'one'));
/** `2026-02-10 chasing male on female` for each sign. */
const signs = (group: string, ...lines: readonly string[]): string[] =>
  disputes(roomOf(...lines), group).flatMap((one) =>
    one.signs.map(({ day, sign, doer, sufferer }) => `${isoDay(day)} ${sign} ${side(doer)} on ${side(sufferer)}`),
  );
/** `2026-02-10 to 2026-02-11 separated` for each dispute. */
const told = (group: string, ...lines: readonly string[]): string[] =>
  disputes(roomOf(...lines), group).map(
    ({ from, ended }) => `${isoDay(from)} to ${ended === null ? '?' : `${isoDay(ended.day)} ${ended.how}`}`,
  );

describe('a sign', () => {
  it('is of the day that its line says', () => {
    expect(signs('Rowan', '2026-02-15 A1: pinned')).toEqual(['2026-02-15 pinned ? on ?']);
    expect(signs('Rowan', '2026-02-15 A1: pinned yesterday')).toEqual(['2026-02-14 pinned ? on ?']);
    expect(signs('Rowan', '2026-02-15 A1: chasing by 2026-02-13')).toEqual(['2026-02-13 chasing ? on ?']);
    expect(signs('Rowan', '2026-02-15 A1: chasing 2-4 days ago')).toEqual(['2026-02-12 chasing ? on ?']);
  });
  it('keeps its time, unless it is of another day', () => {
    const minutes = (line: string) => disputes(roomOf(line), 'Rowan').flatMap((one) => one.signs.map((s) => s.minute));
    expect(minutes('2026-02-15 07:40 A1: pinned')).toEqual([460]);
    expect(minutes('2026-02-15 07:40 A1: pinned yesterday')).toEqual([null]);
  });
  it('of a day before they made up is of the dispute that ended', () => {
    const ended = ['2026-02-10 A1: chasing', '2026-02-12 A1: made up'];
    expect(told('Rowan', ...ended, '2026-02-14 A1: pinned 3 days ago')).toEqual(['2026-02-10 to 2026-02-12 made up']);
    expect(told('Rowan', ...ended, '2026-02-14 A1: pinned 2 days ago')).toEqual([
      '2026-02-10 to 2026-02-12 made up',
      '2026-02-12 to ?',
    ]);
    expect(told('Rowan', ...ended, '2026-02-14 A1: pinned 5 days ago')).toEqual(['2026-02-09 to 2026-02-12 made up']);
    expect(told('Rowan', ...ended, '2026-02-14 A1: pinned 6 days ago')[0]).toBe('2026-02-08 to 2026-02-12 made up');
  });
});

describe('a sign of an earlier day', () => {
  it('stands among those of an open dispute in order of time, and may be its first', () => {
    const open = ['2026-02-10 A1: chasing', '2026-02-12 A1: torn fin'];
    expect(signs('Rowan', ...open, '2026-02-13 A1: pinned 2 days ago')).toEqual([
      '2026-02-10 chasing ? on ?',
      '2026-02-11 pinned ? on ?',
      '2026-02-12 torn fin ? on ?',
    ]);
    expect(told('Rowan', ...open, '2026-02-13 A1: pinned 5 days ago')).toEqual(['2026-02-08 to ?']);
    expect(signs('Rowan', ...open, '2026-02-13 A1: pinned 3 days ago')[1]).toBe('2026-02-10 pinned ? on ?');
  });
});

describe('who on whom', () => {
  it.each([
    ['the named fish does the chasing', 'A2: Fern chasing', 'chasing Fern on male'],
    ['and suffers everything else', 'A2: Fern pinned', 'pinned male on Fern'],
    ['as the line says', 'A2: chasing, male on female', 'chasing male on female'],
    ['between two females', 'A2: chasing, female on female', 'chasing female on female'],
    ['a name that fits a side is that side', 'A2: Fern chasing, female on male', 'chasing Fern on male'],
    ['also where it suffers', 'A2: Fern pinned, male on female', 'pinned male on Fern'],
    ['a name that fits no doer suffers it', 'A2: Fern chasing, male on female', 'chasing male on Fern'],
    ['of two who are named both', 'A2: Fern chasing Lark', 'chasing Fern on Lark'],
    ['whoever is named after `on`', 'A2: pinned, male on Lark', 'pinned male on Lark'],
    ['who is named after the sign', 'A2: chasing Lark', 'chasing male on Lark'],
    ['nobody, where the line names none', 'A2: chasing', 'chasing ? on ?'],
  ])('%s', (_, line, words) => {
    expect(signs('Sedge', `2026-02-10 ${line}`)).toEqual([`2026-02-10 ${words}`]);
  });
  it('in a pair the mate is the other side; once it has died, nobody is', () => {
    expect(signs('Rowan', '2026-02-10 A1: female pinned')).toEqual(['2026-02-10 pinned male on female']);
    expect(signs('Rowan', '2026-02-09 A1: male died', '2026-02-10 A1: female hiding')).toEqual([
      '2026-02-10 hiding ? on female',
    ]);
  });
});

describe('a fish that leaves', () => {
  const fern = '2026-02-10 A2: Fern pinned';
  it.each([
    ['ends it where it is the sufferer', '2026-02-11 A2: Fern moved to C2', '2026-02-11 separated'],
    ['or the doer', '2026-02-11 A2: male sold', '2026-02-11 separated'],
    ['by death', '2026-02-11 A2: Fern died', '2026-02-11 died'],
    ['by a cull', '2026-02-11 A2: Fern culled', '2026-02-11 died'],
    ['and not where it is neither', '2026-02-11 A2: Lark moved to C2', '?'],
    ['nor by its death', '2026-02-11 A2: Lark died', '?'],
  ])('%s', (_, line, end) => {
    expect(told('Sedge', fern, line)).toEqual([`2026-02-10 to ${end}`]);
  });
  it('ends one of any female only when no female is left with the male', () => {
    const any = ['2026-02-10 A2: chasing, male on female', '2026-02-11 A2: Lark moved to C2'];
    expect(told('Sedge', ...any)).toEqual(['2026-02-10 to ?']);
    expect(told('Sedge', ...any, '2026-02-12 A2: Fern moved to C2')).toEqual(['2026-02-10 to 2026-02-12 separated']);
  });
  it('and comes back has not begun it anew', () => {
    const back = [fern, '2026-02-11 A2: Fern moved to C2', '2026-02-20 C2: Fern moved to A2'];
    expect(told('Sedge', ...back)).toEqual(['2026-02-10 to 2026-02-11 separated']);
  });
});

describe('daily life', () => {
  it('opens none in a colony, nor with a mouth full of eggs; worse signs do, and then it counts', () => {
    expect(told('Pebble', '2026-02-10 B1: chasing', '2026-02-10 B1: not eating')).toEqual([]);
    expect(signs('Pebble', '2026-02-11 B1: pinned', '2026-02-12 B1: chasing')).toEqual([
      '2026-02-11 pinned ? on ?',
      '2026-02-12 chasing ? on ?',
    ]);
    const mouth = `2026-01-02 species haps: Haplochromis sp; mouthbrooder
2026-01-02 pair Slate: haps; male; female; in C2
2026-02-02 C2: Slate spawned`;
    expect(told('Slate', mouth, '2026-02-04 C2: Slate not eating')).toEqual([]);
    expect(told('Slate', mouth, '2026-02-04 C2: Slate pinned')).toEqual(['2026-02-04 to ?']);
    expect(told('Rowan', '2026-02-04 A1: not eating')).toEqual(['2026-02-04 to ?']);
  });
  it('calmer is kept with the dispute that is open, and with none that ended', () => {
    const lines = [
      '2026-02-10 A1: chasing',
      '2026-02-11 A1: calmer',
      '2026-02-12 A1: shimmying',
      '2026-02-13 A1: calmer',
    ];
    const [dispute] = disputes(roomOf(...lines), 'Rowan');
    expect(dispute?.calmer.map(({ day }) => isoDay(day))).toEqual(['2026-02-11']);
    expect(told('Rowan', ...lines)).toEqual(['2026-02-10 to 2026-02-12 shimmying']);
  });
});
