/** What a command says of a name that is none: the nearest there is, or how to see them all. */
import { nearest } from '../core/suggest.ts';
import { misuse, type Stop } from './exit.ts';

interface Unknown {
  /** What was looked for: `brood`, `pair, fish or tank`. */
  readonly what: string;
  readonly asked: string;
  /** All that there are. */
  readonly names: Iterable<string>;
  /** The command that lists them all. */
  readonly all: string;
  /** The command with one of them, where it is not the list's with the name behind it. */
  readonly typed?: (name: string) => string;
}

/** Wrong use: nothing of that name on the day asked about. */
export function unknownName({ what, asked, names, all, typed = (name) => `${all} ${name}` }: Unknown): Stop {
  const [near] = nearest(asked, names, 1);
  return misuse(`no ${what} called «${asked}» on that day`, near === undefined ? all : typed(near));
}
