/** Readings that ask for something: out of what the fish there are kept in, toxic ammonia, nitrite, nitrate, chlorine. */
import { addDays } from '../../core/day.ts';
import { onDay, type Interval } from '../../core/interval.ts';
import { dayWords, figureWords, listWords, plural } from '../../core/words.ts';
import { AMMONIA_MARKS } from '../../science/ammonia.ts';
import { bodiesIn, speciesOf } from '../../state/bodies.ts';
import { linesOf } from '../../core/span.ts';
import type { Room } from '../../state/draft.ts';
import { isOpenOn } from '../../state/rigs.ts';
import { sharers } from '../../state/tanks.ts';
import { wasHeatedBy } from '../../state/temperature.ts';
import { rowId } from '../id.ts';
import { changesAfter } from '../outdated.ts';
import {
  ammoniaOf,
  ammoniaSteps,
  ifIon,
  lastOf,
  PARAMETER_WORDS,
  readingsOf,
  readingWords,
  SAY_NITROGEN,
  seriesOf,
  type Ammonia,
  type LastReading,
  type Parameter,
} from '../readings.ts';
import { afterRaising } from '../raised.ts';
import { bodiesOfWater, type WaterBody } from '../waters.ts';
import { CAUTION } from './cautions.ts';
import type { DueItem } from './item.ts';
import { raisedRow } from './raised.ts';
import { TO_READ } from './toread.ts';

/** A reading older than this many days asks for nothing any more (ours: a setting). */
const READING_LASTS = 30;

/** mg/L (nitrogen as N) above which a row is made. */
const MARKS = {
  /** Any nitrite that a kit shows; from memory, kits begin at 0.05 to 0.1 as N (ours: a setting). */
  nitrite: 0.05,
  /** Long-term harm to sensitive fish above 10 mg/L as N (Camargo et al. 2005, Chemosphere 58:1255). */
  nitrate: 10,
  /** What a kit can show at all; about 0.3 mg/L kills (common practice, no source). */
  chlorine: 0.02,
} as const;

export function readingsDue(room: Room): readonly DueItem[] {
  return bodiesOfWater(room).flatMap((body) => {
    const facts = readingsOf(room, body, addDays(room.on, -READING_LASTS));
    if (facts.length === 0) return [];
    return [
      ...ammoniaRow(room, body, ammoniaOf(room, body, facts)),
      ...markRow(room, body, lastOf(facts, 'no2'), MARKS.nitrite, 2, 'harms at any level that a kit shows'),
      ...markRow(room, body, lastOf(facts, 'no3'), MARKS.nitrate, 1, 'harms sensitive fish in the long run'),
      ...markRow(room, body, lastOf(facts, 'chlorine'), MARKS.chlorine, 3, 'about 0.3 mg/L kills'),
      ...rangeRows(room, body, facts),
    ];
  });
}

interface Asked {
  readonly reading: LastReading;
  readonly weight: 1 | 2 | 3;
  readonly why: string;
  readonly close: string;
  readonly rule: string;
  readonly source: string;
  readonly steps: readonly string[];
  readonly caution: string;
}

/**
 * A row that asks for a change, or after a change for another test. Chlorine comes with the new water: more of that takes
 * none of it out, so that the water is conditioned first.
 */
function changeRow(room: Room, body: WaterBody, asked: Asked): DueItem {
  const { reading, weight } = asked;
  const { word } = PARAMETER_WORDS[reading.of];
  const isTap = reading.of === 'chlorine';
  const since = changesAfter(room, body, reading);
  const lines = linesOf([reading.place, ...since.map(({ place }) => place)]);
  const changed = since.length > 0;
  const asksChange = !changed && !isTap;
  const what = isTap ? 'condition the water now, then test again' : 'change water, then test again';
  return {
    id: rowId(body.name, word),
    place: body.name,
    what: changed && !isTap ? `test ${word} again` : what,
    kind: 'reading',
    due: onDay(reading.day),
    weight,
    why: `${asked.why}${changed ? `; ${plural(since.length, 'change')} since` : ''}`,
    close: `${body.name}: ${asksChange ? 'water change 30 %; ' : ''}test ${asked.close}`,
    caution: asked.caution,
    ...(asksChange ? { after: afterRaising(room, body.name).says } : {}),
    putOffKey: word,
    pressing: weight === 3,
    minutes: null,
    because: { rule: asked.rule, source: asked.source, steps: asked.steps, lines },
    lines,
  };
}

function ammoniaRow(room: Room, body: WaterBody, ammonia: Ammonia | null): DueItem[] {
  if (ammonia === null) return [];
  const { tan, toxic, missing } = ammonia;
  const certain = toxic.likely ?? toxic.low;
  const possible = toxic.high;
  if (tan.value.high <= 0) return [];
  if (possible < AMMONIA_MARKS.watch) return raisedRow(room, body, ammonia);
  const weight = certain >= AMMONIA_MARKS.harms ? 3 : certain >= AMMONIA_MARKS.watch ? 2 : 1;
  const without = missing.length === 0 ? '' : ` (${listWords([...missing])} not known)`;
  const read = `${readingWords(room, 'tan', tan.value)} on ${dayWords(tan.day, room.on)}`;
  // Toxic ammonia is a share of all of it: what the other way makes of that it makes of the share.
  const share = certain / (tan.value.likely ?? tan.value.low);
  const other = unsaid(room, 'tan', tan.value, AMMONIA_MARKS.watch, Number.isFinite(share) ? share : 1);
  const row = changeRow(room, body, {
    reading: tan,
    weight,
    why: `${read}: toxic ammonia ${figureWords(toxic, 3)} mg/L as N${without}${certain < AMMONIA_MARKS.watch ? '' : other.why}`,
    close: TO_READ.toxic,
    rule: 'toxic ammonia is the share of total ammonia that pH and temperature make of it; from 0.02 mg/L as N it may harm, from 0.05 it does',
    source: 'Emerson et al. 1975; marks from UF/IFAS FA-16, "Ammonia in Aquatic Systems"',
    steps: [...ammoniaSteps(room, ammonia), ...other.steps],
    caution: CAUTION.ammonia,
  });
  // Where only a missing pH or temperature makes it doubtful, the first thing is to read that.
  const unsure = missing.length > 0 && certain < AMMONIA_MARKS.watch;
  if (!unsure) return [row];
  const what = `test ${listWords([...missing])} with the ammonia`;
  // What is missing is read in a minute, and until then nobody can say that it does no harm.
  return [
    { ...row, what, weight: possible >= AMMONIA_MARKS.harms ? 2 : 1, close: `${body.name}: test ${TO_READ.toxic}` },
  ];
}

/** Where nobody said how the kit counts, what the other way would come to: told in the row where that decides. */
function unsaid(room: Room, of: Parameter, value: Interval, mark: number, times = 1): Unsaid {
  const ion = ifIon(room, of, value);
  if (ion === null) return { why: '', steps: [] };
  const { word, decimals } = PARAMETER_WORDS[of];
  const other = figureWords(ion, decimals);
  const under = (ion.likely ?? ion.low) * times <= mark;
  return {
    why: under
      ? `; counted as N since no line says how the kit does: as the ion it is under the mark (${SAY_NITROGEN})`
      : '',
    steps: [
      `no line says how the kit counts nitrogen, so as N, the harsher way; as the ion it is ${word} ${other} mg/L as N`,
    ],
  };
}

interface Unsaid {
  readonly why: string;
  readonly steps: readonly string[];
}

function markRow(
  room: Room,
  body: WaterBody,
  reading: LastReading | null,
  mark: number,
  weight: 1 | 2 | 3,
  so: string,
): DueItem[] {
  if (reading === null) return [];
  const { value, of } = reading;
  if ((value.likely ?? value.low) <= mark) return [];
  const read = `${readingWords(room, of, value)} on ${dayWords(reading.day, room.on)}`;
  const { word } = PARAMETER_WORDS[of];
  const other = unsaid(room, of, value, mark);
  return [
    changeRow(room, body, {
      reading,
      weight,
      why: `${read}: ${so}${other.why}`,
      close: `${word} …`,
      rule: `${word} above ${readingWords(room, of, { low: mark, likely: mark, high: mark })} asks for ${of === 'chlorine' ? 'a conditioner' : 'a change'}`,
      source: of === 'no3' ? 'Camargo et al. 2005, Chemosphere 58:1255' : 'common practice, no source',
      steps: [read, ...other.steps],
      caution: of === 'chlorine' ? CAUTION.chlorine : CAUTION.tap,
    }),
  ];
}

type Kept = 'temperature' | 'ph' | 'gh';
const KEPT: readonly Kept[] = ['temperature', 'ph', 'gh'];

/** Readings outside the water that the species there are declared to be kept in. */
function rangeRows(room: Room, body: WaterBody, facts: ReturnType<typeof readingsOf>): DueItem[] {
  return KEPT.flatMap((of) => {
    const series = seriesOf(facts, of);
    // One tank of a loop may be warmer than the next; the rest of the water is one.
    const places = of === 'temperature' ? [...new Set(series.map(({ where }) => where))] : [body.name];
    return places.flatMap((where) => {
      const last = of === 'temperature' ? series.findLast((one) => one.where === where) : series.at(-1);
      const tanks = where === body.name ? body.tanks : [where];
      return last === undefined ? [] : rangeRow(room, where, tanks, of, last);
    });
  });
}

/** How far above the warmth that a heater was set to a reading may lie, degrees: thermometers and thermostats err (ours). */
const NEARLY = 1;

/** What its keeper heated it to was not too warm, nor asks it for anything once the heat is back to normal. */
function isMeant(room: Room, where: string, reading: LastReading): boolean {
  if (reading.of !== 'temperature') return false;
  const raised = room.measures.raised.findLast(
    (rig) => wasHeatedBy(room, rig, reading) || (isOpenOn(rig, room.on) && sharers(room, rig.where).includes(where)),
  );
  return raised?.to !== undefined && (raised.to === null || reading.value.low <= raised.to.high + NEARLY);
}

function rangeRow(room: Room, where: string, tanks: readonly string[], of: Kept, reading: LastReading): DueItem[] {
  const outside = speciesIn(room, tanks).filter(({ traits }) => {
    const kept = traits[of];
    return kept !== null && (reading.value.high < kept.low || reading.value.low > kept.high);
  });
  const [first] = outside;
  const kept = first?.traits[of] ?? null;
  if (first === undefined || kept === null) return [];
  const { word, decimals } = PARAMETER_WORDS[of];
  const high = reading.value.low > kept.high;
  if (high && isMeant(room, where, reading)) return [];
  const read = `${readingWords(room, of, reading.value)} on ${dayWords(reading.day, room.on)}`;
  const names = listWords(outside.map(({ name }) => name));
  const range = `${figureWords(kept, decimals)}${of === 'temperature' ? ' C' : ''}`;
  const lines = linesOf([reading.place, ...outside.flatMap(({ said }) => said[of] ?? [])]);
  return [
    {
      id: rowId(where, word),
      place: where,
      what:
        of === 'temperature'
          ? `${high ? 'cool' : 'warm'} it slowly and read again`
          : `bring ${word} ${high ? 'down' : 'up'} slowly`,
      kind: 'reading',
      due: onDay(reading.day),
      weight: gap(reading.value, kept) > (of === 'temperature' ? 3 : 1) ? 2 : 1,
      why: `${read}; ${names} kept at ${range}`,
      close: `${where}: test ${TO_READ[of]}`,
      ...(of === 'ph' && !high ? { caution: CAUTION.ammonia, after: afterRaising(room, where, 'dose').says } : {}),
      putOffKey: word,
      pressing: false,
      minutes: null,
      because: {
        rule: 'a reading wholly outside the water that a species is declared to be kept in is told, until one inside it',
        source: 'the journal: the line of the species that says it',
        steps: [read, ...outside.map(({ name, traits }) => `${name}: ${figureWords(traits[of] ?? kept, decimals)}`)],
        lines,
      },
      lines,
    },
  ];
}

function gap(value: Interval, kept: Interval): number {
  return Math.max(kept.low - value.high, value.low - kept.high);
}

type SeenSpecies = NonNullable<ReturnType<typeof speciesOf>>;

function speciesIn(room: Room, tanks: readonly string[]): SeenSpecies[] {
  const found = new Map<string, SeenSpecies>();
  for (const tank of tanks) {
    for (const body of bodiesIn(room, tank)) {
      const species = speciesOf(room, body);
      if (species !== null) found.set(species.name, species);
    }
  }
  return [...found.values()];
}
