/**
 * The README's screens, each a command run on the workshop example, and the keys of every JSON answer as it
 * gives them: both are written into the page by `npm run readme`.
 */
import { readFileSync } from 'node:fs';
import { tankside } from './run.ts';
import type { Ran } from './run.ts';

const JOURNAL = '/room/fishroom.txt';
const START = '<!-- screens -->';
const END = '<!-- end of screens -->';
const JSON_START = '<!-- keys -->';
const JSON_END = '<!-- end of keys -->';

/** One screen each of the answers that a keeper asks most. Lines beyond `most` are cut with a dotted line. */
const SCREENS: readonly { readonly says: string; readonly argv: readonly string[]; readonly most: number }[] = [
  { says: 'What must I do today?', argv: ['due'], most: 34 },
  { says: 'When will the sump spill?', argv: ['loops'], most: 20 },
  { says: 'Is she in trouble, or is it the usual?', argv: ['pairs', 'Aspen'], most: 24 },
  { says: 'How do the broods stand?', argv: ['broods'], most: 24 },
  { says: 'What can I bring to the auction?', argv: ['sale', '--for', 'Winter'], most: 22 },
  { says: 'Which bags are worth the most, within its rules?', argv: ['sale', '--for', 'Winter', '--plan'], most: 22 },
  { says: 'Which pair earns its tank?', argv: ['money'], most: 14 },
  { says: 'Whom could I pair?', argv: ['kin'], most: 22 },
  { says: 'Why do you say so?', argv: ['why', 'n1-dispute'], most: 30 },
];

export const ON = '2026-11-22';

/** Commands whose answers are shown key by key. `calc` and `jot` ask no question of the journal. */
const ANSWERS: readonly (readonly string[])[] = [
  ['due'],
  ['walk'],
  ['broods'],
  ['pairs'],
  ['sale'],
  ['sale', '--for', 'Winter', '--plan'],
  ['promises'],
  ['loops'],
  ['tanks'],
  ['water'],
  ['holds'],
  ['cultures'],
  ['kin'],
  ['money'],
  ['awards'],
  ['history', 'Aspen'],
  ['chart', 'level', 'North'],
  ['why', 'n1-dispute'],
  ['check'],
  ['calc', 'ammonia', '--tan', '0.5mg/L', '--ph', '8.2', '--temp', '26C'],
];

/** The page with its screens and its keys made anew. */
export async function withScreens(page: string): Promise<string> {
  return between(between(page, START, END, await screensText()), JSON_START, JSON_END, await keysText());
}

/** The page with another text between two marks. */
function between(page: string, start: string, end: string, text: string): string {
  const from = page.indexOf(start);
  const to = page.includes(end) ? page.indexOf(end) + end.length : from + start.length;
  return `${page.slice(0, from)}${start}\n\n${text}\n${end}${page.slice(to)}`;
}

function ask(argv: readonly string[]): Promise<Ran> {
  return tankside(argv[0] === 'calc' ? argv : [...argv, '--on', ON], {
    today: ON,
    files: { [JOURNAL]: readFileSync('examples/workshop/fishroom.txt', 'utf8') },
    columns: 80,
    env: { NO_COLOR: '1' },
  });
}

async function keysText(): Promise<string> {
  const rows: string[] = [];
  for (const argv of ANSWERS) {
    const answer: unknown = JSON.parse((await ask([...argv, '--json'])).out);
    rows.push(`- \`${argv.join(' ')}\`: ${keysOf([answer], 2)}\n`);
  }
  return rows.join('');
}

/** `version, items[id, place, …]`: the keys of objects alike, and of what they hold, so many levels down. */
function keysOf(those: readonly unknown[], depth: number): string {
  const keys = new Map<string, unknown[]>();
  for (const one of those.filter(isObject)) {
    for (const [key, value] of Object.entries(one)) keys.set(key, [...(keys.get(key) ?? []), value]);
  }
  return [...keys].map(([key, values]) => `${key}${heldBy(values, depth)}`).join(', ');
}

function heldBy(values: readonly unknown[], depth: number): string {
  const list = values.some(Array.isArray);
  const held = list ? values.flat().filter(isObject) : values.filter(isObject);
  if (depth < 2 && !list) return '';
  const keys = depth === 0 ? '' : keysOf(held, depth - 1);
  if (list) return keys === '' ? '[]' : `[${keys}]`;
  return keys === '' || keys.startsWith('low') ? '' : ` {${keys}}`;
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

async function screensText(): Promise<string> {
  const screens: string[] = [];
  for (const { says, argv, most } of SCREENS) {
    const ran = await ask(argv);
    const lines = ran.out.trimEnd().split('\n');
    const shown = lines.length > most ? [...lines.slice(0, most), '…'] : lines;
    screens.push(`**${says}**\n\n\`\`\`text\n$ tankside ${argv.join(' ')}\n${shown.join('\n')}\n\`\`\`\n`);
  }
  return screens.join('\n');
}
