/**
 * How much oxygen water can hold. Benson & Krause 1980 (Limnol. Oceanogr. 25:662) and 1984 (29:620), as
 * USGS Office of Water Quality Technical Memorandum 2011.03 adopted them. 0–40 °C, 0–40 ppt, 0.5–1.1 atm.
 * Only θ takes °C; every other term takes kelvin.
 */

export const STANDARD_PRESSURE_MMHG = 760;

/** Oxygen saturation, mg/L, at `celsius`, salinity in ppt and air pressure in mmHg. */
export function oxygenSaturation(celsius: number, salinity = 0, mmHg = STANDARD_PRESSURE_MMHG): number {
  const t = celsius + 273.15;
  const fresh = Math.exp(-139.34411 + 1.575701e5 / t - 6.642308e7 / t ** 2 + 1.2438e10 / t ** 3 - 8.621949e11 / t ** 4);
  const salt = Math.exp(-salinity * (0.017674 - 10.754 / t + 2140.7 / t ** 2));
  return fresh * salt * pressureFactor(celsius, mmHg / STANDARD_PRESSURE_MMHG);
}

function pressureFactor(celsius: number, atm: number): number {
  const t = celsius + 273.15;
  const vapour = Math.exp(11.8571 - 3840.7 / t - 216_961 / t ** 2);
  const theta = 0.000975 - 1.426e-5 * celsius + 6.436e-8 * celsius ** 2;
  return ((atm - vapour) * (1 - theta * atm)) / ((1 - vapour) * (1 - theta));
}

/** Salinity, ppt, from specific conductance, µS/cm at 25 °C: 5.572e-4 C + 2.02e-9 C² (same memorandum). */
export function salinityFromConductance(microsiemens: number): number {
  return 5.572e-4 * microsiemens + 2.02e-9 * microsiemens ** 2;
}
