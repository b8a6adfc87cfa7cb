/** The tanks in the order in which a power cut hurts them, as text and as JSON. */
import type { CutAnswer, CutRow } from '../questions/powercut.ts';
import { countJson, linesJson } from './json.ts';
import type { Look } from './look.ts';
import { table } from './table.ts';
import { heading, listWords, rangeWords } from './words.ts';
import { paragraph } from './wrap.ts';

const COLUMNS = [
  { head: 'first' },
  { head: 'tank' },
  { head: 'fish g/L' },
  { head: 'surface cm²/L' },
  { head: 'air' },
  { head: 'C' },
  { head: 'cools', wraps: true },
];

const CAUTION =
  'take care: battery air first to the top of the list; feed nothing; a generator never indoors; on a wet floor stay clear of plugs';

export function cutText({ rows, empty, air, noCooling }: CutAnswer, look: Look): string {
  const [worst] = rows;
  const first = worst === undefined ? 'no fish on record' : `in a power cut ${worst.name} goes first`;
  const body = table(
    look,
    COLUMNS,
    rows.map((row, index) => ({ cells: [String(index + 1), ...cells(row)] })),
  );
  const rest = [
    noCooling ?? `cooling in air of ${rangeWords(air)} C (say yours with --air)`,
    ...(empty.length === 0 ? [] : [`no fish on record: ${listWords([...empty])}`]),
    ...(rows.length === 0 ? [] : [CAUTION]),
  ];
  return `${[
    paragraph(`${heading(look)}: ${first}`, look.width, 2),
    body.trimEnd(),
    rest.map((line) => paragraph(line, look.width, 2)).join('\n'),
  ]
    .filter((part) => part !== '')
    .join('\n\n')}\n`;
}

function cells({ name, gramsPerLitre, surface, air, celsius, cools }: CutRow): string[] {
  return [
    name,
    gramsPerLitre === null ? 'not known' : (gramsPerLitre.likely ?? gramsPerLitre.high).toFixed(2),
    surface === null ? 'not known' : surface.toFixed(0),
    air,
    celsius === null ? 'not known' : String(Math.round(celsius * 10) / 10),
    cools === null ? 'not known' : `${cools.least} C in ${rangeWords(cools.hours)} h`,
  ];
}

export function cutJson({ rows, empty, air, noCooling }: CutAnswer): object {
  return {
    cut: rows.map(({ id, name, gramsPerLitre, litres, surface, air: line, celsius, cools, lines }) => ({
      id,
      name,
      gramsPerLitre: countJson(gramsPerLitre),
      litres: countJson(litres),
      surface,
      air: line,
      celsius,
      cools: cools === null ? null : { to: cools.least, hours: countJson(cools.hours), from: cools.from },
      lines: linesJson(lines),
    })),
    empty,
    air: countJson(air),
    ...(noCooling === null ? {} : { noCooling }),
  };
}
