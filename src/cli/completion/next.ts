/** What may come next on a command line, from the words before it. */
import { CALCULATORS } from '../../questions/calc/table.ts';
import { THEMES } from '../../questions/history/themes.ts';
import type { Command } from '../command.ts';
import type { Flag } from '../flags.ts';
import { COMMON } from '../flags.ts';
import type { Entry } from '../registry.ts';
import type { NameKind } from './names.ts';
import { EVERY_KIND } from './names.ts';

/** Words that may come next, and kinds of names that may. */
export interface Next {
  readonly words: readonly string[];
  readonly names: readonly NameKind[];
  /** What was given to options by then, by spelling: which journal, which day. */
  readonly given: ReadonlyMap<string, string>;
}

/** The words that a command begins with, and the names that it may be asked about. A test holds it to the commands. */
export const ASKED: ReadonlyMap<string, { readonly first?: readonly string[]; readonly names: readonly NameKind[] }> =
  new Map([
    ['jot', { first: ['room'], names: EVERY_KIND }],
    ['pairs', { names: ['group', 'tank'] }],
    ['broods', { names: ['brood', 'group'] }],
    ['water', { names: ['tank', 'loop'] }],
    ['settle', { names: ['auction'] }],
    ['kin', { names: ['group', 'brood'] }],
    ['money', { names: ['group', 'brood', 'species'] }],
    ['awards', { names: ['brood', 'group'] }],
    ['history', { names: EVERY_KIND }],
    ['chart', { first: ['growth', 'level', 'survival', 'water'], names: EVERY_KIND }],
    ['why', { names: EVERY_KIND }],
    ['calc', { first: CALCULATORS.map(({ name }) => name), names: [] }],
    ['completion', { first: ['bash', 'zsh', 'fish'], names: [] }],
  ]);

/** Values of options, by their spelling or by what stands in it for the value; a file is the shell's to complete. */
const VALUES: ReadonlyMap<string, { readonly words?: readonly string[]; readonly names?: readonly NameKind[] }> =
  new Map([
    ['DATE', { words: ['today', 'yesterday', 'tomorrow', '+7', '+14'] }],
    ['AUCTION', { names: ['auction'] }],
    ['KIND', { words: THEMES }],
    ['--pair NAME', { names: ['group'] }],
    ['--tank NAME', { names: ['tank'] }],
    ['--brood NAME', { names: ['brood'] }],
  ]);

function valuesOf({ spelling }: Flag<unknown>): ReturnType<typeof VALUES.get> {
  return VALUES.get(spelling) ?? VALUES.get(spelling.split(' ')[1] ?? '');
}

/** What follows `before`, the words behind the program's name without the one that is being typed. */
export async function nextAfter(commands: readonly Entry[], before: readonly string[]): Promise<Next> {
  const name = commandIn(before);
  const entry = commands.find((one) => one.name === name);
  const command = entry === undefined ? null : (await entry.load()).command;
  const line = walked(before, [...Object.values(COMMON), ...(command?.flags ?? [])]);
  const { given } = line;
  const nothing: Next = { words: [], names: [], given };
  if (line.open !== null) return { ...nothing, ...valuesOf(line.open) };
  if (name === null || (name === 'help' && line.words.length === 1)) {
    return { ...nothing, words: [...commands.map((one) => one.name), ...optionsOf(null)] };
  }
  if (command === null) return nothing;
  const asked = ASKED.get(name);
  const first = line.words.length === 1 ? (asked?.first ?? []) : [];
  return { words: [...first, ...optionsOf(command)], names: asked?.names ?? [], given };
}

function optionsOf(command: Command | null): readonly string[] {
  const flags = [...(command?.flags ?? []), ...Object.values(COMMON)];
  return [...flags.map(({ spelling }) => nameOf(spelling)), '--help', ...(command === null ? ['--version'] : [])];
}

/** The first word that is neither an option nor the value of a common one. */
function commandIn(before: readonly string[]): string | null {
  return walked(before, Object.values(COMMON)).words[0] ?? null;
}

interface Walked {
  readonly words: readonly string[];
  /** What was given to options that take a value, by spelling. */
  readonly given: ReadonlyMap<string, string>;
  /** The option at the end that still wants its value. */
  readonly open: Flag<unknown> | null;
}

function walked(before: readonly string[], flags: readonly Flag<unknown>[]): Walked {
  const words: string[] = [];
  const given = new Map<string, string>();
  let open: Flag<unknown> | null = null;
  for (const word of before) {
    if (open !== null) {
      given.set(open.spelling, word);
      open = null;
    } else if (word.startsWith('-')) {
      const [name, value] = word.split(/=(.*)/s);
      const flag = flags.find(({ spelling }) => nameOf(spelling) === name && spelling.includes(' '));
      if (flag === undefined) continue;
      if (value === undefined) open = flag;
      else given.set(flag.spelling, value);
    } else words.push(word);
  }
  return { words, given, open };
}

function nameOf(spelling: string): string {
  return spelling.split(' ')[0] ?? spelling;
}
