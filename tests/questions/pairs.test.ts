import { describe, expect, test } from 'vitest';
import { pairs } from '../../src/questions/pairs.ts';
import type { PairRow } from '../../src/questions/pairs.ts';
import type { Line } from '../support/events.ts';
import { roomOn, tank } from '../support/events.ts';
import { groupSet, movedTo, rigged, said, sign, spawn, speciesSet, tankSet } from '../support/pairs.ts';

const SET = '2026-01-04';
const PAIR: readonly Line[] = [
  tankSet(SET, 'A1'),
  tankSet(SET, 'B2'),
  speciesSet(SET, 'krib', 'cave spawner'),
  groupSet(SET, 'Rowan', 'A1'),
];

function rowan(on: string, lines: readonly Line[]): PairRow {
  const [row] = pairs(roomOn(on, [...PAIR, ...lines]), 'Rowan').pairs;
  if (!row) throw new Error('Rowan is missing');
  return row;
}

function advice(on: string, lines: readonly Line[]): string {
  const { dispute } = rowan(on, lines);
  return dispute === null ? 'none open' : dispute.advice.step;
}

function signAt(on: string, minute: number): Line {
  return [
    on,
    tank('A1'),
    { kind: 'dispute sign', fish: { kind: 'implied' }, sign: 'chasing', doer: null, sufferer: null, minute },
  ];
}

describe('a dispute against its days and worst sign', () => {
  test('the second day of a torn fin: keep both in, look twice daily', () => {
    const lines = [
      sign('2026-02-14', 'A1', 'chasing', 'male on female'),
      rigged('2026-02-14', 'A1', 'lights off'),
      sign('2026-02-15', 'A1', 'pinned'),
      sign('2026-02-15', 'A1', 'torn fin'),
    ];
    const { dispute } = rowan('2026-02-15', lines);
    expect(dispute).toMatchObject({ days: 2, worst: 'torn fin', rank: 3, by: 'male on female' });
    expect(dispute?.measures.map(({ measure }) => measure)).toEqual(['lights off']);
    expect(dispute?.advice).toMatchObject({
      step: 'wait',
      what: 'keep both in while she has a refuge and eats; look twice daily',
      how: 'day 2 of a dispute with a torn fin, male on female; lights off since the 14th',
    });
  });

  test('removal is not advised on the first day of an ordinary dispute (trap 11)', () => {
    expect(advice('2026-02-14', [sign('2026-02-14', 'A1', 'chasing')])).toBe('wait');
    expect(advice('2026-02-14', [sign('2026-02-14', 'A1', 'torn fin')])).toBe('wait');
  });

  test.each(['gasping', 'wounded', 'scales missing'] as const)('%s is not waited on (trap 11)', (what) => {
    expect(advice('2026-02-14', [sign('2026-02-14', 'A1', what)])).toBe('separate');
  });

  test('a fish that does not eat calls for acting at once, not for parting', () => {
    expect(advice('2026-02-14', [sign('2026-02-14', 'A1', 'not eating')])).toBe('act');
  });

  test('a torn fin is acted on from day 3, chasing from day 5', () => {
    const torn = [sign('2026-02-14', 'A1', 'torn fin'), sign('2026-02-15', 'A1', 'chasing')];
    expect([advice('2026-02-15', torn), advice('2026-02-16', torn)]).toEqual(['wait', 'act']);
    const chased = ['14', '15', '16', '17', '18'].map((day) => sign(`2026-02-${day}`, 'A1', 'chasing'));
    expect([advice('2026-02-17', chased), advice('2026-02-18', chased)]).toEqual(['wait', 'act']);
  });

  test('worse at two looks running means parting them; worse once does not', () => {
    const once = [sign('2026-02-14', 'A1', 'chasing'), sign('2026-02-15', 'A1', 'torn fin')];
    expect(advice('2026-02-15', once)).toBe('wait');
    const twice = [
      sign('2026-02-14', 'A1', 'chasing'),
      sign('2026-02-15', 'A1', 'hiding'),
      sign('2026-02-16', 'A1', 'torn fin'),
    ];
    expect(advice('2026-02-16', twice)).toBe('separate');
    const eased = [...twice.slice(0, 2), said('2026-02-15', 'A1', 'calmer'), ...twice.slice(2)];
    expect(advice('2026-02-16', eased)).toBe('act');
  });

  test('three silent days are asked about, and the dispute is still open (trap 10)', () => {
    const lines = [sign('2026-02-14', 'A1', 'chasing')];
    expect([advice('2026-02-16', lines), advice('2026-02-17', lines), advice('2026-03-20', lines)]).toEqual([
      'wait',
      'ask',
      'ask',
    ]);
    expect(rowan('2026-03-20', lines).dispute?.days).toBe(35);
  });

  test('a new bout after a long silence starts its days anew, and says since when it is open', () => {
    const { dispute } = rowan('2026-02-25', [sign('2026-02-14', 'A1', 'chasing'), sign('2026-02-25', 'A1', 'chasing')]);
    expect(dispute?.days).toBe(12);
    expect(dispute?.gaps).toHaveLength(1);
    expect(dispute?.advice.step).toBe('wait');
    expect(dispute?.advice.how).toContain('day 1 of a new bout (open since the 14th)');
  });

  test('two lines 47 hours apart are one bout, 49 hours are two', () => {
    expect(rowan('2026-02-16', [signAt('2026-02-14', 600), signAt('2026-02-16', 540)]).dispute?.gaps).toHaveLength(0);
    expect(rowan('2026-02-16', [signAt('2026-02-14', 600), signAt('2026-02-16', 660)]).dispute?.gaps).toHaveLength(1);
  });

  test('the aggressor leaves, the other keeps its ground', () => {
    const { dispute } = rowan('2026-02-14', [sign('2026-02-14', 'A1', 'wounded', 'female on male')]);
    expect(dispute?.advice.what).toBe('separate now: divider in, or take out the female and leave the male in place');
  });

  test('who on whom: each on the other, or the latest two where it changed', () => {
    const by = (...lines: Line[]): string | null | undefined => rowan('2026-02-16', lines).dispute?.by;
    const male = sign('2026-02-14', 'A1', 'chasing', 'male on female');
    expect(by(male)).toBe('male on female');
    expect(by(male, sign('2026-02-15', 'A1', 'chasing', 'female on male'))).toBe('each on the other');
    expect(by(sign('2026-02-14', 'A1', 'chasing'))).toBeNull();
  });

  test('in a trio: one of two while unnamed, her name once it is said', () => {
    const trio = [
      ...PAIR.slice(0, 3),
      groupSet(SET, 'Sedge', 'A1', { kind: 'trio', females: ['Fern', 'Lark'], males: [null] }),
    ];
    const by = (...lines: Line[]): string | null | undefined =>
      pairs(roomOn('2026-02-16', [...trio, ...lines]), 'Sedge').pairs[0]?.dispute?.by;
    const unnamed = sign('2026-02-14', 'A1', 'chasing', 'male on female');
    expect(by(unnamed)).toBe('male on one of Fern and Lark');
    expect(by(unnamed, sign('2026-02-15', 'A1', 'hiding', undefined, 'Lark'))).toBe('male on Lark');
    const both = [
      sign('2026-02-14', 'A1', 'chasing', undefined, 'Fern'),
      sign('2026-02-15', 'A1', 'hiding', undefined, 'Lark'),
    ];
    expect(by(...both)).toBe('Fern on male, then male on Lark');
  });

  test('on a divider they are parted until a sign comes after it', () => {
    const lines = [sign('2026-02-14', 'A1', 'torn fin'), rigged('2026-02-16', 'A1', 'divider')];
    expect(advice('2026-02-17', lines)).toBe('parted');
    expect(advice('2026-02-18', [...lines, rigged('2026-02-18', 'A1', 'divider', true)])).not.toBe('parted');
  });
});

describe('what came before a dispute', () => {
  test('a spawn or the taking away of young within ten days is told with it', () => {
    const quarrel = sign('2026-02-14', 'A1', 'chasing');
    const after = (laid: string): string | null | undefined =>
      rowan('2026-02-14', [spawn(laid, 'A1', 'Rowan-1'), quarrel]).dispute?.after;
    expect(after('2026-02-09')).toBe('5 days after Rowan-1 was laid');
    expect(after('2026-01-20')).toBeNull();
  });
});

describe("against the pair's own past", () => {
  const bout = (from: string, to: string, dark = false): Line[] => [
    sign(from, 'A1', 'chasing', 'male on female'),
    ...(dark ? [rigged(from, 'A1', 'lights off'), rigged(to, 'A1', 'lights off', true)] : []),
    ...(to.slice(-2) > from.slice(-2) ? [sign(addOne(from), 'A1', 'chasing')] : []),
    said(to, 'A1', 'made up'),
  ];
  const addOne = (iso: string): string => `${iso.slice(0, 8)}${String(Number(iso.slice(8)) + 1).padStart(2, '0')}`;

  test('with fewer than three it says nothing', () => {
    expect(rowan('2026-03-01', [...bout('2026-01-10', '2026-01-11')]).past.says).toBeNull();
  });

  test('lengths, and with lights off against without', () => {
    const lines = [
      ...bout('2026-01-10', '2026-01-11', true),
      ...bout('2026-01-20', '2026-01-21', true),
      ...bout('2026-02-01', '2026-02-03'),
      ...bout('2026-02-10', '2026-02-12'),
    ];
    const { past, per90 } = rowan('2026-03-01', lines);
    expect(per90).toBe(4);
    expect(past.says).toBe('its last 4 took 2–3 days; with lights off 2 days (twice), without 3 days (twice)');
  });

  test('a dispute whose silence hides its end tells no length', () => {
    const lines = [
      ...bout('2026-01-10', '2026-01-11'),
      ...bout('2026-01-20', '2026-01-21'),
      sign('2026-02-01', 'A1', 'chasing'),
      sign('2026-02-20', 'A1', 'chasing'),
      said('2026-02-21', 'A1', 'made up'),
    ];
    expect(rowan('2026-03-01', lines).past.lengths).toBeNull();
  });
});

describe('spawning', () => {
  const monthly = [
    spawn('2026-01-10', 'A1', 'Rowan-1'),
    spawn('2026-02-10', 'A1', 'Rowan-2'),
    spawn('2026-03-12', 'A1', 'Rowan-3'),
    spawn('2026-04-11', 'A1', 'Rowan-4'),
  ];
  const gone = (on: string, brood: string): Line => [
    on,
    { kind: 'brood', brood },
    { kind: 'eggs gone', fish: { kind: 'brood', brood } },
  ];

  test('with three intervals its own median counts, else what is usual', () => {
    expect(rowan('2026-04-20', monthly).spawning.interval).toMatchObject({ days: { low: 23, likely: 30, high: 37 } });
    const one = rowan('2026-04-20', monthly.slice(0, 1)).spawning.interval;
    expect(one?.days).toMatchObject({ low: 28, likely: 35, high: 42 });
    expect(one?.basis).toBe('usual for cave spawners (common practice, no source)');
  });

  test('no late alarm while the pair guards fry (trap 12)', () => {
    const swam: Line = [
      '2026-04-21',
      tank('A1'),
      {
        kind: 'stage seen',
        fish: { kind: 'brood', brood: 'Rowan-4' },
        stage: 'free-swimming',
        count: null,
        brood: null,
      },
    ];
    const { spawning, doing } = rowan('2026-05-24', [...monthly, swam]);
    expect(spawning).toMatchObject({ lateDays: null, waits: 'guarding Rowan-4' });
    expect(doing).toContain('guarding Rowan-4');
  });

  test('late days count beyond the upper end of the interval', () => {
    const lost = [...monthly, ...[1, 2, 3, 4].map((n) => gone(`2026-0${String(n)}-14`, `Rowan-${String(n)}`))];
    const { spawning } = rowan('2026-05-24', lost);
    expect(spawning).toMatchObject({ lateDays: 6, waits: null });
  });

  test.each([
    ['in a dispute', [sign('2026-05-20', 'A1', 'chasing')], 'in a dispute'],
    ['on a divider', [rigged('2026-05-20', 'A1', 'divider')], 'on a divider'],
    ['resting', [said('2026-05-20', 'A1', 'resting')], 'resting'],
    ['apart', [movedTo('2026-05-20', 'A1', 'male', 'B2')], 'apart'],
    [
      'newly together again',
      [movedTo('2026-05-01', 'A1', 'male', 'B2'), said('2026-05-20', 'A1', 'member back', 'male')],
      'member back on 20 May',
    ],
  ] satisfies [string, Line[], string][])('no late alarm %s', (_, lines, waits) => {
    const { spawning } = rowan('2026-05-24', [
      spawn('2026-01-10', 'A1', 'Rowan-1'),
      gone('2026-01-12', 'Rowan-1'),
      ...lines,
    ]);
    expect(spawning).toMatchObject({ lateDays: null, waits });
  });

  test('without a spawn nothing is late: none seen', () => {
    expect(rowan('2026-05-24', []).spawning).toMatchObject({ last: null, lateDays: null });
  });
});

describe('the bond', () => {
  test('a pair is bonded only where a line says so (trap 18)', () => {
    expect(rowan('2026-02-01', []).state).toBe('not said');
    expect(rowan('2026-02-01', [said('2026-01-20', 'A1', 'bonded')]).state).toBe('bonded');
  });

  test('a rest is over when they spawn, and what was said before it counts again', () => {
    const rested = [said('2026-01-20', 'A1', 'bonded'), said('2026-02-01', 'A1', 'resting')];
    expect(rowan('2026-02-20', rested).state).toBe('resting');
    expect(rowan('2026-02-20', [...rested, spawn('2026-02-15', 'A1', 'Rowan-1')]).state).toBe('bonded');
    expect(rowan('2026-02-20', rested.slice(1)).state).toBe('resting');
    expect(rowan('2026-02-20', [...rested.slice(1), spawn('2026-02-15', 'A1', 'Rowan-1')]).state).toBe('not said');
  });

  test('names, fish and tanks find their group; colonies only by name', () => {
    const room = roomOn('2026-02-01', [
      ...PAIR,
      groupSet(SET, 'Sedge', 'B2', { kind: 'trio', females: ['Fern', 'Lark'], males: [null] }),
      tankSet(SET, 'C1'),
      groupSet(SET, 'Pebble', 'C1', { kind: 'colony', count: 25 }),
    ]);
    const names = (asked: string | null): string[] => pairs(room, asked).pairs.map(({ name }) => name);
    expect(names(null)).toEqual(['Rowan', 'Sedge']);
    expect(names('fern')).toEqual(['Sedge']);
    expect(names('a1')).toEqual(['Rowan']);
    expect(names('Pebble')).toEqual(['Pebble']);
    expect(names('nobody')).toEqual([]);
  });
});
