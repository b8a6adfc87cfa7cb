/**
 * Colour, by what it means. It marks urgency and never says anything that the words beside it do not
 * say. Chalk knows nothing of NO_COLOR, so whether to colour is decided here, and chalk is loaded only then.
 */
import { printable } from './printable.ts';

type Brush = (text: string) => string;

export interface Paint {
  /** A life at risk. */
  readonly urgent: Brush;
  readonly late: Brush;
  readonly today: Brush;
  /** Not yet, or beside the point: dates ahead, lines to jot, sources. */
  readonly quiet: Brush;
  /** The one thing that matters most. */
  readonly strong: Brush;
  /** The words of a line that are wrong. */
  readonly wrong: Brush;
}

export const PLAIN: Paint = {
  urgent: printable,
  late: printable,
  today: printable,
  quiet: printable,
  strong: printable,
  wrong: printable,
};

export interface Surface {
  readonly isTTY: boolean;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** Whether to colour: NO_COLOR, then FORCE_COLOR, then whether it is a terminal that is not dumb. */
export function wantsColour({ isTTY, env }: Surface): boolean {
  if (env['NO_COLOR']) return false;
  const force = env['FORCE_COLOR'];
  if (force !== undefined && force !== '') return force !== '0' && force !== 'false';
  return isTTY && env['TERM'] !== 'dumb';
}

/** Brushes in the sixteen colours that every terminal has. */
export async function colours(): Promise<Paint> {
  const { Chalk } = await import('chalk');
  const chalk = new Chalk({ level: 1 });
  return {
    urgent: (text) => chalk.red.bold(printable(text)),
    late: (text) => chalk.red(printable(text)),
    today: (text) => chalk.yellow(printable(text)),
    quiet: (text) => chalk.dim(printable(text)),
    strong: (text) => chalk.bold(printable(text)),
    wrong: (text) => chalk.red.underline(printable(text)),
  };
}
