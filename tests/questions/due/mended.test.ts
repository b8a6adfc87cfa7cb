/** What a broken thing keeps from being undone, and how a fault that is told twice is told back. */
import { describe, expect, it } from 'vitest';
import { faultsDue } from '../../../src/questions/due/faults.ts';
import { measuresDue } from '../../../src/questions/due/measures.ts';
import { walk } from '../../../src/questions/walk.ts';
import { journalOn } from '../../support/journal.ts';

const ROOM = [
  '2026-01-01 loop North: sump 240 L; prefilter 6 layers; spills at 80 mm',
  '2026-01-01 tank N1: 100 L; on North',
  '2026-01-01 tank S1: 54 L; alone; sponge filter',
];
const room = (on: string, lines: readonly string[]) => journalOn(on, [...ROOM, ...lines].join('\n'));
const undoing = (on: string, lines: readonly string[]): readonly string[] =>
  measuresDue(room(on, lines)).map(({ what, why }) => `${what}: ${why}`);

describe('what would feed a fault is asked back once that is mended', () => {
  it('a heater that is stuck', () => {
    const stuck = '2026-02-01 S1: heater stuck 31 C; heater off';
    expect(undoing('2026-02-03', [stuck])).toEqual([
      expect.stringMatching(/^once mended, heater on again: .*; not before it is mended: heater stuck at 31 C/),
    ]);
    expect(undoing('2026-02-03', [stuck, '2026-02-02 S1: fixed "new heater"'])).toEqual([
      'heater on again: heater off since 1 Feb (2 days)',
    ]);
  });

  it('a pump over a leak of its loop or of a tank on it', () => {
    expect(undoing('2026-02-01', ['2026-02-01 North: leak; pump off'])).toEqual([
      expect.stringMatching(/^once mended, pump on again: .*not before it is mended: leak/),
    ]);
    expect(undoing('2026-02-01', ['2026-02-01 N1: leak "corner"', '2026-02-01 North: pump off'])).toEqual([
      expect.stringMatching(/^once mended, pump on again: .*not before it is mended: N1 corner/),
    ]);
    expect(undoing('2026-02-01', ['2026-02-01 S1: leak', '2026-02-01 North: pump off'])).toEqual([
      expect.stringMatching(/^pump on again/),
    ]);
  });

  it('a tank that leaks and is off its loop, on an air filter or not', () => {
    expect(undoing('2026-02-04', ['2026-02-01 N1: leak; off the loop'])).toEqual([
      expect.stringMatching(/^once mended, put back on the loop: /),
    ]);
    expect(undoing('2026-02-04', ['2026-02-01 N1: leak; off the loop, air filter in'])).toEqual([
      expect.stringMatching(/^once mended, put back on the loop, then take the air filter out: .*once mended: leak/),
    ]);
  });
});

describe('a tank that was taken off its loop for a fault of that', () => {
  const off = '2026-02-01 N1: off the loop, air filter in';
  it('goes back once the loop is mended', () => {
    const broken = ['2026-02-01 North: fault "drain gurgling"', off];
    expect(undoing('2026-02-04', broken)).toEqual([
      expect.stringMatching(/^once mended, put back on the loop, .*: .*; once mended: drain gurgling/),
    ]);
    expect(undoing('2026-02-04', [...broken, '2026-02-03 North: fixed'])).toEqual([
      expect.stringMatching(/^put back on the loop/),
    ]);
  });
  it('and not later for one that came long after, or of another place', () => {
    for (const other of ['2026-02-10 North: fault "timer"', '2026-02-01 S1: fault "lid cracked"'])
      expect(undoing('2026-02-12', [off, other])).toEqual([expect.stringMatching(/^put back on the loop/)]);
  });
});

describe('a fault told again', () => {
  const told = (lines: readonly string[]): readonly (readonly string[])[] =>
    faultsDue(room('2026-02-03', lines)).map(({ id, what, close }) => [id, what, close]);

  it('is one heater, as warm as it was last', () => {
    expect(told(['2026-02-01 S1: heater stuck 31 C', '2026-02-02 S1: heater stuck 33 C'])).toEqual([
      ['s1-heater-stuck', 'heater stuck at 33 C: pull its plug, cool slowly', 'S1: fixed'],
    ]);
    expect(told(['2026-02-01 S1: heater stuck 31 C', '2026-02-02 S1: heater stuck'])[0]?.[1]).toContain('31 C');
  });

  it('is the same leak where no words say that it is another', () => {
    expect(told(['2026-02-01 S1: leak "corner"', '2026-02-02 S1: leak'])).toHaveLength(1);
    expect(told(['2026-02-01 S1: leak "corner"', '2026-02-02 S1: leak "tap"'])).toEqual([
      ['s1-leak-corner', 'leak: find it, stop it, dry the floor (corner)', 'S1: fixed "corner"'],
      ['s1-leak-tap', 'leak: find it, stop it, dry the floor (tap)', 'S1: fixed "tap"'],
    ]);
  });

  it('stands in the walk in its own words, once', () => {
    const lines = ['2026-02-01 S1: heater stuck 31 C; leak', '2026-02-01 N1: leak "corner"; fault "lid cracked"'];
    const rigged = walk(room('2026-02-01', lines)).tanks.flatMap((tank) => tank.rigged);
    expect(rigged).toEqual([
      'leak: corner since today',
      'fault: lid cracked since today',
      'heater stuck at 31 C since today',
      'leak since today',
    ]);
  });
});

describe('power on', () => {
  it('of one place, while that of the room is off, says so', () => {
    const { problems } = room('2026-02-02', ['2026-02-01 room: power off', '2026-02-02 North: power on']);
    expect(problems.map(({ says, write, also }) => [says, write, also.length])).toEqual([
      [
        'it is the power of the whole room that is off, so «power on» here ends nothing',
        'room: power on, once all of it is back',
        1,
      ],
    ]);
  });
});
