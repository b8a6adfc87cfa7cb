/** The words of `--help`, for the whole program and for one command. */
import { labelled, paragraph } from '../reports/wrap.ts';
import type { Command } from './command.ts';
import type { Flag } from './flags.ts';
import { COMMON } from './flags.ts';
import type { Entry } from './registry.ts';

const WIDTH = 80;

/** What Tankside is, its commands in the order in which a keeper meets them, and the common options. */
export function programHelp(entries: readonly Entry[]): string {
  const summaries = entries.map(({ name, summary }): readonly [string, string] => [name, summary]);
  return [
    'Tankside reads the lines that you jot at the tanks, and answers from them.',
    '',
    'tankside COMMAND, where COMMAND is one of',
    columns(summaries),
    '',
    'and with every answer',
    columns(Object.values(COMMON).map(spelled)),
    '',
    'tankside COMMAND --help says more, with an example.',
    'Set out: tankside start, then tankside due.',
    '',
  ].join('\n');
}

/** How to type a command, what it answers, its options, and examples. */
export function commandHelp({ name, summary }: Entry, command: Command): string {
  const optional = command.flags.map(({ spelling }) => `[${spelling}]`);
  const typed = ['tankside', name, command.takes, ...optional].filter((word) => word !== '').join(' ');
  const own = command.flags.length === 0 ? [] : [columns(command.flags.map(spelled)), ''];
  return [
    `${name}: ${summary}`,
    '',
    paragraph(typed, WIDTH, 4),
    '',
    paragraph(command.about, WIDTH),
    '',
    ...own,
    'and as with every answer',
    columns(Object.values(COMMON).map(spelled)),
    '',
    command.examples.length === 1 ? 'for example' : 'for example, any of',
    ...command.examples.map((example) => `  ${example}`),
    '',
  ].join('\n');
}

function spelled({ spelling, says }: Flag<unknown>): readonly [string, string] {
  return [spelling, says];
}

function columns(rows: readonly (readonly [string, string])[]): string {
  const left = Math.max(...rows.map(([head]) => head.length)) + 4;
  return rows.map(([head, text]) => labelled(`  ${head}`, text, left, WIDTH)).join('\n');
}
