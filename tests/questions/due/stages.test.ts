/** What the stage clocks put on today's list. */
import { describe, expect, it } from 'vitest';
import { stagesDue } from '../../../src/questions/due/stages.ts';
import { roomOn, tank, type Line } from '../../support/events.ts';
import { about, heads, laid, look, move, named, sample, setUp } from '../../support/fishroom.ts';

const NOTHING = {
  ph: null,
  kh: null,
  gh: null,
  tan: null,
  no2: null,
  no3: null,
  temperature: null,
  conductivity: null,
  salinity: null,
  oxygen: null,
  chlorine: null,
};
const ids = (on: string, lines: readonly Line[], days = 7) => stagesDue(roomOn(on, lines), days).map(({ id }) => id);
const row = (on: string, lines: readonly Line[], id: string) =>
  stagesDue(roomOn(on, lines), 7).find((one) => one.id === id);

describe('a spawn', () => {
  const spawned: Line[] = [...setUp, laid('2026-02-02', about(90))];
  it('asks for a look at the hatch, and for first food', () => {
    expect(ids('2026-02-02', spawned)).toEqual(['a1-rowan-1-hatch', 'a1-rowan-1-food', 'a1-rowan-1-swim']);
    expect(row('2026-02-02', spawned, 'a1-rowan-1-hatch')).toMatchObject({
      what: 'look for wrigglers',
      close: 'A1: Rowan-1 wrigglers',
    });
    const food = row('2026-02-02', spawned, 'a1-rowan-1-food');
    expect(food).toMatchObject({ what: 'first food ready for Rowan-1', close: 'room: hatch 2 g brine shrimp' });
    expect(food?.why).toContain('set brine shrimp to hatch on 5 Feb');
  });
  it('asks no more for the hatch once it was seen', () => {
    expect(ids('2026-02-05', [...spawned, look('2026-02-05', 'wrigglers')])).toEqual([
      'a1-rowan-1-food',
      'a1-rowan-1-swim',
    ]);
  });
  it('asks only for a look where shrimp were set, and names them', () => {
    const fed: Line[] = [
      ...spawned,
      ['2026-02-06', tank('A1'), { kind: 'hatch set', grams: null, of: 'brine shrimp' }],
    ];
    const swim = row('2026-02-07', fed, 'a1-rowan-1-swim');
    expect(swim).toMatchObject({ what: 'look for swimming young', close: 'A1: Rowan-1 free-swimming' });
    expect(swim?.why).toContain('brine shrimp set 6 Feb');
  });
  it('is asked after when nobody saw them swim, for three weeks', () => {
    expect(row('2026-02-25', spawned, 'a1-rowan-1-swim')).toMatchObject({
      what: 'no word of swimming young: look',
      weight: 2,
    });
    expect(ids('2026-03-20', spawned)).toEqual([]);
  });
  it('is fed every day for two weeks, and told with its age', () => {
    const young = sample.slice(0, -1);
    const feed = row('2026-02-15', young, 'a1-rowan-1-feed');
    expect(feed?.why).toBe('13 days from laying, free-swimming since 5–10 Feb; brine shrimp or microworm');
    expect(feed?.close).toBe('A1: fed microworm');
    const fed: Line = ['2026-02-15', tank('A1'), { kind: 'fed', food: 'microworm', grams: null }];
    expect(ids('2026-02-15', [...young, fed])).toEqual([]);
  });
  it('is followed by the first move, until they were moved', () => {
    const young = sample.slice(0, -1);
    expect(ids('2026-02-25', young)).toEqual([]);
    expect(ids('2026-03-01', young)).toEqual(['a1-rowan-1-move']);
    expect(row('2026-03-01', young, 'a1-rowan-1-move')).toMatchObject({ close: 'A1: moved all Rowan-1 to C1' });
    expect(
      ids('2026-03-02', [...young, move('2026-03-02', heads(40), 'C1', { fish: named('Rowan-1'), stay: true })]),
    ).toEqual([]);
  });
  it('in warm water hatches sooner than in cool', () => {
    const at = (celsius: number): Line[] => [
      ...spawned,
      [
        '2026-02-01',
        tank('A1'),
        {
          kind: 'tested',
          reading: { ...NOTHING, temperature: { unit: 'C', low: celsius, likely: celsius, high: celsius } },
        },
      ],
    ];
    const due = (celsius: number) => row('2026-02-02', at(celsius), 'a1-rowan-1-hatch')?.due;
    expect(due(28)?.low).toBeLessThan(due(23)?.low ?? 0);
    expect(due(28)?.high).toBeLessThan(due(23)?.high ?? 0);
    expect(row('2026-02-02', at(28), 'a1-rowan-1-hatch')?.why).toContain('usual for cave spawners at 28 C');
  });
  it('that is only suspected calls for no food yet', () => {
    expect(ids('2026-02-03', [...setUp, laid('2026-02-02', null, { as: 'maybe' })])).toEqual([]);
  });
});
