/** The water change or dose that reaches a target: by dilution downwards, by weight upwards for KH and GH. */
import type { Interval } from '../core/interval.ts';
import { times, middle } from '../core/interval.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { Measure } from '../core/quantity.ts';
import { dayWords, listWords, rangeWords } from '../core/words.ts';
import { DEGREES_A_DAY, gramsToRaise } from '../science/chemistry.ts';
import { changeNeeded } from '../science/dilution.ts';
import type { Room } from '../state/draft.ts';
import { changesAfter, hardenedAfter } from './outdated.ts';
import { kitFactor, lastOf, PARAMETER_WORDS, type LastReading, type readingsOf } from './readings.ts';
import { afterRaising } from './raised.ts';
import type { WaterBody } from './waters.ts';

/** What can be aimed at: things that mix as water does. */
type Aim = 'tan' | 'no2' | 'no3' | 'kh' | 'gh' | 'conductivity' | 'salinity';

export interface Target {
  readonly of: Aim;
  /** As the keeper's kit shows it. */
  readonly value: number;
  /** What the new water has of it, as the kit shows it; null: none is taken, and said. */
  readonly tap: number | null;
}

export interface Reach {
  readonly of: Aim;
  /** In one sentence. */
  readonly says: string;
  /** Share of the water to change at a time, and how often, where a change reaches it. */
  readonly change: { readonly share: number; readonly times: number; readonly litres: Interval | null } | null;
  /** Grams to weigh out, where a dose reaches it. */
  readonly dose: { readonly of: string; readonly grams: Interval; readonly days: number }[];
  readonly cautions: readonly string[];
  readonly steps: readonly string[];
}

interface Known {
  readonly body: WaterBody;
  readonly litres: DeepReadonly<Measure<'L'>> | null;
  readonly facts: ReturnType<typeof readingsOf>;
}

/** No single change is larger than this share (ours: large changes in daily steps). */
const LARGEST_CHANGE = 0.5;

/** What brings a water to a target, or why nothing does. */
export function reach(room: Room, known: Known, target: Target): Reach {
  const { word } = PARAMETER_WORDS[target.of];
  const last = lastOf(known.facts, target.of);
  const factor = kitFactor(room, target.of);
  const now = last === null ? null : middle(times(last.value, factor));
  if (last === null || now === null) return none(target, `no ${word} on record: test first`);
  if (Math.abs(now - target.value) < 1e-9) return none(target, `${word} is at ${target.value} already`);
  if (now < target.value && (target.of === 'kh' || target.of === 'gh'))
    return since(room, known, last, byDose(room, known, target, target.of, now));
  return since(room, known, last, byChange(room, known, target, now));
}

/** Whoever changed or dosed since the reading that this goes by is told first, lest it be done twice. */
function since(room: Room, { body }: Known, last: LastReading, reached: Reach): Reach {
  const { of } = last;
  const changes = changesAfter(room, body, last).map(({ day }) => `change on ${dayWords(day, room.on)}`);
  const doses = of === 'kh' || of === 'gh' ? hardenedAfter(room, body, last, of) : [];
  const done = [...changes, ...doses.map(({ day }) => `dose on ${dayWords(day, room.on)}`)];
  if (done.length === 0) return reached;
  const { word } = PARAMETER_WORDS[of];
  const told = `${word} was read on ${dayWords(last.day, room.on)}, before the ${listWords(done.slice(-2))}: test it again first`;
  return { ...reached, cautions: [told, ...reached.cautions] };
}

function byChange(room: Room, known: Known, target: Target, now: number): Reach {
  const { word } = PARAMETER_WORDS[target.of];
  const tap = target.tap ?? 0;
  const whole = changeNeeded(now, target.value, tap);
  if (whole === null || whole >= 1) {
    return none(target, `no change with water of ${word} ${tap} brings ${word} from ${round(now)} to ${target.value}`);
  }
  let count = 1;
  let share = whole;
  while (share > LARGEST_CHANGE) {
    count += 1;
    share = changeNeeded(now, target.value, tap, count) ?? share;
  }
  const litres = known.litres === null ? null : times(known.litres, share);
  const often = count === 1 ? 'once' : `${count} days running, not ${percent(whole)} % at once`;
  const much = litres === null ? '' : ` (${rangeWords(litres)} L, as many kg)`;
  const taken = target.tap === null ? `, taking tap water of ${word} 0` : '';
  return {
    of: target.of,
    says: `${word} ${round(now)} to ${target.value}: change ${percent(share)} % ${often}${much}${taken}`,
    change: { share, times: count, litres },
    dose: [],
    cautions: [
      'tap water: no chlorine or chloramine, same temperature; large changes in daily steps',
      afterRaising(room, known.body.name).says,
    ],
    steps: [
      `one change: f = (${round(now)} − ${target.value}) / (${round(now)} − ${tap}) = ${whole.toFixed(3)}`,
      ...(count === 1
        ? []
        : [
            `${count} equal changes: 1 − ((${target.value} − ${tap}) / (${round(now)} − ${tap}))^(1/${count}) = ${share.toFixed(3)} each`,
          ]),
    ],
  };
}

function byDose(room: Room, known: Known, target: Target, of: 'kh' | 'gh', now: number): Reach {
  const { word } = PARAMETER_WORDS[of];
  const degrees = target.value - now;
  if (known.litres === null)
    return none(target, `the litres of ${known.body.name} are not known: set its size or live volume`);
  const days = Math.ceil(degrees / DEGREES_A_DAY.high);
  const parts =
    of === 'kh'
      ? ([['NaHCO3', 'sodium bicarbonate', 1]] as const)
      : ([
          ['CaCl2.2H2O', 'calcium chloride dihydrate', 0.5],
          ['MgSO4.7H2O', 'magnesium sulphate heptahydrate', 0.5],
        ] as const);
  const { litres } = known;
  const dose = parts.map(([compound, name, part]) => {
    const perLitre = gramsToRaise(compound, of, degrees * part, 1) ?? 0;
    return { of: name, grams: times(litres, perLitre), days };
  });
  const told = dose.map(({ of: name, grams }) => `${rangeWords(grams, 1)} g of ${name}`).join(' and ');
  const daily = dose.map(({ grams }) => `${rangeWords(times(grams, 1 / days), 1)} g`).join(' and ');
  return {
    of,
    says: `${word} ${round(now)} to ${target.value}: ${told}${days > 1 ? `, over ${days} days: ${daily} a day` : ''}`,
    change: null,
    dose,
    cautions: [
      `no more than ${DEGREES_A_DAY.low} to ${DEGREES_A_DAY.high} degrees a day, dissolved first; dose the live litres, not the nominal ones`,
      ...(of === 'kh' ? [afterRaising(room, known.body.name, 'dose').says] : []),
    ],
    steps: [
      `${round(degrees)} dH × ${rangeWords(litres)} L of live water`,
      'grams = Δ(meq/L) × litres × molar mass / (1000 × charge), 1 dH = 0.3567 meq/L',
    ],
  };
}

function none(target: Target, says: string): Reach {
  return { of: target.of, says, change: null, dose: [], cautions: [], steps: [says] };
}

/** A share that is enough, in whole percent; what falls short by less than a reading has figures does not make one more. */
function percent(share: number): number {
  return Math.ceil(Number((share * 100).toFixed(2)));
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

/** Words that name what can be aimed at, as a keeper types them. */
export const AIMS: Readonly<Record<string, Aim>> = {
  tan: 'tan',
  ammonia: 'tan',
  no2: 'no2',
  nitrite: 'no2',
  no3: 'no3',
  nitrate: 'no3',
  kh: 'kh',
  gh: 'gh',
  conductivity: 'conductivity',
  salinity: 'salinity',
};
