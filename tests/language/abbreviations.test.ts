/** Short words and jottings as keepers send them, and the words that mean two things. */
import { describe, expect, test } from 'vitest';
import { eventsOf, fact, factsOf, problemIn, problemsIn } from '../support/lines.ts';

describe('abbreviations', () => {
  test.each([
    ['wc 30%', 'water change 30 %', 'A1'],
    ["wc'd 30%", 'water change 30 %', 'A1'],
    ['fed bbs', 'fed brine shrimp', 'A1'],
    ['fed micros, bbs', 'fed microworm, brine shrimp', 'A1'],
    ['FS, 40ish', 'free-swimming, about 40', 'A1'],
    ['QT 28 d', 'quarantine 28 days', 'Q1'],
    ['counted 12 juvs', 'counted 12 young', 'A1'],
    ['m chasing f', 'male chasing female', 'A1'],
    ['biggest 30', 'largest 30 mm', 'A1'],
    ['holdback 8 Rowan-1', 'kept back 8 Rowan-1', 'A1'],
    ['res 4 Rowan-1 till 20th', 'reserved 4 Rowan-1 until 2026-03-20', 'A1'],
    ['amm 0.25 pH 8.2 26C', 'test TAN 0.25, pH 8.2, 26 C', 'A1'],
    ['sump sponges, 2 of 6', 'cleaned 2 of 6 layers', 'Long'],
    ['level 22 below lip', 'level 22 mm below the lip', 'Long'],
    ['return pump off 1h', 'pump off 1 h', 'Long'],
    ['valved off', 'off the loop', 'A1'],
    ['still at it, fin split, light off', 'chasing; torn fin; lights off', 'A1'],
    ['spawned?', 'maybe spawned', 'A1'],
    ['1 dead', 'died 1', 'A1'],
    ['3 Rowan-1 missing', 'missing 3 Rowan-1', 'A1'],
    ['pic 1123', 'photo "1123"', 'A1'],
    ['moved 3 Rowan-1 → C1 w/ sponge', 'moved 3 Rowan-1 to C1 with sponge', 'A1'],
  ])('%s', (short, long, heading) => {
    expect(factsOf(short, heading)).toEqual(factsOf(long, heading));
  });

  test('a breeder award is BAP to many', () => {
    const long = eventsOf('2026-03-10 room: award "club award" 6 young at 60 days from release, notice 14 days')[0];
    expect(long).toMatchObject({
      kind: 'award rule set',
      name: 'club award',
      young: 6,
      from: 'released',
      notice: { low: 14 },
    });
    const short = eventsOf('2026-03-10 room: BAP "club award": 6 fry at 60 days from release, notice 2 weeks')[0];
    expect({ ...short, place: null }).toEqual({ ...long, place: null });
  });

  test('a pair is one of each', () => {
    expect(fact('sold', 'sold 2 pr Ash-1 at 9.00').count).toMatchObject({
      total: { low: 4 },
      males: { low: 2 },
      females: { low: 2 },
    });
    expect(fact('bonded', 'bonded', 'A1 pr').fish).toEqual(fact('bonded', 'bonded', 'A1 pair').fish);
    expect(fact('bought', 'bought 6 kribs at 4.00 each', 'Q1').species).toBe('krib');
  });
});

describe('words that mean two things are refused, with what each would be', () => {
  test.each([
    ['lost 2', ['died', 'missing', 'sold']],
    ['off', ['lights off', 'pump off', 'heater off', 'off the loop']],
    ['clear', ['hold over', 'all well']],
    ['pulled 20', ['moved … to …', 'eggs gone']],
    ['half', ['water change 50 %', 'moved half … to …']],
    ['split', ['split up', 'moved … to …', 'torn fin']],
    ['sponge', ['rinsed sponge', 'air filter in', 'cleaned media']],
    ['in 6 krib', ['bought …', 'rocks in']],
    ['normal', ['all well', 'heat normal', 'everything undone']],
    ['back on', ['back on the loop', 'lights on', 'pump on', 'heater on']],
  ])('%s', (words, readings) => {
    const problem = problemIn(`2026-03-10 A1: ${words}`);
    expect(problem.kind).toBe('two-readings');
    for (const reading of readings) expect(problem.says).toContain(`\`${reading}\``);
  });

  test('others are told apart by what stands beside them', () => {
    // hold: a tank on hold, mouthbrooding, or fish kept back.
    expect(fact('hold begun', 'hold "velvet"').text).toBe('velvet');
    expect(fact('stage seen', 'holding').stage).toBe('holding');
    expect(problemIn('2026-03-10 A1: hold 8 biggest').says).toContain('kept back');
    // released: young, or a hold.
    expect(fact('stage seen', 'released about 20').stage).toBe('released');
    expect(factsOf('hold released')).toEqual(factsOf('hold over'));
    // split: a pair, a culture, a fin. half: of the fish, of the water.
    expect(factsOf('split to M2', 'M1')).toMatchObject([{ kind: 'culture split', to: 'M2' }]);
    expect(fact('dispute sign', 'fin split').sign).toBe('torn fin');
    expect(fact('moved', 'moved half Rowan-1 to C1').count).toBe('half');
    expect(fact('water changed', 'wc half').amount).toMatchObject({ unit: 'share', low: 0.5 });
    // sold 6, 30: each, or all of them?
    expect(problemIn('2026-03-10 A1: sold 6 Rowan-1, 30')).toMatchObject({ kind: 'two-readings', words: '30' });
  });
});

describe('several independent errors in one line', () => {
  test('are told once each, and mended together', () => {
    const found = problemsIn('2026-03-10 A1: chasign, lights off; moved 3 Rwoan-1 to C-1, spawnd');
    expect(found.map(({ words }) => words)).toEqual(['chasign', 'Rwoan-1', 'C-1', 'spawnd']);
    expect(new Set(found.map(({ write }) => write))).toEqual(
      new Set(['2026-03-10 A1: chasing, lights off; moved 3 Rowan-1 to C1, spawned']),
    );
  });
});
