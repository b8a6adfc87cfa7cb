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
    ['30% wc', 'water change 30 %', 'A1'],
    ['lights off, 30 % water change', 'lights off; water change 30 %', 'A1'],
    ['w/c 1/4', 'water change 25 %', 'A1'],
    ['wc ½', 'water change 50 %', 'A1'],
    ['changed 30% water', 'water change 30 %', 'A1'],
    ['wc 30% yday', 'water change 30 % yesterday', 'A1'],
    ['cleaned 2/6 layers', 'cleaned 2 of 6 layers', 'Long'],
    ['2 sponges rinsed', 'cleaned 2 layers', 'Long'],
    ['all 6 sponges out, rinsed', 'cleaned all of 6 layers', 'Long'],
    ['cleaned sf', 'rinsed sponge', 'C1'],
    ['12 to C1', 'moved 12 to C1', 'A1'],
    ['12 from A1 to C1', 'moved 12 to C1', 'A1'],
    ['20 to C1, 10 to C2', 'moved 20 to C1; moved 10 to C2', 'A1'],
    ['6 largest Rowan-1 to tank 12', 'moved 6 largest Rowan-1 to tank 12', 'A1'],
    ['f out to C1', 'moved the female to C1', 'A1'],
    ['pulled 20 fry to C1', 'moved 20 young to C1', 'A1'],
    ['put 20 fry in C1', 'moved 20 young to C1', 'A1'],
    ['brood split: 20 to C1, rest stay', 'moved 20 to C1, rest stay', 'A1'],
    ['about 25mm, biggest 30', 'size about 25 mm; largest 30 mm', 'A1'],
    ['Rowan-1 12 mm', 'Rowan-1 size 12 mm', 'A1'],
    ['fry 12 mm', 'young size 12 mm', 'A1'],
    ['fry counted 43', 'counted 43 young', 'A1'],
    ['eggs hatched', 'hatched', 'A1'],
    ['pair split', 'split up', 'A1'],
    ['beating her up', 'chasing, male on female', 'A1'],
    ["she's hiding", 'female hiding', 'A1'],
    ['all calm', 'calmer', 'A1'],
    ['bbs', 'fed brine shrimp', 'A1'],
    ['ich', 'sick "ich"', 'A1'],
    ['white spots, heat to 30', 'sick "white spots"; heat to 30 C', 'A1'],
    ['holiday till 2026-03-20', 'away until 2026-03-20', 'room'],
    ['back', 'away until 2026-03-10', 'room'],
    ['battery air on', 'air filter in', 'A1'],
    ['sold 6 Rowan-1 @ 2', 'sold 6 Rowan-1 at 2.00 each', 'A1'],
    ['sold 6 Rowan-1 for €24', 'sold 6 Rowan-1 for 24.00', 'A1'],
    ['sold 6 Rowan-1 for 24 eur', 'sold 6 Rowan-1 for 24.00', 'A1'],
    ['gave 4 Rowan-1 away', 'gave away 4 Rowan-1', 'A1'],
    ['ok', 'all well', 'A1'],
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
    expect(fact('sold', 'sold 2 pr Ash-1 for 18.00').count).toMatchObject({
      total: { low: 4 },
      males: { low: 2 },
      females: { low: 2 },
    });
    expect(fact('bonded', 'bonded', 'A1 pr').fish).toEqual(fact('bonded', 'bonded', 'A1 pair').fish);
    expect(fact('bought', 'bought 6 kribs at 4.00 each', 'Q1').species).toBe('krib');
  });
});

describe('words without a fact of their own', () => {
  test.each([
    ['eggs on the slate, ~80', 'on the slate'],
    ['rocks out to catch', 'to catch'],
    ['died 1 Rowan-1, bloated', 'bloated'],
    ['missing 3 Rowan-1, ?jumped', '?jumped'],
    ['bbs 2x all fry', '2x, all fry'],
    ['first bbs, orange bellies "at last"', 'first, orange bellies, at last'],
    ['fed 2x', '2x'],
  ])('%s: kept as the remark', (clauses, remark) => {
    const events = eventsOf(`2026-03-10 A1: ${clauses}`);
    expect(events.map((event) => event.remark)).toEqual([remark]);
  });
});

describe('spellings read since', () => {
  test.each(['ok', 'micros', 'bbs', 'ich', 'guarding', 'breeders', 'her', 'fanning'])(
    'take no name away: %s',
    (name) => {
      expect(eventsOf(`2026-03-01 pair ${name}: krib; in C2\n2026-03-10 ${name}: bonded\n`).at(-1)).toMatchObject({
        kind: 'bonded',
        subject: { group: name },
      });
      expect(eventsOf(`2026-03-01 pair ${name}: krib; in C2\n2026-03-10 C2: ${name} bonded\n`).at(-1)).toMatchObject({
        fish: { group: name },
      });
    },
  );

  test('a number or a fish before `to` moves only to a tank', () => {
    expect(problemIn('2026-03-10 A1: 12 to Rowan').kind).toBe('unknown-clause');
    expect(problemIn('2026-03-10 A1: moved 20 to C1, 12 mm').kind).not.toBe('missing-colon');
    expect(fact('moved', 'parents to C1').fish).toEqual({ kind: 'group', group: null, member: null });
  });

  test('fry without a number are all of them, but lost ones may be some', () => {
    expect(fact('moved', 'moved all fry to C1')).toMatchObject({
      count: 'all',
      fish: { kind: 'implied', young: true },
    });
    const eaten = problemIn('2026-03-10 A1: fry eaten');
    expect(eaten).toMatchObject({ kind: 'two-readings', write: '2026-03-10 A1: some fry eaten' });
    expect(eaten.says).toContain('`all fry eaten`');
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
    ['in 6', ['bought …', 'rocks in']],
    ['normal', ['all well', 'heat normal', 'everything undone']],
    ['guarding', ['all well "guarding"', 'eggs seen', 'free-swimming']],
    ['fanning', ['all well "fanning"', 'eggs seen', 'maybe spawned']],
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
