/** The live foods as text and as JSON. */
import type { CulturesAnswer, FoodRow, HatchRow, JarRow, NeedRow } from '../questions/cultures.ts';
import { countJson, dayJson, linesJson, windowJson } from './json.ts';
import type { Look } from './look.ts';
import { table, type Row } from './table.ts';
import { dayText, heading, listWords, plural, rangeWords, windowText } from './words.ts';
import { paragraph } from './wrap.ts';

const COLUMNS = [
  { head: 'jar' },
  { head: 'of' },
  { head: 'state' },
  { head: 'age' },
  { head: 'last harvest' },
  { head: 'sour by' },
];

export function culturesText(answer: CulturesAnswer, look: Look): string {
  const [first = '', ...more] = paragraph(`${heading(look)}: ${matters(answer, look)}`, look.width, 2).split('\n');
  const rows = answer.foods.flatMap((food) => food.jars.map((jar) => jarRow(jar, look)));
  const blocks = [
    [look.paint.strong(first), ...more].join('\n'),
    table(look, COLUMNS, rows).trimEnd(),
    [
      ...[
        ...answer.foods.flatMap((food) => restartWords(food, look)),
        ...answer.hatches.map((hatch) => hatchWords(hatch, look)),
        ...answer.needs.map((need) => needWords(need, look)),
      ].map((line) => paragraph(line, look.width, 2)),
      ...startLine(answer, look),
    ].join('\n'),
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

/** Days before young swim at which it is an alarm that nothing is there for them. */
const ALARM_DAYS = 4;

function matters({ foods, hatches, needs }: CulturesAnswer, look: Look): string {
  const hungry = needs.find(({ swims, covered }) => covered === null && (swims.low ?? look.on) - look.on <= ALARM_DAYS);
  if (hungry) return needWords(hungry, look);
  if (foods.length === 0 && hatches.length === 0) return 'no culture in the journal yet';
  const gone = foods.find((food) => food.live === 0);
  if (gone) return `no jar of ${gone.of} is alive`;
  const next = foods
    .filter(({ restart }) => restart !== null)
    .toSorted((a, b) => (a.restart ?? 0) - (b.restart ?? 0))[0];
  const live = foods.reduce((sum, food) => sum + food.live, 0);
  const told = `${plural(live, 'live jar')}${hatches.length === 0 ? '' : `, ${plural(hatches.length, 'hatch', 'hatches')} under way`}`;
  return next === undefined || next.restart === null
    ? told
    : `${told}; next ${next.of} jar ${whenWords(next.restart, look)}`;
}

function jarRow(jar: JarRow, look: Look): Row {
  const brush = jar.state === 'not started' ? look.paint.quiet : look.paint.late;
  return {
    cells: [
      jar.name,
      jar.of,
      (jar.state === 'live' && !isPast(jar, look)) || jar.state === 'young'
        ? stateWords(jar, look)
        : { text: stateWords(jar, look), paint: brush },
      jar.ageDays === null ? '' : plural(jar.ageDays, 'day'),
      jar.lastHarvest === null ? '' : dayText(jar.lastHarvest, look),
      jar.sourBy === null ? '' : dayText(jar.sourBy, look),
    ],
  };
}

/** Past the day by which it is likely sour, whatever its last harvest shows. */
function isPast({ sourBy }: JarRow, look: Look): boolean {
  return sourBy !== null && look.on >= sourBy;
}

function stateWords(jar: JarRow, look: Look): string {
  const { state, harvestFrom } = jar;
  if (state === 'old') return 'likely sour: smell it';
  if (state === 'live' && isPast(jar, look)) return 'gives still: smell it';
  return state === 'young' && harvestFrom !== null ? `harvest from ${dayText(harvestFrom, look)}` : state;
}

function restartWords({ of, restart, live }: FoodRow, look: Look): string[] {
  if (live === 0) return [`${of}: no jar is alive: start one anew`];
  if (restart === null) return [];
  return [`${of}: start the next jar ${whenWords(restart, look)}; ${plural(live, 'jar')} alive`];
}

/** The line for the first food of which nothing lives. */
function startLine({ foods }: CulturesAnswer, look: Look): readonly string[] {
  const [jar] = foods.find(({ live }) => live === 0)?.jars ?? [];
  return jar === undefined ? [] : [look.paint.quiet(`jot  ${jar.name}: started`)];
}

function whenWords(day: Parameters<typeof dayText>[0], look: Look): string {
  return day <= look.on ? `now, due ${dayText(day, look)}` : `on ${dayText(day, look)}`;
}

function hatchWords({ where, of, grams, set, ready }: HatchRow, look: Look): string {
  const much = grams === null ? '' : `${rangeWords(grams)} g `;
  return `hatch: ${much}${of} for ${where}, set ${dayText(set, look)}, to feed ${windowText(ready, look)}`;
}

function needWords({ brood, tanks, swims, foods, setHatch, covered }: NeedRow, look: Look): string {
  const who = `${brood} in ${listWords(tanks)} swims ${windowText(swims, look)}`;
  if (covered !== null) return `${who}: ${covered}`;
  const low = setHatch?.low ?? look.on;
  const set =
    setHatch === null
      ? `have ${listWords(foods)} ready`
      : `set brine shrimp ${low <= look.on ? 'now' : windowText(setHatch, look)}`;
  return `${who}: nothing for them yet; ${set}`;
}

export function culturesJson(answer: CulturesAnswer): object {
  return {
    foods: answer.foods.map((food) => ({
      id: food.id,
      of: food.of,
      live: food.live,
      restart: dayJson(food.restart),
      jars: food.jars.map(({ id, name, state, started, ageDays, harvestFrom, lastHarvest, sourBy, lines }) => ({
        id,
        name,
        state,
        started: dayJson(started),
        ageDays,
        harvestFrom: dayJson(harvestFrom),
        lastHarvest: dayJson(lastHarvest),
        sourBy: dayJson(sourBy),
        lines: linesJson(lines),
      })),
      lines: linesJson(food.lines),
    })),
    needs: answer.needs.map(({ id, brood, tanks, swims, foods, setHatch, covered, lines }) => ({
      id,
      brood,
      tanks,
      swims: windowJson(swims),
      foods,
      setHatch: windowJson(setHatch),
      covered,
      lines: linesJson(lines),
    })),
    hatches: answer.hatches.map(({ id, where, of, grams, set, ready, lines }) => ({
      id,
      where,
      of,
      grams: countJson(grams),
      set: dayJson(set),
      ready: windowJson(ready),
      lines: linesJson(lines),
    })),
  };
}
