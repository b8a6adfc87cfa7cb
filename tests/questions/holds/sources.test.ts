/** What came into a sick tank before its first sign may have brought the trouble: which tanks it came from, and how it is told. */
import { describe, expect, test } from 'vitest';
import { holds } from '../../../src/questions/holds.ts';
import { journalOn } from '../../support/journal.ts';
import { ROOM } from '../../support/lines.ts';

const SETUP = ROOM.split('\n').length - 1;
const GROUPS = '2026-02-01 group Elm: krib; 6; in tank 12\n2026-02-01 group Oak: krib; 6; in C2\n';

/** `C2: Elm went from it to C1`, of every tank that a hold of C1 on 20 March reaches. */
function told(...lines: readonly string[]): string[] {
  const room = journalOn('2026-04-01', `${GROUPS}${lines.join('\n')}\n2026-03-20 C1: hold "velvet"\n`);
  return holds(room).holds.flatMap(({ tanks }) =>
    tanks.map(({ tank, route }) => [tank, ...route.map(({ says }) => says)].join(': ')),
  );
}

describe('a tank is a source', () => {
  const elmOn = (day: string): string => `2026-03-${day} tank 12: Elm moved 2 to C2`;

  test('of what went by way of another tank, in the order of time', () => {
    const on = '2026-03-12 C2: Oak moved 1 to C1';
    expect(told(elmOn('10'), on)).toEqual([
      '12: Oak went from it to C1: Elm went from it to C2',
      'C1',
      'C2: Oak went from it to C1',
    ]);
    expect(told(elmOn('12'), on)).toHaveLength(3);
    expect(told(elmOn('13'), on)).toEqual(['C1', 'C2: Oak went from it to C1']);
  });

  test('of what came along with the last of several comings', () => {
    const early = '2026-03-08 C2: Oak moved 1 to C1';
    const late = '2026-03-12 C2: Oak moved 1 to C1';
    const all = ['12: Oak went from it to C1: Elm went from it to C2', 'C1', 'C2: Oak went from it to C1'];
    expect(told(early, elmOn('10'), late)).toEqual(all);
    expect(told(late, elmOn('10'), early)).toEqual(all);
  });
});

describe('a thing that went to and fro', () => {
  const c2 = 'C2: its sponge went to C1';
  test('is followed back to where it came from, in the order of time, and once', () => {
    const sponge = (day: string, tank: string, way: string): string => `2026-03-${day} ${tank}: sponge ${way}`;
    expect(told(sponge('10', 'C1', 'from C2'), sponge('12', 'C1', 'to C2'))).toEqual(['C1', c2]);
    expect(told(sponge('10', 'C1', 'to C2'), sponge('12', 'C1', 'from C2'))).toEqual(['C1', c2]);
    const via = ['12: its sponge went to C1: its sponge went to C2', 'C1', c2];
    expect(told(sponge('08', 'C2', 'from tank 12'), sponge('10', 'C1', 'from C2'))).toEqual(via);
    expect(told(sponge('11', 'C2', 'from tank 12'), sponge('10', 'C1', 'from C2'))).toEqual(['C1', c2]);
  });
  test('counts from the first day of the look-back on', () => {
    expect(told('2026-03-06 C1: sponge from C2')).toEqual(['C1', c2]);
    expect(told('2026-03-05 C1: sponge from C2')).toEqual(['C1']);
  });
});

describe('a tank that is retired while a hold is followed', () => {
  const set = ['2026-02-02 tank X9: 40 L; on Long', '2026-02-03 group Fir: krib; 4; in X9'];
  const into = '2026-03-12 C1: Ash moved 2 to A1';
  const gone = (day: string): string[] => [`2026-03-${day} X9: moved all Fir to tank 12`, `2026-03-${day} X9: retired`];
  const onLoop = [
    'A1: Ash came from C1',
    ...['A2', 'B1'].map((tank) => `${tank}: Ash came from C1: shares the water of Long with A1`),
  ];

  test('passes on by its fish what its water got till then', () => {
    expect(told(...set, into, ...gone('13'))).toEqual([
      '12: Ash came from C1: shares the water of Long with A1: Fir came from X9',
      ...onLoop,
      'C1',
    ]);
    expect(told(...set, into, ...gone('12'))).toHaveLength(5);
  });
  test('passes on nothing that came into the water after it was gone', () => {
    expect(told(...set, ...gone('11'), into)).toEqual([...onLoop, 'C1']);
    const tray = '2026-02-02 tray X9: in A2\n2026-02-03 group Fir: krib; 4; in X9';
    expect(told(tray, ...gone('11'), into)).toEqual([...onLoop, 'C1']);
    expect(told(tray, into, ...gone('13'))[0]).toMatch(/^12: .*: Fir came from X9$/);
  });
});

test('each step rests on the lines that tell of it', () => {
  const lines = [
    '2026-03-08 C2: sponge from tank 12',
    '2026-03-10 C1: sponge from C2',
    '2026-03-11 A2: off the loop',
    '2026-03-12 C1: Ash moved 2 to A1',
    '2026-03-13 A2: back on the loop',
  ];
  const room = journalOn('2026-04-01', `${GROUPS}${lines.join('\n')}\n2026-03-20 C1: hold "velvet"\n`);
  const restsOn = (tank: string): number[][] =>
    holds(room)
      .holds.flatMap(({ tanks }) => tanks.filter((one) => one.tank === tank))
      .flatMap(({ route }) => route.map((step) => step.lines.map(({ line }) => line - SETUP)));
  expect(restsOn('12')).toEqual([[4], [3]]);
  expect(restsOn('A1')).toEqual([[6]]);
  // The loop's water: by the lines that put each of the two tanks on it.
  expect(restsOn('A2').slice(1)).toEqual([[expect.any(Number), 7]]);
  expect(restsOn('A2')[1]?.[0]).toBeLessThanOrEqual(0);
});
