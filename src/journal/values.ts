/** Values that events carry: numbers of fish, lengths, readings, doses, what is to be done. Canonical units throughout. */
import type { Guild } from '../core/guild.ts';
import type { Interval } from '../core/interval.ts';
import type { Measure, Price } from '../core/quantity.ts';

/** How many fish, told apart by sex or age where the line does. */
export interface Heads {
  /** All of them together. */
  readonly total: Interval;
  readonly males: Interval | null;
  readonly females: Interval | null;
  readonly young: Interval | null;
  /** `18` counted; `guess` where the words say so (about, a range, a few …); the fold widens guesses of young. */
  readonly as: 'counted' | 'about' | 'guess';
}

/** A number of fish, or a word that only the stock of that day can turn into one. */
export type HowMany = Heads | 'all' | 'rest' | 'half' | 'unsaid';

/** Which fish left, where the line says so: the others are not a sample of them all. */
export type Which = 'largest' | 'smallest';

export type LengthOf = 'largest' | 'smallest' | 'average' | 'bulk' | 'sample';

export interface Sizes {
  readonly of: LengthOf;
  /** One reading (`largest 30 mm`), a range of the bulk, or each fish of a sample. Total length, mm. */
  readonly values: readonly Measure<'mm'>[];
}

/** What is to be done again and again. `text` only for `own`. */
export interface ChoreAction {
  readonly kind:
    | 'clean prefilter'
    | 'clean media'
    | 'rinse sponge'
    | 'water change'
    | 'top up'
    | 'test'
    | 'feed'
    | 'harvest'
    | 'restart'
    | 'own';
  readonly text: string | null;
}

export type MeasureKind =
  | 'off the loop'
  | 'air filter'
  | 'lights off'
  | 'rocks out'
  | 'divider'
  | 'pump off'
  | 'heater off'
  | 'heat raised'
  | 'breeder net';

export type Sign =
  'chasing' | 'hiding' | 'pinned' | 'torn fin' | 'not eating' | 'scales missing' | 'wounded' | 'gasping';

/** A stage of a brood as a look tells it. */
export type Stage =
  'eggs' | 'hatched' | 'wrigglers' | 'free-swimming' | 'fry seen' | 'born' | 'holding' | 'released' | 'stripped';

export interface Reading {
  readonly ph: Measure<'pH'> | null;
  readonly kh: Measure<'dH'> | null;
  readonly gh: Measure<'dH'> | null;
  /** Total ammonia, nitrite and nitrate, mg/L as N. */
  readonly tan: Measure<'mg/L'> | null;
  readonly no2: Measure<'mg/L'> | null;
  readonly no3: Measure<'mg/L'> | null;
  readonly temperature: Measure<'C'> | null;
  readonly conductivity: Measure<'uS/cm'> | null;
  readonly salinity: Measure<'ppt'> | null;
  readonly oxygen: Measure<'mg/L'> | null;
  readonly chlorine: Measure<'mg/L'> | null;
}

/** Amount of something put into the water. */
export type Dose =
  | Measure<'g'>
  | Measure<'mL'>
  | Measure<'g/L'>
  | Measure<'mL/L'>
  | { readonly unit: 'own'; readonly count: number; readonly name: string };

export interface SpeciesTraits {
  readonly latin: string | null;
  readonly guild: Guild | null;
  readonly saleAt: {
    readonly size: Measure<'mm'> | null;
    readonly age: Measure<'days'> | null;
    readonly both: boolean;
  } | null;
  readonly price: Price | null;
  readonly siblingSafe: boolean | null;
  readonly hardToCatch: boolean | null;
  readonly spiny: boolean | null;
  readonly adult: Measure<'mm'> | null;
  readonly temperature: Measure<'C'> | null;
  readonly ph: Measure<'pH'> | null;
  readonly gh: Measure<'dH'> | null;
  /** Regulated or protected: warn at stock in and at sale. */
  readonly regulated: boolean | null;
}

/** A share of a tank's or loop's water (0 to 1), or litres. */
export type WaterAmount = Measure<'share'> | Measure<'L'>;
