/** Rows about eggs and young by the day: the hatch, the first food, the first swimmers, feeding, and the first move. */
import { describe, expect, it } from 'vitest';
import { stagesDue } from '../../../src/questions/due/stages.ts';
import { rowsOf, type Told } from './rows.ts';

const SPAWNED = '2026-02-02 A1: spawned\n';
const rows = (on: string, lines: string, days = 7): readonly Told[] => rowsOf(stagesDue, on, lines, days);
const ids = (on: string, lines: string, days = 7): string[] => rows(on, lines, days).map(({ id }) => id);
function row(kind: string, on: string, lines: string): Told {
  const found = rows(on, lines).find(({ id }) => id.endsWith(`-${kind}`));
  if (found === undefined) throw new Error(`no ${kind} among ${ids(on, lines).join()}`);
  return found;
}
const USUAL = '(usual for cave spawners, no temperature read)';

// Cave spawners hatch 2 to 5 and swim 5 to 15 days after laying (common practice, no source: `science/guilds`).
describe('eggs', () => {
  it('are looked at for wrigglers until they may swim', () => {
    expect(row('hatch', '2026-02-02', SPAWNED)).toEqual({
      id: 'a1-rowan-1-hatch',
      place: 'A1',
      what: 'look for wrigglers',
      due: '2026-02-04..2026-02-05..2026-02-07',
      weight: 0,
      why: `Rowan-1 hatches 4–7 Feb, most likely 5–6 ${USUAL}`,
      close: 'A1: Rowan-1 wrigglers',
      caution: null,
      after: null,
      key: 'hatch',
      pressing: false,
      steps: ['laid 2 Feb', 'hatches 4–7 Feb, most likely 5–6'],
      lines: [1],
    });
    expect(ids('2026-02-06', SPAWNED)).toContain('a1-rowan-1-hatch');
    expect(ids('2026-02-07', SPAWNED)).not.toContain('a1-rowan-1-hatch');
  });
  it('come into sight so many days ahead, and are asked after for three weeks', () => {
    expect([ids('2026-02-02', SPAWNED, 1), ids('2026-02-02', SPAWNED, 2)]).toEqual([[], ['a1-rowan-1-hatch']]);
    // The last day on which they swim is the 17th.
    expect(ids('2026-03-10', SPAWNED)).toEqual(['a1-rowan-1-swim']);
    expect(ids('2026-03-11', SPAWNED)).toEqual([]);
  });
  it('that are only suspected, of one or the other brood, or gone are not asked for', () => {
    expect(ids('2026-02-03', '2026-02-02 A1: maybe spawned\n')).toEqual([]);
    expect(ids('2026-02-03', `${SPAWNED}2026-02-03 A1: eggs gone\n`)).toEqual([]);
  });
  it('name the temperature that they were reckoned with', () => {
    expect(row('hatch', '2026-02-02', `2026-02-01 A1: test 24.5 C\n${SPAWNED}`).why).toMatch(/at 24\.5 C\)$/);
    expect(row('hatch', '2026-02-02', `2026-02-01 A1: test 25 C\n${SPAWNED}`).why).toMatch(/at 25 C\)$/);
  });
});

describe('first food', () => {
  it('is set two days before they may swim, and presses from the first of those days on', () => {
    expect(row('food', '2026-02-02', SPAWNED)).toMatchObject({
      id: 'a1-rowan-1-food',
      what: 'first food ready for Rowan-1',
      due: '2026-02-05..2026-02-11..2026-02-17',
      weight: 1,
      why: `Rowan-1 swims 7–17 Feb, most likely 10–12 ${USUAL}; set brine shrimp to hatch on 5 Feb, or have microworm ready`,
      close: 'room: hatch 2 g brine shrimp',
      key: 'food',
      steps: [
        'laid 2 Feb',
        'swims 7–17 Feb, most likely 10–12',
        'brine shrimp hatch in 24 to 36 hours: set up 5 Feb',
        'no live jar, hatch or feed of a first food in the journal',
      ],
      lines: [1],
    });
    expect(row('food', '2026-02-05', SPAWNED).why).toContain('; set brine shrimp to hatch now, or');
    expect([row('food', '2026-02-06', SPAWNED).weight, row('food', '2026-02-07', SPAWNED).weight]).toEqual([1, 2]);
    expect(ids('2026-02-17', SPAWNED)).toContain('a1-rowan-1-food');
    expect(ids('2026-02-18', SPAWNED)).not.toContain('a1-rowan-1-food');
  });
  it('is there where a jar gives in time, shrimp were set, or such food was fed there in the last two days', () => {
    const ready = (lines: string, on = '2026-02-06'): string | null => {
      const all = SPAWNED + lines;
      expect(ids(on, all).includes('a1-rowan-1-food')).toBe(!row('swim', on, all).why.includes(';'));
      return row('swim', on, all).why.split('; ')[1] ?? null;
    };
    expect(ready('2026-02-04 M1: started\n')).toBe('microworm in M1');
    // Microworm gives three days after it was started: on the 8th they may swim already.
    expect(ready('2026-02-05 M1: started\n')).toBeNull();
    expect(ready('2026-02-04 room: hatch 2 g brine shrimp\n')).toBe('brine shrimp set 4 Feb');
    expect(ready('2026-02-03 room: hatch 2 g brine shrimp\n')).toBeNull();
    expect(ready('2026-02-04 A1: fed Microworms\n')).toBe('fed microworm 4 Feb');
    expect(ready('2026-02-03 A1: fed microworm\n')).toBeNull();
    expect(ready('2026-02-06 A2: fed microworm\n')).toBeNull();
    expect(ready('2026-02-06 A1: fed flake\n')).toBeNull();
    expect(row('swim', '2026-02-06', `${SPAWNED}2026-02-06 A1: fed microworm\n`).lines).toEqual([1, 2]);
  });
});

describe('young that swim', () => {
  const swum = `${SPAWNED}2026-02-12 A1: free-swimming, 20\n`;
  it('are fed for two weeks, each day that no feed was written there', () => {
    expect(row('feed', '2026-02-15', swum)).toMatchObject({
      what: 'feed Rowan-1, little and often',
      due: '2026-02-15',
      weight: 1,
      close: 'A1: fed microworm',
      key: 'feed',
      lines: [1, 2],
    });
    expect(row('feed', '2026-02-15', swum).why).toMatch(/^13 days from laying, .*; brine shrimp or microworm$/);
    expect(ids('2026-02-15', `${swum}2026-02-15 A1: fed microworm\n`)).toEqual([]);
    expect(ids('2026-02-15', `${swum}2026-02-14 A1: fed microworm\n`)).toEqual(['a1-rowan-1-feed']);
    expect(ids('2026-02-15', `${swum}2026-02-15 A2: fed microworm\n`)).toEqual(['a1-rowan-1-feed']);
    expect(ids('2026-02-26', swum)).toContain('a1-rowan-1-feed');
    expect(ids('2026-02-27', swum)).not.toContain('a1-rowan-1-feed');
  });
  it('from the day of their birth are told by it', () => {
    const born = '2026-02-02 pair Fan: limia; male; female; in C2\n2026-02-03 C2: Fan born 12\n';
    expect(row('feed', '2026-02-05', born).why).toMatch(/^2 days from birth, free-swimming since 3 Feb; /);
  });
  it('may leave their parents in time, unless they or the parents are elsewhere already', () => {
    expect(row('move', '2026-03-14', swum)).toMatchObject({
      what: 'Rowan-1 may leave the parents: a tank of its own',
      weight: 1,
      why: '20 with the parents; cave spawners move 28–42 days after swimming; 12 is free',
      close: 'A1: moved all Rowan-1 to tank 12',
      key: 'move',
    });
    for (const line of ['moved all Rowan to C2', 'moved all Rowan-1 to C2'])
      expect(ids('2026-03-14', `${swum}2026-03-01 A1: ${line}\n`)).toEqual([]);
  });
});
