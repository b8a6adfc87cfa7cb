/** Calculators of things: units, volumes, weights, bags, stage clocks. */
import { GUILDS, type Guild } from '../../core/guild.ts';
import { measure } from '../../core/quantity.ts';
import { IMPERIAL_GALLON, US_GALLON } from '../../core/units.ts';
import { bagFor, LOAD } from '../../science/transport.ts';
import { fromBase, scaleOf, toBase, unitsOf, type Scale } from '../../science/scales.ts';
import {
  boxInsideLitres,
  boxLitres,
  cylinderLitres,
  hexagonLitres,
  lyingCylinderLitres,
} from '../../science/shapes.ts';
import {
  degreeDays,
  q10Factor,
  Q10,
  REFERENCE_TEMPERATURE,
  stageDays,
  USUAL_TEMPERATURE,
  type ClockStage,
} from '../../science/stages.ts';
import { lengthFor, USUAL_WEIGHT, weightOf } from '../../science/weight.ts';
import { numberIn, type CalcAnswer, type Calculator, type CalcResult, type Inputs } from './calc.ts';

export const convert: Calculator = {
  name: 'convert',
  says: 'any unit to another of its kind',
  takes: 'VALUE UNIT',
  options: [],
  example: 'tankside calc convert 7dGH "mg/L CaCO3"',
  run(inputs) {
    const text = inputs.rest(0, 'the value');
    const match = /^\s*([-+]?[\d.,]+(?:e[-+]?\d+)?)(?![\d.,])\s*(.*?)\s*$/i.exec(text);
    const value = match ? numberIn(match[1] ?? '') : null;
    if (match === null || value === null) throw inputs.fault(`«${text}» is no number with a unit`);
    const { from, to, toWords } = unitsIn(inputs, match[2] ?? '');
    if (from.kind !== to.kind) {
      throw inputs.fault(
        `${from.unit} is a unit of ${from.kind}, ${to.unit} one of ${to.kind}; of ${from.kind} there are ${unitsOf(from.kind).join(', ')}`,
      );
    }
    const result = fromBase(toBase(value, from), to);
    if (from.kind === 'temperature' && toBase(value, from) < -273.15)
      throw inputs.fault('nothing is colder than -273.15 C');
    return {
      results: [{ name: `${value} ${from.unit}`, value: result, unit: toWords }],
      source:
        from.kind === 'hardness' || from.kind === 'nitrogen'
          ? 'IUPAC/CIAAW atomic weights 2021'
          : 'NIST SP 811, App. B',
      steps: [`${value} ${from.unit} = ${result} ${to.unit}`],
      cautions: [],
    };
  },
};

/** Two units in a row, parted where both sides are units, of one kind if they can be. */
function unitsIn(inputs: Inputs, text: string): { from: Scale; to: Scale; toWords: string } {
  const words = text.split(/\s+/).filter((word) => word !== '');
  const splits = words.slice(1).flatMap((_, index) => {
    const [one, other] = [words.slice(0, index + 1).join(' '), words.slice(index + 1).join(' ')];
    const [from, to] = [scaleOf(one), scaleOf(other)];
    return from === null || to === null ? [] : [{ from, to, toWords: other }];
  });
  const found = splits.find(({ from, to }) => from.kind === to.kind) ?? splits[0];
  if (found !== undefined) return found;
  if (words.length < 2) throw inputs.fault('the unit to convert to is missing');
  const known = words.findLastIndex((_, index) => scaleOf(words.slice(0, index).join(' ')) !== null);
  const rest = known > 0 ? words.slice(known) : words;
  const from = unit(inputs, known > 0 ? words.slice(0, known).join(' ') : (words[0] ?? ''));
  return { from, to: unit(inputs, rest.join(' ')), toWords: rest.join(' ') };
}

function unit(inputs: Inputs, text: string): Scale {
  if (/^gal(lons?)?$/i.test(text)) throw inputs.fault('gal is two sizes: write US gal or imp gal');
  const scale = scaleOf(text);
  if (scale === null) throw inputs.fault(`«${text}» is no unit that is known here`);
  return scale;
}

export const volume: Calculator = {
  name: 'volume',
  says: 'litres of a tank from its measures',
  takes: 'box|cylinder|hexagon|lying MEASURES',
  options: ['fill', 'glass'],
  example: 'tankside calc volume box 36x18x16in --glass 6mm --fill 14in',
  run(inputs) {
    const shape = inputs.word(0, 'the shape (box, cylinder, hexagon, lying)').toLowerCase();
    const sides = lengths(inputs, inputs.rest(1, 'the measures'));
    const glass = (inputs.optional('glass', 'length', 'mm', 0) ?? 0) / 10;
    const fill = inputs.optional('fill', 'length', 'cm', 0);
    const litres = litresOf(inputs, shape, sides, glass, fill === null ? null : fill / 10);
    if (!(litres > 0)) throw inputs.fault('these measures hold no water');
    return {
      results: [
        { name: 'volume', value: litres, unit: 'L' },
        { name: 'the same', value: litres / US_GALLON, unit: 'US gal' },
        { name: 'the same', value: litres / IMPERIAL_GALLON, unit: 'imp gal' },
      ],
      source: 'MSD Veterinary Manual, formulae for tank volumes; NIST SP 811 for units',
      steps: [
        `${shape}: ${sides.map((side) => `${Number(side.toFixed(3))} cm`).join(' × ')}${glass > 0 ? `, less ${glass * 10} mm of glass` : ''}${fill === null ? '' : `, filled to ${Number((fill / 10).toFixed(3))} cm from under the floor`}`,
      ],
      cautions: [
        `full of water it weighs ${Math.ceil(litres)} kg and the glass; sand and rock take 10 to 20 % of the water (common practice, no source)`,
      ],
    };
  },
};

function lengths(inputs: Inputs, text: string): number[] {
  const match = /^\s*([\d.,\sx×*]+?)\s*([a-z]*)\s*$/i.exec(text);
  const parts = (match?.[1] ?? '').split(/\s*[x×*]\s*/i).map((part) => numberIn(part.trim()));
  if (match === null || parts.some((part) => part === null || part <= 0))
    throw inputs.fault(`«${text}» are no measures`);
  const name = match[2] === '' || match[2] === undefined ? 'cm' : match[2];
  return parts.map((part) => inputs.quantity(`${part}${name}`, 'length', 'cm', 'the measures') / 10);
}

function litresOf(inputs: Inputs, shape: string, sides: number[], glass: number, fill: number | null): number {
  const [a = 0, b = 0, c = 0] = sides;
  const needs = (count: number, what: string): void => {
    if (sides.length !== count) throw inputs.fault(`a ${shape} takes ${what}`);
  };
  const height = (top: number): number => {
    if (fill !== null && fill > top) throw inputs.fault(`it cannot be filled to ${fill} cm: it is ${top} cm high`);
    return fill ?? top;
  };
  switch (shape) {
    case 'box':
      needs(3, 'three measures: length x width x height');
      return glass > 0 ? boxInsideLitres(a, b, c, glass, height(c)) : boxLitres(a, b, height(c));
    case 'cylinder':
      needs(2, 'two measures: diameter x height');
      return cylinderLitres(a / 2 - glass, height(b) - glass);
    case 'hexagon':
      needs(2, 'two measures: side x height');
      return hexagonLitres(a - (glass * 2) / Math.sqrt(3), height(b) - glass);
    case 'lying':
      needs(2, 'two measures: diameter x length');
      return lyingCylinderLitres(a / 2 - glass, b - 2 * glass, height(a) - glass);
    default:
      throw inputs.fault(`«${shape}» is none of box, cylinder, hexagon, lying`);
  }
}

const MASS_SOURCE =
  'W = a L^b, Froese 2006, J. Appl. Ichthyol. 22:241 (b 3.03 is the median of many species; a 0.02 for deep-bodied young is ours)';

function lengthOf(weight: number, a: number, b: number): CalcAnswer {
  const cm = lengthFor(weight, a, b);
  return {
    results: [{ name: 'length of each fish', value: cm * 10, unit: 'mm' }],
    source: MASS_SOURCE,
    steps: [`(${weight} ÷ ${a})^(1/${b}) = ${cm.toFixed(4)} cm`],
    cautions: [],
  };
}

export const mass: Calculator = {
  name: 'mass',
  says: 'weight of a fish from its length',
  takes: '',
  options: ['length', 'weight', 'a', 'b', 'count'],
  example: 'tankside calc mass --length 30mm --a 0.02 --b 3.03',
  run(inputs) {
    const a = inputs.number('a', 1e-6, 10) ?? USUAL_WEIGHT.a;
    const b = inputs.number('b', 1, 5) ?? USUAL_WEIGHT.b;
    if (inputs.has('weight')) return lengthOf(inputs.needed('weight', 'mass', 'g', 1e-6, 1e5), a, b);
    const length = inputs.needed('length', 'length', 'mm', 1, 3000) / 10;
    const count = inputs.whole('count') ?? 1;
    const one = weightOf(length, a, b);
    const results: CalcResult[] = [{ name: 'each fish', value: one, unit: 'g' }];
    if (count > 1) results.push({ name: `${count} fish`, value: one * count, unit: 'g' });
    return {
      results,
      source: MASS_SOURCE,
      steps: [`${a} × ${length}^${b} = ${one.toFixed(4)} g (length in cm)`],
      cautions: [],
    };
  },
};

export const bag: Calculator = {
  name: 'bag',
  says: 'water and air for a bag of fish',
  takes: '',
  options: ['length', 'count', 'hours', 'temp', 'a', 'b', 'oxygen'],
  example: 'tankside calc bag --length 30mm --count 6 --hours 8 --temp 24C',
  run(inputs) {
    const length = inputs.needed('length', 'length', 'mm', 1, 1000) / 10;
    const count = inputs.whole('count') ?? 1;
    const hours = inputs.number('hours', 0.1, 96) ?? 24;
    const temp = inputs.optional('temp', 'temperature', 'C', 5, 35) ?? 25;
    const oxygenPacked = inputs.has('oxygen');
    const grams =
      count *
      weightOf(length, inputs.number('a', 1e-6, 10) ?? USUAL_WEIGHT.a, inputs.number('b', 1, 5) ?? USUAL_WEIGHT.b);
    const { load, water, whole } = bagFor(grams, hours, temp, oxygenPacked);
    return {
      results: [
        { name: `${count} fish weigh`, value: grams, unit: 'g' },
        { name: 'load, at the most', value: load, unit: 'g/L' },
        { name: 'water, at least', value: water, unit: 'L' },
        { name: `bag, water and ${oxygenPacked ? 'oxygen' : 'air'}`, value: whole, unit: 'L' },
      ],
      source: `at most ${oxygenPacked ? LOAD.oxygen : LOAD.air} g/L for a day (ours); metabolism doubles with 10 C (University of Missouri Extension MX392); water one third of the bag (common practice, no source)`,
      steps: [
        `${grams.toFixed(2)} g ÷ ${load.toFixed(2)} g/L = ${water.toFixed(2)} L, for ${Math.max(24, hours)} h from bagging to unpacking at ${temp} C`,
      ],
      cautions: [
        'transport rules are local law; spiny or quarrelsome fish alone, fasted, in the dark, at an even temperature',
      ],
    };
  },
};

export const clock: Calculator = {
  name: 'clock',
  says: 'days from laying to hatching, swimming or release',
  takes: '',
  options: ['stage', 'guild', 'temp', 'days', 'base'],
  example: 'tankside calc clock --stage hatch --guild cave --temp 25C',
  run(inputs) {
    if (inputs.has('days')) return warmthSum(inputs);
    const stage = stageOf(inputs);
    const guild = guildOf(inputs);
    const temp = inputs.optional('temp', 'temperature', 'C', 10, 36);
    const days = stageDays(guild, stage, temp === null ? null : measure('C', temp));
    if (days === null) throw inputs.fault(`a ${guild} has no such stage`);
    const at = temp ?? USUAL_TEMPERATURE.likely ?? REFERENCE_TEMPERATURE;
    return {
      results: [{ name: `laid to ${stage}`, value: days.likely, unit: 'days', low: days.low, high: days.high }],
      source: `usual for ${guild}s at ${REFERENCE_TEMPERATURE} C (common practice, no source), moved to ${at} C with Q10 ${Q10.likely} (evidence ${Q10.low} to ${Q10.high}: Kimmel et al. 1995; an Oreochromis karongae incubation study)`,
      steps: [
        `D(T) = D(26) × Q10^((26 − ${at}) ÷ 10); factor ${q10Factor(Q10.likely, REFERENCE_TEMPERATURE, at).toFixed(3)}`,
      ],
      cautions: [],
    };
  },
};

/** Degree-days over so many days at one temperature: what hatchery tables count in. */
function warmthSum(inputs: Inputs): CalcAnswer {
  const days = Math.round(inputs.needed('days', 'time', 'days', 1, 1000));
  const temp = inputs.needed('temp', 'temperature', 'C', 0, 40);
  const base = inputs.optional('base', 'temperature', 'C', -5, 40) ?? 0;
  const sum = degreeDays(Array<number>(days).fill(temp), base);
  return {
    results: [{ name: 'warmth gathered', value: sum, unit: 'degree-days' }],
    source: 'Dictionary of Ichthyology, degree-day; the sum to a stage is not one number over all temperatures',
    steps: [`${days} days × (${temp} − ${base}) = ${sum.toFixed(1)}; days colder than the base count nothing`],
    cautions: [],
  };
}

function stageOf(inputs: Inputs): ClockStage {
  const text = inputs.text('stage') ?? '';
  if (text === 'hatch' || text === 'swim' || text === 'release') return text;
  throw inputs.fault(
    text === '' ? '--stage is missing: hatch, swim or release' : `--stage takes hatch, swim or release, not «${text}»`,
  );
}

function guildOf(inputs: Inputs): Guild {
  const text = (inputs.text('guild') ?? '').toLowerCase();
  const found =
    text === ''
      ? undefined
      : (GUILDS.find((guild) => guild === text) ?? GUILDS.find((guild) => guild.startsWith(text)));
  if (found === undefined) {
    const all = GUILDS.map((guild) => guild.replace(' spawner', '')).join(', ');
    throw inputs.fault(
      text === '' ? `--guild is missing, one of ${all}` : `--guild takes one of ${all}, not «${text}»`,
    );
  }
  return found;
}
