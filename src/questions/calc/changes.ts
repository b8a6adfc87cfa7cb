/** Calculators of what builds up: water changes, and the nitrogen of the feed. */
import { ammoniaFromFeed, CACO3_PER_DEGREE, ION_PER_N, PER_GRAM_NITRIFIED } from '../../science/chemistry.ts';
import { afterChanges, afterDrip, changeNeeded, steadyState } from '../../science/dilution.ts';
import { plural } from '../../core/words.ts';
import { ammoniaThatFollows, HIGHEST_PH } from './water.ts';
import type { Calculator, CalcResult, Inputs } from './calc.ts';

const TAP_CAUTION =
  'treat tap water for chlorine and chloramine, match its temperature, and spread a large change over days; a litre weighs a kilogram';

export const change: Calculator = {
  name: 'change',
  says: 'what a water change does, or which one reaches a target',
  takes: '',
  options: [
    'from',
    'source',
    'fraction',
    'times',
    'target',
    'rise',
    'flow',
    'days',
    'produced',
    'volume',
    'tan',
    'temp',
    'ph',
  ],
  example: 'tankside calc change --from 60 --source 8 --target 25 --times 4',
  run(inputs) {
    const source = inputs.optional('source', 'concentration', 'mg/L', 0) ?? 0;
    const fraction = inputs.optional('fraction', 'share', '%', 0, 1);
    // The pH of the new water, else where bicarbonate in it may take the tank.
    const volume = inputs.optional('volume', 'volume', 'L', 0.001);
    const follows = ammoniaThatFollows(inputs, inputs.number('ph', 0, 14) ?? HIGHEST_PH.bicarbonate);
    const [results, steps] = resultsOf(inputs, { source, fraction, volume });
    return {
      results: [...results, ...(follows.result === null ? [] : [follows.result])],
      source: 'mass balance of a mixed tank (Steffensen 1989 for the drip)',
      steps,
      cautions: [TAP_CAUTION, follows.words],
    };
  },
};

interface Changed {
  readonly source: number;
  readonly fraction: number | null;
  readonly volume: number | null;
}

type Worked = readonly [CalcResult[], string[]];

/** What is asked: where it settles, a drip, the change that reaches a target, or what one change does. */
function resultsOf(inputs: Inputs, changed: Changed): Worked {
  if (inputs.has('rise')) return settled(inputs, changed);
  const from = inputs.needed('from', 'concentration', 'mg/L', 0);
  if (inputs.has('flow')) return drip(inputs, from, changed.source);
  return inputs.has('target') ? reaching(inputs, from, changed) : changedOnce(inputs, from, changed);
}

/** The share in litres, where those of the tank are told. */
function litres({ volume }: Changed, share: number, times: number): CalcResult[] {
  return volume === null ? [] : [{ name: times === 1 ? 'that is' : 'each of them', value: share * volume, unit: 'L' }];
}

function settled(inputs: Inputs, changed: Changed): Worked {
  const { source, fraction } = changed;
  const rise = inputs.needed('rise', 'concentration', 'mg/L', 0);
  if (fraction === null || fraction === 0) throw inputs.fault('--fraction is missing: how much is changed each time');
  const { peak, trough } = steadyState(source, rise, fraction);
  return [
    [
      { name: 'settles at, before a change', value: peak, unit: 'mg/L' },
      { name: 'settles at, after a change', value: trough, unit: 'mg/L' },
      ...litres(changed, fraction, 2),
    ],
    [`${source} + ${rise} ÷ ${fraction} = ${peak.toFixed(3)} before`, `less the rise: ${trough.toFixed(3)} after`],
  ];
}

function reaching(inputs: Inputs, from: number, changed: Changed): Worked {
  const { source } = changed;
  const times = inputs.whole('times') ?? 1;
  const target = inputs.needed('target', 'concentration', 'mg/L', 0);
  const needed = changeNeeded(from, target, source, times);
  if (needed === null)
    throw inputs.fault(
      `no change brings ${from} to ${target} with water of ${source}: the target must lie between them`,
    );
  return [
    [
      { name: times === 1 ? 'change' : `each of ${times} changes`, value: 100 * needed, unit: '%' },
      ...litres(changed, needed, times),
    ],
    [`1 − ((${target} − ${source}) ÷ (${from} − ${source}))^(1/${times}) = ${needed.toFixed(5)}`],
  ];
}

function changedOnce(inputs: Inputs, from: number, changed: Changed): Worked {
  const { source, fraction } = changed;
  const times = inputs.whole('times') ?? 1;
  if (fraction === null) throw inputs.fault('--fraction or --target is missing');
  const left = afterChanges(from, source, fraction, times);
  return [
    [
      { name: times === 1 ? 'after the change' : `after ${times} changes`, value: left, unit: 'mg/L' },
      ...litres(changed, fraction, times),
    ],
    [`${source} + (${from} − ${source}) × (1 − ${fraction})^${times} = ${left.toFixed(4)}`],
  ];
}

function drip(inputs: Inputs, from: number, source: number): Worked {
  const flow = inputs.needed('flow', 'flow', 'L/day', 0);
  const days = inputs.needed('days', 'time', 'days', 0);
  const volume = inputs.needed('volume', 'volume', 'L', 0.001);
  const produced = (inputs.optional('produced', 'feed', 'mg/day', 0) ?? 0) * 1000;
  const after = afterDrip(from, source, flow, days, volume, produced);
  const results: CalcResult[] = [{ name: `after ${plural(days, 'day')} of drip`, value: after, unit: 'mg/L' }];
  if (flow > 0) results.push({ name: 'settles at', value: source + produced / flow, unit: 'mg/L' });
  return [
    results,
    [
      `s + P/Q + (C0 − s − P/Q) e^(−Qt/V) with s ${source}, P ${produced} mg/day, Q ${flow} L/day, t ${days} days, V ${volume} L = ${after.toFixed(4)}`,
    ],
  ];
}

export const nitrogenFromFeed: Calculator = {
  name: 'nitrogen',
  says: 'ammonia that the feed becomes, and what the filter eats',
  takes: '',
  options: ['feed', 'protein', 'volume'],
  example: 'tankside calc nitrogen --feed 18g/day --protein 47%',
  run(inputs) {
    const feed = inputs.needed('feed', 'feed', 'g/day', 0);
    const protein = inputs.needed('protein', 'share', '%', 0, 1);
    const volume = inputs.optional('volume', 'volume', 'L', 0.001);
    const tan = ammoniaFromFeed(feed, protein);
    const results: CalcResult[] = [
      { name: 'total ammonia', value: tan, unit: 'g N/day' },
      { name: 'oxygen to nitrify it', value: tan * PER_GRAM_NITRIFIED.oxygen, unit: 'g/day' },
      { name: 'alkalinity eaten', value: tan * PER_GRAM_NITRIFIED.alkalinity, unit: 'g CaCO3/day' },
      { name: 'bicarbonate to make it good', value: tan * PER_GRAM_NITRIFIED.bicarbonate, unit: 'g NaHCO3/day' },
    ];
    if (volume !== null) {
      results.push({ name: 'nitrate rises by', value: (tan * 1000 * ION_PER_N.NO3) / volume, unit: 'mg/L NO3 a day' });
      results.push({
        name: 'KH falls by',
        value: (tan * 1000 * PER_GRAM_NITRIFIED.alkalinity) / volume / CACO3_PER_DEGREE,
        unit: 'dKH a day',
      });
    }
    return {
      results,
      source:
        'Timmons & Ebeling; Ebeling, Timmons & Bisogni 2006, Aquaculture 257:346; 7.14 g alkalinity a gram (US EPA 1975, growth left out)',
      steps: [`${feed} g/day × ${protein} × 0.092 = ${tan.toFixed(4)} g N/day`],
      cautions: [],
    };
  },
};
