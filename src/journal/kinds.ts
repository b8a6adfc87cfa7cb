/**
 * What each kind of fact states beside what every event carries: canonical units, names looked up, dates made days.
 *
 * To add a kind: its grammar rule, its variant here, its fold in `state/`, its page in
 * `grammar/README.md`. The compiler and `tests/homes.test.ts` fail until all four are there.
 */
import type { Day } from '../core/day.ts';
import type { Measure, Price } from '../core/quantity.ts';
import type { FishRef, GroupKind, Member, Sex } from './subject.ts';
import type {
  ChoreAction,
  Dose,
  Heads,
  HowMany,
  MeasureKind,
  Reading,
  Sign,
  Sizes,
  SpeciesTraits,
  Stage,
  WaterAmount,
  Which,
} from './values.ts';

export interface Kinds {
  // set-up of the room
  'units set': { readonly units: 'metric' | 'US' | 'imperial' };
  'currency set': { readonly currency: string };
  'zone set': { readonly zone: string };
  'walk set': { readonly tanks: readonly string[] };
  'nitrogen set': { readonly as: 'N' | 'ion' };
  'scoop set': { readonly name: string; readonly volume: Measure<'L'> | null; readonly mass: Measure<'g'> | null };
  'award rule set': {
    readonly name: string;
    readonly young: number;
    readonly age: Measure<'days'>;
    readonly from: 'hatched' | 'released';
    readonly notice: Measure<'days'> | null;
  };
  'row declared': { readonly row: string; readonly tanks: readonly string[] };
  'loop declared': {
    readonly loop: string;
    readonly sump: Measure<'L'> | null;
    readonly returnFlow: Measure<'L/h'> | null;
    readonly layers: number | null;
    readonly spillsAt: Measure<'mm'> | null;
    /** Litres that the sump can still take when the return stops. */
    readonly spare: Measure<'L'> | null;
  };
  'tank declared': {
    readonly tank: string;
    /** Length, width, height, mm. */
    readonly size: readonly [Measure<'mm'>, Measure<'mm'>, Measure<'mm'>] | null;
    readonly nominal: Measure<'L'> | null;
    readonly live: Measure<'L'> | null;
    readonly plumbing: { readonly on: string } | 'alone' | null;
    readonly filter: string | null;
    readonly quarantine: boolean | null;
    /** A tray or net hung in another tank. */
    readonly inTank: string | null;
    readonly heated: Measure<'C'> | null;
    readonly hides: string | null;
  };
  'tank retired': { readonly tank: string };
  'species declared': { readonly species: string; readonly traits: SpeciesTraits };
  'group declared': {
    readonly group: string;
    readonly groupKind: GroupKind;
    readonly species: string | null;
    readonly heads: Heads | null;
    readonly members: readonly { readonly member: Member; readonly size: Measure<'mm'> | null }[];
    readonly tank: string | null;
    /** Age on the day of the line, where it says so. */
    readonly age: Measure<'days'> | null;
    readonly size: Sizes | null;
    readonly line: string | null;
    readonly from: string | null;
    readonly price: Price | null;
    /** Broods or groups that these fish were taken from, where the line names them (`from Rowan-1`). */
    readonly parentsFrom: readonly string[];
  };
  'culture declared': { readonly culture: string; readonly of: string };
  'auction declared': {
    readonly auction: string;
    readonly on: Day | null;
    readonly lots: number | null;
    readonly bagOf: number | null;
    readonly bagsPerSpecies: number | null;
    /** What the seller keeps of the hammer price, 0 to 1. */
    readonly sellerShare: Measure<'share'> | null;
    readonly fast: Measure<'days'> | null;
    readonly minimum: number | null;
    readonly hours: Measure<'minutes'> | null;
    /** Boxes that may go, and what one of them holds. */
    readonly boxes: number | null;
    readonly boxLitres: Measure<'L'> | null;
  };

  // looking, chores
  'all well': Record<never, never>;
  away: { readonly until: Day };
  'chore set': {
    readonly action: ChoreAction;
    readonly every: Measure<'days'> | null;
    readonly monthly: number | null;
    readonly levelAbove: Measure<'mm'> | null;
    readonly amount: WaterAmount | null;
    readonly takes: Measure<'minutes'> | null;
  };
  'chore stopped': { readonly action: ChoreAction };
  'to do': { readonly text: string; readonly by: Day | null };
  did: { readonly action: ChoreAction };
  'put off': {
    readonly what: { readonly action: ChoreAction } | { readonly measure: MeasureKind } | { readonly text: string };
    readonly until: Day;
  };

  // water and filters
  level: { readonly level: Measure<'mm'>; readonly from: 'bottom' | 'lip' };
  'layers cleaned': { readonly layers: number | 'all'; readonly of: number | null };
  'media cleaned': Record<never, never>;
  'sponge rinsed': Record<never, never>;
  'water changed': { readonly amount: WaterAmount };
  'topped up': { readonly litres: Measure<'L'> };
  tested: { readonly reading: Reading };
  dosed: { readonly dose: Dose | null; readonly product: string };

  // temporary measures and faults
  'measure begun': {
    readonly measure: MeasureKind;
    readonly until: Day | null;
    /** `pump off 1 h`: already over. `pump off for 1 h`: open till then. */
    readonly lasts: Measure<'minutes'> | null;
    readonly over: boolean;
    readonly to: Measure<'C'> | null;
  };
  'measure undone': { readonly measure: MeasureKind };
  'measure stays': { readonly measure: MeasureKind };
  'everything undone': Record<never, never>;
  fault: { readonly text: string };
  fixed: { readonly text: string | null };
  overflowed: Record<never, never>;
  leak: Record<never, never>;
  'power off': { readonly lasts: Measure<'minutes'> | null };
  'power on': Record<never, never>;
  'heater stuck': { readonly at: Measure<'C'> | null };

  // bond
  bonded: { readonly fish: FishRef };
  'dispute sign': {
    readonly fish: FishRef;
    readonly sign: Sign;
    readonly doer: Member | null;
    readonly sufferer: Member | null;
  };
  calmer: { readonly fish: FishRef };
  shimmying: { readonly fish: FishRef };
  'made up': { readonly fish: FishRef };
  'split up': { readonly fish: FishRef };
  resting: { readonly fish: FishRef };
  'member back': { readonly fish: FishRef };
  'new mate': { readonly fish: FishRef; readonly sex: Sex; readonly from: string | null; readonly name: string | null };
  'parents chase fry': { readonly fish: FishRef };

  // spawn and brood
  'about to spawn': { readonly fish: FishRef };
  'no eggs': { readonly fish: FishRef };
  spawned: {
    readonly fish: FishRef;
    /** `on the day`, or within the window in `when`; `seen` eggs found, laid since the last look; `maybe`. */
    readonly as: 'laid' | 'seen' | 'maybe';
    /** The name written in the line, if any. */
    readonly brood: string | null;
    readonly eggs: Heads | null;
  };
  'eggs white': { readonly fish: FishRef; readonly count: HowMany };
  'eggs gone': { readonly fish: FishRef };
  'stage seen': {
    readonly fish: FishRef;
    readonly stage: Exclude<Stage, 'eggs'>;
    readonly count: Heads | null;
    readonly brood: string | null;
  };
  counted: { readonly fish: FishRef; readonly heads: Heads };
  sized: { readonly fish: FishRef; readonly sizes: Sizes };
  moved: {
    readonly fish: FishRef;
    readonly count: HowMany;
    readonly which: 'largest' | 'smallest' | 'any';
    readonly to: string;
    /** What went along: `her cave`, `sponge`, `water`. */
    readonly with: string | null;
    /** `rest stay`: at least one is still there. */
    readonly restStay: boolean;
  };
  mixed: { readonly a: FishRef; readonly b: FishRef };
  lost: { readonly fish: FishRef; readonly count: HowMany; readonly how: 'died' | 'missing' | 'eaten' | 'culled' };

  // health
  /** `text`: what it is; null where nobody said. */
  sick: { readonly text: string | null; readonly catching: boolean | null };
  catching: { readonly catching: boolean };
  treated: {
    readonly product: string;
    readonly dose: Dose | null;
    readonly every: Measure<'days'> | null;
    readonly doses: number | null;
    readonly wait: Measure<'days'> | null;
  };
  'hold begun': { readonly text: string };
  'hold over': Record<never, never>;
  'quarantine begun': { readonly lasts: Measure<'days'> };
  'quarantine over': Record<never, never>;
  /** A net, a sponge, water: what may have carried something from tank to tank without any fish. */
  shared: {
    readonly thing: string;
    /** The other tanks; none where those of the heading shared it among themselves. */
    readonly tanks: readonly string[];
    /** `from`: it came out of them into the tank of the line; `to`: it went there; `both`: it was used in all of them. */
    readonly way: 'both' | 'from' | 'to';
  };

  // stock and sale
  bought: {
    readonly count: HowMany;
    readonly species: string;
    readonly price: Price | null;
    readonly from: string | null;
    readonly group: string | null;
    /** How long they are, where the line tells: the bulk of them. */
    readonly size?: Measure<'mm'>;
  };
  'kept back': { readonly fish: FishRef; readonly count: HowMany; readonly which?: Which };
  reserved: {
    readonly fish: FishRef;
    readonly count: HowMany;
    readonly until: Day | null;
    readonly to: string | null;
    readonly deposit: number | null;
    readonly which?: Which;
  };
  wanted: {
    readonly count: HowMany;
    readonly species: string;
    readonly size: Measure<'mm'> | null;
    readonly by: Day | null;
    readonly to: string | null;
  };
  sold: {
    readonly fish: FishRef;
    readonly count: HowMany;
    readonly price: Price | null;
    readonly to: string | null;
    readonly auction: string | null;
    readonly which?: Which;
  };
  'gave away': {
    readonly fish: FishRef;
    readonly count: HowMany;
    readonly to: string | null;
    readonly which?: Which;
  };
  spent: { readonly amount: number; readonly text: string | null };

  // feed and cultures
  fed: { readonly food: string; readonly grams: Measure<'g'> | null };
  /** `from`: another jar, or whose it was; absent where nobody said. */
  'culture started': { readonly from?: string };
  'culture harvested': Record<never, never>;
  'culture split': { readonly to: string };
  'culture sour': Record<never, never>;
  'hatch set': { readonly grams: Measure<'g'> | null; readonly of: string };

  // free
  note: { readonly text: string };
  photo: { readonly file: string };
}
