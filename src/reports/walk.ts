/** The walk through the room: on the screen, on paper with room to write, and as JSON. */
import type { WalkAnswer, WalkFish, WalkTank } from '../questions/walk.ts';
import { countJson, dayJson, linesJson } from './json.ts';
import type { Look } from './look.ts';
import type { Words } from './table.ts';
import { table } from './table.ts';
import { countWords, dayText, heading, listWords, plural } from './words.ts';
import { paragraph } from './wrap.ts';

/** Lines to write on below each tank. */
const RULED = 2;

export function walkText(answer: WalkAnswer, look: Look): string {
  const first = paragraph(`${heading(look)}: ${matters(answer)}`, look.width, 2);
  const [top = '', ...more] = first.split('\n');
  const rows = [
    ...answer.tanks.map((tank) => ({ cells: [tank.tank, tankLines(tank, look)] })),
    ...answer.elsewhere.map(({ place, what }) => ({ cells: [place, `today: ${what}`] })),
  ];
  const drawn = table(look, [{ head: '' }, { head: '', wraps: true }], rows);
  const care = answer.tanks.some(({ last }) => last !== null)
    ? [
        paragraph(
          'take care: sick, held and quarantine tanks last, with their own net; wash hands, gloves over broken skin',
          look.width,
          2,
        ),
      ]
    : [];
  const blocks = [[look.paint.strong(top), ...more].join('\n'), drawn.trimEnd(), ...care];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

function matters({ tanks, elsewhere }: WalkAnswer): string {
  if (tanks.length === 0) return 'no tank in the journal yet';
  const busy = tanks.filter(({ look }) => look.length > 0).map(({ tank }) => tank);
  const urgent = tanks.filter(({ look }) => look.some(({ weight }) => weight === 3)).map(({ tank }) => tank);
  const tours = plural(tanks.length, 'tank');
  if (urgent.length > 0) return `${tours}; go to ${listWords(urgent)} first`;
  if (busy.length === 0) return `${tours}, nothing to look at but the fish`;
  const also = elsewhere.length === 0 ? '' : `, and ${plural(elsewhere.length, 'thing')} elsewhere`;
  return `${tours}, something to do at ${listWords(busy)}${also}`;
}

function tankLines(tank: WalkTank, look: Look): Words[] {
  const lines: Words[] = tank.fish.map(fishWords);
  if (lines.length === 0) lines.push({ text: 'empty', paint: look.paint.quiet });
  if (tank.last !== null) lines.push({ text: `last: ${tank.last}`, paint: look.paint.today });
  if (tank.retired !== null) lines.push({ text: retiredText(tank.retired, look), paint: look.paint.today });
  if (tank.rigged.length > 0) lines.push(`rigged: ${tank.rigged.join('; ')}`);
  for (const { what, weight } of tank.look) {
    lines.push({ text: `today: ${what}`, paint: weight === 3 ? look.paint.urgent : look.paint.today });
  }
  return lines;
}

/** What to jot stands with the day of retiring: no later line about the tank would be read. */
function retiredText({ since, jot }: NonNullable<WalkTank['retired']>, look: Look): string {
  return `retired ${dayText(since, look)}; jot ${jot}`;
}

/** `Rowan, krib pair, in a dispute`; `Rowan-1, free-swimming, 13 days, about 70 (35–140)`. */
function fishWords({ name, what, count, plain, doing }: WalkFish): string {
  return [name, what, ...(plain ? [] : [countWords(count)]), ...(doing === null ? [] : [doing])].join(', ');
}

/** However long the name of a tank, beside it is room to write something. */
const LEAST_BESIDE = 12;

/** Plain text for a printer: no colour, every tank with lines to write on. */
export function walkPaper(answer: WalkAnswer, look: Look): string {
  const width = Math.min(look.width, 80);
  const margin = answer.tanks.reduce((most, { tank }) => Math.max(most, tank.length), 3) + 2;
  const beside = Math.max(LEAST_BESIDE, width - margin);
  const rule = ' '.repeat(margin) + '_'.repeat(beside);
  const blocks = answer.tanks.map((tank) => {
    const told = [
      ...(tank.fish.length === 0 ? ['empty'] : tank.fish.map(fishWords)),
      ...(tank.last === null ? [] : [`last: ${tank.last}, own net`]),
      ...(tank.retired === null ? [] : [retiredText(tank.retired, { ...look, machine: false })]),
      ...(tank.rigged.length === 0 ? [] : [`rigged: ${tank.rigged.join('; ')}`]),
      ...tank.look.map(({ what }) => `today: ${what}`),
    ];
    const lines = told.flatMap((text) => paragraph(text, beside, 2).split('\n'));
    const set = lines.map((line, index) => (index === 0 ? tank.tank : '').padEnd(margin) + line);
    return [...set, ...Array.from({ length: RULED }, () => `\n${rule}`)].join('\n');
  });
  const others = answer.elsewhere.map(({ place, what }) => paragraph(`${place}: ${what}`, width, 2));
  const last = [others.join('\n'), `fed, and anything else\n\n${rule}\n\n${rule}`].filter((text) => text !== '');
  return `${[`walk of ${heading({ ...look, machine: false })}`, ...blocks, ...last].join('\n\n')}\n`;
}

export function walkJson({ tanks, elsewhere }: WalkAnswer): object {
  return {
    tanks: tanks.map((tank) => ({
      id: tank.id,
      tank: tank.tank,
      last: tank.last,
      retired: dayJson(tank.retired?.since ?? null),
      fish: tank.fish.map(({ name, what, count, doing }) => ({ name, what, count: countJson(count), doing })),
      rigged: tank.rigged,
      look: tank.look.map(({ id, what, why, state }) => ({ id, what, why, state })),
      lines: linesJson(tank.lines),
    })),
    elsewhere: elsewhere.map(({ id, place, what, why, state }) => ({ id, place, what, why, state })),
  };
}
