import { describe, expect, test } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import type { SeenGroup } from '../../src/state/bodies.ts';
import type { Line } from '../support/events.ts';
import { day, roomOn, tank } from '../support/events.ts';
import { died, groupSet, movedTo, rigged, said, sign, spawn, tankSet } from '../support/pairs.ts';

const SET = '2026-01-04';
const PAIR: readonly Line[] = [tankSet(SET, 'A1'), tankSet(SET, 'B2'), groupSet(SET, 'Rowan', 'A1')];

function rowan(on: string, lines: readonly Line[], setUp = PAIR): SeenGroup {
  const group = roomOn(on, [...setUp, ...lines]).stock.groups.get('Rowan');
  if (!group) throw new Error('Rowan is missing');
  return group;
}

/** Each dispute as `from–to how`, open ones without an end. */
function told(group: SeenGroup): string[] {
  return group.disputes.map(
    (one) => `${isoDay(one.from)} ${one.ended ? `${isoDay(one.ended.day)} ${one.ended.how}` : 'open'}`,
  );
}

describe('a dispute', () => {
  test('runs from its first sign to the line that says they made up', () => {
    const lines = [
      sign('2026-02-14', 'A1', 'chasing', 'male on female'),
      sign('2026-02-15', 'A1', 'pinned'),
      sign('2026-02-15', 'A1', 'torn fin'),
      said('2026-02-16', 'A1', 'made up'),
    ];
    expect(told(rowan('2026-03-01', lines))).toEqual(['2026-02-14 2026-02-16 made up']);
  });

  test('is not closed because nobody wrote for two days (trap 10)', () => {
    expect(told(rowan('2026-03-20', [sign('2026-02-14', 'A1', 'chasing')]))).toEqual(['2026-02-14 open']);
  });

  test('stays one while it is open, however long the silence inside it', () => {
    const lines = [sign('2026-02-14', 'A1', 'chasing'), sign('2026-02-20', 'A1', 'torn fin')];
    expect(told(rowan('2026-02-20', lines))).toEqual(['2026-02-14 open']);
  });

  test('that begins after one was made up is another', () => {
    const lines = [
      sign('2026-02-14', 'A1', 'chasing'),
      said('2026-02-15', 'A1', 'made up'),
      sign('2026-02-16', 'A1', 'chasing'),
    ];
    expect(told(rowan('2026-02-16', lines))).toEqual(['2026-02-14 2026-02-15 made up', '2026-02-16 open']);
  });

  test.each([
    ['shimmying', said('2026-02-16', 'A1', 'shimmying'), 'shimmying'],
    ['a spawn', spawn('2026-02-16', 'A1', 'Rowan-1'), 'spawned'],
    ['a male moved out', movedTo('2026-02-16', 'A1', 'male', 'B2'), 'separated'],
    ['a rest', said('2026-02-16', 'A1', 'resting'), 'separated'],
    ['a split', said('2026-02-16', 'A1', 'split up'), 'separated'],
    ['a death', died('2026-02-16', 'A1', 'female'), 'died'],
  ])('ends with %s', (_, line, how) => {
    expect(told(rowan('2026-02-17', [sign('2026-02-14', 'A1', 'chasing'), line]))).toEqual([
      `2026-02-14 2026-02-16 ${how}`,
    ]);
  });

  test.each([
    ['calmer', said('2026-02-16', 'A1', 'calmer')],
    ['lights off', rigged('2026-02-16', 'A1', 'lights off')],
    ['a divider: they cannot reach each other, but nothing is settled', rigged('2026-02-16', 'A1', 'divider')],
    ['a suspected spawn', spawn('2026-02-16', 'A1', 'Rowan-1', undefined, 'maybe')],
  ])('is not ended by %s', (_, line) => {
    expect(told(rowan('2026-02-17', [sign('2026-02-14', 'A1', 'chasing'), line]))).toEqual(['2026-02-14 open']);
  });

  test('"made up" alone opens none, and is a doubt', () => {
    const room = roomOn('2026-02-17', [...PAIR, said('2026-02-16', 'A1', 'made up')]);
    expect(room.stock.groups.get('Rowan')?.disputes).toEqual([]);
    expect(room.problems.map(({ kind, weight }) => [kind, weight])).toEqual([['no-dispute', 'doubt']]);
  });

  test('takes in a sign that was filed late for a day before its end', () => {
    const lines: Line[] = [
      sign('2026-02-14', 'A1', 'chasing'),
      said('2026-02-16', 'A1', 'made up'),
      tornYesterday('2026-02-17', '2026-02-15'),
    ];
    const group = rowan('2026-02-18', lines);
    expect(told(group)).toEqual(['2026-02-14 2026-02-16 made up']);
    expect(group.disputes[0]?.signs.map((one) => one.sign)).toEqual(['chasing', 'torn fin']);
  });
});

function tornYesterday(on: string, before: string): Line {
  const then = day(before);
  const when = { low: then, likely: then, high: then };
  return [
    on,
    tank('A1'),
    { kind: 'dispute sign', fish: { kind: 'implied' }, sign: 'torn fin', doer: null, sufferer: null, when },
  ];
}

describe('what opens none', () => {
  test.each(['colony', 'harem', 'group'] as const)('in a %s chasing and fasting alone open none', (kind) => {
    const setUp = [tankSet(SET, 'A1'), groupSet(SET, 'Rowan', 'A1', { kind, count: 12 })];
    const mild = [sign('2026-02-14', 'A1', 'chasing'), sign('2026-02-15', 'A1', 'not eating')];
    expect(told(rowan('2026-02-16', mild, setUp))).toEqual([]);
    expect(told(rowan('2026-02-16', [...mild, sign('2026-02-16', 'A1', 'torn fin')], setUp))).toEqual([
      '2026-02-16 open',
    ]);
  });

  test('a holding female that fasts or is chased opens none', () => {
    const holding: Line = [
      '2026-02-10',
      tank('A1'),
      { kind: 'stage seen', fish: { kind: 'implied' }, stage: 'holding', count: null, brood: null },
    ];
    const fasts = sign('2026-02-14', 'A1', 'not eating');
    expect(told(rowan('2026-02-15', [holding, fasts]))).toEqual([]);
    expect(told(rowan('2026-02-15', [fasts]))).toEqual(['2026-02-14 open']);
  });
});

describe('doer and sufferer', () => {
  const TRIO = [
    tankSet(SET, 'A1'),
    tankSet(SET, 'B2'),
    groupSet(SET, 'Rowan', 'A1', { kind: 'trio', males: [null], females: ['Fern', 'Lark'] }),
  ];
  const last = (group: SeenGroup): [unknown, unknown] => {
    const found = group.disputes.at(-1)?.signs.at(-1);
    return [found?.doer, found?.sufferer];
  };

  test('the fish before "chasing" does it', () => {
    expect(last(rowan('2026-02-14', [sign('2026-02-14', 'A1', 'chasing', undefined, 'Fern')], TRIO))).toEqual([
      { sex: 'female', name: 'Fern' },
      { sex: 'male', name: null },
    ]);
  });

  test.each(['pinned', 'hiding', 'gasping', 'torn fin', 'not eating', 'wounded', 'scales missing'] as const)(
    'the fish before "%s" suffers it',
    (what) => {
      expect(last(rowan('2026-02-14', [sign('2026-02-14', 'A1', what, undefined, 'Fern')], TRIO))).toEqual([
        { sex: 'male', name: null },
        { sex: 'female', name: 'Fern' },
      ]);
    },
  );

  test('an unnamed female of a trio stays one of two', () => {
    expect(last(rowan('2026-02-14', [sign('2026-02-14', 'A1', 'chasing', 'male on female')], TRIO))).toEqual([
      { sex: 'male', name: null },
      { sex: 'female', name: null },
    ]);
  });

  test('moving the female that suffers ends it, moving the other does not', () => {
    const hides = sign('2026-02-14', 'A1', 'hiding', undefined, 'Fern');
    expect(told(rowan('2026-02-16', [hides, movedTo('2026-02-15', 'A1', 'Lark', 'B2')], TRIO))).toEqual([
      '2026-02-14 open',
    ]);
    expect(told(rowan('2026-02-16', [hides, movedTo('2026-02-15', 'A1', 'Fern', 'B2')], TRIO))).toEqual([
      '2026-02-14 2026-02-15 separated',
    ]);
  });

  test('to move a female of a trio she must be named', () => {
    const room = roomOn('2026-02-16', [...TRIO, movedTo('2026-02-15', 'A1', 'female', 'B2')]);
    expect(room.problems.map(({ kind, weight }) => [kind, weight])).toEqual([['which-member', 'stops']]);
    expect(room.problems[0]?.says).toContain('Fern, Lark');
    expect(room.stock.groups.get('Rowan')?.parts.get('B2')).toBeUndefined();
  });
});
