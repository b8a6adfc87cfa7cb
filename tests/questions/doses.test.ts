import { describe, expect, it } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { measure } from '../../src/core/quantity.ts';
import { addedBy } from '../../src/questions/doses.ts';
import { water } from '../../src/questions/water.ts';
import { plainLook } from '../../src/reports/look.ts';
import { waterText } from '../../src/reports/water.ts';
import { journalOn } from '../support/journal.ts';

const litres = (held: number) => ({ low: held, likely: held, high: held });

describe('what a logged dose added', () => {
  // Worked from IUPAC/CIAAW atomic weights: 2.9961 g NaHCO3, 4.3951 g MgSO4·7H2O for a degree in 100 L.
  it('is degrees of KH or GH by stoichiometry', () => {
    expect(addedBy('baking soda', measure('g', 2.9961), litres(100))?.degrees.low).toBeCloseTo(1, 3);
    expect(addedBy('Epsom salt', measure('g', 4.3951), litres(100))).toMatchObject({ of: 'gh' });
    expect(addedBy('Epsom salt', measure('g', 4.3951), litres(100))?.degrees.high).toBeCloseTo(1, 3);
  });
  it('is not told of what cannot be reckoned', () => {
    expect(addedBy('salt', measure('g', 10), litres(100))).toBeNull();
    expect(addedBy('baking soda', measure('mL', 10), litres(100))).toBeNull();
    expect(addedBy('baking soda', measure('g', 10), null)).toBeNull();
  });
  it('stands with the dose in the water of its tank', () => {
    const room = journalOn('2026-02-10', '2026-02-09 C1: dosed 12 g "sodium bicarbonate"\n');
    const [dose] = water(room, { place: 'C1', target: null })?.[0]?.doses ?? [];
    expect(dose?.added?.of).toBe('kh');
    expect(dose?.added?.degrees.high ?? 0).toBeGreaterThan(dose?.added?.degrees.low ?? 1);
  });
});

describe('what was given to a tank off its loop', () => {
  // A1 holds 150 L of 500: half changed while it stood alone, a fifth of all since, 0.5 × 0.3 × 0.8 = 0.12.
  const lines = `2026-01-05 loop Wide: sump 200 L
2026-01-05 tank W1: 170 L; on Wide
2026-01-05 tank W2: 170 L; on Wide
2026-01-05 W1 W2: live volume 150 L
2026-02-01 W1: off the loop
2026-02-01 W1: treat "salt" 2 g/L, wait 14 days
2026-02-10 W1: water change 50 %
2026-02-12 W1: back on the loop
2026-02-15 Wide: water change 100 L
`;
  const doses = (on: string, text = lines, place = 'Wide') =>
    water(journalOn(on, text), { place, target: null })?.[0]?.doses.map(({ where, left, backOn }) => {
      return [where, left === null ? null : Math.round(left * 1000), backOn === null ? null : isoDay(backOn)];
    });

  it('is the loop’s once it is back, thinned by the whole of its water', () => {
    expect(doses('2026-02-11')).toEqual([]);
    expect(doses('2026-02-11', lines, 'W1')).toEqual([['W1', 500, null]]);
    expect(doses('2026-02-12')).toEqual([['W1', 150, '2026-02-12']]);
    expect(doses('2026-02-16')).toEqual([['W1', 120, '2026-02-12']]);
    const room = journalOn('2026-02-16', lines);
    const text = waterText(water(room, { place: 'Wide', target: null }) ?? [], plainLook(room.on)).replace(/\s+/g, ' ');
    expect(text).toContain(
      "1 Feb treated 2 g/L salt in W1 off the loop, back on it 12 Feb; at most 12 % as strong in all the loop's water",
    );
  });
  it('is told of salt till little of it is left, of all else for four weeks', () => {
    expect(doses('2026-03-20')).toEqual([['W1', 120, '2026-02-12']]);
    expect(doses('2026-03-20', `${lines}2026-03-01 Wide: water change 100 L\n`)).toEqual([]);
    const other = lines.replace('"salt"', '"copper"');
    expect(doses('2026-02-28', other)).toEqual([['W1', 120, '2026-02-12']]);
    expect(doses('2026-03-01', other)).toEqual([]);
  });
  it('came back by itself where the line said for how long', () => {
    const till = lines.replace('off the loop', 'off the loop until 2026-02-12').replace(/.*back on the loop\n/, '');
    // Through the whole of that day, so on it the day after.
    expect(doses('2026-02-16', till)).toEqual([['W1', 120, '2026-02-13']]);
  });
  it('is told without a share where litres are not known', () => {
    const bare = lines
      .replace(/.*live volume.*\n/, '')
      .replaceAll(': 170 L; on', ': on')
      .replace('50 %', '20 L');
    expect(doses('2026-02-16', bare)).toEqual([['W1', null, '2026-02-12']]);
  });
});
