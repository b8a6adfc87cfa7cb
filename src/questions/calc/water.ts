/** Calculators of water: ammonia, oxygen, dosing. */
import { measure } from '../../core/quantity.ts';
import { AMMONIA_MARKS, pKaAtSalinity, toxicAmmonia, unionisedShare } from '../../science/ammonia.ts';
import {
  CACO3_PER_DEGREE,
  COMPOUNDS,
  DEGREES_A_DAY,
  gramsToRaise,
  ION_PER_N,
  type CompoundName,
} from '../../science/chemistry.ts';
import { oxygenSaturation, salinityFromConductance, STANDARD_PRESSURE_MMHG } from '../../science/oxygen.ts';
import type { Calculator, CalcResult, Inputs } from './calc.ts';

const CHEMICAL_CAUTION = 'follow the label, gloves and fresh air; dissolve it in the new water, not over the fish';

export const ammonia: Calculator = {
  name: 'ammonia',
  says: 'toxic ammonia out of total ammonia',
  takes: '',
  options: ['tan', 'ph', 'temp', 'salinity'],
  example: 'tankside calc ammonia --tan 0.5mg/L --ph 8.2 --temp 79F',
  run(inputs) {
    const tan = inputs.has('tan') ? nitrogen(inputs, 'tan') : null;
    if (tan === null) throw inputs.fault('--tan is missing');
    const ph = inputs.number('ph', 0, 14);
    const temp = inputs.optional('temp', 'temperature', 'C', 0, 50);
    const salinity = inputs.optional('salinity', 'salinity', 'ppt', 0, 40) ?? 0;
    const toxic = toxicAmmonia(
      measure('mg/L', tan),
      ph === null ? null : measure('pH', ph),
      temp === null ? null : measure('C', temp),
      salinity,
    );
    const known = ph !== null && temp !== null;
    const spread = known ? {} : { low: toxic.low, high: toxic.high };
    const asNH3 = (value: number): number => value * ION_PER_N.NH3;
    const results: CalcResult[] = [
      { name: 'toxic ammonia', value: known ? toxic.low : null, unit: 'mg/L N', ...spread },
      {
        name: 'the same as NH3',
        value: known ? asNH3(toxic.low) : null,
        unit: 'mg/L NH3',
        ...(known ? {} : { low: asNH3(toxic.low), high: asNH3(toxic.high) }),
      },
    ];
    if (known) {
      results.push({ name: 'toxic share', value: 100 * unionisedShare(ph, temp, salinity), unit: '%' });
      results.push({ name: 'pKa', value: pKaAtSalinity(temp, salinity), unit: '' });
    }
    return {
      results,
      source:
        'Emerson et al. 1975, J. Fish. Res. Board Can. 32:2379' +
        (salinity > 0 ? '; salinity after Whitfield 1974 as the Florida DEP procedure has it' : ''),
      steps: known
        ? [
            `pKa = 0.09018 + 2729.92 / (273.15 + ${Number(temp.toFixed(3))})${salinity > 0 ? ' + salt' : ''} = ${pKaAtSalinity(temp, salinity).toFixed(4)}`,
            `share = 1 / (1 + 10^(pKa − ${ph})) = ${unionisedShare(ph, temp, salinity).toFixed(5)}`,
            `${Number(tan.toPrecision(6))} mg/L N × share = ${toxic.low.toFixed(5)} mg/L N`,
          ]
        : [
            `${missing(ph, temp)} not given: ${[...(ph === null ? ['pH 6 to 8.5'] : []), ...(temp === null ? ['22 to 30 C'] : [])].join(' and ')} taken`,
          ],
      cautions: [verdict(toxic.high)],
    };
  },
};

function missing(ph: number | null, temp: number | null): string {
  return ph === null ? (temp === null ? 'pH and temperature' : 'pH') : 'temperature';
}

function verdict(high: number): string {
  const { watch, harms } = AMMONIA_MARKS;
  if (high >= harms) return `${harms} mg/L N harms fish: change water, feed less, look for the cause`;
  if (high >= watch) return `from ${watch} mg/L N it may harm: test again tomorrow`;
  return `below ${watch} mg/L N, from which it may harm`;
}

function nitrogen(inputs: Inputs, name: string): number {
  const text = inputs.text(name) ?? '';
  // A bare mg/L of total ammonia is taken as N: that is how the tables count it.
  const bare = /^[\s\d.,+-]*(mg\/l|ppm)?\s*$/i.test(text) ? text.replace(/(mg\/l|ppm)\s*$/i, '') : text;
  const value = inputs.quantity(bare, 'nitrogen', 'mg/L N', `--${name}`);
  if (value < 0) throw inputs.fault(`--${name} ${text} is less than none`);
  return value;
}

export const oxygen: Calculator = {
  name: 'oxygen',
  says: 'how much oxygen the water can hold',
  takes: '',
  options: ['temp', 'salinity', 'conductivity', 'pressure', 'measured'],
  example: 'tankside calc oxygen --temp 26C --pressure 720mmHg --measured 6.5mg/L',
  run(inputs) {
    const temp = inputs.needed('temp', 'temperature', 'C', 0, 40);
    const conductivity = inputs.optional('conductivity', 'conductivity', 'uS/cm', 0, 60_000);
    const salinity =
      inputs.optional('salinity', 'salinity', 'ppt', 0, 40) ??
      (conductivity === null ? 0 : salinityFromConductance(conductivity));
    const pressure = inputs.optional('pressure', 'pressure', 'mmHg', 380, 836) ?? STANDARD_PRESSURE_MMHG;
    const measured = inputs.optional('measured', 'concentration', 'mg/L', 0, 40);
    const full = oxygenSaturation(temp, salinity, pressure);
    const results: CalcResult[] = [{ name: 'oxygen at saturation', value: full, unit: 'mg/L' }];
    if (measured !== null) results.push({ name: 'saturation', value: (100 * measured) / full, unit: '%' });
    return {
      results,
      source: 'Benson & Krause 1980 and 1984, as in USGS OWQ Technical Memorandum 2011.03',
      steps: [
        ...(conductivity === null ? [] : [`${conductivity} µS/cm at 25 C: ${salinity.toFixed(3)} ppt`]),
        `at ${temp} C, ${Number(salinity.toFixed(3))} ppt and ${pressure} mmHg: ${full.toFixed(4)} mg/L`,
      ],
      cautions: [],
    };
  },
};

const ALIASES: Readonly<Record<string, CompoundName>> = {
  bicarb: 'NaHCO3',
  'baking soda': 'NaHCO3',
  'sodium bicarbonate': 'NaHCO3',
  'soda ash': 'Na2CO3',
  'washing soda': 'Na2CO3',
  'epsom salt': 'MgSO4.7H2O',
  gypsum: 'CaSO4.2H2O',
};

function compound(inputs: Inputs, text: string): CompoundName {
  const wanted = text.replace(/[·*]/g, '.').toLowerCase();
  const isName = (name: string): name is CompoundName => Object.hasOwn(COMPOUNDS, name);
  const found = Object.keys(COMPOUNDS)
    .filter(isName)
    .find((name) => name.toLowerCase() === wanted);
  const alias = Object.hasOwn(ALIASES, wanted) ? ALIASES[wanted] : undefined;
  const name = found ?? alias;
  if (name === undefined) throw inputs.fault(`«${text}» is none of ${Object.keys(COMPOUNDS).join(', ')}`);
  return name;
}

export const dose: Calculator = {
  name: 'dose',
  says: 'what to weigh out to raise KH or GH',
  takes: 'COMPOUND',
  options: ['raise', 'volume', 'purity', 'tan', 'temp'],
  example: 'tankside calc dose NaHCO3 --raise 3dKH --volume 240L',
  run(inputs) {
    const name = compound(inputs, inputs.word(0, 'what to dose'));
    const raise = inputs.text('raise') ?? '';
    const degrees = inputs.needed('raise', 'hardness', 'dH', 0, 2000) / CACO3_PER_DEGREE;
    const litres = inputs.needed('volume', 'volume', 'L', 0.001, 1e6);
    const purity = inputs.optional('purity', 'share', '%', 0.01, 1) ?? 1;
    const what = /kh|alk|hco3/i.test(raise)
      ? 'kh'
      : /gh|ca$|mg$/i.test(raise)
        ? 'gh'
        : COMPOUNDS[name].kh > 0
          ? 'kh'
          : 'gh';
    const grams = gramsToRaise(name, what, degrees, litres, purity);
    if (grams === null) throw inputs.fault(`${name} does not raise ${what.toUpperCase()}`);
    const results: CalcResult[] = [
      { name: `${name} in all`, value: grams, unit: 'g' },
      {
        name: 'days to spread it over',
        value: wholeDays(degrees / DEGREES_A_DAY.high),
        unit: 'days',
        low: wholeDays(degrees / DEGREES_A_DAY.high),
        high: wholeDays(degrees / DEGREES_A_DAY.low),
      },
    ];
    const alkaline = COMPOUNDS[name].kh > 0;
    const highest = name === 'Na2CO3' ? HIGHEST_PH.carbonate : HIGHEST_PH.bicarbonate;
    const follows = alkaline ? ammoniaThatFollows(inputs, highest) : null;
    if (follows?.result) results.push(follows.result);
    return {
      results,
      source:
        'stoichiometry with IUPAC/CIAAW atomic weights 2021; at most 1 to 2 degrees a day (common practice, no source)',
      steps: [
        `${degrees.toFixed(3)} degrees × 0.35665 meq/L × ${litres} L × ${COMPOUNDS[name].mass.toFixed(3)} g/mol ÷ (1000 × ${COMPOUNDS[name][what]})${purity < 1 ? ` ÷ ${purity}` : ''} = ${grams.toFixed(3)} g`,
        'litres are those of the water, not of the empty tank',
        ...(DRIED.get(name) ?? []),
      ],
      cautions: [...(follows ? [follows.words] : []), CHEMICAL_CAUTION],
    };
  },
};

/** Days begun; four degrees, out of other units, are not four and a day more. */
function wholeDays(days: number): number {
  return Math.ceil(days - 1e-6);
}

/** Salts whose bare formula means them without their water, which is seldom how they are sold (common practice, no source). */
const DRIED: ReadonlyMap<CompoundName, readonly string[]> = new Map([
  ['MgSO4', ['without water of crystals; of Epsom salt, MgSO4.7H2O, it takes about twice as much']],
  ['CaCl2', ['without water of crystals; of flakes, CaCl2.2H2O, it takes about a third more']],
]);

/** pH that a full dose can lead to: bicarbonate holds near 8.3, carbonate can go to 10 (common practice, no source). */
export const HIGHEST_PH = { carbonate: 10, bicarbonate: 8.3 };

/** Toxic ammonia at a pH that a dose or new water may bring, by the `tan` and `temp` that were given. */
export function ammoniaThatFollows(inputs: Inputs, ph: number): { words: string; result: CalcResult | null } {
  if (!inputs.has('tan'))
    return {
      words: 'this can raise pH, and with it toxic ammonia. TAN unknown: test first, then give --tan and --temp',
      result: null,
    };
  const tan = nitrogen(inputs, 'tan');
  const temp = inputs.optional('temp', 'temperature', 'C', 0, 50);
  const toxic = toxicAmmonia(measure('mg/L', tan), measure('pH', ph), temp === null ? null : measure('C', temp));
  const result: CalcResult = {
    name: `toxic ammonia if pH goes to ${ph}`,
    value: temp === null ? null : toxic.high,
    unit: 'mg/L N',
    low: toxic.low,
    high: toxic.high,
  };
  return {
    words: `this can raise pH to about ${ph}: toxic ammonia up to ${toxic.high.toFixed(3)} mg/L N; ${verdict(toxic.high)}`,
    result,
  };
}
