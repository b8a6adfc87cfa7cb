/** Which picture a keeper's words ask for: the kind, the name and, for water, the reading, in any order. */
import { addDays, type Day } from '../../core/day.ts';
import { nearest } from '../../core/suggest.ts';
import { bodyNamed, isBrood } from '../../state/bodies.ts';
import type { Room } from '../../state/draft.ts';
import { rowId } from '../id.ts';
import { PARAMETERS } from '../../state/parameters.ts';
import { PARAMETER_WORDS, readingsOf, seriesOf, type Parameter } from '../readings.ts';
import { AIMS } from '../target.ts';
import { bodiesOfWater, bodyOfWater } from '../waters.ts';
import { growthChart } from './growth.ts';
import { levelChart } from './level.ts';
import type { Chart } from './model.ts';
import { survivalChart } from './survival.ts';
import { waterChart } from './water.ts';

const KINDS = ['growth', 'level', 'survival', 'water'] as const;
type Kind = (typeof KINDS)[number];

type Charted =
  { readonly ok: true; readonly chart: Chart } | { readonly ok: false; readonly says: string; readonly write: string };

/** Words that say nothing here: `chart growth of Rowan-1`, `tank 12`. */
const FILLERS = new Set(['of', 'for', 'in', 'tank', 'loop', 'chart']);

/** The picture that the words ask for, from the day `since` on (null: as far back as is usual). */
export function chartOf(room: Room, words: readonly string[], since: Day | null = null): Charted {
  const asked = words.flatMap((word) => word.split(/\s+/)).filter((word) => word !== '');
  if (asked.length === 0) return no('chart needs a kind and a name', example(room));
  const kinds = asked.flatMap((word) => KINDS.filter((kind) => kind === word.toLowerCase()));
  const parameters = asked.flatMap((word) => parameterOf(word) ?? []);
  const rest = asked.filter((word) => !isKind(word) && parameterOf(word) === null && !FILLERS.has(word.toLowerCase()));
  const [word, ...more] = rest;
  if (kinds.length > 1 || parameters.length > 1 || more.length > 0) {
    return unread(room, asked, rest, kinds[0]);
  }
  if (word === undefined)
    return no('a chart needs a name: a brood, a group, a loop or a tank', example(room, kinds[0]));
  const name = namesOf(room).find((one) => one.toLowerCase() === word.toLowerCase());
  if (name === undefined) return unread(room, asked, rest, kinds[0]);
  const kind = kinds[0] ?? usualKind(room, name, parameters[0]);
  return drawn(room, kind, name, parameters[0] ?? null, since);
}

/** The chart of an id that an answer showed, for `why`; null where it is none. */
export function chartNamed(room: Room, words: readonly string[]): Chart | null {
  const id = rowId(...words);
  const [, kind] = /^chart-(growth|level|survival|water)-/.exec(id) ?? [];
  if (kind === undefined) return null;
  const rest = id.slice(`chart-${kind}-`.length);
  for (const name of namesOf(room)) {
    const slug = rowId(name);
    if (rest !== slug && !(kind === 'water' && rest.startsWith(`${slug}-`))) continue;
    const charted = chartOf(room, [kind, name, rest.slice(slug.length + 1)]);
    if (charted.ok && charted.chart.id === id) return charted.chart;
  }
  return null;
}

function drawn(room: Room, kind: Kind, name: string, of: Parameter | null, since: Day | null): Charted {
  switch (kind) {
    case 'growth': {
      const body = bodyNamed(room, name);
      if (body === null) return wrongKind(room, kind, name);
      const chart = growthChart(room, body, since);
      return yes(chart, `${name}: no length on record and no day of swimming to reckon from`, `${name}: size 22-26 mm`);
    }
    case 'survival': {
      const body = bodyNamed(room, name);
      if (body === null || !isBrood(body)) return wrongKind(room, kind, name);
      return yes(survivalChart(room, body), `${name}: never counted`, `${name}: counted 43`);
    }
    case 'level': {
      const loop = room.plumbing.loops.get(name);
      if (loop === undefined) return wrongKind(room, kind, name);
      const chart = levelChart(room, loop, since);
      return yes(chart, `${name}: no level read in that time`, `${name}: level 40 mm`);
    }
    case 'water':
      return waterDrawn(room, name, of, since);
  }
}

function waterDrawn(room: Room, name: string, of: Parameter | null, since: Day | null): Charted {
  const body = bodyOfWater(room, name);
  if (body === null) return wrongKind(room, 'water', name);
  if (of !== null) {
    const chart = waterChart(room, body, of, since);
    const { word } = PARAMETER_WORDS[of];
    const test = of === 'temperature' ? '25.5 C' : `${word} 7`;
    return yes(chart, `${body.name}: no ${word} read in that time`, `${body.name}: test ${test}`);
  }
  const facts = readingsOf(room, body, since ?? addDays(room.on, -365));
  const read = PARAMETERS.filter((one) => seriesOf(facts, one).length > 0);
  const [first] = read;
  const [only] = read.length === 1 ? read : [];
  if (first === undefined) return no(`${body.name}: no reading in that time`, `${body.name}: test pH 7.4, NO3 20`);
  if (only !== undefined) return waterDrawn(room, name, only, since);
  const words = read.map((one) => PARAMETER_WORDS[one].word);
  return no(
    `which reading of ${body.name}? there is ${words.join(', ')}`,
    `tankside chart water ${name} ${PARAMETER_WORDS[first].word}`,
  );
}

function yes(chart: Chart | null, says: string, jot: string): Charted {
  return chart === null ? no(says, `tankside jot ${jot}`) : { ok: true, chart };
}

function no(says: string, write: string): Charted {
  return { ok: false, says, write };
}

function isKind(word: string): boolean {
  return KINDS.some((kind) => kind === word.toLowerCase());
}

function parameterOf(word: string): Parameter | null {
  const low = word.toLowerCase();
  const found = PARAMETERS.find((one) => one === low || PARAMETER_WORDS[one].word.toLowerCase() === low);
  return found ?? AIMS[low] ?? null;
}

function namesOf(room: Room): string[] {
  return [
    ...room.stock.broods.keys(),
    ...room.stock.groups.keys(),
    ...room.plumbing.loops.keys(),
    ...room.plumbing.tanks.keys(),
  ];
}

function usualKind(room: Room, name: string, of: Parameter | undefined): Kind {
  if (of !== undefined || room.plumbing.tanks.has(name)) return 'water';
  return room.plumbing.loops.has(name) ? 'level' : 'growth';
}

/** Names that a kind of picture can be drawn of; young first that are there now. */
function fitting(room: Room, kind: Kind): string[] {
  switch (kind) {
    case 'growth':
      return [...room.stock.living.keys(), ...room.stock.broods.keys(), ...room.stock.groups.keys()];
    case 'survival':
      return [...room.stock.living.keys(), ...room.stock.broods.keys()];
    case 'level':
      return [...room.plumbing.loops.keys()];
    case 'water':
      return bodiesOfWater(room).map((body) => body.name);
  }
}

function wrongKind(room: Room, kind: Kind, name: string): Charted {
  const drawnOf: Readonly<Record<Kind, string>> = {
    growth: 'a brood or a group of fish',
    survival: 'a brood',
    level: 'a loop',
    water: 'a loop or a tank in use',
  };
  const [first = 'NAME'] = [...nearest(name, fitting(room, kind), 1), ...fitting(room, kind)];
  return no(`${kind} is drawn of ${drawnOf[kind]}, and ${name} is none`, `tankside chart ${kind} ${first}`);
}

/** A word that is neither a kind, a reading nor a name. */
function unread(room: Room, asked: readonly string[], rest: readonly string[], kind: Kind | undefined): Charted {
  const names = namesOf(room);
  const strange = rest.find((word) => !names.some((name) => name.toLowerCase() === word.toLowerCase()));
  if (strange === undefined) return no('a chart is of one kind, one name and, for water, one reading', example(room));
  const [near] = nearest(strange, [...names, ...KINDS, ...PARAMETERS.map((one) => PARAMETER_WORDS[one].word)], 1);
  const mended = asked.map((word) => (word === strange ? (near ?? '') : word)).filter((word) => word !== '');
  return no(
    `«${strange}» is no name, no kind of chart and no reading here`,
    near === undefined ? example(room, kind) : `tankside chart ${mended.join(' ')}`,
  );
}

function example(room: Room, kind?: Kind): string {
  const tried: readonly Kind[] = kind === undefined ? ['growth', 'level', 'water'] : [kind];
  for (const one of tried) {
    const [name] = fitting(room, one);
    if (name !== undefined) return `tankside chart ${one} ${name}`;
  }
  return 'tankside start';
}
