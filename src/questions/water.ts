/** The water of every loop and of every tank by itself: readings, toxic ammonia, trends, changes, doses, and what reaches a target. */
import type { Because } from '../core/because.ts';
import type { Day } from '../core/day.ts';
import type { Interval } from '../core/interval.ts';
import { middle } from '../core/interval.ts';
import type { Measure } from '../core/quantity.ts';
import type { DeepReadonly } from '../core/readonly.ts';
import type { LineRef } from '../core/span.ts';
import { linesOf } from '../core/span.ts';
import { dayWords, listWords, rangeWords } from '../core/words.ts';
import type { Dose, WaterAmount } from '../journal/event.ts';
import { robustLine } from '../science/trend.ts';
import { shareOf } from '../state/done.ts';
import type { Room } from '../state/draft.ts';
import { liveVolume, loopVolume } from '../state/volume.ts';
import { rowId } from './id.ts';
import { addedBy, type Added } from './doses.ts';
import { dosesBack, dosesIn, lately, type Given } from './given.ts';
import { missedBy } from './missed.ts';
import { filterLoad, type FilterLoad } from './nitrogen.ts';
import { PARAMETERS } from '../state/parameters.ts';
import {
  ammoniaOf,
  ammoniaSteps,
  kitFactor,
  ifIon,
  lastOf,
  PARAMETER_WORDS,
  readingsOf,
  readingWords,
  seriesOf,
  type Parameter,
} from './readings.ts';
import { reach, type Reach, type Target } from './target.ts';
import { verdictOn } from './verdict.ts';
import { bodiesOfWater, bodyOfWater, type WaterBody } from './waters.ts';
import { watches } from './watch.ts';
import type { WhyRow } from './whyrow.ts';

/** Days back that a trend is drawn through. */
const TREND_DAYS = 60;
/** Readings that a trend needs, over at least so many days (ours). */
const TREND_READINGS = 3;
const TREND_SPAN = 14;

export interface WaterRow {
  readonly id: string;
  readonly name: string;
  readonly kind: WaterBody['kind'];
  readonly tanks: readonly string[];
  readonly litres: DeepReadonly<Measure<'L'>> | null;
  readonly readings: readonly ReadingRow[];
  readonly ammonia: AmmoniaRow | null;
  readonly trends: readonly TrendRow[];
  readonly changes: readonly {
    readonly on: Day;
    readonly where: string;
    readonly amount: WaterAmount;
    /** Share of this whole water that it renewed, or null where litres are not known. */
    readonly share: number | null;
    /** Tanks of the loop that it did not reach and that were not changed since. */
    readonly missed: readonly string[];
  }[];
  /** What the feed asks of the filter, where feed is logged. */
  readonly load: Pick<FilterLoad, 'grams' | 'ammonia' | 'carried' | 'khEaten' | 'khFell' | 'says'>;
  readonly doses: readonly {
    readonly on: Day;
    readonly where: string;
    readonly product: string;
    readonly dose: Dose | null;
    /** Degrees of KH or GH that it added, by weight, product and live litres; null where they do not tell. */
    readonly added: Added | null;
    /** Of a course of treatment. */
    readonly treated: boolean;
    /** The share of it that can be left at the most, by the changes since; null where none is known. */
    readonly left: number | null;
    /** It was given to a tank off the loop, which came back with it on that day. */
    readonly backOn: Day | null;
  }[];
  readonly watch: { readonly since: Day; readonly zeros: number; readonly earliest: Day } | null;
  readonly reach: Reach | null;
  /** Its nitrogen is counted as N because no line says how the kit counts. */
  readonly unsaid: boolean;
  readonly because: Because;
  readonly lines: readonly LineRef[];
}

interface ReadingRow {
  readonly of: Parameter;
  /** As the kit shows it, with its unit: `NO3 20–40 mg/L`. */
  readonly words: string;
  readonly value: Interval;
  readonly on: Day;
  readonly where: string;
}

interface AmmoniaRow {
  /** mg/L as N. */
  readonly toxic: Interval;
  readonly missing: readonly string[];
  readonly verdict: string;
}

interface TrendRow {
  readonly of: Parameter;
  readonly words: string;
  /** As the kit shows it, a week. */
  readonly perWeek: number;
  readonly readings: number;
}

interface WaterOptions {
  /** A loop or tank; null for every water. */
  readonly place: string | null;
  readonly target: Target | null;
}

/** The waters asked about, or null where the place is none of the room. */
export function water(room: Room, options: WaterOptions): readonly WaterRow[] | null {
  if (options.place === null) return bodiesOfWater(room).map((body) => waterRow(room, body, options.target));
  const body = bodyOfWater(room, options.place);
  return body === null ? null : [waterRow(room, body, options.target)];
}

function waterRow(room: Room, body: WaterBody, target: Target | null): WaterRow {
  const facts = readingsOf(room, body);
  const litres = body.kind === 'loop' ? loopVolume(room, body.name) : liveVolume(room, body.name).litres;
  const ammonia = ammoniaOf(room, body, facts);
  const open = watches(room).find((one) => one.body.name === body.name);
  const changes = lately(room, body, room.water.changes);
  const doses = [...dosesIn(room, body), ...dosesBack(room, body)].toSorted((a, b) => a.day - b.day);
  const last = PARAMETERS.flatMap((of) => lastOf(facts, of) ?? []);
  const reached = target === null ? null : reach(room, { body, litres, facts }, target);
  const load = filterLoad(room, body, litres, facts);
  const lines = linesOf([...[...last, ...changes, ...doses].map(({ place }) => place), ...load.places]);
  return {
    id: rowId(body.name, 'water'),
    name: body.name,
    kind: body.kind,
    tanks: body.tanks,
    litres,
    readings: last.map(({ of, value, day, where }) => {
      return { of, value, words: readingWords(room, of, value), on: day, where };
    }),
    ammonia: ammonia && {
      toxic: ammonia.toxic,
      missing: ammonia.missing,
      verdict: verdictOn(room, body, ammonia),
    },
    trends: TRENDING.flatMap(([of, least]) => trendOf(room, facts, of, least)),
    changes: changes.map((change) => changeRow(room, body, change)),
    load,
    doses: doses.map((dose) => doseRow(dose, litres)),
    watch: open === undefined ? null : { since: open.since, zeros: open.zeros, earliest: open.earliest },
    reach: reached,
    unsaid: last.some(({ of, value }) => value.high > 0 && ifIon(room, of, value) !== null),
    because: {
      rule: 'the last reading of each thing stands; toxic ammonia is the share that pH and temperature make of the total',
      source: 'the journal; Emerson et al. 1975 for ammonia, its marks from UF/IFAS FA-16',
      steps: [
        litres === null ? 'litres not known' : `${rangeWords(litres)} L of live water`,
        ...(ammonia === null
          ? ['no ammonia reading on record']
          : [...ammoniaSteps(room, ammonia), verdictOn(room, body, ammonia)]),
        ...load.steps,
        ...(reached === null ? [] : reached.steps),
      ],
      lines,
    },
    lines,
  };
}

function changeRow(
  room: Room,
  { name }: WaterBody,
  change: Room['water']['changes'][number],
): WaterRow['changes'][number] {
  const { day, where, amount } = change;
  return {
    on: day,
    where,
    amount,
    share: shareOf(room, amount, where, name, day),
    missed: missedBy(room, name, change),
  };
}

function doseRow(given: Given, litres: WaterRow['litres']): WaterRow['doses'][number] {
  const { day, where, product, dose, treated, left, backOn } = given;
  const added = backOn === null ? addedBy(product, dose, litres) : null;
  return { on: day, where, product, dose, added, treated, left, backOn };
}

/** What is watched for a trend, and the change a week under which it is steady: what a kit or eye cannot tell (ours). */
const TRENDING = [
  ['ph', 0.1],
  ['kh', 0.5],
  ['gh', 0.5],
  ['no3', 0.5],
  ['conductivity', 10],
  ['temperature', 0.5],
] as const satisfies readonly (readonly [Parameter, number])[];

/** Rise or fall a week, where enough readings stand far enough apart. */
function trendOf(room: Room, facts: ReturnType<typeof readingsOf>, of: Parameter, least: number): TrendRow[] {
  const series = seriesOf(facts, of).filter(({ day }) => day > room.on - TREND_DAYS);
  const [first] = series;
  const last = series.at(-1);
  if (first === undefined || last === undefined) return [];
  if (series.length < TREND_READINGS || last.day - first.day < TREND_SPAN) return [];
  const line = robustLine(series.map(({ day, value }) => ({ x: day - first.day, y: middle(value) })));
  const { word, decimals } = PARAMETER_WORDS[of];
  const perWeek = (line?.slope ?? 0) * 7 * kitFactor(room, of);
  const way = perWeek > 0 ? 'rises' : 'falls';
  const words =
    Math.abs(perWeek) < least
      ? `${word} steady`
      : `${word} ${way} ${Math.abs(perWeek).toFixed(Math.max(1, decimals))} a week`;
  return [
    {
      of,
      words: `${words} (${series.length} readings since ${dayWords(first.day, room.on)})`,
      perWeek,
      readings: series.length,
    },
  ];
}

/** Rows for `why`. */
export function waterRows(room: Room): readonly WhyRow[] {
  return (water(room, { place: null, target: null }) ?? []).map(({ id, name, readings, because, lines }) => {
    const words = readings.length === 0 ? 'no reading on record' : listWords(readings.map((one) => one.words));
    return { id, title: `water of ${name}: ${words}`, because, lines };
  });
}
