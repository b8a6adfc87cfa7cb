/** The picture of one reading of a water: what was read, the water changes, and the range that the fish there are kept in. */
import { addDays, type Day } from '../../core/day.ts';
import { times, type Interval, middle } from '../../core/interval.ts';
import { linesOf } from '../../core/span.ts';
import { dayWords, listWords } from '../../core/words.ts';
import type { SpeciesTraits } from '../../journal/event.ts';
import { bodiesIn, speciesOf } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { rowId } from '../id.ts';
import {
  kitFactor,
  kitUnit,
  PARAMETER_WORDS,
  readingsOf,
  readingWords,
  seriesOf,
  type Parameter,
} from '../readings.ts';
import type { WaterBody } from '../waters.ts';
import type { Chart } from './model.ts';

/** Days shown back unless told otherwise. */
const BACK = 180;
/** Nothing is at none of these. */
const UNANCHORED: ReadonlySet<Parameter> = new Set(['temperature', 'ph', 'conductivity'] as const);

/** Null where the journal has no such reading of that water in the time. */
export function waterChart(room: Room, body: WaterBody, of: Parameter, since: Day | null): Chart | null {
  const from = since ?? addDays(room.on, -BACK);
  const series = seriesOf(readingsOf(room, body, from), of);
  const last = series.at(-1);
  if (last === undefined) return null;
  const factor = kitFactor(room, of);
  const changes = room.water.changes.filter(
    ({ day, where, tanks }) =>
      day >= from && (where === body.name || body.tanks.some((tank) => where === tank || tanks.includes(tank))),
  );
  const { word } = PARAMETER_WORDS[of];
  const unit = kitUnit(room, of);
  const kept = keptAt(room, body, of);
  const lines = linesOf([...series, ...changes].map(({ place }) => place));
  return {
    id: rowId('chart water', body.name, word),
    title: `${word} of ${body.name}`,
    up: unit === '' ? word : `${word}, ${unit}`,
    fromZero: !UNANCHORED.has(of),
    series: [
      {
        kind: 'readings',
        name: `${word} read`,
        points: series.map(({ day, value }) => {
          const { low, high } = times(value, factor);
          return { day, value: middle(value) * factor, low, high };
        }),
      },
    ],
    marks: kept.marks,
    moments: changes.length === 0 ? [] : [{ name: 'water changed', days: [...new Set(changes.map(({ day }) => day))] }],
    on: room.on,
    basis: [
      `last ${readingWords(room, of, last.value)} on ${dayWords(last.day, room.on)}`,
      ...(kept.says === null ? [] : [kept.says]),
    ],
    because: {
      rule: 'every reading of that water stands as it was written, in the units of your kit; nothing is drawn between them',
      source: kept.says === null ? 'the journal' : 'the journal: readings, and the water set for the species',
      steps: [
        ...series.map(
          ({ day, value, where }) => `${dayWords(day, room.on)}, ${where}: ${readingWords(room, of, value)}`,
        ),
        ...(kept.says === null ? [] : [kept.says]),
      ],
      lines,
    },
    lines,
  };
}

const KEPT = { temperature: 'temperature', ph: 'ph', gh: 'gh' } as const satisfies Partial<
  Record<Parameter, keyof SpeciesTraits>
>;

function keptAt(room: Room, body: WaterBody, of: Parameter): { marks: Chart['marks']; says: string | null } {
  if (of !== 'temperature' && of !== 'ph' && of !== 'gh') return { marks: [], says: null };
  const ranges = new Map<string, Interval>();
  for (const tank of body.tanks) {
    for (const fish of bodiesIn(room, tank)) {
      const species = speciesOf(room, fish);
      const range = species?.traits[KEPT[of]] ?? null;
      if (species !== null && range !== null) ranges.set(species.name, range);
    }
  }
  const all = [...ranges];
  if (all.length === 0) return { marks: [], says: null };
  // Where several kinds share a water, what suits all of them: the highest low end, the lowest high end.
  const least = Math.max(...all.map(([, { low }]) => low));
  const most = Math.min(...all.map(([, { high }]) => high));
  const names = listWords(all.map(([name]) => name));
  if (least > most) return { marks: [], says: `no range suits all of ${names}` };
  return {
    marks: [
      { name: 'not under', value: least },
      { name: 'not over', value: most },
    ],
    says: `kept at ${least} to ${most}: ${names}`,
  };
}
