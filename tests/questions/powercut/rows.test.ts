/** Each row of a power cut: whose fish count, what air it has, how it ranks, and the hours till it is too cold. */
import { describe, expect, it } from 'vitest';
import { exactly, type Interval } from '../../../src/core/interval.ts';
import { cutRows, powerCut, type CutRow } from '../../../src/questions/powercut.ts';
import { journalRoom } from '../../support/journal.ts';

const KRIB = '2026-01-04 species krib: Pelvicachromis taeniatus; cave spawner; water 23-27 C\n';
const ELM = 'krib; 10; size 50 mm';
/** One tank alone with a pair of 50 mm: by W = 0.02 L^3.03 2.624 g each. */
const LONE = `${KRIB}2026-01-04 tank B1: 100 x 40 x 40 cm; alone
2026-01-04 pair Elm: krib; male 50 mm; female 50 mm; in B1
`;
const PAIR = 5.248;
const CUT = `2026-01-06 08:00 B1: test 26 C
2026-01-06 08:00 room: power off
2026-01-06 12:00 B1: test 24 C
2026-01-06 13:00 room: power on
`;
const answer = (text: string, air: Interval = exactly(18), on = '2026-01-06') => powerCut(journalRoom(on, text), air);
const names = (text: string): string[] => answer(text).rows.map(({ name }) => name);
const row = (text: string, name = 'B1', air: Interval = exactly(18)): CutRow => {
  const found = answer(text, air).rows.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};
const steps = (text: string, air?: Interval): string => row(text, 'B1', air).because.steps.join('\n');

describe('whose fish count', () => {
  it('are those of the tank, over the litres that it may hold', () => {
    // 160 L less 10 to 20 %; the surface is 100 x 40 cm, and 136 L the middle.
    const { gramsPerLitre, surface } = row(LONE);
    expect(gramsPerLitre?.low).toBeCloseTo(PAIR / 144, 3);
    expect(gramsPerLitre?.likely).toBeCloseTo(PAIR / 136, 3);
    expect(gramsPerLitre?.high).toBeCloseTo(PAIR / 128, 3);
    expect(surface).toBeCloseTo(4000 / 136, 6);
    const live = row(`${LONE}2026-01-05 B1: live volume 100 L\n`);
    expect(live.litres).toMatchObject({ low: 100, high: 100 });
    expect(live.gramsPerLitre?.high).toBeCloseTo(PAIR / 100, 3);
  });
  it('are those of the trays that hang in it as well', () => {
    const tray = `${LONE}2026-01-04 tank C2: 54 L; alone\n2026-01-04 tray T1: in C2\n`;
    expect(answer(tray)).toMatchObject({ empty: ['C2'], rows: [{ name: 'B1' }] });
    const stocked = `${tray}2026-01-06 group Fir: ${ELM}; in T1\n`;
    expect(answer(stocked).empty).toEqual([]);
    expect(names(stocked)).toEqual(['C2', 'B1']);
    const both = `${LONE}2026-01-04 tray T1: in B1\n2026-01-05 pair Fir: krib; male 50 mm; female 50 mm; in T1\n`;
    expect(row(both).gramsPerLitre?.low).toBeCloseTo((2 * PAIR) / 144, 2);
    expect(names(both)).toEqual(['B1']);
  });
});

describe('the air of a tank', () => {
  const of = (words: string, more = ''): string => {
    const loop = '2026-01-03 loop Long: sump 240 L\n';
    return row(`${loop}${LONE.replace('40 cm; alone', `40 cm; ${words}`)}${more}`).air;
  };
  it('is its own line where its filter runs on air', () => {
    expect(['alone; sponge filter', 'on Long; filter air lift'].map((words) => of(words))).toEqual(
      Array(2).fill('own air line'),
    );
    expect(of('on Long', '2026-01-05 B1: air filter in\n')).toBe('own air line');
  });
  it('is only the loop, or none on record, where no line tells of one', () => {
    expect(['on Long', 'on Long; filter canister'].map((words) => of(words))).toEqual(Array(2).fill('only the loop'));
    expect(['alone', 'alone; filter canister'].map((words) => of(words))).toEqual(Array(2).fill('none on record'));
    const out = '2026-01-05 B1: air filter in\n2026-01-06 B1: air filter out\n';
    expect(of('alone', out)).toBe('none on record');
    expect(of('alone', '2026-01-05 B1: lights off\n')).toBe('none on record');
  });
});

describe('which goes first', () => {
  const two = (b: string, c: string, fish = 10): string => `${KRIB}2026-01-04 tank B1: 54 L; alone${b}
2026-01-04 tank C1: 54 L; alone${c}
2026-01-06 group Elm: ${ELM}; in B1
2026-01-06 group Fir: krib; ${String(fish)}; size 50 mm; in C1
`;
  it('is the one with more fish, the warmer one, or that with less surface', () => {
    expect(names(two('', '', 11))).toEqual(['C1', 'B1']);
    expect(names(two('', '', 9))).toEqual(['B1', 'C1']);
    const warm = (b: number, c: number): string[] =>
      names(`${two('', '')}2026-01-05 B1: test ${String(b)} C\n2026-01-05 C1: test ${String(c)} C\n`);
    expect([warm(24, 27), warm(27, 24)]).toEqual([
      ['C1', 'B1'],
      ['B1', 'C1'],
    ]);
    const sizes = (b: string, c: string): string[] =>
      names(two('', '').replace('B1: 54 L', `B1: ${b} cm`).replace('C1: 54 L', `C1: ${c} cm`));
    expect(sizes('30 x 30 x 60', '60 x 30 x 30')).toEqual(['B1', 'C1']);
    expect(sizes('60 x 30 x 30', '30 x 30 x 60')).toEqual(['C1', 'B1']);
  });
  it('is one without air, up to twice the fish of one with a line of its own', () => {
    expect(names(two('; sponge filter', '', 6))).toEqual(['C1', 'B1']);
    expect(names(two('; sponge filter', '', 4))).toEqual(['B1', 'C1']);
  });
  it('is one whose litres nobody wrote, told as such', () => {
    const unknown = two('', '').replace('B1: 54 L; alone', 'B1: alone');
    expect(names(unknown)).toEqual(['B1', 'C1']);
    expect(row(unknown)).toMatchObject({ gramsPerLitre: null, litres: null, surface: null });
    expect(steps(unknown)).toContain('g of fish, litres not known');
  });
});

describe('the hours till it is too cold', () => {
  // From 26 to 24 C in 4 hours in air of 18 C: k = ln(8 / 6) / 4 = 0.0719 an hour.
  it('go down to the least of all fish there', () => {
    const both = `${LONE}2026-01-04 species limia: Limia nigrofasciata; livebearer; water 21-28 C
2026-01-04 colony Fir: limia; 5; in B1\n`;
    expect(row(both + CUT).cools?.least).toBe(23);
    expect(row(both.replace('21-28', '23.5-28') + CUT).cools?.least).toBe(23.5);
    const tray = `${LONE}2026-01-04 species limia: Limia nigrofasciata; livebearer; water 23.5-28 C
2026-01-04 tray T1: in B1\n2026-01-04 colony Fir: limia; 5; in T1\n`;
    expect(row(tray + CUT).cools?.least).toBe(23.5);
  });
  it('go down to 22 C where no species says: ln(6 / 4) / k', () => {
    const cools = row(LONE.replace('; water 23-27 C', '') + CUT).cools;
    expect(cools?.least).toBe(22);
    expect(cools?.hours.low).toBeCloseTo(5.638, 2);
    expect(cools?.hours.high).toBeCloseTo(5.638, 2);
  });
  it('are a span where the air is one, and so is the warmth after a night', () => {
    // In 15 C: k = ln(11 / 9) / 4, 24 to 23 in ln(9 / 8) / k hours; in 20 C: k = ln(6 / 4) / 4, ln(4 / 3) / k hours.
    const air = { low: 15, likely: 18, high: 20 };
    const { cools } = row(LONE + CUT, 'B1', air);
    expect(cools?.hours.low).toBeCloseTo(2.348, 2);
    expect(cools?.hours.high).toBeCloseTo(2.838, 2);
    // 15 + 9 e^(−8k) = 21.0, 20 + 4 e^(−8k) = 21.8
    expect(steps(LONE + CUT, air)).toContain('from 24 C to 23 C in 2–3 hours; after 8 hours 21–21.8 C');
  });
  it('are none where it is as cold already, and unknown where the air may never cool it so far', () => {
    const cold = `${LONE}${CUT}2026-01-06 18:00 B1: test 22 C\n`;
    expect(row(cold).cools?.hours).toMatchObject({ low: 0, high: 0 });
    expect(row(LONE + CUT, 'B1', exactly(23)).cools).toBeNull();
    expect(row(LONE + CUT, 'B1', { low: 18, likely: 20, high: 23 }).cools).toBeNull();
  });
  it('are unknown where no line tells how warm it is', () => {
    const other = `2026-01-04 tank C1: 54 L; alone\n2026-01-06 group Fir: ${ELM}; in C1\n`;
    expect(row(LONE + CUT + other, 'C1').cools).toBeNull();
  });
  it('are not asked for once a cut tells them', () => {
    expect(answer(LONE + CUT).noCooling).toBeNull();
    expect(answer(LONE).noCooling).toContain('power off');
  });
});

describe('what a row rests on', () => {
  it('is the line of the tank, its last temperature and the cut', () => {
    const { celsius, lines, because } = row(LONE + CUT);
    expect(celsius).toBe(24);
    expect(lines.map(({ line }) => line)).toEqual([2, 6, 5]);
    expect(because.lines).toEqual(lines);
  });
  it('is told in numbers', () => {
    // A pair of 120 mm, 37.24 g each: 0.3 mg × 2^((24 − 25) / 10) × 0.548 g/L is 0.15.
    // Through the surface 0.02 m × 0.4 m² × 4 g/m³ × 1000 / 136 L.
    const told = steps(LONE.replaceAll('50 mm', '120 mm') + CUT);
    expect(told).toContain('74–75 g of fish in 128–144 L');
    expect(told).toContain('2 times that 10 C warmer: 0.15 mg/L an hour');
    expect(told).toContain('at a deficit of 4 mg/L: 0.24 mg/L an hour');
    expect(told).toContain('B1 went from 26 to 24 C in 4.0 hours of a cut');
  });
  it('stands behind `why` with its place', () => {
    const rows = cutRows(
      journalRoom('2026-01-06', `${LONE}2026-01-04 tank C1: 20 L; alone\n2026-01-06 group Fir: ${ELM}; in C1\n`),
    );
    expect(rows.map(({ id, title }) => [id, title])).toEqual([
      ['c1-power-cut', 'C1 power cut: place 1, none on record'],
      ['b1-power-cut', 'B1 power cut: place 2, none on record'],
    ]);
  });
});
