import { describe, expect, test } from 'vitest';
import { eventsOf, fact, NO_FILES, only, problemIn, readLines } from '../support/lines.ts';
import type { Event } from '../../src/journal/event.ts';
import { readJournal } from '../../src/language/read.ts';

function count(written: string): unknown {
  const { heads } = fact('counted', `counted ${written}`);
  const { low, likely, high } = heads.total;
  return [low, likely, high, heads.as];
}

describe('numbers of fish', () => {
  test.each([
    ['18', [18, 18, 18, 'counted']],
    ['six', [6, 6, 6, 'counted']],
    ['about 40', [30, 40, 50, 'about']],
    ['~40', [30, 40, 50, 'about']],
    ['40ish', [30, 40, 50, 'about']],
    ['40 ish', [30, 40, 50, 'about']],
    // Whole fish inside a quarter either way.
    ['about 45', [34, 45, 56, 'about']],
    // A guess of a few never becomes a sure number.
    ['about 2', [1, 2, 3, 'about']],
    ['30-50', [30, 40, 50, 'guess']],
    ['30 to 50', [30, 40, 50, 'guess']],
    ['40+', [40, null, Infinity, 'guess']],
    ['over 40', [41, null, Infinity, 'guess']],
    ['under 10', [0, null, 9, 'guess']],
    ['loads', [50, null, Infinity, 'guess']],
    ['a few', [3, 4, 6, 'guess']],
    ['some', [1, null, Infinity, 'guess']],
    ['?', [0, null, Infinity, 'guess']],
  ])('%s', (written, expected) => {
    expect(count(written)).toEqual(expected);
  });

  test.each(['all', 'the rest', 'half'])('`%s` is of what is there that day', (written) => {
    expect(fact('moved', `moved ${written} Rowan-1 to C1`).count).toBe(written.replace('the ', ''));
  });

  test('told apart by sex and age', () => {
    const sure = (value: number): object => ({ low: value, likely: value, high: value });
    const expected = { total: sure(28), males: sure(4), females: sure(2), young: sure(22), as: 'counted' };
    for (const written of [
      '4 males, 2 females, 22 young',
      '4m 2f 22 juvs',
      '4♂, 2♀, 22 fry',
      '4 males 2 females 22 young',
    ]) {
      expect(fact('counted', `counted ${written}`).heads).toEqual(expected);
    }
    expect(fact('counted', 'counted 30, 4 males').heads).toMatchObject({
      total: sure(30),
      males: sure(4),
      females: null,
    });
  });

  test('fish come in whole ones', () => {
    expect(problemIn('2026-03-10 A1: counted 4.5').kind).toBe('no-whole-number');
    expect(problemIn('2026-03-10 A1: counted all').kind).toBe('no-number');
    // What nobody counted is not filled in: the example stands in the words.
    expect(problemIn('2026-03-10 A1: counted')).toMatchObject({
      says: '`counted` needs a number, as in `counted 43`',
      write: '2026-03-10 A1: note counted',
    });
  });
});

function tankIn(text: string): Extract<Event, { kind: 'tank declared' }> {
  const found = readJournal('a', text, NO_FILES).events.find((event) => event.kind === 'tank declared');
  if (found?.kind !== 'tank declared') throw new Error('no tank');
  return found;
}

describe('units', () => {
  test('what the room’s units mean for a bare number', () => {
    const us = tankIn('2026-01-01 room: units US\n2026-02-01 tank E1: 36 x 18 x 16; 40; heated 78\n');
    expect(us.size?.map(({ low }) => low)).toEqual([914.4, 457.2, 406.4]);
    expect(us.heated?.low).toBeCloseTo(25.5556, 4);
    expect(us.nominal?.low).toBeCloseTo(40 * 3.785411784, 6);
    const imperial = tankIn('2026-01-01 room: units imperial\n2026-02-01 tank E1: 20 gal');
    expect(imperial.nominal?.low).toBeCloseTo(20 * 4.54609, 6);
  });

  test.each([
    ['tank E1: 20 gal', 'US gal', 'imp gal'],
    ['tank E1: 54', 'L', 'gal'],
    ['loop Short: return 900', 'L/h', 'gph'],
  ])('where two readings are plausible and none is set, the line says so: %s', (line, one, other) => {
    const { problems } = readJournal('a', `2026-02-01 ${line}`, NO_FILES);
    expect(problems).toMatchObject([{ kind: 'which-unit' }]);
    expect(problems[0]?.says).toContain(`${one} or ${other}`);
    expect(problems[0]?.write).toContain(one);
  });

  test('a water change of a bare number may be % or L', () => {
    expect(problemIn('2026-03-10 C1: water change 40')).toMatchObject({
      kind: 'which-unit',
      write: '2026-03-10 C1: water change 40 %',
    });
  });

  test('a convention set later holds for the lines before it too', () => {
    const reading = readLines('2025-12-01 note x\n');
    expect(reading.problems).toEqual([]);
    const early = readJournal('a', '2025-12-01 tank E1: 54\n2026-01-01 room: units metric\n', () => ({
      ok: false,
      says: '',
    }));
    expect(early.problems).toEqual([]);
  });

  test('mixed and wrong units', () => {
    expect(problemIn('2026-03-10 tank E1: 36 in x 40 cm x 40 cm').kind).toBe('mixed-units');
    expect(problemIn('2026-03-10 A1: size 22 mm to 3 cm').kind).toBe('mixed-units');
    expect(problemIn('2026-03-10 A1: size 25 L')).toMatchObject({
      kind: 'wrong-unit',
      words: 'L',
      write: '2026-03-10 A1: size 25 mm',
    });
    expect(fact('sized', 'size 22 mm to 26 mm').sizes.values).toMatchObject([{ low: 22, high: 26 }]);
  });

  test.each([
    ['KH 107 mg/L CaCO3', 'kh', 5.995],
    ['KH 107 ppm', 'kh', 5.995],
    ['KH 2 meq/L', 'kh', 5.6077],
    ['KH 6 dKH', 'kh', 6],
    ['GH 8', 'gh', 8],
    ['420 µS/cm', 'conductivity', 420],
    ['0.42 mS/cm', 'conductivity', 420],
    ['salinity 2 ppt', 'salinity', 2],
    ['78 F', 'temperature', 25.5556],
    ['25.5 °C', 'temperature', 25.5],
    ['temp 26', 'temperature', 26],
    ['O2 7.5 mg/L', 'oxygen', 7.5],
    ['nitrite zero', 'no2', 0],
    ['amm 0.25', 'tan', 0.25],
  ] as const)('test %s', (written, key, expected) => {
    expect(fact('tested', `test ${written}`).reading[key]?.low).toBeCloseTo(expected, 3);
  });

  test('hardness of which nobody could say the unit is asked about', () => {
    expect(problemIn('2026-03-10 A1: test KH 100')).toMatchObject({ kind: 'which-unit', words: '100' });
    expect(problemIn('2026-03-10 A1: test pH 15').kind).toBe('out-of-range');
  });

  test('a temperature is refused where no fish could live in it, with the unit that was meant', () => {
    expect(problemIn('2026-03-10 A1: test pH 7, 80 C')).toMatchObject({
      kind: 'out-of-range',
      words: '80 C',
      write: '2026-03-10 A1: test pH 7, 80 F',
    });
    expect(problemIn('2026-03-10 A1: heater stuck 120 C').write).not.toMatch(/120 F/);
    expect(problemIn('2026-03-10 A1: heat to 26 F')).toMatchObject({ write: '2026-03-10 A1: heat to 26 C' });
    expect(only('heater stuck', '2026-03-10 A1: heater stuck 41 C\n')).toMatchObject({ at: { likely: 41 } });
  });

  test('nitrogen is kept as N, as the room or the line says', () => {
    expect(fact('tested', 'test NO3 20').reading.no3?.low).toBe(20);
    expect(fact('tested', 'test NO3 20 as ion').reading.no3?.low).toBeCloseTo(4.5181, 4);
    const lines = '2026-03-01 room: nitrogen as ion\n2026-03-10 A1: test NO3 20, TAN 1.215892\n';
    const { no3, tan } = only('tested', lines).reading;
    expect(no3?.low).toBeCloseTo(4.5181, 4);
    expect(tan?.low).toBeCloseTo(1, 6);
  });

  test('measures of one’s own', () => {
    const lines =
      '2026-03-01 room: bucket 12 L; spoon 5 g\n2026-03-10 C1: water change 2 buckets; dosed 3 spoons "salt"\n';
    expect(only('water changed', lines).amount).toMatchObject({ unit: 'L', low: 24 });
    expect(only('dosed', lines).dose).toEqual({ unit: 'own', count: 3, name: 'spoon' });
    expect(problemIn('2026-03-10 C1: water change 2 buckets').kind).toBe('unknown-measure');
  });

  test('guesses of measures keep their width', () => {
    expect(fact('water changed', 'water change about 40 L').amount).toMatchObject({ low: 30, likely: 40, high: 50 });
    expect(fact('tested', 'test about 25 C').reading.temperature).toMatchObject({ low: 24, likely: 25, high: 26 });
    expect(fact('topped up', 'topped up').litres).toMatchObject({ low: 0, likely: null, high: Infinity });
    expect(fact('water changed', 'water change').amount).toMatchObject({
      unit: 'share',
      low: 0,
      likely: null,
      high: 1,
    });
  });

  test('lengths of time', () => {
    expect(fact('treated', 'treat "salt" 2 g/L, every 12 h, 3 doses, wait 2 weeks')).toMatchObject({
      every: { unit: 'days', low: 0.5 },
      wait: { unit: 'days', low: 14 },
      doses: 3,
      dose: { unit: 'g/L', low: 2 },
    });
    expect(fact('chore set', 'water change 30 % every 2 months').monthly).toBe(2);
    expect(fact('chore set', 'water change 30 % every other day').every?.low).toBe(2);
    expect(eventsOf('2026-03-10 C1: water change 30 % weekly')[0]).toMatchObject({ every: { low: 7 } });
  });
});
