import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { oxygenSaturation, salinityFromConductance } from '../../src/science/oxygen.ts';

describe('oxygen saturation', () => {
  // Sources: Benson & Krause 1980/1984 as in USGS OWQ TM 2011.03; 0–40 °C by 8 as an exercise with the data of
  // Chapra, Applied Numerical Methods, prints them; ISO 5814:1990 at 20, 25, 30 °C; wql::oxySol and GSW for the rest.
  test.each([
    [0, 0, 760, 14.621],
    [8, 0, 760, 11.843],
    [16, 0, 760, 9.87],
    [20, 0, 760, 9.0924],
    [24, 0, 760, 8.418],
    [25, 0, 760, 8.2635],
    [30, 0, 760, 7.5588],
    [32, 0, 760, 7.305],
    [40, 0, 760, 6.413],
    [20, 0, 700, 8.3581],
    [25, 0, 700, 7.5904],
    [25, 5, 760, 8.0318],
    [30, 2, 740, 7.271],
    [25, 35, 760, 6.7721],
  ])('at %s °C, %s ppt and %s mmHg is %s mg/L', (celsius, salinity, mmHg, expected) => {
    expect(Math.abs(oxygenSaturation(celsius, salinity, mmHg) - expected)).toBeLessThan(0.0015);
  });

  test('falls as water warms and as it gets saltier', () => {
    const celsius = fc.double({ min: 0, max: 39, noNaN: true });
    const salinity = fc.double({ min: 0, max: 39, noNaN: true });
    fc.assert(
      fc.property(celsius, salinity, (t, s) => {
        expect(oxygenSaturation(t + 1, s)).toBeLessThan(oxygenSaturation(t, s));
        expect(oxygenSaturation(t, s + 1)).toBeLessThan(oxygenSaturation(t, s));
      }),
    );
  });
});

test('salinity from conductance starts at nothing', () => {
  expect(salinityFromConductance(0)).toBe(0);
  // Worked from the memorandum's polynomial.
  // 5.572e-4 C + 2.02e-9 C²: 500, 1000, 5000, 10 000 and 53 000 µS/cm (sea water: about 35 ppt).
  [0.279105, 0.55922, 2.8365, 5.774, 35.20578].forEach((ppt, i) =>
    expect(salinityFromConductance([500, 1000, 5000, 10_000, 53_000][i] ?? 0)).toBeCloseTo(ppt, 5),
  );
});
