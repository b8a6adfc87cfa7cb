/**
 * The command line: finds the command, loads that one alone, reads its options with commander, runs it
 * and turns every failure into words and an exit status. Nothing here ends the process.
 */
import type { CommanderError } from 'commander';
import { nearest } from '../core/suggest.ts';
import type { Command } from './command.ts';
import type { Context } from './context.ts';
import type { Exit } from './exit.ts';
import { EXIT, misuse, Stop } from './exit.ts';
import type { Flag, Get } from './flags.ts';
import { COMMON, keyOf } from './flags.ts';
import { commandHelp, programHelp } from './help.ts';
import type { Entry } from './registry.ts';
import { COMMANDS, entryNamed } from './registry.ts';
import { tell } from './tell.ts';

declare const TANKSIDE_VERSION: string;

/** The version that the build put in; `0` when run from its sources. */
function version(): string {
  return typeof TANKSIDE_VERSION === 'string' ? TANKSIDE_VERSION : '0 (from its sources)';
}

/** Runs one command line, without the program's own name. */
export async function run(argv: readonly string[], context: Context): Promise<Exit> {
  try {
    return await dispatch(argv, context);
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    tell(context, error.message, error.write);
    return error.status;
  }
}

async function dispatch(argv: readonly string[], context: Context): Promise<Exit> {
  const { before, options, name, after } = split(argv);
  if (options.includes('--version') || options.includes('-V')) {
    context.out.write(`tankside ${version()}\n`);
    return EXIT.answered;
  }
  const stray = options.find((word) => !isHelp(word) && !isCommon(word));
  if (stray !== undefined) throw strayOption(stray, name !== null);
  if (name === null || name === 'help' || options.some(isHelp)) {
    return await help(name === 'help' ? (after[0] ?? null) : name, context);
  }
  const entry = entryNamed(name);
  if (entry === undefined) throw unknownCommand(name);
  const { command } = await entry.load();
  const rest = [...before, ...after];
  if (beforeDashes(rest).some(isHelp)) return showCommand(entry, command, context);
  const parsed = await parse(entry, command, rest);
  return await command.run(context, parsed.get, parsed.words);
}

interface Split {
  /** Everything before the command's name. */
  readonly before: readonly string[];
  /** The options among it, without their values. */
  readonly options: readonly string[];
  readonly name: string | null;
  readonly after: readonly string[];
}

/** Cuts at the command's name: the first word that is neither an option nor the value of a common one. */
function split(argv: readonly string[]): Split {
  const withValue = Object.values(COMMON).flatMap(({ spelling }) => (spelling.includes(' ') ? nameOf(spelling) : []));
  const options: string[] = [];
  let at = 0;
  for (; at < argv.length; at += 1) {
    const word = argv[at] ?? '';
    if (!word.startsWith('-')) break;
    options.push(word);
    if (withValue.includes(word)) at += 1;
  }
  return { before: argv.slice(0, at), options, name: argv[at] ?? null, after: argv.slice(at + 1) };
}

/** `--on` of `--on DATE` or of `--on=today`. */
function nameOf(spelling: string): string {
  return spelling.split(/[ =]/)[0] ?? spelling;
}

function beforeDashes(words: readonly string[]): readonly string[] {
  const at = words.indexOf('--');
  return at < 0 ? words : words.slice(0, at);
}

function isHelp(word: string): boolean {
  return word === '--help' || word === '-h';
}

async function help(name: string | null, context: Context): Promise<Exit> {
  if (name !== null) {
    const entry = entryNamed(name);
    if (entry === undefined) throw unknownCommand(name);
    return showCommand(entry, (await entry.load()).command, context);
  }
  context.out.write(programHelp(COMMANDS));
  return EXIT.answered;
}

function isCommon(word: string): boolean {
  return Object.values(COMMON).some(({ spelling }) => nameOf(spelling) === nameOf(word));
}

function showCommand(entry: Entry, command: Command, context: Context): Exit {
  context.out.write(commandHelp(entry, command));
  return EXIT.answered;
}

/** An option that is none of the common ones, before any command's name. */
function strayOption(option: string, before: boolean): Stop {
  const name = nameOf(option);
  if (before) return misuse(`«${name}» belongs after the name of its command`, `tankside COMMAND ${name}`);
  return misuse(`there is no option «${name}»`, 'tankside --help');
}

function unknownCommand(name: string): Stop {
  const [near] = nearest(
    name,
    COMMANDS.map((entry) => entry.name),
  );
  return misuse(`there is no command «${name}»`, near === undefined ? 'tankside --help' : `tankside ${near}`);
}

interface Parsed {
  readonly get: Get;
  readonly words: readonly string[];
}

/** Reads the options wherever they stand among the words; `--` ends them. `--help` never loads the library. */
async function parse(entry: Entry, command: Command, argv: readonly string[]): Promise<Parsed> {
  const { Command: Commander, CommanderError } = await import('commander');
  const flags: readonly Flag<unknown>[] = [...Object.values(COMMON), ...command.flags];
  const parser = new Commander(entry.name)
    .exitOverride()
    .configureOutput({ writeOut: () => undefined, writeErr: () => undefined })
    .helpOption(false)
    .allowExcessArguments()
    .argument('[words...]');
  for (const option of flags) {
    const { spelling } = option;
    if (spelling.includes(' ')) parser.option(`${nameOf(spelling)} <value>`, '', once(entry, command, option));
    else parser.option(spelling);
  }
  try {
    parser.parse([...argv], { from: 'user' });
  } catch (error) {
    if (error instanceof CommanderError) throw wrongOption(error, entry, command, flags);
    throw error;
  }
  const values: Readonly<Record<string, unknown>> = parser.opts();
  const words = parser.args;
  const swallowed = flags.find(({ spelling }) => isOption(values[keyOf(spelling)], flags));
  if (swallowed !== undefined) throw withoutValue(entry, command, swallowed);
  const lonely = aloneIn(command, ({ spelling }) => values[keyOf(spelling)] !== undefined);
  if (lonely !== null) throw lonely;
  const clash = clashIn(command, ({ spelling }) => values[keyOf(spelling)] !== undefined);
  if (clash !== null) throw clash;
  if (command.takes === '' && words.length > 0) {
    const { wordFor } = command;
    const meant = wordFor === undefined ? '' : ` ${nameOf(wordFor.spelling)} ${words.join(' ')}`;
    throw misuse(`${entry.name} takes no words, and got «${words.join(' ')}»`, `tankside ${entry.name}${meant}`);
  }
  const get: Get = (flag) => {
    const value = values[keyOf(flag.spelling)];
    return flag.read(typeof value === 'string' || value === true ? value : undefined);
  };
  return { get, words };
}

/** One value for each option: of two days or two files nobody knows which is meant. */
function once(entry: Entry, command: Command, option: Flag<unknown>): (value: string, before?: string) => string {
  return (value, before) => {
    if (value.trim() === '') throw withoutValue(entry, command, option);
    if (before === undefined || before === value) return value;
    const says = `${nameOf(option.spelling)} is given twice: «${before}» and «${value}»`;
    throw misuse(says, typed(entry, command, option));
  };
}

/** The command with that option, as it is typed: `tankside settle AUCTION --sheet FILE`. */
function typed({ name }: Entry, { takes }: Command, { spelling }: Flag<unknown>): string {
  const words = takes.split(' ').filter((word) => word !== '' && !word.startsWith('['));
  return ['tankside', name, ...words, spelling].join(' ');
}

/** An option that changes nothing without another, where that one is not given. */
function aloneIn({ only = [] }: Command, isGiven: (option: Flag<unknown>) => boolean): Stop | null {
  for (const { of, beside } of only) {
    const given = of.find(isGiven);
    const [first] = beside;
    if (given === undefined || first === undefined || beside.some(isGiven)) continue;
    return misuse(
      `${nameOf(given.spelling)} changes nothing without ${nameOf(first.spelling)}`,
      `${first.spelling} ${given.spelling}`,
    );
  }
  return null;
}

/** Two options of which one would leave the other without effect: which is meant nobody knows. */
function clashIn({ apart = [] }: Command, isGiven: (option: Flag<unknown>) => boolean): Stop | null {
  for (const { of, beside } of apart) {
    const [idle, other] = [of.find(isGiven), beside.find(isGiven)];
    if (idle === undefined || other === undefined) continue;
    const says = `${nameOf(idle.spelling)} changes nothing beside ${nameOf(other.spelling)}`;
    return misuse(says, `${other.spelling}, or ${idle.spelling}`);
  }
  return null;
}

/** `--csv --on 2026-02-14`: nobody's file is called like an option. */
function isOption(value: unknown, flags: readonly Flag<unknown>[]): boolean {
  return typeof value === 'string' && flags.some(({ spelling }) => nameOf(spelling) === nameOf(value));
}

function withoutValue(entry: Entry, command: Command, option: Flag<unknown>): Stop {
  return misuse(`${nameOf(option.spelling)} needs a word after it`, typed(entry, command, option));
}

/** Commander's own words for what is wrong with an option, in ours. */
function wrongOption(error: CommanderError, entry: Entry, command: Command, flags: readonly Flag<unknown>[]): Stop {
  const named = /'(-[^' ]*)/.exec(error.message)?.[1] ?? '';
  const flag = flags.find(({ spelling }) => nameOf(spelling) === named);
  if (error.code === 'commander.optionMissingArgument' && flag !== undefined) return withoutValue(entry, command, flag);
  const [near] = nearest(
    nameOf(named),
    flags.map(({ spelling }) => nameOf(spelling)),
  );
  return misuse(
    `${entry.name} has no option «${named}»`,
    near === undefined ? `tankside ${entry.name} --help` : `tankside ${entry.name} ${near}`,
  );
}
