import { describe, expect, it } from 'vitest';
import { measure } from '../../src/core/quantity.ts';
import { addedBy } from '../../src/questions/doses.ts';
import { water } from '../../src/questions/water.ts';
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
